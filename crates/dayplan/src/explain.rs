//! Why a plan is what it is: what forcing a project in would cost, and what one thing more would bring.
//!
//! Nothing is guessed: each answer comes of solving a changed problem, within a budget of counted work of its own. A
//! gain or a cost is a fact about the plans found; it is called settled where both values are proved.

use std::collections::BTreeMap;

use crate::plan::{Plan, Proved};
use crate::problem::{HORIZON_MAX, Problem};
use crate::solve::{Budget, solve};

/// What comes of making a must of a project that a plan leaves out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Forced {
    /// It can be done, at a cost.
    Cost {
        /// What the whole is worth less.
        worth: u32,
        /// Projects that are left out for it.
        instead_of: Vec<String>,
        /// Projects that are done in another way for it.
        changed: Vec<String>,
        /// Whether both values are proved best, so that it cannot be had for less.
        settled: bool,
    },
    /// It cannot be done at all: `must:ID`, `stock:ID`, `resource:ID` that clash by themselves.
    Clash(
        /// What clashes, of which nothing can be left out.
        Vec<String>,
    ),
    /// The work allowed did not settle it.
    Unsettled,
}

/// What a plan leaves out, forced in.
///
/// `plan` is a plan of `problem`; a project that neither has is unsettled.
#[must_use]
pub fn force_in(problem: &Problem, plan: &Plan, project: &str, budget: Budget) -> Forced {
    let mut forced = problem.clone();
    let Some(must) = forced.projects.iter_mut().find(|other| other.id == project) else {
        return Forced::Unsettled;
    };
    must.must = true;
    let found = solve(&forced, budget);
    let (Some(before), Some(after)) = (plan.value, found.value) else {
        return if found.proved == Proved::Infeasible {
            Forced::Clash(found.because)
        } else {
            Forced::Unsettled
        };
    };
    let other = |id: &str| found.chosen.iter().find(|chosen| chosen.project == id);
    let gone = plan.chosen.iter().filter(|chosen| other(&chosen.project).is_none());
    let changed =
        plan.chosen.iter().filter(|c| other(&c.project).is_some_and(|chosen| chosen.option != c.option));
    Forced::Cost {
        worth: before.saturating_sub(after),
        instead_of: gone.map(|chosen| chosen.project.clone()).collect(),
        changed: changed.map(|chosen| chosen.project.clone()).collect(),
        settled: is_settled(plan) && is_settled(&found),
    }
}

/// More of something than a problem has.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Relief {
    /// Units more of each resource, at every hour at which it is open.
    pub units: BTreeMap<String, u32>,
    /// More of each stock.
    pub stock: BTreeMap<String, u32>,
    /// Minutes by which the day is longer.
    pub minutes: u32,
}

/// What one relief would bring.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Helped {
    /// Its place in the list that was asked about.
    pub relief: usize,
    /// What the whole would be worth more, at the least.
    pub gain: u32,
    /// Projects that would be done as well.
    pub adds: Vec<String>,
    /// Whether both values are proved best.
    pub settled: bool,
}

/// What each relief would bring, those that bring most first and the earlier of equals first. Each costs at most `each`.
///
/// A problem with more never has a lesser best plan; where the work allowed finds only lesser ones, the gain is 0.
#[must_use]
pub fn find_help(problem: &Problem, plan: &Plan, reliefs: &[Relief], each: Budget) -> Vec<Helped> {
    let Some(before) = plan.value else { return Vec::new() };
    let mut helped: Vec<Helped> = reliefs
        .iter()
        .enumerate()
        .map(|(at, relief)| {
            let found = solve(&relieve(problem, relief), each);
            let gain = found.value.unwrap_or(0).saturating_sub(before);
            let is_new =
                |project: &String| gain > 0 && !plan.chosen.iter().any(|chosen| chosen.project == *project);
            let adds = found.chosen.iter().map(|chosen| chosen.project.clone()).filter(is_new).collect();
            Helped { relief: at, gain, adds, settled: is_settled(plan) && is_settled(&found) }
        })
        .collect();
    helped.sort_by_key(|helped| (std::cmp::Reverse(helped.gain), helped.relief));
    helped
}

fn is_settled(plan: &Plan) -> bool {
    matches!(plan.proved, Proved::Optimal | Proved::Value)
}

