//! The ledger: an append-only journal, its stores, and the views drawn from it.
//!
//! The journal is the truth; everything else is computed from it and can be thrown away.
//!
//! - An [`Entry`] says one [`act::Act`]: who, when it happened, when the book learned of it. [`Written`] is the entry
//!   with its canonical text; a [`Link`] binds each text to all before it.
//! - A [`Record`] resolves corrections and strikes, whatever order entries came in, and tells each arrival as a
//!   [`Change`].
//! - A [`Store`] keeps the texts: [`SqliteStore`] in a file, [`MemoryStore`] for as long as the program runs.
//! - [`view`] holds the pure folds, one module each; [`view::Views`] is all of them. A [`Book`] is a store with its views.

pub mod act;
mod book;
mod canonical;
mod chain;
mod day;
mod entry;
mod id;
mod lines;
mod moment;
mod quantity;
mod record;
mod snapshot;
mod store;
#[cfg(test)]
mod testing;
pub mod view;

pub use book::{Book, WriteError};
pub use canonical::CanonicalError;
pub use chain::{Link, LinkError};
pub use day::{RoughDate, RoughDateError};
pub use entry::{ENTRY_VERSION, Entry, EntryError, LONGEST_ENTRY, Written};
pub use id::{Id, IdError, ItemId};
pub use lines::{LineFault, LineFaults, export_lines, read_lines};
pub use moment::{Moment, MomentError};
pub use quantity::{Amount, HundredthsPh, Microlitres, MilliCelsius, Milligrams, Pascals, Price};
pub use record::{Change, Record, Standing};
pub use store::{
    BackupError, Damage, Head, MemoryStore, NotSaved, OpenNote, Opened, Position, SqliteStore, Store,
    StoreError, StoredSnapshot, Verified, copy_book, restore_book, rotate_backups,
};
