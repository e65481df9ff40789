//! A day as a problem: what could be done, in which steps, with what hands, tools and stock.
//!
//! The types mirror the document `day-problem/1` key by key (see `docs/formats/day-problem.md`). They hold any
//! values; [`Problem::faults`] says whether they keep the format's limits, and [`Problem::from_json`] returns
//! nothing that does not.

mod limits;
mod read;

use std::collections::BTreeMap;

use serde::Serialize;

pub use self::limits::{AMOUNT_MAX, HORIZON_MAX, VALUE_SUM_MAX};
pub(crate) use self::read::resource as read_resource;
use crate::fault::Fault;

/// The name of the problem format.
pub const PROBLEM_FORMAT: &str = "day-problem/1";

/// One day: projects to choose from, and the resources and stock they share.
///
/// Times are whole minutes from the start of the horizon.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
#[serde(into = "Document")]
pub struct Problem {
    /// Length of the day; nothing ends after it.
    pub horizon: u32,
    /// What is shared minute by minute: hands, burners, kettles.
    pub resources: Vec<Resource>,
    /// What is used up: jars, lids, by id.
    pub stock: BTreeMap<String, u32>,
    /// What could be done.
    pub projects: Vec<Project>,
}

/// Something of which only so much can be in use at once.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Resource {
    /// Its name in the document.
    pub id: String,
    /// Units there are.
    pub capacity: u32,
    /// Intervals `[a, b)` in which none may be used.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub closed: Vec<(u32, u32)>,
}

/// One thing to do, in at most one of several ways.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Project {
    /// Its name in the document.
    pub id: String,
    /// Whether exactly one option must be chosen, rather than at most one.
    #[serde(skip_serializing_if = "is_false")]
    pub must: bool,
    /// The ways to do it.
    pub options: Vec<Choice>,
}

/// One way to do a project: what it is worth, what it takes.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Choice {
    /// Its name within the project.
    pub id: String,
    /// What it is worth.
    pub value: u32,
    /// Stock it uses up.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub consumes: BTreeMap<String, u32>,
    /// Its steps; all of them are done when it is chosen.
    pub steps: Vec<Step>,
    /// What must lie between its steps.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lags: Vec<Lag>,
    /// What it keeps in use across steps.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub holds: Vec<Hold>,
}

/// A piece of work that runs without a break.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Step {
    /// Its name within the option.
    pub id: String,
    /// How long it runs.
    pub minutes: u32,
    /// Units of each resource in use while it runs.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub needs: BTreeMap<String, u32>,
    /// The first minute it may start.
    #[serde(skip_serializing_if = "is_zero")]
    pub earliest: u32,
    /// The minute it must be over by; the horizon when `None`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub latest_end: Option<u32>,
}

/// What must lie between two steps: `min <= start(to) - end(from) <= max`.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Lag {
    /// The step whose end counts.
    pub from: String,
    /// The step whose start counts.
    pub to: String,
    /// The least gap; negative allows an overlap.
    #[serde(skip_serializing_if = "is_no_gap")]
    pub min: i32,
    /// The greatest gap, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max: Option<i32>,
}

/// Units kept in use from the start of one step to the end of another, on top of the steps' own needs.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Hold {
    /// What is kept.
    pub resource: String,
    /// How much of it.
    pub amount: u32,
    /// The step at whose start it is taken.
    pub from: String,
    /// The step at whose end it is given back.
    pub to: String,
}

impl Problem {
    /// Reads a `day-problem/1` document.
    ///
    /// # Errors
    /// Every fault of the document at once: of its shape, and of what [`Problem::faults`] looks at.
    pub fn from_json(text: &str) -> Result<Problem, Vec<Fault>> {
        read::read_problem(text)
    }

    /// The document, on one line, defaults left out.
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).expect("text keys and whole numbers always serialize")
    }

    /// What keeps this problem from being a valid document; empty when nothing does.
    pub fn faults(&self) -> Vec<Fault> {
        limits::find_faults(self)
    }
}

/// The document in the order it is written.
#[derive(Serialize)]
struct Document {
    format: &'static str,
    horizon: u32,
    resources: Vec<Resource>,
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    stock: BTreeMap<String, u32>,
    projects: Vec<Project>,
}

