//! The ways a question about food that is put up can be wrong.

use measure::ReadError;

/// Why a question cannot be asked.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum AfterError {
    /// Nothing was asked.
    #[error("nothing is asked; hint: say what you see, one or more of: {}", .known.join(", "))]
    NothingAsked {
        /// What can be asked.
        known: Vec<String>,
    },
    /// Nothing that was typed is understood.
    #[error(
        "{typed:?} is not understood, so nothing is decided; keep the food apart and do not taste it; hint: it can be \
         asked with: {}", .known.join(", ")
    )]
    NotUnderstood {
        /// What was typed.
        typed: String,
        /// What can be asked.
        known: Vec<String>,
    },
    /// A word is not one of its list.
    #[error("{typed:?} is no {what}; hint: give one of {}", .known.join(", "))]
    UnknownWord {
        /// What it should be.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// The words of the list.
        known: Vec<String>,
    },
    /// A figure cannot be read.
    #[error("the {what}: {problem}")]
    Unreadable {
        /// Which figure.
        what: &'static str,
        /// What is wrong with it.
        problem: Box<ReadError>,
    },
    /// A pH cannot be read.
    #[error("{typed:?} is no pH; hint: give a number from 0 to 14, such as 3.6")]
    NoPh {
        /// What was typed.
        typed: String,
    },
    /// A moment cannot be read.
    #[error(
        "the {what}: {typed:?} names no day and time; hint: give \"21:30\", \"yesterday 21:30\", \"Saturday 7:05\" or \
         \"2026-09-12 21:30\""
    )]
    NoMoment {
        /// Which moment.
        what: &'static str,
        /// What was typed.
        typed: String,
    },
    /// A moment that must be past is still to come.
    #[error(
        "the {what} is {moment}, which is later than now, {now}; hint: give the day with it, such as \"yesterday 21:30\""
    )]
    StillToCome {
        /// Which moment.
        what: &'static str,
        /// The moment.
        moment: String,
        /// The present.
        now: String,
    },
    /// Two moments stand in the wrong order.
    #[error("the {later} is {second}, before the {earlier}, {first}; hint: give the day with each time")]
    WrongOrder {
        /// The moment that comes first.
        earlier: &'static str,
        /// When it was said to be.
        first: String,
        /// The moment that comes second.
        later: &'static str,
        /// When it was said to be.
        second: String,
    },
}

impl AfterError {
    /// A figure that cannot be read.
    pub(super) fn unreadable(what: &'static str, problem: ReadError) -> Self {
        Self::Unreadable { what, problem: Box::new(problem) }
    }
}
