//! Published examples: ASHRAE Handbook, Fundamentals, 2017, chapter 1, tables 1 to 3 and example 1.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["ASHRAEF"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: ASHRAE Handbook, Fundamentals, 2017, chapter 1, tables 1 to 3 and example 1.
/// Tolerance: printed with each row; the tables are of real gas, up to 1.2 % from the ideal relations.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 21);
}
