//! Quantities of heat: how much, how fast, and what a substance does with it.

use std::ops::{Add, Mul, Sub};

use crate::matter::Span;
use crate::quantity::{Mass, Temp, quantity, read_as};

/// Joules in one British thermal unit of the International Table (NIST SP 811, 2008, appendix B.8: 1 055.056).
const JOULES_PER_BTU: f64 = 1_055.055_852_62;
/// Seconds in an hour.
const SECONDS_PER_HOUR: f64 = 3_600.0;

quantity!(
    /// A difference of temperatures, kept in kelvins. Never a temperature itself: 10 °C is 50 °F, but a rise by
    /// 10 °C is a rise by 18 °F.
    TempDifference, kelvins, [
        /// From kelvins, which are degrees Celsius.
        kelvins = 1.0,
        /// From degrees Fahrenheit of difference.
        fahrenheit_degrees = 5.0 / 9.0,
    ]
);
read_as!(
    TempDifference,
    kelvins,
    [
        /// In kelvins.
        as_kelvins = 1.0,
        /// In degrees Fahrenheit of difference.
        as_fahrenheit_degrees = 5.0 / 9.0,
    ]
);

quantity!(
    /// An amount of heat, kept in joules.
    Heat, joules, [
        /// From joules.
        joules = 1.0,
        /// From kilojoules.
        kilojoules = 1000.0,
        /// From kilowatt hours.
        kilowatt_hours = 3.6e6,
    ]
);
read_as!(
    Heat,
    joules,
    [
        /// In joules.
        as_joules = 1.0,
        /// In kilojoules.
        as_kilojoules = 1000.0,
        /// In kilowatt hours.
        as_kilowatt_hours = 3.6e6,
    ]
);

quantity!(
    /// Heat in a time, kept in watts.
    Power, watts, [
        /// From watts.
        watts = 1.0,
        /// From kilowatts.
        kilowatts = 1000.0,
        /// From British thermal units an hour, as gas burners are rated.
        btu_per_hour = JOULES_PER_BTU / SECONDS_PER_HOUR,
    ]
);
read_as!(
    Power,
    watts,
    [
        /// In watts.
        as_watts = 1.0,
        /// In kilowatts.
        as_kilowatts = 1000.0,
        /// In British thermal units an hour.
        as_btu_per_hour = JOULES_PER_BTU / SECONDS_PER_HOUR,
    ]
);

quantity!(
    /// Heat for each degree of a whole thing, kept in joules a kelvin.
    HeatCapacity, joules_per_kelvin, [
        /// From joules a kelvin.
        joules_per_kelvin = 1.0,
    ]
);
read_as!(
    HeatCapacity,
    joules_per_kelvin,
    [/// In joules a kelvin.
    as_joules_per_kelvin = 1.0,]
);

quantity!(
    /// Heat for each degree of a mass of a substance, kept in joules a kilogram and kelvin.
    SpecificHeat, joules_per_kilogram_kelvin, [
        /// From joules a kilogram and kelvin.
        joules_per_kilogram_kelvin = 1.0,
        /// From kilojoules a kilogram and kelvin.
        kilojoules_per_kilogram_kelvin = 1000.0,
    ]
);
read_as!(
    SpecificHeat,
    joules_per_kilogram_kelvin,
    [
        /// In joules a kilogram and kelvin.
        as_joules_per_kilogram_kelvin = 1.0,
        /// In kilojoules a kilogram and kelvin.
        as_kilojoules_per_kilogram_kelvin = 1000.0,
    ]
);

quantity!(
    /// Heat for a mass of a substance: latent heats and enthalpies, kept in joules a kilogram.
    SpecificEnergy, joules_per_kilogram, [
        /// From joules a kilogram.
        joules_per_kilogram = 1.0,
        /// From kilojoules a kilogram.
        kilojoules_per_kilogram = 1000.0,
    ]
);
read_as!(
    SpecificEnergy,
    joules_per_kilogram,
    [
        /// In joules a kilogram.
        as_joules_per_kilogram = 1.0,
        /// In kilojoules a kilogram.
        as_kilojoules_per_kilogram = 1000.0,
    ]
);

quantity!(
    /// How well a substance conducts heat, kept in watts a metre and kelvin.
    Conductivity, watts_per_metre_kelvin, [
        /// From watts a metre and kelvin.
        watts_per_metre_kelvin = 1.0,
    ]
);
read_as!(
    Conductivity,
    watts_per_metre_kelvin,
    [/// In watts a metre and kelvin.
    as_watts_per_metre_kelvin = 1.0,]
);

