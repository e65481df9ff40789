//! Reading when something happened: `13:42`, `1:42 pm`, `2026-09-12 13:42`.
//!
//! A bare time is the last time the clock showed it when nothing came before it, and else the first time it showed
//! it after that. One that would lie most of a day later is taken for a slip of the pen, and asked for with its date.

use jiff::civil::Date;
use jiff::tz::TimeZone;
use measure::{Minutes, read_clock};

use super::clock::{Moment, Report};
use super::error::LoadError;

/// A bare time further than this behind the one before it is asked for with its date.
const FURTHEST_BARE: Minutes = Minutes(18 * 60);

/// A time as a person gives it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct When {
    date: Option<Date>,
    minute: Minutes,
}

/// Where reports are placed: the clock of the house, and when the question is asked.
#[derive(Debug, Clone)]
pub(super) struct Placing {
    pub(super) zone: TimeZone,
    pub(super) now: Moment,
}

impl Placing {
    /// The moment that a person reports, not before `after`.
    pub(super) fn place(
        &self,
        what: &'static str,
        typed: &str,
        after: Option<(&'static str, &Report)>,
    ) -> Result<Report, LoadError> {
        let when = read_when(what, typed)?;
        let Some(date) = when.date else {
            return match after {
                None => self.last_shown(what, typed, when.minute),
                Some((before, report)) => self.next_shown(what, typed, when.minute, before, report),
            };
        };
        let report = self.shown_on(what, typed, date, when.minute)?;
        match after {
            Some((before, earlier)) if report.latest() < earlier.earliest() => {
                Err(LoadError::OutOfOrder { what, typed: typed.to_owned(), before })
            }
            _ => Ok(report),
        }
    }

    fn last_shown(&self, what: &'static str, typed: &str, minute: Minutes) -> Result<Report, LoadError> {
        let today = self.now.date();
        let report = self.shown_on(what, typed, today, minute)?;
        match today.yesterday() {
            Ok(yesterday) if *report.earliest() > self.now => self.shown_on(what, typed, yesterday, minute),
            _ => Ok(report),
        }
    }

    fn next_shown(
        &self,
        what: &'static str,
        typed: &str,
        minute: Minutes,
        before: &'static str,
        after: &Report,
    ) -> Result<Report, LoadError> {
        let same_day = after.earliest().date();
        let mut report = self.shown_on(what, typed, same_day, minute)?;
        if report.latest() < after.earliest() {
            let next_day = same_day.tomorrow().map_err(|_| unreadable_date(what, typed))?;
            report = self.shown_on(what, typed, next_day, minute)?;
        }
        if after.latest().minutes_until(report.latest()) > FURTHEST_BARE {
            return Err(LoadError::TooFarBehind { what, typed: typed.to_owned(), before });
        }
        Ok(report)
    }

    fn shown_on(
        &self,
        what: &'static str,
        typed: &str,
        date: Date,
        minute: Minutes,
    ) -> Result<Report, LoadError> {
        Report::on(&self.zone, date, minute).ok_or_else(|| LoadError::NotShown {
            what,
            typed: typed.to_owned(),
            date,
        })
    }
}

fn read_when(what: &'static str, typed: &str) -> Result<When, LoadError> {
    let text = typed.trim();
    let is_dated = text.as_bytes().get(4) == Some(&b'-');
    let (date, clock) = if is_dated {
        let (date, clock) = text
            .split_once(['T', ' '])
            .ok_or_else(|| LoadError::TimeMissing { what, typed: typed.to_owned() })?;
        (Some(date.parse::<Date>().map_err(|_| unreadable_date(what, typed))?), clock.trim())
    } else {
        (None, text)
    };
    let minute =
        read_clock(clock).map_err(|problem| LoadError::Unreadable { what, problem: Box::new(problem) })?;
    Ok(When { date, minute })
}

fn unreadable_date(what: &'static str, typed: &str) -> LoadError {
    LoadError::UnreadableDate { what, typed: typed.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    fn placing(hour: i8, minute: i8) -> Placing {
        let zone = TimeZone::posix("EST5EDT,M3.2.0,M11.1.0").expect("a rule as POSIX writes it");
        let now = date(2026, 9, 12).at(hour, minute, 0, 0).to_zoned_datetime(zone.clone()).unwrap();
        Placing { zone, now: Moment::of_now(&now) }
    }

    fn said(report: &Report) -> String {
        format!("{} {}", report.latest().date(), report.latest().clock())
    }

    #[test]
    fn a_bare_time_is_the_last_time_the_clock_showed_it() {
        let at = |hour, minute, typed| said(&placing(hour, minute).place("begun", typed, None).unwrap());
        assert_eq!(at(14, 25, "13:42"), "2026-09-12 13:42");
        assert_eq!(at(14, 25, "1:42 pm"), "2026-09-12 13:42");
        assert_eq!(at(0, 30, "23:10"), "2026-09-11 23:10");
        assert_eq!(at(0, 30, "2026-09-12 23:10"), "2026-09-12 23:10");
        assert_eq!(at(0, 30, "2026-09-12T23:10"), "2026-09-12 23:10");
    }

    #[test]
    fn a_bare_time_after_another_is_the_next_time_the_clock_shows_it() {
        let placing = placing(1, 0);
        let lost = placing.place("lost", "23:55", None).unwrap();
        let back = placing.place("back", "0:20", Some(("lost", &lost))).unwrap();
        assert_eq!(said(&back), "2026-09-12 00:20");
    }

    #[test]
    fn a_slip_of_the_pen_is_asked_for_with_its_date() {
        let placing = placing(15, 0);
        let lost = placing.place("lost", "13:55", None).unwrap();
        let wrong = placing.place("back", "13:20", Some(("lost", &lost))).unwrap_err();
        assert!(matches!(wrong, LoadError::TooFarBehind { .. }), "{wrong}");
        let wrong = placing.place("back", "2026-09-12 13:20", Some(("lost", &lost))).unwrap_err();
        assert!(matches!(wrong, LoadError::OutOfOrder { .. }), "{wrong}");
    }

    #[test]
    fn what_is_no_time_is_told_with_an_example() {
        for typed in ["", "noonish", "25:00", "2026-13-40 10:00", "2026-09-12", "9"] {
            let said = placing(15, 0).place("heat off", typed, None).unwrap_err().to_string();
            assert!(said.contains("heat off") && said.contains("hint: "), "{typed:?}: {said}");
        }
    }

    #[test]
    fn a_time_the_clock_leaps_over_is_no_time() {
        let wrong = placing(15, 0).place("back", "2026-03-08 2:30", None).unwrap_err();
        assert!(matches!(wrong, LoadError::NotShown { .. }), "{wrong}");
    }
}
