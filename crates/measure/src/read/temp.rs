//! Reading temperatures.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::number::{Marks, take_number, take_sign};
use crate::quantity::Temp;

/// Reads a temperature: `180 F`, `82 °C`, `180 degrees Fahrenheit`, `-18 °C`.
///
/// # Errors
///
/// When there is no number, no scale (a bare `180` may be a simmer or an oven), or when the temperature is
/// outside -100 °F to 1,000 °F.
///
/// # Examples
///
/// ```
/// use measure::{Temp, read_temp};
///
/// assert_eq!(read_temp("180 F").unwrap(), Temp::fahrenheit(180.0));
/// assert_eq!(read_temp("82 °C").unwrap(), Temp::celsius(82.0));
/// ```
pub fn read_temp(text: &str) -> Result<Temp, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Temp)?;
    let column = cursor.column();
    let negative = take_sign(&mut cursor);
    let number = take_number(&mut cursor)?;
    let _ = cursor.take_any_of(&["degree", "degrees", "deg", "°", "º"]);
    let scale = cursor.take_unit(find_scale)?;
    let size = number.resolve(Marks::Parts, &cursor)?.to_f64();
    cursor.finish()?;
    let temp = scale(if negative { -size } else { size });
    if (-100.0..=1000.0).contains(&temp.as_fahrenheit()) {
        Ok(temp)
    } else {
        Err(cursor.out_of_range(column, "a kitchen is between -100 °F and 1,000 °F"))
    }
}

fn find_scale(word: &str) -> Option<fn(f64) -> Temp> {
    match word {
        "F" | "f" | "°f" | "ºf" | "℉" | "fahrenheit" => Some(Temp::fahrenheit),
        "C" | "c" | "°c" | "ºc" | "℃" | "celsius" | "centigrade" => Some(Temp::celsius),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_are_read_on_either_scale() {
        for (text, want) in [
            ("180 F", Temp::fahrenheit(180.0)),
            ("180F", Temp::fahrenheit(180.0)),
            ("180°F", Temp::fahrenheit(180.0)),
            ("180 ° f", Temp::fahrenheit(180.0)),
            ("180 degrees Fahrenheit", Temp::fahrenheit(180.0)),
            ("82 °C", Temp::celsius(82.0)),
            ("82,5 °C", Temp::celsius(82.5)),
            ("82 c", Temp::celsius(82.0)),
            ("-18 °C", Temp::celsius(-18.0)),
            ("0 F", Temp::fahrenheit(0.0)),
        ] {
            assert_eq!(read_temp(text), Ok(want), "{text:?}");
        }
    }

    #[test]
    fn a_temperature_without_its_scale_is_refused() {
        for (text, column) in
            [("180", 4), ("180 K", 5), ("180 degrees", 12), ("1200 C", 1), ("hot", 1), ("180 F 2", 7)]
        {
            let error = read_temp(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }
}
