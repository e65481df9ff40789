//! What the book shows: pure folds over the acts that stand.
//!
//! A view is changed by a [`Change`], which can take an act out as well as in, and so depends on the set of entries and
//! never on the order in which they arrived. Views can be thrown away and drawn again at any time.

mod all;
mod baskets;
mod batches;
mod eat_first;
mod house;
mod lots;
mod shelves;
mod tallies;
mod thread;
mod trace;
mod workings;

use std::sync::Arc;

use crate::entry::Entry;
use crate::record::{Change, Record};

pub use all::Views;
pub use baskets::{Basket, Baskets, Remaining};
pub use batches::{Batch, Batches, Load};
pub use eat_first::EatFirst;
pub use house::{House, Item};
pub use lots::{Counted, Lot, Lots, Stock};
pub use shelves::Shelves;
pub use tallies::{Figure, Tallies};
pub use trace::{Sister, Trace, trace_lot};
pub use workings::{Working, Workings};

/// A view that is changed act by act.
pub trait View: Default {
    /// Takes out the act that no longer stands, takes in the one that does.
    fn change(&mut self, change: &Change);
}

/// Draws a view from entries, in whatever order they come.
pub fn rebuild<V: View>(entries: impl IntoIterator<Item = Arc<Entry>>) -> V {
    let mut record = Record::default();
    let mut view = V::default();
    for entry in entries {
        view.change(&record.take(entry));
    }
    view
}
