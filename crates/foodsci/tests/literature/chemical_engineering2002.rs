//! Published examples: R. E. Treybal, Mass-Transfer Operations, 3rd ed., 1980, illustration 12.1; J. F. Richardson and others, Chemical Engineering, vol. 2, 5th ed., 2002, examples 16.1 and 16.4.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["TREYBAL", "CR2"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: R. E. Treybal, Mass-Transfer Operations, 3rd ed., 1980, illustration 12.1; J. F. Richardson and others, Chemical Engineering, vol. 2, 5th ed., 2002, examples 16.1 and 16.4.
/// Tolerance: the rounding of each answer.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 3);
}
