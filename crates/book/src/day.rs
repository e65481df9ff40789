//! Dates as a household knows them: to the day, to the month, to the year.

use std::fmt;
use std::str::FromStr;

use jiff::civil::Date;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A date known to the day, the month or the year: `2026-09-12`, `2026-09`, `2026`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RoughDate {
    year: i16,
    month: Option<i8>,
    day: Option<i8>,
}

/// A text that is no date.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{text:?} is no date; hint: write 2026-09-12, or 2026-09, or 2026")]
pub struct RoughDateError {
    /// What was found.
    pub text: String,
}

impl RoughDate {
    /// A date known to the day.
    #[must_use]
    pub fn day(date: Date) -> Self {
        Self { year: date.year(), month: Some(date.month()), day: Some(date.day()) }
    }

    /// A year of which no more is known; `None` outside the years a calendar has.
    #[must_use]
    pub fn year(year: i16) -> Option<Self> {
        (0..=9999).contains(&year).then_some(Self { year, month: None, day: None })
    }

    /// The year.
    #[must_use]
    pub fn in_year(self) -> i16 {
        self.year
    }

    /// The earliest day it can be. What is eaten by age counts from here.
    #[must_use]
    pub fn earliest(self) -> Date {
        Date::new(self.year, self.month.unwrap_or(1), self.day.unwrap_or(1))
            .expect("year, month and day were a date when this was made")
    }
}

impl fmt::Display for RoughDate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}", self.year)?;
        self.month.map_or(Ok(()), |month| write!(f, "-{month:02}"))?;
        self.day.map_or(Ok(()), |day| write!(f, "-{day:02}"))
    }
}

impl FromStr for RoughDate {
    type Err = RoughDateError;

    fn from_str(text: &str) -> Result<Self, RoughDateError> {
        let read = || {
            let digits = |part: &str, length: usize| {
                (part.len() == length && part.bytes().all(|byte| byte.is_ascii_digit())).then_some(())
            };
            let mut parts = text.split('-');
            let year = parts.next()?;
            digits(year, 4)?;
            let mut rest = [None; 2];
            for slot in &mut rest {
                if let Some(part) = parts.next() {
                    digits(part, 2)?;
                    *slot = Some(part.parse().ok()?);
                }
            }
            let [month, day] = rest;
            let rough = Self { year: year.parse().ok()?, month, day };
            Date::new(rough.year, month.unwrap_or(1), day.unwrap_or(1)).ok()?;
            parts.next().is_none().then_some(rough)
        };
        read().ok_or_else(|| RoughDateError { text: text.to_owned() })
    }
}

impl Serialize for RoughDate {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for RoughDate {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = std::borrow::Cow::<'de, str>::deserialize(from)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_date_is_as_sharp_as_it_was_written() {
        for (text, earliest) in [
            ("2026-09-12", "2026-09-12"),
            ("2026-09", "2026-09-01"),
            ("2026", "2026-01-01"),
            ("0004", "0004-01-01"),
        ] {
            let date: RoughDate = text.parse().unwrap();
            assert_eq!(date.to_string(), text);
            assert_eq!(date.earliest(), earliest.parse().unwrap());
        }
    }

    #[test]
    fn no_date_is_made_up() {
        for text in
            ["", "26", "2026-13", "2026-02-30", "2026-9-1", "2026-09-12-01", "+026", "2026-", "last year"]
        {
            assert!(text.parse::<RoughDate>().is_err(), "{text}");
        }
    }
}
