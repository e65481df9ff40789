//! Moments as people say them: `21:30`, `yesterday 21:30`, `Saturday 7 am`, `2026-09-12 21:30`.

use jiff::civil::{Date, DateTime, Time, Weekday};
use measure::{Minutes, read_clock};

use super::error::AfterError;

/// Reads a moment that is past. A bare time is the last such time; a weekday the last such day, today among them.
pub(super) fn read_past(what: &'static str, typed: &str, now: DateTime) -> Result<DateTime, AfterError> {
    let unread = || AfterError::NoMoment { what, typed: typed.to_owned() };
    let words = typed.trim().to_lowercase().replace(',', " ");
    if words == "now" {
        return Ok(now);
    }
    let (first, rest) = part_date(&words);
    let moment = match read_date(first, now.date()) {
        Some(date) => date.to_datetime(read_time(rest).ok_or_else(unread)?),
        None => match read_weekday(&words) {
            Some((weekday, rest)) => {
                let time = read_time(rest).ok_or_else(unread)?;
                let today = now.date();
                let last = today.nth_weekday(-1, weekday).map_err(|_| unread())?;
                let is_today = today.weekday() == weekday && today.to_datetime(time) <= now;
                if is_today { today.to_datetime(time) } else { last.to_datetime(time) }
            }
            None => {
                let time = read_time(&words).ok_or_else(unread)?;
                let today = now.date().to_datetime(time);
                if today <= now {
                    today
                } else {
                    now.date().yesterday().map_err(|_| unread())?.to_datetime(time)
                }
            }
        },
    };
    if moment > now {
        let (moment, now) = (write_moment(moment), write_moment(now));
        return Err(AfterError::StillToCome { what, moment, now });
    }
    Ok(moment)
}

/// Reads a moment that is past, or a day alone, which counts from its first minute: the stricter reading.
pub(super) fn read_past_day(
    what: &'static str,
    typed: &str,
    now: DateTime,
) -> Result<(DateTime, bool), AfterError> {
    let words = typed.trim().to_lowercase();
    let date = read_date(&words, now.date()).or_else(|| {
        let (weekday, rest) = read_weekday(&words)?;
        let today = now.date();
        let last = || today.nth_weekday(-1, weekday).ok();
        if !rest.is_empty() {
            None
        } else if today.weekday() == weekday {
            Some(today)
        } else {
            last()
        }
    });
    match date {
        Some(date) if date > now.date() => {
            let (moment, now) = (write_day(date), write_moment(now));
            Err(AfterError::StillToCome { what, moment, now })
        }
        Some(date) => Ok((date.to_datetime(Time::midnight()), true)),
        None => read_past(what, typed, now).map(|moment| (moment, false)),
    }
}

/// The length of `2026-09-12`.
const DATE_LENGTH: usize = 10;

/// The first word, and what follows it; a written date may be joined to its time by a `t`.
fn part_date(words: &str) -> (&str, &str) {
    match words.split_at_checked(DATE_LENGTH) {
        Some((date, rest)) if date.parse::<Date>().is_ok() => (date, rest.trim_start_matches(['t', ' '])),
        _ => words.split_once(' ').unwrap_or((words, "")),
    }
}

fn read_date(word: &str, today: Date) -> Option<Date> {
    match word {
        "today" => Some(today),
        "yesterday" => today.yesterday().ok(),
        _ => Some(word).filter(|word| word.len() == DATE_LENGTH)?.parse::<Date>().ok(),
    }
}

/// A weekday at the start of the words, and what follows it.
fn read_weekday(words: &str) -> Option<(Weekday, &str)> {
    const DAYS: [(&str, Weekday); 7] = [
        ("monday", Weekday::Monday),
        ("tuesday", Weekday::Tuesday),
        ("wednesday", Weekday::Wednesday),
        ("thursday", Weekday::Thursday),
        ("friday", Weekday::Friday),
        ("saturday", Weekday::Saturday),
        ("sunday", Weekday::Sunday),
    ];
    let (first, rest) = words.split_once(' ').unwrap_or((words, ""));
    let named = |name: &str| name == first || (first.len() == 3 && name.starts_with(first));
    DAYS.iter().find(|(name, _)| named(name)).map(|(_, day)| (*day, rest.trim()))
}

fn read_time(words: &str) -> Option<Time> {
    let Minutes(minutes) = read_clock(words.trim().trim_start_matches("at ")).ok()?;
    // Never fails: a time of day has at most 23 hours and 59 minutes, and both fit a byte.
    Time::new((minutes / 60) as i8, (minutes % 60) as i8, 0, 0).ok()
}

