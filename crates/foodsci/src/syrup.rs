//! Sugar syrups: density, boiling point, how much sugar stays dissolved.

use measure::{Density, Length, Percent, Temp, TempDifference};

use crate::atmosphere::{find_air_pressure, find_boiling_point};
use crate::curve::{read_curve, read_curve_backwards};
use crate::limits::{Limits, ModelError, limits};
use crate::root::find_root;
use crate::steam::{find_boiling_pressure, find_boiling_temp};
use crate::water_activity::{Solute, find_water_activity};

/// Sucrose in percent by weight against density at 20 °C in kg/m3.
///
/// Source: sucrose tables credited to the CRC Handbook in M. T. Flanagan's public library of sucrose solutions, 2003 to
/// 2008. Basis: read.
const DENSITY: [(f64, f64); 24] = [
    (0.0, 998.2),
    (5.0, 1017.8),
    (10.0, 1038.1),
    (15.0, 1059.2),
    (20.0, 1081.0),
    (24.0, 1099.0),
    (28.0, 1117.5),
    (30.0, 1127.0),
    (34.0, 1146.4),
    (40.0, 1176.5),
    (44.0, 1197.2),
    (48.0, 1218.6),
    (50.0, 1229.5),
    (56.0, 1263.2),
    (60.0, 1286.4),
    (62.0, 1298.3),
    (64.0, 1310.3),
    (68.0, 1334.8),
    (70.0, 1347.2),
    (72.0, 1359.9),
    (74.0, 1372.6),
    (76.0, 1385.5),
    (80.0, 1411.7),
    (84.0, 1438.3),
];

/// Temperature in °C against grams of sucrose that dissolve in 100 g of water.
///
/// Source: solubility table of a sugar-industry reference page, which agrees with F. A. Mohos, Confectionery and Chocolate
/// Engineering, 2010, table A2.2, but for 30 °C (219.9 there). Basis: read.
const SOLUBILITY: [(f64, f64); 12] = [
    (0.0, 179.2),
    (10.0, 190.5),
    (20.0, 203.9),
    (25.0, 211.4),
    (30.0, 219.5),
    (40.0, 238.1),
    (50.0, 260.4),
    (60.0, 287.3),
    (70.0, 320.5),
    (80.0, 362.1),
    (90.0, 415.7),
    (100.0, 487.2),
];

/// Sucrose in percent by weight, from 46 on, against the printed rise of the boiling point in K at sea level. Below 46 the
/// printed figures break the law of dilute solutions and are left out.
///
/// Source: C. A. Browne, Handbook of Sugar Analysis, 1912, as quoted in sugar-boiling notes, and the temperature table of a
/// sugar-industry reference page. Basis: read.
const PRINTED_RISE: [(f64, f64); 23] = [
    (46.0, 1.8),
    (48.0, 1.9),
    (50.0, 2.0),
    (52.0, 2.1),
    (54.0, 2.3),
    (56.0, 2.4),
    (58.0, 2.7),
    (60.0, 3.0),
    (62.0, 3.4),
    (64.0, 4.0),
    (66.0, 4.8),
    (68.0, 5.6),
    (70.0, 6.5),
    (72.0, 7.4),
    (74.0, 8.4),
    (76.0, 9.4),
    (78.0, 10.6),
    (80.0, 12.0),
    (82.0, 13.9),
    (84.0, 16.3),
    (86.0, 19.3),
    (88.0, 23.1),
    (90.0, 27.8),
];

const SUGAR_DENSITY: Limits =
    limits("share of sugar", " %", 0.0, 84.0, "the density table of the CRC Handbook");
const SUGAR_BOILS: Limits = limits("share of sugar", " %", 0.0, 85.0, "Norrish's equation");
const SUGAR_PRINTED: Limits =
    limits("share of sugar", " %", 46.0, 90.0, "the printed boiling points that agree with dilute solutions");
const DISSOLVES_C: Limits = limits("temperature", " °C", 0.0, 100.0, "the solubility table of sucrose");

/// The density of a syrup at 20 °C, between the points of the table. Argument: percent of sucrose by weight, 0 to 84.
///
/// # Source
///
/// Sucrose tables credited to the CRC Handbook of Chemistry and Physics.
///
/// # Errors
///
/// Outside 0 to 84 %.
pub fn find_syrup_density(sugar: Percent) -> Result<Density, ModelError> {
    let percent = SUGAR_DENSITY.check(sugar.as_percent())?;
    let density = read_curve(&DENSITY, percent).expect("the table spans the range just checked");
    Ok(Density::kilograms_per_cubic_metre(density))
}

