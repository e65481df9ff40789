//! Tallies: what each day came to, to be summed over weeks, months and seasons.
//!
//! Each act adds its own figures and takes them out again when it no longer stands; sums do not depend on any order.

use std::collections::BTreeMap;
use std::ops::RangeInclusive;

use jiff::civil::Date;

use crate::Id;
use crate::act::{Act, LossReason, SealOutcome, Told, Went, WentWhere};
use crate::quantity::{Amount, Microlitres, Milligrams};
use crate::record::{Change, Standing};

use super::View;

/// What is counted, of what.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Figure {
    /// Milligrams that came in.
    TakenInMilligrams(Box<str>),
    /// Microlitres that came in.
    TakenInMicrolitres(Box<str>),
    /// Pieces that came in.
    TakenInPieces(Box<str>),
    /// Baskets, or parts of them, that left as they were.
    BasketLeft(WentWhere),
    /// Containers put up, by lot and size.
    PutUp(Id, Box<str>),
    /// Containers found that stood before this book.
    StoodBefore(Id, Box<str>),
    /// Containers taken off a shelf, by lot, size and where they went.
    Drawn(Id, Box<str>, Option<Went>),
    /// Containers lost, by lot, size and why.
    Lost(Id, Box<str>, LossReason),
    /// Containers that did not seal.
    Unsealed(Id, Box<str>),
    /// Containers in which something was wrong.
    Trouble(Id),
}

/// Figures by day.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tallies {
    days: BTreeMap<Date, BTreeMap<Figure, i64>>,
}

impl Tallies {
    /// The figures of a stretch of days, both ends among them.
    #[must_use]
    pub fn sum(&self, days: RangeInclusive<Date>) -> BTreeMap<Figure, i64> {
        let mut sum = BTreeMap::new();
        if days.start() > days.end() {
            return sum;
        }
        for (figure, number) in self.days.range(days).flat_map(|(_, figures)| figures) {
            *sum.entry(figure.clone()).or_default() += number;
        }
        sum
    }

    fn add(&mut self, act: &Standing, times: i64) {
        for (day, figure, number) in list_figures(act) {
            let figures = self.days.entry(day).or_default();
            let sum = figures.entry(figure.clone()).or_default();
            *sum = sum.saturating_add(number.saturating_mul(times));
            if *sum == 0 {
                figures.remove(&figure);
                if figures.is_empty() {
                    self.days.remove(&day);
                }
            }
        }
    }
}

fn list_figures(standing: &Standing) -> Vec<(Date, Figure, i64)> {
    let today = standing.entry.happened_at.date();
    let one = |figure, number| vec![(today, figure, number)];
    match &standing.entry.act {
        Act::BasketTakenIn(taken) => {
            let name = taken.name.clone();
            match taken.weight.net() {
                Amount::Mass(Milligrams(number)) => one(Figure::TakenInMilligrams(name), number),
                Amount::Volume(Microlitres(number)) => one(Figure::TakenInMicrolitres(name), number),
                Amount::Count(number) => one(Figure::TakenInPieces(name), number),
            }
        }
        Act::BasketLeft(left) => one(Figure::BasketLeft(left.went), 1),
        Act::LotPutUp(put_up) => {
            let day = put_up.put_up.map_or(today, |date| date.earliest());
            let figures = put_up.containers.iter().map(|put| {
                let size = put.spot.size.clone();
                match put_up.told {
                    Told::BeforeThisBook => (today, Figure::StoodBefore(standing.id, size), put.count),
                    Told::AsMade | Told::AfterTheFact => (day, Figure::PutUp(standing.id, size), put.count),
                }
            });
            figures.collect()
        }
        Act::Drawn(drawn) => {
            one(Figure::Drawn(drawn.lot, drawn.spot.size.clone(), drawn.went.clone()), drawn.count)
        }
        Act::ContainersLost(lost) => {
            one(Figure::Lost(lost.lot, lost.spot.size.clone(), lost.reason), lost.count)
        }
        Act::SealsChecked(checked) if checked.outcome == SealOutcome::Failed => {
            one(Figure::Unsealed(checked.lot, checked.spot.size.clone()), checked.count)
        }
        Act::TroubleFound(trouble) => one(Figure::Trouble(trouble.lot), trouble.count),
        _ => Vec::new(),
    }
}

impl View for Tallies {
    fn change(&mut self, change: &Change) {
        if let Some(before) = &change.before {
            self.add(before, -1);
        }
        if let Some(after) = &change.after {
            self.add(after, 1);
        }
    }
}
