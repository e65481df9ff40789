//! Generated days small enough to try everything on.

use std::collections::BTreeMap;

use dayplan::{Choice, Hold, Lag, Problem, Project, Resource, Step};
use proptest::prelude::*;

fn step() -> impl Strategy<Value = (u32, BTreeMap<String, u32>, u32, Option<u32>)> {
    let needs = (0u32..=2, 0u32..=1).prop_map(|(hands, pot)| {
        let all = [("hands", hands), ("pot", pot)];
        all.into_iter().filter(|n| n.1 > 0).map(|(id, n)| (id.to_owned(), n)).collect()
    });
    let latest = prop_oneof![4 => Just(None), 1 => (2u32..9).prop_map(Some)];
    (0u32..=3, needs, prop_oneof![3 => Just(0u32), 1 => 0u32..4], latest)
}

fn lag(steps: usize) -> impl Strategy<Value = Lag> {
    let max = prop_oneof![1 => Just(None), 2 => (0i32..5).prop_map(Some)];
    (0..steps, 0..steps, -4i32..=2, max).prop_map(|(a, b, min, width)| Lag {
        from: format!("s{a}"),
        to: format!("s{b}"),
        min,
        // One in many is narrower than its minimum: such an option is impossible, and no error.
        max: width.map(|w| min + w - i32::from(w == 4) * 5),
    })
}

fn hold(steps: usize) -> impl Strategy<Value = Hold> {
    (prop_oneof![Just("hands"), Just("pot")], 1u32..=2, 0..steps, 0..steps).prop_map(
        |(resource, amount, a, b)| Hold {
            resource: resource.to_owned(),
            amount,
            from: format!("s{a}"),
            to: format!("s{b}"),
        },
    )
}

fn choice(steps_max: usize) -> impl Strategy<Value = Choice> {
    prop::collection::vec(step(), 0..=steps_max).prop_flat_map(|steps| {
        let n = steps.len();
        let (lags, holds) = if n == 0 {
            (prop::collection::vec(lag(1), 0..=0).boxed(), prop::collection::vec(hold(1), 0..=0).boxed())
        } else {
            let lags = prop::collection::vec(lag(n), 0..=2).boxed();
            (lags, prop::collection::vec(hold(n), 0..=1).boxed())
        };
        (Just(steps), lags, holds, 0u32..6, 0u32..3).prop_map(|(steps, lags, holds, value, jars)| Choice {
            id: String::new(),
            value,
            consumes: BTreeMap::from([("jar".to_owned(), jars)]),
            steps: steps
                .into_iter()
                .enumerate()
                .map(|(k, (minutes, needs, earliest, latest_end))| Step {
                    id: format!("s{k}"),
                    minutes,
                    needs,
                    earliest,
                    latest_end,
                })
                .collect(),
            lags,
            holds,
        })
    })
}

/// Days of so many projects, options of each, and steps of those at the most.
pub fn problem(projects_max: usize, options_max: usize, steps_max: usize) -> impl Strategy<Value = Problem> {
    let project = (prop::bool::weighted(0.3), prop::collection::vec(choice(steps_max), 1..=options_max));
    let closed = prop_oneof![2 => Just(vec![]), 1 => (0u32..6, 0u32..3).prop_map(|(a, n)| vec![(a, a + n)])];
    let resources = (0u32..=2, closed, 0u32..=1);
    (3u32..8, resources, 0u32..=4, prop::collection::vec(project, 1..=projects_max)).prop_map(
        |(horizon, (hands, closed, pot), jars, projects)| Problem {
            horizon,
            resources: vec![
                Resource { id: "hands".into(), capacity: hands, closed },
                Resource { id: "pot".into(), capacity: pot, closed: vec![] },
            ],
            stock: BTreeMap::from([("jar".to_owned(), jars)]),
            projects: projects
                .into_iter()
                .enumerate()
                .map(|(p, (must, options))| Project {
                    id: format!("p{p}"),
                    must,
                    options: options
                        .into_iter()
                        .enumerate()
                        .map(|(o, choice)| Choice { id: format!("o{o}"), ..choice })
                        .collect(),
                })
                .collect(),
        },
    )
}
