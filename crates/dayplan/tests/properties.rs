//! Generated small days: what `solve` says is held against `check` and against trying everything.

mod everything;

use std::collections::BTreeMap;

use dayplan::{Budget, Choice, Hold, Lag, Plan, Problem, Project, Proved, Resource, Step, check, solve};
use everything::try_everything;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Far more than a tiny day needs, so that every answer is a proof.
const AMPLE: u64 = 40_000_000;

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

fn problem(projects_max: usize, options_max: usize, steps_max: usize) -> impl Strategy<Value = Problem> {
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

/// More cases, or others, on demand: for a long look.
fn asked<N: std::str::FromStr>(variable: &str, usual: N) -> N {
    std::env::var(variable).ok().and_then(|n| n.parse().ok()).unwrap_or(usual)
}
