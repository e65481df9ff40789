//! Recorded values: the package CoolProp 8.0.0: steam tables (IAPWS-95) over 0 to 250 °C, brine (INCOMP::MNA) from 1 to 19.5 %.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

const SOURCES: &[&str] = &["COOLPROP800"];

pub(crate) fn checks() -> Vec<Check> {
    rows::recorded()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| {
            let tolerance = match row.id.as_str() {
                id if id.starts_with("BR-rho") => 0.1,
                id if id.starts_with("BR-tf") => 0.02,
                id if id.starts_with("ST-rl") => 2e-4 * row.want.abs(),
                _ => 5e-4 * row.want.abs(),
            };
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// Source: the package CoolProp 8.0.0: steam tables (IAPWS-95) over 0 to 250 °C, brine (INCOMP::MNA) from 1 to 19.5 %.
/// Tolerance: steam 5e-4 and water 2e-4 of the value, how far the supplementary equations lie from IAPWS-95 at 250 °C (an order nearer below 150 °C); brine 0.1 kg/m3 and 0.02 K, the rounding and the straight lines of its table.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 100);
}
