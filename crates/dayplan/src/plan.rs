//! A plan for a day: what was chosen, when each step starts, and how much of that is proved.
//!
//! The types mirror the document `day-plan/1` key by key (see `docs/formats/day-problem.md`).

mod read;

use std::collections::BTreeMap;

use serde::Serialize;

use crate::fault::Fault;

/// The name of the plan format.
pub const PLAN_FORMAT: &str = "day-plan/1";

/// An answer to a problem.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(into = "Document")]
pub struct Plan {
    /// What is proved of it.
    pub proved: Proved,
    /// The value of what is chosen; `None` when there is no plan.
    pub value: Option<u32>,
    /// The last end of a chosen step, 0 when nothing is chosen; `None` when there is no plan.
    pub finish: Option<u32>,
    /// The best proved limits on value and finish.
    pub bound: Option<Bound>,
    /// The options chosen, with their starts.
    pub chosen: Vec<Chosen>,
    /// Why there is no plan: names of the form `must:ID`, `stock:ID`, `resource:ID` that clash by themselves.
    pub because: Vec<String>,
    /// Whether a person or a clock cut the work short, so that the next answer may differ.
    pub stopped: bool,
}

/// How much of a plan is proved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Proved {
    /// No plan is worth more, and none worth as much ends earlier.
    Optimal,
    /// No plan is worth more.
    Value,
    /// A plan, with nothing proved.
    No,
    /// No plan exists.
    Infeasible,
    /// The work budget ended before a plan or a proof was found.
    Unknown,
}

/// Proved limits that no plan of the problem can pass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Bound {
    /// No plan is worth more than this.
    pub value: u32,
    /// No plan worth `value` ends before this; `None` while the value is unproved.
    pub finish: Option<u32>,
}

/// One chosen option.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Chosen {
    /// The project it belongs to.
    pub project: String,
    /// The option.
    pub option: String,
    /// The start of each of its steps.
    pub starts: BTreeMap<String, u32>,
}

impl Plan {
    /// Reads a `day-plan/1` document. Whether the plan keeps its problem's rules is [`crate::check`]'s question.
    ///
    /// The keys `seconds`, `stages` and `trace`, in which a solver may keep notes of its run, are passed over.
    ///
    /// # Errors
    /// Every fault of the document's shape at once.
    pub fn from_json(text: &str) -> Result<Plan, Vec<Fault>> {
        read::read_plan(text)
    }

    /// The document, on one line.
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).expect("text keys and whole numbers always serialize")
    }

    /// An answer without a plan.
    pub(crate) fn without(proved: Proved, because: Vec<String>, stopped: bool) -> Plan {
        Plan { proved, value: None, finish: None, bound: None, chosen: Vec::new(), because, stopped }
    }
}

/// The document in the order it is written.
#[derive(Serialize)]
struct Document {
    format: &'static str,
    value: Option<u32>,
    finish: Option<u32>,
    proved: Proved,
    bound: Option<Bound>,
    chosen: Vec<Chosen>,
    #[serde(skip_serializing_if = "Option::is_none")]
    because: Option<Vec<String>>,
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    stopped: bool,
}

impl From<Plan> for Document {
    fn from(plan: Plan) -> Document {
        Document {
            format: PLAN_FORMAT,
            value: plan.value,
            finish: plan.finish,
            because: (plan.proved == Proved::Infeasible).then_some(plan.because),
            proved: plan.proved,
            bound: plan.bound,
            chosen: plan.chosen,
            stopped: plan.stopped,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_always_written_and_reasons_only_where_they_belong() {
        let mut plan = Plan::without(Proved::Infeasible, vec!["must:jam".into()], false);
        assert_eq!(
            plan.to_json(),
            r#"{"format":"day-plan/1","value":null,"finish":null,"proved":"infeasible","bound":null,"chosen":[],"because":["must:jam"]}"#
        );
        plan = Plan::without(Proved::Unknown, vec![], true);
        assert_eq!(
            plan.to_json(),
            r#"{"format":"day-plan/1","value":null,"finish":null,"proved":"unknown","bound":null,"chosen":[],"stopped":true}"#
        );
        plan.value = Some(7);
        plan.bound = Some(Bound { value: 9, finish: None });
        assert!(plan.to_json().contains(r#""bound":{"value":9,"finish":null}"#));
        assert_eq!(Plan::from_json(&plan.to_json()), Ok(plan));
    }

    #[test]
    fn every_fault_of_a_plan_is_told_at_once() {
        let text = r#"{"format":"day-plan/1","proved":"surely","value":-1,"mood":"good","bound":{"finish":3},
            "chosen":[{"project":"p","option":4,"starts":{"a":0.5}}]}"#;
        let faults = Plan::from_json(text).unwrap_err();
        let mut paths: Vec<&str> = faults.iter().map(|f| f.path.as_str()).collect();
        paths.sort_unstable();
        assert_eq!(paths, ["bound", "chosen[0].option", "chosen[0].starts.a", "mood", "proved", "value"]);
    }
}
