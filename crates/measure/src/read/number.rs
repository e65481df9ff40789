//! Numbers as people write them: digits, decimals with point or comma, fractions, mixed numbers, words.
//!
//! # Points and commas
//!
//! `1,600` is sixteen hundred to one reader and one and three fifths to another; so is `1.600`. A mark with
//! one to three digits before it (not beginning with 0) and exactly three behind it can be either, and the
//! unit decides whether one reading is out of the question:
//!
//! - of units small enough to be counted whole (feet, metres, millimetres, grams, millilitres, minutes,
//!   pieces) nobody writes thousandths, so a comma sets off thousands; the point is refused, because one
//!   custom takes it for thousands and the other for decimals;
//! - of all other units (kilograms, pounds, litres, cups, ...) the point is a decimal mark, as every kitchen
//!   scale shows it; the comma is refused.
//!
//! A refusal names both readings. Any other shape (`2,3`, `0,125`, `12.5`, `1,234,567`, `1.234,5`) can be
//! read one way only.

use super::cursor::Cursor;
use super::error::ReadError;
use crate::fraction::Fraction;

/// The greatest number of decimal places read.
const MOST_PLACES: usize = 6;

/// What the point and the comma may mean before a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Marks {
    /// Counted whole: a comma before three digits sets off thousands, a point there is ambiguous.
    Whole,
    /// Measured in parts: a point before three digits is a decimal mark, a comma there is ambiguous.
    Parts,
}

/// A number whose point or comma may still wait for its unit to be understood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Number {
    column: usize,
    value: Value,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Value {
    Certain(Fraction),
    EitherWay { number: String, mark: char, thousands: Fraction, decimal: Fraction },
}

impl Number {
    /// Where it stands, from 1.
    pub(crate) fn column(&self) -> usize {
        self.column
    }

    /// Its value before a unit of the given kind.
    pub(crate) fn resolve(self, marks: Marks, cursor: &Cursor<'_>) -> Result<Fraction, ReadError> {
        match self.value {
            Value::Certain(value) => Ok(value),
            Value::EitherWay { mark: ',', thousands, .. } if marks == Marks::Whole => Ok(thousands),
            Value::EitherWay { mark: '.', decimal, .. } if marks == Marks::Parts => Ok(decimal),
            Value::EitherWay { number, thousands, decimal, .. } => {
                let mut decimal = decimal.to_decimal(3);
                // Three places would be refused again; a fourth makes the point a decimal mark.
                if marks == Marks::Whole && decimal.rsplit('.').next().is_some_and(|p| p.len() == 3) {
                    decimal.push('0');
                }
                Err(ReadError::Ambiguous {
                    text: cursor.text(),
                    column: self.column,
                    number,
                    thousands: thousands.to_string(),
                    decimal,
                    expected: cursor.expected(),
                })
            }
        }
    }
}

/// Reads a number or fraction.
///
/// Understands `12`, `2.5`, `2,5`, `3/4`, `1 1/2`, `1-1/2`, `1½`, `¾`, `half`, `a quarter`, `one and a half`.
///
/// # Errors
///
/// When the text is no number, is below zero, is too large or too fine, or when its comma can be read two
/// ways (`2,500`).
///
/// # Examples
///
/// ```
/// use measure::{Fraction, read_fraction};
///
/// assert_eq!(read_fraction("1½").unwrap(), Fraction::new(3, 2).unwrap());
/// assert_eq!(read_fraction("2,5").unwrap(), Fraction::new(5, 2).unwrap());
/// assert!(read_fraction("2,500").is_err());
/// ```
pub fn read_fraction(text: &str) -> Result<Fraction, ReadError> {
    let mut cursor = Cursor::new(text, super::error::Expected::Fraction)?;
    let value = take_number(&mut cursor)?.resolve(Marks::Parts, &cursor)?;
    cursor.finish()?;
    Ok(value)
}

/// A sign in front of a number: `true` for minus.
pub(crate) fn take_sign(cursor: &mut Cursor<'_>) -> bool {
    let negative = cursor.take(|c| c == '+' || is_minus(c)).is_some_and(is_minus);
    cursor.skip_spaces();
    negative
}

