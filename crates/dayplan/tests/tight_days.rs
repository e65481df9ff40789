//! Days of a kitchen with more baskets than hands: long chains with short waits, one pair of hands for most of the day.
//!
//! The households are invented. The best values were found and proved by a general exact solver (OR-Tools CP-SAT 9.15)
//! and are pinned here; what this crate finds by its default budget must not fall behind them.

#![expect(clippy::unwrap_used, reason = "a test reads data that is in the tree")]

use std::path::Path;

use dayplan::{Budget, Problem, check, solve};

fn reaches(name: &str, value: u32) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data").join(format!("{name}.json"));
    let problem = Problem::from_json(&std::fs::read_to_string(path).unwrap()).unwrap();
    let plan = solve(&problem, Budget::default());
    assert_eq!(check(&problem, &plan), vec![], "{name}");
    assert_eq!(plan.value, Some(value), "{name}");
    let bound = plan.bound.map(|b| b.value).unwrap();
    assert!(bound >= value, "{name}: a bound of {bound} denies the plan");
}

/// Pinned: best value proved by the solver named above.
#[test]
fn a_day_with_one_pair_of_hands_until_three_reaches_its_best_value() {
    reaches("one-pair-of-hands-until-three", 4768);
}

/// Pinned: best value proved by the solver named above. The best plan leaves not one minute of hands idle.
#[test]
fn a_day_without_a_minute_of_hands_to_spare_reaches_its_best_value() {
    reaches("no-minute-of-hands-to-spare", 3966);
}
