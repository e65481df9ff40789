//! Hard days of our own making: everything through one canner, narrow windows, chains that may hardly wait.
//!
//! What is delivered must be put up between its hour and a few hours later. Each chain goes from trimming over cooking
//! to one to three loads of the canner, with a few minutes at the most between filling, processing and lifting, so
//! that neither the canner nor the two or three pairs of hands can be filled from a list. Totals say little here:
//! which baskets go together is known only once they are scheduled. The same seed gives the same day.

use std::collections::BTreeMap;

use dayplan::{Choice, Hold, Lag, Problem, Project, Resource, Step};

/// Length of the day.
const HORIZON: u32 = 600;
/// Seeds of the set, none left out.
pub(super) const SEEDS: std::ops::RangeInclusive<u64> = 1..=40;

/// The hard day of a seed, with as many baskets as the seed says.
pub(super) fn make_day(seed: u64) -> Problem {
    let mut draws = Draws { state: seed };
    let projects = draws.between(14, 20);
    make(&mut draws, projects)
}

/// A day of the same kind with so many baskets, for looking at growth.
pub(super) fn make_day_of(projects: u32, seed: u64) -> Problem {
    make(&mut Draws { state: seed }, projects)
}

fn make(draws: &mut Draws, projects: u32) -> Problem {
    let hands = draws.between(2, 3);
    let noon = draws.between(220, 260);
    let closed = if draws.one_in(2) { vec![(noon, noon + 30)] } else { vec![] };
    let resource =
        |id: &str, capacity: u32, closed: Vec<(u32, u32)>| Resource { id: id.into(), capacity, closed };
    Problem {
        horizon: HORIZON,
        resources: vec![
            resource("hands", hands, closed),
            resource("burner", 3, vec![]),
            resource("canner", 1, vec![]),
        ],
        stock: BTreeMap::from([("jar".to_owned(), 7 * projects)]),
        projects: (0..projects).map(|p| basket(draws, p)).collect(),
    }
}

/// A basket that may be put up whole or in part.
fn basket(draws: &mut Draws, p: u32) -> Project {
    let loads = draws.between(1, 3);
    let window = (draws.between(0, 28) * 10, draws.between(21, 32) * 10);
    let trim = draws.between(12, 32);
    let cook = (draws.between(15, 40), if draws.one_in(4) { 2 } else { 1 });
    let load = (draws.between(7, 14), draws.between(20, 50));
    let worth = draws.between(60, 140);
    let options = (1..=loads).map(|n| Choice {
        id: format!("loads-{n}"),
        // Each further load is worth a little less than the one before.
        value: (1..=n).map(|k| worth - worth * (k - 1) / 6).sum::<u32>() + draws.between(0, 9),
        ..chain(n, window, trim, cook, load)
    });
    Project { id: format!("basket-{p}"), must: false, options: options.collect() }
}

/// Trimming, cooking, and so many loads, from the hour of delivery to some hours later.
fn chain(
    loads: u32,
    (from, width): (u32, u32),
    trim: u32,
    (cook, stirrers): (u32, u32),
    (fill, process): (u32, u32),
) -> Choice {
    let until = (from + width).min(HORIZON);
    let step = |id: String, minutes: u32, needs: &[(&str, u32)]| Step {
        id,
        minutes,
        needs: needs.iter().map(|&(name, n)| (name.to_owned(), n)).collect(),
        earliest: from,
        latest_end: Some(until),
    };
    let mut steps = vec![
        step("trim".into(), trim * loads, &[("hands", 1)]),
        step("cook".into(), cook, &[("hands", stirrers), ("burner", 1)]),
    ];
    let mut lags = vec![wait("trim", "cook", 45), wait("cook", "fill-1", 5)];
    let mut holds = Vec::new();
    for k in 1..=loads {
        let (filling, processing, lifting) =
            (format!("fill-{k}"), format!("process-{k}"), format!("lift-{k}"));
        steps.push(step(filling.clone(), fill, &[("hands", 1)]));
        steps.push(step(processing.clone(), process, &[("burner", 1)]));
        steps.push(step(lifting.clone(), 4, &[("hands", 1)]));
        lags.push(wait(&filling, &processing, 3));
        lags.push(wait(&processing, &lifting, 5));
        if k > 1 {
            lags.push(wait(&format!("lift-{}", k - 1), &processing, 12));
        }
        holds.push(Hold { resource: "canner".into(), amount: 1, from: processing, to: lifting });
    }
    Choice {
        steps,
        lags,
        holds,
        consumes: BTreeMap::from([("jar".to_owned(), 7 * loads)]),
        ..Choice::default()
    }
}

/// The later step begins at once or so many minutes after, at the most.
fn wait(from: &str, to: &str, most: i32) -> Lag {
    Lag { from: from.into(), to: to.into(), min: 0, max: Some(most) }
}

/// A fixed sequence of numbers that look random (Weyl steps through a 64-bit mixer).
pub(super) struct Draws {
    pub(super) state: u64,
}

impl Draws {
    pub(super) fn next(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub(super) fn between(&mut self, least: u32, most: u32) -> u32 {
        // Fits: the remainder is at most the difference of two 32-bit numbers.
        least + (self.next() % u64::from(most - least + 1)) as u32
    }

    fn one_in(&mut self, n: u64) -> bool {
        self.next().is_multiple_of(n)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_day_and_another_another() {
        assert_eq!(make_day(7).to_json(), make_day(7).to_json());
        assert_ne!(make_day(7).to_json(), make_day(8).to_json());
        assert_eq!(make_day_of(80, 1).projects.len(), 80);
    }

    #[test]
    fn every_day_keeps_the_format_and_asks_for_more_than_there_is() {
        for seed in SEEDS {
            let day = make_day(seed);
            assert_eq!(day.faults(), vec![], "seed {seed}");
            let largest = |p: &Project| {
                let held = |o: &Choice| {
                    o.steps.iter().filter(|s| s.id.starts_with("process")).map(|s| s.minutes).sum()
                };
                p.options.iter().map(held).max().unwrap_or(0u32)
            };
            let canner: u32 = day.projects.iter().map(largest).sum();
            assert!(canner > HORIZON, "seed {seed}: {canner} minutes of the canner");
        }
    }
}
