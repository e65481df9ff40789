//! What can be wrong with a day file, in one sentence each, with the place and one thing to do.

mod hint;
mod kind;

use std::fmt;

use super::text::Places;

pub use kind::{Encoding, FaultKind};

/// Which of the two files a fault stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WhichFile {
    /// The day's own file.
    Day,
    /// `house.toml` beside it.
    House,
}

impl fmt::Display for WhichFile {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Day => "day",
            Self::House => "house",
        })
    }
}

/// Every fault of a day file and of the house file beside it, in the order of the files.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{}", self.write_all())]
pub struct DayFaults {
    /// The faults, at most [`DayFaults::MOST`] of them.
    pub faults: Vec<DayFault>,
    /// How many more there are.
    pub more: usize,
}

impl DayFaults {
    /// No person reads more faults than this at once; a file with more is no day file.
    pub const MOST: usize = 100;

    fn write_all(&self) -> String {
        let mut lines: Vec<String> = self.faults.iter().map(DayFault::to_string).collect();
        if self.more > 0 {
            lines.push(format!("and {} more faults", self.more));
        }
        lines.join("\n")
    }
}

/// One fault with its place.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{file}:{line}:{column}: {kind}\n  hint: {}", self.kind.hint())]
pub struct DayFault {
    /// The file.
    pub file: WhichFile,
    /// The line, counted from one.
    pub line: usize,
    /// The column in characters, counted from one.
    pub column: usize,
    /// What is wrong.
    pub kind: FaultKind,
}

/// Gathers faults with their places.
pub(super) struct Faults<'t> {
    day: Option<Places<'t>>,
    house: Option<Places<'t>>,
    found: Vec<DayFault>,
    more: usize,
}

impl<'t> Faults<'t> {
    /// Of two texts; `None` for one that is missing or no text.
    pub(super) fn of(day: Option<&'t str>, house: Option<&'t str>) -> Self {
        Self { day: day.map(Places::of), house: house.map(Places::of), found: Vec::new(), more: 0 }
    }

    /// The line and the column of an offset in a file.
    pub(super) fn place(&self, file: WhichFile, offset: usize) -> (usize, usize) {
        let places = match file {
            WhichFile::Day => &self.day,
            WhichFile::House => &self.house,
        };
        places.as_ref().map_or((1, 1), |places| places.find(offset))
    }

    /// Notes a fault at an offset of a file.
    pub(super) fn add(&mut self, file: WhichFile, offset: usize, kind: FaultKind) {
        if self.found.len() >= DayFaults::MOST {
            self.more += 1;
            return;
        }
        let place = self.place(file, offset);
        self.add_at(file, place, kind);
    }

    /// Notes a fault at a line and a column.
    pub(super) fn add_at(&mut self, file: WhichFile, (line, column): (usize, usize), kind: FaultKind) {
        self.found.push(DayFault { file, line, column, kind });
    }

    /// Everything noted, in the order of the files; `None` when nothing was.
    pub(super) fn finish(self) -> Option<DayFaults> {
        let mut faults = self.found;
        faults.sort_by_key(|fault| (fault.file, fault.line, fault.column));
        (!faults.is_empty()).then_some(DayFaults { faults, more: self.more })
    }
}
