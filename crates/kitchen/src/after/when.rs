//! Moments as people say them: `21:30`, `yesterday 21:30`, `Saturday 7 am`, `2026-09-12 21:30`.

use jiff::civil::{Date, DateTime, Time, Weekday};
use jiff::{SignedDuration, Span, ZonedDateTime};
use measure::{Minutes, read_clock};
use serde::{Serialize, Serializer};

use super::error::AfterError;

/// A moment on the clock of a house, to the minute. What is counted is the time that passes, also on the night when
/// the clocks are set.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    at: ZonedDateTime,
}

impl Moment {
    /// The present, to the minute that begins next: a question is never taken to be asked earlier than it was.
    #[must_use]
    pub fn of_now(now: &ZonedDateTime) -> Self {
        let seconds = i64::from(now.second());
        let into = SignedDuration::new(seconds, now.subsec_nanosecond());
        let begun = now.saturating_sub(into);
        Self { at: if into.is_zero() { begun } else { begun.saturating_add(SignedDuration::from_mins(1)) } }
    }

    /// Some minutes later, as time passes; the end of the calendar where it would be passed.
    pub(super) fn plus(&self, by: Minutes) -> Self {
        Self { at: self.at.saturating_add(SignedDuration::from_mins(i64::from(by.0))) }
    }

    /// Some weeks or months of the calendar later.
    pub(super) fn plus_span(&self, span: Span) -> Self {
        Self { at: self.at.saturating_add(span) }
    }

    /// The whole minutes from here to a later moment; none the other way round.
    pub(super) fn minutes_until(&self, later: &Self) -> Minutes {
        let minutes = later.at.duration_since(&self.at).as_mins().max(0);
        Minutes(u32::try_from(minutes).unwrap_or(u32::MAX))
    }

    /// Where the clock of the same house showed this. Of two such moments, on the night when the clocks go back, the
    /// earlier: everything that is counted from it then ends sooner.
    fn first_showing(&self, shown: DateTime) -> Option<Self> {
        let at = self.at.time_zone().to_ambiguous_zoned_datetime(shown).earlier().ok()?;
        Some(Self { at })
    }

    /// The later of two moments at which the clock showed the same.
    fn last_showing(&self) -> Self {
        let shown = self.at.time_zone().to_ambiguous_zoned_datetime(self.at.datetime());
        Self { at: shown.later().unwrap_or_else(|_| self.at.clone()) }
    }

    fn date(&self) -> Date {
        self.at.date()
    }

    /// The day as people read it: `Sat 12 Sep`.
    #[must_use]
    pub fn day_in_words(&self) -> String {
        write_day(self.date())
    }

    /// The day with its year: `Sat 12 Sep 2026`.
    #[must_use]
    pub fn date_in_words(&self) -> String {
        format!("{} {}", self.day_in_words(), self.date().year())
    }

    /// The moment as people read it: `Sat 12 Sep, 21:30`.
    #[must_use]
    pub fn in_words(&self) -> String {
        format!("{}, {:02}:{:02}", self.day_in_words(), self.at.hour(), self.at.minute())
    }

    /// Whether the clock shows midnight.
    #[must_use]
    pub fn is_midnight(&self) -> bool {
        (self.at.hour(), self.at.minute()) == (0, 0)
    }

    /// The last day that ends no later: the day before, for a moment at midnight.
    #[must_use]
    pub fn last_day_in_words(&self) -> String {
        let date =
            if self.is_midnight() { self.date().yesterday().unwrap_or(self.date()) } else { self.date() };
        write_day(date)
    }
}

impl Serialize for Moment {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(&format_args!("{}T{:02}:{:02}", self.date(), self.at.hour(), self.at.minute()))
    }
}

/// Reads a moment that is past. A bare time is the last such time; a weekday the last such day, today among them.
pub(super) fn read_past(what: &'static str, typed: &str, now: &Moment) -> Result<Moment, AfterError> {
    let unread = || AfterError::NoMoment { what, typed: typed.to_owned() };
    let words = typed.trim().to_lowercase().replace(',', " ");
    if words == "now" {
        return Ok(now.clone());
    }
    let on = |date: Date, time: Time| now.first_showing(date.to_datetime(time));
    let (first, rest) = part_date(&words);
    let today = now.date();
    let moment = match (read_date(first, today), read_weekday(&words)) {
        (Some(date), _) => read_time(rest).and_then(|time| on(date, time)),
        (None, Some((weekday, rest))) => read_time(rest).and_then(|time| {
            let is_today = today.weekday() == weekday && on(today, time).is_some_and(|moment| moment <= *now);
            let date = if is_today { today } else { today.nth_weekday(-1, weekday).ok()? };
            on(date, time)
        }),
        (None, None) => read_time(&words).and_then(|time| {
            let is_today = on(today, time).is_some_and(|moment| moment <= *now);
            on(if is_today { today } else { today.yesterday().ok()? }, time)
        }),
    };
    let moment = moment.ok_or_else(unread)?;
    if moment > *now {
        let (moment, now) = (moment.in_words(), now.in_words());
        return Err(AfterError::StillToCome { what, moment, now });
    }
    Ok(moment)
}

