//! Put up, after the fact, in one line; and what already stands here.

use book::act::{Act, HouseSet, HouseThing, LotPutUp, OpenHolds, Put, ShelfKind, Spot, Told};
use book::view::Views;
use book::{Id, Moment, RoughDate, Store};

use super::answer::LotLine;
use super::error::KeepError;
use super::find::{plain, require_lot, shelf_id};
use super::line::{KeptLine, read_line};
use super::loads::require_last_load;
use super::undo::{follow_on_trial, require_adds_up_with};
use super::{IdMaker, Keeper, Saying};

/// What was put up.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PutUpWords {
    /// `damson jam, 9 half-pints`.
    pub line: String,
    /// The place, where the line does not say.
    pub shelf: Option<String>,
    /// When, where the line does not say; today without either.
    pub put_up: Option<RoughDate>,
    /// Best before.
    pub eat_by: Option<RoughDate>,
    /// The formula by its id.
    pub formula: Option<String>,
    /// Box of lids, bottle of vinegar, bag of salt, by their names in the house.
    pub supplies: Vec<String>,
    /// What it holds, where it stays open and is topped up.
    pub open: Option<OpenHolds>,
    /// Whether it came out of the load that went in last.
    pub from_last_load: bool,
    /// How many containers it was to be, where fewer came of it: the reason is told with `lot lost`.
    pub planned: Option<String>,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Writes down what was put up, after the fact: the process is not recorded, and no verdict is shown.
    ///
    /// # Errors
    ///
    /// If the line cannot be read or the book cannot be written.
    pub fn put_up(&mut self, now: &Moment, words: &PutUpWords) -> Result<LotLine, KeepError> {
        let mut line = read_line(&words.line)?;
        line.shelf = line.shelf.or_else(|| words.shelf.as_deref().map(Into::into));
        let planned = match &words.planned {
            Some(planned) => read_line(&format!("{}, {planned}", line.name))?.contents,
            None => Vec::new(),
        };
        let date = line.put_up.unwrap_or(words.put_up.or(Some(RoughDate::day(now.date()))));
        let (ids, ()) = self.say(now, |views, _| {
            let last = words.from_last_load.then(|| require_last_load(views)).transpose()?;
            let lot = LotPutUp {
                loads: last.into_iter().collect(),
                formula: words.formula.as_deref().map(Into::into),
                planned: planned.clone(),
                supplies: words.supplies.iter().map(|name| shelf_id(name)).collect(),
                eat_by: words.eat_by,
                open: words.open,
                ..lot_of(views, &line, date, Told::AfterTheFact, now, 1)
            };
            Ok((with_shelf(views, &line, lot.into()), ()))
        })?;
        self.line_of(ids[0])
    }

    /// Writes down what already stands here: each line keeps the place and the year of the one before it.
    ///
    /// # Errors
    ///
    /// If a line cannot be read or the book cannot be written; then nothing of them is.
    pub fn stand(&mut self, now: &Moment, lines: &[String]) -> Result<Vec<LotLine>, KeepError> {
        let mut read: Vec<KeptLine> = Vec::new();
        for typed in lines.iter().filter(|line| !line.trim().is_empty()) {
            let mut line = read_line(typed)?;
            if let Some(before) = read.last() {
                line.put_up = line.put_up.or(before.put_up);
                line.shelf = line.shelf.or_else(|| before.shelf.clone());
            }
            read.push(line);
        }
        let (ids, lots) = self.say(now, |views, _| {
            let mut sayings: Vec<Saying> = Vec::new();
            let mut lots = Vec::new();
            for (number, line) in (1..).zip(&read) {
                let date = line.put_up.flatten();
                let lot = lot_of(views, line, date, Told::BeforeThisBook, now, number);
                lots.push(sayings.len());
                let new = with_shelf(views, line, lot.into());
                let known = |saying: &Saying| sayings.iter().any(|said| said.act == saying.act);
                let new: Vec<Saying> = new.into_iter().filter(|saying| !known(saying)).collect();
                sayings.extend(new);
            }
            Ok((sayings, lots))
        })?;
        lots.into_iter().map(|at| self.line_of(ids[at])).collect()
    }

    /// Says a lot's line anew: its name, its counts, its places, its date.
    ///
    /// # Errors
    ///
    /// If there is no such lot, the line cannot be read, or more was taken from it than it now would hold.
    pub fn correct_lot(
        &mut self,
        now: &Moment,
        typed: &str,
        line: &str,
        why: Option<&str>,
    ) -> Result<LotLine, KeepError> {
        let line = read_line(line)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            let standing = views.record.find_standing(id);
            let Some((last, put_up)) = standing.as_ref().and_then(|standing| match &standing.entry.act {
                Act::LotPutUp(put_up) => Some((&standing.entry, put_up)),
                _ => None,
            }) else {
                return Err(KeepError::NoSuchThing {
                    what: "lot",
                    typed: typed.to_owned(),
                    hint: "`stillroom shelf list` shows what stands where",
                });
            };
            // What the line does not say stays: the place where most of it was put, the date.
            let place = put_up.containers.first().and_then(|put| put.spot.shelf.clone());
            let shelf = line.shelf.as_deref().map(shelf_id).or(place);
            let containers = line.contents.iter().map(|contents| Put {
                spot: Spot { size: contents.size.clone(), shelf: shelf.clone() },
                count: contents.count,
            });
            let corrected = LotPutUp {
                name: line.name.clone(),
                containers: containers.collect(),
                put_up: line.put_up.unwrap_or(put_up.put_up),
                ..put_up.clone()
            };
            let trial = follow_on_trial(last, corrected.clone().into());
            require_adds_up_with(views, id, &[trial])?;
            let saying = Saying { act: corrected.into(), follows: Some(last.id), why: why.map(Into::into) };
            Ok((with_shelf(views, &line, saying), id))
        })?;
        self.line_of(id)
    }

    pub(super) fn line_of(&self, id: Id) -> Result<LotLine, KeepError> {
        Ok(super::lots::say_lot(self.views(), id, super::find::lot(self.views(), id)?))
    }
}

