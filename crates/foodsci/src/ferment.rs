//! Ferments: how fast the right microbes grow, about how many days until sour, how much gas.
//!
//! The reading decides. No number here says that a crock is ready or fit to eat.

use measure::{AirPressure, Mass, Percent, Span, Temp, Volume};

use crate::limits::kitchen::{MASS_KG, VOLUME_L};
use crate::limits::{Limits, ModelError, limits, require_above, require_below};

/// Growth in an hour: the natural logarithm of how many times more there are.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct GrowthRate(pub f64);

/// The temperatures between which an organism grows, and how fast it grows at best.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CardinalTemps {
    /// Below it nothing grows.
    pub least: Temp,
    /// Where it grows best.
    pub best: Temp,
    /// Above it nothing grows.
    pub most: Temp,
    /// How fast at best.
    pub at_best: GrowthRate,
}

impl CardinalTemps {
    /// Lactobacillus plantarum in rich broth (Z. Matejčeková and others, Journal of Food and Nutrition Research 58, 2019,
    /// summary).
    pub const PLANTARUM: Self = Self {
        least: Temp::celsius(2.0),
        best: Temp::celsius(36.6),
        most: Temp::celsius(41.0),
        at_best: GrowthRate(0.81),
    };
}

/// How fast an organism grows at a temperature: the cardinal temperature model with inflection; nothing outside its cardinal
/// temperatures.
///
/// `μ = μ_best (T - T_max)(T - T_min)² / ((T_best - T_min)[(T_best - T_min)(T - T_best) - (T_best - T_max)(T_best + T_min - 2T)])`.
///
/// # Source
///
/// L. Rosso and others, An unexpected correlation between cardinal temperatures, Journal of Theoretical Biology 162, 1993
/// (from memory).
///
/// # Errors
///
/// When the cardinal temperatures do not rise, or the temperature is none of a kitchen.
pub fn find_growth_rate(at: Temp, cardinal: &CardinalTemps) -> Result<GrowthRate, ModelError> {
    const AT_C: Limits = limits("temperature of the ferment", " °C", -5.0, 60.0, "ferments");
    let t = AT_C.check(at.as_celsius())?;
    let [least, best, most] = [cardinal.least, cardinal.best, cardinal.most].map(Temp::as_celsius);
    require_above(("best temperature", best), ("least temperature", least), " °C")?;
    require_above(("greatest temperature", most), ("best temperature", best), " °C")?;
    if t <= least || t >= most {
        return Ok(GrowthRate(0.0));
    }
    let above = (t - most) * (t - least) * (t - least);
    let below = (best - least) * ((best - least) * (t - best) - (best - most) * (best + least - 2.0 * t));
    Ok(GrowthRate(cardinal.at_best.0 * above / below))
}

/// Days from least to most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayRange {
    /// The soonest.
    pub soonest: Span,
    /// The latest.
    pub latest: Span,
}

/// Temperature in °C against the soonest and latest days until pH 3.8 at 2 to 3 % of salt.
///
/// Planning ranges of ours, held between published time courses: sauerkraut at 2.5 % of salt at room temperature pH 3.74 after
/// two weeks (student report); at 18 °C about 20 days to the end, at 32 to 36 °C about 10.
const DAYS_TO_SOUR: [(f64, f64, f64); 3] = [(18.0, 6.0, 20.0), (22.0, 4.0, 12.0), (25.0, 3.0, 8.0)];

