//! Published examples: F. Breidt and others, Food Protection Trends 34(3):132-138, 2014, table 4.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["BREIDT2014"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: F. Breidt and others, Food Protection Trends 34(3):132-138, 2014, table 4.
/// Tolerance: 2 %: the table was made from unrounded F and z.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 9);
}