/// The problem with more of something.
fn relieve(problem: &Problem, relief: &Relief) -> Problem {
    let mut relieved = problem.clone();
    for resource in &mut relieved.resources {
        let more = relief.units.get(&resource.id).copied().unwrap_or(0);
        resource.capacity = resource.capacity.saturating_add(more);
    }
    for (id, more) in &relief.stock {
        if let Some(there) = relieved.stock.get_mut(id) {
            *there = there.saturating_add(*more);
        }
    }
    relieved.horizon = relieved.horizon.saturating_add(relief.minutes).min(HORIZON_MAX);
    relieved
}

#[cfg(test)]
mod tests {
    use super::*;

    const DAY: &str = r#"{"format":"day-problem/1","horizon":60,"stock":{"jar":3},
        "resources":[{"id":"hands","capacity":1},{"id":"pot","capacity":1},{"id":"press","capacity":0}],
        "projects":[
          {"id":"jam","options":[{"id":"big","value":9,"consumes":{"jar":3},
              "steps":[{"id":"s","minutes":40,"needs":{"hands":1,"pot":1}}]},
            {"id":"small","value":5,"consumes":{"jar":2},
              "steps":[{"id":"s","minutes":30,"needs":{"hands":1,"pot":1}}]}]},
          {"id":"pickles","options":[{"id":"o","value":4,"consumes":{"jar":1},
              "steps":[{"id":"s","minutes":30,"needs":{"hands":1}}]}]},
          {"id":"juice","options":[{"id":"o","value":7,
              "steps":[{"id":"s","minutes":5,"needs":{"press":1}}]}]},
          {"id":"tea","options":[{"id":"o","value":2,
              "steps":[{"id":"s","minutes":20,"needs":{"hands":1}}]}]}]}"#;

    fn day() -> (Problem, Plan) {
        let problem = Problem::from_json(DAY).unwrap();
        let plan = solve(&problem, Budget::default());
        assert_eq!(plan.value, Some(11), "the big jam and tea");
        (problem, plan)
    }

    #[test]
    fn forcing_something_in_tells_its_cost_and_what_goes_for_it() {
        let (problem, plan) = day();
        let forced = force_in(&problem, &plan, "pickles", Budget::default());
        let expected = Forced::Cost {
            worth: 2,
            instead_of: vec!["tea".into()],
            changed: vec!["jam".into()],
            settled: true,
        };
        assert_eq!(forced, expected);
        let clash = force_in(&problem, &plan, "juice", Budget::default());
        assert_eq!(clash, Forced::Clash(vec!["must:juice".into(), "resource:press".into()]));
        assert_eq!(force_in(&problem, &plan, "soup", Budget::default()), Forced::Unsettled);
    }

    #[test]
    fn what_helps_most_comes_first() {
        let (problem, plan) = day();
        let one = |id: &str| Relief { units: BTreeMap::from([(id.to_owned(), 1)]), ..Relief::default() };
        let reliefs = [
            one("pot"),
            one("hands"),
            one("press"),
            Relief { minutes: 30, ..Relief::default() },
            Relief { stock: BTreeMap::from([("jar".to_owned(), 12)]), ..Relief::default() },
        ];
        let helped = find_help(&problem, &plan, &reliefs, Budget::default());
        let gains: Vec<(usize, u32)> = helped.iter().map(|helped| (helped.relief, helped.gain)).collect();
        // The press brings the juice (7). Half an hour or hands alone bring nothing: the jars are short, but for tea.
        assert_eq!(gains[0], (2, 7));
        assert_eq!(helped[0].adds, ["juice"]);
        assert_eq!(gains.iter().map(|(_, gain)| *gain).collect::<Vec<_>>(), {
            let mut sorted: Vec<u32> = gains.iter().map(|(_, gain)| *gain).collect();
            sorted.sort_unstable_by(|a, b| b.cmp(a));
            sorted
        });
        assert!(helped.iter().all(|helped| helped.settled));
    }

    #[test]
    fn gains_are_those_of_trying_each_by_hand() {
        let (problem, plan) = day();
        let jars =
            Relief { stock: BTreeMap::from([("jar".to_owned(), 1)]), minutes: 30, ..Relief::default() };
        let helped = find_help(&problem, &plan, &[jars], Budget::default());
        // 90 minutes and four jars: the big jam (40), pickles (30) and tea (20) fill it to the minute.
        assert_eq!((helped[0].gain, helped[0].adds.as_slice()), (4, ["pickles".to_owned()].as_slice()));
    }
}
