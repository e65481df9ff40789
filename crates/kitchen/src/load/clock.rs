//! Moments on the clock of a house: a date and a minute, right across midnight and on the nights when the clocks
//! are set.
//!
//! A person reports what the clock on the wall showed. On the night when the clocks go back it shows an hour twice,
//! and nobody can say which one was meant. Such a report is kept as both, and whoever counts from it takes the one
//! that is on the side of caution: the later one for the start of a process, the earlier one for a limit. What is
//! counted is the time that really passes.

use jiff::civil::{Date, DateTime, Time};
use jiff::tz::{AmbiguousOffset, TimeZone};
use jiff::{SignedDuration, ZonedDateTime};
use measure::{Minutes, write_clock};
use serde::{Serialize, Serializer};

use crate::tell::date_in_words;

/// A moment, to the minute, on the clock of one house.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    at: ZonedDateTime,
}

impl Moment {
    /// The minute that has begun or, within it, the next one: a question is never taken to be asked earlier than
    /// it was.
    #[must_use]
    pub fn of_now(now: &ZonedDateTime) -> Self {
        let into = i64::from(now.second());
        let more = if into == 0 && now.subsec_nanosecond() == 0 { 0 } else { 60 - into };
        let whole = now.saturating_add(SignedDuration::from_secs(more));
        let trimmed = SignedDuration::from_nanos(i64::from(whole.subsec_nanosecond()));
        Self { at: whole.saturating_sub(trimmed) }
    }

    /// So many minutes later, as time passes.
    #[must_use]
    pub fn plus(&self, minutes: Minutes) -> Self {
        Self { at: self.at.saturating_add(SignedDuration::from_mins(i64::from(minutes.0))) }
    }

    /// The minutes from here to a later moment; none for one that is earlier.
    #[must_use]
    pub fn minutes_until(&self, later: &Self) -> Minutes {
        let passed = later.at.duration_since(&self.at).as_mins().max(0);
        // Never truncates a stretch that anyone asks about: the type holds eight thousand years of minutes.
        Minutes(u32::try_from(passed).unwrap_or(u32::MAX))
    }

    /// The date.
    #[must_use]
    pub fn date(&self) -> Date {
        self.at.date()
    }

    /// What the clock shows: `14:45`.
    #[must_use]
    pub fn clock(&self) -> String {
        write_clock(Minutes(minute_of_day(&self.at)))
    }

    /// The weekday and the date: `Saturday 12 September 2026`; and that it is the second time the clock shows this
    /// on the night when the clocks go back.
    #[must_use]
    pub fn day_in_words(&self) -> String {
        let day = date_in_words(self.at.date());
        if self.is_second_showing() {
            return format!("{day}, the second time the clock shows it, after it was set back");
        }
        day
    }

    /// Whether the clock showed the same an hour before.
    fn is_second_showing(&self) -> bool {
        let shown = self.at.time_zone().to_ambiguous_zoned_datetime(self.at.datetime());
        shown.is_ambiguous() && shown.earlier().is_ok_and(|earlier| earlier < self.at)
    }
}

impl Serialize for Moment {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(&self.at.strftime("%Y-%m-%dT%H:%M%:z"))
    }
}

/// What a person says the clock showed: one moment, or on one night of the year two.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    earliest: Moment,
    latest: Moment,
}

impl Report {
    /// A moment that nobody doubts.
    #[must_use]
    pub fn of(moment: Moment) -> Self {
        Self { earliest: moment.clone(), latest: moment }
    }

    /// What the clock showed on a date; `None` for a time that it leaps over on the night when it is set forward.
    #[must_use]
    pub(crate) fn on(zone: &TimeZone, date: Date, minute: Minutes) -> Option<Self> {
        let hour = i8::try_from(minute.0 / 60).ok()?;
        let shown = DateTime::from_parts(date, Time::new(hour, (minute.0 % 60) as i8, 0, 0).ok()?);
        let found = zone.to_ambiguous_zoned_datetime(shown);
        if matches!(found.offset(), AmbiguousOffset::Gap { .. }) {
            return None;
        }
        let earliest = Moment { at: found.clone().earlier().ok()? };
        let latest = Moment { at: found.later().ok()? };
        Some(Self { earliest, latest })
    }

    /// The earliest it can have been.
    #[must_use]
    pub fn earliest(&self) -> &Moment {
        &self.earliest
    }

    /// The latest it can have been.
    #[must_use]
    pub fn latest(&self) -> &Moment {
        &self.latest
    }
}

impl Serialize for Report {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        self.earliest.serialize(to)
    }
}

fn minute_of_day(at: &ZonedDateTime) -> u32 {
    // Never negative: hours run from 0 to 23 and minutes from 0 to 59.
    u32::from(at.hour().unsigned_abs()) * 60 + u32::from(at.minute().unsigned_abs())
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    /// The rule of the eastern United States, as POSIX writes it: forward at 2:00 on the second Sunday of March,
    /// back at 2:00 on the first Sunday of November.
    fn eastern() -> TimeZone {
        TimeZone::posix("EST5EDT,M3.2.0,M11.1.0").expect("a rule as POSIX writes it")
    }

    fn shown(day: Date, hour: u32, minute: u32) -> Option<Report> {
        Report::on(&eastern(), day, Minutes(hour * 60 + minute))
    }

    #[test]
    fn minutes_run_on_across_midnight() {
        let late = shown(date(2026, 9, 12), 23, 50).unwrap();
        let end = late.latest().plus(Minutes(25));
        assert_eq!((end.clock().as_str(), end.date()), ("00:15", date(2026, 9, 13)));
        assert_eq!(late.latest().minutes_until(&end), Minutes(25));
        assert_eq!(end.minutes_until(late.latest()), Minutes(0));
    }

    #[test]
    fn a_clock_set_forward_leaps_over_an_hour_and_no_time_is_lost() {
        let night = date(2026, 3, 8);
        assert_eq!(shown(night, 2, 30), None);
        let end = shown(night, 1, 50).unwrap().latest().plus(Minutes(25));
        assert_eq!(end.clock(), "03:15");
    }

    #[test]
    fn a_clock_set_back_shows_an_hour_twice_and_the_later_one_is_named() {
        let night = date(2026, 11, 1);
        let begun = shown(night, 1, 10).unwrap();
        assert_eq!(begun.earliest().minutes_until(begun.latest()), Minutes(60));
        assert!(!begun.earliest().day_in_words().contains("second"));
        assert!(begun.latest().day_in_words().contains("the second time the clock shows it"));
        let end = shown(night, 0, 50).unwrap().latest().plus(Minutes(80));
        assert_eq!(end.clock(), "01:10");
        assert!(end.day_in_words().contains("the second time"));
    }

    #[test]
    fn now_is_never_taken_too_early() {
        let zone = eastern();
        let half = date(2026, 9, 12).at(13, 41, 30, 5).to_zoned_datetime(zone.clone()).unwrap();
        assert_eq!(Moment::of_now(&half).clock(), "13:42");
        let sharp = date(2026, 9, 12).at(13, 41, 0, 0).to_zoned_datetime(zone).unwrap();
        assert_eq!(Moment::of_now(&sharp).clock(), "13:41");
    }

    #[test]
    fn a_moment_is_written_with_its_offset() {
        let report = shown(date(2026, 9, 12), 13, 42).unwrap();
        assert_eq!(serde_json::to_string(&report).unwrap(), "\"2026-09-12T13:42-04:00\"");
    }
}
