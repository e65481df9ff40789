//! One lot: seals, losses, trouble, what it came from, and who has its sisters.

use std::collections::BTreeMap;

use book::act::{
    Act, ContainersLost, LossReason, SealOutcome, SealsChecked, SisterWarned, Told, TroubleFound, Went,
};
use book::view::{Lot, Trace, Views, trace_lot};
use book::{Id, ItemId, Moment, Store};

use super::answer::{LotLine, LotSheet, SisterLine, Standing};
use super::error::KeepError;
use super::find::{label_of, lot, name_of, require_lot, require_spot, say_spot};
use super::line::check_count;
use super::{IdMaker, Keeper, say_containers};

/// What was lost.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LossWords {
    /// The lot.
    pub lot: String,
    /// How many.
    pub count: i64,
    /// Why.
    pub reason: LossReason,
    /// From which shelf.
    pub shelf: Option<String>,
    /// Of which size.
    pub size: Option<String>,
    /// Whether these are some that had not sealed.
    pub unsealed: bool,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Writes down containers that were lost: broken, spoiled, spilt, done again.
    ///
    /// # Errors
    ///
    /// If there is no such lot or there are not so many.
    pub fn lose(&mut self, now: &Moment, words: &LossWords) -> Result<LotLine, KeepError> {
        check_count(words.count)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, &words.lot, now.date())?;
            let lot = lot(views, id)?;
            let (spot, stock) = require_spot(lot, words.shelf.as_deref(), words.size.as_deref())?;
            let there = if words.unsealed { stock.unsealed } else { stock.count };
            super::shelves::require_so_many(lot, &spot, words.count, there)?;
            let unsealed = if words.unsealed { words.count } else { 0 };
            let lost = ContainersLost { lot: id, spot, count: words.count, unsealed, reason: words.reason };
            Ok((vec![lost.into()], id))
        })?;
        self.line_of(id)
    }

    /// Writes down what the seals turned out to be: so many failed, the others hold.
    ///
    /// # Errors
    ///
    /// If there is no such lot or there are not so many.
    pub fn check_seals(&mut self, now: &Moment, typed: &str, failed: i64) -> Result<LotLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            let lot = lot(views, id)?;
            let (spot, stock) = require_spot(lot, None, None)?;
            super::shelves::require_so_many(lot, &spot, failed.max(0), stock.count - stock.unsealed)?;
            let outcomes = [
                (failed.max(0), SealOutcome::Failed),
                (stock.count - stock.unsealed - failed.max(0), SealOutcome::Sealed),
            ];
            let sayings = outcomes
                .into_iter()
                .filter(|(count, _)| *count > 0)
                .map(|(count, outcome)| SealsChecked { lot: id, spot: spot.clone(), count, outcome }.into());
            Ok((sayings.collect(), id))
        })?;
        self.line_of(id)
    }

    /// Writes down that something is wrong with containers of a lot, and gives the recall sheet.
    ///
    /// # Errors
    ///
    /// If there is no such lot.
    pub fn find_trouble(
        &mut self,
        now: &Moment,
        typed: &str,
        signs: &[String],
        count: i64,
    ) -> Result<LotSheet, KeepError> {
        check_count(count)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            let signs = signs.iter().map(|sign| sign.as_str().into()).collect();
            Ok((vec![TroubleFound { lot: id, signs, count }.into()], id))
        })?;
        self.sheet_of(id)
    }

    /// Writes down that someone who has a container of a lot was told.
    ///
    /// # Errors
    ///
    /// If there is no such lot.
    pub fn warn(&mut self, now: &Moment, typed: &str, whom: &str) -> Result<LotLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let id = require_lot(views, typed, now.date())?;
            Ok((vec![SisterWarned { lot: id, told: whom.into() }.into()], id))
        })?;
        self.line_of(id)
    }

    /// Everything about a lot, and every sister container and whoever has it.
    ///
    /// # Errors
    ///
    /// If there is no such lot.
    pub fn trace(&self, now: &Moment, typed: &str) -> Result<LotSheet, KeepError> {
        self.sheet_of(require_lot(self.views(), typed, now.date())?)
    }

    fn sheet_of(&self, id: Id) -> Result<LotSheet, KeepError> {
        let views = self.views();
        let found = lot(views, id)?;
        let trace = trace_lot(views, id).unwrap_or_default();
        let sisters = trace.sisters.iter().filter_map(|sister| {
            let other = views.lots.find(sister.lot)?;
            let mut shares = Vec::new();
            if sister.same_load {
                shares.push("the load: it stood in the canner at the same time".to_owned());
            }
            if sister.same_batch {
                shares.push("the batch".to_owned());
            }
            shares.extend(sister.same_items.iter().map(|item| self.name_item(item)));
            shares.extend(sister.same_baskets.iter().map(|basket| self.name_basket(*basket)));
            Some(SisterLine {
                lot: say_lot(views, sister.lot, other),
                shares,
                with_people: list_people(other),
            })
        });
        Ok(LotSheet {
            lot: say_lot(views, id, found),
            from: self.say_origin(found, &trace),
            happened: views
                .lots
                .acts(id)
                .filter_map(|act| {
                    Some(format!("{}  {}", act.entry.happened_at.date(), say_act(&act.entry.act)?))
                })
                .collect(),
            with_people: list_people(found),
            sisters: sisters.collect(),
        })
    }

    fn say_origin(&self, lot: &Lot, trace: &Trace) -> Vec<String> {
        let mut from = Vec::new();
        let views = self.views();
        if let Some(formula) = lot.put_up().and_then(|put_up| put_up.formula.as_ref()) {
            from.push(format!("formula {formula}"));
        }
        if let Some(name) =
            trace.batch.and_then(|batch| views.batches.find(batch)).and_then(|batch| batch.name())
        {
            from.push(format!("batch: {name}"));
        }
        for load in trace.loads.iter().filter_map(|load| views.batches.find_load(*load)) {
            let clock =
                |act: &book::Standing| act.entry.happened_at.wall().strftime("%Y-%m-%d %H:%M").to_string();
            let begun = load.act().map_or_else(|| "at an unknown time".to_owned(), clock);
            let ended = load.ended().map_or_else(|| "no end written down".to_owned(), clock);
            from.push(format!("load: in {begun}, out {ended}"));
        }
        from.extend(trace.baskets.iter().map(|basket| self.name_basket(*basket)));
        from.extend(trace.items.iter().map(|item| self.name_item(item)));
        from
    }

    fn name_basket(&self, id: Id) -> String {
        let basket = self.views().baskets.find(id);
        let taken = basket.and_then(|basket| Some((basket.taken_in()?, basket.act()?)));
        taken.map_or_else(
            || format!("basket {id}"),
            |(taken, act)| format!("basket of {}, came in {}", taken.name, act.entry.happened_at.date()),
        )
    }

    fn name_item(&self, item: &ItemId) -> String {
        use book::act::HouseThing;
        match self.views().house.find(item) {
            Some(HouseThing::Supply { name, stamp: Some(stamp), .. }) => format!("{name}, stamped {stamp}"),
            Some(
                HouseThing::Supply { name, .. }
                | HouseThing::Appliance { name, .. }
                | HouseThing::Gauge { name, .. }
                | HouseThing::Bowl { name, .. },
            ) => name.to_string(),
            _ => item.to_string(),
        }
    }
}

