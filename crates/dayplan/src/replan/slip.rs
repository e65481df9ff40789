//! What has become of a plan by now: the document `slip/1`.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::check::check;
use crate::fault::Fault;
use crate::plan::Plan;
use crate::problem::{AMOUNT_MAX, HORIZON_MAX, Problem, Resource};
use crate::reading::{Reader, at};

/// The name of the slip format.
pub const SLIP_FORMAT: &str = "slip/1";

/// How a planned day really stands at a minute of it.
///
/// Times are minutes of the problem's horizon. What is not said is as the problem and the plan have it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Slip {
    /// The minute it is.
    pub now: u32,
    /// Every step that was begun, whether it is over or still runs.
    pub begun: Vec<Begun>,
    /// New lengths of steps not begun.
    pub lengths: Vec<Length>,
    /// Resources as they are from now on, each in place of the problem's of the same id.
    pub resources: Vec<Resource>,
    /// Units that are missing for a while.
    pub away: Vec<Away>,
    /// Projects that will not be gone on with.
    pub given_up: Vec<String>,
}

/// A step that was begun: a fact.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Begun {
    /// Its project.
    pub project: String,
    /// The step.
    pub step: String,
    /// When it began.
    pub start: u32,
    /// How long it took or is now expected to take in all; as planned when `None`. It is over when that is past.
    pub minutes: Option<u32>,
}

/// Another length for a step that has not begun.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Length {
    /// Its project.
    pub project: String,
    /// The step.
    pub step: String,
    /// How long it will take.
    pub minutes: u32,
}

/// Units of a resource that are missing over `[from, to)`.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Away {
    /// The resource.
    pub resource: String,
    /// How many units.
    pub units: u32,
    /// First minute without them.
    pub from: u32,
    /// First minute with them again.
    pub to: u32,
}

/// A way in which a slip does not go with its problem and plan.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SlipFault {
    /// The plan breaks rules of its problem, so there is nothing to go on from.
    #[error("the plan breaks {count} rules of its problem; hint: let `check` name them")]
    Plan {
        /// Rules broken.
        count: usize,
    },
    /// The plan is no plan: it claims that there is none.
    #[error("the document holds no plan to go on from; hint: plan the day first")]
    NoPlan,
    /// The time is beyond what the format allows.
    #[error("now is minute {now}, after {most}; hint: count minutes from the start of the horizon")]
    Now {
        /// The time given.
        now: u32,
        /// The latest allowed.
        most: u32,
    },
    /// A project that the plan did not choose.
    #[error("the plan makes no {project:?}; hint: name one of the projects it chose")]
    NotPlanned {
        /// The project.
        project: String,
    },
    /// A step that the chosen option does not have.
    #[error("{project:?} has no step {step:?} as chosen; hint: name one of its steps")]
    NoStep {
        /// The project.
        project: String,
        /// The step.
        step: String,
    },
    /// A step said twice.
    #[error("step {step:?} of {project:?} is given twice; hint: keep one of the two")]
    Twice {
        /// The project.
        project: String,
        /// The step.
        step: String,
    },
    /// A begun step that begins in the future.
    #[error(
        "step {step:?} of {project:?} is said to have begun at {start}, and now is {now}; hint: leave out what has not begun"
    )]
    BegunLater {
        /// The project.
        project: String,
        /// The step.
        step: String,
        /// The start given.
        start: u32,
        /// The time.
        now: u32,
    },
    /// A length beyond the format's limit.
    #[error(
        "step {step:?} of {project:?} takes {minutes} minutes, more than {most}; hint: give its true length"
    )]
    TooLong {
        /// The project.
        project: String,
        /// The step.
        step: String,
        /// The length given.
        minutes: u32,
        /// The most allowed.
        most: u32,
    },
    /// A resource the problem does not have.
    #[error("the problem has no resource {resource:?}; hint: name one of its resources")]
    NoResource {
        /// The resource.
        resource: String,
    },
    /// A time away that ends before it begins.
    #[error(
        "{resource:?} is away from {from} to {to}, which is earlier; hint: write the earlier minute first"
    )]
    Backwards {
        /// The resource.
        resource: String,
        /// First minute away.
        from: u32,
        /// First minute back.
        to: u32,
    },
}

