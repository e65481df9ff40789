//! Recorded values: the package PsychroLib 2.5.0: moist air at sea level and at 1,550 m.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["PSYCHROLIB250"];

pub(crate) fn checks() -> Vec<Check> {
    rows::anchors()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = if row.id.contains("-Twb-") || row.id.contains("-Tdp-") {
                2e-3
            } else {
                1e-5 * row.want.abs()
            };
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: the package PsychroLib 2.5.0: moist air at sea level and at 1,550 m.
/// Tolerance: 1e-3 K for its iterated wet bulb and dew point, 1e-5 of the value else.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 50);
}
