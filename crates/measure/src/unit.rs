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
