//! Water and its steam at saturation: pressure, boiling temperature, densities, heat of evaporation.

use measure::{AirPressure, Density, SpecificEnergy, Temp};

use crate::limits::{Limits, ModelError, limits};

const TEMP_K: Limits =
    limits("temperature of the water", " K", 273.15, 647.096, "IAPWS Industrial Formulation 1997, region 4");
const PRESSURE_PA: Limits =
    limits("pressure", " Pa", 611.213, 2.2064e7, "IAPWS Industrial Formulation 1997, region 4");

/// Coefficients of the saturation line (IAPWS R7-97(2012), table 34).
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// The pressure at which water boils at a temperature.
///
/// `p = (2C / (-B + sqrt(B² - 4AC)))⁴` MPa with A, B, C quadratic in `T + n9 / (T - n10)`. Argument: the temperature of
/// water and steam together. Valid from 0 °C to the critical point.
///
/// # Source
///
/// IAPWS R7-97(2012), Revised Release on the Industrial Formulation 1997, equation 30 and table 34.
///
/// # Errors
///
/// Outside 273.15 K to 647.096 K.
///
/// # Examples
///
/// ```
/// use foodsci::steam::find_boiling_pressure;
/// use measure::Temp;
///
/// let sea_level = find_boiling_pressure(Temp::celsius(99.974_3)).unwrap();
/// assert!((sea_level.as_pascals() - 101_325.0).abs() < 1.0);
/// ```
pub fn find_boiling_pressure(at: Temp) -> Result<AirPressure, ModelError> {
    let kelvins = TEMP_K.check(at.as_kelvins())?;
    Ok(AirPressure::pascals(saturation_pa(kelvins)))
}

fn saturation_pa(kelvins: f64) -> f64 {
    let theta = kelvins + N[8] / (kelvins - N[9]);
    let a = theta * theta + N[0] * theta + N[1];
    let b = N[2] * theta * theta + N[3] * theta + N[4];
    let c = N[5] * theta * theta + N[6] * theta + N[7];
    let root = 2.0 * c / (-b + libm::sqrt(b * b - 4.0 * a * c));
    1e6 * root * root * root * root
}

/// The temperature at which water boils under a pressure.
///
/// The same quadratic solved for the temperature. Argument: the absolute pressure over the water.
///
/// # Source
///
/// IAPWS R7-97(2012), equation 31 and table 34.
///
/// # Errors
///
/// Outside 611.213 Pa to 22.064 MPa.
///
/// # Examples
///
/// ```
/// use foodsci::steam::find_boiling_temp;
/// use measure::AirPressure;
///
/// let boils = find_boiling_temp(AirPressure::pascals(101_325.0)).unwrap();
/// assert!((boils.as_celsius() - 99.974).abs() < 0.001);
/// ```
pub fn find_boiling_temp(under: AirPressure) -> Result<Temp, ModelError> {
    let pascals = PRESSURE_PA.check(under.as_pascals())?;
    let beta = libm::sqrt(libm::sqrt(pascals / 1e6));
    let e = beta * beta + N[2] * beta + N[5];
    let f = N[0] * beta * beta + N[3] * beta + N[6];
    let g = N[1] * beta * beta + N[4] * beta + N[7];
    let d = 2.0 * g / (-f - libm::sqrt(f * f - 4.0 * e * g));
    let sum = N[9] + d;
    Ok(Temp::kelvins((sum - libm::sqrt(sum * sum - 4.0 * (N[8] + N[9] * d))) / 2.0))
}

/// The critical point (IAPWS SR1-86(1992)): temperature in K, density in kg/m3, pressure in Pa.
const CRITICAL_K: f64 = 647.096;
const CRITICAL_DENSITY: f64 = 322.0;
const CRITICAL_PA: f64 = 22.064e6;

/// Coefficients of the vapour pressure (IAPWS SR1-86(1992), equation 1), used here for its slope.
const A: [(f64, f64); 6] = [
    (-7.859_517_83, 1.0),
    (1.844_082_59, 1.5),
    (-11.786_649_7, 3.0),
    (22.680_741_1, 3.5),
    (-15.961_871_9, 4.0),
    (1.801_225_02, 7.5),
];
/// Coefficients of the density of the liquid (equation 2).
const B: [(f64, f64); 6] = [
    (1.992_740_64, 1.0 / 3.0),
    (1.099_653_42, 2.0 / 3.0),
    (-0.510_839_303, 5.0 / 3.0),
    (-1.754_934_79, 16.0 / 3.0),
    (-45.517_035_2, 43.0 / 3.0),
    (-6.746_944_50e5, 110.0 / 3.0),
];
/// Coefficients of the logarithm of the density of the vapour (equation 3).
const C: [(f64, f64); 6] = [
    (-2.031_502_40, 2.0 / 6.0),
    (-2.683_029_40, 4.0 / 6.0),
    (-5.386_264_92, 8.0 / 6.0),
    (-17.299_160_5, 18.0 / 6.0),
    (-44.758_658_1, 37.0 / 6.0),
    (-63.920_106_3, 71.0 / 6.0),
];

