//! Days that slip: whatever happens, what has begun stays, the answer keeps its rules and is no worse than shifting.

#[path = "everything/generate.rs"]
mod generate;

use std::collections::BTreeMap;

use dayplan::{
    Away, Begun, Budget, Change, Plan, Problem, Replanned, Resource, Slip, check, replan, shift, solve,
};
use generate::{asked, problem};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn again(problem: &Problem, plan: &Plan, slip: &Slip) -> (Replanned, Replanned) {
    let mut first = None;
    let best = replan(problem, plan, slip, Budget::work(2_000_000), &mut |seen| first = Some(seen.clone()));
    (first.expect("the shifted plan is shown first"), best.expect("the slip has no faults"))
}

/// Every step that was begun stands where it began, in every project that is still done.
fn begun_stays(slip: &Slip, told: &Replanned) -> bool {
    slip.begun.iter().all(|begun| {
        let pick = told.plan.chosen.iter().find(|pick| pick.project == begun.project);
        pick.is_none_or(|pick| pick.starts[&begun.step] == begun.start)
    })
}

fn begun_is_given_up(told: &Replanned) -> bool {
    told.changes.iter().any(|change| matches!(change, Change::Left { begun: true, .. }))
}

/// How a day slips: the minute, what every step takes more, a unit that goes missing.
type Mishap = (u32, Vec<u32>, Option<(u32, u32, u32)>);

fn mishap() -> impl Strategy<Value = Mishap> {
    let away = prop_oneof![2 => Just(None), 1 => (0u32..8, 0u32..8, 1u32..2).prop_map(Some)];
    (0u32..8, prop::collection::vec(0u32..3, 12), away)
}

fn slip_of(problem: &Problem, plan: &Plan, (now, longer, away): &Mishap) -> Slip {
    let mut slip = Slip::as_planned(plan, *now);
    for (begun, longer) in slip.begun.iter_mut().zip(longer) {
        let chosen =
            plan.chosen.iter().find(|c| c.project == begun.project).expect("it was begun as planned");
        let project = problem.projects.iter().find(|p| p.id == begun.project).expect("the plan names it");
        let option = project.options.iter().find(|o| o.id == chosen.option).expect("the plan names it");
        let minutes = option.steps.iter().find(|s| s.id == begun.step).expect("it has it").minutes;
        begun.minutes = Some(minutes + longer);
    }
    if let Some((from, minutes, units)) = *away {
        let resource = "hands".to_owned();
        slip.away.push(Away { resource, units, from, to: from + minutes });
    }
    slip
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: asked("DAY_CASES", 300),
        rng_seed: RngSeed::Fixed(41),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn what_has_begun_never_moves_and_the_rest_keeps_its_rules(
        problem in problem(4, 2, 3),
        mishap in mishap(),
    ) {
        let plan = solve(&problem, Budget::work(4_000_000));
        prop_assume!(plan.value.is_some());
        let slip = slip_of(&problem, &plan, &mishap);
        let (first, best) = again(&problem, &plan, &slip);
        for told in [&first, &best] {
            let breaches = check(&told.problem, &told.plan);
            prop_assert_eq!(breaches, vec![], "{}\n{}", told.problem.to_json(), told.plan.to_json());
            prop_assert!(begun_stays(&slip, told), "{:?}\n{}", slip, told.plan.to_json());
            let now_or_later = |pick: &dayplan::Chosen| {
                let has_begun = |step: &String| slip.begun.iter().any(|b| b.project == pick.project && b.step == *step);
                let facts = told.problem.projects.iter().any(|p| p.id == pick.project && p.options[0].id == "facts");
                facts || pick.starts.iter().all(|(step, start)| *start >= slip.now || has_begun(step))
            };
            prop_assert!(told.plan.chosen.iter().all(now_or_later), "{:?}\n{}", slip, told.plan.to_json());
        }
        let quick = shift(&problem, &plan, &slip);
        prop_assert_eq!(quick.as_ref(), Ok(&first));
        if best.problem == first.problem {
            prop_assert!(best.plan.value >= first.plan.value);
            if best.plan.value == first.plan.value {
                prop_assert!(best.changes.len() <= first.changes.len(), "{:?}\n{:?}", best.changes, first.changes);
            }
        }
        // Something that was begun is given up only where no plan finishes it.
        prop_assert!(!begun_is_given_up(&best) || begun_is_given_up(&first));
        prop_assert_eq!(again(&problem, &plan, &slip).1, best, "the same slip has the same answer");
    }

    #[test]
    fn a_day_that_goes_as_planned_stays_as_planned(problem in problem(4, 2, 3), now in 0u32..8) {
        let plan = solve(&problem, Budget::work(4_000_000));
        prop_assume!(plan.value.is_some());
        let slip = Slip::as_planned(&plan, now);
        let (first, best) = again(&problem, &plan, &slip);
        prop_assert_eq!(&first.changes, &vec![]);
        prop_assert_eq!(best.plan.value, plan.value);
        prop_assert_eq!(&best.changes, &vec![]);
        prop_assert_eq!((best.missed, best.overdrawn, best.late_by), (vec![], vec![], 0));
    }
}

