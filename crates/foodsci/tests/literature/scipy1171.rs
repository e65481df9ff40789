//! Recorded values: a separate program with SciPy 1.17.1: fifty-term series, Ball's curve, the exponential integral, spheres in brine, cardinal temperatures.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["SCIPY1171"];

pub(crate) fn checks() -> Vec<Check> {
    rows::anchors()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = if row.id.starts_with("SA-diff") { 2e-4 } else { 2e-6 } * row.want.abs();
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: a separate program with SciPy 1.17.1: fifty-term series, Ball's curve, the exponential integral, spheres in brine, cardinal temperatures.
/// Tolerance: 2e-6 of the value, the digits recorded; 2e-4 for salting times, whose table rounds the Fourier number to 0.1830.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 120);
}
