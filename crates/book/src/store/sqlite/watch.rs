//! The watch beside a book: who has it open, and how far it had come when it was last written.
//!
//! A database whose write-ahead file was cut off opens without a complaint: what was in the missing part is simply
//! not there. So after each acknowledged group the end of the journal is written into a small file beside the book,
//! `NAME-watch`; a book that ends before it has lost something, and says so. The watch is never waited for: one that is
//! old or missing says less, and nothing wrong.

use std::fs::{File, OpenOptions, TryLockError};
use std::io::{Read as _, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use crate::chain::Link;
use crate::store::{Head, Position};

/// The watch of one open book. The lock goes with it.
#[derive(Debug)]
pub(super) struct Watch {
    file: File,
    /// Whether nobody else had the book open when we came.
    pub(super) came_alone: bool,
}

impl Watch {
    /// Takes the watch; `None` where no file can be made beside the book, as on a locked card.
    pub(super) fn take(book: &Path) -> Option<Self> {
        let file = OpenOptions::new()
            .read(true)
            .write(true)
            .create(true)
            .truncate(false)
            .open(path_beside(book, "-watch"))
            .ok()?;
        let came_alone = match file.try_lock() {
            Ok(()) => true,
            Err(TryLockError::WouldBlock) => {
                file.lock_shared().ok()?;
                false
            }
            // A file system without locks: nothing is known of others.
            Err(TryLockError::Error(_)) => false,
        };
        Some(Self { file, came_alone })
    }

    /// Lets others in, once what is done alone is done.
    pub(super) fn let_others_in(&self) {
        if self.came_alone {
            // Between the two calls another may come and believe it is alone; it then checks what we have checked.
            let _ = self.file.unlock();
            let _ = self.file.lock_shared();
        }
    }

    /// The end of the journal when it was last written; `None` if the watch does not say.
    pub(super) fn read(&mut self) -> Option<Head> {
        let mut text = String::new();
        self.file.seek(SeekFrom::Start(0)).ok()?;
        (&self.file).take(LENGTH as u64).read_to_string(&mut text).ok()?;
        let (position, link) = text.trim_end().split_once(' ')?;
        let position = Position(position.parse().ok()?);
        Some(Head { position, link: link.parse::<Link>().ok()? })
    }

    /// Writes down how far the journal has come. Failing to is no loss.
    pub(super) fn write(&mut self, head: Head) {
        let line = format!("{:020} {}\n", head.position.0, head.link);
        debug_assert_eq!(line.len(), LENGTH);
        let _ = self.file.seek(SeekFrom::Start(0)).and_then(|_| self.file.write_all(line.as_bytes()));
    }
}

/// The length of the line in it: twenty digits, a blank, the link, a line end.
const LENGTH: usize = 20 + 1 + 64 + 1;

/// A file beside the book, named after it.
pub(super) fn path_beside(book: &Path, ending: &str) -> PathBuf {
    let mut name = book.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}
