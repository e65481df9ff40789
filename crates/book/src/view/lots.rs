//! Lots: where each container stands, what became of the others, and what is doubtful.
//!
//! Numbers are sums, so that it does not matter in which order two telephones without a network tell of them. A sum
//! below zero is never shown as a number of containers: it is told as a doubt, to be settled by counting.

use std::collections::{BTreeMap, BTreeSet};

use crate::Id;
use crate::act::{Act, LotPutUp, OpenHolds, SealOutcome, Settled, Spot};
use crate::day::RoughDate;
use crate::record::{Change, Standing};

use super::View;
use super::thread::{Fold, Threads};

/// How many containers stand somewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Stock {
    /// All of them.
    pub count: i64,
    /// Those that have not sealed.
    pub unsealed: i64,
}

/// A count, and what the book said then.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Counted {
    /// What was counted, and where.
    pub spot: Spot,
    /// How many there were.
    pub counted: i64,
    /// How many the book had.
    pub expected: i64,
    /// How the difference was settled.
    pub settled: Option<Settled>,
}

impl Counted {
    /// Whether it differs and nobody has said why.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.counted != self.expected && self.settled.is_none()
    }
}

/// One lot.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Lot {
    put_up: Option<Standing>,
    sums: BTreeMap<Spot, Stock>,
    counts: BTreeMap<Id, Counted>,
    /// Settlements of counts that happened, by the clocks, before the count itself.
    settled_early: BTreeMap<Id, Settled>,
    gone: Vec<Standing>,
    seals: Vec<Standing>,
    troubles: Vec<Standing>,
    warned: BTreeSet<Box<str>>,
    top_ups: Vec<Standing>,
    oldest_part: Option<RoughDate>,
    is_closed: bool,
}

impl Lot {
    /// How it was put up; `None` when that was struck and something about it was not.
    #[must_use]
    pub fn put_up(&self) -> Option<&LotPutUp> {
        match &self.put_up.as_ref()?.entry.act {
            Act::LotPutUp(put_up) => Some(put_up),
            _ => None,
        }
    }

    /// The act by which it was put up.
    #[must_use]
    pub fn act(&self) -> Option<&Standing> {
        self.put_up.as_ref()
    }

    /// Where its containers stand.
    pub fn stands(&self) -> impl Iterator<Item = (&Spot, Stock)> {
        let is_there = self.put_up.is_some();
        self.sums.iter().filter(move |(_, stock)| is_there && stock.count > 0).map(|(spot, stock)| {
            (spot, Stock { count: stock.count, unsealed: stock.unsealed.clamp(0, stock.count) })
        })
    }

    /// How many stand in one place.
    #[must_use]
    pub fn stock_at(&self, spot: &Spot) -> Stock {
        self.stands().find(|(at, _)| *at == spot).map_or(Stock::default(), |(_, stock)| stock)
    }

    /// How many stand anywhere.
    #[must_use]
    pub fn total(&self) -> Stock {
        self.stands().fold(Stock::default(), |sum, (_, stock)| Stock {
            count: sum.count.saturating_add(stock.count),
            unsealed: sum.unsealed.saturating_add(stock.unsealed),
        })
    }

    /// How many more were taken from somewhere than stood there: two entered the same, or one was never entered.
    pub fn doubts(&self) -> impl Iterator<Item = (&Spot, i64)> {
        self.sums.iter().filter(|(_, stock)| stock.count < 0).map(|(spot, stock)| (spot, -stock.count))
    }

    /// Counts by the entry that made them.
    #[must_use]
    pub fn counts(&self) -> &BTreeMap<Id, Counted> {
        &self.counts
    }

    /// Draws and losses, as they happened.
    #[must_use]
    pub fn gone(&self) -> &[Standing] {
        &self.gone
    }

    /// Seals that were looked at.
    #[must_use]
    pub fn seals(&self) -> &[Standing] {
        &self.seals
    }

    /// What was found wrong.
    #[must_use]
    pub fn troubles(&self) -> &[Standing] {
        &self.troubles
    }

    /// Who has a sister container and was told.
    #[must_use]
    pub fn warned(&self) -> &BTreeSet<Box<str>> {
        &self.warned
    }

    /// What was added to it while it was open.
    #[must_use]
    pub fn top_ups(&self) -> &[Standing] {
        &self.top_ups
    }

    /// What it holds, as long as it may be topped up.
    #[must_use]
    pub fn open(&self) -> Option<OpenHolds> {
        if self.is_closed { None } else { self.put_up()?.open }
    }

    /// Its age: the date of its oldest part; `None` when nobody knows.
    #[must_use]
    pub fn oldest(&self) -> Option<RoughDate> {
        let put_up = self.put_up()?.put_up?;
        Some(
            self.oldest_part
                .map_or(put_up, |part| if part.earliest() < put_up.earliest() { part } else { put_up }),
        )
    }

