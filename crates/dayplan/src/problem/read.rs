//! Reads a problem document strictly.

use std::collections::BTreeSet;

use serde_json::Value;

use super::limits::{AMOUNT_MAX, HORIZON_MAX, find_faults};
use super::{Choice, Hold, Lag, PROBLEM_FORMAT, Problem, Project, Resource, Step};
use crate::fault::Fault;
use crate::reading::{Reader, at};

/// [`AMOUNT_MAX`] for numbers with a sign. Never wraps: the limit is far below 2^31.
const SIGNED_MAX: i32 = AMOUNT_MAX as i32;

pub(super) fn read_problem(text: &str) -> Result<Problem, Vec<Fault>> {
    let mut reader = Reader::default();
    let problem = match reader.parse(text) {
        Some(value) => problem(&mut reader, &value),
        None => Problem::default(),
    };
    let mut faults = reader.faults;
    let shape: BTreeSet<String> = faults.iter().map(|f| f.path.clone()).collect();
    if !shape.contains("") {
        // A value of the wrong shape was replaced; what the limits say of the replacement is noise.
        let fresh = |f: &Fault| !shape.contains(&f.path);
        faults.extend(find_faults(&problem).into_iter().filter(fresh));
    }
    if faults.is_empty() { Ok(problem) } else { Err(faults) }
}

fn problem(r: &mut Reader, value: &Value) -> Problem {
    let must = ["format", "horizon", "resources", "projects"];
    let Some(map) = r.object("", value, &must, &["stock"]) else {
        return Problem::default();
    };
    r.format(map, PROBLEM_FORMAT);
    Problem {
        horizon: r.whole("horizon", map.get("horizon"), HORIZON_MAX),
        resources: r.list("resources", map.get("resources"), resource),
        stock: r.amounts("stock", map.get("stock"), AMOUNT_MAX),
        projects: r.list("projects", map.get("projects"), project),
    }
}

pub(crate) fn resource(r: &mut Reader, path: &str, value: &Value) -> Resource {
    let Some(map) = r.object(path, value, &["id", "capacity"], &["closed"]) else {
        return Resource::default();
    };
    Resource {
        id: r.text(&at(path, "id"), map.get("id")),
        capacity: r.whole(&at(path, "capacity"), map.get("capacity"), AMOUNT_MAX),
        closed: r.list(&at(path, "closed"), map.get("closed"), interval),
    }
}

fn interval(r: &mut Reader, path: &str, value: &Value) -> (u32, u32) {
    if let Some([from, to]) = value.as_array().map(Vec::as_slice) {
        let from = r.whole(&format!("{path}[0]"), Some(from), AMOUNT_MAX);
        (from, r.whole(&format!("{path}[1]"), Some(to), AMOUNT_MAX))
    } else {
        r.wrong_type(path, value, "a list of two minutes");
        (0, 0)
    }
}

fn project(r: &mut Reader, path: &str, value: &Value) -> Project {
    let Some(map) = r.object(path, value, &["id", "options"], &["must"]) else {
        return Project::default();
    };
    Project {
        id: r.text(&at(path, "id"), map.get("id")),
        must: r.flag(&at(path, "must"), map.get("must")),
        options: r.list(&at(path, "options"), map.get("options"), option),
    }
}

fn option(r: &mut Reader, path: &str, value: &Value) -> Choice {
    let may = ["consumes", "lags", "holds"];
    let Some(map) = r.object(path, value, &["id", "value", "steps"], &may) else {
        return Choice::default();
    };
    Choice {
        id: r.text(&at(path, "id"), map.get("id")),
        value: r.whole(&at(path, "value"), map.get("value"), AMOUNT_MAX),
        consumes: r.amounts(&at(path, "consumes"), map.get("consumes"), AMOUNT_MAX),
        steps: r.list(&at(path, "steps"), map.get("steps"), step),
        lags: r.list(&at(path, "lags"), map.get("lags"), lag),
        holds: r.list(&at(path, "holds"), map.get("holds"), hold),
    }
}

fn step(r: &mut Reader, path: &str, value: &Value) -> Step {
    let may = ["needs", "earliest", "latest_end"];
    let Some(map) = r.object(path, value, &["id", "minutes"], &may) else {
        return Step::default();
    };
    let latest_end = map.get("latest_end");
    Step {
        id: r.text(&at(path, "id"), map.get("id")),
        minutes: r.whole(&at(path, "minutes"), map.get("minutes"), AMOUNT_MAX),
        needs: r.amounts(&at(path, "needs"), map.get("needs"), AMOUNT_MAX),
        earliest: r.whole(&at(path, "earliest"), map.get("earliest"), AMOUNT_MAX),
        latest_end: latest_end.map(|v| r.whole(&at(path, "latest_end"), Some(v), AMOUNT_MAX)),
    }
}

fn lag(r: &mut Reader, path: &str, value: &Value) -> Lag {
    let Some(map) = r.object(path, value, &["from", "to"], &["min", "max"]) else {
        return Lag::default();
    };
    let max = map.get("max").filter(|v| !v.is_null());
    Lag {
        from: r.text(&at(path, "from"), map.get("from")),
        to: r.text(&at(path, "to"), map.get("to")),
        min: r.signed(&at(path, "min"), map.get("min"), SIGNED_MAX),
        max: max.map(|v| r.signed(&at(path, "max"), Some(v), SIGNED_MAX)),
    }
}

fn hold(r: &mut Reader, path: &str, value: &Value) -> Hold {
    let must = ["resource", "amount", "from", "to"];
    let Some(map) = r.object(path, value, &must, &[]) else {
        return Hold::default();
    };
    Hold {
        resource: r.text(&at(path, "resource"), map.get("resource")),
        amount: r.whole(&at(path, "amount"), map.get("amount"), AMOUNT_MAX),
        from: r.text(&at(path, "from"), map.get("from")),
        to: r.text(&at(path, "to"), map.get("to")),
    }
}
