//! Reopens a part of the day: a few projects may be chosen anew, the rest stays chosen, and an engine of these alone
//! looks for anything worth more.
//!
//! On days with narrow windows and one scarce room neither totals nor a list say what goes together. What a change of
//! one basket costs is borne by its neighbours in time; so those are opened with it, while the engine is free to move
//! the steps of all the others. Parts grow while small ones bring nothing. The draws are fixed, so the same day gives
//! the same parts.

use std::collections::BTreeSet;

use super::day::Day;
use super::draft::{Draft, Pick};
use super::draws::Draws;
use super::engine::{Answer, Engine, Wish};
use super::work::Clock;

/// Projects opened at once, at first.
const OPEN_MIN: usize = 4;
/// Parts that bring nothing before larger ones are tried.
const PATIENCE: u32 = 6;
/// Work on one part, the first time; what is not settled gets more when the parts have grown.
const PART_SLICE: u64 = 60_000;

/// Chooses parts and remembers which are settled.
pub(super) struct Reopener<'d> {
    day: &'d Day,
    draws: Draws,
    open: usize,
    slice: u64,
    idle: u32,
    /// Ways kept, and projects open, of which it is proved that they hold nothing better.
    settled: BTreeSet<(Vec<usize>, Vec<usize>)>,
}

impl<'d> Reopener<'d> {
    pub(super) fn new(day: &'d Day) -> Reopener<'d> {
        let draws = Draws { state: 0x0a7e };
        Reopener { day, draws, open: OPEN_MIN, slice: PART_SLICE, idle: 0, settled: BTreeSet::new() }
    }

    /// A draft worth more than `best`, found in one part of the day; `None` when there is none there or the work for
    /// one part was not enough.
    pub(super) fn look(&mut self, best: &Draft, order: &[usize], clock: &mut Clock<'_>) -> Option<Draft> {
        let open = self.draw_part();
        let kept: Vec<usize> =
            best.chosen().map(|p| p.way).filter(|&w| !open.contains(&self.project(w))).collect();
        if self.settled.contains(&(kept.clone(), open.clone())) {
            self.grow_after_nothing();
            return None;
        }
        match self.ask(best, (&kept, &open), order, clock) {
            Answer::Found(draft) => {
                self.idle = 0;
                return Some(draft);
            }
            Answer::Clash(_) | Answer::Never => {
                self.settled.insert((kept, open));
            }
            Answer::Open => {}
        }
        self.grow_after_nothing();
        None
    }

    fn project(&self, way: usize) -> usize {
        self.day.ways[way].project
    }

    fn grow_after_nothing(&mut self) {
        self.idle += 1;
        if self.idle >= PATIENCE {
            self.idle = 0;
            self.open += 1;
            if self.open > self.day.projects.len() {
                // Round again, with more work for each part.
                (self.open, self.slice) = (OPEN_MIN, 2 * self.slice);
            }
        }
    }

    /// Projects whose time is near a drawn minute; sorted.
    fn draw_part(&mut self) -> Vec<usize> {
        let minute = self.draws.below(1 + u64::from(self.day.horizon.unsigned_abs())) as i32;
        let mut near: Vec<(i64, usize)> = Vec::new();
        for (p, project) in self.day.projects.iter().enumerate() {
            let Some(&way) = project.ways.first() else { continue };
            let way = &self.day.ways[way];
            let from = way.lo.iter().min().copied().unwrap_or(0);
            let to = way.hi.iter().zip(&way.minutes).map(|(hi, m)| hi + m).max().unwrap_or(0);
            let middle = i64::from(from) + (i64::from(to) - i64::from(from)) / 2;
            // Days without windows have all projects in the same place: a little chance keeps the parts different.
            let chance = self.draws.below(1 + u64::from(self.day.horizon.unsigned_abs()) / 3) as i64;
            near.push(((middle - i64::from(minute)).abs() + chance, p));
        }
        near.sort_unstable();
        let mut open: Vec<usize> = near.into_iter().take(self.open).map(|n| n.1).collect();
        open.sort_unstable();
        open
    }

    fn ask(
        &self,
        best: &Draft,
        (kept, open): (&[usize], &[usize]),
        order: &[usize],
        clock: &mut Clock<'_>,
    ) -> Answer {
        let day = self.day;
        let mut ways: Vec<usize> = open.iter().flat_map(|&p| day.projects[p].ways.iter().copied()).collect();
        ways.extend(kept);
        ways.sort_unstable();
        let place = |w: usize| ways.binary_search(&w).expect("every way of the part was listed");
        let part = day.reopen(&ways);
        let order: Vec<usize> = order.iter().filter_map(|w| ways.binary_search(w).ok()).collect();
        let Some(mut engine) = Engine::new(&part, &order, clock.meter()) else { return Answer::Open };
        clock.slice(self.slice);
        let mut shown = Draft::empty(&part);
        for (pick, p) in best.picks.iter().zip(&mut shown.picks) {
            *p = pick.as_ref().map(|pick| Pick { way: place(pick.way), starts: pick.starts.clone() });
        }
        engine.show(&shown, clock);
        let wish = Wish {
            ways: kept.iter().map(|&w| place(w)).collect(),
            value_at_least: Some(best.value(day) + 1),
            ..Wish::default()
        };
        match engine.ask(&wish, clock) {
            Answer::Found(mut draft) => {
                for pick in draft.picks.iter_mut().flatten() {
                    pick.way = ways[pick.way];
                }
                Answer::Found(draft)
            }
            other => other,
        }
    }
}
