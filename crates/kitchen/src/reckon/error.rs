//! The ways a sum can be asked wrongly.

use foodsci::ModelError;
use measure::ReadError;

use crate::ask::AskError;

/// Why a sum cannot be answered.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ReckonError {
    /// No sum has that name.
    #[error("no sum is called {typed:?}; hint: {}", nearest_or_list(.nearest))]
    NoSuchSum {
        /// What was typed.
        typed: String,
        /// Sums that share a word with it.
        nearest: Vec<&'static str>,
    },
    /// It does not ask for that.
    #[error("{sum} asks for no {typed:?}; hint: it asks for {}", .known.join(", "))]
    NoSuchInput {
        /// The sum.
        sum: &'static str,
        /// What was typed.
        typed: String,
        /// What it asks for.
        known: Vec<&'static str>,
    },
    /// An input without its equals sign.
    #[error("{typed:?} is no input; hint: write KEY=VALUE, such as {example}")]
    NotAnInput {
        /// What was typed.
        typed: String,
        /// How one looks.
        example: String,
    },
    /// The same input twice.
    #[error("{key} is given twice; hint: leave one of them out")]
    GivenTwice {
        /// Which.
        key: &'static str,
    },
    /// Something it cannot do without was left out.
    #[error("{sum} needs {key}: {what}; hint: {how}, and give {key}={example}")]
    Missing {
        /// The sum.
        sum: &'static str,
        /// Which.
        key: &'static str,
        /// What it is.
        what: &'static str,
        /// How a kitchen comes by it.
        how: &'static str,
        /// How it is written.
        example: String,
    },
    /// A figure of another kind.
    #[error("{key}={typed} is {is}, and {what} is {wanted}; hint: write it like {key}={example}")]
    OtherKind {
        /// Which.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// What that is.
        is: &'static str,
        /// What the input is.
        what: &'static str,
        /// The kind it should be.
        wanted: &'static str,
        /// How it is written.
        example: String,
    },
    /// A figure that cannot be read.
    #[error("{key}: {problem}")]
    Unreadable {
        /// Which.
        key: &'static str,
        /// What is wrong with it.
        problem: Box<ReadError>,
    },
    /// A number that is none.
    #[error("{key}={typed} is no plain number; hint: write it like {key}={example}")]
    NoNumber {
        /// Which.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// How it is written.
        example: String,
    },
    /// A word that is not in its list, or a name nothing on file has.
    #[error("{key}={typed} is not known here; hint: give one of {}", .known.join(", "))]
    Unknown {
        /// Which.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// What is known.
        known: Vec<String>,
    },
    /// The model does not cover it.
    #[error(transparent)]
    Model(#[from] ModelError),
    /// A food, a jar or a formula that is not found.
    #[error(transparent)]
    Ask(#[from] AskError),
}

fn nearest_or_list(nearest: &[&str]) -> String {
    if nearest.is_empty() {
        "`stillroom reckon` lists them".to_owned()
    } else {
        format!("perhaps {}", nearest.join(", "))
    }
}