impl Slip {
    /// A day that went as planned until `now`: every step with an earlier start has begun, and takes as long as planned.
    #[must_use]
    pub fn as_planned(plan: &Plan, now: u32) -> Slip {
        let begun = plan.chosen.iter().flat_map(|chosen| {
            chosen.starts.iter().filter(|(_, start)| **start < now).map(|(step, start)| Begun {
                project: chosen.project.clone(),
                step: step.clone(),
                start: *start,
                minutes: None,
            })
        });
        Slip { now, begun: begun.collect(), ..Slip::default() }
    }

    /// Reads a `slip/1` document. Whether it goes with a problem and a plan is [`Slip::faults`]' question.
    ///
    /// # Errors
    /// Every fault of the document's shape at once.
    pub fn from_json(text: &str) -> Result<Slip, Vec<Fault>> {
        let mut reader = Reader::default();
        let slip = reader.parse(text).and_then(|value| read_slip(&mut reader, &value));
        match slip {
            Some(slip) if reader.faults.is_empty() => Ok(slip),
            _ => Err(reader.faults),
        }
    }

    /// What keeps this slip from going with a problem and its plan; empty when nothing does.
    #[must_use]
    pub fn faults(&self, problem: &Problem, plan: &Plan) -> Vec<SlipFault> {
        let breaches = check(problem, plan);
        if !breaches.is_empty() {
            return vec![SlipFault::Plan { count: breaches.len() }];
        }
        if plan.value.is_none() {
            return vec![SlipFault::NoPlan];
        }
        let mut faults = Vec::new();
        if self.now > HORIZON_MAX {
            faults.push(SlipFault::Now { now: self.now, most: HORIZON_MAX });
        }
        self.find_step_faults(plan, &mut faults);
        let known = |id: &str| problem.resources.iter().any(|resource| resource.id == id);
        for resource in
            self.resources.iter().map(|r| &r.id).chain(self.away.iter().map(|away| &away.resource))
        {
            if !known(resource) {
                faults.push(SlipFault::NoResource { resource: resource.clone() });
            }
        }
        for away in self.away.iter().filter(|away| away.from > away.to) {
            let (from, to) = (away.from, away.to);
            faults.push(SlipFault::Backwards { resource: away.resource.clone(), from, to });
        }
        for project in &self.given_up {
            if !plan.chosen.iter().any(|chosen| chosen.project == *project) {
                faults.push(SlipFault::NotPlanned { project: project.clone() });
            }
        }
        faults
    }

    fn find_step_faults(&self, plan: &Plan, faults: &mut Vec<SlipFault>) {
        let begun = self.begun.iter().map(|b| (&b.project, &b.step, b.minutes.unwrap_or(0)));
        let lengths = self.lengths.iter().map(|l| (&l.project, &l.step, l.minutes));
        let mut seen = BTreeSet::new();
        for (project, step, minutes) in begun.chain(lengths) {
            let (of, named) = (project.clone(), step.clone());
            match plan.chosen.iter().find(|chosen| chosen.project == *project) {
                None => faults.push(SlipFault::NotPlanned { project: of }),
                Some(chosen) if !chosen.starts.contains_key(step) => {
                    faults.push(SlipFault::NoStep { project: of, step: named });
                }
                Some(_) if !seen.insert((project, step)) => {
                    faults.push(SlipFault::Twice { project: of, step: named });
                }
                Some(_) if minutes > HORIZON_MAX => {
                    faults.push(SlipFault::TooLong { project: of, step: named, minutes, most: HORIZON_MAX });
                }
                Some(_) => {}
            }
        }
        for begun in self.begun.iter().filter(|begun| begun.start > self.now) {
            faults.push(SlipFault::BegunLater {
                project: begun.project.clone(),
                step: begun.step.clone(),
                start: begun.start,
                now: self.now,
            });
        }
    }
}

