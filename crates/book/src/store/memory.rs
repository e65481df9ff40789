//! A journal in memory: for tests, and for trying an import before it is believed.

use std::collections::BTreeMap;

use crate::Id;
use crate::chain::Link;
use crate::entry::Written;

use super::{Head, Position, Store, StoreError, StoredSnapshot};

/// A journal that is gone with the program.
#[derive(Debug, Clone, Default)]
pub struct MemoryStore {
    entries: Vec<(Written, Link)>,
    by_id: BTreeMap<Id, usize>,
    snapshot: Option<StoredSnapshot>,
}

impl MemoryStore {
    fn end(&self) -> Head {
        self.entries.last().map_or(Head::EMPTY, |(_, link)| Head {
            position: Position(self.entries.len() as u64),
            link: *link,
        })
    }
}

impl Store for MemoryStore {
    fn head(&self) -> Result<Head, StoreError> {
        Ok(self.end())
    }

    fn append(&mut self, group: &[Written], expected: Option<Head>) -> Result<Head, StoreError> {
        let mut head = self.end();
        if let Some(expected) = expected.filter(|expected| *expected != head) {
            return Err(StoreError::Moved { expected: expected.position, found: head.position });
        }
        let begun = self.entries.len();
        for written in group {
            let id = written.entry().id;
            match self.by_id.get(&id) {
                Some(at) if self.entries[*at].0.says_the_same(written) => {}
                Some(_) => {
                    // Whole or not at all: what this group has added goes again.
                    self.entries.truncate(begun);
                    self.by_id.retain(|_, at| *at < begun);
                    return Err(StoreError::OtherWords { id });
                }
                None => {
                    head = head.after(written.text());
                    self.by_id.insert(id, self.entries.len());
                    self.entries.push((written.clone(), head.link));
                }
            }
        }
        Ok(head)
    }

    fn read_after(&self, from: Head, reader: &mut dyn FnMut(Written, Head)) -> Result<(), StoreError> {
        let skipped = usize::try_from(from.position.0).unwrap_or(usize::MAX);
        for (index, (written, link)) in self.entries.iter().enumerate().skip(skipped) {
            reader(written.clone(), Head { position: Position(index as u64 + 1), link: *link });
        }
        Ok(())
    }

    fn read_snapshot(&self) -> Result<Option<StoredSnapshot>, StoreError> {
        Ok(self.snapshot.clone())
    }

    fn write_snapshot(&mut self, snapshot: &StoredSnapshot) -> Result<(), StoreError> {
        self.snapshot = Some(snapshot.clone());
        Ok(())
    }

    fn find_link(&self, position: Position) -> Result<Option<Link>, StoreError> {
        if position.0 == 0 {
            return Ok(Some(Link::FIRST));
        }
        let at = usize::try_from(position.0 - 1).unwrap_or(usize::MAX);
        Ok(self.entries.get(at).map(|(_, link)| *link))
    }
}
