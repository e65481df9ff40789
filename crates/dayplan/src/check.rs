//! Judges a plan: does it keep every rule of its problem, and are its figures its own?
//!
//! Written from the format's page alone. It shares the types of [`crate::problem`] and [`crate::plan`] with the
//! solver and none of its code, so that a mistake in the one is not repeated in the other. A claim that no plan
//! exists is judged by its shape; whether it is true is not decided here.

use std::collections::{BTreeMap, BTreeSet};

use crate::breach::Breach;
use crate::plan::{Chosen, Plan, Proved};
use crate::problem::{Choice, Problem};

/// Every rule that `plan` breaks; empty when it keeps them all.
pub fn check(problem: &Problem, plan: &Plan) -> Vec<Breach> {
    let faults = problem.faults();
    if !faults.is_empty() {
        return faults.into_iter().map(Breach::Problem).collect();
    }
    match plan.proved {
        Proved::Infeasible => check_claim(problem, plan, "infeasible"),
        Proved::Unknown => check_claim(problem, plan, "unknown"),
        Proved::Optimal | Proved::Value | Proved::No => check_plan(problem, plan),
    }
}

fn check_claim(problem: &Problem, plan: &Plan, claim: &'static str) -> Vec<Breach> {
    let mut breaches = Vec::new();
    if !plan.chosen.is_empty() {
        let count = plan.chosen.len();
        breaches.push(Breach::ClaimedAndChosen { claim, count });
    }
    if plan.value.is_some() || plan.finish.is_some() || plan.bound.is_some() {
        breaches.push(Breach::ClaimedWithFigures { claim });
    }
    if plan.proved == Proved::Infeasible {
        if plan.because.is_empty() {
            breaches.push(Breach::NoReason);
        }
        for name in plan.because.iter().filter(|n| !names_part(problem, n)) {
            breaches.push(Breach::UnknownReason { name: name.clone() });
        }
    }
    breaches
}

/// Whether `name` is `must:`, `stock:` or `resource:` followed by an id of that kind.
fn names_part(problem: &Problem, name: &str) -> bool {
    if let Some(id) = name.strip_prefix("must:") {
        problem.projects.iter().any(|p| p.must && p.id == id)
    } else if let Some(id) = name.strip_prefix("stock:") {
        problem.stock.contains_key(id)
    } else if let Some(id) = name.strip_prefix("resource:") {
        problem.resources.iter().any(|r| r.id == id)
    } else {
        false
    }
}

fn check_plan(problem: &Problem, plan: &Plan) -> Vec<Breach> {
    let mut tally = Tally::default();
    for chosen in &plan.chosen {
        tally.add(problem, chosen);
    }
    for project in problem.projects.iter().filter(|p| p.must) {
        if !tally.projects.contains(project.id.as_str()) {
            let project = project.id.clone();
            tally.breaches.push(Breach::LeftOut { project });
        }
    }
    tally.judge_stock(problem);
    tally.judge_resources(problem);
    tally.judge_figures(plan);
    tally.breaches
}

/// What the chosen options come to.
#[derive(Default)]
struct Tally<'p> {
    breaches: Vec<Breach>,
    projects: BTreeSet<&'p str>,
    stock: BTreeMap<&'p str, u64>,
    /// Per resource: from, to, units.
    uses: BTreeMap<&'p str, Vec<(u64, u64, u32)>>,
    value: u64,
    finish: u64,
}

impl<'p> Tally<'p> {
    fn add(&mut self, problem: &'p Problem, chosen: &Chosen) {
        let project = problem.projects.iter().find(|p| p.id == chosen.project);
        let option = project.and_then(|p| p.options.iter().find(|o| o.id == chosen.option));
        let (Some(project), Some(option)) = (project, option) else {
            self.breaches.push(Breach::UnknownOption {
                project: chosen.project.clone(),
                option: chosen.option.clone(),
            });
            return;
        };
        if !self.projects.insert(&project.id) {
            let project = project.id.clone();
            self.breaches.push(Breach::ChosenTwice { project });
        }
        self.value += u64::from(option.value);
        for (id, &amount) in &option.consumes {
            *self.stock.entry(id).or_default() += u64::from(amount);
        }
        if self.names_each_step(option, chosen) {
            self.add_steps(problem, option, chosen);
            self.judge_lags(option, chosen);
            self.add_holds(option, chosen);
        }
    }

