//! Shelves: what stands where, moving, counting, what to eat first, what is low.

use book::act::{ContainersMoved, DifferenceSettled, HouseSet, HouseThing, Settled, ShelfCounted, Spot};
use book::view::Lot;
use book::{Id, ItemId, Moment, Store};
use jiff::civil::Date;
use serde::Serialize;

use super::answer::LotLine;
use super::error::KeepError;
use super::find::{label_of, lot, name_shelf, plain, require_lot, require_spot, shelf_id};
use super::line::{MOST, check_count};
use super::lots::say_lot;
use super::put_up::new_shelf;
use super::{IdMaker, Keeper};

/// What was moved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MoveWords {
    /// The lot.
    pub lot: String,
    /// To which shelf.
    pub to: String,
    /// How many; all of them when it is not said.
    pub count: Option<i64>,
    /// From which shelf.
    pub shelf: Option<String>,
    /// Of which size.
    pub size: Option<String>,
}

/// What was counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CountWords {
    /// The lot.
    pub lot: String,
    /// How many there are.
    pub count: i64,
    /// On which shelf.
    pub shelf: Option<String>,
    /// Of which size.
    pub size: Option<String>,
}

/// What a count came to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CountAnswer {
    /// The lot.
    pub lot: LotLine,
    /// How many were counted.
    pub counted: i64,
    /// How many the book had.
    pub expected: i64,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// What stands where: each shelf with its lots. A lot that stands on two shelves is listed on both.
    #[must_use]
    pub fn list_shelves(&self) -> Vec<(String, Vec<LotLine>)> {
        let views = self.views();
        let shelves = views.shelves.iter().map(|(shelf, lots)| {
            let name = shelf.map(|shelf| name_shelf(views, shelf));
            let lines = lots.iter().filter_map(|id| {
                let mut line = say_lot(views, *id, views.lots.find(*id)?);
                line.stands.retain(|standing| standing.shelf == name);
                Some(line)
            });
            let mut lines: Vec<LotLine> = lines.collect();
            lines.sort_by(|a, b| (plain(&a.name), &a.oldest).cmp(&(plain(&b.name), &b.oldest)));
            (name.unwrap_or_else(|| "not put away".to_owned()), lines)
        });
        shelves.collect()
    }

    /// What to eat first, as of a day.
    #[must_use]
    pub fn eat_first(&self, today: Date, most: usize) -> Vec<LotLine> {
        let views = self.views();
        let ids = views.eat_first.in_order(today).take(most);
        ids.filter_map(|id| Some(say_lot(views, id, views.lots.find(id)?))).collect()
    }

    /// Moves containers to another shelf.
    ///
    /// # Errors
    ///
    /// If there is no such lot or there are not so many.
    pub fn move_containers(&mut self, now: &Moment, words: &MoveWords) -> Result<LotLine, KeepError> {
        words.count.map_or(Ok(()), check_count)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, &words.lot, now.date())?;
            let lot = lot(views, id)?;
            let (spot, stock) = require_spot(lot, words.shelf.as_deref(), words.size.as_deref())?;
            let count = words.count.unwrap_or(stock.count);
            require_so_many(lot, &spot, count, stock.count)?;
            // Those that have sealed go first; the others only when nothing else is left to go.
            let unsealed = (count - (stock.count - stock.unsealed)).max(0);
            let moved = ContainersMoved { lot: id, spot, count, unsealed, to: Some(shelf_id(&words.to)) };
            let shelf = new_shelf(views, &words.to);
            Ok(([Some(moved.into()), shelf].into_iter().flatten().collect(), id))
        })?;
        self.line_of(id)
    }

    /// Writes down a count. It is an assertion: nothing changes until the difference is settled.
    ///
    /// # Errors
    ///
    /// If there is no such lot.
    pub fn count_shelf(&mut self, now: &Moment, words: &CountWords) -> Result<CountAnswer, KeepError> {
        if words.count != 0 {
            check_count(words.count)?;
        }
        let (_, (id, expected)) = self.say(now, |views, _| {
            let id = require_lot(views, &words.lot, now.date())?;
            let lot = lot(views, id)?;
            let (spot, expected) = match require_spot(lot, words.shelf.as_deref(), words.size.as_deref()) {
                Ok((spot, stock)) => (spot, stock.count),
                // Found where the book has none: where is said, and the size is the lot's own.
                Err(KeepError::NotSoMany { .. }) => (found_spot(lot, words)?, 0),
                Err(other) => return Err(other),
            };
            let counted = ShelfCounted { lot: id, spot, count: words.count };
            Ok((vec![counted.into()], (id, expected)))
        })?;
        Ok(CountAnswer { lot: self.line_of(id)?, counted: words.count, expected })
    }

    /// Settles the open differences of a lot: the counts were right, or the book was.
    ///
    /// # Errors
    ///
    /// If there is no open difference.
    pub fn settle_counts(&mut self, now: &Moment, typed: &str, how: Settled) -> Result<LotLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            let lot = lot(views, id)?;
            let open: Vec<Id> =
                lot.counts().iter().filter(|(_, count)| count.is_open()).map(|(id, _)| *id).collect();
            let Some((last, before)) = open.split_last() else {
                return Err(KeepError::NoSuchThing {
                    what: "open difference of a count",
                    typed: label_of(lot).to_owned(),
                    hint: "count first, with `stillroom shelf count`",
                });
            };
            // The last count says how it is; those before it say nothing any more.
            let settled = before
                .iter()
                .map(|count| (count, Settled::BookWasRight))
                .chain([(last, how)])
                .map(|(count, how)| DifferenceSettled { lot: id, count: *count, how }.into());
            Ok((settled.collect(), id))
        })?;
        self.line_of(id)
    }

    /// Writes down what the winter wants of a food: `damson jam, 12 half-pints`.
    ///
    /// # Errors
    ///
    /// If the line cannot be read.
    pub fn want(&mut self, now: &Moment, line: &str) -> Result<(), KeepError> {
        let line = super::line::read_line(line)?;
        let item = ItemId::from(format!("want-{}", shelf_id(&line.name)).as_str());
        self.say(now, |_, _| {
            let thing = HouseThing::Target { name: line.name.clone(), wants: line.contents.clone() };
            Ok((vec![HouseSet { item: item.clone(), thing }.into()], ()))
        })?;
        Ok(())
    }

    /// What the winter wants and the shelves lack, a sentence each.
    #[must_use]
    pub fn find_low(&self) -> Vec<String> {
        let views = self.views();
        let mut low = Vec::new();
        for (_, thing) in views.house.things() {
            let HouseThing::Target { name, wants } = thing else { continue };
            for want in wants {
                let there: i64 = views
                    .lots
                    .iter()
                    .filter(|(_, lot)| plain(super::find::name_of(lot)) == plain(name))
                    .flat_map(|(_, lot)| lot.stands())
                    .filter(|(spot, _)| spot.size == want.size)
                    .map(|(_, stock)| stock.count)
                    .sum();
                if there < want.count {
                    let wanted = super::say_containers(want.count, &want.size);
                    low.push(format!("{name}: {there} of {wanted}"));
                }
            }
        }
        low
    }
}