/// The same for a moment at which something ended: of two showings of the clock the later.
pub(super) fn read_past_end(what: &'static str, typed: &str, now: &Moment) -> Result<Moment, AfterError> {
    let moment = read_past(what, typed, now)?;
    Ok(moment.last_showing().min(now.clone()).max(moment))
}

/// Reads a moment that is past, or a day alone, which counts from its first minute: the stricter reading.
pub(super) fn read_past_day(what: &'static str, typed: &str, now: &Moment) -> Result<Moment, AfterError> {
    let words = typed.trim().to_lowercase();
    let today = now.date();
    let date = read_date(&words, today).or_else(|| match read_weekday(&words)? {
        (weekday, "") if today.weekday() == weekday => Some(today),
        (weekday, "") => today.nth_weekday(-1, weekday).ok(),
        _ => None,
    });
    let Some(date) = date else { return read_past(what, typed, now) };
    if date > today {
        let (moment, now) = (write_day(date), now.in_words());
        return Err(AfterError::StillToCome { what, moment, now });
    }
    let unread = || AfterError::NoMoment { what, typed: typed.to_owned() };
    now.first_showing(date.to_datetime(Time::midnight())).ok_or_else(unread)
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

#[cfg(test)]
mod tests {
    use jiff::civil::date;
    use jiff::tz::TimeZone;

    use super::*;
    use crate::after::tests::{at, on_the_clock};

    /// Saturday evening.
    fn now() -> Moment {
        at("2026-09-12 23:10")
    }

    fn as_json(moment: &Moment) -> String {
        serde_json::to_value(moment).unwrap().as_str().unwrap().to_owned()
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
            let read = read_past("time", typed, &now()).map(|moment| as_json(&moment));
            assert_eq!(read.as_deref(), Ok(want), "{typed}");
        }
        for typed in ["", "later", "9", "25:00", "2026-13-01 07:00", "Blursday 7:00"] {
            assert!(matches!(read_past("time", typed, &now()), Err(AfterError::NoMoment { .. })), "{typed}");
        }
        let coming = read_past("time", "2026-09-13 07:00", &now());
        assert!(matches!(coming, Err(AfterError::StillToCome { .. })), "{coming:?}");
    }

    #[test]
    fn a_day_alone_counts_from_its_first_minute() {
        for (typed, want) in [
            ("Thursday", "2026-09-10T00:00"),
            ("Saturday", "2026-09-12T00:00"),
            ("2026-09-10", "2026-09-10T00:00"),
            ("2026-09-10 18:00", "2026-09-10T18:00"),
        ] {
            assert_eq!(as_json(&read_past_day("day", typed, &now()).unwrap()), want, "{typed}");
        }
    }

    #[test]
    fn moments_are_written_with_their_day() {
        assert_eq!(now().in_words(), "Sat 12 Sep, 23:10");
        assert_eq!(now().plus(Minutes(60)).in_words(), "Sun 13 Sep, 00:10");
        assert_eq!(now().minutes_until(&now().plus(Minutes(90))), Minutes(90));
        assert_eq!(at("2026-09-12 00:00").last_day_in_words(), "Fri 11 Sep");
    }

    #[test]
    fn the_present_is_never_taken_to_be_earlier() {
        let shown = date(2026, 9, 12).at(23, 10, 1, 5);
        let now = shown.to_zoned_datetime(TimeZone::UTC).unwrap();
        assert_eq!(as_json(&Moment::of_now(&now)), "2026-09-12T23:11");
    }

    /// Source: jiff's rules for a zone written in the POSIX way; in the United States clocks go back at 2 in the
    /// morning of the first Sunday of November, and forward on the second Sunday of March.
    #[test]
    fn on_the_night_when_clocks_are_set_the_time_that_passes_counts() {
        let now = on_the_clock("EST5EDT,M3.2.0,M11.1.0", "2026-11-01 07:00");
        let lost = read_past("time", "2026-10-31 23:00", &now).unwrap();
        assert_eq!(lost.minutes_until(&now), Minutes(9 * 60));
        let first = read_past("time", "01:30", &now).unwrap();
        assert_eq!(first.minutes_until(&now), Minutes(6 * 60 + 30));
        assert_eq!(read_past_end("time", "01:30", &now).unwrap().minutes_until(&now), Minutes(5 * 60 + 30));
        let spring = on_the_clock("EST5EDT,M3.2.0,M11.1.0", "2026-03-08 07:00");
        let lost = read_past("time", "yesterday 23:00", &spring).unwrap();
        assert_eq!(lost.minutes_until(&spring), Minutes(7 * 60));
    }
}
