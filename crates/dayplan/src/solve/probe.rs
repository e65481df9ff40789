//! Probes how early a set of ways can end: asks for earlier finishes from the best plan downwards and from the bound
//! upwards, until the two meet.

use super::day::Day;
use super::draft::{Draft, Pick};
use super::engine::{Answer, Engine, Wish};
use super::work::Clock;

/// Work on one question while the bound is still raised in strides.
const STRIDE_SLICE: u64 = 60_000;

/// An engine and what it knows of the finish.
pub(super) struct Probe<'d> {
    engine: Engine<'d>,
    /// The day's place of each of the engine's ways.
    ways: Vec<usize>,
    /// No plan of this engine ends earlier.
    low: i32,
    slice: u64,
    step: i32,
    turn: u32,
    /// Whether the bound is still raised in strides.
    strides: bool,
}

impl<'d> Probe<'d> {
    /// Of one set of ways, in an engine of its own on the part of the day that holds nothing else.
    pub(super) fn of_set(
        part: &'d Day,
        (ways, least): (&[usize], i32),
        best: &Draft,
        slice: u64,
        clock: &mut Clock<'_>,
    ) -> Option<Probe<'d>> {
        let all: Vec<usize> = (0..ways.len()).collect();
        let mut engine = Engine::new(part, &all, clock.meter())?;
        let place = |pick: &Pick| {
            let way = ways.iter().position(|&w| w == pick.way)?;
            Some(Pick { way, starts: pick.starts.clone() })
        };
        let known: Vec<Option<Pick>> = best.picks.iter().map(|p| p.as_ref().and_then(place)).collect();
        if known.iter().flatten().count() == ways.len() && best.chosen().count() == ways.len() {
            clock.slice(u64::MAX);
            engine.show(&Draft { picks: known }, clock);
        }
        engine.require_ways(&all);
        engine.require_finish(least);
        Some(Probe::new(engine, ways.to_vec(), slice))
    }

    /// Of whatever an engine of the whole day still allows.
    pub(super) fn of_day(engine: Engine<'d>, ways: usize, slice: u64) -> Probe<'d> {
        Probe::new(engine, (0..ways).collect(), slice)
    }

    fn new(engine: Engine<'d>, ways: Vec<usize>, slice: u64) -> Probe<'d> {
        let low = engine.finish_bound();
        Probe { engine, ways, low, slice, step: 1, turn: 0, strides: true }
    }

    /// No plan of this engine ends before this.
    pub(super) fn low(&self) -> i32 {
        self.low
    }

    /// Questions asked so far.
    pub(super) fn turns(&self) -> u32 {
        self.turn
    }

    /// Asks one question: a draft that ends before `best`, or more known of the bound, or neither.
    pub(super) fn ask(&mut self, best: i32, clock: &mut Clock<'_>) -> Option<Draft> {
        self.low = self.low.max(self.engine.finish_bound());
        if self.low >= best {
            return None;
        }
        let gap = best - 1 - self.low;
        // From above in steps that grow while they succeed; now and then from the bound upwards.
        let aim = match self.turn % 6 {
            _ if self.strides => self.low + gap.min(self.step - 1),
            2 => self.low,
            5 => self.low + gap / 2,
            _ => (best - self.step).max(self.low),
        };
        self.engine.go_by_time(!self.strides && (self.turn < 3 || (self.turn / 6) % 3 == 1));
        clock.slice(if self.strides { STRIDE_SLICE } else { self.slice });
        let wish = Wish { finish_at_most: Some(aim), ..Wish::default() };
        let answer = self.engine.ask(&wish, clock);
        self.take(answer, aim, best)
    }

    fn take(&mut self, answer: Answer, aim: i32, best: i32) -> Option<Draft> {
        let is_open = matches!(answer, Answer::Open);
        let (found, excluded) = match answer {
            Answer::Found(draft) => (Some(draft), false),
            Answer::Clash(_) => (None, true),
            Answer::Never => {
                self.low = self.low.max(best);
                (None, false)
            }
            Answer::Open => (None, false),
        };
        if excluded {
            self.low = aim + 1;
            self.engine.require_finish(self.low);
        }
        if self.strides {
            if excluded {
                self.step = self.step.saturating_mul(2);
            } else {
                (self.strides, self.step) = (false, 1);
            }
        } else if found.is_some() {
            self.step = self.step.saturating_mul(2);
        } else {
            self.step = (self.step / 2).max(1);
            self.turn += 1;
            if is_open {
                self.slice += self.slice / 8;
            }
        }
        found.map(|draft| self.as_of_the_day(draft))
    }

    fn as_of_the_day(&self, mut draft: Draft) -> Draft {
        for pick in draft.picks.iter_mut().flatten() {
            pick.way = self.ways[pick.way];
        }
        draft
    }
}

#[cfg(test)]
mod tests {
    use super::super::work::{Budget, Meter, Unwatched};
    use super::*;
    use crate::problem::Problem;

    #[test]
    fn two_jobs_for_one_pair_of_hands_end_no_earlier_than_both_last() {
        let text = r#"{"format":"day-problem/1","horizon":90,"resources":[{"id":"hands","capacity":1}],
            "projects":[{"id":"a","options":[{"id":"o","value":1,"steps":[{"id":"s","minutes":20,"needs":{"hands":1}}]}]},
              {"id":"b","options":[{"id":"o","value":1,"steps":[{"id":"s","minutes":15,"needs":{"hands":1},"earliest":7}]}]}]}"#;
        let day = Day::of(&Problem::from_json(text).unwrap());
        let late = |way: usize, start: i32| Some(Pick { way, starts: vec![start] });
        let best = Draft { picks: vec![late(0, 40), late(1, 70)] };
        let mut nobody = Unwatched;
        let mut clock = Clock::new(Meter::default(), Budget::work(1_000_000), &mut nobody);
        let mut probe = Probe::of_set(&day, (&[0, 1], 0), &best, 10_000, &mut clock).unwrap();
        let mut finish = best.finish(&day);
        for _ in 0..100 {
            if let Some(draft) = probe.ask(finish, &mut clock) {
                assert!(draft.finish(&day) < finish);
                finish = draft.finish(&day);
            }
        }
        assert_eq!((finish, probe.low()), (35, 35));
    }
}
