//! Units an amount is measured or weighed in, and amounts as a cook would say them: a fraction and a unit.

use std::fmt;

use crate::fraction::Fraction;
use crate::quantity::{Mass, Volume};

/// A unit of volume a kitchen has a measure for. The named measures are US customary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum VolumeUnit {
    /// Teaspoon.
    Tsp,
    /// Tablespoon: 3 teaspoons.
    Tbsp,
    /// Fluid ounce: 2 tablespoons.
    FlOz,
    /// Cup: 8 fluid ounces.
    Cup,
    /// Liquid pint: 2 cups.
    Pint,
    /// Liquid quart: 4 cups.
    Quart,
    /// Gallon: 16 cups.
    Gallon,
    /// Millilitre.
    Ml,
    /// Litre.
    L,
}

impl VolumeUnit {
    /// The unit a word or abbreviation names, if it is one of these: `cups`, `tbsp`, `T`, `fl oz`, `ml`. Words
    /// are in small letters; single letters keep their case.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::VolumeUnit;
    ///
    /// assert_eq!(VolumeUnit::find("quarts"), Some(VolumeUnit::Quart));
    /// assert_eq!(VolumeUnit::find("oz"), None);
    /// ```
    #[must_use]
    pub fn find(word: &str) -> Option<Self> {
        Some(match word {
            "t" | "tsp" | "tsps" | "teaspoon" | "teaspoons" => Self::Tsp,
            "T" | "tb" | "tbs" | "tbsp" | "tbsps" | "tblsp" | "tablespoon" | "tablespoons" => Self::Tbsp,
            "fl oz" | "floz" | "fluid ounce" | "fluid ounces" | "fluid oz" => Self::FlOz,
            "c" | "C" | "cup" | "cups" => Self::Cup,
            "pt" | "pts" | "pint" | "pints" => Self::Pint,
            "qt" | "qts" | "quart" | "quarts" => Self::Quart,
            "gal" | "gals" | "gallon" | "gallons" => Self::Gallon,
            "ml" | "mls" | "cc" | "millilitre" | "millilitres" | "milliliter" | "milliliters" => Self::Ml,
            "l" | "L" | "litre" | "litres" | "liter" | "liters" => Self::L,
            _ => return None,
        })
    }

    /// How many of the smallest unit of its system one is, and which system that is.
    const fn size(self) -> (System, u32) {
        match self {
            Self::Tsp => (System::Us, 1),
            Self::Tbsp => (System::Us, 3),
            Self::FlOz => (System::Us, 6),
            Self::Cup => (System::Us, 48),
            Self::Pint => (System::Us, 96),
            Self::Quart => (System::Us, 192),
            Self::Gallon => (System::Us, 768),
            Self::Ml => (System::Metric, 1),
            Self::L => (System::Metric, 1000),
        }
    }

    /// How much so many of this unit are.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::{Fraction, Volume, VolumeUnit};
    ///
    /// let three_quarters = Fraction::new(3, 4).unwrap();
    /// assert_eq!(VolumeUnit::Cup.volume_of(three_quarters), Volume::cups(0.75));
    /// ```
    #[must_use]
    pub fn volume_of(self, number: Fraction) -> Volume {
        let number = number.to_f64();
        match self {
            Self::Tsp => Volume::teaspoons(number),
            Self::Tbsp => Volume::tablespoons(number),
            Self::FlOz => Volume::fluid_ounces(number),
            Self::Cup => Volume::cups(number),
            Self::Pint => Volume::pints(number),
            Self::Quart => Volume::quarts(number),
            Self::Gallon => Volume::gallons(number),
            Self::Ml => Volume::millilitres(number),
            Self::L => Volume::litres(number),
        }
    }

