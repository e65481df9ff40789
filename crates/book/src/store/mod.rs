//! Where a journal is kept: a small trait, and what can go wrong in words a person can act on.

mod fault;
mod memory;
mod sqlite;

use crate::chain::Link;
use crate::entry::Written;

pub use fault::{NotSaved, StoreError};
pub use memory::MemoryStore;
pub use sqlite::{
    BackupError, Damage, OpenNote, Opened, SqliteStore, Verified, copy_book, restore_book, rotate_backups,
};

/// How many entries stand before and including one: 0 for none. Positions have no gaps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Position(pub u64);

/// The end of a journal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Head {
    /// How many entries there are.
    pub position: Position,
    /// The link of the last.
    pub link: Link,
}

impl Head {
    /// The end of an empty journal.
    pub const EMPTY: Self = Self { position: Position(0), link: Link::FIRST };

    /// The end after one more entry.
    #[must_use]
    pub fn after(self, text: &str) -> Self {
        Self { position: Position(self.position.0 + 1), link: self.link.next(text) }
    }
}

/// The bytes of a snapshot, and the end of the journal they were drawn from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredSnapshot {
    /// The end of the journal then.
    pub head: Head,
    /// The bytes.
    pub bytes: Vec<u8>,
}

/// A place that keeps a journal.
///
/// One writer at a time, many readers, across processes. Once `append` has answered, its entries are there after any
/// crash; before, either the whole group is or nothing of it.
pub trait Store {
    /// The end of the journal.
    ///
    /// # Errors
    ///
    /// If the store cannot be read.
    fn head(&self) -> Result<Head, StoreError>;

    /// Adds a group of entries, whole or not at all, and gives the new end.
    ///
    /// Entries that are there already are left out. Where `expected` is given, the journal must still end there:
    /// whoever decided by what stood in the book is told when that has changed.
    ///
    /// # Errors
    ///
    /// [`StoreError::Moved`] if the journal ends elsewhere, [`StoreError::OtherWords`] if an id is there with other
    /// words, [`StoreError::NotSaved`] if it could not be made sure that the entries will be there tomorrow.
    fn append(&mut self, group: &[Written], expected: Option<Head>) -> Result<Head, StoreError>;

    /// Reads the texts after a position, in order, until the reader has enough.
    ///
    /// # Errors
    ///
    /// If the store cannot be read, or a text is not what the chain says.
    fn read_after(&self, from: Head, reader: &mut dyn FnMut(Written, Head)) -> Result<(), StoreError>;

    /// The last snapshot, if there is one.
    ///
    /// # Errors
    ///
    /// If the store cannot be read.
    fn read_snapshot(&self) -> Result<Option<StoredSnapshot>, StoreError>;

    /// Keeps a snapshot in place of the last one. It is never needed, and no entry waits for it.
    ///
    /// # Errors
    ///
    /// If it cannot be written.
    fn write_snapshot(&mut self, snapshot: &StoredSnapshot) -> Result<(), StoreError>;

    /// The link after so many entries; `None` if there are not so many.
    ///
    /// # Errors
    ///
    /// If the store cannot be read.
    fn find_link(&self, position: Position) -> Result<Option<Link>, StoreError>;
}
