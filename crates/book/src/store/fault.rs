//! What can go wrong with a store, as sentences with one thing to do.

use std::path::PathBuf;

use crate::Id;
use crate::entry::EntryError;

use super::Position;

/// Why entries could not be made sure of. Nothing of the group counts as written; sending it again is always right.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotSaved {
    /// No room on the disk.
    DiskFull,
    /// The file or the disk may only be read.
    ReadOnly,
    /// The disk did not confirm that it has written.
    NotConfirmed,
    /// The file was taken away or replaced while it was open.
    TakenAway,
    /// Someone else has been writing for longer than we wait.
    Busy,
    /// The disk failed otherwise.
    DiskFailed,
}

impl NotSaved {
    fn says(self) -> &'static str {
        match self {
            Self::DiskFull => {
                "the disk is full; hint: make room, then say it again; what was saved before is untouched"
            }
            Self::ReadOnly => {
                "the file may only be read; hint: look whether its folder is on a locked card or belongs to someone else, \
                 or give another place with --book"
            }
            Self::NotConfirmed => {
                "the disk did not confirm that it was written; hint: open the book again and look whether the act is \
                 there before saying it again, and copy the book to another disk with `stillroom book backup`"
            }
            Self::TakenAway => {
                "the file was moved, deleted or replaced while the book was open; hint: put it back, or restore a \
                 backup with `stillroom book restore`, then say it again"
            }
            Self::Busy => {
                "another program has been writing in the book for too long; hint: wait a moment and say it again"
            }
            Self::DiskFailed => {
                "the disk failed; hint: copy the book to another disk with `stillroom book backup` before anything else"
            }
        }
    }
}

/// What went wrong with a store.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Not saved.
    #[error("not saved in {}: {}", .path.display(), .why.says())]
    NotSaved {
        /// The book's file.
        path: PathBuf,
        /// Why.
        why: NotSaved,
        /// What the library said.
        #[source]
        source: Option<rusqlite::Error>,
    },
    /// The journal ends elsewhere than expected.
    #[error(
        "the book has moved on from entry {} to entry {} meanwhile; hint: look again, then say it again",
        .expected.0, .found.0
    )]
    Moved {
        /// Where it was to end.
        expected: Position,
        /// Where it ends.
        found: Position,
    },
    /// An id is there with other words.
    #[error(
        "entry {id} is in the book already, with other words; hint: two books were written from one copy; keep both \
         files, and correct the entry instead of sending another under its name"
    )]
    OtherWords {
        /// The id.
        id: Id,
    },
    /// It is not a book.
    #[error("{} is not a book of this program; hint: give the file of a book with --book, or a new name", .path.display())]
    NotABook {
        /// The file.
        path: PathBuf,
    },
    /// It was made by a newer program.
    #[error(
        "{} was written by a newer program (book version {found}, this one reads {known}); hint: use the newer program; \
         nothing was changed", .path.display()
    )]
    Newer {
        /// The file.
        path: PathBuf,
        /// Its version.
        found: i64,
        /// Ours.
        known: i64,
    },
    /// There is no such file.
    #[error("there is no book at {}; hint: look for the file, or restore a backup with `stillroom book restore`", .path.display())]
    Missing {
        /// The file.
        path: PathBuf,
    },
    /// The chain does not hold.
    #[error(
        "entry {} of {} is not what was written: the file is damaged; hint: leave the file as it is and restore the \
         last good backup with `stillroom book restore`; `stillroom book verify` says what else is wrong",
        .position.0, .path.display()
    )]
    Damaged {
        /// The file.
        path: PathBuf,
        /// The first entry that does not fit.
        position: Position,
        /// What could not be read, if the text could not.
        #[source]
        source: Option<EntryError>,
    },
    /// The file itself is damaged.
    #[error(
        "{} is damaged: {what}; hint: leave the file as it is and restore the last good backup with `stillroom book \
         restore`", .path.display()
    )]
    Broken {
        /// The file.
        path: PathBuf,
        /// What the database says.
        what: String,
    },
    /// It cannot be read.
    #[error("{} cannot be read; hint: look whether the disk is there and the file may be read", .path.display())]
    Unreadable {
        /// The file.
        path: PathBuf,
        /// What the library said.
        #[source]
        source: rusqlite::Error,
    },
    /// After a write that the disk did not confirm nothing more is written through this opening of the book.
    #[error(
        "not saved in {}: an earlier act could not be made sure of, so nothing more is written; hint: open the book \
         again", .path.display()
    )]
    MustReopen {
        /// The file.
        path: PathBuf,
    },
}
