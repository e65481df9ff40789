//! Quantities of matter and air: densities, surfaces, the pressure of the air, flows, and exact spans of time.

use crate::quantity::{Length, Mass, Minutes, Volume, quantity, read_as};

/// Pascals in one inch of mercury (NIST SP 811, 2008, appendix B.8, conventional: 3.386 389 E+03).
const PA_PER_INCH_OF_MERCURY: f64 = 3_386.389;
/// Pascals in one millimetre of mercury (NIST SP 811, 2008, appendix B.8, conventional: 1.333 224 E+02).
const PA_PER_MM_OF_MERCURY: f64 = 133.322_4;
/// Pascals in one pound-force per square inch (NIST SP 811, 2008, appendix B.8: 6.894 757 E+03).
const PA_PER_PSI: f64 = 6_894.757;

quantity!(
    /// An absolute pressure, as a barometer at the place shows it, kept in pascals. What a canner's gauge shows is a
    /// [`Pressure`](crate::Pressure) above it.
    AirPressure, pascals, [
        /// From pascals.
        pascals = 1.0,
        /// From hectopascals, which are millibars.
        hectopascals = 100.0,
        /// From kilopascals.
        kilopascals = 1000.0,
        /// From inches of mercury.
        inches_of_mercury = PA_PER_INCH_OF_MERCURY,
        /// From millimetres of mercury.
        millimetres_of_mercury = PA_PER_MM_OF_MERCURY,
        /// From pounds per square inch absolute.
        psi_absolute = PA_PER_PSI,
    ]
);
read_as!(
    AirPressure,
    pascals,
    [
        /// In pascals.
        as_pascals = 1.0,
        /// In hectopascals.
        as_hectopascals = 100.0,
        /// In kilopascals.
        as_kilopascals = 1000.0,
        /// In inches of mercury.
        as_inches_of_mercury = PA_PER_INCH_OF_MERCURY,
        /// In pounds per square inch absolute.
        as_psi_absolute = PA_PER_PSI,
    ]
);

quantity!(
    /// Mass in a volume, kept in kilograms a cubic metre, which are grams a litre.
    Density, kilograms_per_cubic_metre, [
        /// From kilograms a cubic metre.
        kilograms_per_cubic_metre = 1.0,
        /// From grams a millilitre.
        grams_per_millilitre = 1000.0,
    ]
);
read_as!(
    Density,
    kilograms_per_cubic_metre,
    [
        /// In kilograms a cubic metre.
        as_kilograms_per_cubic_metre = 1.0,
        /// In grams a millilitre.
        as_grams_per_millilitre = 1000.0,
    ]
);

quantity!(
    /// A surface, kept in square metres.
    Area, square_metres, [
        /// From square metres.
        square_metres = 1.0,
        /// From square centimetres.
        square_centimetres = 1e-4,
    ]
);
read_as!(
    Area,
    square_metres,
    [/// In square metres.
    as_square_metres = 1.0,]
);

quantity!(
    /// Mass in a time, kept in kilograms an hour.
    MassFlow, kilograms_per_hour, [
        /// From kilograms an hour.
        kilograms_per_hour = 1.0,
    ]
);
read_as!(
    MassFlow,
    kilograms_per_hour,
    [/// In kilograms an hour.
    as_kilograms_per_hour = 1.0,]
);

quantity!(
    /// A span of time that need not be whole minutes, kept in seconds.
    Span, seconds, [
        /// From seconds.
        seconds = 1.0,
        /// From minutes.
        minutes = 60.0,
        /// From hours.
        hours = 3600.0,
        /// From days.
        days = 86_400.0,
    ]
);
read_as!(
    Span,
    seconds,
    [
        /// In seconds.
        as_seconds = 1.0,
        /// In minutes.
        as_minutes = 60.0,
        /// In hours.
        as_hours = 3600.0,
        /// In days.
        as_days = 86_400.0,
    ]
);

impl From<Minutes> for Span {
    fn from(minutes: Minutes) -> Self {
        Self::minutes(f64::from(minutes.0))
    }
}

impl Density {
    /// The mass of a volume.
    #[must_use]
    pub fn mass_of(self, volume: Volume) -> Mass {
        Mass::grams(self.as_grams_per_millilitre() * volume.as_millilitres())
    }

    /// The volume of a mass; not finite when the density is zero.
    #[must_use]
    pub fn volume_of(self, mass: Mass) -> Volume {
        Volume::millilitres(mass.as_grams() / self.as_grams_per_millilitre())
    }
}

impl Area {
    /// The area of a rectangle.
    #[must_use]
    pub fn rectangle(one: Length, other: Length) -> Self {
        Self::square_metres(one.as_metres() * other.as_metres())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: NIST SP 811, 2008, appendix B.8: one standard atmosphere is 101 325 Pa, 760 mm or 29.92 in of mercury.
    #[test]
    fn a_barometer_reads_the_same_air_in_any_unit() {
        let air = AirPressure::hectopascals(1013.25);
        assert!((air.as_inches_of_mercury() - 29.92).abs() < 0.005);
        assert!((air.as_psi_absolute() - 14.696).abs() < 0.001);
        assert!((AirPressure::millimetres_of_mercury(760.0).as_pascals() - 101_325.0).abs() < 1.0);
    }

    #[test]
    fn mass_and_volume_go_back_and_forth_by_density() {
        let syrup = Density::grams_per_millilitre(1.2);
        let mass = syrup.mass_of(Volume::litres(2.0));
        assert!((mass.as_kilograms() - 2.4).abs() < 1e-12);
        assert!((syrup.volume_of(mass).as_litres() - 2.0).abs() < 1e-12);
        assert_eq!(Span::from(Minutes(90)), Span::hours(1.5));
    }
}