fn read_slip(r: &mut Reader, value: &Value) -> Option<Slip> {
    let may = ["begun", "lengths", "resources", "away", "given_up"];
    let map = r.object("", value, &["format", "now"], &may)?;
    r.format(map, SLIP_FORMAT);
    Some(Slip {
        now: r.whole("now", map.get("now"), HORIZON_MAX),
        begun: r.list("begun", map.get("begun"), read_begun),
        lengths: r.list("lengths", map.get("lengths"), read_length),
        resources: r.list("resources", map.get("resources"), crate::problem::read_resource),
        away: r.list("away", map.get("away"), read_away),
        given_up: r.list("given_up", map.get("given_up"), |r, path, v| r.text(path, Some(v))),
    })
}

fn read_begun(r: &mut Reader, path: &str, value: &Value) -> Begun {
    let Some(map) = r.object(path, value, &["project", "step", "start"], &["minutes"]) else {
        return Begun::default();
    };
    Begun {
        project: r.text(&at(path, "project"), map.get("project")),
        step: r.text(&at(path, "step"), map.get("step")),
        start: r.whole(&at(path, "start"), map.get("start"), HORIZON_MAX),
        minutes: map.get("minutes").map(|v| r.whole(&at(path, "minutes"), Some(v), HORIZON_MAX)),
    }
}

fn read_length(r: &mut Reader, path: &str, value: &Value) -> Length {
    let Some(map) = r.object(path, value, &["project", "step", "minutes"], &[]) else {
        return Length::default();
    };
    Length {
        project: r.text(&at(path, "project"), map.get("project")),
        step: r.text(&at(path, "step"), map.get("step")),
        minutes: r.whole(&at(path, "minutes"), map.get("minutes"), HORIZON_MAX),
    }
}

fn read_away(r: &mut Reader, path: &str, value: &Value) -> Away {
    let Some(map) = r.object(path, value, &["resource", "units", "from", "to"], &[]) else {
        return Away::default();
    };
    Away {
        resource: r.text(&at(path, "resource"), map.get("resource")),
        units: r.whole(&at(path, "units"), map.get("units"), AMOUNT_MAX),
        from: r.whole(&at(path, "from"), map.get("from"), HORIZON_MAX),
        to: r.whole(&at(path, "to"), map.get("to"), HORIZON_MAX),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_of_a_slip_is_told_at_once() {
        let text = r#"{"format":"slip/2","now":-1,"mood":1,"begun":[{"project":"p","step":"s"}],
            "away":[{"resource":"hands","units":1.5,"from":0,"to":1}],"given_up":[3]}"#;
        let faults = Slip::from_json(text).unwrap_err();
        let mut paths: Vec<&str> = faults.iter().map(|f| f.path.as_str()).collect();
        paths.sort_unstable();
        assert_eq!(paths, ["away[0].units", "begun[0].start", "format", "given_up[0]", "mood", "now"]);
    }

    #[test]
    fn a_slip_is_held_against_its_problem_and_plan() {
        let problem = Problem::from_json(
            r#"{"format":"day-problem/1","horizon":60,"resources":[{"id":"hands","capacity":1}],
            "projects":[{"id":"jam","options":[{"id":"o","value":1,
              "steps":[{"id":"cut","minutes":10,"needs":{"hands":1}}]}]}]}"#,
        )
        .unwrap();
        let plan = crate::solve(&problem, crate::Budget::default());
        let slip = Slip::as_planned(&plan, 5);
        assert_eq!(slip.faults(&problem, &plan), vec![]);
        assert_eq!(slip.begun.len(), 1);
        let said = |spoil: fn(&mut Slip)| {
            let mut slip = slip.clone();
            spoil(&mut slip);
            slip.faults(&problem, &plan).iter().map(ToString::to_string).collect::<Vec<_>>().join("|")
        };
        assert!(said(|s| s.begun[0].project = "tea".into()).contains("makes no \"tea\""));
        assert!(said(|s| s.begun[0].step = "boil".into()).contains("no step \"boil\""));
        assert!(said(|s| s.begun[0].start = 6).contains("begun at 6, and now is 5"));
        assert!(said(|s| s.begun.push(s.begun[0].clone())).contains("twice"));
        assert!(said(|s| s.given_up = vec!["tea".into()]).contains("makes no \"tea\""));
        let away = Away { resource: "elbow".into(), units: 1, from: 9, to: 3 };
        let mut late = slip.clone();
        late.away = vec![away];
        assert_eq!(late.faults(&problem, &plan).len(), 2);
    }
}
