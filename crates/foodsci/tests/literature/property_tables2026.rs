//! Recorded values: property tables row by row: PHREEQC 3 and A. Melinder, 2010, for brine; the CRC Handbook's sucrose tables; solubility and boiling rise of sugar; water by IAPWS-95; ASHRAE Refrigeration, table 3, for foods.

use crate::ledger::{Check, assert_all, check};
use crate::{anchored, rows};

pub(crate) fn checks() -> Vec<Check> {
    rows::properties()
        .iter()
        .map(|row| {
            let tolerance = tolerance(&row.id);
            check(row, anchored::compute(row), tolerance)
        })
        .collect()
}

/// How near each table must be met.
fn tolerance(id: &str) -> f64 {
    let starts = |begin: &str| id.starts_with(begin);
    match id {
        _ if starts("BP-aw") => 0.001,
        _ if starts("BP-rho") || starts("SP-rho") => 0.05,
        _ if starts("SP-gl") => 0.6,
        _ if starts("BP-tf") || starts("SS-") => 0.01,
        _ if starts("SN-") || starts("SP-bpe") => 0.02,
        _ if starts("SB-") => 0.001,
        _ if starts("LE-") => 0.02,
        _ if starts("FP-L") => 1.3,
        _ => 0.12,
    }
}

/// Source: property tables row by row: PHREEQC 3 and A. Melinder, 2010, for brine; the CRC Handbook's sucrose tables; solubility and boiling rise of sugar; water by IAPWS-95; ASHRAE Refrigeration, table 3, for foods.
/// Tolerance: the rounding of each table; 0.001 of water activity for Pitzer's older constants; 0.12 kJ/(kg K) and 1.3 kJ/kg, the published spread of the food equations; 0.05 K of boiling rise below 80 % and 0.2 K above, from the saturation line taken.
#[test]
fn the_models_give_the_recorded_values() {
    assert_all(&checks(), 200);
}
