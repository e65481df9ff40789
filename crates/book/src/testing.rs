//! Entries for the tests, short to write.

use crate::Id;
use crate::act::{Act, Noted, Struck};
use crate::entry::Entry;
use crate::moment::Moment;

/// The id of a number: grows with it.
pub(crate) fn id(number: u16) -> Id {
    format!("00000000-{number:04x}-7000-8000-000000000000").parse().unwrap()
}

pub(crate) fn moment(text: &str) -> Moment {
    text.parse().unwrap()
}

/// An act that happened so many minutes after midnight of a September day, and arrived a second later.
pub(crate) fn entry(number: u16, minute: i64, act: impl Into<Act>) -> Entry {
    let midnight: jiff::Timestamp = "2026-09-12T04:00:00Z".parse().unwrap();
    let at = midnight + jiff::SignedDuration::from_mins(minute);
    Entry {
        id: id(number),
        happened_at: Moment::utc(at),
        arrived_at: at + jiff::SignedDuration::from_secs(1),
        who: "Wilma".into(),
        device: "telephone".into(),
        with: None,
        follows: None,
        why: None,
        act: act.into(),
    }
}

pub(crate) fn note(number: u16, words: &str) -> Entry {
    entry(number, i64::from(number), Noted { about: None, words: words.into() })
}

pub(crate) fn strike(number: u16) -> Entry {
    entry(number, i64::from(number), Struck {})
}

/// One entry of each kind, every field filled.
pub(crate) fn one_of_each() -> Vec<Entry> {
    let text = include_str!("../tests/it/one_of_each.jsonl");
    crate::lines::read_lines(text).unwrap().into_iter().map(crate::entry::Written::into_entry).collect()
}
