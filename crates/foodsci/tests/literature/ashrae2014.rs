//! Published examples: ASHRAE Handbook, Refrigeration, Thermal properties of foods, table 3.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["ASHRAER"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: ASHRAE Handbook, Refrigeration, Thermal properties of foods, table 3.
/// Tolerance: 1 kJ/kg, the rounding of the table.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 8);
}