/// The lot of a line, under the next free number but so many of this year.
fn lot_of(
    views: &Views,
    line: &KeptLine,
    put_up: Option<RoughDate>,
    told: Told,
    now: &Moment,
    number: u32,
) -> LotPutUp {
    let shelf = line.shelf.as_deref().map(shelf_id);
    let put = line.contents.iter().map(|contents| Put {
        spot: Spot { size: contents.size.clone(), shelf: shelf.clone() },
        count: contents.count,
    });
    LotPutUp {
        label: next_label(views, now.date().year(), number).into(),
        name: line.name.clone(),
        formula: None,
        told,
        put_up,
        containers: put.collect(),
        planned: Vec::new(),
        batch: None,
        loads: Vec::new(),
        from_lots: Vec::new(),
        supplies: Vec::new(),
        eat_by: None,
        open: None,
    }
}

/// `26-031`: the year, and the next number of that year.
fn next_label(views: &Views, year: i16, ahead: u32) -> String {
    let before = format!("{:02}-", year.rem_euclid(100));
    let last = views.lots.labels().filter_map(|label| label.strip_prefix(&before)?.parse::<u32>().ok()).max();
    format!("{before}{:03}", last.unwrap_or(0).saturating_add(ahead))
}

/// The act, and before the first use of a shelf what it is called.
fn with_shelf(views: &Views, line: &KeptLine, act: Saying) -> Vec<Saying> {
    let new = line.shelf.as_deref().and_then(|name| new_shelf(views, name));
    [Some(act), new].into_iter().flatten().collect()
}

/// What a shelf is called, if the book has not heard of it.
pub(super) fn new_shelf(views: &Views, name: &str) -> Option<Saying> {
    let item = shelf_id(name);
    if views.house.find(&item).is_some() {
        return None;
    }
    let said = plain(name);
    // Only what the name itself says.
    let kinds = [
        ("freezer", ShelfKind::Freezer),
        ("refrigerator", ShelfKind::Refrigerator),
        ("fridge", ShelfKind::Refrigerator),
        ("cellar", ShelfKind::Cellar),
        ("pantry", ShelfKind::Pantry),
    ];
    let kind = kinds.iter().find(|(word, _)| said.contains(word)).map(|(_, kind)| *kind);
    Some(HouseSet { item, thing: HouseThing::Shelf { name: name.trim().into(), kind } }.into())
}
