//! The ways a question in words can be wrong.

use std::fmt;

use batch::clear::ClearError;
use batch::fit::FitError;
use measure::ReadError;

/// How a person finds the height of a kitchen above the sea.
pub const WAYS_TO_FIND_ALTITUDE: &str = "look for the contour lines of a topographic map, read the height that a \
    phone or satellite receiver shows outdoors, or ask the county extension office";

/// What a name was meant to name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NameKind {
    /// A food with a printed process.
    Food,
    /// A formula.
    Formula,
    /// A kind of produce.
    Produce,
    /// A publication.
    Source,
}

impl fmt::Display for NameKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Food => "food",
            Self::Formula => "formula",
            Self::Produce => "produce",
            Self::Source => "source",
        })
    }
}

/// Why a question in words cannot be asked.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum AskError {
    /// Nothing has that name.
    #[error("no {kind} is called {typed:?}; hint: {}", nearest_or(.nearest, .kind))]
    NoSuchName {
        /// What was looked for.
        kind: NameKind,
        /// What was typed.
        typed: String,
        /// The nearest names, the likeliest first.
        nearest: Vec<String>,
    },
    /// Several have that name.
    #[error("{typed:?} may be more than one {kind}; hint: give one of {}", .ids.join(", "))]
    SeveralNames {
        /// What was looked for.
        kind: NameKind,
        /// What was typed.
        typed: String,
        /// Their ids.
        ids: Vec<String>,
    },
    /// A word is not one of its list.
    #[error("{typed:?} is no {what}; hint: give one of {}", .known.join(", "))]
    UnknownWord {
        /// What it should be: a pack, a jar.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// The words of the list.
        known: Vec<String>,
    },
    /// Something without which there is no answer was left out.
    #[error("the {what} is missing; hint: give one of {}", .known.join(", "))]
    Missing {
        /// What: a pack, a jar.
        what: &'static str,
        /// The words it may be.
        known: Vec<String>,
    },
    /// Neither a food nor a formula was named.
    #[error("no food is named; hint: say the food, or the formula it is made by")]
    FoodMissing,
    /// The height above the sea was left out; there is none to assume.
    #[error("the altitude is missing, and the printed times change with it; hint: {WAYS_TO_FIND_ALTITUDE}")]
    AltitudeMissing,
    /// An amount cannot be read.
    #[error("the {what}: {problem}")]
    Unreadable {
        /// Which amount.
        what: &'static str,
        /// What is wrong with it.
        problem: Box<ReadError>,
    },
    /// The question cannot be judged.
    #[error(transparent)]
    Clear(Box<ClearError>),
    /// The formula cannot be fitted.
    #[error(transparent)]
    Fit(Box<FitError>),
}

impl AskError {
    /// An amount that cannot be read.
    pub(crate) fn unreadable(what: &'static str, problem: ReadError) -> Self {
        Self::Unreadable { what, problem: Box::new(problem) }
    }
}

impl From<ClearError> for AskError {
    fn from(error: ClearError) -> Self {
        Self::Clear(Box::new(error))
    }
}

impl From<FitError> for AskError {
    fn from(error: FitError) -> Self {
        Self::Fit(Box::new(error))
    }
}

fn nearest_or(nearest: &[String], kind: &NameKind) -> String {
    if nearest.is_empty() {
        let list = match kind {
            NameKind::Food => "processes",
            NameKind::Formula => "formulas",
            NameKind::Produce => "produce",
            NameKind::Source => "sources",
        };
        format!("`stillroom almanac {list}` lists what is on file")
    } else {
        format!("the nearest are {}", nearest.join(", "))
    }
}