/// The share of sugar in a syrup from its density at 20 °C.
///
/// # Errors
///
/// Outside 998.2 to 1438.3 kg/m3.
pub fn find_syrup_of_density(density: Density) -> Result<Percent, ModelError> {
    const READING: Limits =
        limits("density of the syrup", " kg/m3", 998.2, 1438.3, "syrups of 0 to 84 % at 20 °C");
    let reading = READING.check(density.as_kilograms_per_cubic_metre())?;
    Ok(Percent::of_hundred(
        read_curve_backwards(&DENSITY, reading).expect("the table spans the range just checked"),
    ))
}

/// How far above boiling water a syrup boils at a height.
///
/// The temperature at which `aw(sugar) × p_sat(T)` is the pressure of the air, less the boiling point of water. Arguments:
/// percent of sucrose by weight, the height above the sea. Within 0.5 K of the printed table from 46 to 66 %; up to 1.3 K
/// below it from 68 to 80 %, so that both are shown there ([`find_printed_boiling_rise`]).
///
/// # Source
///
/// Norrish's equation and IAPWS R7-97(2012), region 4.
///
/// # Errors
///
/// Outside 0 to 85 % or -500 m to 10,000 m.
///
/// # Examples
///
/// ```
/// use foodsci::syrup::find_boiling_rise;
/// use measure::{Length, Percent};
///
/// let rise = find_boiling_rise(Percent::of_hundred(60.0), Length::ZERO).unwrap();
/// assert!((rise.as_kelvins() - 3.13).abs() < 0.02);
/// ```
pub fn find_boiling_rise(sugar: Percent, height: Length) -> Result<TempDifference, ModelError> {
    SUGAR_BOILS.check(sugar.as_percent())?;
    let activity = find_water_activity(Solute::Sucrose, sugar)?.0;
    let air = find_air_pressure(height)?;
    Ok(find_boiling_temp(air * (1.0 / activity))? - find_boiling_temp(air)?)
}

/// The printed rise of the boiling point at sea level, between the points of the table.
///
/// # Source
///
/// C. A. Browne, Handbook of Sugar Analysis, 1912, as quoted in sugar-boiling notes.
///
/// # Errors
///
/// Outside 46 to 90 %.
pub fn find_printed_boiling_rise(sugar: Percent) -> Result<TempDifference, ModelError> {
    let percent = SUGAR_PRINTED.check(sugar.as_percent())?;
    Ok(TempDifference::kelvins(
        read_curve(&PRINTED_RISE, percent).expect("the table spans the range just checked"),
    ))
}

/// The share of sugar in a syrup that boils at a temperature at a height: the inverse of [`find_boiling_rise`].
///
/// # Errors
///
/// When it boils below water, or hotter than 85 % of sugar does.
pub fn find_sugar_of_boiling_syrup(boils_at: Temp, height: Length) -> Result<Percent, ModelError> {
    let water = find_boiling_point(height)?;
    let most = find_boiling_rise(Percent::of_hundred(SUGAR_BOILS.high), height)?;
    let reading = Limits {
        quantity: "boiling temperature of the syrup",
        unit: " °C",
        low: water.as_celsius(),
        high: (water + most).as_celsius(),
        range_of: "syrups of 0 to 85 % at this height",
    };
    let wanted = reading.check(boils_at.as_celsius())?;
    let air = find_air_pressure(height)?.as_pascals();
    let vapour = find_boiling_pressure(Temp::celsius(wanted))?.as_pascals();
    let share = find_root(0.0, SUGAR_BOILS.high, |percent| {
        find_water_activity(Solute::Sucrose, Percent::of_hundred(percent))
            .map_or(f64::NAN, |aw| aw.0 - air / vapour)
    });
    Ok(Percent::of_hundred(share.unwrap_or(if vapour > air { SUGAR_BOILS.high } else { 0.0 })))
}

/// The greatest share of sucrose that stays dissolved at a temperature, percent by weight.
///
/// # Source
///
/// The solubility table of sucrose; F. A. Mohos, Confectionery and Chocolate Engineering, 2010, table A2.2.
///
/// # Errors
///
/// Outside 0 °C to 100 °C.
pub fn find_saturation(at: Temp) -> Result<Percent, ModelError> {
    let grams = dissolved_per_100g(at)?;
    Ok(Percent::of_hundred(100.0 * grams / (100.0 + grams)))
}

fn dissolved_per_100g(at: Temp) -> Result<f64, ModelError> {
    let celsius = DISSOLVES_C.check(at.as_celsius())?;
    Ok(read_curve(&SOLUBILITY, celsius).expect("the table spans the range just checked"))
}

