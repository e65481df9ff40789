//! The book in one SQLite file: nothing to set up, one writer and many readers at once, across programs.

mod backup;
mod faults;
mod open;
mod restore;
mod rotation;
mod verify;
mod watch;

use std::path::{Path, PathBuf};

use rusqlite::{Connection, OptionalExtension as _, TransactionBehavior};

use crate::chain::Link;
use crate::entry::Written;
use crate::store::{Head, NotSaved, Position, Store, StoreError, StoredSnapshot};

use watch::Watch;

pub use backup::{BackupError, copy_book};
pub use open::{OpenNote, Opened};
pub use restore::restore_book;
pub use rotation::rotate_backups;
pub use verify::{Damage, Verified};

/// A book in a file.
#[derive(Debug)]
pub struct SqliteStore {
    connection: Connection,
    path: PathBuf,
    watch: Option<Watch>,
    /// Which file it was when it was opened; `None` where the system does not say.
    marks: Option<FileMarks>,
    read_only: bool,
    /// Whether the watch agreed with the book; while it does not, it is left as it is.
    trusts_watch: bool,
    /// Set when the disk did not confirm a write: what it holds is then unknown until the book is opened again.
    must_reopen: bool,
}

impl SqliteStore {
    /// Opens the book at a path.
    ///
    /// # Errors
    ///
    /// If there is none, or it is not a book, or a newer one, or damaged, or cannot be read.
    pub fn open(path: &Path) -> Result<Opened, StoreError> {
        open::open(path, false)
    }

    /// Opens the book at a path, or begins one there.
    ///
    /// # Errors
    ///
    /// As [`SqliteStore::open`], and if it cannot be made.
    pub fn open_or_begin(path: &Path) -> Result<Opened, StoreError> {
        open::open(path, true)
    }

    fn new(
        connection: Connection,
        path: &Path,
        watch: Option<Watch>,
        marks: Option<FileMarks>,
        read_only: bool,
        trusts_watch: bool,
    ) -> Self {
        Self { connection, path: path.to_owned(), watch, marks, read_only, trusts_watch, must_reopen: false }
    }

    /// Its file.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Reads everything and compares it with everything that can be compared.
    ///
    /// # Errors
    ///
    /// If the file cannot be read at all. What is wrong inside it is in the answer.
    pub fn verify(&mut self) -> Result<Verified, StoreError> {
        let witnessed = self.watch.as_mut().and_then(Watch::read);
        verify::verify(&self.connection, &self.path, witnessed)
    }

    /// Takes the book as it is for the right one, whatever the watch beside it remembers.
    ///
    /// # Errors
    ///
    /// If the book cannot be read.
    pub fn accept_as_it_is(&mut self) -> Result<(), StoreError> {
        let head = self.head()?;
        self.trusts_watch = true;
        if let Some(watch) = &mut self.watch {
            watch.write(head);
        }
        Ok(())
    }

    /// That the file is still the one that was opened.
    fn require_there(&self) -> Result<(), StoreError> {
        let is_there = match self.marks {
            Some(marks) => FileMarks::read(&self.path) == Some(marks),
            None => self.path.exists(),
        };
        if is_there { Ok(()) } else { Err(self.not_saved(NotSaved::TakenAway)) }
    }

    fn not_saved(&self, why: NotSaved) -> StoreError {
        StoreError::NotSaved { path: self.path.clone(), why, source: None }
    }

    /// The write itself, in one transaction.
    fn write_group(&mut self, group: &[Written], expected: Option<Head>) -> Result<Head, StoreError> {
        let path = &self.path;
        let fault = |source| faults::writing(path, source);
        let transaction =
            self.connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(fault)?;
        let mut head = open::read_head(&transaction, path)?;
        if let Some(expected) = expected.filter(|expected| *expected != head) {
            return Err(StoreError::Moved { expected: expected.position, found: head.position });
        }
        {
            let mut find =
                transaction.prepare_cached("SELECT text FROM entry WHERE id = $1").map_err(fault)?;
            let mut insert = transaction
                .prepare_cached("INSERT INTO entry (position, id, link, text) VALUES ($1, $2, $3, $4)")
                .map_err(fault)?;
            for written in group {
                let id = written.entry().id;
                let there: Option<String> =
                    find.query_row([id.to_string()], |row| row.get(0)).optional().map_err(fault)?;
                if let Some(text) = there {
                    let same = Written::read(&text).is_ok_and(|there| there.says_the_same(written));
                    if same {
                        continue;
                    }
                    return Err(StoreError::OtherWords { id });
                }
                head = head.after(written.text());
                insert
                    .execute((
                        head.position.0.cast_signed(),
                        id.to_string(),
                        head.link.as_bytes(),
                        written.text(),
                    ))
                    .map_err(fault)?;
            }
        }
        transaction.commit().map_err(fault)?;
        Ok(head)
    }
}

