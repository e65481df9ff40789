//! Reading lengths and heights above the sea.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::number::take_sign;
use super::sum::{Unit, take_sum};
use crate::quantity::{Altitude, Length};

/// Reads a length: `1/2 in`, `12 mm`, `1 1/4"`, `1 ft 6 in`.
///
/// # Errors
///
/// When there is no number, no unit or a unit of something else, when the length is below zero or above
/// 100 metres, or when a comma or point can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Length, read_length};
///
/// assert_eq!(read_length("1/2 in").unwrap(), Length::inches(0.5));
/// assert_eq!(read_length("12 mm").unwrap(), Length::millimetres(12.0));
/// ```
pub fn read_length(text: &str) -> Result<Length, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Length)?;
    take_sum(&mut cursor, find_length_unit, Length::metres(100.0), "100 m")
}

/// Reads a height above the sea: `3,200 ft`, `1000m`, `1,600 m`, `1.6 km`.
///
/// A comma before exactly three digits sets off thousands, since nobody measures a hill in thousandths of a
/// foot; a point there (`1.600 m`) is refused, because it can mean sixteen hundred metres or one and a half.
/// A fraction of a foot counts as a whole foot, and a place below the sea (`-30 ft`) as the sea.
///
/// # Errors
///
/// When there is no number or no unit (a bare `1200` may be feet or metres), when a mark can be read two
/// ways, or when no place on earth is that high.
///
/// # Examples
///
/// ```
/// use measure::{Altitude, read_altitude};
///
/// assert_eq!(read_altitude("3,200 ft").unwrap(), Altitude::feet(3200));
/// assert_eq!(read_altitude("1000m").unwrap(), Altitude::feet(3281));
/// assert!(read_altitude("1200").is_err());
/// ```
pub fn read_altitude(text: &str) -> Result<Altitude, ReadError> {
    const LIMIT_IN_WORDS: &str = "30,000 ft";
    let mut cursor = Cursor::new(text, Expected::Altitude)?;
    let column = cursor.column();
    let below_sea = take_sign(&mut cursor);
    let height = take_sum(&mut cursor, find_length_unit, Length::feet(30_000.0), LIMIT_IN_WORDS)?;
    let height = if below_sea { Length::ZERO } else { height };
    Altitude::round_up(height).ok_or_else(|| cursor.too_large(column, LIMIT_IN_WORDS))
}

fn find_length_unit(word: &str) -> Option<Unit<Length>> {
    Some(match word {
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => {
            Unit::counted_whole(Length::millimetres(1.0))
        }
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => {
            Unit::in_parts(Length::millimetres(10.0))
        }
        "m" | "M" | "metre" | "metres" | "meter" | "meters" => Unit::counted_whole(Length::metres(1.0)),
        "km" | "kilometre" | "kilometres" | "kilometer" | "kilometers" => {
            Unit::in_parts(Length::metres(1000.0))
        }
        "in" | "ins" | "inch" | "inches" | "\"" | "″" | "”" => Unit::in_parts(Length::inches(1.0)),
        "ft" | "foot" | "feet" | "'" | "′" | "’" => Unit::counted_whole(Length::feet(1.0)),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heights_are_read_as_people_write_them() {
        for (text, feet) in [
            ("3,200 ft", 3200),
            ("3200ft", 3200),
            ("3200 feet", 3200),
            ("3,200'", 3200),
            ("1000m", 3281),
            ("1,600 m", 5250),
            ("1600 metres", 5250),
            ("1.6 km", 5250),
            ("304.8 m", 1000),
            ("1000.2 ft", 1001),
            ("0 ft", 0),
            ("-282 ft", 0),
            ("10 ft", 10),
        ] {
            assert_eq!(read_altitude(text), Ok(Altitude::feet(feet)), "{text:?}");
        }
    }

    #[test]
    fn a_height_that_can_be_taken_two_ways_is_refused() {
        for text in ["1.600 m", "3.200 ft", "1,600 km"] {
            let error = read_altitude(text).unwrap_err();
            assert!(matches!(error, ReadError::Ambiguous { .. }), "{text:?}: {error}");
        }
    }

    #[test]
    fn a_height_that_cannot_be_read_names_its_column() {
        for (text, column) in [
            ("1200", 5),
            ("1200 lb", 6),
            ("40,000 ft", 1),
            ("ft", 1),
            ("1 600 m", 3),
            ("high up", 1),
            ("--3 ft", 2),
        ] {
            let error = read_altitude(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }

    #[test]
    fn headspaces_are_read_in_inches_and_millimetres() {
        for (text, want) in [
            ("1/2 in", Length::inches(0.5)),
            ("1/2\"", Length::inches(0.5)),
            ("1 1/4 inches", Length::inches(1.25)),
            ("1-inch", Length::inches(1.0)),
            ("12 mm", Length::millimetres(12.0)),
            ("1,5 cm", Length::millimetres(15.0)),
            ("1 ft 6 in", Length::inches(18.0)),
        ] {
            let got = read_length(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
            assert!((got.ratio_to(want) - 1.0).abs() < 1e-12, "{text:?}: {got:?}");
        }
        assert!(read_length("-1 in").is_err());
        assert!(read_length("1 mile").is_err());
    }
}