/// A lot in one line.
pub(super) fn say_lot(views: &Views, id: Id, lot: &Lot) -> LotLine {
    let put_up = lot.put_up();
    let stands = lot.stands().map(|(spot, stock)| Standing {
        size: spot.size.to_string(),
        shelf: spot.shelf.as_ref().map(|shelf| super::find::name_shelf(views, shelf)),
        count: stock.count,
        unsealed: stock.unsealed,
    });
    let mut notes: Vec<String> = lot
        .doubts()
        .map(|(spot, number)| {
            format!("{} more were taken than stood there; count them", say_spot(spot, number))
        })
        .collect();
    notes.extend(lot.counts().values().filter(|count| count.is_open()).map(|count| {
        format!(
            "counted {} and the book had {}; settle it with `stillroom shelf settle`",
            say_spot(&count.spot, count.counted),
            count.expected
        )
    }));
    for trouble in lot.troubles() {
        if let Act::TroubleFound(found) = &trouble.entry.act {
            notes.push(format!("trouble in {}: {}", found.count, found.signs.join(", ")));
        }
    }
    if views.lots.with_label(label_of(lot)).count() > 1 {
        notes.push(format!("another lot has this number as well; this one is {id}"));
    }
    LotLine {
        id: id.to_string(),
        label: label_of(lot).to_owned(),
        name: name_of(lot).to_owned(),
        oldest: lot.oldest().map(|date| date.to_string()),
        eat_by: put_up.and_then(|put_up| put_up.eat_by).map(|date| date.to_string()),
        told: match put_up.map(|put_up| put_up.told) {
            Some(Told::AsMade) => "as made",
            Some(Told::BeforeThisBook) => "from before this book",
            Some(Told::AfterTheFact) | None => "process not recorded",
        },
        stands: stands.collect(),
        notes,
    }
}