quantity!(
    /// How fast a difference spreads through a substance, of heat or of salt, kept in square metres a second.
    Diffusivity, square_metres_per_second, [
        /// From square metres a second.
        square_metres_per_second = 1.0,
        /// From square metres an hour.
        square_metres_per_hour = 1.0 / SECONDS_PER_HOUR,
    ]
);
read_as!(
    Diffusivity,
    square_metres_per_second,
    [/// In square metres a second.
    as_square_metres_per_second = 1.0,]
);

quantity!(
    /// How much heat passes between a surface and what flows along it, kept in watts a square metre and kelvin.
    Film, watts_per_square_metre_kelvin, [
        /// From watts a square metre and kelvin.
        watts_per_square_metre_kelvin = 1.0,
    ]
);
read_as!(
    Film,
    watts_per_square_metre_kelvin,
    [/// In watts a square metre and kelvin.
    as_watts_per_square_metre_kelvin = 1.0,]
);

quantity!(
    /// How much heat a whole thing loses for each degree above its surroundings, kept in watts a kelvin.
    HeatLoss, watts_per_kelvin, [
        /// From watts a kelvin.
        watts_per_kelvin = 1.0,
    ]
);
read_as!(
    HeatLoss,
    watts_per_kelvin,
    [/// In watts a kelvin.
    as_watts_per_kelvin = 1.0,]
);

impl Temp {
    /// From kelvins above absolute zero.
    #[must_use]
    pub const fn kelvins(value: f64) -> Self {
        Self::celsius(value - 273.15)
    }

    /// In kelvins above absolute zero.
    #[must_use]
    pub const fn as_kelvins(self) -> f64 {
        self.as_celsius() + 273.15
    }
}

impl Sub for Temp {
    type Output = TempDifference;
    fn sub(self, other: Self) -> TempDifference {
        TempDifference::kelvins(self.as_celsius() - other.as_celsius())
    }
}

impl Add<TempDifference> for Temp {
    type Output = Self;
    fn add(self, rise: TempDifference) -> Self {
        Self::celsius(self.as_celsius() + rise.as_kelvins())
    }
}

impl Sub<TempDifference> for Temp {
    type Output = Self;
    fn sub(self, fall: TempDifference) -> Self {
        Self::celsius(self.as_celsius() - fall.as_kelvins())
    }
}

impl Mul<SpecificHeat> for Mass {
    type Output = HeatCapacity;
    fn mul(self, specific: SpecificHeat) -> HeatCapacity {
        HeatCapacity::joules_per_kelvin(self.as_kilograms() * specific.as_joules_per_kilogram_kelvin())
    }
}

impl Mul<SpecificEnergy> for Mass {
    type Output = Heat;
    fn mul(self, specific: SpecificEnergy) -> Heat {
        Heat::joules(self.as_kilograms() * specific.as_joules_per_kilogram())
    }
}

impl Mul<TempDifference> for HeatCapacity {
    type Output = Heat;
    fn mul(self, rise: TempDifference) -> Heat {
        Heat::joules(self.as_joules_per_kelvin() * rise.as_kelvins())
    }
}

impl Mul<Span> for Power {
    type Output = Heat;
    fn mul(self, span: Span) -> Heat {
        Heat::joules(self.as_watts() * span.as_seconds())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_is_no_temperature() {
        let rise = Temp::fahrenheit(212.0) - Temp::fahrenheit(32.0);
        assert!((rise.as_kelvins() - 100.0).abs() < 1e-12);
        assert!((rise.as_fahrenheit_degrees() - 180.0).abs() < 1e-12);
        assert!((Temp::celsius(20.0) + rise - Temp::celsius(120.0)).as_kelvins().abs() < 1e-12);
    }

    /// Source: NIST SP 811, 2008, appendix B.9: 1 Btu(IT)/h is 0.293 071 1 W.
    #[test]
    fn a_gas_burner_is_rated_in_british_units() {
        assert!((Power::btu_per_hour(1.0).as_watts() - 0.293_071_1).abs() < 1e-7);
        assert!((Power::kilowatts(1.0) * Span::hours(1.0)).as_kilowatt_hours() - 1.0 < 1e-12);
    }

    #[test]
    fn mass_and_specific_heat_make_heat() {
        let water = Mass::kilograms(2.0) * SpecificHeat::kilojoules_per_kilogram_kelvin(4.18);
        assert!(((water * TempDifference::kelvins(10.0)).as_kilojoules() - 83.6).abs() < 1e-9);
    }
}
