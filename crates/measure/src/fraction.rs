//! Kitchen fractions: exact, bounded, printed the way a cook writes them.
//!
//! Halves and thirds of cups are kept as ratios, never as floating point numbers, so that a recipe taken
//! three times and divided by three is the recipe. Both parts of a fraction are bounded, and arithmetic that
//! would leave the bounds gives `None` instead of wrapping or losing digits.

use std::fmt;
use std::str::FromStr;

use num_rational::Ratio;

use crate::read::{ReadError, read_fraction};

/// An exact rational number between -4,294,967,295 and 4,294,967,295 whose denominator is at most 1,000,000.
///
/// # Examples
///
/// ```
/// use measure::Fraction;
///
/// let written: Fraction = "1 1/2".parse().unwrap();
/// let twice = written.checked_mul(Fraction::whole(2)).unwrap();
/// assert_eq!(twice.to_string(), "3");
/// assert_eq!("3¾".parse::<Fraction>().unwrap().to_string(), "3 3/4");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Fraction(Ratio<i64>);

impl Fraction {
    /// None of it.
    pub const ZERO: Self = Self(Ratio::new_raw(0, 1));
    /// One whole.
    pub const ONE: Self = Self(Ratio::new_raw(1, 1));
    /// One half.
    pub const HALF: Self = Self(Ratio::new_raw(1, 2));
    /// The largest denominator a fraction may have: six decimal places.
    pub const LARGEST_DENOMINATOR: i64 = 1_000_000;
    /// The largest whole number a fraction may reach, above and below zero.
    pub const LARGEST: i64 = u32::MAX as i64;

    /// A whole number.
    #[must_use]
    pub const fn whole(number: u32) -> Self {
        // Never overflows: every u32 is an i64.
        Self(Ratio::new_raw(number as i64, 1))
    }

    /// `numerator / denominator` in lowest terms; `None` when the denominator is zero or a bound is passed.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::Fraction;
    ///
    /// assert_eq!(Fraction::new(6, 8), Fraction::new(3, 4));
    /// assert_eq!(Fraction::new(1, 0), None);
    /// ```
    #[must_use]
    pub fn new(numerator: i64, denominator: i64) -> Option<Self> {
        Self::reduce(i128::from(numerator), i128::from(denominator))
    }

    /// The whole number of parts nearest to `number`, halves away from zero; `None` when it is not finite, too
    /// large, or `parts_of_one` is zero or above a million.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::Fraction;
    ///
    /// assert_eq!(Fraction::nearest(1.27, 8).unwrap().to_string(), "1 1/4");
    /// assert_eq!(Fraction::nearest(f64::NAN, 8), None);
    /// ```
    #[must_use]
    pub fn nearest(number: f64, parts_of_one: u32) -> Option<Self> {
        if !number.is_finite() || i64::from(parts_of_one) > Self::LARGEST_DENOMINATOR {
            return None;
        }
        // Saturates far above what a fraction can be, where `new` refuses it.
        Self::new(libm::round(number * f64::from(parts_of_one)) as i64, i64::from(parts_of_one))
    }

    /// The greatest whole number at or below it.
    #[must_use]
    pub fn floor(self) -> i64 {
        self.0.floor().to_integer()
    }

    /// The least whole number at or above it.
    #[must_use]
    pub fn ceil(self) -> i64 {
        self.0.ceil().to_integer()
    }

    /// The sum, or `None` when it leaves the bounds.
    #[must_use]
    pub fn checked_add(self, other: Self) -> Option<Self> {
        let [a, b, c, d] = self.parts_with(other);
        Self::reduce(a * d + c * b, b * d)
    }

    /// The difference, or `None` when it leaves the bounds.
    #[must_use]
    pub fn checked_sub(self, other: Self) -> Option<Self> {
        let [a, b, c, d] = self.parts_with(other);
        Self::reduce(a * d - c * b, b * d)
    }