/// About how many days a ferment of cut vegetables needs until it is sour, as a range.
///
/// Between the planning ranges at 18, 22 and 25 °C by straight lines. Salt above 3 % and below 2 % widens the range by half at
/// either end. Another flora may never turn sour: measure.
///
/// # Errors
///
/// Outside 18 °C to 25 °C or 1 to 6 % of salt, where no time courses hold the range.
pub fn find_days_to_sour(at: Temp, salt: Percent) -> Result<DayRange, ModelError> {
    const AT_C: Limits =
        limits("temperature of the ferment", " °C", 18.0, 25.0, "the published time courses we have");
    const SALT: Limits = limits("share of salt", " %", 1.0, 6.0, "growth data with salt");
    let t = AT_C.check(at.as_celsius())?;
    let percent = SALT.check(salt.as_percent())?;
    let column = |of: fn(&(f64, f64, f64)) -> f64| {
        crate::curve::read_curve(&DAYS_TO_SOUR.map(|row| (row.0, of(&row))), t)
            .expect("the table spans the range just checked")
    };
    let usual = (2.0..=3.0).contains(&percent);
    let widened = if usual { 1.0 } else { 1.5 };
    Ok(DayRange {
        soonest: Span::days(column(|row| row.1) / widened),
        latest: Span::days(column(|row| row.2) * widened),
    })
}

/// The gas constant in J/(mol K).
const GAS_CONSTANT: f64 = 8.314_462_618;
/// Grams of a hexose in a mole.
const HEXOSE_G: f64 = 180.16;

/// The room that gas from sugar takes: one molecule of carbon dioxide from each hexose fermented by the gas-making bacteria.
///
/// `V = n R T / P`, n = share × sugar / 180.16. Arguments: the sugar that is fermented, the share that goes the gas-making way.
///
/// # Source
///
/// Stoichiometry of the heterolactic fermentation; ideal gas.
///
/// # Errors
///
/// When the share is none, or temperature or pressure none of a kitchen.
pub fn find_gas_of_sugar(
    sugar: Mass,
    gassing: Percent,
    at: Temp,
    air: AirPressure,
) -> Result<Volume, ModelError> {
    const SHARE: Limits = limits("share that makes gas", " %", 0.0, 100.0, "a share of a whole");
    let grams = MASS_KG.check(sugar.as_kilograms())? * 1000.0;
    let moles = grams / HEXOSE_G * SHARE.check(gassing.as_percent())? / 100.0;
    find_gas_volume(moles, at, air)
}

fn find_gas_volume(moles: f64, at: Temp, air: AirPressure) -> Result<Volume, ModelError> {
    const AT_C: Limits = limits("temperature of the ferment", " °C", -5.0, 60.0, "ferments");
    const AIR: Limits = limits("pressure of the air", " Pa", 50_000.0, 120_000.0, "kitchens");
    AT_C.check(at.as_celsius())?;
    let pascals = AIR.check(air.as_pascals())?;
    Ok(Volume::litres(moles * GAS_CONSTANT * at.as_kelvins() / pascals * 1000.0))
}

/// The gas that a vegetable may give in all, least and most.
///
/// From 20 to 95 % of its sugar goes the gas-making way, a planning range of ours: 1 to
/// 5 L in all from a kilogram of cabbage of 4 % sugar, most of it in the first week.
///
/// # Errors
///
/// As [`find_gas_of_sugar`].
pub fn find_gas_range(
    produce: Mass,
    sugar: Percent,
    at: Temp,
    air: AirPressure,
) -> Result<(Volume, Volume), ModelError> {
    const SUGAR: Limits = limits("sugar of the produce", " %", 0.0, 20.0, "vegetables and fruit");
    SUGAR.check(sugar.as_percent())?;
    let sugar = produce * sugar.as_fraction();
    let of = |share| find_gas_of_sugar(sugar, Percent::of_hundred(share), at, air);
    Ok((of(20.0)?, of(95.0)?))
}

/// The pressure in a closed jar from gas that finds no way out: each volume of gas equal to the headspace adds one atmosphere.
///
/// # Errors
///
/// When there is no headspace.
pub fn find_closed_pressure(
    gas: Volume,
    headspace: Volume,
    air: AirPressure,
) -> Result<AirPressure, ModelError> {
    VOLUME_L.check(gas.as_litres())?;
    VOLUME_L.check(headspace.as_litres())?;
    require_above(("headspace", headspace.as_millilitres()), ("nothing", 0.0), " ml")?;
    require_below(("nothing", -1e-9), ("gas", gas.as_millilitres()), " ml")?;
    Ok(air * (1.0 + gas.ratio_to(headspace)))
}