/// The temperature below which a syrup is more than saturated.
///
/// # Errors
///
/// When it is dissolved at 0 °C already, or not even at 100 °C.
pub fn find_saturation_temp(sugar: Percent) -> Result<Temp, ModelError> {
    const SATURATED: Limits =
        limits("share of sugar", " %", 64.18, 82.97, "the solubility table, 0 °C to 100 °C");
    let percent = SATURATED.check(sugar.as_percent())?;
    let grams = 100.0 * percent / (100.0 - percent);
    let within = grams.clamp(SOLUBILITY[0].1, SOLUBILITY[SOLUBILITY.len() - 1].1);
    Ok(Temp::celsius(
        read_curve_backwards(&SOLUBILITY, within).expect("the table spans the range just checked"),
    ))
}

/// How many times more sugar a syrup holds than stays dissolved.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Supersaturation(pub f64);

/// What a stored syrup does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Crystals {
    /// Everything stays dissolved.
    None,
    /// Between 1 and [`CRYSTALS_FROM`]: grains form slowly, on dust or at the rim.
    Slowly,
    /// Above that: crystals are likely unless a part of the sugar is inverted or glucose syrup was added.
    Likely,
}

/// Above this, crystals are likely; a planning range of ours runs from 1.15 to 1.3 and the careful end is taken.
pub const CRYSTALS_FROM: Supersaturation = Supersaturation(1.15);

/// How far a syrup is above saturation at the temperature it is kept at: `S = (g per 100 g water) / solubility`.
///
/// # Errors
///
/// Outside 0 to 85 % or 0 °C to 100 °C.
///
/// # Examples
///
/// ```
/// use foodsci::syrup::find_supersaturation;
/// use measure::{Percent, Temp};
///
/// let kept = find_supersaturation(Percent::of_hundred(70.0), Temp::celsius(20.0)).unwrap();
/// assert!((kept.0 - 1.14).abs() < 0.01);
/// ```
pub fn find_supersaturation(sugar: Percent, kept_at: Temp) -> Result<Supersaturation, ModelError> {
    let percent = SUGAR_BOILS.check(sugar.as_percent())?;
    Ok(Supersaturation(100.0 * percent / (100.0 - percent) / dissolved_per_100g(kept_at)?))
}

impl Supersaturation {
    /// What the syrup does.
    #[must_use]
    pub fn crystals(self) -> Crystals {
        match self {
            _ if self <= Self(1.0) => Crystals::None,
            _ if self <= CRYSTALS_FROM => Crystals::Slowly,
            _ => Crystals::Likely,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn boiling_point_and_sugar_undo_each_other() {
        for percent in 1..85 {
            let sugar = Percent::of_hundred(f64::from(percent));
            for height in [0.0, 1600.0].map(Length::metres) {
                let boils = find_boiling_point(height).unwrap() + find_boiling_rise(sugar, height).unwrap();
                let back = find_sugar_of_boiling_syrup(boils, height).unwrap();
                assert!((back - sugar).as_percent().abs() < 1e-6, "{percent}");
            }
        }
    }

    #[test]
    fn density_saturation_and_their_inverses_agree() {
        for percent in 1..84 {
            let sugar = Percent::of_hundred(f64::from(percent));
            let back = find_syrup_of_density(find_syrup_density(sugar).unwrap()).unwrap();
            assert!((back - sugar).as_percent().abs() < 1e-9);
        }
        for celsius in 0..=100 {
            let at = Temp::celsius(f64::from(celsius));
            let saturated = find_saturation(at).unwrap();
            assert!((find_supersaturation(saturated, at).unwrap().0 - 1.0).abs() < 1e-12);
            if (1..100).contains(&celsius) {
                let back = find_saturation_temp(saturated).unwrap();
                assert!((back - at).as_kelvins().abs() < 1e-9);
            }
        }
    }

    #[test]
    fn a_heavy_syrup_forms_grains_in_the_cellar() {
        let at = Temp::celsius(12.0);
        let of = |percent| find_supersaturation(Percent::of_hundred(percent), at).unwrap().crystals();
        assert_eq!(of(60.0), Crystals::None);
        assert_eq!(of(68.0), Crystals::Slowly);
        assert_eq!(of(75.0), Crystals::Likely);
    }

    #[test]
    fn no_figure_is_read_beyond_a_table() {
        assert!(find_syrup_density(Percent::of_hundred(84.5)).is_err());
        assert!(find_printed_boiling_rise(Percent::of_hundred(40.0)).is_err());
        assert!(find_saturation(Temp::celsius(-1.0)).is_err());
        assert!(find_sugar_of_boiling_syrup(Temp::celsius(90.0), Length::ZERO).is_err());
    }
}
