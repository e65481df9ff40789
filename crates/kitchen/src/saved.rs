//! A day that was planned and kept: what is needed of a `day-answer/1` to go on with it in the kitchen.
//!
//! Only the problem, the plan, the people and the words of the acts are read; the rest of the answer is passed over, so
//! that an answer with newer keys still opens.

use std::collections::BTreeMap;

use dayplan::{Plan, Problem, check};
use serde::Deserialize;
use serde_json::Value;

use crate::answer::DayAnswer;
use crate::day::{ClockTime, Person};
use crate::plan::roster::Known;
use crate::ranges::RangesDocument;
use crate::staff::{self, PeopleDocument};

/// The formats a kept day may have: a planned day, and one that was planned again.
const FORMATS: [&str; 2] = ["day-answer/1", "slip-answer/1"];

/// A planned day to go on with.
#[derive(Debug, Clone)]
pub struct SavedDay {
    /// The date in words.
    pub date_in_words: String,
    /// The clock time of the horizon's first minute, in minutes from midnight.
    pub starts: u32,
    /// The last minute anybody is there.
    pub ends: u32,
    /// The stated problem.
    pub problem: Problem,
    /// Its plan, which keeps its rules.
    pub plan: Plan,
    /// Who is there and who does what.
    pub staff: PeopleDocument,
    /// How long the steps may really take.
    pub ranges: RangesDocument,
    /// What each project is called.
    pub names: BTreeMap<String, String>,
    /// The words of each act of the plan, by project and step.
    pub acts: BTreeMap<(String, String), SavedAct>,
}

/// The words of one act.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SavedAct {
    /// What is done.
    pub act: String,
    /// Caution at the act.
    pub caution: Option<String>,
    /// Whether it must not be left.
    pub must_not_be_left: bool,
}

/// Why a document is no day to go on with.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SavedFault {
    /// It is no JSON, or parts of it are missing or of the wrong shape.
    #[error("it is no planned day ({reason}); hint: keep one with `stillroom day DAY.toml --json`")]
    Shape {
        /// What the reader says.
        reason: String,
    },
    /// It is a document of another kind.
    #[error(
        "it names the format {found:?}, not {known:?}; hint: keep a day with `stillroom day DAY.toml --json`"
    )]
    Format {
        /// The name found.
        found: String,
        /// The name expected.
        known: &'static str,
    },
    /// The problem or the plan inside has faults.
    #[error("its {part} has faults, the first: {first}; hint: plan the day again")]
    Part {
        /// `problem` or `plan`.
        part: &'static str,
        /// The first fault.
        first: String,
    },
    /// There is no plan in it.
    #[error("it holds no plan: the day could not be; hint: mend what clashes and plan it again")]
    NoPlan,
}

#[derive(Deserialize)]
struct Sheet {
    format: String,
    date_in_words: String,
    starts: u32,
    ends: u32,
    problem: Value,
    plan: Value,
    staff: PeopleDocument,
    #[serde(default)]
    ranges: RangesDocument,
    names: BTreeMap<String, String>,
    clock: Vec<Line>,
}

#[derive(Deserialize)]
struct Line {
    project: String,
    step: String,
    act: String,
    caution: Option<String>,
    must_not_be_left: bool,
}

impl SavedDay {
    /// Reads a kept day.
    ///
    /// # Errors
    /// The first reason why it cannot be gone on with.
    pub fn from_json(text: &str) -> Result<SavedDay, SavedFault> {
        let value: Value =
            serde_json::from_str(text).map_err(|error| SavedFault::Shape { reason: error.to_string() })?;
        if let Some(found) =
            value.get("format").and_then(Value::as_str).filter(|found| !FORMATS.contains(found))
        {
            return Err(SavedFault::Format { found: found.to_owned(), known: FORMATS[0] });
        }
        let sheet: Sheet =
            serde_json::from_value(value).map_err(|error| SavedFault::Shape { reason: error.to_string() })?;
        debug_assert!(FORMATS.contains(&sheet.format.as_str()));
        let problem =
            Problem::from_json(&sheet.problem.to_string()).map_err(|faults| part("problem", &faults))?;
        let plan = Plan::from_json(&sheet.plan.to_string()).map_err(|faults| part("plan", &faults))?;
        let acts = sheet.clock.into_iter().map(|line| {
            let act =
                SavedAct { act: line.act, caution: line.caution, must_not_be_left: line.must_not_be_left };
            ((line.project, line.step), act)
        });
        let saved = SavedDay {
            date_in_words: sheet.date_in_words,
            starts: sheet.starts,
            ends: sheet.ends,
            problem,
            plan,
            staff: sheet.staff,
            ranges: sheet.ranges,
            names: sheet.names,
            acts: acts.collect(),
        };
        saved.judge()
    }