/// What salt a ferment may have: inside the printed band, or which end it passes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SaltSays {
    /// Inside.
    Inside,
    /// Below the least printed.
    TooLittle {
        /// By how much.
        by: Percent,
    },
    /// Above the most printed.
    TooMuch {
        /// By how much.
        by: Percent,
    },
}

/// Compares a ferment's salt with a printed band.
///
/// # Errors
///
/// When the band stands the wrong way round or the salt is no number.
pub fn compare_with_band(salt: Percent, band: (Percent, Percent)) -> Result<SaltSays, ModelError> {
    const SALT: Limits = limits("share of salt", " %", 0.0, 26.5, "salt that dissolves");
    SALT.check(salt.as_percent())?;
    require_below(("least of the band", band.0.as_percent()), ("most", band.1.as_percent() + 1e-9), " %")?;
    Ok(if salt < band.0 {
        SaltSays::TooLittle { by: band.0 - salt }
    } else if salt > band.1 {
        SaltSays::TooMuch { by: salt - band.1 }
    } else {
        SaltSays::Inside
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEA: AirPressure = AirPressure::pascals(101_325.0);

    #[test]
    fn growth_rises_to_the_best_temperature_and_falls_to_nothing() {
        let of = |celsius| find_growth_rate(Temp::celsius(celsius), &CardinalTemps::PLANTARUM).unwrap();
        assert_eq!(of(1.0), GrowthRate(0.0));
        assert_eq!(of(45.0), GrowthRate(0.0));
        assert!((3..36).all(|t| of(f64::from(t)) < of(f64::from(t) + 1.0 - 0.4)));
        assert!((37..40).all(|t| of(f64::from(t)) > of(f64::from(t) + 1.0)));
        assert!((of(36.6).0 - 0.81).abs() < 1e-12);
    }

    #[test]
    fn a_warmer_crock_sours_sooner() {
        let of = |celsius| find_days_to_sour(Temp::celsius(celsius), Percent::of_hundred(2.25)).unwrap();
        assert!(of(25.0).latest < of(20.0).latest && of(20.0).soonest < of(18.0).soonest);
        let salty = find_days_to_sour(Temp::celsius(20.0), Percent::of_hundred(5.0)).unwrap();
        assert!(salty.latest > of(20.0).latest && salty.soonest < of(20.0).soonest);
        assert!(find_days_to_sour(Temp::celsius(5.0), Percent::of_hundred(2.25)).is_err());
        assert!(find_days_to_sour(Temp::celsius(20.0), Percent::of_hundred(0.0)).is_err());
    }

    #[test]
    fn a_closed_jar_becomes_a_bottle_of_soda() {
        let (least, most) =
            find_gas_range(Mass::kilograms(1.0), Percent::of_hundred(4.0), Temp::celsius(20.0), SEA).unwrap();
        assert!((1.0..1.2).contains(&least.as_litres()), "{least:?}");
        assert!((4.9..5.3).contains(&most.as_litres()), "{most:?}");
        let pressure = find_closed_pressure(least, Volume::millilitres(200.0), SEA).unwrap();
        assert!(pressure > SEA * 5.0);
        assert!(find_closed_pressure(least, Volume::ZERO, SEA).is_err());
    }

    #[test]
    fn salt_outside_the_printed_band_is_said_with_its_margin() {
        let band = (Percent::of_hundred(2.25), Percent::of_hundred(2.5));
        let of = |percent| compare_with_band(Percent::of_hundred(percent), band).unwrap();
        assert_eq!(of(2.4), SaltSays::Inside);
        assert!(matches!(of(1.0), SaltSays::TooLittle { by } if (by.as_percent() - 1.25).abs() < 1e-12));
        assert!(matches!(of(4.0), SaltSays::TooMuch { .. }));
        assert!(compare_with_band(Percent::of_hundred(f64::NAN), band).is_err());
    }
}
