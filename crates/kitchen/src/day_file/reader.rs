//! What all parts of the reading share: the almanac, the two files, the faults and the defaults met so far.

use std::collections::BTreeMap;

use almanac::Almanac;
use measure::ReadError;

use super::fault::{FaultKind, Faults, WhichFile};
use super::nearest::find_nearest;
use super::section::{Entry, Section, Words};

/// The state of one reading.
pub(super) struct Reader<'a, 't> {
    /// The published facts.
    pub(super) almanac: &'a Almanac,
    /// What is wrong so far.
    pub(super) faults: Faults<'t>,
    /// What was filled in so far, a sentence each.
    pub(super) filled_in: Vec<String>,
    /// Whether a file could not be parsed, so that what seems missing may stand in it.
    pub(super) file_lost: bool,
}

/// The root tables of the two files; `None` for one that is missing or could not be parsed.
#[derive(Clone, Copy)]
pub(super) struct Files<'a> {
    /// The day's own file.
    pub(super) day: Option<Section<'a>>,
    /// The house file.
    pub(super) house: Option<Section<'a>>,
}

impl<'a> Files<'a> {
    /// A key in both files, the house first, so that the day has the last word.
    pub(super) fn find(&self, key: &str) -> impl Iterator<Item = Entry<'a>> {
        [self.house, self.day].into_iter().flatten().filter_map(move |root| root.find(key))
    }

    /// A table of both files, such as `[kitchen]`.
    pub(super) fn find_table(&self, key: &str, name: &'static str, faults: &mut Faults<'_>) -> Self {
        let mut open = |root: Option<Section<'a>>| {
            root.and_then(|root| root.find(key)).and_then(|entry| entry.section(name, faults))
        };
        Self { house: open(self.house), day: open(self.day) }
    }

    /// Notes every unknown key of either.
    pub(super) fn check_keys(&self, known: &'static [&'static str], faults: &mut Faults<'_>) {
        for table in [self.house, self.day].into_iter().flatten() {
            table.check_keys(known, faults);
        }
    }
}

impl Reader<'_, '_> {
    /// Notes a default that was filled in.
    pub(super) fn fill_in(&mut self, sentence: impl Into<String>) {
        self.filled_in.push(sentence.into());
    }

    /// Reads the value of a key from both files. The day's counts; a fault in either is noted; what was filled in
    /// for a value of the house that the day replaces is forgotten.
    pub(super) fn read<'f, T>(
        &mut self,
        files: Files<'f>,
        key: &str,
        mut read: impl FnMut(&mut Self, Entry<'f>) -> Option<T>,
    ) -> Option<T> {
        let filled_before = self.filled_in.len();
        files.find(key).fold(None, |before, entry| {
            self.filled_in.truncate(filled_before);
            read(self, entry).or(before)
        })
    }

    /// Reads an amount with one of `measure`'s readers; a bare number is refused with an example.
    pub(super) fn amount<T>(
        &mut self,
        entry: Entry<'_>,
        example: &'static str,
        read: impl Fn(&str) -> Result<T, ReadError>,
    ) -> Option<T> {
        let words = entry.amount(example, &mut self.faults)?;
        if words.bare {
            let kind = FaultKind::NoUnit { key: words.key.into(), text: words.text.into(), example };
            self.faults.add(words.file, words.at, kind);
            return None;
        }
        self.understand(words, read)
    }

    /// Reads an amount whose bare number has one plain meaning, which `unit` says: `25` is `25 min`.
    pub(super) fn amount_or_number<T>(
        &mut self,
        entry: Entry<'_>,
        example: &'static str,
        unit: &str,
        read: impl Fn(&str) -> Result<T, ReadError>,
    ) -> Option<T> {
        let words = entry.amount(example, &mut self.faults)?;
        if words.bare {
            return self.understand(words, |number| read(&format!("{number} {unit}")));
        }
        self.understand(words, read)
    }

    /// Reads words; what cannot be read is noted at the very letter where the reading stopped.
    pub(super) fn understand<T>(
        &mut self,
        words: Words<'_>,
        read: impl Fn(&str) -> Result<T, ReadError>,
    ) -> Option<T> {
        match read(words.text) {
            Ok(value) => Some(value),
            Err(problem) => {
                let before = words
                    .text
                    .char_indices()
                    .nth(problem.column() - 1)
                    .map_or(words.text.len(), |(at, _)| at);
                let kind = FaultKind::UnreadableAmount { key: words.key.into(), problem };
                self.faults.add(words.file, words.at + before, kind);
                None
            }
        }
    }

    /// Reads one word of a list of words.
    pub(super) fn choose<T: Copy>(&mut self, entry: Entry<'_>, choices: &[(&'static str, T)]) -> Option<T> {
        let words = entry.words("a word in quotes", &mut self.faults)?;
        let found = self.choose_of(words, choices);
        if found.is_none() {
            let known: Vec<&'static str> = choices.iter().map(|&(word, _)| word).collect();
            let nearest = find_nearest(words.text, known.iter().copied());
            let kind =
                FaultKind::UnknownWord { key: words.key.into(), word: words.text.into(), nearest, known };
            self.faults.add(words.file, words.at, kind);
        }
        found
    }

    /// The choice that words name, whatever their case and whether parts are joined by blanks, dashes or neither.
    pub(super) fn choose_of<T: Copy>(&self, words: Words<'_>, choices: &[(&'static str, T)]) -> Option<T> {
        let plain = |word: &str| word.trim().to_lowercase().replace(['-', '_'], " ");
        choices.iter().find(|(word, _)| plain(word) == plain(words.text)).map(|&(_, choice)| choice)
    }

    /// Reads text that must not be empty, trimmed.
    pub(super) fn name(&mut self, entry: Entry<'_>) -> Option<String> {
        let words = entry.words("text in quotes", &mut self.faults)?;
        let name = words.text.trim();
        if name.is_empty() {
            self.faults.add(entry.file, entry.value_at(), FaultKind::Empty { key: entry.key.into() });
            return None;
        }
        Some(name.into())
    }
}

/// Finds names that stand twice in one file.
pub(super) struct Names {
    place: &'static str,
    seen: BTreeMap<(WhichFile, String), usize>,
}

impl Names {
    /// For tables written as `place`.
    pub(super) fn of(place: &'static str) -> Self {
        Self { place, seen: BTreeMap::new() }
    }

    /// Notes a fault when this file has used the name already.
    pub(super) fn check(&mut self, name: &str, entry: Entry<'_>, faults: &mut Faults<'_>) {
        let line = faults.place(entry.file, entry.key_at).0;
        let first_line = *self.seen.entry((entry.file, name.to_lowercase())).or_insert(line);
        if first_line != line {
            let kind = FaultKind::Twice { place: self.place, name: name.into(), first_line };
            faults.add(entry.file, entry.key_at, kind);
        }
    }
}
