//! What can be wrong with the data, and where it stands.

/// One thing wrong with a table: where, what, and what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("data/{file}:{line}: {problem}")]
pub struct DataFault {
    /// The file, below `data/`.
    pub file: &'static str,
    /// Its line, counted from 1.
    pub line: u64,
    /// What is wrong.
    pub problem: DataProblem,
}

/// What is wrong with a row.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum DataProblem {
    /// The text is no CSV or no TOML.
    #[error("cannot be read: {reason}\nhint: quote cells that hold commas, and close every quote")]
    Unreadable {
        /// What the reader of the format said.
        reason: String,
    },
    /// The first line does not name the expected columns.
    #[error("the columns are {found}, not {expected}\nhint: put the columns back in this order")]
    ColumnsDiffer {
        /// The columns that are there.
        found: String,
        /// The columns that should be there.
        expected: String,
    },
    /// A cell that must be filled is empty.
    #[error("{column} is empty\nhint: fill it in as the source prints it, or take the row out")]
    EmptyCell {
        /// The column.
        column: &'static str,
    },
    /// A cell that must hold a number does not.
    #[error("{column} is {text:?}, not a number in range\nhint: write a plain decimal number")]
    NotANumber {
        /// The column.
        column: &'static str,
        /// What stands there.
        text: String,
    },
    /// A cell of a closed list holds another word.
    #[error("{column} is {text:?}, which is none of: {list}\nhint: use one of these words")]
    NotInList {
        /// The column.
        column: &'static str,
        /// What stands there.
        text: String,
        /// The words that may stand there.
        list: String,
    },
    /// A cell points to a row of another table that is not there.
    #[error("{column} is {text:?}, which {table} does not hold\nhint: add that row or correct the name")]
    UnknownKey {
        /// The column.
        column: &'static str,
        /// What stands there.
        text: String,
        /// The table it should be in.
        table: &'static str,
    },
    /// A name that must be there once is there twice.
    #[error("{key:?} stands in this table twice\nhint: keep one of the rows")]
    Repeated {
        /// The name.
        key: String,
    },
    /// The altitude bands of one printed line leave a gap or overlap.
    #[error("the bands of {line} do not join at {feet} ft\nhint: each band starts one foot above the last")]
    BandsDoNotJoin {
        /// The printed line.
        line: String,
        /// Where they part.
        feet: u32,
    },
    /// Two cells of a row contradict each other.
    #[error("{what}\nhint: compare the row with its source")]
    Contradiction {
        /// What does not go together.
        what: String,
    },
}