/// The number standing here, with the `of a` that may follow a part (`half of a pound`).
pub(crate) fn take_number(cursor: &mut Cursor<'_>) -> Result<Number, ReadError> {
    cursor.skip_spaces();
    let column = cursor.column();
    let value = match cursor.peek() {
        Some(c) if c.is_ascii_digit() => take_digits(cursor)?,
        Some('.' | ',') if cursor.peek_past(1).is_some_and(|c| c.is_ascii_digit()) => take_digits(cursor)?,
        Some(c) if is_minus(c) => return Err(cursor.negative(column)),
        Some(c) => {
            let written = match vulgar_fraction(c) {
                Some(part) => {
                    cursor.step();
                    Some(part)
                }
                None => take_number_word(cursor),
            };
            Value::Certain(written.ok_or_else(|| cursor.unreadable_at(column))?)
        }
        None => return Err(cursor.unreadable()),
    };
    // "half-pint", "1-inch".
    if cursor.peek() == Some('-') && cursor.peek_past(1).is_some_and(char::is_alphabetic) {
        cursor.step();
    }
    if matches!(&value, Value::Certain(part) if *part < Fraction::ONE) {
        let _ = cursor.take_any_of(&["of"]);
        let _ = cursor.take_any_of(&["a", "an"]);
    }
    Ok(Number { column, value })
}

/// A number that begins with a digit or a decimal mark.
fn take_digits(cursor: &mut Cursor<'_>) -> Result<Value, ReadError> {
    let (start, column) = (cursor.place(), cursor.column());
    while let Some(c) = cursor.peek() {
        let mark = matches!(c, '.' | ',') && cursor.peek_past(1).is_some_and(|next| next.is_ascii_digit());
        if !(c.is_ascii_digit() || mark) {
            break;
        }
        cursor.step();
    }
    let run = cursor.text_since(start);
    if run.contains(['.', ',']) {
        return understand_marks(&run, cursor, column);
    }
    let whole = whole_number(&run).ok_or_else(|| number_too_large(cursor, column))?;
    if let Some(denominator) = take_denominator(cursor)? {
        return divide(whole, denominator, cursor, column).map(Value::Certain);
    }
    let Some(part) = take_part_behind(cursor)? else {
        return Ok(Value::Certain(match cursor.take_known(fraction_word) {
            Some(named) => whole.checked_mul(named).ok_or_else(|| number_too_large(cursor, column))?,
            None => whole,
        }));
    };
    whole.checked_add(part).map(Value::Certain).ok_or_else(|| number_too_large(cursor, column))
}

/// The part of a mixed number behind its whole: `½`, ` 1/2`, `-1/2`, ` and a half`. Stays when there is none.
fn take_part_behind(cursor: &mut Cursor<'_>) -> Result<Option<Fraction>, ReadError> {
    let before = cursor.place();
    let hyphen = cursor.take(|c| matches!(c, '-' | '‐' | '–')).is_some();
    if !hyphen {
        cursor.skip_spaces();
    }
    let joined = !hyphen && cursor.take_any_of(&["and", "&"]);
    cursor.skip_spaces();
    if let Some(part) = cursor.peek().and_then(vulgar_fraction) {
        cursor.step();
        return Ok(Some(part));
    }
    let column = cursor.column();
    let digits = cursor.take_while(|c| c.is_ascii_digit());
    if !digits.is_empty()
        && let Some(denominator) = take_denominator(cursor)?
    {
        let numerator = whole_number(&digits).ok_or_else(|| number_too_large(cursor, column))?;
        let part = divide(numerator, denominator, cursor, column)?;
        // "1 5/4" is a slip of the pen, not nine quarters.
        return if part < Fraction::ONE { Ok(Some(part)) } else { Err(cursor.unreadable_at(column)) };
    }
    if joined && digits.is_empty() {
        let _ = cursor.take_any_of(&["a", "one"]);
        if let Some(part) = cursor.take_known(fraction_word) {
            return Ok(Some(part));
        }
    }
    cursor.go_back_to(before);
    Ok(None)
}