    /// The same of an answer that was just given.
    ///
    /// # Errors
    /// [`SavedFault::NoPlan`] where the day could not be.
    pub fn of(answer: &DayAnswer) -> Result<SavedDay, SavedFault> {
        let acts = answer.clock.iter().map(|line| {
            let act = SavedAct {
                act: line.act.clone(),
                caution: line.caution.clone(),
                must_not_be_left: line.must_not_be_left,
            };
            ((line.project.clone(), line.step.clone()), act)
        });
        let saved = SavedDay {
            date_in_words: answer.date_in_words.clone(),
            starts: answer.starts,
            ends: answer.ends,
            problem: answer.problem.clone(),
            plan: answer.plan.clone(),
            staff: answer.staff.clone(),
            ranges: answer.ranges.clone(),
            names: answer.names.clone(),
            acts: acts.collect(),
        };
        saved.judge()
    }

    fn judge(self) -> Result<SavedDay, SavedFault> {
        if self.plan.value.is_none() {
            return Err(SavedFault::NoPlan);
        }
        match check(&self.problem, &self.plan).first() {
            Some(breach) => Err(SavedFault::Part { part: "plan", first: breach.to_string() }),
            None => Ok(self),
        }
    }

    /// The people.
    pub(crate) fn people(&self) -> Vec<Person> {
        staff::read_staff(&self.staff, ClockTime(self.starts))
    }

    /// Who was given what.
    pub(crate) fn known_turns(&self) -> Known {
        let person = |name: &String| self.staff.people.iter().position(|line| line.name == *name);
        let turns = self.staff.turns.iter();
        turns
            .filter_map(|turn| Some(((turn.project.clone(), turn.step.clone()), person(turn.who.as_ref()?)?)))
            .collect()
    }

    /// What a project is called.
    pub(crate) fn name_of(&self, project: &str) -> String {
        self.names.get(project).cloned().unwrap_or_else(|| project.replace(['-', '_'], " "))
    }

    /// What is done in a step, in its words, else by its id.
    pub(crate) fn act_of(&self, project: &str, step: &str) -> String {
        self.acts
            .get(&(project.to_owned(), step.to_owned()))
            .map_or_else(|| words_of_id(step), |act| act.act.clone())
    }
}

/// An id without its numbers: `b1-03-part-1-chop` is "chop".
fn words_of_id(id: &str) -> String {
    let words =
        id.split('-').filter(|word| !word.chars().any(|letter| letter.is_ascii_digit()) && *word != "part");
    let words: Vec<&str> = words.collect();
    if words.is_empty() { id.to_owned() } else { words.join(" ") }
}

fn part(part: &'static str, faults: &[dayplan::Fault]) -> SavedFault {
    SavedFault::Part { part, first: faults.first().map_or_else(String::new, ToString::to_string) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_planned_day_is_said() {
        let said = |text: &str| SavedDay::from_json(text).unwrap_err().to_string();
        assert!(said("{").starts_with("it is no planned day ("));
        assert!(said("{\"format\":\"fit/1\"}").contains("\"fit/1\""));
        assert!(said("{\"format\":\"day-answer/1\"}").contains("missing field"));
    }

    #[test]
    fn an_id_is_said_without_its_numbers() {
        assert_eq!(words_of_id("b1-03-part-1-chop"), "chop");
        assert_eq!(words_of_id("wash-up"), "wash up");
    }
}
