//! Opening a book: is it one, is it ours to read, did it stop cleanly, is everything still there.

use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use rusqlite::{Connection, OpenFlags, TransactionBehavior};

use crate::chain::Link;
use crate::store::{Head, NotSaved, Position, StoreError};

use super::watch::{Watch, path_beside};
use super::{SqliteStore, faults, verify};

/// Marks the file as a book of ours: `StBk`.
const APPLICATION_ID: i64 = 0x5374_426b;

/// The version of the tables.
pub(super) const BOOK_VERSION: i64 = 1;

/// How long to wait for another writer.
const PATIENCE: Duration = Duration::from_secs(5);

const SCHEMA: &str = include_str!("schema.sql");
const VIEWS: &str = include_str!("views.sql");

/// An open book, and what there is to say about it.
#[derive(Debug)]
pub struct Opened {
    /// The book.
    pub store: SqliteStore,
    /// Things the person should know; none of them prevents reading.
    pub notes: Vec<OpenNote>,
}

/// Something to know about a book that was opened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OpenNote {
    /// It was made just now.
    New {
        /// Where.
        path: PathBuf,
    },
    /// The last program did not stop cleanly; all was checked and is whole.
    CheckedAfterStop {
        /// How many entries were read again.
        entries: u64,
    },
    /// It can only be read.
    ReadOnly {
        /// The file.
        path: PathBuf,
    },
    /// Entries that were acknowledged are no longer there.
    EntriesMissing {
        /// How many there are.
        found: u64,
        /// How many there were.
        were: u64,
    },
    /// The book is another than the one that was last written here.
    AnotherBook {
        /// The last position at which the two could have been compared.
        position: u64,
    },
}

impl fmt::Display for OpenNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::New { path } => write!(f, "a new book was begun at {}", path.display()),
            Self::CheckedAfterStop { entries } => write!(
                f,
                "the last program that wrote in the book did not stop cleanly; all {entries} entries were checked and are whole"
            ),
            Self::ReadOnly { path } => {
                write!(f, "{} may only be read: nothing can be written down now", path.display())
            }
            Self::EntriesMissing { found, were } => write!(
                f,
                "the book holds {found} entries and held {were} when it was last written: {} are missing, a file beside \
                 it was cut off or an older copy was put in its place; hint: restore the last backup with `stillroom \
                 book restore`, or say `stillroom book verify --accept` if the older copy is meant",
                were.saturating_sub(*found)
            ),
            Self::AnotherBook { position } => write!(
                f,
                "entry {position} is not the one that was last written here: another book was put in its place; hint: \
                 put the right file back, or say `stillroom book verify --accept` if this one is meant"
            ),
        }
    }
}

/// Opens a book, or begins one where `create` says so and there is none.
pub(super) fn open(path: &Path, create: bool) -> Result<Opened, StoreError> {
    let mut notes = Vec::new();
    let is_new = fs::metadata(path).map_or(true, |found| found.len() == 0);
    if is_new && !create {
        return Err(StoreError::Missing { path: path.to_owned() });
    }
    if is_new && let Some(folder) = path.parent() {
        // If it cannot be made, opening fails and says so.
        let _ = fs::create_dir_all(folder);
    }
    let mut watch = Watch::take(path);
    let left_behind = fs::metadata(path_beside(path, "-wal")).is_ok_and(|wal| wal.len() > 0);
    let was_unclean = left_behind && watch.as_ref().is_some_and(|watch| watch.came_alone);

    let (mut connection, read_only) = connect(path, is_new)?;
    prepare(&mut connection, path, read_only)?;
    if read_only {
        notes.push(OpenNote::ReadOnly { path: path.to_owned() });
    } else if is_new {
        notes.push(OpenNote::New { path: path.to_owned() });
    }
    if was_unclean {
        verify::require_whole(&connection, path)?;
        let entries = read_head(&connection, path)?.position.0;
        notes.push(OpenNote::CheckedAfterStop { entries });
    }
    if let Some(watch) = &watch {
        watch.let_others_in();
    }
    let witnessed = watch.as_mut().and_then(Watch::read);
    let lost = match witnessed {
        Some(witnessed) => find_loss(&connection, path, witnessed)?,
        None => None,
    };
    let trusts_watch = lost.is_none();
    notes.extend(lost);
    let marks = super::FileMarks::read(path);
    Ok(Opened { store: SqliteStore::new(connection, path, watch, marks, read_only, trusts_watch), notes })
}

/// A connection, and whether it can only read.
fn connect(path: &Path, is_new: bool) -> Result<(Connection, bool), StoreError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let flags = if is_new { flags | OpenFlags::SQLITE_OPEN_CREATE } else { flags };
    let connection = match Connection::open_with_flags(path, flags) {
        Ok(connection) => connection,
        Err(source) if is_new => return Err(faults::writing(path, source)),
        Err(source) => return Err(faults::reading(path, source)),
    };
    let read_only = connection.is_readonly("main").map_err(|source| faults::reading(path, source))?;
    if !read_only || is_new || can_read(&connection) {
        return Ok((connection, read_only));
    }
    // On a locked card the files beside the book cannot be made. What is not being written can be read as it lies.
    let uri = format!(
        "file:{}?immutable=1",
        path.display().to_string().replace('%', "%25").replace('?', "%3f").replace('#', "%23")
    );
    let flags =
        OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_URI;
    let connection =
        Connection::open_with_flags(uri, flags).map_err(|source| faults::reading(path, source))?;
    Ok((connection, true))
}