/// The denominator behind a stroke, if a stroke and a digit stand here.
fn take_denominator(cursor: &mut Cursor<'_>) -> Result<Option<Fraction>, ReadError> {
    let before = cursor.place();
    cursor.skip_spaces();
    if cursor.take(|c| matches!(c, '/' | '⁄' | '∕')).is_none() {
        cursor.go_back_to(before);
        return Ok(None);
    }
    cursor.skip_spaces();
    let column = cursor.column();
    let digits = cursor.take_while(|c| c.is_ascii_digit());
    match whole_number(&digits) {
        Some(denominator) if denominator > Fraction::ZERO => Ok(Some(denominator)),
        _ => Err(cursor.unreadable_at(column)),
    }
}

fn divide(
    numerator: Fraction,
    denominator: Fraction,
    cursor: &Cursor<'_>,
    column: usize,
) -> Result<Fraction, ReadError> {
    numerator.checked_div(denominator).ok_or_else(|| cursor.too_fine(column))
}

/// Decides what the points and commas of a run of digits mean.
fn understand_marks(run: &str, cursor: &Cursor<'_>, column: usize) -> Result<Value, ReadError> {
    let last_mark = run.rfind(['.', ',']).expect("only called with a mark in the run");
    let mark = if run[last_mark..].starts_with(',') { ',' } else { '.' };
    let other = if mark == ',' { '.' } else { ',' };
    let (before, behind) = (&run[..last_mark], &run[last_mark + 1..]);
    let certain = |whole: &str, places: &str| decimal(whole, places, cursor, column).map(Value::Certain);

    if before.contains(other) {
        // Two kinds of mark: the last is the decimal one, the other sets off thousands.
        let whole = join_groups(before, other).ok_or_else(|| cursor.unreadable_at(column))?;
        return certain(&whole, behind);
    }
    if before.contains(mark) {
        let whole = join_groups(run, mark).ok_or_else(|| cursor.unreadable_at(column))?;
        return certain(&whole, "");
    }
    let could_be_thousands = (1..=3).contains(&before.len()) && !before.starts_with('0') && behind.len() == 3;
    if !could_be_thousands {
        return certain(before, behind);
    }
    Ok(Value::EitherWay {
        number: run.to_owned(),
        mark,
        thousands: decimal(&format!("{before}{behind}"), "", cursor, column)?,
        decimal: decimal(before, behind, cursor, column)?,
    })
}

/// The digits of a number whose thousands are set off by `mark`; `None` when the groups are not of three.
fn join_groups(run: &str, mark: char) -> Option<String> {
    let mut groups = run.split(mark);
    let first = groups.next()?;
    let well_formed = (1..=3).contains(&first.len()) && groups.all(|group| group.len() == 3);
    let digits: String = run.chars().filter(|c| *c != mark).collect();
    (well_formed && digits.chars().all(|c| c.is_ascii_digit())).then_some(digits)
}

/// A number from the digits before and behind its decimal mark.
fn decimal(whole: &str, places: &str, cursor: &Cursor<'_>, column: usize) -> Result<Fraction, ReadError> {
    let places = places.trim_end_matches('0');
    if places.len() > MOST_PLACES {
        return Err(cursor.too_fine(column));
    }
    let too_large = || number_too_large(cursor, column);
    let whole = whole_number(if whole.is_empty() { "0" } else { whole }).ok_or_else(too_large)?;
    // Never overflows: at most six digits, and a power of ten of at most six zeros.
    let part: i64 = if places.is_empty() { 0 } else { places.parse().map_err(|_| too_large())? };
    let part = Fraction::new(part, 10_i64.pow(places.len() as u32)).ok_or_else(too_large)?;
    whole.checked_add(part).ok_or_else(too_large)
}

fn whole_number(digits: &str) -> Option<Fraction> {
    digits.parse::<u32>().ok().map(Fraction::whole)
}

fn number_too_large(cursor: &Cursor<'_>, column: usize) -> ReadError {
    cursor.too_large(column, "4,294,967,295")
}

/// A number written in words: `one`, `half`, `a quarter`, `three quarters`, `one and a half`.
fn take_number_word(cursor: &mut Cursor<'_>) -> Option<Fraction> {
    if let Some(part) = cursor.take_known(fraction_word) {
        return Some(part);
    }
    let whole_is_article = cursor.clone().take_any_of(&["a", "an"]);
    let whole = cursor.take_known(cardinal_word)?;
    if let Some(part) = cursor.take_known(fraction_word) {
        return whole.checked_mul(part);
    }
    let before = cursor.place();
    if cursor.take_any_of(&["and", "&"]) {
        let _ = cursor.take_any_of(&["a", "one"]);
        if let Some(part) = cursor.take_known(fraction_word) {
            return whole.checked_add(part);
        }
        cursor.go_back_to(before);
    }
    // "a" by itself is no number, only "a pound" and "a dozen" are.
    if whole_is_article && cursor.is_done() { None } else { Some(whole) }
}

