//! Recorded values: the package PsychroLib 2.5.0, recorded over -15 to 70 °C, 5 to 95 % and two heights.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["PSYCHROLIB250"];

pub(crate) fn checks() -> Vec<Check> {
    rows::recorded()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = if row.id.starts_with("PL-Twb") { 2e-3 } else { 1e-5 * row.want.abs() };
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: the package PsychroLib 2.5.0, recorded over -15 to 70 °C, 5 to 95 % and two heights.
/// Tolerance: 2e-3 K for its iterated wet bulb, 1e-5 of the water in the air.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 80);
}
