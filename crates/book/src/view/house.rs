//! Things of the house as they are now.

use crate::ItemId;
use crate::act::{Act, HouseThing};
use crate::record::{Change, Standing};

use super::View;
use super::thread::{Fold, Threads};

/// One thing of the house.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Item {
    thing: Option<HouseThing>,
}

impl Item {
    /// What it is; `None` once it was dropped.
    #[must_use]
    pub fn thing(&self) -> Option<&HouseThing> {
        self.thing.as_ref()
    }
}

impl Fold for Item {
    fn step(&mut self, act: &Standing) {
        match &act.entry.act {
            Act::HouseSet(set) => self.thing = Some(set.thing.clone()),
            Act::HouseDropped(_) => self.thing = None,
            _ => {}
        }
    }
}

/// All things of the house.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct House {
    items: Threads<ItemId, Item>,
}

impl House {
    /// A thing by its name for good.
    #[must_use]
    pub fn find(&self, item: &ItemId) -> Option<&HouseThing> {
        self.items.find(item)?.thing()
    }

    /// Everything there is, by name.
    pub fn things(&self) -> impl Iterator<Item = (&ItemId, &HouseThing)> {
        self.items.iter().filter_map(|(id, item)| Some((id, item.thing()?)))
    }
}

impl View for House {
    fn change(&mut self, change: &Change) {
        self.items.change(change, |act| match &act.entry.act {
            Act::HouseSet(set) => Some(set.item.clone()),
            Act::HouseDropped(dropped) => Some(dropped.item.clone()),
            _ => None,
        });
    }
}