    fn names_each_step(&mut self, option: &Choice, chosen: &Chosen) -> bool {
        let before = self.breaches.len();
        for step in &option.steps {
            if !chosen.starts.contains_key(&step.id) {
                self.breaches
                    .push(Breach::NoStart { project: chosen.project.clone(), step: step.id.clone() });
            }
        }
        for id in chosen.starts.keys() {
            if !option.steps.iter().any(|s| s.id == *id) {
                self.breaches.push(Breach::StrayStart { project: chosen.project.clone(), step: id.clone() });
            }
        }
        self.breaches.len() == before
    }

    fn add_steps(&mut self, problem: &Problem, option: &'p Choice, chosen: &Chosen) {
        for step in &option.steps {
            let start = chosen.starts[&step.id];
            if start < step.earliest {
                self.breaches.push(Breach::TooEarly {
                    project: chosen.project.clone(),
                    step: step.id.clone(),
                    start,
                    earliest: step.earliest,
                });
            }
            let end = u64::from(start) + u64::from(step.minutes);
            let latest_end = step.latest_end.unwrap_or(problem.horizon);
            let latest_end = latest_end.min(problem.horizon);
            if end > u64::from(latest_end) {
                self.breaches.push(Breach::TooLate {
                    project: chosen.project.clone(),
                    step: step.id.clone(),
                    end,
                    latest_end,
                });
            }
            self.finish = self.finish.max(end);
            for (id, &units) in &step.needs {
                self.take(id, u64::from(start), end, units);
            }
        }
    }

    fn judge_lags(&mut self, option: &Choice, chosen: &Chosen) {
        for lag in &option.lags {
            let (_, end) = run_of(option, chosen, &lag.from);
            let (start, _) = run_of(option, chosen, &lag.to);
            // Both are below 2^33, far inside the signed range.
            let gap = start as i64 - end as i64;
            let (project, from, to) = (&chosen.project, &lag.from, &lag.to);
            if gap < i64::from(lag.min) {
                self.breaches.push(Breach::TooClose {
                    project: project.clone(),
                    from: from.clone(),
                    to: to.clone(),
                    gap,
                    min: lag.min,
                });
            }
            if let Some(max) = lag.max.filter(|&max| gap > i64::from(max)) {
                self.breaches.push(Breach::TooFar {
                    project: project.clone(),
                    from: from.clone(),
                    to: to.clone(),
                    gap,
                    max,
                });
            }
        }
    }

    fn add_holds(&mut self, option: &'p Choice, chosen: &Chosen) {
        for hold in &option.holds {
            let (start, _) = run_of(option, chosen, &hold.from);
            let (_, end) = run_of(option, chosen, &hold.to);
            self.take(&hold.resource, start, end, hold.amount);
        }
    }

    fn take(&mut self, id: &'p str, from: u64, to: u64, units: u32) {
        if from < to && units > 0 {
            self.uses.entry(id).or_default().push((from, to, units));
        }
    }

    fn judge_stock(&mut self, problem: &Problem) {
        for (&id, &used) in &self.stock {
            let there = problem.stock.get(id).copied().unwrap_or(0);
            if used > u64::from(there) {
                self.breaches.push(Breach::OverStock { stock: id.to_owned(), used, there });
            }
        }
    }

    fn judge_resources(&mut self, problem: &Problem) {
        for resource in &problem.resources {
            let Some(uses) = self.uses.get(resource.id.as_str()) else {
                continue;
            };
            let closed_use = |&(a, b, _): &(u64, u64, u32)| {
                let shut = resource.closed.iter();
                let shut = shut.map(|&(x, y)| (a.max(u64::from(x)), b.min(u64::from(y))));
                shut.filter(|(x, y)| x < y).map(|(x, _)| x).min()
            };
            if let Some(minute) = uses.iter().filter_map(closed_use).min() {
                let resource = resource.id.clone();
                self.breaches.push(Breach::Closed { resource, minute });
            }
            if let Some((minute, used)) = first_over(uses, u64::from(resource.capacity)) {
                self.breaches.push(Breach::OverCapacity {
                    resource: resource.id.clone(),
                    minute,
                    used,
                    capacity: resource.capacity,
                });
            }
        }
    }

