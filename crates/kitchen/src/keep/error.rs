//! Why something was not written down or not found, with one thing to do.

use book::{EntryError, StoreError, WriteError};
use measure::ReadError;

/// Why the book did not take or find something.
#[derive(Debug, thiserror::Error)]
pub enum KeepError {
    /// A line cannot be read.
    #[error("{typed:?} does not say {what}; hint: write it like {example:?}")]
    UnreadableLine {
        /// What was typed.
        typed: String,
        /// What is missing.
        what: &'static str,
        /// What it could look like.
        example: &'static str,
    },
    /// An amount cannot be read.
    #[error("the {what}: {problem}")]
    UnreadableAmount {
        /// Which.
        what: &'static str,
        /// What is wrong with it.
        problem: Box<ReadError>,
    },
    /// A number of containers is none.
    #[error("{typed} is no number of containers; hint: write a whole number from 1 to {most}")]
    NoCount {
        /// What was typed.
        typed: i64,
        /// The most.
        most: i64,
    },
    /// Nothing has that name.
    #[error("no {what} in the book is called {typed:?}; hint: {hint}")]
    NoSuchThing {
        /// What was looked for: a lot, a basket.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// Where to look.
        hint: &'static str,
    },
    /// Several have that name.
    #[error("{typed:?} may be more than one {what}; hint: give one of {}", .choices.join(", "))]
    SeveralThings {
        /// What was looked for.
        what: &'static str,
        /// What was typed.
        typed: String,
        /// What they are called.
        choices: Vec<String>,
    },
    /// There are not so many.
    #[error(
        "{wanted} of lot {label} were to be taken {from}, and the book has {there} there; hint: if more stand there, \
         say so with `stillroom shelf count`"
    )]
    NotSoMany {
        /// The lot.
        label: String,
        /// How many were wanted.
        wanted: i64,
        /// How many there are.
        there: i64,
        /// From where.
        from: String,
    },
    /// A lot stands in several places or sizes.
    #[error("lot {label} stands in more than one place: {}; hint: add --shelf or --size", .places.join(", "))]
    WhichPlace {
        /// The lot.
        label: String,
        /// Where.
        places: Vec<String>,
    },
    /// Taking it back would leave fewer containers than none.
    #[error(
        "taking this back would leave lot {label} with fewer than none on a shelf: something was done with these \
         containers later; hint: `stillroom history {label}` shows it; take that back first"
    )]
    BuiltUpon {
        /// The lot.
        label: String,
    },
    /// There is nothing to take back.
    #[error(
        "there is nothing of {who} to take back; hint: `stillroom history LOT` shows acts with their ids"
    )]
    NothingToTakeBack {
        /// Whose.
        who: String,
    },
    /// An open container was closed, or never open.
    #[error("lot {label} is not open, so nothing is added to it; hint: put up a new one with --open")]
    NotOpen {
        /// The lot.
        label: String,
    },
    /// The store could not.
    #[error(transparent)]
    Store(Box<StoreError>),
    /// The entry has no text.
    #[error(transparent)]
    Entry(Box<EntryError>),
}

impl KeepError {
    pub(super) fn unreadable(what: &'static str, problem: ReadError) -> Self {
        Self::UnreadableAmount { what, problem: Box::new(problem) }
    }

    /// Whether the question is wrong, and not the world.
    #[must_use]
    pub fn is_of_the_question(&self) -> bool {
        !matches!(self, Self::Store(_))
    }
}

impl From<StoreError> for KeepError {
    fn from(error: StoreError) -> Self {
        Self::Store(Box::new(error))
    }
}

impl From<WriteError> for KeepError {
    fn from(error: WriteError) -> Self {
        match error {
            WriteError::Store(error) => error.into(),
            WriteError::Entry(error) => Self::Entry(Box::new(error)),
        }
    }
}
