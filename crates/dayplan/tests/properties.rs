//! Generated small days: what `solve` says is held against `check` and against trying everything.

#[path = "everything/generate.rs"]
mod generate;

mod everything;

use dayplan::{Budget, Choice, Hold, Plan, Problem, Project, Proved, Resource, Step, check, solve};
use everything::try_everything;
use generate::{asked, problem};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngSeed, TestRunner};

/// Far more than a tiny day needs, so that every answer is a proof.
const AMPLE: u64 = 40_000_000;

/// Up to so many projects of one step each, most with little choice of when, for up to three pairs of hands.
fn jobs(projects_max: usize) -> impl Strategy<Value = Problem> {
    let job = (0u32..=4, 0u32..=3, 0u32..7, prop_oneof![2 => 0u32..3, 1 => 3u32..9], 0u32..6);
    let job = (job, prop::bool::weighted(0.4), prop_oneof![4 => Just(0u32), 1 => 1u32..=2]);
    let closed = prop_oneof![1 => Just(vec![]), 1 => (0u32..9, 0u32..4).prop_map(|(a, n)| vec![(a, a + n)])];
    (6u32..11, 1u32..=3, closed, prop::collection::vec(job, 1..=projects_max)).prop_map(
        |(horizon, capacity, closed, jobs)| Problem {
            horizon,
            resources: vec![Resource { id: "hands".into(), capacity, closed }],
            projects: jobs.into_iter().enumerate().map(|(p, job)| one_job(p, job)).collect(),
            ..Problem::default()
        },
    )
}

/// Minutes, hands, earliest start, minutes to spare, value; whether it must be done; hands held on top.
type Job = ((u32, u32, u32, u32, u32), bool, u32);

fn one_job(p: usize, ((minutes, hands, earliest, spare, value), must, held): Job) -> Project {
    let hold = Hold { resource: "hands".into(), amount: held, from: "s".into(), to: "s".into() };
    let step = Step {
        id: "s".into(),
        minutes,
        needs: [("hands".to_owned(), hands)].into(),
        earliest,
        latest_end: Some(earliest + minutes + spare),
    };
    let option = Choice {
        id: "o".into(),
        value,
        steps: vec![step],
        holds: if held > 0 { vec![hold] } else { vec![] },
        ..Choice::default()
    };
    Project { id: format!("p{p}"), must, options: vec![option] }
}

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

/// Whether everything that a plan says of itself is so, whatever it leaves open.
fn judge_claims(problem: &Problem, plan: &Plan) -> Result<(), TestCaseError> {
    let both = format!("{}\n{}", problem.to_json(), plan.to_json());
    prop_assert_eq!(check(problem, plan), vec![], "{}", both);
    let Some((value, finish)) = try_everything(problem) else {
        prop_assert!(matches!(plan.proved, Proved::Infeasible | Proved::Unknown), "{}", both);
        return Ok(());
    };
    prop_assert!(plan.proved != Proved::Infeasible, "{}", both);
    if let Some(bound) = plan.bound {
        prop_assert!(bound.value >= value, "{}", both);
        prop_assert!(bound.finish.is_none_or(|least| least <= finish), "{}", both);
    }
    if matches!(plan.proved, Proved::Value | Proved::Optimal) {
        prop_assert_eq!(plan.value, Some(value), "{}", both);
    }
    if plan.proved == Proved::Optimal {
        prop_assert_eq!(plan.finish, Some(finish), "{}", both);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: asked("DAY_CASES", 2_000),
        rng_seed: RngSeed::Fixed(asked("DAY_SEED", 20)),
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
    fn four_jobs_for_up_to_three_hands_agree_with_trying_everything(problem in jobs(4)) {
        judge(&problem, &solve(&problem, Budget::work(AMPLE)))?;
    }

    #[test]
    fn whatever_is_claimed_after_little_work_is_true(problem in problem(3, 2, 2), work in 0u64..40_000) {
        judge_claims(&problem, &solve(&problem, Budget::work(work)))?;
    }

    #[test]
    fn whatever_is_claimed_of_four_jobs_after_little_work_is_true(problem in jobs(4), work in 0u64..40_000) {
        judge_claims(&problem, &solve(&problem, Budget::work(work)))?;
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

/// Many musts in a short day with little of everything, so that most days are impossible.
#[test]
fn of_two_hundred_impossible_days_each_names_a_clash_with_nothing_to_spare() {
    let config =
        ProptestConfig { rng_seed: RngSeed::Fixed(asked("DAY_SEED", 20)), ..ProptestConfig::default() };
    let mut runner = TestRunner::new(config);
    let days = problem(3, 2, 2);
    let (mut impossible, mut names) = (0, 0);
    while impossible < 200 {
        let mut problem = days.new_tree(&mut runner).expect("nothing is rejected").current();
        problem.projects.iter_mut().for_each(|p| p.must = true);
        let plan = solve(&problem, Budget::work(AMPLE));
        judge(&problem, &plan).expect("the answer is what trying everything says");
        if plan.proved == Proved::Infeasible {
            impossible += 1;
            names += plan.because.len();
        }
    }
    assert!(names > 300, "{names} names in all: the clashes are too plain to say much");
}