/// Who has containers of a lot.
fn list_people(lot: &Lot) -> Vec<String> {
    let mut people: BTreeMap<&str, i64> = BTreeMap::new();
    for act in lot.gone() {
        if let Act::Drawn(drawn) = &act.entry.act
            && let Some(Went::Given(whom) | Went::Swapped(whom) | Went::Sold(whom)) = &drawn.went
        {
            *people.entry(whom).or_default() += drawn.count;
        }
    }
    let say = |(whom, count): (&str, i64)| {
        let told = if lot.warned().contains(whom) { ", was told" } else { "" };
        format!("{whom} ({count}{told})")
    };
    people.into_iter().map(say).collect()
}

/// An act about a lot in words; `None` for what says itself elsewhere.
pub(super) fn say_act(act: &Act) -> Option<String> {
    Some(match act {
        Act::LotPutUp(put_up) => {
            let parts: Vec<String> =
                put_up.containers.iter().map(|put| say_spot(&put.spot, put.count)).collect();
            format!("put up {} of {}", parts.join(", "), put_up.name)
        }
        Act::SealsChecked(checked) => {
            let what = if checked.outcome == SealOutcome::Failed { "did not seal" } else { "sealed" };
            format!("{} {what}", say_containers(checked.count, &checked.spot.size))
        }
        Act::ContainersLost(lost) => {
            let why = say_reason(lost.reason);
            format!("lost {}: {why}", say_spot(&lost.spot, lost.count))
        }
        Act::ContainersMoved(moved) => {
            let to = moved.to.as_ref().map_or("where it was made", ItemId::as_str);
            format!("moved {} to {to}", say_spot(&moved.spot, moved.count))
        }
        Act::ShelfCounted(counted) => format!("counted {}", say_spot(&counted.spot, counted.count)),
        Act::DifferenceSettled(settled) => match settled.how {
            book::act::Settled::Accepted => "took the count for right".to_owned(),
            book::act::Settled::BookWasRight => "took the book for right".to_owned(),
        },
        Act::Drawn(drawn) => {
            format!("took {}{}", say_spot(&drawn.spot, drawn.count), say_went(drawn.went.as_ref()))
        }
        Act::TroubleFound(found) => format!("trouble in {}: {}", found.count, found.signs.join(", ")),
        Act::SisterWarned(warned) => format!("told {}", warned.told),
        Act::ToppedUp(_) => "topped up".to_owned(),
        Act::OpenClosed(_) => "closed".to_owned(),
        _ => return None,
    })
}

pub(super) fn say_reason(reason: LossReason) -> &'static str {
    match reason {
        LossReason::Broken => "broken",
        LossReason::Spoiled => "spoiled",
        LossReason::Spilt => "spilt",
        LossReason::DoneAgain => "done again as another lot",
        LossReason::CalledBack => "called back with a bad sister",
        LossReason::Missing => "not to be found",
    }
}

pub(super) fn say_went(went: Option<&Went>) -> String {
    match went {
        None => String::new(),
        Some(Went::Eaten) => ", eaten".to_owned(),
        Some(Went::Given(whom)) => format!(", given to {whom}"),
        Some(Went::Swapped(whom)) => format!(", swapped with {whom}"),
        Some(Went::Sold(whom)) => format!(", sold to {whom}"),
        Some(Went::Shown(place)) => format!(", shown at {place}"),
        Some(Went::Thrown(why)) => format!(", thrown away: {why}"),
    }
}
