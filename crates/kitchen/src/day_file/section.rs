//! Tables and values of a parsed file with their place in it, read one by one with every fault noted.

use jiff::civil::Date;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::fault::{FaultKind, Faults, WhichFile};
use super::nearest::find_nearest;

/// A table of a file.
#[derive(Clone, Copy)]
pub(super) struct Section<'a> {
    /// The file it stands in.
    pub(super) file: WhichFile,
    /// What it is called in a message: `[[basket]]`, `the file`.
    pub(super) name: &'static str,
    /// Where it begins.
    pub(super) at: usize,
    table: &'a DeTable<'a>,
}

/// A key of a table with its value.
#[derive(Clone, Copy)]
pub(super) struct Entry<'a> {
    /// The file it stands in.
    pub(super) file: WhichFile,
    /// The key; for an item of a list, that of the list.
    pub(super) key: &'a str,
    /// Where the key stands; for an item of a list, where the item does.
    pub(super) key_at: usize,
    value: &'a Spanned<DeValue<'a>>,
}

/// Text as it was written, with the place of its first letter.
#[derive(Clone, Copy)]
pub(super) struct Words<'a> {
    /// The file it stands in.
    pub(super) file: WhichFile,
    /// The key it was given for.
    pub(super) key: &'a str,
    /// The text without its quotes.
    pub(super) text: &'a str,
    /// Where its first letter stands.
    pub(super) at: usize,
    /// Whether it was written as a bare number rather than in quotes.
    pub(super) bare: bool,
}

impl<'a> Section<'a> {
    /// The root table of a file.
    pub(super) fn of_file(file: WhichFile, root: &'a Spanned<DeTable<'a>>) -> Self {
        Self { file, name: "the file", at: 0, table: root.get_ref() }
    }

    /// The value of a key.
    pub(super) fn find(&self, key: &str) -> Option<Entry<'a>> {
        let (key, value) = self.table.get_key_value(key)?;
        Some(Entry { file: self.file, key: key.get_ref(), key_at: key.span().start, value })
    }

    /// The value of a key that must be there; its absence is a fault of the table.
    pub(super) fn require(
        &self,
        key: &'static str,
        example: &'static str,
        faults: &mut Faults<'_>,
    ) -> Option<Entry<'a>> {
        let found = self.find(key);
        if found.is_none() {
            faults.add(self.file, self.at, FaultKind::MissingKey { place: self.name, key, example });
        }
        found
    }

    /// Notes every key that is not one of `known`.
    pub(super) fn check_keys(&self, known: &'static [&'static str], faults: &mut Faults<'_>) {
        for key in self.table.keys() {
            let word: &str = key.get_ref();
            if !known.contains(&word) {
                let nearest = find_nearest(word, known.iter().copied());
                let kind = FaultKind::UnknownKey { key: word.into(), place: self.name, nearest, known };
                faults.add(self.file, key.span().start, kind);
            }
        }
    }

    /// Every key with its value, in the order of the file.
    pub(super) fn entries(&self) -> Vec<Entry<'a>> {
        let mut all: Vec<_> = self
            .table
            .iter()
            .map(|(key, value)| Entry {
                file: self.file,
                key: key.get_ref(),
                key_at: key.span().start,
                value,
            })
            .collect();
        all.sort_by_key(|entry| entry.key_at);
        all
    }
}

impl<'a> Entry<'a> {
    /// Where the value stands.
    pub(super) fn value_at(&self) -> usize {
        self.value.span().start
    }

    fn note_wrong_kind(&self, wanted: &'static str, faults: &mut Faults<'_>) {
        let found = name_kind(self.value.get_ref());
        faults.add(self.file, self.value_at(), FaultKind::WrongKind { key: self.key.into(), found, wanted });
    }

