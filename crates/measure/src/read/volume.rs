//! Reading volumes. Cups, spoons, pints, quarts and gallons are US customary.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::sum::{Unit, take_sum};
use crate::fraction::Fraction;
use crate::quantity::Volume;
use crate::unit::VolumeUnit;

/// Reads a volume: `1 1/2 cups`, `1½ c`, `3/4 tsp`, `½ cup`, `2 qt`, `500 ml`, `4 cubic feet`, `60 l`.
///
/// `T` is a tablespoon and `t` a teaspoon, as cooks write them. A bare `oz` is refused: it is a mass; fluid
/// ounces are written `fl oz`.
///
/// # Errors
///
/// When there is no number, no unit or a unit of something else, when the volume is below zero or above
/// 10,000 litres, or when a comma or point can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Volume, read_volume};
///
/// assert_eq!(read_volume("1½ c").unwrap(), Volume::cups(1.5));
/// assert_eq!(read_volume("1 cup 2 tbsp").unwrap(), Volume::tablespoons(18.0));
/// assert!(read_volume("8 oz").is_err());
/// ```
pub fn read_volume(text: &str) -> Result<Volume, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Volume)?;
    take_volume(&mut cursor)
}

/// A volume that reaches to the end of the text.
pub(crate) fn take_volume(cursor: &mut Cursor<'_>) -> Result<Volume, ReadError> {
    const LIMIT: Volume = Volume::litres(10_000.0);
    take_sum(cursor, find_volume_unit, LIMIT, "10,000 l")
}

/// The unit of volume a word, or two, name.
pub(crate) fn find_volume_unit(word: &str) -> Option<Unit<Volume>> {
    let one = match word {
        "cl" | "centilitre" | "centilitres" | "centiliter" | "centiliters" => Volume::millilitres(10.0),
        "dl" | "decilitre" | "decilitres" | "deciliter" | "deciliters" => Volume::millilitres(100.0),
        "cu ft" | "cuft" | "cubic foot" | "cubic feet" | "cubic ft" | "ft³" => Volume::cubic_feet(1.0),
        _ => VolumeUnit::find(word)?.volume_of(Fraction::ONE),
    };
    let is_millilitre = VolumeUnit::find(word) == Some(VolumeUnit::Ml);
    Some(if is_millilitre { Unit::counted_whole(one) } else { Unit::in_parts(one) })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, want: Volume) {
        match read_volume(text) {
            Ok(got) => assert!((got.ratio_to(want) - 1.0).abs() < 1e-12, "{text:?}: {got:?} is not {want:?}"),
            Err(error) => panic!("{text:?}: {error}"),
        }
    }

    #[test]
    fn volumes_are_read_as_people_write_them() {
        for (text, want) in [
            ("1 1/2 cups", Volume::cups(1.5)),
            ("1½ c", Volume::cups(1.5)),
            ("1½c.", Volume::cups(1.5)),
            ("one and a half cups", Volume::cups(1.5)),
            ("3/4 tsp", Volume::teaspoons(0.75)),
            ("½ cup", Volume::cups(0.5)),
            ("half a cup", Volume::cups(0.5)),
            ("2 qt", Volume::quarts(2.0)),
            ("2 Quarts", Volume::quarts(2.0)),
            ("500 ml", Volume::millilitres(500.0)),
            ("1,500 ml", Volume::millilitres(1500.0)),
            ("500mL", Volume::millilitres(500.0)),
            ("4 cubic feet", Volume::cubic_feet(4.0)),
            ("4 cu. ft.", Volume::cubic_feet(4.0)),
            ("4 ft³", Volume::cubic_feet(4.0)),
            ("60 l", Volume::litres(60.0)),
            ("1.250 L", Volume::litres(1.25)),
            ("2,5 l", Volume::litres(2.5)),
            ("8 fl oz", Volume::cups(1.0)),
            ("8 Fl. Oz.", Volume::cups(1.0)),
            ("5 dl", Volume::millilitres(500.0)),
            ("1 cup plus 2 tbsp".replace("plus", "+").as_str(), Volume::tablespoons(18.0)),
            ("2 qt 1 1/2 cups", Volume::cups(9.5)),
            ("half-pint", Volume::cups(1.0)),
        ] {
            check(text, want);
        }
    }

    #[test]
    fn a_capital_t_is_a_tablespoon_and_a_small_one_a_teaspoon() {
        check("1 T", Volume::tablespoons(1.0));
        check("1 t", Volume::teaspoons(1.0));
        check("1 Tbsp", Volume::tablespoons(1.0));
        check("1 TSP", Volume::teaspoons(1.0));
    }

    #[test]
    fn a_volume_that_cannot_be_read_names_its_column() {
        for (text, column) in [
            ("8 oz", 3),
            ("1.5", 4),
            ("cups", 1),
            ("2 cups sugar", 8),
            ("1,500 l", 1),
            ("1,500 cups", 1),
            ("1.500 ml", 1),
            ("- 1 cup", 1),
            ("99999 l", 1),
            ("1 cup 2", 8),
        ] {
            let error = read_volume(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }
}
