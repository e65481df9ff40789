//! Laws that hold between answers: more room never costs value, names and units of worth do not matter, a shortened
//! search leaves a plan that stands.

#[path = "everything/generate.rs"]
mod generate;

use std::collections::BTreeMap;
use std::ops::ControlFlow;

use dayplan::{Budget, Plan, Problem, Proved, check, solve, solve_with};
use generate::{asked, problem};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Far more than a tiny day needs, so that every answer is a proof.
const AMPLE: u64 = 40_000_000;

/// Value and finish, worst first: no plan, then by value, then by earlier finish.
fn rank(plan: &Plan) -> Option<(u32, std::cmp::Reverse<u32>)> {
    plan.value.zip(plan.finish.map(std::cmp::Reverse))
}

fn best(problem: &Problem) -> Plan {
    solve(problem, Budget::work(AMPLE))
}

/// The same day with every list turned round and other names for everything.
fn turned(problem: &Problem) -> Problem {
    let name = |id: &String| format!("z{}", id.chars().rev().collect::<String>());
    let rename = |amounts: &BTreeMap<String, u32>| amounts.iter().map(|(id, &n)| (name(id), n)).collect();
    let mut problem = problem.clone();
    problem.stock = rename(&problem.stock);
    problem.resources.reverse();
    problem.resources.iter_mut().for_each(|r| r.id = name(&r.id));
    problem.projects.reverse();
    for project in &mut problem.projects {
        project.id = name(&project.id);
        project.options.reverse();
        for option in &mut project.options {
            option.id = name(&option.id);
            option.consumes = rename(&option.consumes);
            option.steps.reverse();
            option.lags.reverse();
            option.holds.reverse();
            for step in &mut option.steps {
                step.id = name(&step.id);
                step.needs = rename(&step.needs);
            }
            for lag in &mut option.lags {
                (lag.from, lag.to) = (name(&lag.from), name(&lag.to));
            }
            for hold in &mut option.holds {
                (hold.from, hold.to, hold.resource) =
                    (name(&hold.from), name(&hold.to), name(&hold.resource));
            }
        }
    }
    problem
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: asked("DAY_CASES", 400),
        rng_seed: RngSeed::Fixed(asked("DAY_SEED", 20)),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn one_more_of_anything_never_costs_value(problem in problem(3, 2, 3), which in 0usize..3) {
        let before = best(&problem);
        let mut more = problem.clone();
        match which {
            0 | 1 => more.resources[which].capacity += 1,
            _ => more.stock.values_mut().for_each(|n| *n += 1),
        }
        prop_assert!(rank(&best(&more)) >= rank(&before), "{}", problem.to_json());
    }

    #[test]
    fn a_wider_window_never_costs_value(problem in problem(3, 2, 3), which in 0usize..5) {
        let before = best(&problem);
        let mut wider = problem.clone();
        match which {
            0 => wider.horizon += 1,
            1 => wider.resources.iter_mut().for_each(|r| r.closed.clear()),
            _ => {
                for option in wider.projects.iter_mut().flat_map(|p| &mut p.options) {
                    match which {
                        2 => option.steps.iter_mut().for_each(|s| s.earliest = s.earliest.saturating_sub(1)),
                        3 => option.steps.iter_mut().for_each(|s| s.latest_end = s.latest_end.map(|t| t + 1)),
                        _ => option.lags.iter_mut().for_each(|l| l.max = l.max.map(|m| m + 1)),
                    }
                }
            }
        }
        prop_assert!(rank(&best(&wider)) >= rank(&before), "{}", problem.to_json());
    }

    #[test]
    fn names_and_the_order_of_lists_change_nothing_but_names(problem in problem(3, 2, 3)) {
        let (plan, other) = (best(&problem), best(&turned(&problem)));
        prop_assert_eq!(rank(&plan), rank(&other), "{}", problem.to_json());
        prop_assert_eq!((plan.proved, plan.bound), (other.proved, other.bound));
    }

    #[test]
    fn another_unit_of_worth_changes_nothing(problem in problem(3, 2, 3), unit in 2u32..5000) {
        let mut scaled = problem.clone();
        scaled.projects.iter_mut().flat_map(|p| &mut p.options).for_each(|o| o.value *= unit);
        let (plan, other) = (best(&problem), best(&scaled));
        prop_assert_eq!(plan.value.map(|v| v * unit), other.value, "{}", problem.to_json());
        prop_assert_eq!((plan.finish, plan.proved), (other.finish, other.proved));
    }

    #[test]
    fn a_search_stopped_at_any_plan_leaves_that_plan(problem in problem(5, 3, 4), stop_at in 0usize..6) {
        let mut seen: Vec<Plan> = Vec::new();
        let plan = solve_with(&problem, Budget::work(200_000), &mut |plan: &Plan, _: u64| {
            seen.push(plan.clone());
            if seen.len() > stop_at { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
        });
        prop_assert_eq!(check(&problem, &plan), vec![], "{}", problem.to_json());
        prop_assert_eq!(plan.stopped, seen.len() > stop_at);
        if let Some(last) = seen.last() {
            prop_assert!(rank(&plan) >= rank(last), "{}", problem.to_json());
        }
    }

    #[test]
    fn with_more_work_nothing_that_was_proved_is_taken_back(problem in problem(4, 3, 4), work in 0u64..30_000) {
        let (little, much) = (solve(&problem, Budget::work(work)), best(&problem));
        prop_assert!(rank(&much) >= rank(&little), "{}", problem.to_json());
        if let (Some(bound), Some(value)) = (little.bound, much.value) {
            prop_assert!(value <= bound.value, "{}", problem.to_json());
        }
        prop_assert!(little.proved != Proved::Infeasible || much.proved == Proved::Infeasible);
    }
}
