//! The ways a question about a load can be wrong.

use almanac::{CannerKind, LoadTrouble};
use jiff::civil::Date;
use measure::ReadError;

use crate::ask::AskError;

/// Why a question about a load cannot be asked.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LoadError {
    /// A word names no trouble.
    #[error("{typed:?} is no trouble that is known; hint: give one of {}", known_troubles())]
    UnknownTrouble {
        /// What was typed.
        typed: String,
    },
    /// The trouble cannot happen in this canner.
    #[error("{trouble} does not go with the canner {canner}; hint: {hint}")]
    NotOfThisCanner {
        /// The trouble.
        trouble: LoadTrouble,
        /// The canner.
        canner: CannerKind,
        /// What to say instead.
        hint: &'static str,
    },
    /// Something without which there is no answer was left out.
    #[error("{what} is missing; hint: {hint}")]
    Missing {
        /// What.
        what: &'static str,
        /// How to give it.
        hint: &'static str,
    },
    /// Something was given that this question does not ask about.
    #[error("{what} says nothing about {trouble}; hint: leave it out")]
    NotAsked {
        /// What.
        what: &'static str,
        /// The trouble.
        trouble: LoadTrouble,
    },
    /// A process of no minutes.
    #[error("a process of {minutes} min is none; hint: give the whole printed time, such as \"25 min\"")]
    NoProcessSoLong {
        /// What was given.
        minutes: u32,
    },
    /// A time without its clock.
    #[error("the time of {what} is {typed:?}, a date without a time; hint: write 2026-09-12 13:42")]
    TimeMissing {
        /// Which time.
        what: &'static str,
        /// What was typed.
        typed: String,
    },
    /// A date that is none.
    #[error("the time of {what}, {typed:?}, has no date that can be read; hint: write 2026-09-12 13:42")]
    UnreadableDate {
        /// Which time.
        what: &'static str,
        /// What was typed.
        typed: String,
    },
    /// A clock time that is none.
    #[error("the time of {what}: {problem}")]
    Unreadable {
        /// Which time.
        what: &'static str,
        /// What is wrong with it.
        problem: Box<ReadError>,
    },
    /// The clock was set forward over it.
    #[error(
        "the time of {what}, {typed:?}, was on no clock on {date}: the clocks were set forward over it; hint: give \
         what the clock showed"
    )]
    NotShown {
        /// Which time.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// The date.
        date: Date,
    },
    /// A dated time that lies before what came before it.
    #[error(
        "the time of {what}, {typed:?}, lies before that of {before}; hint: give the times in the order in \
             which they came"
    )]
    OutOfOrder {
        /// Which time.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// What came before it.
        before: &'static str,
    },
    /// A bare time that would be most of a day later.
    #[error(
        "the time of {what}, {typed:?}, would come most of a day after that of {before}; hint: give the times in \
         the order in which they came, with the date where a day lies between: 2026-09-12 13:42"
    )]
    TooFarBehind {
        /// Which time.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// What came before it.
        before: &'static str,
    },
    /// The food, the jar, the canner or the altitude cannot be read.
    #[error(transparent)]
    Ask(#[from] AskError),
}

/// The words for troubles, in one line.
fn known_troubles() -> String {
    LoadTrouble::ALL.iter().map(|trouble| trouble.as_str()).collect::<Vec<_>>().join(", ")
}
