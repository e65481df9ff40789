//! Reading spans of time and times of day.

use super::cursor::Cursor;
use super::error::{Expected, ReadError};
use super::number::{Marks, take_number};
use super::sum::{Unit, take_sum};
use crate::quantity::Minutes;

/// Minutes in a day.
const DAY: u32 = 24 * 60;

/// Reads a span of time in whole minutes: `35 min`, `1 h 20 min`, `1:20` (hours and minutes), `12 hours`,
/// `half an hour`, `2 days`, `6 weeks`.
///
/// # Errors
///
/// When there is no number or no unit (a bare `20` may be minutes or hours), when it is no whole number of
/// minutes, or when it is longer than ten years.
///
/// # Examples
///
/// ```
/// use measure::{Minutes, read_minutes};
///
/// assert_eq!(read_minutes("1 h 20 min").unwrap(), Minutes(80));
/// assert_eq!(read_minutes("1:20").unwrap(), Minutes(80));
/// assert_eq!(read_minutes("1 1/2 hours").unwrap(), Minutes(90));
/// ```
pub fn read_minutes(text: &str) -> Result<Minutes, ReadError> {
    /// Ten years of 365 days.
    const LIMIT: f64 = 10.0 * 365.0 * 24.0 * 60.0;
    let mut cursor = Cursor::new(text, Expected::Minutes)?;
    let column = cursor.column();
    if let Some((hours, minutes)) = take_hours_and_minutes(&mut cursor)? {
        cursor.finish()?;
        // Never overflows: `take_hours_and_minutes` reads at most four digits of hours.
        return Ok(Minutes(hours * 60 + minutes));
    }
    let total = take_sum(&mut cursor, find_time_unit, LIMIT, "10 years")?;
    let whole = libm::round(total);
    // A third of an hour is twenty minutes even though a third has no exact binary form.
    if (total - whole).abs() > 1e-6 {
        return Err(cursor.out_of_range(column, "time is kept in whole minutes"));
    }
    // Never overflows: between 0 and the limit of ten years.
    Ok(Minutes(whole as u32))
}

/// Reads a time of day as minutes since midnight: `13:30`, `1:30 pm`, `9 am`, `noon`.
///
/// Without am or pm the hours run to 24: `1:30` is half past one at night.
///
/// # Errors
///
/// When it is no time of day; a bare `9` may be morning or evening and is refused.
///
/// # Examples
///
/// ```
/// use measure::{Minutes, read_clock};
///
/// assert_eq!(read_clock("13:30").unwrap(), Minutes(13 * 60 + 30));
/// assert_eq!(read_clock("1:30 pm").unwrap(), Minutes(13 * 60 + 30));
/// assert_eq!(read_clock("12 am").unwrap(), Minutes(0));
/// ```
pub fn read_clock(text: &str) -> Result<Minutes, ReadError> {
    let mut cursor = Cursor::new(text, Expected::Clock)?;
    if let Some(named) = cursor.take_known(|word| match word {
        "noon" | "midday" => Some(DAY / 2),
        "midnight" => Some(0),
        _ => None,
    }) {
        cursor.finish()?;
        return Ok(Minutes(named));
    }
    let column = cursor.column();
    let (hours, minutes, bare) = match take_hours_and_minutes(&mut cursor)? {
        Some((hours, minutes)) => (hours, minutes, false),
        None => (take_bare_hour(&mut cursor)?, 0, true),
    };
    let half = cursor.take_known(|word| match word {
        "am" | "a m" => Some(0),
        "pm" | "p m" => Some(DAY / 2),
        _ => None,
    });
    if half.is_none() && bare {
        // The same fault as a missing unit: nothing says which nine o'clock.
        cursor.take_unit(|_| None::<()>)?;
    }
    cursor.finish()?;
    match half {
        Some(_) if !(1..=12).contains(&hours) => {
            Err(cursor.out_of_range(column, "with am or pm the hours run from 1 to 12"))
        }
        Some(noon) => Ok(Minutes(hours % 12 * 60 + minutes + noon)),
        None if hours > 23 => Err(cursor.out_of_range(column, "the last minute of a day is 23:59")),
        None => Ok(Minutes(hours * 60 + minutes)),
    }
}

