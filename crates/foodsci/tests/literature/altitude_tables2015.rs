//! Published examples: a process adjustment table with a column of boiling points, and a rounded household table.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["ALTPAGE", "ALTROUND"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: a process adjustment table with a column of boiling points, and a rounded household table.
/// Tolerance: 0.15 °F, the rounding of the first; 0.6 °F of the second.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 14);
}