    /// The value as text in quotes.
    pub(super) fn words(&self, wanted: &'static str, faults: &mut Faults<'_>) -> Option<Words<'a>> {
        let words = self.as_words();
        if words.is_none_or(|words| words.bare) {
            self.note_wrong_kind(wanted, faults);
            return None;
        }
        words
    }

    /// The value as text in quotes or as a bare number.
    pub(super) fn amount(&self, wanted: &'static str, faults: &mut Faults<'_>) -> Option<Words<'a>> {
        let words = self.as_words();
        if words.is_none() {
            self.note_wrong_kind(wanted, faults);
        }
        words
    }

    fn as_words(&self) -> Option<Words<'a>> {
        let (text, bare): (&'a str, bool) = match self.value.get_ref() {
            DeValue::String(text) => (text, false),
            DeValue::Integer(number) if number.radix() == 10 => (number.as_str(), true),
            DeValue::Float(number) => (number.as_str(), true),
            _ => return None,
        };
        let span = self.value.span();
        // A quoted text begins after its quote, one of three quotes after those; where the text holds escapes the
        // columns inside of it are not those of the file, and the fault points at its beginning.
        let quotes = span.len().saturating_sub(text.len()) / 2;
        let at = if bare { span.start } else { span.start + if quotes >= 3 { 3 } else { quotes.min(1) } };
        Some(Words { file: self.file, key: self.key, text, at, bare })
    }

    /// The value as a whole number between `least` and `most`.
    pub(super) fn whole(&self, least: u32, most: u32, faults: &mut Faults<'_>) -> Option<u32> {
        let DeValue::Integer(number) = self.value.get_ref() else {
            self.note_wrong_kind("a whole number", faults);
            return None;
        };
        let value =
            u32::from_str_radix(number.as_str(), number.radix()).ok().filter(|n| (least..=most).contains(n));
        if value.is_none() {
            let kind = FaultKind::OutOfRange {
                key: self.key.into(),
                value: number.to_string(),
                least: least.to_string(),
                most: most.to_string(),
            };
            faults.add(self.file, self.value_at(), kind);
        }
        value
    }

    /// The value as true or false.
    pub(super) fn flag(&self, faults: &mut Faults<'_>) -> Option<bool> {
        let flag = self.value.get_ref().as_bool();
        if flag.is_none() {
            self.note_wrong_kind("true or false", faults);
        }
        flag
    }

    /// The value as a date, bare or in quotes.
    pub(super) fn date(&self, faults: &mut Faults<'_>) -> Option<Date> {
        let written = match self.value.get_ref() {
            DeValue::Datetime(stamp) => stamp.to_string(),
            DeValue::String(text) => text.to_string(),
            _ => {
                self.note_wrong_kind("a date such as 2026-08-29", faults);
                return None;
            }
        };
        let date = if written.len() == "2026-08-29".len() { written.parse().ok() } else { None };
        if date.is_none() {
            let kind = FaultKind::UnreadableDate { key: self.key.into(), text: written };
            faults.add(self.file, self.value_at(), kind);
        }
        date
    }

    /// The items of a list; a single value counts as a list of one.
    pub(super) fn list(&self) -> Vec<Entry<'a>> {
        match self.value.get_ref() {
            DeValue::Array(items) => items
                .iter()
                .map(|value| Entry { file: self.file, key: self.key, key_at: value.span().start, value })
                .collect(),
            _ => vec![*self],
        }
    }

    /// Whether the value is a table.
    pub(super) fn is_table(&self) -> bool {
        self.value.get_ref().is_table()
    }

    /// The value as a table.
    pub(super) fn section(&self, name: &'static str, faults: &mut Faults<'_>) -> Option<Section<'a>> {
        match self.value.get_ref() {
            DeValue::Table(table) => Some(Section { file: self.file, name, at: self.value_at(), table }),
            _ => {
                faults.add(
                    self.file,
                    self.key_at,
                    FaultKind::NotATable { key: self.key.into(), place: name },
                );
                None
            }
        }
    }

    /// The value as tables: `[[basket]]` time and again.
    pub(super) fn sections(&self, name: &'static str, faults: &mut Faults<'_>) -> Vec<Section<'a>> {
        match self.value.get_ref() {
            DeValue::Array(_) => self.list().iter().filter_map(|item| item.section(name, faults)).collect(),
            _ => {
                faults.add(
                    self.file,
                    self.key_at,
                    FaultKind::NotATable { key: self.key.into(), place: name },
                );
                Vec::new()
            }
        }
    }
}

/// What a value is called when it is not what was wanted.
fn name_kind(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date or a time",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
