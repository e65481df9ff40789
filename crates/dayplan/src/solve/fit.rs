//! Whether one set of ways can be scheduled, asked of an engine that knows nothing else.
//!
//! An engine for the whole day carries every option in every rule, chosen or not; one for the set alone answers in a
//! small part of the work, most often within a millisecond. What it learns is lost with it, but for the clash: that
//! is made as small as a little more work makes it, since a small clash rules out many sets at once.

use super::day::Day;
use super::engine::{Answer, Engine, Wish};
use super::work::Clock;

/// Work on one question while a clash is made smaller, at the most.
const SHRINK_SLICE: u64 = 8_000;

/// Minutes by which the second try takes a start for later than it is, at the most.
const SHAKE: u64 = 15;

/// Looks for a draft of these ways and no others, with at most so many steps of work.
pub(super) fn fit_set(day: &Day, ways: &[usize], slice: u64, clock: &mut Clock<'_>) -> Answer {
    match ask_alone(day, ways, slice, clock) {
        Answer::Clash(clash) => Answer::Clash(shrink(day, clash, clock)),
        other => other,
    }
}

fn ask_alone(day: &Day, ways: &[usize], slice: u64, clock: &mut Clock<'_>) -> Answer {
    let part = day.restrict(ways);
    let all: Vec<usize> = (0..ways.len()).collect();
    let Some(mut engine) = Engine::new(&part, &all, clock.meter()) else { return Answer::Open };
    let wish = Wish { ways: all, ..Wish::default() };
    clock.slice(slice / 2);
    let mut answer = engine.ask(&wish, clock);
    if matches!(answer, Answer::Open) {
        // What it learnt holds in any order, and another one may not run into the same trouble.
        engine.shake(SHAKE);
        clock.slice(slice / 2);
        answer = engine.ask(&wish, clock);
    }
    match answer {
        Answer::Found(mut draft) => {
            for pick in draft.picks.iter_mut().flatten() {
                pick.way = ways[pick.way];
            }
            Answer::Found(draft)
        }
        Answer::Clash(clash) => Answer::Clash(clash.into_iter().map(|k| ways[k]).collect()),
        // Nothing at all always fits, so it is the set that does not.
        Answer::Never => Answer::Clash(ways.to_vec()),
        Answer::Open => Answer::Open,
    }
}

/// Leaves out of a clash what it does not need.
fn shrink(day: &Day, mut clash: Vec<usize>, clock: &mut Clock<'_>) -> Vec<usize> {
    let mut k = 0;
    while k < clash.len() && clash.len() > 1 && !clock.is_over() {
        let mut fewer = clash.clone();
        fewer.remove(k);
        match ask_alone(day, &fewer, SHRINK_SLICE, clock) {
            // Those before place `k` are needed, whatever else is left out.
            Answer::Clash(smaller) => {
                k = smaller.iter().position(|w| !clash[..k].contains(w)).unwrap_or(smaller.len());
                clash = smaller;
            }
            _ => k += 1,
        }
    }
    clash
}

#[cfg(test)]
mod tests {
    use super::super::work::{Budget, Meter, Unwatched};
    use super::*;
    use crate::problem::Problem;

    /// Three jobs for one pair of hands in an hour, the first of them short.
    fn answer(ways: &[usize]) -> Answer {
        let project = |id: &str, minutes: u32| {
            format!(
                r#"{{"id":"{id}","options":[{{"id":"o","value":1,
                    "steps":[{{"id":"s","minutes":{minutes},"needs":{{"hands":1}}}}]}}]}}"#
            )
        };
        let projects = [project("a", 10), project("b", 35), project("c", 40)].join(",");
        let text = format!(
            r#"{{"format":"day-problem/1","horizon":60,"resources":[{{"id":"hands","capacity":1}}],
                "projects":[{projects}]}}"#
        );
        let day = Day::of(&Problem::from_json(&text).unwrap());
        let mut nobody = Unwatched;
        let mut clock = Clock::new(Meter::default(), Budget::work(1_000_000), &mut nobody);
        fit_set(&day, ways, 100_000, &mut clock)
    }

    #[test]
    fn a_set_that_fits_comes_with_its_draft() {
        let Answer::Found(draft) = answer(&[0, 2]) else { panic!("10 and 40 minutes fit an hour") };
        let ways: Vec<usize> = draft.chosen().map(|pick| pick.way).collect();
        assert_eq!(ways, vec![0, 2]);
    }

    #[test]
    fn a_clash_names_only_what_it_needs() {
        let Answer::Clash(mut clash) = answer(&[0, 1, 2]) else { panic!("85 minutes do not fit an hour") };
        clash.sort_unstable();
        assert_eq!(clash, vec![1, 2]);
    }
}
