//! Reading a whole book and comparing it with everything that can be compared.

use std::collections::BTreeMap;
use std::fmt;
use std::path::Path;

use rusqlite::Connection;

use crate::Id;
use crate::act::Act;
use crate::chain::Link;
use crate::entry::{Entry, Written};
use crate::record::Record;
use crate::store::{Head, Position, StoreError};

use super::faults;

/// What reading a whole book found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verified {
    /// Its end, as far as the chain holds.
    pub head: Head,
    /// How many entries were read.
    pub entries: u64,
    /// Acts of kinds this program does not know: kept and carried.
    pub unknown: BTreeMap<Box<str>, u64>,
    /// Entries that follow what is not in the book, or one another in a ring: they count for nothing yet.
    pub loose: Vec<Id>,
    /// Everything that is wrong. Empty when the book is whole.
    pub damages: Vec<Damage>,
}

/// One thing that is wrong with a book.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Damage {
    /// The database itself complains.
    Pages {
        /// What it says.
        says: String,
    },
    /// Positions have a gap.
    Gap {
        /// The position that was to come.
        expected: Position,
        /// The one that came.
        found: Position,
    },
    /// The text is not the one that was written.
    Changed {
        /// Where.
        position: Position,
    },
    /// The text is no entry.
    NoEntry {
        /// Where.
        position: Position,
        /// Why.
        why: String,
    },
    /// The name beside the text is not the name in it.
    OtherId {
        /// Where.
        position: Position,
    },
    /// Entries that were acknowledged are no longer there.
    Missing {
        /// How many there are.
        found: u64,
        /// How many there were.
        were: u64,
    },
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Pages { says } => write!(f, "the file is damaged: {says}"),
            Self::Gap { expected, found } => {
                write!(f, "after entry {} comes entry {}", expected.0.saturating_sub(1), found.0)
            }
            Self::Changed { position } => write!(f, "entry {} is not what was written", position.0),
            Self::NoEntry { position, why } => write!(f, "entry {} cannot be read: {why}", position.0),
            Self::OtherId { position } => write!(f, "entry {} is filed under another name", position.0),
            Self::Missing { found, were } => {
                write!(f, "the book holds {found} entries and held {were} when it was last written")
            }
        }
    }
}

/// Reads and compares everything, and collects every fault.
pub(super) fn verify(
    connection: &Connection,
    path: &Path,
    witnessed: Option<Head>,
) -> Result<Verified, StoreError> {
    let mut damages = check_pages(connection, path)?;
    let mut found = Verified {
        head: Head::EMPTY,
        entries: 0,
        unknown: BTreeMap::new(),
        loose: Vec::new(),
        damages: Vec::new(),
    };
    let mut record = Record::default();
    let mut chain_holds = true;
    let read = read_rows(connection, |position, id, link, text| {
        found.entries += 1;
        let next = found.head.after(text);
        if position != next.position {
            damages.push(Damage::Gap { expected: next.position, found: position });
            chain_holds = false;
        } else if chain_holds && link != Some(next.link) {
            damages.push(Damage::Changed { position });
            chain_holds = false;
        }
        // Behind the first fault each entry is judged by the link that stands before it.
        found.head = Head { position, link: link.unwrap_or(next.link) };
        match Written::read(text) {
            Ok(written) => {
                if written.entry().id.to_string() != id {
                    damages.push(Damage::OtherId { position });
                }
                note(&mut found, &mut record, written.into_entry());
            }
            Err(error) => damages.push(Damage::NoEntry { position, why: error.to_string() }),
        }
    });
    match read {
        Ok(()) => {}
        Err(source) => match faults::reading(path, source) {
            StoreError::Broken { what, .. } => damages.push(Damage::Pages { says: what }),
            other => return Err(other),
        },
    }
    if let Some(witnessed) = witnessed.filter(|witnessed| witnessed.position > found.head.position) {
        damages.push(Damage::Missing { found: found.head.position.0, were: witnessed.position.0 });
    }
    found.loose = record.find_loose();
    found.damages = damages;
    Ok(found)
}

fn note(found: &mut Verified, record: &mut Record, entry: Entry) {
    if let Act::Unknown(unknown) = &entry.act {
        *found.unknown.entry(unknown.kind.clone()).or_default() += 1;
    }
    record.take(entry.into());
}

/// What the database says about its own pages.
fn check_pages(connection: &Connection, path: &Path) -> Result<Vec<Damage>, StoreError> {
    let ask = || -> rusqlite::Result<Vec<String>> {
        let mut statement = connection.prepare("PRAGMA integrity_check")?;
        statement.query_map([], |row| row.get(0))?.collect()
    };
    let says = match ask() {
        Ok(lines) => lines,
        Err(source) => match faults::reading(path, source) {
            StoreError::Broken { what, .. } => vec![what],
            other => return Err(other),
        },
    };
    Ok(says.into_iter().filter(|line| line != "ok").map(|says| Damage::Pages { says }).collect())
}

fn read_rows(
    connection: &Connection,
    mut each: impl FnMut(Position, &str, Option<Link>, &str),
) -> rusqlite::Result<()> {
    let mut statement = connection.prepare("SELECT position, id, link, text FROM entry ORDER BY position")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let position = Position(row.get::<_, i64>(0)?.unsigned_abs());
        each(
            position,
            row.get_ref(1)?.as_str()?,
            Link::from_bytes(row.get_ref(2)?.as_blob()?),
            row.get_ref(3)?.as_str()?,
        );
    }
    Ok(())
}

/// That nothing is wrong.
///
/// # Errors
///
/// The first thing that is.
pub(super) fn require_whole(connection: &Connection, path: &Path) -> Result<(), StoreError> {
    let found = verify(connection, path, None)?;
    let path = path.to_owned();
    match found.damages.into_iter().next() {
        None => Ok(()),
        Some(
            Damage::Gap { found: position, .. } | Damage::Changed { position } | Damage::OtherId { position },
        ) => Err(StoreError::Damaged { path, position, source: None }),
        Some(other) => Err(StoreError::Broken { path, what: other.to_string() }),
    }
}
