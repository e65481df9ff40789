//! A book that is open: its store, its views, and how far they have come.

use std::sync::Arc;

use crate::chain::Link;
use crate::entry::{Entry, EntryError, Written};
use crate::snapshot;
use crate::store::{Head, Store, StoreError};
use crate::view::Views;

/// How many entries may be read from their texts at opening before a new snapshot is worth its writing.
const SNAPSHOT_AFTER: u64 = 2_000;

/// An open book.
#[derive(Debug)]
pub struct Book<S> {
    store: S,
    views: Views,
    head: Head,
    snapshot_at: u64,
}

/// Why an act was not written down.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// The store could not.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The entry has no text.
    #[error(transparent)]
    Entry(#[from] EntryError),
}

impl<S: Store> Book<S> {
    /// Draws the views of a journal: from its snapshot where the chain passes through it, and the texts behind it.
    ///
    /// # Errors
    ///
    /// If the store cannot be read or the chain does not hold.
    pub fn open(store: S) -> Result<Self, StoreError> {
        let (views, head) = match store.read_snapshot()? {
            Some(found) if store.find_link(found.head.position)? == Some(found.head.link) => {
                snapshot::read_snapshot(&found)
                    .map_or((Views::default(), Head::EMPTY), |views| (views, found.head))
            }
            _ => (Views::default(), Head::EMPTY),
        };
        let mut book = Self { store, views, snapshot_at: head.position.0, head };
        book.catch_up()?;
        Ok(book)
    }

    /// Reads what others have written meanwhile.
    ///
    /// # Errors
    ///
    /// As [`Book::open`].
    pub fn catch_up(&mut self) -> Result<(), StoreError> {
        let (views, head) = (&mut self.views, &mut self.head);
        self.store.read_after(*head, &mut |written, at| {
            views.apply(Arc::new(written.into_entry()));
            *head = at;
        })
    }

    /// Writes down a group of entries, whole or not at all, that was decided by what the views show.
    ///
    /// # Errors
    ///
    /// [`StoreError::Moved`] if others have written meanwhile: [`Book::catch_up`] and decide again. Otherwise as
    /// [`Store::append`].
    pub fn append(&mut self, group: Vec<Entry>) -> Result<(), WriteError> {
        let group: Vec<Written> = group.into_iter().map(Written::of).collect::<Result<_, _>>()?;
        let new: Vec<&Written> =
            group.iter().filter(|written| self.views.record.find(written.entry().id).is_none()).collect();
        let expected = new.iter().fold(self.head, |head, written| head.after(written.text()));
        let head = self.store.append(&group, Some(self.head))?;
        if head == expected {
            for written in new {
                self.views.apply(Arc::new(written.entry().clone()));
            }
            self.head = head;
        } else {
            // An id twice in one group: rare enough to read back what was written.
            self.catch_up()?;
        }
        Ok(())
    }

    /// Adds entries of another book or device, with their texts; those that are here already are left out. Gives the
    /// number of new ones.
    ///
    /// # Errors
    ///
    /// As [`Store::append`].
    pub fn merge(&mut self, entries: &[Written]) -> Result<u64, StoreError> {
        let before = self.store.head()?;
        let after = self.store.append(entries, None)?;
        self.catch_up()?;
        Ok(after.position.0 - before.position.0)
    }

    /// Keeps a snapshot if enough has been written since the last.
    ///
    /// # Errors
    ///
    /// If it cannot be written. Nothing is lost then but time at the next opening.
    pub fn keep_snapshot(&mut self) -> Result<bool, StoreError> {
        if self.head.position.0 < self.snapshot_at + SNAPSHOT_AFTER {
            return Ok(false);
        }
        let Some(found) = snapshot::write_snapshot(&self.views, self.head) else { return Ok(false) };
        self.store.write_snapshot(&found)?;
        self.snapshot_at = self.head.position.0;
        Ok(true)
    }

    /// The views.
    #[must_use]
    pub fn views(&self) -> &Views {
        &self.views
    }

    /// How far they have come.
    #[must_use]
    pub fn head(&self) -> Head {
        self.head
    }

    /// The link of the last entry: two books with the same link are the same.
    #[must_use]
    pub fn link(&self) -> Link {
        self.head.link
    }

    /// The store.
    #[must_use]
    pub fn store(&self) -> &S {
        &self.store
    }

    /// The store, to verify or copy.
    #[must_use]
    pub fn store_mut(&mut self) -> &mut S {
        &mut self.store
    }
}
