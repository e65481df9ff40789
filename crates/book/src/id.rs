//! Names of entries and of what they began: a basket, a batch, a lot is called by the entry that opened it.

use std::fmt;
use std::str::FromStr;

use jiff::Timestamp;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use uuid::{Builder, Uuid};

/// The name of an entry: a UUID of version 7 (RFC 9562), made where the entry was made.
///
/// Ids made by one device grow with its clock, so that a journal is written near its end. Nothing is ever
/// concluded from the time inside an id: clocks are set back.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(Uuid);

/// A text that is no name of an entry.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "{text:?} is no id of an entry; hint: an id looks like 01990a3c-5f7e-7b21-8c4d-2e6f10a3b5c7, \
     with small letters"
)]
pub struct IdError {
    /// What was found.
    pub text: String,
}

impl Id {
    /// Makes the id of an entry made at `now`, from ten bytes of chance.
    ///
    /// # Examples
    ///
    /// ```
    /// use book::Id;
    ///
    /// let id = Id::make("2022-02-22T19:22:22Z".parse().unwrap(), [7; 10]);
    /// assert!(id.to_string().starts_with("017f22e2-79b0-7"));
    /// ```
    #[must_use]
    pub fn make(now: Timestamp, chance: [u8; 10]) -> Self {
        // A clock before 1970 has no place in a UUID; such ids begin at zero and stay unique by chance.
        let millis = u64::try_from(now.as_millisecond()).unwrap_or(0);
        Self(Builder::from_unix_timestamp_millis(millis, &chance).into_uuid())
    }

    /// The sixteen bytes.
    #[must_use]
    pub fn as_bytes(&self) -> &[u8; 16] {
        self.0.as_bytes()
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.as_hyphenated().fmt(f)
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Id {
    type Err = IdError;

    /// Reads the one way an id is written: hyphens, small letters. Two spellings of one id would be two texts of
    /// one entry, and the chain is made over texts.
    fn from_str(text: &str) -> Result<Self, IdError> {
        let fault = || IdError { text: text.to_owned() };
        let id = Self(Uuid::try_parse(text).map_err(|_| fault())?);
        let mut buffer = Uuid::encode_buffer();
        if id.0.as_hyphenated().encode_lower(&mut buffer) == text { Ok(id) } else { Err(fault()) }
    }
}

impl Serialize for Id {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        if to.is_human_readable() { to.collect_str(self) } else { self.as_bytes().serialize(to) }
    }
}

impl<'de> Deserialize<'de> for Id {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        if from.is_human_readable() {
            let text = std::borrow::Cow::<'de, str>::deserialize(from)?;
            text.parse().map_err(serde::de::Error::custom)
        } else {
            <[u8; 16]>::deserialize(from).map(|bytes| Self(Uuid::from_bytes(bytes)))
        }
    }
}

/// The name of a thing of the house: a person, a bowl, a canner, a shelf. Short, chosen by the household, kept for good.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ItemId(Box<str>);

impl ItemId {
    /// The text of the name.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl From<&str> for ItemId {
    fn from(text: &str) -> Self {
        Self(text.into())
    }
}

impl AsRef<str> for ItemId {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl std::borrow::Borrow<str> for ItemId {
    fn borrow(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ItemId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Timestamp {
        text.parse().unwrap()
    }

    /// Source: RFC 9562 (2024), appendix A.6, example of a UUIDv7 value.
    #[test]
    fn the_example_of_the_standard_comes_out() {
        // rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F; version and variant bits are overwritten.
        let chance = [0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
        let id = Id::make(at("2022-02-22T14:22:22-05:00"), chance);
        assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    }

    #[test]
    fn ids_of_one_clock_grow() {
        let early = Id::make(at("2026-09-12T18:03:00Z"), [0xff; 10]);
        let late = Id::make(at("2026-09-12T18:03:00.001Z"), [0; 10]);
        assert!(early < late);
    }

    #[test]
    fn a_clock_before_1970_still_makes_an_id() {
        let id = Id::make(at("1969-12-31T23:00:00Z"), [9; 10]);
        assert_eq!(id.to_string().parse::<Id>().unwrap(), id);
    }

    #[test]
    fn an_id_has_one_spelling() {
        let id = Id::make(at("2026-09-12T18:03:00Z"), [0xab; 10]);
        let text = id.to_string();
        assert_eq!(text.parse::<Id>().unwrap(), id);
        for other in [text.to_uppercase(), text.replace('-', ""), format!("{{{text}}}"), String::new()] {
            assert!(other.parse::<Id>().is_err(), "{other}");
        }
    }
}