const CANNING: &str = r#"{"format":"day-problem/1","horizon":240,
    "resources":[{"id":"hands","capacity":1},{"id":"canner","capacity":1},{"id":"burner","capacity":2}],
    "projects":[
      {"id":"beans","options":[{"id":"seven","value":30,"steps":[
          {"id":"fill","minutes":20,"needs":{"hands":1}},
          {"id":"process","minutes":40,"needs":{"burner":1}},
          {"id":"lift","minutes":5,"needs":{"hands":1}}],
        "lags":[{"from":"fill","to":"process","max":5},{"from":"process","to":"lift","max":15}],
        "holds":[{"resource":"canner","amount":1,"from":"fill","to":"lift"}]}]},
      {"id":"jam","options":[{"id":"six","value":20,"steps":[
          {"id":"boil","minutes":25,"needs":{"hands":1,"burner":1}},
          {"id":"process","minutes":10,"needs":{"burner":1}},
          {"id":"lift","minutes":5,"needs":{"hands":1}}],
        "lags":[{"from":"boil","to":"process","max":5},{"from":"process","to":"lift","max":15}],
        "holds":[{"resource":"canner","amount":1,"from":"boil","to":"lift"}]}]},
      {"id":"bread","options":[{"id":"loaf","value":5,"steps":[{"id":"knead","minutes":20,"needs":{"hands":1}}]}]}]}"#;

fn canning() -> (Problem, Plan) {
    let problem = Problem::from_json(CANNING).expect("it is in the format");
    let starts = |list: &[(&str, u32)]| -> BTreeMap<String, u32> {
        list.iter().map(|(step, start)| ((*step).to_owned(), *start)).collect()
    };
    let chosen = |project: &str, option: &str, list: &[(&str, u32)]| dayplan::Chosen {
        project: project.to_owned(),
        option: option.to_owned(),
        starts: starts(list),
    };
    let plan = Plan {
        proved: dayplan::Proved::No,
        value: Some(55),
        finish: Some(130),
        bound: None,
        chosen: vec![
            chosen("beans", "seven", &[("fill", 0), ("process", 20), ("lift", 60)]),
            chosen("jam", "six", &[("boil", 65), ("process", 90), ("lift", 125)]),
            chosen("bread", "loaf", &[("knead", 25)]),
        ],
        because: vec![],
        stopped: false,
    };
    let mut plan = plan;
    plan.chosen[1].starts.insert("lift".into(), 100);
    plan.finish = Some(105);
    (problem, plan)
}

fn start(told: &Replanned, project: &str, step: &str) -> u32 {
    told.plan.chosen.iter().find(|c| c.project == project).expect("it is still made").starts[step]
}

