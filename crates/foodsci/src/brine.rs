//! What salt does to water: density, freezing point, water activity.

use measure::{Density, Percent, Temp};

use crate::curve::{read_curve, read_curve_backwards};
use crate::limits::{Limits, ModelError, limits};
use crate::water_activity::WaterActivity;

const STRENGTH: Limits = limits(
    "strength of the brine",
    " %",
    0.0,
    20.0,
    "A. Melinder, Properties of Secondary Working Fluids, 2010",
);
const MOLALITY_PERCENT: Limits =
    limits("strength of the brine", " %", 0.0, 26.4, "Pitzer's equation up to saturation");

/// Salt in percent by weight, density at 20 °C in kg/m3, freezing point in °C.
///
/// Source: A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR, 2010, through CoolProp 8.0.0
/// (INCOMP::MNA). Basis: computed.
const TABLE: [(f64, f64, f64); 21] = [
    (0.0, 998.2, 0.0),
    (1.0, 1005.3, -0.60),
    (2.0, 1012.5, -1.20),
    (3.0, 1019.6, -1.80),
    (4.0, 1026.8, -2.42),
    (5.0, 1034.0, -3.05),
    (6.0, 1041.2, -3.71),
    (7.0, 1048.5, -4.38),
    (8.0, 1055.8, -5.07),
    (9.0, 1063.2, -5.80),
    (10.0, 1070.6, -6.55),
    (11.0, 1078.1, -7.34),
    (12.0, 1085.6, -8.17),
    (13.0, 1093.1, -9.03),
    (14.0, 1100.8, -9.94),
    (15.0, 1108.5, -10.90),
    (16.0, 1116.2, -11.90),
    (17.0, 1124.0, -12.96),
    (18.0, 1131.9, -14.06),
    (19.0, 1139.8, -15.23),
    (20.0, 1147.8, -16.46),
];

fn densities() -> [(f64, f64); TABLE.len()] {
    TABLE.map(|(percent, density, _)| (percent, density))
}

fn freezing_points() -> [(f64, f64); TABLE.len()] {
    TABLE.map(|(percent, _, freezes)| (percent, freezes))
}

/// The density of a brine at 20 °C, between the points of the table. Argument: percent of salt by weight, 0 to 20.
///
/// # Source
///
/// A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR, 2010.
///
/// # Errors
///
/// Outside 0 to 20 %.
pub fn find_brine_density(strength: Percent) -> Result<Density, ModelError> {
    let percent = STRENGTH.check(strength.as_percent())?;
    let density = read_curve(&densities(), percent).expect("the table spans the range just checked");
    Ok(Density::kilograms_per_cubic_metre(density))
}

/// The strength of a brine from its density at 20 °C: what a floating hydrometer tells.
///
/// # Errors
///
/// Outside 998.2 to 1147.8 kg/m3.
pub fn find_brine_of_density(density: Density) -> Result<Percent, ModelError> {
    const DENSITY: Limits =
        limits("density of the brine", " kg/m3", 998.2, 1147.8, "brines of 0 to 20 % at 20 °C");
    let reading = DENSITY.check(density.as_kilograms_per_cubic_metre())?;
    let percent =
        read_curve_backwards(&densities(), reading).expect("the table spans the range just checked");
    Ok(Percent::of_hundred(percent))
}

/// The temperature at which ice begins to form in a brine. Argument: percent of salt by weight, 0 to 20.
///
/// # Source
///
/// A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR, 2010.
///
/// # Errors
///
/// Outside 0 to 20 %.
pub fn find_brine_freezing_point(strength: Percent) -> Result<Temp, ModelError> {
    let percent = STRENGTH.check(strength.as_percent())?;
    let freezes = read_curve(&freezing_points(), percent).expect("the table spans the range just checked");
    Ok(Temp::celsius(freezes))
}

/// Molar mass of salt in kg/mol, and moles of water in a kilogram.
const SALT_KG_PER_MOL: f64 = 0.058_443;
const WATER_MOL_PER_KG: f64 = 55.508_4;

/// The water activity of a brine at 25 °C.
///
/// Pitzer's equation for a 1:1 salt: `φ = 1 + f + m B + m² C`, `aw = exp(-2 m φ / 55.508)`, with
/// `f = -Aφ √m / (1 + 1.2 √m)` and `B = β0 + β1 exp(-2 √m)`. Argument: percent of salt by weight, 0 to 26.4.
///
/// # Source
///
/// K. S. Pitzer's parameters for NaCl at 25 °C: Aφ 0.3915, β0 0.0765, β1 0.2664, C 0.00127 (from memory); checked
/// against PHREEQC 3 and Robinson and Stokes, 1965.
///
/// # Errors
///
/// Outside 0 to 26.4 %.
pub fn find_brine_water_activity(strength: Percent) -> Result<WaterActivity, ModelError> {
    let share = MOLALITY_PERCENT.check(strength.as_percent())? / 100.0;
    let molality = share / (1.0 - share) / SALT_KG_PER_MOL;
    Ok(WaterActivity(libm::exp(-2.0 * molality * osmotic_coefficient(molality) / WATER_MOL_PER_KG)))
}

fn osmotic_coefficient(molality: f64) -> f64 {
    const A_PHI: f64 = 0.3915;
    const BETA_0: f64 = 0.0765;
    const BETA_1: f64 = 0.2664;
    const C_PHI: f64 = 0.001_27;
    let root = libm::sqrt(molality);
    let b = BETA_0 + BETA_1 * libm::exp(-2.0 * root);
    1.0 - A_PHI * root / (1.0 + 1.2 * root) + molality * b + molality * molality * C_PHI
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn density_and_strength_undo_each_other() {
        for tenths in 0..=200 {
            let strength = Percent::of_hundred(f64::from(tenths) / 10.0);
            let back = find_brine_of_density(find_brine_density(strength).unwrap()).unwrap();
            assert!((back - strength).as_percent().abs() < 1e-9);
        }
    }

    #[test]
    fn more_salt_is_heavier_freezes_lower_and_holds_water_faster() {
        for percent in 0..20 {
            let [less, more] = [0.0, 1.0].map(|more| Percent::of_hundred(f64::from(percent) + more));
            assert!(find_brine_density(more).unwrap() > find_brine_density(less).unwrap());
            assert!(find_brine_freezing_point(more).unwrap() < find_brine_freezing_point(less).unwrap());
            assert!(find_brine_water_activity(more).unwrap() < find_brine_water_activity(less).unwrap());
        }
        assert!(find_brine_density(Percent::of_hundred(21.0)).is_err());
    }
}
