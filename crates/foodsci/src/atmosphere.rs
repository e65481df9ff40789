//! The air over a kitchen: its pressure at a height, and what boils at how many degrees in it.
//!
//! Nothing here turns the minutes of one altitude into those of another.

use measure::{AirPressure, Length, Pressure, Temp, TempDifference};

use crate::limits::{Limits, ModelError, limits};
use crate::steam::find_boiling_temp;

const HEIGHT_M: Limits =
    limits("altitude", " m", -500.0, 10_000.0, "the standard atmosphere as ASHRAE Fundamentals prints it");
const STATION_PA: Limits = limits(
    "station pressure",
    " Pa",
    60_000.0,
    109_000.0,
    "kitchens up to 4,000 m; a weather report is reduced to sea level and will not do",
);
const GAUGE_PSI: Limits = limits("gauge pressure", " psi", 0.0, 25.0, "what a canner's gauge shows");

/// Pressure at sea level in Pa, and the two constants of the equation.
const SEA_LEVEL_PA: f64 = 101_325.0;
const LAPSE_PER_M: f64 = 2.255_77e-5;
const POWER: f64 = 5.255_88;

/// The pressure of the air at a height, on a day with standard weather.
///
/// `p = 101325 (1 - 2.25577e-5 z)^5.25588` Pa. Argument: the height above the sea in metres. Weather moves the pressure by
/// 2 % and with it the boiling point by 0.6 °C.
///
/// # Source
///
/// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equation 3 and table 1.
///
/// # Errors
///
/// Outside -500 m to 10,000 m.
///
/// # Examples
///
/// ```
/// use foodsci::atmosphere::find_air_pressure;
/// use measure::Length;
///
/// let air = find_air_pressure(Length::metres(1000.0)).unwrap();
/// assert!((air.as_pascals() - 89_875.0).abs() < 1.0);
/// ```
pub fn find_air_pressure(height: Length) -> Result<AirPressure, ModelError> {
    let metres = HEIGHT_M.check(height.as_metres())?;
    Ok(AirPressure::pascals(SEA_LEVEL_PA * libm::pow(1.0 - LAPSE_PER_M * metres, POWER)))
}

/// The height at which a barometer reads a pressure in standard weather.
///
/// The equation of [`find_air_pressure`] turned round. Argument: the pressure **at the place**; a weather report gives it
/// reduced to sea level and would answer 0 m everywhere. Weather moves the answer by some 200 m either way, so that it
/// never stands in for the altitude of the kitchen.
///
/// # Source
///
/// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equation 3.
///
/// # Errors
///
/// Outside 600 hPa to 1090 hPa.
pub fn find_height_of_pressure(station: AirPressure) -> Result<Length, ModelError> {
    let pascals = STATION_PA.check(station.as_pascals())?;
    Ok(Length::metres((1.0 - libm::pow(pascals / SEA_LEVEL_PA, 1.0 / POWER)) / LAPSE_PER_M))
}

/// How far weather moves a barometer either way: 2 % of the pressure, about 200 m of height near the sea.
pub const WEATHER_SHARE: f64 = 0.02;

/// The temperature at which water boils at a height in standard weather.
///
/// # Source
///
/// [`find_air_pressure`] and [`find_boiling_temp`].
///
/// # Errors
///
/// Outside -500 m to 10,000 m.
///
/// # Examples
///
/// ```
/// use foodsci::atmosphere::find_boiling_point;
/// use measure::Length;
///
/// let boils = find_boiling_point(Length::feet(5000.0)).unwrap();
/// assert!((boils.as_fahrenheit() - 202.8).abs() < 0.05);
/// ```
pub fn find_boiling_point(height: Length) -> Result<Temp, ModelError> {
    find_boiling_temp(find_air_pressure(height)?)
}

/// The temperature of pure steam under the lid of a pressure canner.
///
/// The air and the gauge together are the pressure of the steam: a gauge shows only what is above the air outside. Air
/// left in the canner makes it cooler than this. Arguments: the height above the sea, the true gauge pressure.
///
/// # Source
///
/// [`find_air_pressure`] and [`find_boiling_temp`].
///
/// # Errors
///
/// Outside -500 m to 10,000 m, or 0 to 25 psi.
pub fn find_canner_steam_temp(height: Length, gauge: Pressure) -> Result<Temp, ModelError> {
    let psi = GAUGE_PSI.check(gauge.as_psi())?;
    find_boiling_temp(find_air_pressure(height)? + AirPressure::psi_absolute(psi))
}

/// How far above boiling water a jelly without added pectin sets: 8 °F (USDA Complete Guide to Home Canning, 2015, guide
/// 7, p. 7-6).
pub const GEL_RISE: TempDifference = TempDifference::fahrenheit_degrees(8.0);

/// The temperature at which a jelly without added pectin is done at a height.
///
/// `T = T_boil + 8 °F`. The sheet or spoon test decides; boil water in the same pan with the same thermometer first.
///
/// # Source
///
/// USDA Complete Guide to Home Canning, 2015, guide 7, p. 7-6, temperature test; [`find_boiling_point`].
///
/// # Errors
///
/// Outside -500 m to 10,000 m.
pub fn find_gel_point(height: Length) -> Result<Temp, ModelError> {
    Ok(find_boiling_point(height)? + GEL_RISE)
}

/// How far a jelly pan is from the temperature at which it gels, seen from boiling water there and then: what a
/// thermometer that reads wrong by a fixed amount still gets right.
///
/// # Errors
///
/// When boiling water reads below 80 °C or above 105 °C.
pub fn find_gel_point_by_thermometer(water_boils_at: Temp) -> Result<Temp, ModelError> {
    const READS_C: Limits = limits(
        "reading in boiling water",
        " °C",
        80.0,
        105.0,
        "boiling water below 4,000 m and a usable thermometer",
    );
    READS_C.check(water_boils_at.as_celsius())?;
    Ok(water_boils_at + GEL_RISE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn height_and_pressure_undo_each_other() {
        for metres in (-400..4000).step_by(37) {
            let height = Length::metres(f64::from(metres));
            let back = find_height_of_pressure(find_air_pressure(height).unwrap()).unwrap();
            assert!((back - height).as_metres().abs() < 1e-6, "{metres}");
        }
    }

    #[test]
    fn higher_kitchens_boil_cooler_and_more_pressure_boils_hotter() {
        let of = |feet| find_boiling_point(Length::feet(feet)).unwrap();
        assert!((0..100).all(|at| of(f64::from(at) * 100.0) > of(f64::from(at) * 100.0 + 100.0)));
        let steam = |psi| find_canner_steam_temp(Length::feet(1000.0), Pressure::psi(psi)).unwrap();
        assert!((0..24).all(|psi| steam(f64::from(psi)) < steam(f64::from(psi) + 1.0)));
    }

    #[test]
    fn a_pressure_no_kitchen_has_is_refused_with_the_reason() {
        let said = find_height_of_pressure(AirPressure::hectopascals(30.0)).unwrap_err().to_string();
        assert!(said.contains("reduced to sea level"), "{said}");
        assert!(find_canner_steam_temp(Length::ZERO, Pressure::psi(40.0)).is_err());
        assert!(find_boiling_point(Length::metres(f64::NAN)).is_err());
    }
}