    fn add(&mut self, spot: &Spot, count: i64, unsealed: i64) {
        let stock = self.sums.entry(spot.clone()).or_default();
        stock.count = stock.count.saturating_add(count);
        stock.unsealed = stock.unsealed.saturating_add(unsealed);
        if *stock == Stock::default() {
            self.sums.remove(spot);
        }
    }

    fn settle(&mut self, count: Id, how: Settled) {
        let Some(counted) = self.counts.get_mut(&count) else {
            self.settled_early.entry(count).or_insert(how);
            return;
        };
        if counted.settled.is_some() {
            return;
        }
        counted.settled = Some(how);
        if how == Settled::Accepted {
            let (spot, difference) = (counted.spot.clone(), counted.counted.saturating_sub(counted.expected));
            self.add(&spot, difference, 0);
        }
    }
}

impl Fold for Lot {
    fn step(&mut self, act: &Standing) {
        match &act.entry.act {
            Act::LotPutUp(put_up) => {
                self.put_up = Some(act.clone());
                for put in &put_up.containers {
                    self.add(&put.spot, put.count, 0);
                }
            }
            Act::ContainersLost(lost) => {
                self.add(&lost.spot, -lost.count, -lost.unsealed);
                self.gone.push(act.clone());
            }
            Act::Drawn(drawn) => {
                self.add(&drawn.spot, -drawn.count, -drawn.unsealed);
                self.gone.push(act.clone());
            }
            Act::ContainersMoved(moved) => {
                self.add(&moved.spot, -moved.count, -moved.unsealed);
                let to = Spot { size: moved.spot.size.clone(), shelf: moved.to.clone() };
                self.add(&to, moved.count, moved.unsealed);
            }
            Act::SealsChecked(checked) => {
                if checked.outcome == SealOutcome::Failed {
                    self.add(&checked.spot, 0, checked.count);
                }
                self.seals.push(act.clone());
            }
            Act::ShelfCounted(count) => {
                let expected = self.sums.get(&count.spot).map_or(0, |stock| stock.count);
                let counted =
                    Counted { spot: count.spot.clone(), counted: count.count, expected, settled: None };
                self.counts.insert(act.id, counted);
                if let Some(how) = self.settled_early.remove(&act.id) {
                    self.settle(act.id, how);
                }
            }
            Act::DifferenceSettled(settled) => self.settle(settled.count, settled.how),
            Act::TroubleFound(_) => self.troubles.push(act.clone()),
            Act::SisterWarned(warned) => {
                self.warned.insert(warned.told.clone());
            }
            Act::ToppedUp(topped) => {
                if let Some(from) = topped.from {
                    let is_older = self.oldest_part.is_none_or(|part| from.earliest() < part.earliest());
                    self.oldest_part = if is_older { Some(from) } else { self.oldest_part };
                }
                self.top_ups.push(act.clone());
            }
            Act::OpenClosed(_) => self.is_closed = true,
            _ => {}
        }
    }
}

/// All lots.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Lots {
    threads: Threads<Id, Lot>,
    by_label: BTreeMap<Box<str>, BTreeSet<Id>>,
}

impl Lots {
    /// A lot by its id.
    #[must_use]
    pub fn find(&self, id: Id) -> Option<&Lot> {
        self.threads.find(&id)
    }

    /// The lots with a label: one, unless two books were merged that had given the same number.
    pub fn with_label(&self, label: &str) -> impl Iterator<Item = Id> {
        self.by_label.get(label).into_iter().flatten().copied()
    }

    /// Every label that is taken, in order.
    pub fn labels(&self) -> impl Iterator<Item = &str> {
        self.by_label.keys().map(|label| &**label)
    }

    /// Every lot that was put up, the earliest id first.
    pub fn iter(&self) -> impl Iterator<Item = (Id, &Lot)> {
        self.threads.iter().filter(|(_, lot)| lot.put_up.is_some()).map(|(id, lot)| (*id, lot))
    }

    /// Everything that was said about a lot, as it happened.
    pub fn acts(&self, id: Id) -> impl Iterator<Item = &Standing> {
        self.threads.acts(&id)
    }

    /// Carries out a change and names the lots it touched.
    pub(crate) fn change_and_name(&mut self, change: &Change) -> Vec<Id> {
        let label = |standing: &Option<Standing>| match standing.as_ref().map(|act| (act.id, &act.entry.act))
        {
            Some((id, Act::LotPutUp(put_up))) => Some((id, put_up.label.clone())),
            _ => None,
        };
        if let Some((id, label)) = label(&change.before)
            && let Some(ids) = self.by_label.get_mut(&label)
        {
            ids.remove(&id);
            if ids.is_empty() {
                self.by_label.remove(&label);
            }
        }
        if let Some((id, label)) = label(&change.after) {
            self.by_label.entry(label).or_default().insert(id);
        }
        self.threads.change(change, |act| act.entry.act.lot(act.id))
    }
}

impl View for Lots {
    fn change(&mut self, change: &Change) {
        self.change_and_name(change);
    }
}
