//! Why the printed minutes are what they are: heat going into *this* jar, drawn for a process that is printed.
//!
//! The question is that of a clearance, and only a tested answer is explained. What comes out has no wanted end and no mark
//! before the printed one: it shows what the printed minutes do, for thick food that does not move, with a band for what is not
//! known.

mod compare;
mod kitchen;
mod trace;

pub use compare::compare_histories;
pub use trace::HistoryLine;

use almanac::{Almanac, CannerKind, Pack};
use serde::Serialize;

use super::answer::{Note, SourceLine};
use super::error::ReckonError;
use crate::ask::{self, AskError, ClearAnswer, ClearWords};
use kitchen::Kitchen;

/// The sentence above everything that is drawn here.
pub const EXPLAINS_ONLY: &str = "This explains a printed process and can never make one: the printed minutes count, whatever the lines below show.";

/// What is asked, in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct WhyWords {
    /// Food, pack, jar, canner and height, as for a clearance.
    pub clear: ClearWords,
    /// The food when the lid goes on.
    pub filled_at: Option<String>,
}

/// What heat does in one jar.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HeatHistory {
    /// `heat-history/1`.
    pub format: &'static str,
    /// The sentence above it.
    pub explains_only: &'static str,
    /// Food, pack, jar and canner in words.
    pub question: String,
    /// The printed minutes.
    pub printed_minutes: u32,
    /// The printed pressure, where there is one.
    pub printed_psi: Option<f64>,
    /// The temperature around the jar while the printed minutes run, °C.
    pub around_celsius: f64,
    /// The jar through time, counted from the moment at which the printed minutes begin.
    pub lines: Vec<HistoryLine>,
    /// What another jar, a colder fill, a lost boil would do, in words.
    pub compared: Vec<Note>,
    /// What was taken, and how far it is right.
    pub notes: Vec<Note>,
    /// Where it stands.
    pub sources: Vec<SourceLine>,
}

/// Why no heat is drawn.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum WhyError {
    /// The question cannot be asked.
    #[error(transparent)]
    Asked(#[from] AskError),
    /// A figure is of another kind or outside its range.
    #[error(transparent)]
    Reckoned(#[from] ReckonError),
    /// There is no printed process to explain.
    #[error(
        "there is no printed process for {question}, and nothing is drawn without one; hint: `stillroom clear` says what \
         may be done instead"
    )]
    NothingPrinted {
        /// Food, pack, jar and canner.
        question: String,
    },
    /// Nobody measured the inside of that jar.
    #[error("the inside of a {jar} jar is not on file; hint: ask for half-pint, pint, quart or half-gallon")]
    JarNotMeasured {
        /// The jar.
        jar: String,
    },
}

impl From<foodsci::ModelError> for WhyError {
    fn from(error: foodsci::ModelError) -> Self {
        Self::Reckoned(error.into())
    }
}

/// Draws the heat that goes into one jar during a printed process.
///
/// # Errors
///
/// When the question is wrong, no process is printed for it, or the jar is of no known size.
pub fn explain_heat(almanac: &Almanac, words: &WhyWords) -> Result<HeatHistory, WhyError> {
    let kitchen = read_kitchen(almanac, words)?;
    let lines = trace::trace_band(&kitchen)?;
    let mut notes = vec![
        note(
            "to-know",
            "drawn for thick food that does not move; juice, and fruit in liquid, heat faster than this band",
        ),
        note(
            "to-know",
            "nine in ten of a thousand kitchens lie in the band; a real jar may take a fifth longer than any of them",
        ),
        note(
            "to-know",
            "the clock starts at the full boil, or at pressure, because that is how the printed minutes were found",
        ),
    ];
    notes.extend(kitchen.taken.iter().map(|text| note("taken", text)));
    if kitchen.filled_below_pack {
        notes.push(note(
            "caution",
            "the food goes in colder than the printed pack: the printed minutes are for food filled as the directions say",
        ));
    }
    Ok(HeatHistory {
        format: "heat-history/1",
        explains_only: EXPLAINS_ONLY,
        question: kitchen.question.clone(),
        printed_minutes: kitchen.minutes,
        printed_psi: kitchen.psi,
        around_celsius: kitchen.holds_at.as_celsius(),
        lines,
        compared: compare::compare(&kitchen)?,
        notes,
        sources: kitchen.sources.clone(),
    })
}

/// The slowest point of the jar at the printed end, the likeliest of everything taken.
#[cfg(test)]
pub(super) fn trace_likeliest(almanac: &Almanac, words: &WhyWords) -> Result<measure::Temp, WhyError> {
    let kitchen = read_kitchen(almanac, words)?;
    let likeliest = kitchen.likeliest();
    let traced = trace::Traced::of(&kitchen, &likeliest, &[kitchen.hold(&likeliest)], 60)?;
    Ok(traced.centre(traced.ends))
}

pub(super) fn note(code: &'static str, text: impl Into<String>) -> Note {
    Note { code, text: text.into() }
}

fn read_kitchen(almanac: &Almanac, words: &WhyWords) -> Result<Kitchen, WhyError> {
    let asked = &words.clear;
    let question = [&asked.pack, &asked.jar, &asked.canner]
        .into_iter()
        .flatten()
        .fold(asked.food.clone(), |said, word| format!("{said}, {word}"));
    let ClearAnswer::Judged(clearance) = ask::clear(almanac, asked)? else {
        return Err(WhyError::NothingPrinted { question });
    };
    let Some(line) = clearance.processes.first() else {
        return Err(WhyError::NothingPrinted { question });
    };
    let process = line.process();
    let inside = almanac
        .jar_inside(clearance.question.jar)
        .ok_or_else(|| WhyError::JarNotMeasured { jar: clearance.question.jar.to_string() })?;
    let filled_at =
        match &words.filled_at {
            None => None,
            Some(typed) => Some(measure::read_temp(typed).map_err(|problem| ReckonError::Unreadable {
                key: "filled-at",
                problem: Box::new(problem),
            })?),
        };
    let is_hot = clearance.question.pack == Pack::Hot;
    let is_pressure = matches!(clearance.question.canner, CannerKind::Dial | CannerKind::Weighted);
    Kitchen::set_up(
        almanac,
        process,
        inside,
        kitchen::Asked { question, altitude: clearance.question.altitude, filled_at, is_hot, is_pressure },
    )
}

#[cfg(test)]
mod tests;