/// Where containers were counted that the book has nowhere.
fn found_spot(lot: &Lot, words: &CountWords) -> Result<Spot, KeepError> {
    let sizes = lot.put_up().into_iter().flat_map(|put_up| &put_up.containers).map(|put| &put.spot.size);
    let own = sizes.clone().next().cloned();
    let size = words.size.as_deref().map(super::line::read_size).or(own);
    let several =
        size.is_none() || (words.size.is_none() && sizes.clone().any(|other| Some(other) != size.as_ref()));
    match size.filter(|_| !several) {
        Some(size) => Ok(Spot { size, shelf: words.shelf.as_deref().map(shelf_id) }),
        None => Err(KeepError::WhichPlace {
            label: label_of(lot).to_owned(),
            places: sizes.map(ToString::to_string).collect(),
        }),
    }
}

/// That there are so many to take.
pub(super) fn require_so_many(lot: &Lot, spot: &Spot, wanted: i64, there: i64) -> Result<(), KeepError> {
    if wanted <= there {
        return Ok(());
    }
    let from = spot
        .shelf
        .as_ref()
        .map_or_else(|| "from where it was made".to_owned(), |shelf| format!("from {shelf}"));
    Err(KeepError::NotSoMany { label: label_of(lot).to_owned(), wanted: wanted.min(MOST + 1), there, from })
}
