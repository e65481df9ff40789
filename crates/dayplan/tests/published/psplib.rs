//! Project scheduling under limited resources: single-mode instances with 30 activities from PSPLIB, and smaller
//! ones with least and greatest time lags made by ProGen/max.
//!
//! Each instance is a day with one project that must be done, in one option; the dummy activities at both ends are
//! steps of 0 minutes, and the known least makespan is the day's earliest finish. A lag of the instances runs from
//! start to start, so the length of the earlier activity is taken off: many lags here are negative.

use std::path::Path;

use dayplan::{Budget, Plan, Problem, Proved, check, solve};

/// Several times what the hardest of these takes.
const WORK: u64 = 40_000_000;

fn plan_for(name: &str) -> Plan {
    let path =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/published").join(format!("{name}.json"));
    let problem = Problem::from_json(&std::fs::read_to_string(path).unwrap()).unwrap();
    let plan = solve(&problem, Budget::work(WORK));
    assert_eq!(check(&problem, &plan), vec![], "{name}");
    plan
}

fn finishes_at(name: &str, optimum: u32) {
    let plan = plan_for(name);
    assert_eq!(plan.finish, Some(optimum), "{name}");
    assert_eq!(plan.proved, Proved::Optimal, "{name}");
}

fn has_no_schedule(name: &str) {
    let plan = plan_for(name);
    assert_eq!(plan.proved, Proved::Infeasible, "{name}");
    assert!(plan.because.contains(&format!("must:{name}")), "{name}: {:?}", plan.because);
}

/// Source: R. Kolisch, A. Sprecher, PSPLIB - a project scheduling problem library, European Journal of Operational
/// Research 96 (1997) 205-216; instance set J30, optimal makespans of the library's table for that set.
#[test]
fn thirty_activities_reach_their_known_makespans() {
    finishes_at("j301_1", 43);
    finishes_at("j302_4", 43);
    finishes_at("j306_10", 61);
    finishes_at("j3010_1", 42);
    finishes_at("j3017_3", 60);
    finishes_at("j3034_7", 58);
}

/// Source: C. Schwindt, generator ProGen/max for project scheduling with minimum and maximum time lags, instance
/// sets distributed by TU Clausthal, 1998: set J10 instance 1, set UBO10 instance 3, with the makespans of the
/// tables that go with them.
#[test]
fn greatest_time_lags_reach_their_known_makespans() {
    finishes_at("sm_j10_psp1", 26);
    finishes_at("ubo10_psp3", 41);
}

/// Source: as above: set J10 instance 2 and set J20 instance 20, listed there as having no schedule.
#[test]
fn contradictory_time_lags_are_found_to_have_no_schedule() {
    has_no_schedule("sm_j10_psp2");
    has_no_schedule("sm_j20_psp20");
}
