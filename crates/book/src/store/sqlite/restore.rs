//! Putting a backup in the place of a book, without ever losing the book that was there.

use std::fs::{self, File};
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use crate::store::Head;

use super::backup::{BackupError, file_fault, remove_if_there, require_good_copy};
use super::watch::{Watch, path_beside};

/// The files that belong to a book and go where it goes.
const BESIDE: [&str; 2] = ["-wal", "-shm"];

/// Puts a backup in the place of a book. The backup is read first; the old file, whole or damaged, is kept under a
/// name with the time, which is given back.
///
/// # Errors
///
/// If the backup is not whole, another program has the book open, or a file cannot be moved or written. The old book is
/// then still in its place.
pub fn restore_book(
    backup: &Path,
    book: &Path,
    now: Timestamp,
) -> Result<(Head, Option<PathBuf>), BackupError> {
    let head = require_good_copy(backup)?;
    if let Some(folder) = book.parent() {
        fs::create_dir_all(folder).map_err(|source| file_fault(folder, source))?;
    }
    let mut watch = Watch::take(book);
    if watch.as_ref().is_some_and(|watch| !watch.came_alone) {
        return Err(BackupError::InUse { path: book.to_owned() });
    }
    let part = path_beside(book, ".part");
    remove_if_there(&part)?;
    let copy = || -> std::io::Result<()> {
        fs::copy(backup, &part)?;
        File::open(&part)?.sync_all()
    };
    copy().map_err(|source| file_fault(&part, source))?;
    // The copy is read as well: the backup's disk may be good and ours not.
    require_good_copy(&part)?;

    let kept = keep_old(book, now)?;
    fs::rename(&part, book).map_err(|source| file_fault(book, source))?;
    sync_folder(book);
    if let Some(watch) = &mut watch {
        watch.write(head);
    }
    Ok((head, kept))
}

/// Moves the book that is there out of the way, with the files beside it.
fn keep_old(book: &Path, now: Timestamp) -> Result<Option<PathBuf>, BackupError> {
    if !book.exists() {
        // What is left of a book whose file is gone does not belong to the one that comes.
        for ending in BESIDE {
            let stray = path_beside(book, ending);
            if stray.exists() {
                let kept = free_name(&stray, now);
                fs::rename(&stray, &kept).map_err(|source| file_fault(&stray, source))?;
            }
        }
        return Ok(None);
    }
    let kept = free_name(book, now);
    for ending in BESIDE {
        let beside = path_beside(book, ending);
        if beside.exists() {
            fs::rename(&beside, path_beside(&kept, ending)).map_err(|source| file_fault(&beside, source))?;
        }
    }
    fs::rename(book, &kept).map_err(|source| file_fault(book, source))?;
    Ok(Some(kept))
}

/// A name that nothing has yet.
fn free_name(book: &Path, now: Timestamp) -> PathBuf {
    let stamp = now.strftime("%Y-%m-%dT%H%M%SZ");
    let mut name = path_beside(book, &format!(".kept-{stamp}"));
    let mut number = 2;
    while name.exists() {
        name = path_beside(book, &format!(".kept-{stamp}-{number}"));
        number += 1;
    }
    name
}

/// Makes sure that the new name is on the disk, where the system can say so.
fn sync_folder(book: &Path) {
    if let Some(folder) = book.parent() {
        let _ = File::open(folder).and_then(|folder| folder.sync_all());
    }
}
