//! Copies of a book, made while it is in use and read before they are believed.

use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::time::Duration;

use rusqlite::backup::Backup;
use rusqlite::{Connection, OpenFlags};

use crate::store::{Head, StoreError};

use super::watch::path_beside;
use super::{SqliteStore, faults, open, verify};

/// Why a copy was not made or not taken.
#[derive(Debug, thiserror::Error)]
pub enum BackupError {
    /// There is something of that name.
    #[error("{} is there already, and no backup is written over another; hint: give another name", .path.display())]
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// The copy is not whole.
    #[error("the copy at {} is not whole, so it was not kept; hint: look whether the disk is full or failing", .path.display())]
    NotWhole {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        #[source]
        source: StoreError,
    },
    /// Another program has the book open.
    #[error("another program has {} open; hint: stop it first, then restore", .path.display())]
    InUse {
        /// The book.
        path: PathBuf,
    },
    /// The book itself cannot be read.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A file could not be written, moved or removed.
    #[error("{} could not be written; hint: look whether the disk is full or may only be read", .path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system said.
        #[source]
        source: std::io::Error,
    },
}

/// Pages copied before others get their turn.
const PAGES_AT_ONCE: i32 = 4096;

impl SqliteStore {
    /// Copies the book into a new file while it is in use, reads the copy, and only then gives it its name.
    ///
    /// # Errors
    ///
    /// If there is a file of that name, the copy cannot be written, or it does not read as it should.
    pub fn back_up(&self, to: &Path) -> Result<Head, BackupError> {
        if to.exists() {
            return Err(BackupError::Exists { path: to.to_owned() });
        }
        if let Some(folder) = to.parent() {
            fs::create_dir_all(folder).map_err(|source| file_fault(folder, source))?;
        }
        let part = path_beside(to, ".part");
        remove_if_there(&part)?;
        let outcome = self.copy_into(&part).and_then(|head| {
            fs::rename(&part, to).map_err(|source| file_fault(to, source))?;
            Ok(head)
        });
        if outcome.is_err() {
            // What is left of a copy that failed is worth nothing; the fault is already on its way to the person.
            let _ = fs::remove_file(&part);
        }
        outcome
    }

    fn copy_into(&self, part: &Path) -> Result<Head, BackupError> {
        let fault = |source| BackupError::from(faults::writing(part, source));
        let mut copy = Connection::open(part).map_err(fault)?;
        Backup::new(&self.connection, &mut copy)
            .and_then(|backup| backup.run_to_completion(PAGES_AT_ONCE, Duration::from_millis(1), None))
            .map_err(fault)?;
        // One file, nothing beside it.
        copy.pragma_update_and_check(None, "journal_mode", "delete", |_| Ok(())).map_err(fault)?;
        copy.close().map_err(|(_, source)| fault(source))?;
        File::open(part).and_then(|file| file.sync_all()).map_err(|source| file_fault(part, source))?;
        require_good_copy(part)
    }
}

/// Reads a copy that nobody is writing, from its first entry to its last.
pub(super) fn require_good_copy(path: &Path) -> Result<Head, BackupError> {
    let not_whole = |source| BackupError::NotWhole { path: path.to_owned(), source };
    let connection =
        Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX)
            .map_err(|source| not_whole(faults::reading(path, source)))?;
    open::check_owner(&connection, path, true).map_err(not_whole)?;
    verify::require_whole(&connection, path).map_err(not_whole)?;
    open::read_head(&connection, path).map_err(not_whole)
}

/// Copies the book at a path into a new file, whether or not another program has it open.
///
/// # Errors
///
/// As [`SqliteStore::back_up`], and if the book cannot be opened.
pub fn copy_book(from: &Path, to: &Path) -> Result<Head, BackupError> {
    SqliteStore::open(from)?.store.back_up(to)
}

pub(super) fn file_fault(path: &Path, source: std::io::Error) -> BackupError {
    BackupError::File { path: path.to_owned(), source }
}

pub(super) fn remove_if_there(path: &Path) -> Result<(), BackupError> {
    match fs::remove_file(path) {
        Err(source) if source.kind() != std::io::ErrorKind::NotFound => Err(file_fault(path, source)),
        _ => Ok(()),
    }
}