fn can_read(connection: &Connection) -> bool {
    connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get::<_, i64>(0)).is_ok()
}

/// Checks whose file it is, makes the tables of a new one, and sets how it is written.
fn prepare(connection: &mut Connection, path: &Path, read_only: bool) -> Result<(), StoreError> {
    let fault = |source| faults::reading(path, source);
    connection.busy_timeout(PATIENCE).map_err(fault)?;
    connection.pragma_update(None, "foreign_keys", true).map_err(fault)?;
    connection.pragma_update(None, "trusted_schema", false).map_err(fault)?;
    check_owner(connection, path, read_only)?;
    if read_only {
        return Ok(());
    }
    let write_fault = |source| faults::writing(path, source);
    connection.pragma_update_and_check(None, "journal_mode", "wal", |_| Ok(())).map_err(write_fault)?;
    // Every acknowledged group is on the disk before it is acknowledged.
    connection.pragma_update(None, "synchronous", "full").map_err(write_fault)?;
    // On machines whose fsync does not reach the disk, the call that does.
    connection.pragma_update(None, "fullfsync", true).map_err(write_fault)?;
    connection.pragma_update(None, "checkpoint_fullfsync", true).map_err(write_fault)?;
    make_tables(connection, path)
}

pub(super) fn check_owner(connection: &Connection, path: &Path, read_only: bool) -> Result<(), StoreError> {
    let fault = |source| faults::reading(path, source);
    let (owner, version) = read_owner(connection).map_err(fault)?;
    let tables: i64 =
        connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0)).map_err(fault)?;
    let is_empty = owner == 0 && version == 0 && tables == 0;
    if (owner != APPLICATION_ID && !is_empty) || (is_empty && read_only) {
        return Err(StoreError::NotABook { path: path.to_owned() });
    }
    if version > BOOK_VERSION {
        return Err(StoreError::Newer { path: path.to_owned(), found: version, known: BOOK_VERSION });
    }
    Ok(())
}

fn read_owner(connection: &Connection) -> rusqlite::Result<(i64, i64)> {
    let read = |name: &str| connection.pragma_query_value(None, name, |row| row.get(0));
    Ok((read("application_id")?, read("user_version")?))
}

/// Makes the tables where there are none: all or nothing, whoever else is doing the same.
fn make_tables(connection: &mut Connection, path: &Path) -> Result<(), StoreError> {
    let fault = |source| faults::writing(path, source);
    if read_owner(connection).map_err(fault)?.1 == BOOK_VERSION {
        return Ok(());
    }
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(fault)?;
    if read_owner(&transaction).map_err(fault)?.1 == 0 {
        transaction.execute_batch(SCHEMA).map_err(fault)?;
        transaction.execute_batch(VIEWS).map_err(fault)?;
        transaction.pragma_update(None, "application_id", APPLICATION_ID).map_err(fault)?;
        transaction.pragma_update(None, "user_version", BOOK_VERSION).map_err(fault)?;
    }
    transaction.commit().map_err(fault)
}

/// What is missing against what the watch has seen.
fn find_loss(connection: &Connection, path: &Path, witnessed: Head) -> Result<Option<OpenNote>, StoreError> {
    let head = read_head(connection, path)?;
    if head.position < witnessed.position {
        return Ok(Some(OpenNote::EntriesMissing { found: head.position.0, were: witnessed.position.0 }));
    }
    let same = find_link(connection, path, witnessed.position)? == Some(witnessed.link);
    Ok((!same).then_some(OpenNote::AnotherBook { position: witnessed.position.0 }))
}

/// The end of the journal.
pub(super) fn read_head(connection: &Connection, path: &Path) -> Result<Head, StoreError> {
    let fault = |source| faults::reading(path, source);
    let mut statement = connection
        .prepare_cached("SELECT position, link FROM entry ORDER BY position DESC LIMIT 1")
        .map_err(fault)?;
    let mut rows = statement.query([]).map_err(fault)?;
    let Some(row) = rows.next().map_err(fault)? else {
        return Ok(Head::EMPTY);
    };
    let (position, bytes): (i64, Vec<u8>) =
        row.get(0).and_then(|position| Ok((position, row.get(1)?))).map_err(fault)?;
    let position = Position(position.unsigned_abs());
    let damaged = || StoreError::Damaged { path: path.to_owned(), position, source: None };
    Ok(Head { position, link: Link::from_bytes(&bytes).ok_or_else(damaged)? })
}

/// The link after so many entries.
pub(super) fn find_link(
    connection: &Connection,
    path: &Path,
    position: Position,
) -> Result<Option<Link>, StoreError> {
    if position == Position(0) {
        return Ok(Some(Link::FIRST));
    }
    let Ok(number) = i64::try_from(position.0) else { return Ok(None) };
    let fault = |source| faults::reading(path, source);
    let mut statement =
        connection.prepare_cached("SELECT link FROM entry WHERE position = $1").map_err(fault)?;
    let mut rows = statement.query([number]).map_err(fault)?;
    let Some(row) = rows.next().map_err(fault)? else { return Ok(None) };
    let bytes: Vec<u8> = row.get(0).map_err(fault)?;
    Ok(Link::from_bytes(&bytes))
}

/// Says that nothing can be written through a book that was opened for reading.
pub(super) fn read_only(path: &Path) -> StoreError {
    StoreError::NotSaved { path: path.to_owned(), why: NotSaved::ReadOnly, source: None }
}
