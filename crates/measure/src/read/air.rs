//! Reading the pressure of the air as a barometer at the place shows it.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::sum::{Unit, take_sum};
use crate::matter::AirPressure;

/// Reads an absolute pressure: `845 hPa`, `845 mbar`, `24.95 inHg`, `634 mmHg`, `84.5 kPa`.
///
/// # Errors
///
/// When there is no number, no unit or a unit of something else, when the pressure is above two atmospheres, or when a
/// comma can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{AirPressure, read_air_pressure};
///
/// assert_eq!(read_air_pressure("845 hPa").unwrap(), AirPressure::hectopascals(845.0));
/// assert!(read_air_pressure("845").is_err());
/// ```
pub fn read_air_pressure(text: &str) -> Result<AirPressure, ReadError> {
    let mut cursor = Cursor::new(text, Expected::AirPressure)?;
    take_sum(&mut cursor, find_air_unit, AirPressure::hectopascals(2026.5), "two atmospheres")
}

fn find_air_unit(word: &str) -> Option<Unit<AirPressure>> {
    let one = match word.to_lowercase().as_str() {
        "hpa" | "mb" | "mbar" | "millibar" | "millibars" => {
            return Some(Unit::counted_whole(AirPressure::hectopascals(1.0)));
        }
        "kpa" => AirPressure::kilopascals(1.0),
        "inhg" | "in hg" | "inches hg" => AirPressure::inches_of_mercury(1.0),
        "mmhg" | "mm hg" | "torr" => AirPressure::millimetres_of_mercury(1.0),
        _ => return None,
    };
    Some(Unit::in_parts(one))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn barometers_are_read_in_their_units() {
        for (text, hectopascals) in [
            ("845 hPa", 845.0),
            ("1,013 hPa", 1013.0),
            ("845.5 mbar", 845.5),
            ("84.5 kPa", 845.0),
            ("24.95 inHg", 844.904),
            ("634 mmHg", 845.264),
        ] {
            let got = read_air_pressure(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
            assert!((got.as_hectopascals() - hectopascals).abs() < 0.01, "{text:?}: {got:?}");
        }
        for text in ["845", "845 ft", "30 psi", "9000 hPa", ""] {
            assert!(read_air_pressure(text).is_err(), "{text:?}");
        }
    }
}
