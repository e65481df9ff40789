//! Recorded values: the package iapws 1.5.5 (IAPWS-IF97), recorded over 0 to 200 °C.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["IAPWS155"];

pub(crate) fn checks() -> Vec<Check> {
    rows::recorded()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = if row.id.starts_with("SI-p") { 1e-6 } else { 5e-4 } * row.want.abs();
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: the package iapws 1.5.5 (IAPWS-IF97), recorded over 0 to 200 °C.
/// Tolerance: 1e-6 of a pressure; 5e-4 of a heat of evaporation, which here is Clapeyron's relation on another formulation.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 20);
}