    /// The product, or `None` when it leaves the bounds.
    #[must_use]
    pub fn checked_mul(self, other: Self) -> Option<Self> {
        let [a, b, c, d] = self.parts_with(other);
        Self::reduce(a * c, b * d)
    }

    /// The quotient, or `None` when `other` is zero or the quotient leaves the bounds.
    #[must_use]
    pub fn checked_div(self, other: Self) -> Option<Self> {
        let [a, b, c, d] = self.parts_with(other);
        Self::reduce(a * d, b * c)
    }

    /// The number above the line, in lowest terms.
    #[must_use]
    pub const fn numerator(self) -> i64 {
        *self.0.numer()
    }

    /// The number below the line, in lowest terms; always above zero.
    #[must_use]
    pub const fn denominator(self) -> i64 {
        *self.0.denom()
    }

    /// Whether it is a whole number.
    #[must_use]
    pub const fn is_whole(self) -> bool {
        self.denominator() == 1
    }

    /// The nearest floating point number.
    #[must_use]
    pub const fn to_f64(self) -> f64 {
        // Exact above the line: |numerator| is at most 4.3e15, below 2^53.
        self.numerator() as f64 / self.denominator() as f64
    }

    /// Written in decimals with at most `places` of them (6 at the most), trailing zeros left out, the last
    /// one rounded to the nearest, halves away from zero.
    ///
    /// # Examples
    ///
    /// ```
    /// use measure::Fraction;
    ///
    /// let third = Fraction::new(10, 3).unwrap();
    /// assert_eq!(third.to_decimal(2), "3.33");
    /// assert_eq!(Fraction::new(5, 2).unwrap().to_decimal(3), "2.5");
    /// assert_eq!(Fraction::whole(7).to_decimal(2), "7");
    /// ```
    #[must_use]
    pub fn to_decimal(self, places: u32) -> String {
        let places = places.min(6);
        let scale = 10_i128.pow(places);
        let (numerator, denominator) = (i128::from(self.numerator()), i128::from(self.denominator()));
        let scaled = (2 * numerator.abs() * scale + denominator) / (2 * denominator);
        let sign = if numerator < 0 && scaled > 0 { "-" } else { "" };
        let (whole, rest) = (scaled / scale, scaled % scale);
        if rest == 0 {
            return format!("{sign}{whole}");
        }
        let digits = format!("{rest:0width$}", width = places as usize);
        format!("{sign}{whole}.{}", digits.trim_end_matches('0'))
    }

    /// Both fractions' parts, wide enough that no sum or product of two of them overflows: each numerator is
    /// below 2^53 and each denominator below 2^20.
    fn parts_with(self, other: Self) -> [i128; 4] {
        [self.numerator(), self.denominator(), other.numerator(), other.denominator()].map(i128::from)
    }

    fn reduce(numerator: i128, denominator: i128) -> Option<Self> {
        if denominator == 0 {
            return None;
        }
        let lowest = Ratio::new(numerator, denominator);
        let numerator = i64::try_from(*lowest.numer()).ok()?;
        let denominator = i64::try_from(*lowest.denom()).ok()?;
        let fits = denominator <= Self::LARGEST_DENOMINATOR
            && i128::from(numerator).abs() <= i128::from(Self::LARGEST) * i128::from(denominator);
        fits.then(|| Self(Ratio::new_raw(numerator, denominator)))
    }
}

impl fmt::Display for Fraction {
    /// As a cook writes it: `3 3/4`, `1/3`, `12`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (numerator, denominator) = (self.numerator().abs(), self.denominator());
        let (whole, rest) = (numerator / denominator, numerator % denominator);
        if self.numerator() < 0 {
            f.write_str("-")?;
        }
        match (whole, rest) {
            (_, 0) => write!(f, "{whole}"),
            (0, _) => write!(f, "{rest}/{denominator}"),
            (_, _) => write!(f, "{whole} {rest}/{denominator}"),
        }
    }
}

