//! Keeps as many steps as can be kept where the old plan had them.
//!
//! The chosen options stay; of their steps, those that stand at their old starts are pinned there, and the others are
//! tried at theirs, first all of a project at once and then one by one. A set of pins is kept when the planner finds
//! a plan with it. Each try has the same small budget of counted work, so that the answer is the same everywhere.

use std::collections::BTreeSet;

use super::restate::{Rest, find_option, is_pinned};
use crate::plan::{Chosen, Plan};
use crate::problem::{Problem, Project};
use crate::solve::{Budget, solve};

/// Work of the planner on one set of pins.
const TRY_WORK: u64 = 120_000;

/// A step by its project and name.
type StepName = (String, String);

/// Steps of the old plan that have not begun and do not stand at their old start in `chosen`.
pub(super) fn moved_steps(rest: &Rest, chosen: &[Chosen]) -> Vec<StepName> {
    free_steps(rest)
        .into_iter()
        .filter(|(project, step, start)| {
            let there = chosen.iter().find(|other| other.project == *project);
            there.and_then(|other| other.starts.get(step)) != Some(start)
        })
        .map(|(project, step, _)| (project, step))
        .collect()
}

/// The steps of the old plan that may move, in the order of their old starts.
fn free_steps(rest: &Rest) -> Vec<(String, String, u32)> {
    let mut steps: Vec<(u32, String, String)> = Vec::new();
    for old in &rest.old {
        let option = find_option(&rest.problem, &old.project, &old.option);
        let pinned = |id: &str| {
            let step = option.and_then(|option| option.steps.iter().find(|step| step.id == id));
            step.is_some_and(|step| is_pinned(step, rest.problem.horizon))
        };
        let free = old.starts.iter().filter(|(id, _)| !pinned(id));
        steps.extend(free.map(|(id, start)| (*start, old.project.clone(), id.clone())));
    }
    steps.sort();
    steps.into_iter().map(|(start, project, step)| (project, step, start)).collect()
}

/// A plan of the same options that moves fewer steps, and ends no later than `finish`; the one given when none is found.
pub(super) fn keep_still(rest: &Rest, best: Vec<Chosen>, finish: u32, budget: u64) -> Vec<Chosen> {
    let mut tries = budget / TRY_WORK;
    let mut best = best;
    let mut kept: BTreeSet<StepName> = BTreeSet::new();
    let free = free_steps(rest);
    let at_old = |chosen: &[Chosen]| -> BTreeSet<StepName> {
        let moved: BTreeSet<StepName> = moved_steps(rest, chosen).into_iter().collect();
        let all = free.iter().map(|(project, step, _)| (project.clone(), step.clone()));
        all.filter(|name| !moved.contains(name)).collect()
    };
    kept.extend(at_old(&best));
    let possible = |name: &&StepName| {
        let old = free.iter().find(|(project, step, _)| (project, step) == (&name.0, &name.1));
        old.is_some_and(|(_, _, start)| *start >= rest.now)
    };
    let missing = moved_steps(rest, &best);
    let missing: Vec<&StepName> = missing.iter().filter(possible).collect();
    let mut groups: Vec<Vec<StepName>> = Vec::new();
    for name in &missing {
        match groups.iter_mut().find(|group| group[0].0 == name.0) {
            Some(group) => group.push((*name).clone()),
            None => groups.push(vec![(*name).clone()]),
        }
    }
    // All at once first: after a slip that hurts nothing, that is the answer.
    groups.insert(0, missing.iter().map(|name| (*name).clone()).collect());
    groups.extend(missing.iter().map(|name| vec![(*name).clone()]));
    for group in groups {
        let wanted: BTreeSet<StepName> = kept.iter().cloned().chain(group).collect();
        if wanted.len() == kept.len() {
            continue;
        }
        if tries == 0 {
            break;
        }
        tries -= 1;
        let pinned = pin(rest, &best, &wanted, finish);
        if let Some(found) = plan_all(&pinned) {
            best = found;
            kept = at_old(&best);
        }
    }
    best
}

/// The plan of a problem in which everything must be done, if one is found.
fn plan_all(problem: &Problem) -> Option<Vec<Chosen>> {
    let Plan { value, chosen, .. } = solve(problem, Budget::work(TRY_WORK));
    value.map(|_| chosen)
}

/// The rest of the day with only the chosen options, the named steps at their old starts, and nothing after `finish`.
fn pin(rest: &Rest, chosen: &[Chosen], names: &BTreeSet<StepName>, finish: u32) -> Problem {
    let mut problem = Problem { projects: Vec::new(), ..rest.problem.clone() };
    for pick in chosen {
        let Some(option) = find_option(&rest.problem, &pick.project, &pick.option) else { continue };
        let mut option = option.clone();
        let old = rest.old.iter().find(|old| old.project == pick.project);
        for step in &mut option.steps {
            if is_pinned(step, rest.problem.horizon) {
                continue;
            }
            let latest = step.latest_end.unwrap_or(rest.problem.horizon);
            step.latest_end = Some(latest.min(finish));
            let start = old.and_then(|old| old.starts.get(&step.id));
            if let (Some(&start), true) = (start, names.contains(&(pick.project.clone(), step.id.clone()))) {
                step.earliest = step.earliest.max(start);
                step.latest_end = Some((start + step.minutes).min(latest));
            }
        }
        problem.projects.push(Project { id: pick.project.clone(), must: true, options: vec![option] });
    }
    problem
}
