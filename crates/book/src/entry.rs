//! The entry: one act, who did it, when it happened, when the book learned of it.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use crate::Id;
use crate::act::{Act, Unknown};
use crate::canonical::{CanonicalError, write_canonical};
use crate::moment::Moment;

/// The version of the envelope this program writes. An entry of a later one is kept and carried like an act of an
/// unknown kind.
pub const ENTRY_VERSION: i64 = 1;

/// The longest text of one entry, in bytes. A whole formula copied by hand takes a tenth.
pub const LONGEST_ENTRY: usize = 1024 * 1024;

/// One entry of the journal. Nothing ever changes it: what was wrong is said again by an entry that follows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Its name, made where it was entered. Sent twice, it is written once.
    pub id: Id,
    /// When the act happened, by the clock of the one who says so. In a correction: when the corrected act happened.
    pub happened_at: Moment,
    /// When a book first learned of it.
    pub arrived_at: Timestamp,
    /// Who did it.
    pub who: Box<str>,
    /// The telephone, the machine it was entered on.
    pub device: Box<str>,
    /// The first entry of the act it is part of, where an act took several.
    pub with: Option<Id>,
    /// The entry it corrects or strikes.
    pub follows: Option<Id>,
    /// Why it corrects or strikes.
    pub why: Option<Box<str>>,
    /// What was done.
    pub act: Act,
}

/// An entry with its canonical text: what stores keep, chains are made over, and files carry.
///
/// The text is kept beside the reading of it because a newer program may have written fields that this one does not
/// know; they are carried along.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    entry: Entry,
    text: Box<str>,
}

/// Why a text is no entry.
#[derive(Debug, thiserror::Error)]
pub enum EntryError {
    /// It is not JSON, or not the JSON of an entry.
    #[error("this is no entry: {problem}; hint: docs/formats/journal.md says what an entry holds")]
    NotAnEntry {
        /// What the reader met.
        problem: serde_json::Error,
    },
    /// It is too long.
    #[error(
        "the entry has {bytes} bytes, more than {LONGEST_ENTRY}; hint: keep long texts in a file beside the book"
    )]
    TooLong {
        /// How many.
        bytes: usize,
    },
    /// A known kind does not hold what it must.
    #[error("the act {kind:?} cannot be read: {problem}; hint: docs/formats/journal.md says what it holds")]
    BadAct {
        /// Its kind.
        kind: String,
        /// What the reader met.
        problem: serde_json::Error,
    },
    /// It has no canonical text.
    #[error(transparent)]
    NotCanonical(#[from] CanonicalError),
}

/// The envelope as JSON has it.
#[derive(Deserialize)]
struct Envelope<'a> {
    v: i64,
    id: Id,
    #[serde(borrow)]
    kind: std::borrow::Cow<'a, str>,
    happened_at: Moment,
    arrived_at: Timestamp,
    who: Box<str>,
    device: Box<str>,
    with: Option<Id>,
    follows: Option<Id>,
    why: Option<Box<str>>,
    #[serde(borrow)]
    body: &'a RawValue,
}

impl Written {
    /// Writes the text of an entry.
    ///
    /// # Errors
    ///
    /// If it holds a number that is not whole or too large, or is too long.
    pub fn of(entry: Entry) -> Result<Self, EntryError> {
        let text = write_canonical(&to_value(&entry)?)?;
        if text.len() > LONGEST_ENTRY {
            return Err(EntryError::TooLong { bytes: text.len() });
        }
        Ok(Self { entry, text: text.into() })
    }

    /// Reads a canonical text, as a store holds it. An act of a known kind that cannot be read is carried like one of an
    /// unknown kind: what is in the book stays in it.
    ///
    /// # Errors
    ///
    /// If it is no entry. That the text is the canonical one is not looked at here: the chain says whether it is the
    /// text that was written.
    pub fn read(text: &str) -> Result<Self, EntryError> {
        let entry = read_entry(text, |unread, _| Ok(Act::Unknown(unread)))?;
        Ok(Self { entry, text: text.into() })
    }

    /// Reads any JSON text of an entry, whatever its spacing and the order of its keys, and writes it canonically.
    ///
    /// # Errors
    ///
    /// If it is no entry, or has no canonical text.
    pub fn take(text: &str) -> Result<Self, EntryError> {
        if text.len() > LONGEST_ENTRY {
            return Err(EntryError::TooLong { bytes: text.len() });
        }
        let value: Value =
            serde_json::from_str(text).map_err(|problem| EntryError::NotAnEntry { problem })?;
        let text = write_canonical(&value)?;
        let entry = read_entry(&text, |unread, problem| {
            Err(EntryError::BadAct { kind: unread.kind.into_string(), problem })
        })?;
        Ok(Self { entry, text: text.into() })
    }

    /// The entry.
    #[must_use]
    pub fn entry(&self) -> &Entry {
        &self.entry
    }

    /// Its canonical text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The entry alone.
    #[must_use]
    pub fn into_entry(self) -> Entry {
        self.entry
    }

    /// Whether the other says the same, whenever it arrived: what is sent twice arrives twice.
    #[must_use]
    pub fn says_the_same(&self, other: &Self) -> bool {
        // Unknown fields are part of what is said, so the texts are compared, without the arrival.
        let without = |written: &Self| {
            let arrived = format!("\"arrived_at\":\"{}\",", written.entry.arrived_at);
            written.text.replacen(&arrived, "", 1)
        };
        without(self) == without(other)
    }
}