fn sum_powers(terms: &[(f64, f64)], tau: f64) -> f64 {
    terms.iter().map(|(factor, power)| factor * libm::pow(tau, *power)).sum()
}

/// Density of the water that is about to boil.
///
/// # Source
///
/// IAPWS SR1-86(1992), Revised Supplementary Release on Saturation Properties, equation 2. The coefficients were
/// written from memory of the release and are checked against recorded values of two independent libraries.
///
/// # Errors
///
/// Outside 273.15 K to 647.096 K.
pub fn find_boiling_water_density(at: Temp) -> Result<Density, ModelError> {
    let tau = 1.0 - TEMP_K.check(at.as_kelvins())? / CRITICAL_K;
    Ok(Density::kilograms_per_cubic_metre(CRITICAL_DENSITY * (1.0 + sum_powers(&B, tau))))
}

/// Density of the steam above boiling water.
///
/// # Source
///
/// IAPWS SR1-86(1992), equation 3; coefficients from memory, checked as those of the liquid.
///
/// # Errors
///
/// Outside 273.15 K to 647.096 K.
pub fn find_steam_density(at: Temp) -> Result<Density, ModelError> {
    let tau = 1.0 - TEMP_K.check(at.as_kelvins())? / CRITICAL_K;
    Ok(Density::kilograms_per_cubic_metre(CRITICAL_DENSITY * libm::exp(sum_powers(&C, tau))))
}

/// The heat that turns boiling water into steam.
///
/// Clapeyron's equation `h = T (1/ρ'' - 1/ρ') dp/dT`, with the slope of the vapour pressure of the same release.
/// Argument: the boiling temperature.
///
/// # Source
///
/// IAPWS SR1-86(1992), equations 1 to 3 and the Clapeyron relation; 2,256.5 kJ/kg at 1 atm.
///
/// # Errors
///
/// Outside 273.15 K to 647.096 K; nothing boils at the critical point itself.
///
/// # Examples
///
/// ```
/// use foodsci::steam::find_heat_of_evaporation;
/// use measure::Temp;
///
/// let heat = find_heat_of_evaporation(Temp::celsius(100.0)).unwrap();
/// assert!((heat.as_kilojoules_per_kilogram() - 2256.5).abs() < 1.0);
/// ```
pub fn find_heat_of_evaporation(at: Temp) -> Result<SpecificEnergy, ModelError> {
    let kelvins = TEMP_K.check(at.as_kelvins())?;
    let tau = 1.0 - kelvins / CRITICAL_K;
    let ln_ratio = CRITICAL_K / kelvins * sum_powers(&A, tau);
    let pressure = CRITICAL_PA * libm::exp(ln_ratio);
    let slope_sum: f64 = A.iter().map(|(a, power)| a * power * libm::pow(tau, power - 1.0)).sum();
    let slope = -pressure / kelvins * (ln_ratio + slope_sum);
    let liquid = find_boiling_water_density(at)?.as_kilograms_per_cubic_metre();
    let steam = find_steam_density(at)?.as_kilograms_per_cubic_metre();
    Ok(SpecificEnergy::joules_per_kilogram(kelvins * slope * (1.0 / steam - 1.0 / liquid)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn boiling_temperature_and_pressure_undo_each_other() {
        for tenths in 1..3700 {
            let at = Temp::celsius(f64::from(tenths) / 10.0);
            let back = find_boiling_temp(find_boiling_pressure(at).unwrap()).unwrap();
            assert!((back - at).as_kelvins().abs() < 1e-6, "{at:?}");
        }
    }

    #[test]
    fn hotter_water_has_more_pressure_and_needs_less_heat_to_boil() {
        let mut last: Option<(AirPressure, SpecificEnergy)> = None;
        for degrees in 1..370 {
            let at = Temp::celsius(f64::from(degrees));
            let here = (find_boiling_pressure(at).unwrap(), find_heat_of_evaporation(at).unwrap());
            if let Some(before) = last {
                assert!(here.0 > before.0 && here.1 < before.1, "{degrees}");
            }
            last = Some(here);
        }
    }

    #[test]
    fn ice_and_supercritical_water_are_refused() {
        for celsius in [-1.0, 374.0, f64::NAN] {
            assert!(find_boiling_pressure(Temp::celsius(celsius)).is_err());
            assert!(find_heat_of_evaporation(Temp::celsius(celsius)).is_err());
        }
        assert!(find_boiling_temp(AirPressure::pascals(100.0)).is_err());
    }
}
