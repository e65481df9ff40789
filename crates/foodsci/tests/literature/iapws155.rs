//! Recorded values: the package iapws 1.5.5 with the standard atmosphere: boiling points by altitude and steam under a gauge.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["IAPWS155"];

pub(crate) fn checks() -> Vec<Check> {
    rows::anchors()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = 1e-6 * row.want.abs();
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: the package iapws 1.5.5 with the standard atmosphere: boiling points by altitude and steam under a gauge.
/// Tolerance: 1e-6 of the value, the digits recorded, with one part in ten million of the psi.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 60);
}
