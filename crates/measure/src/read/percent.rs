//! Reading shares.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::number::{Marks, take_number};
use crate::quantity::Percent;

/// Reads a share in percent: `5 %`, `2.5%`, `5 percent`.
///
/// # Errors
///
/// When the percent sign is missing (a bare `5` may be a share of one or of a hundred), when the share is
/// below zero or above 100 %, or when a comma can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Percent, read_percent};
///
/// assert_eq!(read_percent("5 %").unwrap(), Percent::of_hundred(5.0));
/// assert!(read_percent("5").is_err());
/// ```
pub fn read_percent(text: &str) -> Result<Percent, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Percent)?;
    let number = take_number(&mut cursor)?;
    let column = number.column();
    cursor.take_unit(|word| matches!(word, "%" | "percent" | "per cent" | "pct").then_some(()))?;
    let share = number.resolve(Marks::Parts, &cursor)?;
    cursor.finish()?;
    if share.to_f64() > 100.0 {
        return Err(cursor.out_of_range(column, "a share is at most 100 %"));
    }
    Ok(Percent::of_hundred(share.to_f64()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_read_with_their_sign() {
        for (text, want) in
            [("5 %", 5.0), ("5%", 5.0), ("2,5 %", 2.5), ("2 1/4 percent", 2.25), ("100 per cent", 100.0)]
        {
            assert_eq!(read_percent(text), Ok(Percent::of_hundred(want)), "{text:?}");
        }
        for (text, column) in [("5", 2), ("101 %", 1), ("-1 %", 1), ("5 % salt", 5), ("5 kg", 3), ("%", 1)] {
            let error = read_percent(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }
}