fn to_value(entry: &Entry) -> Result<Value, EntryError> {
    let bad = |problem| EntryError::BadAct { kind: entry.act.kind().to_owned(), problem };
    let mut fields = Map::new();
    let mut put = |key: &str, value: Value| {
        fields.insert(key.to_owned(), value);
    };
    put("v", ENTRY_VERSION.into());
    put("id", entry.id.to_string().into());
    put("kind", entry.act.kind().into());
    put("happened_at", entry.happened_at.to_string().into());
    put("arrived_at", entry.arrived_at.to_string().into());
    put("who", (*entry.who).into());
    put("device", (*entry.device).into());
    put("with", entry.with.map(|id| id.to_string()).into());
    put("follows", entry.follows.map(|id| id.to_string()).into());
    put("why", entry.why.as_deref().into());
    put("body", entry.act.to_value().map_err(bad)?);
    Ok(Value::Object(fields))
}

/// Reads an entry; what to do with a known kind whose body cannot be read is the caller's to say.
fn read_entry(
    text: &str,
    unreadable: impl FnOnce(Unknown, serde_json::Error) -> Result<Act, EntryError>,
) -> Result<Entry, EntryError> {
    let envelope: Envelope<'_> =
        serde_json::from_str(text).map_err(|problem| EntryError::NotAnEntry { problem })?;
    let kind = envelope.kind.as_ref();
    let body = envelope.body.get();
    let unknown = || Unknown { kind: kind.into(), json: body.into() };
    let act = match Act::read(kind, body) {
        _ if envelope.v > ENTRY_VERSION => Act::Unknown(unknown()),
        Some(Ok(act)) => act,
        Some(Err(problem)) => unreadable(unknown(), problem)?,
        None => Act::Unknown(unknown()),
    };
    Ok(Entry {
        id: envelope.id,
        happened_at: envelope.happened_at,
        arrived_at: envelope.arrived_at,
        who: envelope.who,
        device: envelope.device,
        with: envelope.with,
        follows: envelope.follows,
        why: envelope.why,
        act,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::act::Noted;
    use crate::testing::{id, moment};

    fn entry() -> Entry {
        Entry {
            id: id(1),
            happened_at: moment("2026-09-12T14:03:00-04:00[America/New_York]"),
            arrived_at: "2026-09-12T18:03:07Z".parse().unwrap(),
            who: "Wilma".into(),
            device: "telephone".into(),
            with: None,
            follows: None,
            why: None,
            act: Noted { about: None, words: "first frost; \"early\"".into() }.into(),
        }
    }

    #[test]
    fn an_entry_has_one_text() {
        let written = Written::of(entry()).unwrap();
        insta::assert_snapshot!(written.text(), @r#"{"arrived_at":"2026-09-12T18:03:07Z","body":{"words":"first frost; \"early\""},"device":"telephone","happened_at":"2026-09-12T14:03:00-04:00[America/New_York]","id":"00000000-0001-7000-8000-000000000000","kind":"noted","v":1,"who":"Wilma"}"#);
        assert_eq!(Written::read(written.text()).unwrap(), written);
    }

    #[test]
    fn spacing_and_order_of_keys_do_not_matter_when_it_is_taken() {
        let written = Written::of(entry()).unwrap();
        let value: Value = serde_json::from_str(written.text()).unwrap();
        let loose = serde_json::to_string_pretty(&value).unwrap();
        assert_eq!(Written::take(&loose).unwrap(), written);
    }

    #[test]
    fn an_act_of_the_future_is_carried_word_for_word() {
        let text = Written::of(entry()).unwrap().text().replace("\"noted\"", "\"moon-howled-at\"");
        let written = Written::take(&text).unwrap();
        assert_eq!(written.entry().act.kind(), "moon-howled-at");
        assert_eq!(written.text(), text);
        assert_eq!(Written::of(written.entry().clone()).unwrap().text(), text);
    }

    #[test]
    fn a_field_of_the_future_is_carried_in_the_text() {
        let text = Written::of(entry()).unwrap().text().replace("\"id\"", "\"hush\":[1],\"id\"");
        let written = Written::take(&text).unwrap();
        assert_eq!(written.text(), text);
        assert_eq!(written.entry(), &entry());
    }

    #[test]
    fn an_entry_of_a_later_version_is_not_read_as_if_it_were_ours() {
        let text = Written::of(entry()).unwrap().text().replace("\"v\":1", "\"v\":2");
        let written = Written::take(&text).unwrap();
        assert!(matches!(written.entry().act, Act::Unknown(_)));
        assert_eq!(written.text(), text);
    }

    #[test]
    fn what_is_sent_twice_says_the_same() {
        let first = Written::of(entry()).unwrap();
        let later = Entry { arrived_at: "2026-09-13T09:00:00Z".parse().unwrap(), ..entry() };
        assert!(first.says_the_same(&Written::of(later).unwrap()));
        let other = Entry { who: "Otto".into(), ..entry() };
        assert!(!first.says_the_same(&Written::of(other).unwrap()));
    }

    #[test]
    fn what_is_no_entry_says_why() {
        let good = Written::of(entry()).unwrap().text().to_owned();
        for (bad, words) in [
            ("{".to_owned(), "no entry"),
            (good.replace("\"who\"", "\"whom\""), "missing field `who`"),
            (good.replace("\"words\"", "\"word\""), "the act \"noted\" cannot be read"),
            (good.replace("\"v\":1", "\"v\":1.5"), "v is 1.5"),
            (good.replace("-0001-", "-000A-"), "no id of an entry"),
            (good.replace("first", &"x".repeat(LONGEST_ENTRY)), "more than 1048576"),
        ] {
            let error = Written::take(&bad).unwrap_err().to_string();
            assert!(error.contains(words), "{error}");
        }
    }
}