impl From<Problem> for Document {
    fn from(problem: Problem) -> Document {
        Document {
            format: PROBLEM_FORMAT,
            horizon: problem.horizon,
            resources: problem.resources,
            stock: problem.stock,
            projects: problem.projects,
        }
    }
}

fn is_false(flag: &bool) -> bool {
    !flag
}

fn is_no_gap(minutes: &i32) -> bool {
    *minutes == 0
}

fn is_zero(number: &u32) -> bool {
    *number == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_is_told_at_once_with_its_path() {
        let text = r#"{"format":"day-problem/2","horizon":100001,"stock":{"jar":-1},"day":"monday",
            "resources":[{"id":"hands","capacity":1,"closed":[[9,8],[1]]},{"id":"hands","capacity":1}],
            "projects":[{"id":"","must":"yes","options":[{"id":"o","value":1.5,"consumes":{"cork":1},
              "steps":[{"id":"a","minute":3,"needs":{"elbow":1}}],
              "lags":[{"from":"a","to":"z","max":null}],
              "holds":[{"resource":"hands","amount":2000000,"from":"a","to":"a"}]}]}]}"#;
        let faults = Problem::from_json(text).unwrap_err();
        let mut paths: Vec<&str> = faults.iter().map(|f| f.path.as_str()).collect();
        paths.sort_unstable();
        let option = "projects[0].options[0]";
        let mut expected = vec![
            "day".to_owned(),
            "format".to_owned(),
            "horizon".to_owned(),
            format!("{option}.consumes.cork"),
            format!("{option}.holds[0].amount"),
            format!("{option}.lags[0].to"),
            format!("{option}.steps[0].minute"),
            format!("{option}.steps[0].minutes"),
            format!("{option}.steps[0].needs.elbow"),
            format!("{option}.value"),
            "projects[0].id".to_owned(),
            "projects[0].must".to_owned(),
            "resources[0].closed[0]".to_owned(),
            "resources[0].closed[1]".to_owned(),
            "resources[1].id".to_owned(),
            "stock.jar".to_owned(),
        ];
        expected.sort_unstable();
        assert_eq!(paths, expected);
        assert!(faults.iter().all(|f| f.to_string().contains(": ") && f.to_string().contains("hint")));
    }

    #[test]
    fn text_that_is_not_json_is_one_fault_with_its_place() {
        let faults = Problem::from_json("{\n  \"format\": }").unwrap_err();
        assert_eq!(faults.len(), 1);
        assert!(faults[0].to_string().starts_with("not JSON (line 2, column "), "{}", faults[0]);
    }

    #[test]
    fn a_problem_built_in_code_has_its_limits_looked_at() {
        let option = |id: &str| Choice { id: id.into(), value: AMOUNT_MAX, ..Choice::default() };
        let project =
            |p: u32| Project { id: p.to_string(), must: false, options: vec![option("a"), option("b")] };
        let mut problem = Problem { projects: (0..2147).map(project).collect(), ..Problem::default() };
        assert_eq!(problem.faults(), vec![]);
        problem.projects.push(project(9999));
        let faults = problem.faults();
        assert_eq!(faults.len(), 1);
        assert_eq!(faults[0].path, "projects");
    }

    #[test]
    fn defaults_are_left_out_and_the_order_is_fixed() {
        let mut problem = Problem { horizon: 9, ..Problem::default() };
        assert_eq!(
            problem.to_json(),
            r#"{"format":"day-problem/1","horizon":9,"resources":[],"projects":[]}"#
        );
        problem.stock.insert("jar".into(), 0);
        problem.projects = vec![Project {
            id: "p".into(),
            must: true,
            options: vec![Choice {
                id: "o".into(),
                steps: vec![Step { id: "s".into(), latest_end: Some(0), ..Step::default() }],
                lags: vec![Lag { from: "s".into(), to: "s".into(), min: -1, max: Some(0) }],
                ..Choice::default()
            }],
        }];
        let written = problem.to_json();
        assert_eq!(
            written,
            r#"{"format":"day-problem/1","horizon":9,"resources":[],"stock":{"jar":0},"projects":[{"id":"p","must":true,"options":[{"id":"o","value":0,"steps":[{"id":"s","minutes":0,"latest_end":0}],"lags":[{"from":"s","to":"s","min":-1,"max":0}]}]}]}"#
        );
        assert_eq!(Problem::from_json(&written), Ok(problem));
    }
}
