//! Reading pressures and gauge errors.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::number::take_sign;
use super::sum::{Unit, take_sum};
use crate::quantity::Pressure;

/// Reads a gauge pressure or the error of a gauge: `11 psi`, `+0.5 psi`, `-1 psi`, `69 kPa`.
///
/// A sign is kept. Pounds (`10 lb`) are pounds per square inch, as canners say it.
///
/// # Errors
///
/// When there is no number or no unit, when the pressure is more than 100 psi either way, or when a comma
/// can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Pressure, read_pressure};
///
/// assert_eq!(read_pressure("+0.5 psi").unwrap(), Pressure::psi(0.5));
/// assert_eq!(read_pressure("-1 psi").unwrap(), Pressure::psi(-1.0));
/// assert!(read_pressure("11").is_err());
/// ```
pub fn read_pressure(text: &str) -> Result<Pressure, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Pressure)?;
    let negative = take_sign(&mut cursor);
    let size = take_sum(&mut cursor, find_pressure_unit, Pressure::psi(100.0), "100 psi")?;
    Ok(if negative { Pressure::ZERO - size } else { size })
}

fn find_pressure_unit(word: &str) -> Option<Unit<Pressure>> {
    let one = match word {
        "psi" | "psig" | "lb" | "lbs" | "pound" | "pounds" => Pressure::psi(1.0),
        "kpa" => Pressure::kilopascals(1.0),
        "bar" | "bars" => Pressure::kilopascals(100.0),
        _ => return None,
    };
    Some(Unit::in_parts(one))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pressures_keep_their_sign() {
        for (text, psi) in [
            ("11 psi", 11.0),
            ("+0.5 psi", 0.5),
            ("+ 1/2 psi", 0.5),
            ("-1 psi", -1.0),
            ("−1 psi", -1.0),
            ("-0,5 psi", -0.5),
            ("10 lb", 10.0),
            ("0 psi", 0.0),
        ] {
            assert_eq!(read_pressure(text), Ok(Pressure::psi(psi)), "{text:?}");
        }
        let metric = read_pressure("69 kPa").unwrap().as_kilopascals();
        assert!((metric - 69.0).abs() < 1e-9, "{metric}");
    }

    #[test]
    fn a_pressure_that_cannot_be_read_names_its_column() {
        for (text, column) in
            [("11", 3), ("+ psi", 3), ("--1 psi", 2), ("500 psi", 1), ("1 atm", 3), ("2 psi 1 psi", 7)]
        {
            let error = read_pressure(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }
}
