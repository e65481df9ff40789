//! Reads a plan document.

use serde_json::Value;

use super::{Bound, Chosen, PLAN_FORMAT, Plan, Proved};
use crate::fault::{Fault, Wrong};
use crate::reading::{Reader, at};

/// Notes a solver may add of its own run; nobody judges them.
const NOTES: [&str; 3] = ["seconds", "stages", "trace"];

pub(super) fn read_plan(text: &str) -> Result<Plan, Vec<Fault>> {
    let mut reader = Reader::default();
    let plan = reader.parse(text).and_then(|v| plan(&mut reader, &v));
    match plan {
        Some(plan) if reader.faults.is_empty() => Ok(plan),
        _ => Err(reader.faults),
    }
}

fn plan(r: &mut Reader, value: &Value) -> Option<Plan> {
    let mut may = vec!["value", "finish", "bound", "because", "stopped"];
    may.extend(NOTES);
    let map = r.object("", value, &["format", "proved", "chosen"], &may)?;
    r.format(map, PLAN_FORMAT);
    let because = r.list("because", map.get("because"), |r, path, v| r.text(path, Some(v)));
    Some(Plan {
        proved: proved(r, map.get("proved")),
        value: figure(r, "value", map.get("value")),
        finish: figure(r, "finish", map.get("finish")),
        bound: bound(r, map.get("bound")),
        chosen: r.list("chosen", map.get("chosen"), chosen),
        because,
        stopped: r.flag("stopped", map.get("stopped")),
    })
}

fn proved(r: &mut Reader, value: Option<&Value>) -> Proved {
    let found = r.text("proved", value);
    match found.as_str() {
        "optimal" => Proved::Optimal,
        "value" => Proved::Value,
        "no" => Proved::No,
        "infeasible" => Proved::Infeasible,
        "unknown" => Proved::Unknown,
        _ => {
            if value.is_some_and(Value::is_string) {
                let known = "optimal, value, no, infeasible, unknown";
                r.say("proved", Wrong::Word { found, known });
            }
            Proved::Unknown
        }
    }
}

/// A figure that may be null.
fn figure(r: &mut Reader, path: &str, value: Option<&Value>) -> Option<u32> {
    let value = value.filter(|v| !v.is_null())?;
    Some(r.whole(path, Some(value), u32::MAX))
}

fn bound(r: &mut Reader, value: Option<&Value>) -> Option<Bound> {
    let value = value.filter(|v| !v.is_null())?;
    let map = r.object("bound", value, &[], &["value", "finish"])?;
    let finish = figure(r, "bound.finish", map.get("finish"));
    let Some(value) = figure(r, "bound.value", map.get("value")) else {
        if finish.is_some() {
            r.say("bound", Wrong::HalfBound);
        }
        return None;
    };
    Some(Bound { value, finish })
}

fn chosen(r: &mut Reader, path: &str, value: &Value) -> Chosen {
    let map = r.object(path, value, &["project", "option", "starts"], &[]);
    let get = |key: &str| map.and_then(|m| m.get(key));
    Chosen {
        project: r.text(&at(path, "project"), get("project")),
        option: r.text(&at(path, "option"), get("option")),
        starts: r.amounts(&at(path, "starts"), get("starts"), u32::MAX),
    }
}
