//! Why no plan exists: a smallest set of musts, stocks and resources that clash by themselves.
//!
//! Each in turn is left out of the problem; if what is left still has no plan, it stays out. What cannot be told
//! before the work runs out counts as having a plan, so a name may then stay that could be left out.

use std::collections::BTreeSet;
use std::fmt;

use super::day::Day;
use super::search::{Goal, search};
use super::work::Clock;
use crate::problem::Problem;

/// The names in the format's words: musts, then stock, then resources.
pub(super) fn find_clash(problem: &Problem, clock: &mut Clock<'_>) -> Vec<String> {
    let musts = problem.projects.iter().filter(|p| p.must).map(|p| &p.id);
    let mut names: Vec<Name<'_>> = musts.map(|id| Name::Must(id)).collect();
    names.extend(problem.stock.keys().map(|id| Name::Stock(id)));
    names.extend(problem.resources.iter().map(|r| Name::Resource(&r.id)));
    let mut kept: BTreeSet<Name<'_>> = names.iter().copied().collect();
    for name in names {
        kept.remove(&name);
        if !clashes(&reduce(problem, &kept), clock) {
            kept.insert(name);
        }
    }
    kept.iter().map(Name::to_string).collect()
}

/// A part of the problem that can be left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Name<'p> {
    Must(&'p str),
    Stock(&'p str),
    Resource(&'p str),
}

impl fmt::Display for Name<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Name::Must(id) => write!(f, "must:{id}"),
            Name::Stock(id) => write!(f, "stock:{id}"),
            Name::Resource(id) => write!(f, "resource:{id}"),
        }
    }
}

fn clashes(problem: &Problem, clock: &mut Clock<'_>) -> bool {
    let day = Day::of(problem);
    search(&day, Goal::AnyPlan, clock, &mut |_, _| true).is_impossible()
}

/// The musts that are kept, and nothing but what is kept to limit them. What they are worth does not matter.
fn reduce(problem: &Problem, kept: &BTreeSet<Name<'_>>) -> Problem {
    let mut problem = problem.clone();
    problem.projects.retain(|p| kept.contains(&Name::Must(&p.id)));
    problem.stock.retain(|id, _| kept.contains(&Name::Stock(id)));
    problem.resources.retain(|r| kept.contains(&Name::Resource(&r.id)));
    for option in problem.projects.iter_mut().flat_map(|p| &mut p.options) {
        option.value = 0;
        option.consumes.retain(|id, _| kept.contains(&Name::Stock(id)));
        option.holds.retain(|h| kept.contains(&Name::Resource(&h.resource)));
        for step in &mut option.steps {
            step.needs.retain(|id, _| kept.contains(&Name::Resource(id)));
        }
    }
    problem
}
