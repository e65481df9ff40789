//! What is wrong with a document: one fault, where it stands, and what it should be.

use std::fmt;

/// One thing wrong with a problem or plan document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Where it stands, as a JSON path such as `projects[2].options[0].steps[1].minutes`; empty for the whole document.
    pub path: String,
    /// What is wrong there.
    pub wrong: Wrong,
}

impl Fault {
    pub(crate) fn new(path: impl Into<String>, wrong: Wrong) -> Fault {
        Fault { path: path.into(), wrong }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.path.is_empty() {
            write!(f, "{}", self.wrong)
        } else {
            write!(f, "{}: {}", self.path, self.wrong)
        }
    }
}

impl std::error::Error for Fault {}

/// The kinds of fault a document can have.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Wrong {
    /// The text is not JSON at all.
    #[error("not JSON (line {line}, column {column}): {reason}; hint: check the commas and brackets there")]
    NotJson {
        /// Line of the text, from 1.
        line: usize,
        /// Column of that line, from 1.
        column: usize,
        /// What the JSON reader says.
        reason: String,
    },
    /// The text is larger than any day needs.
    #[error("the text has {bytes} bytes, more than {most}; hint: write one day to a document")]
    TooLong {
        /// Bytes of the text.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// A list is longer than what can be planned.
    #[error("has {found} {what}, more than {most}; hint: split the day, or leave some out")]
    TooMany {
        /// What there are too many of.
        what: &'static str,
        /// How many there are.
        found: usize,
        /// How many there may be.
        most: usize,
    },
    /// A value is of another JSON type than the format asks for.
    #[error("{found} stands where {wanted} belongs; hint: write {wanted}")]
    Type {
        /// What stands there.
        found: String,
        /// What belongs there.
        wanted: &'static str,
    },
    /// A key that must be there is not.
    #[error("is missing; hint: the format has no default for it")]
    Missing,
    /// A key the format does not know.
    #[error("is not a key of the format; hint: the keys here are {known}")]
    UnknownKey {
        /// The keys that may stand there.
        known: String,
    },
    /// Another format name than the one read here.
    #[error("names the format {found:?}, not {wanted:?}; hint: write {wanted:?}")]
    Format {
        /// The name found.
        found: String,
        /// The name expected.
        wanted: &'static str,
    },
    /// A number that is not whole or is outside its limits.
    #[error("{found} is not a whole number from {least} to {most}; hint: stay within those limits")]
    Whole {
        /// What stands there.
        found: String,
        /// The least value allowed.
        least: i64,
        /// The greatest value allowed.
        most: i64,
    },
    /// An id of no characters.
    #[error("is an empty id; hint: give it a name")]
    EmptyId,
    /// An id used before in the same list.
    #[error("repeats the id {id:?}; hint: ids are unique within their list")]
    Twice {
        /// The id.
        id: String,
    },
    /// A name that nothing in the document carries.
    #[error("{name:?} is not one of the {list}; hint: add it there or correct the name")]
    Unlisted {
        /// The name.
        name: String,
        /// The list that should hold it.
        list: &'static str,
    },
    /// A closed interval that ends before it starts.
    #[error("closes at {from} and opens at {to}, which is earlier; hint: write the earlier minute first")]
    Backwards {
        /// First minute of the interval.
        from: u32,
        /// First minute after it.
        to: u32,
    },
    /// The best option of every project together is worth too much.
    #[error("the best options together are worth {sum}, more than {most}; hint: use a coarser unit of worth")]
    Worth {
        /// The sum of the greatest value of each project.
        sum: u64,
        /// The greatest sum allowed.
        most: u64,
    },
    /// A word that is not one of a short list.
    #[error("{found:?} is not one of {known}; hint: use one of those words")]
    Word {
        /// The word found.
        found: String,
        /// The words allowed.
        known: &'static str,
    },
    /// A bound on the finish without one on the value.
    #[error("bounds the finish and not the value; hint: give bound.value too")]
    HalfBound,
}
