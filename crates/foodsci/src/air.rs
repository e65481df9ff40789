//! Moist air: how much water it holds, how cool a wet thing in it stays.

use measure::{AirPressure, Percent, SpecificEnergy, Temp};

use crate::limits::{Limits, ModelError, limits, require_below};
use crate::root::find_root;

const DRY_BULB_C: Limits =
    limits("temperature of the air", " °C", -100.0, 200.0, "ASHRAE Fundamentals, chapter 1");
const AIR_PA: Limits = limits("pressure of the air", " Pa", 20_000.0, 120_000.0, "kitchens");
const HUMIDITY: Limits = limits("relative humidity", " %", 0.0, 100.0, "air that holds no drops");
const RATIO: Limits = limits("water in the air", " kg/kg", 0.0, 10.0, "moist air");

/// The ratio of the molar masses of water and dry air (ASHRAE Handbook, Fundamentals, 2017, chapter 1, equation 20).
const WATER_TO_AIR: f64 = 0.621_945;

/// Water in the air for each kilogram of dry air.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct HumidityRatio(pub f64);

/// The room a kilogram of dry air takes with its water, in m3.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct AirVolume(pub f64);

/// The pressure of water vapour over ice or water.
///
/// `ln p = C1/T + C2 + C3 T + ... + C7 ln T`, over ice below the triple point, over water above. Argument: -100 to 200 °C.
///
/// # Source
///
/// R. W. Hyland, A. Wexler, 1983, as ASHRAE Handbook, Fundamentals, 2017, chapter 1, equations 5 and 6.
///
/// # Errors
///
/// Outside -100 °C to 200 °C.
pub fn find_vapour_pressure(at: Temp) -> Result<AirPressure, ModelError> {
    DRY_BULB_C.check(at.as_celsius())?;
    Ok(AirPressure::pascals(vapour_pa(at.as_kelvins())))
}

fn vapour_pa(kelvins: f64) -> f64 {
    /// The triple point, where the two equations part.
    const TRIPLE_K: f64 = 273.16;
    let t = kelvins;
    let ln = libm::log(t);
    let exponent = if t <= TRIPLE_K {
        -5.674_535_9e3 / t + 6.392_524_7 - 9.677_843_0e-3 * t
            + 6.221_570_1e-7 * t * t
            + 2.074_782_5e-9 * t * t * t
            - 9.484_024_0e-13 * t * t * t * t
            + 4.163_501_9 * ln
    } else {
        -5.800_220_6e3 / t + 1.391_499_3 - 4.864_023_9e-2 * t + 4.176_476_8e-5 * t * t
            - 1.445_209_3e-8 * t * t * t
            + 6.545_967_3 * ln
    };
    libm::exp(exponent)
}

/// Water in the air from its vapour pressure: `W = 0.621945 p / (P - p)`.
///
/// # Source
///
/// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equation 20.
///
/// # Errors
///
/// When the vapour has more pressure than the air.
pub fn find_ratio_of_vapour(vapour: AirPressure, air: AirPressure) -> Result<HumidityRatio, ModelError> {
    let whole = AIR_PA.check(air.as_pascals())?;
    let part = vapour.as_pascals();
    require_below(("pressure of the vapour", part), ("pressure of the air", whole), " Pa")?;
    require_below(("nothing", -1e-9), ("pressure of the vapour", part), " Pa")?;
    Ok(HumidityRatio(WATER_TO_AIR * part / (whole - part)))
}

/// Air of a temperature, a humidity and a pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoistAir {
    /// Its temperature.
    pub temp: Temp,
    /// Its water.
    pub ratio: HumidityRatio,
    /// Its pressure.
    pub pressure: AirPressure,
}

impl MoistAir {
    /// Air of a relative humidity.
    ///
    /// # Errors
    ///
    /// Outside 0 to 100 % or the range of the vapour pressure.
    pub fn of_humidity(temp: Temp, humidity: Percent, pressure: AirPressure) -> Result<Self, ModelError> {
        let share = HUMIDITY.check(humidity.as_percent())? / 100.0;
        let ratio = find_ratio_of_vapour(find_vapour_pressure(temp)? * share, pressure)?;
        Ok(Self { temp, ratio, pressure })
    }

    /// Air whose wet bulb shows a temperature.
    ///
    /// # Source
    ///
    /// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equations 33 and 35.
    ///
    /// # Errors
    ///
    /// When the wet bulb is warmer than the air, or so cool that the air would hold less than nothing.
    pub fn of_wet_bulb(temp: Temp, wet_bulb: Temp, pressure: AirPressure) -> Result<Self, ModelError> {
        require_below(
            ("wet bulb", wet_bulb.as_celsius()),
            ("temperature of the air", temp.as_celsius() + 1e-9),
            " °C",
        )?;
        let ratio = ratio_of_wet_bulb(temp, wet_bulb, pressure)?;
        Ok(Self { temp, ratio: HumidityRatio(RATIO.check(ratio)?), pressure })
    }

    /// The pressure of its vapour.
    #[must_use]
    pub fn vapour(&self) -> AirPressure {
        self.pressure * (self.ratio.0 / (WATER_TO_AIR + self.ratio.0))
    }

    /// Its relative humidity.
    ///
    /// # Errors
    ///
    /// Outside the range of the vapour pressure.
    pub fn humidity(&self) -> Result<Percent, ModelError> {
        Ok(Percent::fraction(self.vapour().ratio_to(find_vapour_pressure(self.temp)?)))
    }

    /// How much of its greatest water it holds: the ratio to that of saturation.
    ///
    /// # Errors
    ///
    /// Outside the range of the vapour pressure.
    pub fn saturation(&self) -> Result<Percent, ModelError> {
        let most = find_ratio_of_vapour(find_vapour_pressure(self.temp)?, self.pressure)?;
        Ok(Percent::fraction(self.ratio.0 / most.0))
    }

