//! All views of one book, changed together.

use std::sync::Arc;

use crate::entry::Entry;
use crate::record::Record;

use super::{Baskets, Batches, EatFirst, House, Lots, Shelves, Tallies, View, Workings};

/// Every view of a book, and the entries they are drawn from.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Views {
    /// What stands, and its history.
    pub record: Record,
    /// Things of the house.
    pub house: House,
    /// Baskets.
    pub baskets: Baskets,
    /// Batches and loads.
    pub batches: Batches,
    /// Lots.
    pub lots: Lots,
    /// Shelves.
    pub shelves: Shelves,
    /// What to eat first.
    pub eat_first: EatFirst,
    /// Workings.
    pub workings: Workings,
    /// What each day came to.
    pub tallies: Tallies,
}

impl Views {
    /// Takes one more entry in. What was taken in before changes nothing.
    pub fn apply(&mut self, entry: Arc<Entry>) {
        let change = self.record.take(entry);
        if change.is_none() {
            return;
        }
        self.house.change(&change);
        self.baskets.change(&change);
        self.batches.change(&change);
        self.workings.change(&change);
        self.tallies.change(&change);
        for lot in self.lots.change_and_name(&change) {
            let found = self.lots.find(lot);
            self.shelves.refresh(lot, found);
            self.eat_first.refresh(lot, found);
        }
    }

    /// Draws every view from entries, in whatever order they come.
    #[must_use]
    pub fn rebuild(entries: impl IntoIterator<Item = Arc<Entry>>) -> Self {
        let mut views = Self::default();
        for entry in entries {
            views.apply(entry);
        }
        views
    }
}
