//! Reading the power of burners and heaters.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::sum::{Unit, take_sum};
use crate::heat::Power;

/// Reads a power: `1800 W`, `2.4 kW`, `9,000 Btu/h`, `12000 BTU`.
///
/// British thermal units without "per hour" are meant per hour, as burners are rated.
///
/// # Errors
///
/// When there is no number, no unit or a unit of something else, when the power is above 100 kW, or when a comma can be
/// read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Power, read_power};
///
/// assert_eq!(read_power("2.4 kW").unwrap(), Power::watts(2400.0));
/// assert_eq!(read_power("9,000 Btu/h").unwrap(), Power::btu_per_hour(9000.0));
/// ```
pub fn read_power(text: &str) -> Result<Power, ReadError> {
    // The stroke and the hour behind it stand for nothing a burner could be without.
    let spelled = text.replace("/h", "").replace("/H", "").replace(" per hour", "");
    let mut cursor = Cursor::new(&spelled, Expected::Power)?;
    take_sum(&mut cursor, find_power_unit, Power::kilowatts(100.0), "100 kW")
}

fn find_power_unit(word: &str) -> Option<Unit<Power>> {
    Some(match word {
        "w" | "W" | "watt" | "watts" => Unit::counted_whole(Power::watts(1.0)),
        "kw" | "kW" | "KW" | "kilowatt" | "kilowatts" => Unit::in_parts(Power::kilowatts(1.0)),
        "btu" | "Btu" | "BTU" | "btus" | "BTUs" => Unit::counted_whole(Power::btu_per_hour(1.0)),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn powers_are_read_as_burners_are_rated() {
        for (text, watts) in [
            ("1800 W", 1800.0),
            ("1,800 watts", 1800.0),
            ("1.8kW", 1800.0),
            ("2,4 kW", 2400.0),
            ("9000 Btu/h", 9000.0 * 0.293_071),
            ("12,000 BTU per hour", 12_000.0 * 0.293_071),
        ] {
            let got = read_power(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
            assert!((got.as_watts() / watts - 1.0).abs() < 1e-5, "{text:?}: {got:?}");
        }
    }

    #[test]
    fn what_is_no_power_is_refused() {
        for text in ["1800", "high", "4 kg", "-3 kW", "500 kW", "1,800 kW"] {
            assert!(read_power(text).is_err(), "{text:?}");
        }
    }
}