fn cardinal_word(word: &str) -> Option<Fraction> {
    const WORDS: [&str; 12] =
        ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    if matches!(word, "a" | "an") {
        return Some(Fraction::ONE);
    }
    let place = WORDS.iter().position(|known| *known == word)?;
    u32::try_from(place + 1).ok().map(Fraction::whole)
}

fn fraction_word(word: &str) -> Option<Fraction> {
    let denominator = match word {
        "half" | "halves" => 2,
        "third" | "thirds" => 3,
        "quarter" | "quarters" | "fourth" | "fourths" => 4,
        "eighth" | "eighths" => 8,
        _ => return None,
    };
    Fraction::new(1, denominator)
}

/// The fractions that have a character of their own.
fn vulgar_fraction(c: char) -> Option<Fraction> {
    let (numerator, denominator) = match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    };
    Fraction::new(numerator, denominator)
}

fn is_minus(c: char) -> bool {
    matches!(c, '-' | '−' | '–')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, want: &str) {
        match read_fraction(text) {
            Ok(value) => assert_eq!(value.to_string(), want, "{text:?}"),
            Err(error) => panic!("{text:?}: {error}"),
        }
    }

    #[test]
    fn every_way_of_writing_a_number_is_read() {
        for (text, want) in [
            ("12", "12"),
            ("1 1/2", "1 1/2"),
            ("1-1/2", "1 1/2"),
            ("1½", "1 1/2"),
            ("1 ½", "1 1/2"),
            ("¾", "3/4"),
            ("3/4", "3/4"),
            ("3⁄4", "3/4"),
            ("9/4", "2 1/4"),
            ("2.5", "2 1/2"),
            ("2,5", "2 1/2"),
            (".5", "1/2"),
            ("0,125", "1/8"),
            ("0.125", "1/8"),
            ("2.300", "2 3/10"),
            ("2,3000", "2 3/10"),
            ("1,234,567", "1234567"),
            ("1.234,5", "1234 1/2"),
            ("1,234.5", "1234 1/2"),
            ("half", "1/2"),
            ("a half", "1/2"),
            ("Three quarters", "3/4"),
            ("3 quarters", "3/4"),
            ("one and a half", "1 1/2"),
            ("2 and 1/2", "2 1/2"),
            ("2 and a half", "2 1/2"),
            ("  7  ", "7"),
            ("0", "0"),
        ] {
            check(text, want);
        }
    }

    #[test]
    fn what_is_no_number_is_refused_where_it_goes_wrong() {
        for (text, column) in [
            ("x", 1),
            ("1/0", 3),
            ("1/", 3),
            ("1 5/4", 3),
            ("1 600", 3),
            ("1,23,456", 1),
            ("1.2.3", 1),
            ("inf", 1),
            ("NaN", 1),
            ("a", 1),
            ("-2", 1),
            ("1e9", 2),
            ("2 and a bit", 3),
            ("99999999999999999999", 1),
            ("4294967295 1/2", 1),
            ("1.2345678", 1),
            ("1/2000000", 1),
            ("2 ½ x", 5),
        ] {
            let error = read_fraction(text).unwrap_err();
            assert_eq!((error.text(), error.column()), (text, column), "{error}");
        }
    }

    #[test]
    fn a_comma_that_reads_two_ways_is_refused_with_both() {
        let error = read_fraction("2,300").unwrap_err();
        let ReadError::Ambiguous { thousands, decimal, .. } = error else { panic!("{error}") };
        assert_eq!((thousands.as_str(), decimal.as_str()), ("2300", "2.3"));
        let message = read_fraction("2,300").unwrap_err().to_string();
        let want = r#""2,300" at column 1 of "2,300" can mean 2300 or 2.3; hint: write the one you mean, 2300 or 2.3"#;
        assert_eq!(message, want);
    }
}