    fn judge_figures(&mut self, plan: &Plan) {
        let figures = [("value", plan.value, self.value), ("finish", plan.finish, self.finish)];
        for (figure, said, is) in figures {
            if said.map(u64::from) != Some(is) {
                self.breaches.push(Breach::WrongFigure { figure, said, is });
            }
        }
        let Some(bound) = plan.bound else { return };
        if u64::from(bound.value) < self.value {
            self.breaches.push(Breach::PassedBound { figure: "value", bound: bound.value, is: self.value });
        }
        if plan.proved == Proved::No {
            return;
        }
        if u64::from(bound.value) > self.value {
            self.breaches.push(Breach::OpenBound { figure: "value", bound: bound.value, is: self.value });
        }
        let Some(finish) = bound.finish else { return };
        let (figure, bound, is) = ("finish", finish, self.finish);
        if u64::from(finish) > is {
            self.breaches.push(Breach::PassedBound { figure, bound, is });
        } else if plan.proved == Proved::Optimal && u64::from(finish) != is {
            self.breaches.push(Breach::OpenBound { figure, bound, is });
        }
    }
}

/// Start and end of a step of a chosen option whose starts were found complete.
fn run_of(option: &Choice, chosen: &Chosen, id: &str) -> (u64, u64) {
    let step = option.steps.iter().find(|s| s.id == id);
    let step = step.expect("the problem has no faults, so its lags and holds name steps");
    let start = u64::from(chosen.starts[id]);
    (start, start + u64::from(step.minutes))
}

