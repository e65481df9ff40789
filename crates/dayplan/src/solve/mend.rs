//! Makes a draft better by taking a little of it out and putting something else in.
//!
//! Each round drops a few picks, fits the rest again in order of time, and then fits whatever still goes, in an
//! order that leans towards what pays and is shuffled a little. Rounds are cheap and blind to proofs; on days with
//! many projects they find in a second what the engine, which must argue every step, does not.
//! The shuffling draws on a fixed sequence, so the same day gives the same rounds.

use super::calendar::Calendar;
use super::day::Day;
use super::draft::{Draft, Pick};
use super::draws::Draws;
use super::work::Clock;

/// Rounds over one day; keeps its place in the sequence of draws between calls.
pub(super) struct Mender<'d> {
    day: &'d Day,
    /// All ways, those that pay best first.
    order: Vec<usize>,
    draws: Draws,
}

/// Picks dropped in one round, at the most.
const DROPPED_MAX: u64 = 5;
/// How far a way may move in the shuffled order, as a share of all ways.
const SHUFFLE: f64 = 0.35;
/// A round may start from a draft this much worth less than the best, as a share of its value.
const SLIP: f64 = 0.004;
/// Cost of one round beside that of its fits.
const ROUND_COST: u64 = 20;

impl<'d> Mender<'d> {
    pub(super) fn new(day: &'d Day, order: Vec<usize>) -> Mender<'d> {
        Mender { day, order, draws: Draws { state: 0x5eed } }
    }

    /// Mends until the clock's slice ends or `patience` rounds in a row brought nothing better.
    pub(super) fn mend(&mut self, draft: &Draft, patience: u32, clock: &mut Clock<'_>) -> Draft {
        let mut best = draft.clone();
        let mut current = draft.clone();
        let mut idle = 0;
        while idle < patience && !clock.slice_is_over() {
            idle += 1;
            let Some(next) = self.round(&current, clock) else {
                continue;
            };
            if next.rank(self.day) > best.rank(self.day) {
                best = next.clone();
                idle = 0;
            }
            let least = f64::from(best.value(self.day)) * (1.0 - SLIP * self.draws.unit());
            if f64::from(next.value(self.day)) >= least {
                current = next;
            } else if idle % 16 == 0 {
                current = best.clone();
            }
        }
        best
    }

    /// One round; `None` when something that must be done found no place.
    fn round(&mut self, draft: &Draft, clock: &mut Clock<'_>) -> Option<Draft> {
        let day = self.day;
        let mut work = ROUND_COST;
        let mut kept: Vec<&Pick> = draft.chosen().collect();
        let dropped = 1 + self.draws.below(DROPPED_MAX);
        for _ in 0..dropped.min(kept.len() as u64) {
            let k = self.draws.below(kept.len() as u64) as usize;
            kept.swap_remove(k);
        }
        kept.sort_by_key(|p| (p.starts.iter().min().copied(), p.way));
        let mut order: Vec<usize> = kept.iter().map(|p| p.way).collect();
        order.sort_by_key(|&w| !day.projects[day.ways[w].project].must || day.ways[w].hi != day.ways[w].lo);
        order.extend(self.shuffle());
        let mut calendar = Calendar::new(day);
        let mut stock = day.stock.clone();
        let mut next = Draft::empty(day);
        for w in order {
            let way = &day.ways[w];
            let there = way.uses.iter().zip(&stock).all(|(uses, left)| uses <= left);
            if !there || next.picks[way.project].is_some() {
                continue;
            }
            if let Some(starts) = calendar.fit(way, &mut work) {
                calendar.book(way, &starts);
                stock.iter_mut().zip(&way.uses).for_each(|(left, uses)| *left -= uses);
                next.picks[way.project] = Some(Pick { way: w, starts });
            }
        }
        clock.meter().add(work);
        next.keeps_musts(day).then_some(next)
    }

    /// What must be done first, then the order of pay, each way moved a little at random.
    fn shuffle(&mut self) -> Vec<usize> {
        let day = self.day;
        let reach = SHUFFLE * self.order.len() as f64;
        let mut keyed: Vec<(bool, f64, usize)> = Vec::with_capacity(self.order.len());
        for (place, &w) in self.order.iter().enumerate() {
            let must = day.projects[day.ways[w].project].must;
            keyed.push((!must, place as f64 + reach * self.draws.unit(), w));
        }
        keyed.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        keyed.into_iter().map(|k| k.2).collect()
    }
}
