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

/// Work that one look costs beside that of its question.
const LOOK_COST: u64 = 100;

/// What a look at one part came to.
#[derive(Debug)]
pub(super) enum Look {
    Better(Draft),
    /// Nothing better in this part, or the work for one part was not enough to tell.
    Nothing,
    /// The part was the whole day, and it is proved that nothing is worth more.
    NothingAnywhere,
}

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

    /// Looks for a draft worth more than `best` in one part of the day.
    pub(super) fn look(&mut self, best: &Draft, order: &[usize], clock: &mut Clock<'_>) -> Look {
        // Counted even where nothing is asked: a day whose every part is settled must not be looked at for ever.
        clock.meter().add(LOOK_COST);
        let open = self.draw_part();
        let kept: Vec<usize> =
            best.chosen().map(|p| p.way).filter(|&w| !open.contains(&self.project(w))).collect();
        if self.settled.contains(&(kept.clone(), open.clone())) {
            self.grow_after_nothing();
            return Look::Nothing;
        }
        match self.ask(best, (&kept, &open), order, clock) {
            Answer::Found(draft) => {
                self.idle = 0;
                return Look::Better(draft);
            }
            Answer::Clash(_) | Answer::Never => {
                let ways: usize = open.iter().map(|&p| self.day.projects[p].ways.len()).sum();
                if ways == self.day.ways.len() {
                    return Look::NothingAnywhere;
                }
                self.settled.insert((kept, open));
            }
            Answer::Open => {}
        }
        self.grow_after_nothing();
        Look::Nothing
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

#[cfg(test)]
mod tests {
    use super::super::work::{Budget, Meter, Unwatched};
    use super::*;
    use crate::problem::Problem;

    /// Looks many times from a plan of nothing; the best value found, whether it was proved, and the looks it took.
    fn climb(text: &str) -> (i32, bool, u32) {
        let day = Day::of(&Problem::from_json(text).unwrap());
        let order: Vec<usize> = (0..day.ways.len()).collect();
        let mut nobody = Unwatched;
        let mut clock = Clock::new(Meter::default(), Budget::work(5_000_000), &mut nobody);
        let (mut reopener, mut best) = (Reopener::new(&day), Draft::empty(&day));
        for looks in 0..200 {
            match reopener.look(&best, &order, &mut clock) {
                Look::Better(draft) => {
                    assert!(draft.value(&day) > best.value(&day));
                    best = draft;
                }
                Look::Nothing => {}
                Look::NothingAnywhere => return (best.value(&day), true, looks),
            }
        }
        (best.value(&day), false, 200)
    }

    fn job(id: usize, value: u32, minutes: u32, from: u32, until: u32) -> String {
        format!(
            r#"{{"id":"p{id}","options":[{{"id":"o","value":{value},"steps":[{{"id":"s","minutes":{minutes},
                "needs":{{"hands":1}},"earliest":{from},"latest_end":{until}}}]}}]}}"#
        )
    }

    fn day(jobs: &[String]) -> String {
        format!(
            r#"{{"format":"day-problem/1","horizon":100,"resources":[{{"id":"hands","capacity":1}}],"projects":[{}]}}"#,
            jobs.join(",")
        )
    }

    #[test]
    fn a_day_of_one_part_is_settled_by_one_last_look() {
        let (value, proved, looks) =
            climb(&day(&[job(0, 5, 30, 0, 40), job(1, 7, 30, 0, 50), job(2, 1, 5, 90, 95)]));
        assert_eq!((value, proved), (8, true));
        assert!(looks <= 3, "{looks} looks");
    }

    #[test]
    fn parts_of_a_longer_day_add_up_to_its_best_value() {
        let jobs: Vec<String> = (0..12u32)
            .map(|k| job(k as usize, 3 + k % 4, 12, 8 * (k / 2) * 2, 8 * (k / 2) * 2 + 20))
            .collect();
        // Of each two baskets of one hour only one fits; of values 3, 4, 5, 6 in turn the better one counts.
        assert_eq!(climb(&day(&jobs)).0, 4 + 6 + 4 + 6 + 4 + 6);
    }
}
