//! The limits of the format, for problems however they were made: ids, names that point somewhere, amounts.

use std::collections::{BTreeMap, BTreeSet};

use super::{Choice, Problem};
use crate::fault::{Fault, Wrong};
use crate::reading::at;

/// Greatest minutes, amount, capacity, stock or value.
pub const AMOUNT_MAX: u32 = 1_000_000;
/// Greatest horizon, in minutes.
pub const HORIZON_MAX: u32 = 100_000;
/// Greatest sum of the best values of all projects: the last number below 2^31.
pub const VALUE_SUM_MAX: u64 = (1 << 31) - 1;

/// Lengths of lists beyond which a day is not planned: some of the work that compiles a day grows with the cube of an
/// option's steps, before any budget is asked.
const PROJECTS_MAX: usize = 10_000;
const RESOURCES_MAX: usize = 500;
const CLOSED_MAX: usize = 1_000;
const OPTIONS_MAX: usize = 200;
const STEPS_MAX: usize = 300;
const STEPS_IN_ALL_MAX: usize = 20_000;
const TIES_MAX: usize = 2_000;
const STOCK_MAX: usize = 2_000;

pub(super) fn find_faults(problem: &Problem) -> Vec<Fault> {
    let mut look = Look::default();
    look.amount("horizon", problem.horizon, HORIZON_MAX);
    look.size("resources", problem.resources.len(), RESOURCES_MAX, "resources");
    look.size("stock", problem.stock.len(), STOCK_MAX, "kinds of stock");
    look.size("projects", problem.projects.len(), PROJECTS_MAX, "projects");
    let options = problem.projects.iter().flat_map(|p| &p.options);
    look.size("projects", options.map(|o| o.steps.len()).sum(), STEPS_IN_ALL_MAX, "steps in all");
    look.ids("resources", problem.resources.iter().map(|r| &r.id));
    for (i, resource) in problem.resources.iter().enumerate() {
        let path = format!("resources[{i}]");
        look.amount(&at(&path, "capacity"), resource.capacity, AMOUNT_MAX);
        look.size(&at(&path, "closed"), resource.closed.len(), CLOSED_MAX, "intervals");
        for (j, &(from, to)) in resource.closed.iter().enumerate() {
            let path = format!("{path}.closed[{j}]");
            look.amount(&format!("{path}[0]"), from, AMOUNT_MAX);
            look.amount(&format!("{path}[1]"), to, AMOUNT_MAX);
            if from > to {
                look.say(&path, Wrong::Backwards { from, to });
            }
        }
    }
    for (id, &amount) in &problem.stock {
        look.amount(&at("stock", id), amount, AMOUNT_MAX);
    }
    look.ids("projects", problem.projects.iter().map(|p| &p.id));
    let known = Known {
        resources: problem.resources.iter().map(|r| r.id.as_str()).collect(),
        stock: problem.stock.keys().map(String::as_str).collect(),
    };
    for (i, project) in problem.projects.iter().enumerate() {
        let path = format!("projects[{i}].options");
        look.size(&path, project.options.len(), OPTIONS_MAX, "options");
        look.ids(&path, project.options.iter().map(|o| &o.id));
        for (j, option) in project.options.iter().enumerate() {
            look.option(&format!("{path}[{j}]"), option, &known);
        }
    }
    look.worth(problem);
    look.faults
}

struct Known<'p> {
    resources: BTreeSet<&'p str>,
    stock: BTreeSet<&'p str>,
}

#[derive(Default)]
struct Look {
    faults: Vec<Fault>,
}

impl Look {
    fn say(&mut self, path: &str, wrong: Wrong) {
        self.faults.push(Fault::new(path, wrong));
    }

    fn size(&mut self, path: &str, found: usize, most: usize, what: &'static str) {
        if found > most {
            self.say(path, Wrong::TooMany { what, found, most });
        }
    }

    fn amount(&mut self, path: &str, amount: u32, most: u32) {
        if amount > most {
            self.beyond(path, i64::from(amount), 0, i64::from(most));
        }
    }

