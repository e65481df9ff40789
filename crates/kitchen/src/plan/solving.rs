//! States the day as a problem, has it solved, and draws the end of the day in.

use std::collections::BTreeMap;

use dayplan::{Budget, Choice, Plan, Problem, Project, Proved, Step};

use super::candidates::Considered;
use super::pools::{ABSENCES, Pools};
use crate::work::Work;

/// The project of a formula.
pub(crate) fn project_id(considered: &Considered<'_>) -> String {
    considered.formula.id.as_str().to_owned()
}

/// A candidate formula as a project of the problem.
pub(crate) fn project_of(considered: &Considered<'_>) -> Project {
    let options = considered
        .options
        .iter()
        .map(|candidate| Choice {
            id: candidate.id.clone(),
            value: candidate.worth.value(),
            consumes: candidate.consumes.clone(),
            steps: steps_of(&candidate.work),
            lags: candidate.work.lags.clone(),
            holds: candidate.work.holds.clone(),
        })
        .collect();
    Project { id: project_id(considered), must: considered.must, options }
}

fn steps_of(work: &Work) -> Vec<Step> {
    work.steps
        .iter()
        .map(|step| Step {
            id: step.id.clone(),
            minutes: step.minutes,
            needs: step.needs.clone(),
            ..Step::default()
        })
        .collect()
}

/// Puts the parts of a day together. Stock that options take and nobody counted is not limited: it is left out.
pub(crate) fn state_problem(
    horizon: u32,
    resources: Vec<dayplan::Resource>,
    stock: BTreeMap<String, u32>,
    pools: Pools,
    mut projects: Vec<Project>,
) -> Problem {
    for choice in projects.iter_mut().flat_map(|project| &mut project.options) {
        choice.consumes.retain(|line, amount| *amount > 0 && stock.contains_key(line));
    }
    projects.extend(pools.absences);
    let resources = pools.resources.into_iter().chain(resources).collect();
    Problem { horizon, resources, stock, projects }
}

/// When the last real step of a plan ends; absences are no work.
pub(crate) fn real_finish(problem: &Problem, plan: &Plan) -> Option<u32> {
    plan.chosen
        .iter()
        .filter(|chosen| chosen.project != ABSENCES)
        .filter_map(|chosen| {
            let choice = find_choice(problem, &chosen.project, &chosen.option)?;
            choice.steps.iter().filter_map(|step| Some(chosen.starts.get(&step.id)? + step.minutes)).max()
        })
        .max()
}

/// An option by its names.
pub(crate) fn find_choice<'a>(problem: &'a Problem, project: &str, option: &str) -> Option<&'a Choice> {
    problem.projects.iter().find(|p| p.id == project)?.options.iter().find(|choice| choice.id == option)
}

/// Work for the whole problem, and for each look at whether the chosen makes fit a shorter day.
const WHOLE_WORK: u64 = 12_000_000;
const SHORTER_WORK: u64 = 600_000;
/// Shorter days tried.
const SHORTER_TRIES: u32 = 5;

/// Solves the problem. The format counts absences to the finish, so where somebody leaves before the others the
/// solver has no reason to end early: the chosen makes are then fitted into ever shorter days.
pub(crate) fn solve_day(problem: &Problem) -> Plan {
    let plan = dayplan::solve(problem, Budget::work(WHOLE_WORK));
    let Some(finish) = real_finish(problem, &plan) else { return plan };
    let absent_until = problem
        .projects
        .iter()
        .filter(|project| project.id == ABSENCES)
        .flat_map(|project| project.options.iter().flat_map(|choice| &choice.steps))
        .filter_map(|step| step.latest_end)
        .max()
        .unwrap_or(0);
    if absent_until <= finish { plan } else { draw_in(problem, plan, finish) }
}

/// Fits the chosen makes into shorter days by halving.
fn draw_in(problem: &Problem, plan: Plan, finish: u32) -> Plan {
    let mut best = plan;
    let (mut low, mut high) = (0, finish);
    for _ in 0..SHORTER_TRIES {
        let middle = low + (high - low) / 2;
        if middle <= low {
            break;
        }
        let shorter = shorter_day(problem, &best, middle);
        let found = dayplan::solve(&shorter, Budget::work(SHORTER_WORK));
        match real_finish(&shorter, &found) {
            Some(end) if end <= middle => {
                high = end;
                best = transplant(problem, &best, &found);
            }
            _ => low = middle,
        }
    }
    best
}

/// The same day with only the chosen options, all of them musts, ending at `horizon`.
fn shorter_day(problem: &Problem, plan: &Plan, horizon: u32) -> Problem {
    let projects = plan
        .chosen
        .iter()
        .filter_map(|chosen| {
            let mut choice = find_choice(problem, &chosen.project, &chosen.option)?.clone();
            if chosen.project == ABSENCES {
                choice.steps.retain(|step| step.earliest < horizon);
                for step in &mut choice.steps {
                    let end = (step.earliest + step.minutes).min(horizon);
                    step.minutes = end - step.earliest;
                    step.latest_end = Some(end);
                }
            }
            for step in &mut choice.steps {
                step.latest_end = step.latest_end.map(|end| end.min(horizon));
            }
            Some(Project { id: chosen.project.clone(), must: true, options: vec![choice] })
        })
        .collect();
    Problem { horizon, projects, ..problem.clone() }
}

/// The plan without one of its projects. What is left keeps every rule; it is no longer proved to be best.
pub(crate) fn leave_out(problem: &Problem, mut plan: Plan, project: &str) -> Plan {
    plan.chosen.retain(|chosen| chosen.project != project);
    plan.value = Some(
        plan.chosen
            .iter()
            .filter_map(|chosen| find_choice(problem, &chosen.project, &chosen.option))
            .map(|choice| choice.value)
            .sum(),
    );
    plan.finish = Some(last_end(problem, &plan));
    plan.proved = Proved::No;
    if let Some(bound) = &mut plan.bound {
        bound.finish = None;
    }
    plan
}

/// The last end of a step, absences among them; 0 when nothing is chosen.
fn last_end(problem: &Problem, plan: &Plan) -> u32 {
    let ends = plan.chosen.iter().filter_map(|chosen| {
        let choice = find_choice(problem, &chosen.project, &chosen.option)?;
        choice.steps.iter().filter_map(|step| Some(chosen.starts.get(&step.id)? + step.minutes)).max()
    });
    ends.max().unwrap_or(0)
}

/// The starts found for a narrower problem, as a plan of the whole one.
pub(crate) fn transplant(problem: &Problem, plan: &Plan, found: &Plan) -> Plan {
    let mut plan = plan.clone();
    for chosen in &mut plan.chosen {
        let other = found.chosen.iter().find(|other| other.project == chosen.project);
        match other {
            Some(other) if chosen.project != ABSENCES => chosen.starts.clone_from(&other.starts),
            _ => {}
        }
    }
    let finish = Some(last_end(problem, &plan));
    if plan.proved == Proved::Optimal && finish != plan.finish {
        plan.proved = Proved::Value;
    }
    plan.finish = finish;
    plan
}