impl Store for SqliteStore {
    fn head(&self) -> Result<Head, StoreError> {
        open::read_head(&self.connection, &self.path)
    }

    fn append(&mut self, group: &[Written], expected: Option<Head>) -> Result<Head, StoreError> {
        if self.read_only {
            return Err(open::read_only(&self.path));
        }
        if self.must_reopen {
            return Err(StoreError::MustReopen { path: self.path.clone() });
        }
        self.require_there()?;
        let outcome = self.write_group(group, expected);
        if let Err(StoreError::NotSaved { why: NotSaved::NotConfirmed | NotSaved::DiskFailed, .. }) = &outcome
        {
            self.must_reopen = true;
        }
        let head = outcome?;
        // A file that was unlinked takes writes without a complaint, and they are gone when it is closed.
        self.require_there()?;
        if let Some(watch) = self.watch.as_mut().filter(|_| self.trusts_watch) {
            watch.write(head);
        }
        Ok(head)
    }

    fn read_after(&self, from: Head, reader: &mut dyn FnMut(Written, Head)) -> Result<(), StoreError> {
        let fault = |source| faults::reading(&self.path, source);
        let mut statement = self
            .connection
            .prepare_cached("SELECT position, link, text FROM entry WHERE position > $1 ORDER BY position")
            .map_err(fault)?;
        let mut rows = statement.query([from.position.0.cast_signed()]).map_err(fault)?;
        let mut head = from;
        while let Some(row) = rows.next().map_err(fault)? {
            let position = row.get::<_, i64>(0).map_err(fault)?;
            let text = row.get_ref(2).map_err(fault)?.as_str().map_err(|error| fault(error.into()))?;
            let link = row.get_ref(1).map_err(fault)?.as_blob().map_err(|error| fault(error.into()))?;
            head = head.after(text);
            let damaged =
                |source| StoreError::Damaged { path: self.path.clone(), position: head.position, source };
            if position != head.position.0.cast_signed() || Link::from_bytes(link) != Some(head.link) {
                return Err(damaged(None));
            }
            reader(Written::read(text).map_err(|error| damaged(Some(error)))?, head);
        }
        Ok(())
    }

    fn read_snapshot(&self) -> Result<Option<StoredSnapshot>, StoreError> {
        let fault = |source| faults::reading(&self.path, source);
        let read = |row: &rusqlite::Row<'_>| {
            let [link, hash] = [row.get::<_, Vec<u8>>(1)?, row.get(2)?].map(|bytes| Link::from_bytes(&bytes));
            let (position, bytes) = (row.get::<_, i64>(0)?, row.get::<_, Vec<u8>>(3)?);
            let whole = hash == Some(Link::over(&bytes));
            Ok(link.filter(|_| whole).map(|link| StoredSnapshot {
                head: Head { position: Position(position.unsigned_abs()), link },
                bytes,
            }))
        };
        self.connection
            .query_row("SELECT position, link, hash, bytes FROM snapshot", [], read)
            .optional()
            .map(Option::flatten)
            .map_err(fault)
    }

    fn write_snapshot(&mut self, snapshot: &StoredSnapshot) -> Result<(), StoreError> {
        if self.read_only {
            return Err(open::read_only(&self.path));
        }
        let StoredSnapshot { head, bytes } = snapshot;
        let hash = Link::over(bytes);
        let values = (head.position.0.cast_signed(), head.link.as_bytes(), hash.as_bytes(), bytes);
        self.connection
            .execute(
                "INSERT INTO snapshot (one, position, link, hash, bytes) VALUES (1, $1, $2, $3, $4)
                 ON CONFLICT (one) DO UPDATE SET position = excluded.position, link = excluded.link,
                   hash = excluded.hash, bytes = excluded.bytes",
                values,
            )
            .map_err(|source| faults::writing(&self.path, source))?;
        Ok(())
    }

    fn find_link(&self, position: Position) -> Result<Option<Link>, StoreError> {
        open::find_link(&self.connection, &self.path, position)
    }
}

/// By what a file is known, whatever its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct FileMarks {
    device: u64,
    number: u64,
}

impl FileMarks {
    // Only looked at, never opened: closing a second opening of the file would let go of SQLite's locks on it.
    #[cfg(unix)]
    fn read(path: &Path) -> Option<Self> {
        use std::os::unix::fs::MetadataExt as _;
        std::fs::metadata(path).ok().map(|found| Self { device: found.dev(), number: found.ino() })
    }

    #[cfg(not(unix))]
    fn read(_path: &Path) -> Option<Self> {
        None
    }
}