    fn signed(&mut self, path: &str, amount: i32) {
        let (amount, most) = (i64::from(amount), i64::from(AMOUNT_MAX));
        if amount.abs() > most {
            self.beyond(path, amount, -most, most);
        }
    }

    fn beyond(&mut self, path: &str, found: i64, least: i64, most: i64) {
        let found = found.to_string();
        self.say(path, Wrong::Whole { found, least, most });
    }

    fn ids<'p>(&mut self, path: &str, ids: impl Iterator<Item = &'p String>) {
        let mut seen = BTreeSet::new();
        for (i, id) in ids.enumerate() {
            if id.is_empty() {
                self.say(&format!("{path}[{i}].id"), Wrong::EmptyId);
            } else if !seen.insert(id) {
                self.say(&format!("{path}[{i}].id"), Wrong::Twice { id: id.clone() });
            }
        }
    }

    fn listed(&mut self, path: &str, name: &str, known: &BTreeSet<&str>, list: &'static str) {
        if !known.contains(name) {
            let name = name.to_owned();
            self.say(path, Wrong::Unlisted { name, list });
        }
    }

    fn amounts(
        &mut self,
        path: &str,
        amounts: &BTreeMap<String, u32>,
        known: &BTreeSet<&str>,
        list: &'static str,
    ) {
        for (name, &amount) in amounts {
            self.listed(&at(path, name), name, known, list);
            self.amount(&at(path, name), amount, AMOUNT_MAX);
        }
    }

    fn option(&mut self, path: &str, option: &Choice, known: &Known<'_>) {
        self.amount(&at(path, "value"), option.value, AMOUNT_MAX);
        self.amounts(&at(path, "consumes"), &option.consumes, &known.stock, "stock");
        self.size(&at(path, "steps"), option.steps.len(), STEPS_MAX, "steps");
        self.size(&at(path, "lags"), option.lags.len(), TIES_MAX, "lags");
        self.size(&at(path, "holds"), option.holds.len(), TIES_MAX, "holds");
        self.ids(&at(path, "steps"), option.steps.iter().map(|s| &s.id));
        for (k, step) in option.steps.iter().enumerate() {
            let path = format!("{path}.steps[{k}]");
            self.amount(&at(&path, "minutes"), step.minutes, AMOUNT_MAX);
            self.amounts(&at(&path, "needs"), &step.needs, &known.resources, "resources");
            self.amount(&at(&path, "earliest"), step.earliest, AMOUNT_MAX);
            self.amount(&at(&path, "latest_end"), step.latest_end.unwrap_or(0), AMOUNT_MAX);
        }
        let steps: BTreeSet<&str> = option.steps.iter().map(|s| s.id.as_str()).collect();
        for (k, lag) in option.lags.iter().enumerate() {
            let path = format!("{path}.lags[{k}]");
            self.listed(&at(&path, "from"), &lag.from, &steps, "steps");
            self.listed(&at(&path, "to"), &lag.to, &steps, "steps");
            self.signed(&at(&path, "min"), lag.min);
            self.signed(&at(&path, "max"), lag.max.unwrap_or(0));
        }
        for (k, hold) in option.holds.iter().enumerate() {
            let path = format!("{path}.holds[{k}]");
            self.listed(&at(&path, "resource"), &hold.resource, &known.resources, "resources");
            self.amount(&at(&path, "amount"), hold.amount, AMOUNT_MAX);
            self.listed(&at(&path, "from"), &hold.from, &steps, "steps");
            self.listed(&at(&path, "to"), &hold.to, &steps, "steps");
        }
    }

    fn worth(&mut self, problem: &Problem) {
        let best = |options: &[Choice]| options.iter().map(|o| u64::from(o.value)).max();
        let sum = problem.projects.iter().filter_map(|p| best(&p.options)).sum();
        if sum > VALUE_SUM_MAX {
            let most = VALUE_SUM_MAX;
            self.say("projects", Wrong::Worth { sum, most });
        }
    }
}