    /// The temperature at which dew falls.
    ///
    /// # Errors
    ///
    /// When the air is so dry that no dew falls above -100 °C.
    pub fn dew_point(&self) -> Result<Temp, ModelError> {
        let vapour = self.vapour().as_pascals();
        if vapour >= find_vapour_pressure(self.temp)?.as_pascals() {
            return Ok(self.temp);
        }
        let found = find_root(DRY_BULB_C.low, self.temp.as_celsius(), |celsius| {
            vapour_pa(Temp::celsius(celsius).as_kelvins()) - vapour
        });
        found.map(Temp::celsius).ok_or(ModelError::Never {
            what: "dew from air this dry",
            because: "its vapour has less pressure than that of ice at -100 °C",
            hint: "check the humidity; room air has 20 to 80 %",
        })
    }

    /// The temperature that a wet thing in moving air keeps.
    ///
    /// # Source
    ///
    /// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equations 33 and 35, solved by bisection.
    ///
    /// # Errors
    ///
    /// As [`MoistAir::dew_point`].
    pub fn wet_bulb(&self) -> Result<Temp, ModelError> {
        let dew = self.dew_point()?;
        let here = self.temp.as_celsius();
        let miss = |celsius: f64| {
            ratio_of_wet_bulb(self.temp, Temp::celsius(celsius), self.pressure)
                .map_or(f64::NAN, |ratio| ratio - self.ratio.0)
        };
        // Saturated air is its own wet bulb.
        Ok(find_root(dew.as_celsius() - 1e-9, here, miss).map_or(self.temp, Temp::celsius))
    }

    /// Its heat for each kilogram of dry air, from 0 °C: `1.006 t + W (2501 + 1.86 t)` kJ.
    ///
    /// # Source
    ///
    /// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equation 30.
    #[must_use]
    pub fn enthalpy(&self) -> SpecificEnergy {
        let t = self.temp.as_celsius();
        SpecificEnergy::kilojoules_per_kilogram(1.006 * t + self.ratio.0 * (2501.0 + 1.86 * t))
    }

    /// The room it takes: `0.287042 T (1 + 1.607858 W) / P`.
    ///
    /// # Source
    ///
    /// ASHRAE Handbook, Fundamentals, 2017, chapter 1, equation 26.
    #[must_use]
    pub fn volume(&self) -> AirVolume {
        AirVolume(
            0.287_042 * self.temp.as_kelvins() * (1.0 + 1.607_858 * self.ratio.0)
                / self.pressure.as_kilopascals(),
        )
    }

    /// What it takes for each degree and kilogram of dry air: `1.005 + 1.88 W` kJ/(kg K).
    ///
    /// # Source
    ///
    /// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, equation 9.3-6.
    #[must_use]
    pub fn humid_heat(&self) -> measure::SpecificHeat {
        measure::SpecificHeat::kilojoules_per_kilogram_kelvin(1.005 + 1.88 * self.ratio.0)
    }
}

fn ratio_of_wet_bulb(temp: Temp, wet_bulb: Temp, pressure: AirPressure) -> Result<f64, ModelError> {
    let (t, wet) = (temp.as_celsius(), wet_bulb.as_celsius());
    let saturated = find_ratio_of_vapour(find_vapour_pressure(wet_bulb)?, pressure)?.0;
    Ok(if wet >= 0.0 {
        ((2501.0 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501.0 + 1.86 * t - 4.186 * wet)
    } else {
        ((2830.0 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830.0 + 1.86 * t - 2.1 * wet)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEA: AirPressure = AirPressure::pascals(101_325.0);

    fn air(celsius: f64, humidity: f64) -> MoistAir {
        MoistAir::of_humidity(Temp::celsius(celsius), Percent::of_hundred(humidity), SEA).unwrap()
    }

    #[test]
    fn humidity_and_wet_bulb_give_the_same_air_back() {
        for celsius in [1.0, 10.0, 25.0, 40.0, 60.0] {
            for humidity in [5.0, 30.0, 60.0, 95.0] {
                let air = air(celsius, humidity);
                assert!((air.humidity().unwrap().as_percent() - humidity).abs() < 1e-9);
                let wet = air.wet_bulb().unwrap();
                assert!(wet < air.temp && wet > air.dew_point().unwrap());
                let back = MoistAir::of_wet_bulb(air.temp, wet, SEA).unwrap();
                assert!((back.ratio.0 / air.ratio.0 - 1.0).abs() < 1e-6, "{celsius} {humidity}");
            }
        }
    }

    #[test]
    fn saturated_air_is_its_own_wet_bulb_and_dew() {
        let full = air(22.0, 100.0);
        assert!((full.wet_bulb().unwrap() - full.temp).as_kelvins().abs() < 1e-6);
        assert!((full.dew_point().unwrap() - full.temp).as_kelvins().abs() < 1e-6);
    }

    #[test]
    fn air_that_cannot_be_is_refused() {
        assert!(MoistAir::of_humidity(Temp::celsius(20.0), Percent::of_hundred(120.0), SEA).is_err());
        assert!(MoistAir::of_wet_bulb(Temp::celsius(20.0), Temp::celsius(25.0), SEA).is_err());
        assert!(MoistAir::of_wet_bulb(Temp::celsius(60.0), Temp::celsius(5.0), SEA).is_err());
        assert!(MoistAir::of_humidity(Temp::celsius(150.0), Percent::of_hundred(90.0), SEA).is_err());
        assert!(find_vapour_pressure(Temp::celsius(f64::NAN)).is_err());
    }
}
