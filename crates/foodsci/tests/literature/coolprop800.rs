//! Recorded values: the package CoolProp 8.0.0 (IAPWS-95): density of water, vacuum under a lid.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["COOLPROP800"];

pub(crate) fn checks() -> Vec<Check> {
    rows::anchors()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = if row.id.starts_with("HA-rho") { 0.02 } else { 1e-4 * row.want.abs() };
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: the package CoolProp 8.0.0 (IAPWS-95): density of water, vacuum under a lid.
/// Tolerance: 0.02 kg/m3 for Kell's equation, 1e-4 of a vacuum.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 20);
}