    /// Its name as it is written behind one or less: `cup`, `tsp`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Tsp => "tsp",
            Self::Tbsp => "tbsp",
            Self::FlOz => "fl oz",
            Self::Cup => "cup",
            Self::Pint => "pt",
            Self::Quart => "qt",
            Self::Gallon => "gal",
            Self::Ml => "ml",
            Self::L => "L",
        }
    }

    /// Its name as it is written behind a number: `1/2 cup`, `2 cups`; abbreviations have one form.
    #[must_use]
    pub fn name_behind(self, number: Fraction) -> &'static str {
        if self == Self::Cup && number > Fraction::ONE { "cups" } else { self.name() }
    }
}

/// A unit of mass a kitchen scale shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MassUnit {
    /// Gram.
    G,
    /// Kilogram.
    Kg,
    /// Avoirdupois ounce.
    Oz,
    /// Avoirdupois pound: 16 ounces.
    Lb,
}

impl MassUnit {
    /// The unit a word or abbreviation names, if it is one of these: `lb`, `pounds`, `kg`. Words are in small
    /// letters.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::MassUnit;
    ///
    /// assert_eq!(MassUnit::find("pounds"), Some(MassUnit::Lb));
    /// assert_eq!(MassUnit::find("cups"), None);
    /// ```
    #[must_use]
    pub fn find(word: &str) -> Option<Self> {
        Some(match word {
            "g" | "G" | "gr" | "gm" | "gms" | "gram" | "grams" | "gramme" | "grammes" => Self::G,
            "kg" | "kgs" | "kilo" | "kilos" | "kilogram" | "kilograms" | "kilogramme" | "kilogrammes" => {
                Self::Kg
            }
            "oz" | "ozs" | "ounce" | "ounces" => Self::Oz,
            "lb" | "lbs" | "#" | "pound" | "pounds" => Self::Lb,
            _ => return None,
        })
    }

    /// How many of the smallest unit of its system one is, and which system that is.
    const fn size(self) -> (System, u32) {
        match self {
            Self::G => (System::Metric, 1),
            Self::Kg => (System::Metric, 1000),
            Self::Oz => (System::Us, 1),
            Self::Lb => (System::Us, 16),
        }
    }

    /// How much so many of this unit are.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::{Fraction, Mass, MassUnit};
    ///
    /// assert_eq!(MassUnit::Oz.mass_of(Fraction::whole(8)), Mass::pounds(0.5));
    /// ```
    #[must_use]
    pub fn mass_of(self, number: Fraction) -> Mass {
        let number = number.to_f64();
        match self {
            Self::G => Mass::grams(number),
            Self::Kg => Mass::kilograms(number),
            Self::Oz => Mass::ounces(number),
            Self::Lb => Mass::pounds(number),
        }
    }

    /// Its name as it is written behind a number.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::G => "g",
            Self::Kg => "kg",
            Self::Oz => "oz",
            Self::Lb => "lb",
        }
    }
}

/// A volume as a cook measures it: `3 3/4 cups`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Measured {
    /// How many.
    pub value: Fraction,
    /// Of which unit.
    pub unit: VolumeUnit,
}

impl Measured {
    /// The volume it stands for.
    #[must_use]
    pub fn volume(self) -> Volume {
        self.unit.volume_of(self.value)
    }

    /// The same volume, exactly, in another unit; `None` between US and metric units, where it is never exact.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::{Fraction, Measured, VolumeUnit};
    ///
    /// let quart = Measured { value: Fraction::ONE, unit: VolumeUnit::Quart };
    /// assert_eq!(quart.in_unit(VolumeUnit::Cup).unwrap().to_string(), "4 cups");
    /// assert_eq!(quart.in_unit(VolumeUnit::L), None);
    /// ```
    #[must_use]
    pub fn in_unit(self, unit: VolumeUnit) -> Option<Self> {
        convert(self.value, self.unit.size(), unit.size()).map(|value| Self { value, unit })
    }
}

