//! Shelves: which lots stand on each.

use std::collections::{BTreeMap, BTreeSet};

use crate::{Id, ItemId};

use super::lots::{Lot, Lots};

/// Which lots stand on each shelf. `None` is the place where they were made.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Shelves {
    lots: BTreeMap<Option<ItemId>, BTreeSet<Id>>,
    shelves: BTreeMap<Id, BTreeSet<Option<ItemId>>>,
}

impl Shelves {
    /// Draws the shelves from the lots.
    #[must_use]
    pub fn rebuild(lots: &Lots) -> Self {
        let mut shelves = Self::default();
        for (id, lot) in lots.iter() {
            shelves.refresh(id, Some(lot));
        }
        shelves
    }

    /// Every shelf that something stands on.
    pub fn iter(&self) -> impl Iterator<Item = (Option<&ItemId>, &BTreeSet<Id>)> {
        self.lots.iter().map(|(shelf, lots)| (shelf.as_ref(), lots))
    }

    /// The lots on one shelf.
    pub fn lots_on(&self, shelf: Option<&ItemId>) -> impl Iterator<Item = Id> {
        self.lots.get(&shelf.cloned()).into_iter().flatten().copied()
    }

    pub(crate) fn refresh(&mut self, id: Id, lot: Option<&Lot>) {
        let now: BTreeSet<Option<ItemId>> =
            lot.into_iter().flat_map(Lot::stands).map(|(spot, _)| spot.shelf.clone()).collect();
        let before = self.shelves.remove(&id).unwrap_or_default();
        for shelf in before.difference(&now) {
            if let Some(lots) = self.lots.get_mut(shelf) {
                lots.remove(&id);
                if lots.is_empty() {
                    self.lots.remove(shelf);
                }
            }
        }
        for shelf in now.difference(&before) {
            self.lots.entry(shelf.clone()).or_default().insert(id);
        }
        if !now.is_empty() {
            self.shelves.insert(id, now);
        }
    }
}