/// `1:20` as hours and minutes; stays when there is no colon.
fn take_hours_and_minutes(cursor: &mut Cursor<'_>) -> Result<Option<(u32, u32)>, ReadError> {
    let (start, column) = (cursor.place(), cursor.column());
    let hours = cursor.take_while(|c| c.is_ascii_digit());
    if hours.is_empty() || cursor.take(|c| c == ':').is_none() {
        cursor.go_back_to(start);
        return Ok(None);
    }
    if hours.len() > 4 {
        return Err(cursor.too_large(column, "9,999 hours"));
    }
    let minutes_column = cursor.column();
    let digits = cursor.take_while(|c| c.is_ascii_digit());
    let hours = hours.parse().map_err(|_| cursor.unreadable_at(column))?;
    match digits.parse() {
        Ok(minutes) if digits.len() == 2 && minutes < 60 => Ok(Some((hours, minutes))),
        Ok(_) if digits.len() == 2 => Err(cursor.out_of_range(minutes_column, "an hour has 60 minutes")),
        _ => Err(cursor.unreadable_at(minutes_column)),
    }
}

/// An hour without minutes, as in `9 am`.
fn take_bare_hour(cursor: &mut Cursor<'_>) -> Result<u32, ReadError> {
    let number = take_number(cursor)?;
    let column = number.column();
    let hour = number.resolve(Marks::Parts, cursor)?;
    match u32::try_from(hour.numerator()) {
        Ok(hour_number) if hour.is_whole() => Ok(hour_number),
        _ => Err(cursor.unreadable_at(column)),
    }
}

/// Units of time in minutes.
fn find_time_unit(word: &str) -> Option<Unit<f64>> {
    let minutes = match word {
        "s" | "sec" | "secs" | "second" | "seconds" => 1.0 / 60.0,
        "m" | "min" | "mins" | "minute" | "minutes" => return Some(Unit::counted_whole(1.0)),
        "h" | "H" | "hr" | "hrs" | "hour" | "hours" => 60.0,
        "d" | "day" | "days" => f64::from(DAY),
        "w" | "wk" | "wks" | "week" | "weeks" => f64::from(7 * DAY),
        _ => return None,
    };
    Some(Unit::in_parts(minutes))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spans_are_read_in_whole_minutes() {
        for (text, want) in [
            ("35 min", 35),
            ("35min.", 35),
            ("1 h 20 min", 80),
            ("1h20m", 80),
            ("1 hour and 20 minutes", 80),
            ("1:20", 80),
            ("0:05", 5),
            ("1/3 hour", 20),
            ("half an hour", 30),
            ("an hour", 60),
            ("an hour and a half", 90),
            ("1.5 h", 90),
            ("12 hours", 720),
            ("2 days", 2880),
            ("2 days 4 h", 3120),
            ("6 weeks", 60_480),
            ("120 sec", 2),
            ("0 min", 0),
        ] {
            assert_eq!(read_minutes(text), Ok(Minutes(want)), "{text:?}");
        }
    }

    #[test]
    fn a_span_that_cannot_be_read_names_its_column() {
        for (text, column) in [
            ("20", 3),
            ("1:75", 3),
            ("1:5", 3),
            ("2.5 min", 1),
            ("30 sec", 1),
            ("20 min 1 h", 8),
            ("99999:00", 1),
            ("11 years", 4),
            ("600 weeks", 1),
            ("-5 min", 1),
            ("1:20 min", 6),
        ] {
            let error = read_minutes(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }

    #[test]
    fn times_of_day_are_read_on_both_clocks() {
        for (text, hour, minute) in [
            ("13:30", 13, 30),
            ("1:30 pm", 13, 30),
            ("1:30PM", 13, 30),
            ("1:30 p.m.", 13, 30),
            ("9 am", 9, 0),
            ("9am", 9, 0),
            ("09:05", 9, 5),
            ("1:30", 1, 30),
            ("12 am", 0, 0),
            ("12 pm", 12, 0),
            ("12:15 am", 0, 15),
            ("noon", 12, 0),
            ("Midnight", 0, 0),
            ("0:00", 0, 0),
            ("23:59", 23, 59),
        ] {
            assert_eq!(read_clock(text), Ok(Minutes(hour * 60 + minute)), "{text:?}");
        }
    }

    #[test]
    fn what_is_no_time_of_day_is_refused() {
        for (text, column) in [
            ("9", 2),
            ("24:00", 1),
            ("25:00", 1),
            ("13 pm", 1),
            ("0 am", 1),
            ("9:60", 3),
            ("9 ish", 3),
            ("1/2 am", 1),
            ("soon", 1),
        ] {
            let error = read_clock(text).unwrap_err();
            assert_eq!(error.column(), column, "{text:?}: {error}");
        }
    }
}
