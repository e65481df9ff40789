//! Recorded values: arithmetic done by a separate program: lethal rates, Pham's method, freezing loads, Norrish, charge balance, mass balances.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["ARITHMETIC"];

pub(crate) fn checks() -> Vec<Check> {
    rows::anchors()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = if row.id.starts_with("WA-") { 2e-5 } else { 2e-6 } * row.want.abs();
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: arithmetic done by a separate program: lethal rates, Pham's method, freezing loads, Norrish, charge balance, mass balances.
/// Tolerance: 2e-6 of the value, the digits recorded; 2e-5 for Norrish, whose molar mass of water may be 18.015 or 18.015 28.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 100);
}