impl FromStr for Fraction {
    type Err = ReadError;

    fn from_str(text: &str) -> Result<Self, ReadError> {
        read_fraction(text)
    }
}

impl From<u32> for Fraction {
    fn from(number: u32) -> Self {
        Self::whole(number)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(numerator: i64, denominator: i64) -> Fraction {
        Fraction::new(numerator, denominator).unwrap()
    }

    #[test]
    fn a_third_three_times_is_one_whole() {
        assert_eq!(of(1, 3).checked_mul(Fraction::whole(3)), Some(Fraction::ONE));
        assert_eq!(of(1, 3).checked_add(of(2, 3)), Some(Fraction::ONE));
        assert_eq!(of(3, 4).checked_sub(of(1, 4)), Some(Fraction::HALF));
        assert_eq!(of(3, 4).checked_div(of(3, 4)), Some(Fraction::ONE));
    }

    #[test]
    fn whole_numbers_around_a_fraction_keep_their_side() {
        for (fraction, floor, ceil) in
            [(of(7, 2), 3, 4), (of(-7, 2), -4, -3), (of(3, 1), 3, 3), (of(1, 9), 0, 1)]
        {
            assert_eq!((fraction.floor(), fraction.ceil()), (floor, ceil), "{fraction}");
        }
        let largest = Fraction::whole(u32::MAX);
        assert_eq!((largest.floor(), largest.ceil()), (Fraction::LARGEST, Fraction::LARGEST));
    }

    #[test]
    fn the_nearest_parts_of_a_number_are_found() {
        for (number, parts, want) in [(0.33, 3, "1/3"), (2.5, 1, "3"), (-0.3, 4, "-1/4"), (0.0, 8, "0")] {
            assert_eq!(
                Fraction::nearest(number, parts).map(|found| found.to_string()).as_deref(),
                Some(want)
            );
        }
        for (number, parts) in [(f64::INFINITY, 8), (1e18, 8), (5e9, 1), (1.0, 0), (1.0, 1_000_001)] {
            assert_eq!(Fraction::nearest(number, parts), None, "{number} in {parts}");
        }
    }

    #[test]
    fn arithmetic_past_the_bounds_gives_nothing() {
        let largest = Fraction::whole(u32::MAX);
        let finest = of(1, Fraction::LARGEST_DENOMINATOR);
        assert_eq!(largest.checked_add(Fraction::ONE), None);
        assert_eq!(largest.checked_mul(largest), None);
        assert_eq!(finest.checked_mul(Fraction::HALF), None);
        assert_eq!(Fraction::ONE.checked_div(Fraction::ZERO), None);
        assert_eq!(Fraction::new(i64::MIN, -1), None);
        assert_eq!(Fraction::new(1, i64::MIN), None);
    }

    #[test]
    fn a_fraction_is_printed_as_a_cook_writes_it() {
        for (fraction, want) in [
            (of(15, 4), "3 3/4"),
            (of(1, 3), "1/3"),
            (of(12, 1), "12"),
            (of(0, 7), "0"),
            (of(-3, 2), "-1 1/2"),
            (of(-1, 2), "-1/2"),
        ] {
            assert_eq!(fraction.to_string(), want);
        }
    }

    #[test]
    fn decimals_round_to_the_nearest_and_drop_their_zeros() {
        for (fraction, places, want) in [
            (of(2, 3), 2, "0.67"),
            (of(1, 8), 2, "0.13"),
            (of(-1, 8), 2, "-0.13"),
            (of(-1, 1000), 2, "0"),
            (of(1, 20), 2, "0.05"),
            (of(1999, 1000), 2, "2"),
            (of(1, 1_000_000), 9, "0.000001"),
            (of(7, 2), 0, "4"),
        ] {
            assert_eq!(fraction.to_decimal(places), want, "{fraction} to {places} places");
        }
    }
}
