//! The book as plain text: one entry a line (JSON Lines), to keep, to send, to merge.

use std::fmt;

use crate::entry::{EntryError, Written};
use crate::store::{Head, Store, StoreError};

/// Writes every entry, one a line, in the order of the journal.
///
/// # Errors
///
/// If the store cannot be read.
pub fn export_lines(store: &dyn Store, writer: &mut dyn FnMut(&str)) -> Result<Head, StoreError> {
    let mut end = Head::EMPTY;
    store.read_after(Head::EMPTY, &mut |written, head| {
        writer(written.text());
        writer("\n");
        end = head;
    })?;
    Ok(end)
}

/// A line that is no entry.
#[derive(Debug)]
pub struct LineFault {
    /// The line, counted from 1.
    pub line: usize,
    /// What is wrong with it.
    pub fault: EntryError,
}

/// The lines of a file that are no entries: all of them.
#[derive(Debug)]
pub struct LineFaults(pub Vec<LineFault>);

/// How many faults are told one by one.
const TOLD: usize = 20;

impl fmt::Display for LineFaults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for LineFault { line, fault } in self.0.iter().take(TOLD) {
            writeln!(f, "line {line}: {fault}")?;
        }
        if self.0.len() > TOLD {
            writeln!(f, "and {} more", self.0.len() - TOLD)?;
        }
        write!(f, "nothing was added to the book")
    }
}

impl std::error::Error for LineFaults {}

/// Reads entries, one a line, whatever the spacing within a line and the order of keys. Empty lines are passed over.
///
/// # Errors
///
/// Every line that is no entry.
pub fn read_lines(text: &str) -> Result<Vec<Written>, LineFaults> {
    let mut entries = Vec::new();
    let mut faults = Vec::new();
    for (index, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        match Written::take(line) {
            Ok(written) => entries.push(written),
            Err(fault) => faults.push(LineFault { line: index + 1, fault }),
        }
    }
    if faults.is_empty() { Ok(entries) } else { Err(LineFaults(faults)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::MemoryStore;
    use crate::testing::note;

    #[test]
    fn what_is_exported_is_read_again() {
        let entries: Vec<Written> =
            (1..4).map(|number| Written::of(note(number, "line\nbreak")).unwrap()).collect();
        let mut store = MemoryStore::default();
        let head = store.append(&entries, None).unwrap();
        let mut text = String::new();
        assert_eq!(export_lines(&store, &mut |part| text += part).unwrap(), head);
        assert_eq!(text.lines().count(), 3);
        assert_eq!(read_lines(&format!("\n{text}\r\n")).unwrap(), entries);
    }

    #[test]
    fn every_bad_line_is_named() {
        let good = Written::of(note(1, "a")).unwrap().text().to_owned();
        let faults = read_lines(&format!("nonsense\n{good}\n{{}}\n")).unwrap_err();
        let told = faults.to_string();
        assert!(told.starts_with("line 1: this is no entry"), "{told}");
        assert!(told.contains("\nline 3: ") && told.ends_with("nothing was added to the book"), "{told}");
    }
}
