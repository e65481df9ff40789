//! Physical quantities as newtypes: made by unit, read by unit, with sensible arithmetic only.

use std::ops::Add;

/// Declares a quantity that is kept in one base unit as a finite `f64`.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $base:ident, [$($(#[$unit_doc:meta])* $unit:ident = $factor:expr),+ $(,)?]) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name { $base: f64 }

        impl $name {
            /// None of it.
            pub const ZERO: Self = Self { $base: 0.0 };

            quantity!(@unit $name, $base, $($(#[$unit_doc])* $unit = $factor),+);

            /// The greater of two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                if other.$base > self.$base { other } else { self }
            }

            /// The lesser of two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                if other.$base < self.$base { other } else { self }
            }

            /// How many times `other` goes into this; infinite or NaN when `other` is zero.
            #[must_use]
            pub fn ratio_to(self, other: Self) -> f64 {
                self.$base / other.$base
            }
        }

        impl ::std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self { $base: self.$base + other.$base } }
        }

        impl ::std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self { $base: self.$base - other.$base } }
        }

        impl ::std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, times: f64) -> Self { Self { $base: self.$base * times } }
        }

        impl ::std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
                parts.fold(Self::ZERO, |so_far, part| so_far + part)
            }
        }
    };
    (@unit $name:ident, $base:ident, $($(#[$unit_doc:meta])* $unit:ident = $factor:expr),+) => {
        $(
            quantity!(@make $name, $base, $(#[$unit_doc])* $unit = $factor);
        )+
    };
    (@make $name:ident, $base:ident, $(#[$unit_doc:meta])* $unit:ident = $factor:expr) => {
        $(#[$unit_doc])*
        #[must_use]
        pub const fn $unit(value: f64) -> Self { Self { $base: value * $factor } }
    };
}

/// Reads a quantity back in a unit.
macro_rules! read_as {
    ($name:ident, $base:ident, [$($(#[$doc:meta])* $reader:ident = $factor:expr),+ $(,)?]) => {
        impl $name {
            $(
                $(#[$doc])*
                #[must_use]
                pub const fn $reader(self) -> f64 { self.$base / $factor }
            )+
        }
    };
}

pub(crate) use {quantity, read_as};

/// Grams in one avoirdupois pound, exactly (NIST SP 811, 2008, appendix B.8).
const GRAMS_PER_POUND: f64 = 453.592_37;
/// Millilitres in one US gallon, exactly: 231 cubic inches (NIST Handbook 44, appendix C).
const ML_PER_GALLON: f64 = 3_785.411_784;
/// Millimetres in one inch, exactly (NIST SP 811, 2008, appendix B.8).
const MM_PER_INCH: f64 = 25.4;
/// Kilopascals in one pound-force per square inch (NIST SP 811, 2008, appendix B.8: 6.894 757).
const KPA_PER_PSI: f64 = 6.894_757;
/// Millilitres in one cubic foot, exactly: the cube of 304.8 mm (NIST Handbook 44, appendix C).
const ML_PER_CUBIC_FOOT: f64 = 28_316.846_592;
/// Millilitres in one US bushel, exactly: 2,150.42 cubic inches struck measure (NIST Handbook 44, appendix C).
const ML_PER_BUSHEL: f64 = 35_239.070_166_88;

quantity!(
    /// A mass, kept in grams.
    Mass, grams, [
        /// From grams.
        grams = 1.0,
        /// From kilograms.
        kilograms = 1000.0,
        /// From avoirdupois pounds.
        pounds = GRAMS_PER_POUND,
        /// From avoirdupois ounces.
        ounces = GRAMS_PER_POUND / 16.0,
    ]
);
read_as!(
    Mass,
    grams,
    [
        /// In grams.
        as_grams = 1.0,
        /// In kilograms.
        as_kilograms = 1000.0,
        /// In avoirdupois pounds.
        as_pounds = GRAMS_PER_POUND,
        /// In avoirdupois ounces.
        as_ounces = GRAMS_PER_POUND / 16.0,
    ]
);

quantity!(
    /// A volume, kept in millilitres. Cups, spoons, pints, quarts and gallons are US customary.
    Volume, millilitres, [
        /// From millilitres.
        millilitres = 1.0,
        /// From litres.
        litres = 1000.0,
        /// From US teaspoons.
        teaspoons = ML_PER_GALLON / 768.0,
        /// From US tablespoons.
        tablespoons = ML_PER_GALLON / 256.0,
        /// From US fluid ounces.
        fluid_ounces = ML_PER_GALLON / 128.0,
        /// From US cups.
        cups = ML_PER_GALLON / 16.0,
        /// From US liquid pints.
        pints = ML_PER_GALLON / 8.0,
        /// From US liquid quarts.
        quarts = ML_PER_GALLON / 4.0,
        /// From US gallons.
        gallons = ML_PER_GALLON,
        /// From cubic feet.
        cubic_feet = ML_PER_CUBIC_FOOT,
        /// From US bushels, struck measure.
        bushels = ML_PER_BUSHEL,
    ]
);
read_as!(
    Volume,
    millilitres,
    [
        /// In millilitres.
        as_millilitres = 1.0,
        /// In litres.
        as_litres = 1000.0,
        /// In US teaspoons.
        as_teaspoons = ML_PER_GALLON / 768.0,
        /// In US tablespoons.
        as_tablespoons = ML_PER_GALLON / 256.0,
        /// In US fluid ounces.
        as_fluid_ounces = ML_PER_GALLON / 128.0,
        /// In US cups.
        as_cups = ML_PER_GALLON / 16.0,
        /// In US liquid pints.
        as_pints = ML_PER_GALLON / 8.0,
        /// In US liquid quarts.
        as_quarts = ML_PER_GALLON / 4.0,
        /// In US gallons.
        as_gallons = ML_PER_GALLON,
        /// In cubic feet.
        as_cubic_feet = ML_PER_CUBIC_FOOT,
        /// In US bushels, struck measure.
        as_bushels = ML_PER_BUSHEL,
    ]
);

quantity!(
    /// A length, kept in millimetres. Headspace is one.
    Length, millimetres, [
        /// From millimetres.
        millimetres = 1.0,
        /// From inches.
        inches = MM_PER_INCH,
        /// From feet.
        feet = MM_PER_INCH * 12.0,
        /// From metres.
        metres = 1000.0,
    ]
);
read_as!(
    Length,
    millimetres,
    [
        /// In millimetres.
        as_millimetres = 1.0,
        /// In inches.
        as_inches = MM_PER_INCH,
        /// In feet.
        as_feet = MM_PER_INCH * 12.0,
        /// In metres.
        as_metres = 1000.0,
    ]
);

quantity!(
    /// A gauge pressure or a difference of pressures, kept in pounds per square inch as the tables print it.
    Pressure, psi, [
        /// From pounds per square inch.
        psi = 1.0,
        /// From kilopascals.
        kilopascals = 1.0 / KPA_PER_PSI,
    ]
);
read_as!(
    Pressure,
    psi,
    [
        /// In pounds per square inch.
        as_psi = 1.0,
        /// In kilopascals.
        as_kilopascals = 1.0 / KPA_PER_PSI,
    ]
);

quantity!(
    /// A share in percent; what it is a share of stands where it is used.
    Percent, percent, [
        /// From parts of a hundred.
        of_hundred = 1.0,
        /// From a fraction of one.
        fraction = 100.0,
    ]
);
read_as!(
    Percent,
    percent,
    [
        /// In percent.
        as_percent = 1.0,
        /// As a fraction of one.
        as_fraction = 100.0,
    ]
);

/// A temperature, kept in degrees Fahrenheit as the tables print it.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temp {
    fahrenheit: f64,
}

impl Temp {
    /// From degrees Fahrenheit.
    #[must_use]
    pub const fn fahrenheit(value: f64) -> Self {
        Self { fahrenheit: value }
    }

    /// From degrees Celsius.
    #[must_use]
    pub const fn celsius(value: f64) -> Self {
        Self { fahrenheit: value * 9.0 / 5.0 + 32.0 }
    }

    /// In degrees Fahrenheit.
    #[must_use]
    pub const fn as_fahrenheit(self) -> f64 {
        self.fahrenheit
    }

    /// In degrees Celsius.
    #[must_use]
    pub const fn as_celsius(self) -> f64 {
        (self.fahrenheit - 32.0) * 5.0 / 9.0
    }
}

/// Whole minutes, the clock's step everywhere in the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Minutes(pub u32);

impl Add for Minutes {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

/// A height above the sea in whole feet, the step of the printed altitude bands. Made from any length by
/// rounding **up**, so that a band is never chosen too low.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Altitude {
    feet: u32,
}

impl Altitude {
    /// From whole feet.
    #[must_use]
    pub const fn feet(feet: u32) -> Self {
        Self { feet }
    }

    /// From any length, up to the next whole foot; below the sea counts as 0. `None` when the length is not
    /// finite or no place on earth.
    #[must_use]
    pub fn round_up(height: Length) -> Option<Self> {
        /// Higher than any kitchen (Everest is 29,032 ft); an entry above it is a slip of the pen.
        const HIGHEST_FT: f64 = 30_000.0;
        let feet = height.as_feet();
        if !feet.is_finite() || feet > HIGHEST_FT {
            return None;
        }
        // A thousandth of a foot is forgiven, so that feet written as feet stay themselves.
        let whole = libm::ceil(feet - 0.001).max(0.0);
        // Never overflows: `whole` is between 0 and 30,000.
        Some(Self { feet: whole as u32 })
    }

    /// In whole feet.
    #[must_use]
    pub const fn as_feet(self) -> u32 {
        self.feet
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(got: f64, want: f64) {
        assert!((got - want).abs() <= 1e-9 * want.abs().max(1.0), "{got} is not {want}");
    }

    #[test]
    fn units_of_one_kind_convert_by_their_definitions() {
        close(Mass::pounds(1.0).as_ounces(), 16.0);
        close(Volume::gallons(1.0).as_cups(), 16.0);
        close(Volume::cups(1.0).as_tablespoons(), 16.0);
        close(Volume::tablespoons(1.0).as_teaspoons(), 3.0);
        close(Length::inches(12.0).as_feet(), 1.0);
        close(Temp::celsius(100.0).as_fahrenheit(), 212.0);
        close(Temp::fahrenheit(180.0).as_celsius(), 82.222_222_222_222_23);
    }

    #[test]
    fn altitude_rounds_up_to_the_next_whole_foot() {
        let of = |metres| Altitude::round_up(Length::metres(metres)).map(Altitude::as_feet);
        assert_eq!(of(304.8), Some(1000));
        assert_eq!(of(304.9), Some(1001));
        assert_eq!(of(-30.0), Some(0));
        assert_eq!(of(f64::NAN), None);
        assert_eq!(of(10_000.0), None);
    }
}
