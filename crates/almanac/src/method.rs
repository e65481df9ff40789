//! Other ways of keeping food: blanching, freezing, drying, fermenting, and what jellies and syrups need.
//!
//! Many cells of these tables are words (`until tender`, `+1`); they stay as printed, and the figure beside them is
//! filled only where the cell is a number or a range.

mod blanching;
mod drying;
mod ferment;
mod freezing;
mod jelly;
mod pectin;
mod syrup;

use measure::Fraction;

use crate::row::{Reading, read_fraction};
use crate::words::stems_of;

pub use blanching::{BlanchMethod, BlanchRecord, Blanching};
pub use drying::{DriedYield, Drying, DryingRecord};
pub use ferment::{FermentFact, FermentRecord};
pub use freezing::{FreezerHeadspace, Freezing, FreezingRecord, KeepingMonths};
pub use jelly::{JellyFact, JellyRecord};
pub use pectin::PectinKind;
pub use syrup::{Syrup, SyrupUse};

/// The tables about other ways of keeping food.
#[derive(Debug, Clone, Default)]
pub(crate) struct MethodTables {
    blanching: Vec<Blanching>,
    freezing: Vec<Freezing>,
    drying: Vec<Drying>,
    ferments: Vec<FermentFact>,
    jelly: Vec<JellyFact>,
    syrups: Vec<Syrup>,
    pectins: Vec<PectinKind>,
}

/// Reads the tables about other ways of keeping food.
pub(crate) fn read_methods(reading: &mut Reading<'_>) -> MethodTables {
    MethodTables {
        blanching: blanching::read_blanching(reading),
        freezing: freezing::read_freezing(reading),
        drying: drying::read_drying(reading),
        ferments: ferment::read_ferments(reading),
        jelly: jelly::read_jelly(reading),
        syrups: syrup::read_syrups(reading),
        pectins: pectin::read_pectins(reading),
    }
}

/// A printed cell that may hold a number, a range, or words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintedRange {
    /// As printed.
    pub printed: Box<str>,
    /// The lower and upper end, where it is a number or a range of two.
    pub range: Option<(Fraction, Fraction)>,
}

impl PrintedRange {
    /// Reads a cell; none when it is empty.
    pub(crate) fn read(cell: &str) -> Option<Self> {
        if cell.is_empty() {
            return None;
        }
        let (low, high) = cell.split_once('-').unwrap_or((cell, cell));
        let range =
            read_fraction(low.trim()).zip(read_fraction(high.trim())).filter(|(low, high)| low <= high);
        Some(Self { printed: cell.into(), range })
    }
}

/// The rows whose name holds every word asked for.
fn rows_named<'a, T>(rows: &'a [T], words: &str, name: impl Fn(&'a T) -> &'a str) -> Vec<&'a T> {
    let wanted = stems_of(words);
    if wanted.is_empty() {
        return Vec::new();
    }
    rows.iter().filter(|row| wanted.is_subset(&stems_of(name(row)))).collect()
}
