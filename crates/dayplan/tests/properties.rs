//! Generated small days: what `solve` says is held against `check` and against trying everything.

mod everything;
mod small_days;

use dayplan::{Budget, Plan, Problem, Proved, check, solve};
use everything::try_everything;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use small_days::problem;

/// Far more than a tiny day needs, so that every answer is a proof.
const AMPLE: u64 = 40_000_000;

/// The musts, stock and resources that a plan without a solution names, and nothing else of the problem.
fn reduced(problem: &Problem, because: &[&String]) -> Problem {
    let named = |word: &str, id: &str| because.iter().any(|b| **b == format!("{word}:{id}"));
    let mut problem = problem.clone();
    problem.projects.retain(|p| named("must", &p.id));
    let gone: Vec<String> =
        problem.resources.iter().filter(|r| !named("resource", &r.id)).map(|r| r.id.clone()).collect();
    problem.resources.retain(|r| !gone.contains(&r.id));
    problem.stock.retain(|id, _| named("stock", id));
    for option in problem.projects.iter_mut().flat_map(|p| &mut p.options) {
        option.consumes.retain(|id, _| named("stock", id));
        option.holds.retain(|h| !gone.contains(&h.resource));
        option.steps.iter_mut().for_each(|s| s.needs.retain(|id, _| !gone.contains(id)));
    }
    problem
}

fn judge(problem: &Problem, plan: &Plan) -> Result<(), TestCaseError> {
    prop_assert_eq!(check(problem, plan), vec![], "{}\n{}", problem.to_json(), plan.to_json());
    match try_everything(problem) {
        Some((value, finish)) => {
            prop_assert_eq!(plan.value, Some(value), "{}\n{}", problem.to_json(), plan.to_json());
            prop_assert_eq!(plan.finish, Some(finish), "{}\n{}", problem.to_json(), plan.to_json());
            prop_assert_eq!(plan.proved, Proved::Optimal);
        }
        None => {
            prop_assert_eq!(plan.proved, Proved::Infeasible, "{}\n{}", problem.to_json(), plan.to_json());
            let because: Vec<&String> = plan.because.iter().collect();
            prop_assert_eq!(try_everything(&reduced(problem, &because)), None, "{:?}", because);
            for k in 0..because.len() {
                let mut fewer = because.clone();
                fewer.remove(k);
                let fewer = reduced(problem, &fewer);
                prop_assert!(
                    try_everything(&fewer).is_some(),
                    "{:?} without {}\n{}",
                    because,
                    k,
                    problem.to_json()
                );
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: cases(400),
        rng_seed: RngSeed::Fixed(20),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn two_projects_of_one_option_agree_with_trying_everything(problem in problem(2, 1, 3)) {
        judge(&problem, &solve(&problem, Budget::work(AMPLE)))?;
    }

    #[test]
    fn three_projects_with_a_choice_agree_with_trying_everything(problem in problem(3, 2, 2)) {
        judge(&problem, &solve(&problem, Budget::work(AMPLE)))?;
    }

    #[test]
    fn a_small_budget_still_keeps_every_rule(problem in problem(5, 3, 4), work in 0u64..3_000) {
        let plan = solve(&problem, Budget::work(work));
        prop_assert_eq!(check(&problem, &plan), vec![]);
        prop_assert!(!plan.stopped);
        prop_assert_eq!(solve(&problem, Budget::work(work)).to_json(), plan.to_json());
    }

    #[test]
    fn problems_and_plans_survive_being_written_and_read(problem in problem(4, 3, 4)) {
        prop_assert_eq!(Problem::from_json(&problem.to_json()), Ok(problem.clone()));
        let plan = solve(&problem, Budget::work(10_000));
        prop_assert_eq!(Plan::from_json(&plan.to_json()), Ok(plan));
    }
}

/// More cases on demand, for a long look.
fn cases(usual: u32) -> u32 {
    std::env::var("DAY_CASES").ok().and_then(|n| n.parse().ok()).unwrap_or(usual)
}
