//! Amounts as the journal writes them: whole numbers of the smallest unit a kitchen can read, never floats.

use measure::{Mass, Pressure, Temp, Volume};
use serde::{Deserialize, Serialize};

/// Declares an amount that is a whole number of one unit.
macro_rules! whole {
    ($(#[$doc:meta])* $name:ident, $quantity:ident, $from:ident, $into:ident, $make:ident, $read:ident, $per:expr) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub i64);

        impl $name {
            /// The nearest whole number; `None` for what is not finite or beyond what JSON writes exactly.
            #[must_use]
            pub fn $from(quantity: $quantity) -> Option<Self> {
                nearest_whole(quantity.$read() * $per).map(Self)
            }

            /// As a quantity to reckon with.
            #[must_use]
            pub fn $into(self) -> $quantity {
                $quantity::$make(self.0 as f64 / $per)
            }
        }
    };
}

/// The largest whole number that every JSON reader reads exactly: 2^53 - 1 (RFC 8259, section 6).
pub(crate) const LARGEST_WHOLE: i64 = 9_007_199_254_740_991;

fn nearest_whole(number: f64) -> Option<i64> {
    let largest = LARGEST_WHOLE as f64;
    let rounded = number.round();
    (rounded.abs() <= largest).then_some(rounded as i64)
}

whole!(
    /// Milligrams.
    Milligrams, Mass, from_mass, to_mass, grams, as_grams, 1000.0
);
whole!(
    /// Microlitres.
    Microlitres, Volume, from_volume, to_volume, millilitres, as_millilitres, 1000.0
);
whole!(
    /// Thousandths of a degree Celsius.
    MilliCelsius, Temp, from_temp, to_temp, celsius, as_celsius, 1000.0
);
whole!(
    /// Pascals: of a gauge, above the air outside.
    Pascals, Pressure, from_pressure, to_pressure, kilopascals, as_kilopascals, 1000.0
);
/// Hundredths of a pH unit. A reading closes; it opens nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct HundredthsPh(pub i64);

/// An amount of something, in whichever way it was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Amount {
    /// Weighed.
    #[serde(rename = "mg")]
    Mass(Milligrams),
    /// Measured.
    #[serde(rename = "ul")]
    Volume(Microlitres),
    /// Counted.
    #[serde(rename = "count")]
    Count(i64),
}

/// A price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Price {
    /// In the smallest coin.
    pub minor: i64,
    /// The currency by its three letters (ISO 4217).
    pub currency: Box<str>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_goes_to_the_journal_and_back() {
        let mass = Milligrams::from_mass(Mass::pounds(2.0)).unwrap();
        assert_eq!(mass, Milligrams(907_185));
        assert!((mass.to_mass().as_pounds() - 2.0).abs() < 1e-5);
        assert_eq!(MilliCelsius::from_temp(Temp::celsius(-18.0)).unwrap(), MilliCelsius(-18_000));
        assert_eq!(Pascals::from_pressure(Pressure::psi(11.0)).unwrap(), Pascals(75_842));
    }

    #[test]
    fn what_is_no_number_is_not_written() {
        assert_eq!(Milligrams::from_mass(Mass::grams(f64::NAN)), None);
        assert_eq!(Milligrams::from_mass(Mass::grams(f64::INFINITY)), None);
        assert_eq!(Milligrams::from_mass(Mass::grams(1e15)), None);
    }
}