/// The first minute at which more than `capacity` is in use, and how much.
fn first_over(uses: &[(u64, u64, u32)], capacity: u64) -> Option<(u64, u64)> {
    let mut change: BTreeMap<u64, i64> = BTreeMap::new();
    for &(from, to, units) in uses {
        *change.entry(from).or_default() += i64::from(units);
        *change.entry(to).or_default() -= i64::from(units);
    }
    let mut used = 0;
    change.into_iter().find_map(|(minute, by)| {
        used += by;
        // Never negative: an interval is given back only after it was taken.
        (used as u64 > capacity).then_some((minute, used as u64))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Bound;

    const DAY: &str = r#"{"format":"day-problem/1","horizon":60,"stock":{"jar":3},
        "resources":[{"id":"hands","capacity":1,"closed":[[40,50]]},{"id":"pot","capacity":1}],
        "projects":[
          {"id":"jam","must":true,"options":[{"id":"few","value":5,"consumes":{"jar":2},
            "steps":[{"id":"cut","minutes":10,"needs":{"hands":1},"earliest":5},
                     {"id":"cook","minutes":10,"needs":{"hands":1},"latest_end":40}],
            "lags":[{"from":"cut","to":"cook","min":2,"max":9}],
            "holds":[{"resource":"pot","amount":1,"from":"cut","to":"cook"}]}]},
          {"id":"bread","options":[{"id":"loaf","value":3,"consumes":{"jar":1},
            "steps":[{"id":"mix","minutes":5,"needs":{"hands":1}},{"id":"rest","minutes":0,"needs":{"pot":1}}]}]}]}"#;

    fn good() -> Plan {
        let text = r#"{"format":"day-plan/1","value":8,"finish":28,"proved":"no","bound":{"value":9,"finish":null},
            "chosen":[{"project":"jam","option":"few","starts":{"cut":6,"cook":18}},
                      {"project":"bread","option":"loaf","starts":{"mix":0,"rest":10}}]}"#;
        Plan::from_json(text).unwrap()
    }

    fn breaches(spoil: impl FnOnce(&mut Problem, &mut Plan)) -> Vec<String> {
        let mut problem = Problem::from_json(DAY).unwrap();
        let mut plan = good();
        spoil(&mut problem, &mut plan);
        check(&problem, &plan).iter().map(Breach::to_string).collect()
    }

    fn start(plan: &mut Plan, k: usize, step: &str, minute: u32) {
        plan.chosen[k].starts.insert(step.into(), minute);
    }

    #[test]
    fn a_plan_that_keeps_every_rule_has_no_breach() {
        assert_eq!(breaches(|_, _| ()), Vec::<String>::new());
    }

    #[test]
    fn each_broken_rule_is_named() {
        let says = |spoil: fn(&mut Problem, &mut Plan), expected: &str| {
            assert_eq!(breaches(spoil), [expected]);
        };
        says(|_, p| p.value = Some(9), "the plan says value 9, and it is 8");
        says(|_, p| p.finish = None, "the plan says finish nothing, and it is 28");
        says(|q, _| q.stock = [("jar".into(), 2)].into(), "3 of stock \"jar\" are used, of 2");
        says(|_, p| start(p, 1, "mix", 4), "2 of \"hands\" are in use at minute 6, of 1");
        says(|_, p| start(p, 1, "mix", 10), "2 of \"hands\" are in use at minute 10, of 1");
        says(
            |q, _| q.resources[0].closed = vec![(3, 4)],
            "\"hands\" is in use at minute 3, while it is closed",
        );
        says(|q, _| q.resources[1].capacity = 0, "1 of \"pot\" are in use at minute 6, of 0");
        says(
            |q, _| q.projects[0].options[0].steps[0].earliest = 7,
            "step \"cut\" of \"jam\" starts at 6, before 7",
        );
        says(
            |q, _| q.projects[0].options[0].steps[1].latest_end = Some(27),
            "step \"cook\" of \"jam\" ends at 28, after 27",
        );
        says(
            |q, _| q.projects[0].options[0].lags[0].min = 3,
            "from the end of \"cut\" to the start of \"cook\" in \"jam\" are 2 minutes, fewer than 3",
        );
        says(
            |q, _| {
                (q.projects[0].options[0].lags[0].min, q.projects[0].options[0].lags[0].max) = (0, Some(1))
            },
            "from the end of \"cut\" to the start of \"cook\" in \"jam\" are 2 minutes, more than 1",
        );
        says(
            |_, p| p.bound = Some(Bound { value: 7, finish: None }),
            "the bound on the value is 7, and the plan itself reaches 8",
        );
    }

    #[test]
    fn a_hold_that_ends_before_it_starts_takes_nothing() {
        let turned = |q: &mut Problem, _: &mut Plan| {
            let hold = &mut q.projects[0].options[0].holds[0];
            (hold.from, hold.to) = ("cook".into(), "cut".into());
            q.resources[1].capacity = 0;
        };
        assert_eq!(breaches(turned), Vec::<String>::new());
    }

    #[test]
    fn a_proof_must_agree_with_its_bound() {
        let proof = |proved, value, finish| {
            breaches(|_, p| (p.proved, p.bound) = (proved, Some(Bound { value, finish })))
        };
        assert_eq!(proof(Proved::Optimal, 8, Some(28)), Vec::<String>::new());
        assert_eq!(proof(Proved::Value, 8, Some(20)), Vec::<String>::new());
        assert_eq!(proof(Proved::Value, 9, None), ["the value 8 is called proved, and its bound is 9"]);
        assert_eq!(
            proof(Proved::Optimal, 8, Some(20)),
            ["the finish 28 is called proved, and its bound is 20"]
        );
        assert_eq!(
            proof(Proved::Value, 8, Some(29)),
            ["the bound on the finish is 29, and the plan itself reaches 28"]
        );
    }

    #[test]
    fn a_claim_of_no_plan_is_judged_by_its_shape() {
        let claim = |because: &[&str]| {
            breaches(|_, p| {
                let because = because.iter().map(|&b| b.to_owned()).collect();
                *p = Plan::without(Proved::Infeasible, because, false);
            })
        };
        assert_eq!(claim(&["must:jam", "resource:pot", "stock:jar"]), Vec::<String>::new());
        assert_eq!(claim(&["must:bread"]), ["because names \"must:bread\", which the problem does not have"]);
        assert_eq!(claim(&[]).len(), 1);
        assert_eq!(breaches(|_, p| p.proved = Proved::Unknown).len(), 2);
    }
}
