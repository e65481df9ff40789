//! When an act happened: an instant, and the clock on the wall beside it.
//!
//! The offset is written down with the instant, so that a clock time of years ago reads the same after a country
//! has changed its rules. The zone's name is carried as text and never looked up here.

use std::fmt;
use std::str::FromStr;

use jiff::civil::{Date, DateTime};
use jiff::tz::Offset;
use jiff::{Timestamp, ZonedDateTime};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// An instant, the offset of the clock that showed it, and the name of the zone of that clock.
///
/// Written as RFC 9557 has it: `2026-09-12T14:03:00-04:00[America/New_York]`.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Moment {
    at: Timestamp,
    offset: Offset,
    zone: Box<str>,
}

/// A text that is no moment.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{text:?} is no moment; hint: write it as 2026-09-12T14:03:00-04:00[America/New_York]")]
pub struct MomentError {
    /// What was found.
    pub text: String,
}

impl Moment {
    /// A moment as a clock in a zone shows it.
    #[must_use]
    pub fn of(zoned: &ZonedDateTime) -> Self {
        let offset = zoned.offset();
        let zone = zoned.time_zone().iana_name().map_or_else(|| offset.to_string(), str::to_owned);
        // Offsets of the nineteenth century had seconds; the journal writes minutes.
        let offset = Offset::from_seconds(offset.seconds() / 60 * 60).unwrap_or(Offset::UTC);
        Self { at: zoned.timestamp(), offset, zone: zone.into() }
    }

    /// A moment by the clock of Greenwich.
    #[must_use]
    pub fn utc(at: Timestamp) -> Self {
        Self { at, offset: Offset::UTC, zone: "UTC".into() }
    }

    /// The instant.
    #[must_use]
    pub fn at(&self) -> Timestamp {
        self.at
    }

    /// The name of the zone.
    #[must_use]
    pub fn zone(&self) -> &str {
        &self.zone
    }

    /// What the clock on the wall showed.
    #[must_use]
    pub fn wall(&self) -> DateTime {
        self.offset.to_datetime(self.at)
    }

    /// The day on the wall.
    #[must_use]
    pub fn date(&self) -> Date {
        self.wall().date()
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let seconds = self.offset.seconds();
        let (sign, size) = (if seconds < 0 { '-' } else { '+' }, seconds.unsigned_abs() / 60);
        write!(f, "{}{sign}{:02}:{:02}[{}]", self.wall(), size / 60, size % 60, self.zone)
    }
}

impl FromStr for Moment {
    type Err = MomentError;

    /// Reads what [`fmt::Display`] writes, and nothing else.
    fn from_str(text: &str) -> Result<Self, MomentError> {
        let fault = || MomentError { text: text.to_owned() };
        let (instant, zone) = text.split_once('[').ok_or_else(fault)?;
        let zone = zone.strip_suffix(']').filter(|zone| is_zone(zone)).ok_or_else(fault)?;
        let offset = read_offset(instant).ok_or_else(fault)?;
        let at = instant.parse().map_err(|_| fault())?;
        let moment = Self { at, offset, zone: zone.into() };
        // One moment has one spelling: the chain is made over texts.
        if moment.to_string() == text { Ok(moment) } else { Err(fault()) }
    }
}

/// Whether it can be the name of a zone: `America/New_York`, `Etc/GMT+5`, `+05:30`.
fn is_zone(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"/_+-:.".contains(&byte))
}

/// The offset at the end: `-04:00`.
fn read_offset(instant: &str) -> Option<Offset> {
    let tail = instant.get(instant.len().checked_sub(6)?..)?;
    let size = tail.get(1..)?;
    let (hours, minutes) = size.split_once(':')?;
    let seconds = hours.parse::<i32>().ok()? * 3600 + minutes.parse::<i32>().ok()? * 60;
    let sign = match tail.as_bytes().first()? {
        b'+' => 1,
        b'-' => -1,
        _ => return None,
    };
    Offset::from_seconds(sign * seconds).ok()
}

impl Serialize for Moment {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        if to.is_human_readable() {
            return to.collect_str(self);
        }
        (self.at.as_second(), self.at.subsec_nanosecond(), self.offset.seconds(), &self.zone).serialize(to)
    }
}

impl<'de> Deserialize<'de> for Moment {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        use serde::de::Error;
        if from.is_human_readable() {
            let text = std::borrow::Cow::<'de, str>::deserialize(from)?;
            return text.parse().map_err(D::Error::custom);
        }
        let (second, nanosecond, offset, zone) = <(i64, i32, i32, Box<str>)>::deserialize(from)?;
        let at = Timestamp::new(second, nanosecond).map_err(D::Error::custom)?;
        let offset = Offset::from_seconds(offset).map_err(D::Error::custom)?;
        Ok(Self { at, offset, zone })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, at: &str, wall: &str) {
        let moment: Moment = text.parse().unwrap();
        assert_eq!(moment.to_string(), text);
        assert_eq!(moment.at(), at.parse().unwrap());
        assert_eq!(moment.wall(), wall.parse().unwrap());
    }

    #[test]
    fn a_moment_keeps_instant_and_wall_clock() {
        check("2026-09-12T14:03:00-04:00[America/New_York]", "2026-09-12T18:03:00Z", "2026-09-12T14:03:00");
        check("2026-09-12T23:33:00+05:30[Asia/Kolkata]", "2026-09-12T18:03:00Z", "2026-09-12T23:33:00");
        check("1970-01-01T00:00:00+00:00[UTC]", "1970-01-01T00:00:00Z", "1970-01-01T00:00:00");
        check("2026-09-12T14:03:00.25-04:00[-04:00]", "2026-09-12T18:03:00.25Z", "2026-09-12T14:03:00.25");
    }

    #[test]
    fn the_hour_that_comes_twice_stays_two_hours() {
        let first: Moment = "2026-11-01T01:30:00-04:00[America/New_York]".parse().unwrap();
        let second: Moment = "2026-11-01T01:30:00-05:00[America/New_York]".parse().unwrap();
        assert_eq!(first.wall(), second.wall());
        assert_eq!(second.at().as_second() - first.at().as_second(), 3600);
    }

    #[test]
    fn a_zone_nobody_knows_is_carried() {
        let text = "2026-09-12T14:03:00-04:00[Kitchen/Back_Porch]";
        assert_eq!(text.parse::<Moment>().unwrap().to_string(), text);
    }

    #[test]
    fn another_spelling_is_refused() {
        for text in [
            "",
            "2026-09-12T14:03:00-04:00",
            "2026-09-12T18:03:00Z[UTC]",
            "2026-09-12 14:03:00-04:00[America/New_York]",
            "2026-09-12T14:03:00.250-04:00[America/New_York]",
            "2026-09-12T14:03:00-04:00[]",
            "2026-09-12T14:03:00-04:00[a b]",
            "2026-13-12T14:03:00-04:00[America/New_York]",
            "2026-09-12T14:03:00-04:0é[America/New_York]",
        ] {
            assert!(text.parse::<Moment>().is_err(), "{text}");
        }
    }

    #[test]
    fn the_short_form_of_snapshots_is_the_same_moment() {
        let moment: Moment = "2026-11-01T01:30:00-04:00[America/New_York]".parse().unwrap();
        let bytes = postcard::to_allocvec(&moment).unwrap();
        assert_eq!(postcard::from_bytes::<Moment>(&bytes).unwrap(), moment);
    }
}
