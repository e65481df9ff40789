//! Reading masses.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::sum::{Unit, take_sum};
use crate::fraction::Fraction;
use crate::quantity::Mass;
use crate::unit::MassUnit;

/// Reads a mass: `2 lb 3 oz`, `2.3kg`, `2,3 kg`, `1 1/2 lb`, `half a pound`, `3,200 g`.
///
/// `2,300 kg` is refused, because it can mean two tonnes or two kilograms; `2.300 kg` is what a scale shows
/// and is read as such. Before grams it is the other way about.
///
/// # Errors
///
/// When there is no number, no unit or a unit of something else, when the mass is below zero or above ten
/// tonnes, or when a comma or point can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Mass, read_mass};
///
/// assert_eq!(read_mass("2 lb 3 oz").unwrap(), Mass::ounces(35.0));
/// assert_eq!(read_mass("2,3 kg").unwrap(), Mass::grams(2300.0));
/// assert_eq!(read_mass("half a pound").unwrap(), Mass::ounces(8.0));
/// assert_eq!(read_mass("2 lbz").unwrap_err().column(), 3);
/// ```
pub fn read_mass(text: &str) -> Result<Mass, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Mass)?;
    take_mass(&mut cursor)
}

/// A mass that reaches to the end of the text.
pub(crate) fn take_mass(cursor: &mut Cursor<'_>) -> Result<Mass, ReadError> {
    const LIMIT: Mass = Mass::kilograms(10_000.0);
    take_sum(cursor, find_mass_unit, LIMIT, "10,000 kg")
}

/// The unit of mass a word names.
pub(crate) fn find_mass_unit(word: &str) -> Option<Unit<Mass>> {
    let unit = MassUnit::find(word)?;
    let one = unit.mass_of(Fraction::ONE);
    Some(if unit == MassUnit::G { Unit::counted_whole(one) } else { Unit::in_parts(one) })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, want: Mass) {
        match read_mass(text) {
            Ok(got) => assert!((got.ratio_to(want) - 1.0).abs() < 1e-12, "{text:?}: {got:?} is not {want:?}"),
            Err(error) => panic!("{text:?}: {error}"),
        }
    }

    #[test]
    fn masses_are_read_as_people_write_them() {
        for (text, want) in [
            ("2 lb 3 oz", Mass::ounces(35.0)),
            ("2lb3oz", Mass::ounces(35.0)),
            ("2 lbs., 3 oz.", Mass::ounces(35.0)),
            ("2 pounds and 3 ounces", Mass::ounces(35.0)),
            ("2.3kg", Mass::grams(2300.0)),
            ("2,3 kg", Mass::grams(2300.0)),
            ("2.300 kg", Mass::grams(2300.0)),
            ("2,30 KG", Mass::grams(2300.0)),
            ("3,200 g", Mass::grams(3200.0)),
            ("3200 grams", Mass::grams(3200.0)),
            ("12,5 g", Mass::grams(12.5)),
            ("1 1/2 lb", Mass::ounces(24.0)),
            ("1½ lb", Mass::ounces(24.0)),
            ("half a pound", Mass::ounces(8.0)),
            ("half-pound", Mass::ounces(8.0)),
            ("1/2 a pound", Mass::ounces(8.0)),
            ("three quarters of a pound", Mass::ounces(12.0)),
            ("a pound and a half", Mass::ounces(24.0)),
            ("5#", Mass::pounds(5.0)),
            ("1\u{a0}kg", Mass::grams(1000.0)),
            ("1 kg 250 g", Mass::grams(1250.0)),
        ] {
            check(text, want);
        }
        assert_eq!(read_mass("0 g"), Ok(Mass::ZERO));
    }

    #[test]
    fn a_mass_that_cannot_be_read_names_its_column() {
        for (text, column) in [
            ("", 1),
            ("lb", 1),
            ("2", 2),
            ("2 lb 3", 7),
            ("2 lb 1/2", 9),
            ("2 lb and 3", 11),
            ("a", 1),
            ("2 lb 3 oz of plums", 11),
            ("2 cups", 3),
            ("-2 kg", 1),
            ("3 oz 2 lb", 6),
            ("2 lb 2 lb", 6),
            ("2,300 kg", 1),
            ("1.500 g", 1),
            ("20000 kg", 1),
            ("NaN kg", 1),
            ("inf kg", 1),
            ("1e3 g", 2),
        ] {
            let error = read_mass(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
            assert_eq!(error.expected(), Expected::Mass);
        }
    }

    #[test]
    fn both_readings_of_a_doubtful_mark_are_offered_and_can_be_read() {
        for text in ["2,300 kg", "1,250 lb", "1.500 g", "12.345 g"] {
            let ReadError::Ambiguous { thousands, decimal, .. } = read_mass(text).unwrap_err() else {
                panic!("{text:?} is not refused as ambiguous");
            };
            let unit = text.split(' ').next_back().unwrap();
            let [large, small] = [thousands, decimal].map(|n| read_mass(&format!("{n} {unit}")).unwrap());
            assert!((large.ratio_to(small) - 1000.0).abs() < 1e-9, "{text:?}: {large:?} and {small:?}");
        }
    }
}