impl fmt::Display for Measured {
    /// `3 3/4 cups`, `1/2 tsp`, `2.5 L`: fractions for US measures, decimals for metric ones. More than six
    /// teaspoons are written with the tablespoons in them: `2 tbsp 1 tsp`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.unit.name_behind(self.value);
        match self.unit {
            VolumeUnit::Ml | VolumeUnit::L => write!(f, "{} {unit}", self.value.to_decimal(3)),
            VolumeUnit::Tsp if self.value > Fraction::whole(6) => match split_off(self.value, 3) {
                Some((tablespoons, rest)) if rest == Fraction::ZERO => write!(f, "{tablespoons} tbsp"),
                Some((tablespoons, rest)) => write!(f, "{tablespoons} tbsp {rest} {unit}"),
                None => write!(f, "{} {unit}", self.value),
            },
            _ => write!(f, "{} {unit}", self.value),
        }
    }
}

/// A mass as a kitchen scale shows it: `8 1/4 oz`, `850 g`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Weighed {
    /// How many.
    pub value: Fraction,
    /// Of which unit.
    pub unit: MassUnit,
}

impl Weighed {
    /// The mass it stands for.
    #[must_use]
    pub fn mass(self) -> Mass {
        self.unit.mass_of(self.value)
    }

    /// The same mass, exactly, in another unit; `None` between US and metric units.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::{Fraction, MassUnit, Weighed};
    ///
    /// let pounds = Weighed { value: Fraction::whole(2), unit: MassUnit::Lb };
    /// assert_eq!(pounds.in_unit(MassUnit::Oz).unwrap().value, Fraction::whole(32));
    /// ```
    #[must_use]
    pub fn in_unit(self, unit: MassUnit) -> Option<Self> {
        convert(self.value, self.unit.size(), unit.size()).map(|value| Self { value, unit })
    }
}

impl fmt::Display for Weighed {
    /// `8 1/4 oz`, `2 lb 3 oz`, `850 g`, `2.35 kg`; sixteen ounces and more are written in pounds and ounces.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.unit.name();
        match self.unit {
            MassUnit::G | MassUnit::Kg => write!(f, "{} {unit}", self.value.to_decimal(3)),
            MassUnit::Oz if self.value >= Fraction::whole(16) => match split_off(self.value, 16) {
                Some((pounds, rest)) if rest == Fraction::ZERO => write!(f, "{pounds} lb"),
                Some((pounds, rest)) => write!(f, "{pounds} lb {rest} {unit}"),
                None => write!(f, "{} {unit}", self.value),
            },
            MassUnit::Oz | MassUnit::Lb => write!(f, "{} {unit}", self.value),
        }
    }
}

/// The two systems of units, between which no kitchen fraction is exact.
#[derive(PartialEq, Eq)]
enum System {
    Us,
    Metric,
}

/// A number of units of one size in units of another.
fn convert(number: Fraction, from: (System, u32), to: (System, u32)) -> Option<Fraction> {
    let factor = Fraction::new(i64::from(from.1), i64::from(to.1))?;
    if from.0 == to.0 { number.checked_mul(factor) } else { None }
}

