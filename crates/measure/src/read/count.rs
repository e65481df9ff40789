//! Reading numbers of pieces.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::number::{Marks, take_number};
use crate::fraction::Fraction;

/// Reads a number of pieces: `14`, `a dozen`, `2 dozen`, `half a dozen`, `24 ears`, `3 each`.
///
/// # Errors
///
/// When there is no number, when something other than a word for pieces stands behind it, when it is below
/// zero or above a million, or when a point can be read two ways.
///
/// # Examples
///
/// ```
/// use measure::{Fraction, read_count};
///
/// assert_eq!(read_count("half a dozen").unwrap(), Fraction::whole(6));
/// assert_eq!(read_count("24 ears").unwrap(), Fraction::whole(24));
/// assert_eq!(read_count("1,200").unwrap(), Fraction::whole(1200));
/// ```
pub fn read_count(text: &str) -> Result<Fraction, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Count)?;
    take_count(&mut cursor)
}

/// A count that reaches to the end of the text.
pub(crate) fn take_count(cursor: &mut Cursor<'_>) -> Result<Fraction, ReadError> {
    const LIMIT: Fraction = Fraction::whole(1_000_000);
    const LIMIT_IN_WORDS: &str = "1,000,000 pieces";
    const DOZEN: [&str; 4] = ["dozen", "dozens", "doz", "dz"];
    let column = cursor.column();
    let number = if cursor.take_any_of(&DOZEN) {
        Fraction::whole(12)
    } else {
        let number = take_number(cursor)?.resolve(Marks::Whole, cursor)?;
        let each = if cursor.take_any_of(&DOZEN) { Fraction::whole(12) } else { Fraction::ONE };
        number.checked_mul(each).ok_or_else(|| cursor.too_large(column, LIMIT_IN_WORDS))?
    };
    if !cursor.is_done() {
        cursor.take_unit(|word| is_piece_word(word).then_some(()))?;
    }
    cursor.finish()?;
    if number > LIMIT { Err(cursor.too_large(column, LIMIT_IN_WORDS)) } else { Ok(number) }
}

/// Whether a word begins a count behind a number.
pub(crate) fn is_count_word(word: &str) -> bool {
    is_piece_word(word) || matches!(word, "dozen" | "dozens" | "doz" | "dz")
}

fn is_piece_word(word: &str) -> bool {
    matches!(
        word,
        "ear"
            | "ears"
            | "each"
            | "ea"
            | "piece"
            | "pieces"
            | "pc"
            | "pcs"
            | "whole"
            | "head"
            | "heads"
            | "count"
            | "ct"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_are_read_as_people_write_them() {
        for (text, want) in [
            ("14", "14"),
            ("a dozen", "12"),
            ("dozen", "12"),
            ("one dozen", "12"),
            ("2 dozen", "24"),
            ("1 1/2 dozen", "18"),
            ("half a dozen", "6"),
            ("half dozen", "6"),
            ("2 doz.", "24"),
            ("2 dozen ears", "24"),
            ("24 ears", "24"),
            ("3 each", "3"),
            ("5 pieces", "5"),
            ("1,200", "1200"),
            ("seven", "7"),
            ("2 1/2", "2 1/2"),
        ] {
            let got = read_count(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
            assert_eq!(got.to_string(), want, "{text:?}");
        }
    }

    #[test]
    fn what_is_no_count_is_refused() {
        for (text, column) in [
            ("-3", 1),
            ("3 lb", 3),
            ("many", 1),
            ("3 ears of corn", 8),
            ("2000000", 1),
            ("1.200", 1),
            ("4294967295 dozen", 1),
            ("3 4", 3),
        ] {
            let error = read_count(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }
}
