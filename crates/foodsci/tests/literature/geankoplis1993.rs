//! Published examples: C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, examples 1.5-1 to 9.12-3, as a public companion notebook of the book prints them.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["GEANK3"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, examples 1.5-1 to 9.12-3, as a public companion notebook of the book prints them.
/// Tolerance: printed with each row: the last printed digit, or how far the book's charts are from the exact series.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 27);
}