#[test]
fn a_fill_that_ran_long_moves_what_waits_for_it_and_nothing_else() {
    let (problem, plan) = canning();
    let mut slip = Slip::as_planned(&plan, 22);
    // The process is not begun: the filling took until now and needs four minutes more.
    slip.begun.retain(|begun| begun.step != "process");
    slip.begun[0].minutes = Some(26);
    let (first, best) = again(&problem, &plan, &slip);
    assert_eq!(start(&first, "beans", "process"), 26);
    assert_eq!(start(&best, "beans", "process"), 26);
    // The bread had hands from 25 on; a minute later they are free.
    assert_eq!(start(&best, "bread", "knead"), 26);
    assert_eq!(start(&best, "jam", "boil"), 71);
    assert_eq!(best.changes.len(), 6, "{:?}", best.changes);
    assert_eq!((best.missed.len(), best.late_by), (0, 0));
}

#[test]
fn jars_in_the_canner_stay_there_when_a_burner_dies() {
    let (problem, plan) = canning();
    let mut slip = Slip::as_planned(&plan, 30);
    slip.resources = vec![Resource { id: "burner".into(), capacity: 1, closed: vec![] }];
    let (_, best) = again(&problem, &plan, &slip);
    assert_eq!(start(&best, "beans", "process"), 20);
    assert_eq!(best.overdrawn, vec![]);
    assert_eq!(best.plan.value, Some(55), "one burner is enough for the rest");
    assert_eq!(best.changes, vec![]);
}

#[test]
fn something_on_a_burner_that_is_gone_is_told() {
    let (problem, plan) = canning();
    let mut slip = Slip::as_planned(&plan, 30);
    slip.resources = vec![Resource { id: "burner".into(), capacity: 0, closed: vec![] }];
    let (_, best) = again(&problem, &plan, &slip);
    assert_eq!(best.overdrawn.len(), 1);
    assert_eq!((best.overdrawn[0].resource.as_str(), best.overdrawn[0].used), ("burner", 1));
    assert!(best.changes.contains(&Change::Left { project: "jam".into(), begun: false }));
    assert_eq!(start(&best, "beans", "lift"), 60);
}

#[test]
fn what_cannot_be_done_in_time_is_done_late_before_it_is_given_up() {
    let (problem, plan) = canning();
    let mut slip = Slip::as_planned(&plan, 21);
    let process = slip.begun.iter_mut().find(|b| b.step == "process").expect("it was begun at 20");
    process.minutes = Some(230);
    let (_, best) = again(&problem, &plan, &slip);
    assert_eq!(start(&best, "beans", "lift"), 250);
    assert_eq!(best.late_by, 15);
    assert!(best.changes.contains(&Change::Left { project: "jam".into(), begun: false }));
    assert_eq!(start(&best, "bread", "knead"), 25);
}

#[test]
fn a_wait_that_is_over_its_limit_already_is_told_as_it_is() {
    let (problem, plan) = canning();
    // Filled at 20, and at 40 the jars still stand there.
    let mut slip = Slip { now: 40, ..Slip::default() };
    slip.begun = vec![Begun { project: "beans".into(), step: "fill".into(), start: 0, minutes: None }];
    let (_, best) = again(&problem, &plan, &slip);
    assert_eq!(start(&best, "beans", "process"), 40, "at once");
    assert_eq!(best.missed.len(), 1);
    assert_eq!((best.missed[0].gap, best.missed[0].max, best.missed[0].is_past), (20, 5, false));
}

#[test]
fn a_new_pair_of_hands_lets_more_be_made() {
    let (mut problem, _) = canning();
    problem.horizon = 105;
    problem.projects[1].options[0].steps[0].minutes = 60;
    let plan = solve(&problem, Budget::default());
    let slip = Slip::as_planned(&plan, 1);
    let (_, alone) = again(&problem, &plan, &slip);
    let more = vec![
        Resource { id: "hands".into(), capacity: 2, closed: vec![] },
        Resource { id: "canner".into(), capacity: 2, closed: vec![] },
    ];
    let helped = Slip { resources: more, ..slip };
    let (_, helped) = again(&problem, &plan, &helped);
    assert!(helped.plan.value > alone.plan.value);
    assert!(
        helped.changes.iter().any(|change| matches!(change, Change::Added { .. })),
        "{:?}",
        helped.changes
    );
}