/// How many whole `size`s are in a number, and what is left over.
pub(crate) fn split_off(number: Fraction, size: u32) -> Option<(i64, Fraction)> {
    let wholes = number.numerator() / (i64::from(size) * number.denominator());
    let rest = number.checked_sub(Fraction::new(wholes * i64::from(size), 1)?)?;
    Some((wholes, rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_measured_volume_is_written_as_a_cook_says_it() {
        for (value, unit, want) in [
            ("3 3/4", VolumeUnit::Cup, "3 3/4 cups"),
            ("1", VolumeUnit::Cup, "1 cup"),
            ("1/2", VolumeUnit::Cup, "1/2 cup"),
            ("2", VolumeUnit::Tbsp, "2 tbsp"),
            ("5", VolumeUnit::Tsp, "5 tsp"),
            ("7", VolumeUnit::Tsp, "2 tbsp 1 tsp"),
            ("9", VolumeUnit::Tsp, "3 tbsp"),
            ("2", VolumeUnit::Quart, "2 qt"),
            ("5/2", VolumeUnit::L, "2.5 L"),
            ("5/2", VolumeUnit::Ml, "2.5 ml"),
        ] {
            assert_eq!(Measured { value: value.parse().unwrap(), unit }.to_string(), want);
        }
    }

    #[test]
    fn sixteen_ounces_are_written_as_a_pound() {
        for (value, unit, want) in [
            ("8 1/4", MassUnit::Oz, "8 1/4 oz"),
            ("16", MassUnit::Oz, "1 lb"),
            ("35", MassUnit::Oz, "2 lb 3 oz"),
            ("35 1/4", MassUnit::Oz, "2 lb 3 1/4 oz"),
            ("2 1/2", MassUnit::Lb, "2 1/2 lb"),
            ("850", MassUnit::G, "850 g"),
            ("2.35", MassUnit::Kg, "2.35 kg"),
        ] {
            assert_eq!(Weighed { value: value.parse().unwrap(), unit }.to_string(), want);
        }
    }

    #[test]
    fn a_unit_is_found_by_the_name_it_is_written_with() {
        use VolumeUnit::{Cup, FlOz, Gallon, L, Ml, Pint, Quart, Tbsp, Tsp};
        for unit in [Tsp, Tbsp, FlOz, Cup, Pint, Quart, Gallon, Ml, L] {
            assert_eq!(VolumeUnit::find(unit.name()), Some(unit));
            assert_eq!(VolumeUnit::find(unit.name_behind(Fraction::whole(2))), Some(unit));
            assert_eq!(MassUnit::find(unit.name()), None);
        }
        for unit in [MassUnit::G, MassUnit::Kg, MassUnit::Oz, MassUnit::Lb] {
            assert_eq!(MassUnit::find(unit.name()), Some(unit));
            assert_eq!(VolumeUnit::find(unit.name()), None);
        }
    }

    #[test]
    fn an_amount_in_another_unit_is_the_same_amount() {
        use VolumeUnit::{Cup, FlOz, Gallon, L, Ml, Pint, Quart, Tbsp, Tsp};
        let value: Fraction = "3 3/4".parse().unwrap();
        for units in [&[Tsp, Tbsp, FlOz, Cup, Pint, Quart, Gallon][..], &[Ml, L][..]] {
            for (from, to) in units.iter().flat_map(|from| units.iter().map(move |to| (*from, *to))) {
                let measured = Measured { value, unit: from };
                let other = measured.in_unit(to).unwrap();
                assert_eq!(other.in_unit(from), Some(measured));
                assert!(
                    (other.volume().ratio_to(measured.volume()) - 1.0).abs() < 1e-12,
                    "{measured} as {other}"
                );
            }
        }
        let kilogram = Weighed { value: Fraction::ONE, unit: MassUnit::Kg };
        assert_eq!(kilogram.in_unit(MassUnit::G).map(|same| same.value), Some(Fraction::whole(1000)));
        assert_eq!(kilogram.in_unit(MassUnit::Lb), None);
    }

    #[test]
    fn units_are_made_of_each_other() {
        let [one, two, three, four] = [1, 2, 3, 4].map(Fraction::whole);
        for (large, number, small) in [
            (VolumeUnit::Tbsp, three, VolumeUnit::Tsp),
            (VolumeUnit::FlOz, two, VolumeUnit::Tbsp),
            (VolumeUnit::Pint, two, VolumeUnit::Cup),
            (VolumeUnit::Quart, two, VolumeUnit::Pint),
            (VolumeUnit::Gallon, four, VolumeUnit::Quart),
            (VolumeUnit::L, Fraction::whole(1000), VolumeUnit::Ml),
        ] {
            let ratio = large.volume_of(one).ratio_to(small.volume_of(number));
            assert!((ratio - 1.0).abs() < 1e-12, "{large:?} in {small:?}");
        }
    }
}