/// Some minutes later; the end of the calendar where it would be passed.
pub(super) fn later(moment: DateTime, by: Minutes) -> DateTime {
    moment.saturating_add(jiff::Span::new().minutes(i64::from(by.0)))
}

/// The whole minutes from one moment to a later one; none the other way round.
pub(super) fn minutes_between(from: DateTime, to: DateTime) -> Minutes {
    let minutes = to.duration_since(from).as_mins();
    Minutes(u32::try_from(minutes).unwrap_or(if minutes < 0 { 0 } else { u32::MAX }))
}

/// A moment as people read it: `Sat 12 Sep, 21:30`.
#[must_use]
pub fn write_moment(moment: DateTime) -> String {
    format!("{}, {:02}:{:02}", write_day(moment.date()), moment.hour(), moment.minute())
}

/// A day as people read it: `Sat 12 Sep`.
pub(super) fn write_day(date: Date) -> String {
    const MONTHS: [&str; 12] =
        ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    let weekday = match date.weekday() {
        Weekday::Monday => "Mon",
        Weekday::Tuesday => "Tue",
        Weekday::Wednesday => "Wed",
        Weekday::Thursday => "Thu",
        Weekday::Friday => "Fri",
        Weekday::Saturday => "Sat",
        Weekday::Sunday => "Sun",
    };
    // Never fails: months run from 1 to 12.
    format!("{weekday} {} {}", date.day(), MONTHS[date.month() as usize - 1])
}

/// A moment in JSON: `2026-09-12T21:30`.
pub(super) fn as_json(moment: DateTime) -> String {
    format!("{}T{:02}:{:02}", moment.date(), moment.hour(), moment.minute())
}

/// Writes a moment for serde.
pub(super) fn serialize<S: serde::Serializer>(moment: &DateTime, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(&as_json(*moment))
}

/// Writes a moment that may be missing for serde.
pub(super) fn serialize_option<S: serde::Serializer>(
    moment: &Option<DateTime>,
    to: S,
) -> Result<S::Ok, S::Error> {
    match moment {
        Some(moment) => serialize(moment, to),
        None => to.serialize_none(),
    }
}

#[cfg(test)]
mod tests {
    use jiff::civil::date;

    use super::*;

    /// Saturday evening.
    fn now() -> DateTime {
        date(2026, 9, 12).at(23, 10, 0, 0)
    }

    #[test]
    fn moments_are_read_as_people_say_them() {
        for (typed, want) in [
            ("21:30", "2026-09-12T21:30"),
            ("23:40", "2026-09-11T23:40"),
            ("9:30 pm", "2026-09-12T21:30"),
            ("yesterday 21:30", "2026-09-11T21:30"),
            ("today at 7:05", "2026-09-12T07:05"),
            ("Friday 7 am", "2026-09-11T07:00"),
            ("sat 22:00", "2026-09-12T22:00"),
            ("Sat 23:50", "2026-09-05T23:50"),
            ("2026-09-10 06:00", "2026-09-10T06:00"),
            ("2026-09-10T06:00", "2026-09-10T06:00"),
            ("now", "2026-09-12T23:10"),
        ] {
            assert_eq!(read_past("time", typed, now()).map(as_json).as_deref(), Ok(want), "{typed}");
        }
        for typed in ["", "later", "9", "25:00", "2026-13-01 07:00", "Blursday 7:00"] {
            assert!(matches!(read_past("time", typed, now()), Err(AfterError::NoMoment { .. })), "{typed}");
        }
        let coming = read_past("time", "2026-09-13 07:00", now());
        assert!(matches!(coming, Err(AfterError::StillToCome { .. })), "{coming:?}");
    }

    #[test]
    fn a_day_alone_counts_from_its_first_minute() {
        let (moment, whole_day) = read_past_day("day", "Thursday", now()).unwrap();
        assert_eq!((as_json(moment).as_str(), whole_day), ("2026-09-10T00:00", true));
        let (moment, whole_day) = read_past_day("day", "2026-09-10 18:00", now()).unwrap();
        assert_eq!((as_json(moment).as_str(), whole_day), ("2026-09-10T18:00", false));
    }

    #[test]
    fn moments_are_written_with_their_day() {
        assert_eq!(write_moment(now()), "Sat 12 Sep, 23:10");
        assert_eq!(write_moment(later(now(), Minutes(60))), "Sun 13 Sep, 00:10");
        assert_eq!(minutes_between(now(), later(now(), Minutes(90))), Minutes(90));
    }
}
