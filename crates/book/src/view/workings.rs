//! Workings: what goes on by itself, and when to look at it next.

use std::collections::BTreeSet;

use jiff::civil::Date;

use crate::Id;
use crate::ItemId;
use crate::act::{Act, WorkingBegun, WorkingEnded};
use crate::record::{Change, Standing};

use super::View;
use super::thread::{Fold, Threads};

/// One working.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Working {
    begun: Option<Standing>,
    looks: Vec<Standing>,
    shelf: Option<ItemId>,
    next_look: Option<Date>,
    ended: Option<Standing>,
}

impl Working {
    /// How it was begun.
    #[must_use]
    pub fn begun(&self) -> Option<&WorkingBegun> {
        match &self.begun.as_ref()?.entry.act {
            Act::WorkingBegun(begun) => Some(begun),
            _ => None,
        }
    }

    /// The act by which it was begun.
    #[must_use]
    pub fn act(&self) -> Option<&Standing> {
        self.begun.as_ref()
    }

    /// Looks and moves, as they happened.
    #[must_use]
    pub fn looks(&self) -> &[Standing] {
        &self.looks
    }

    /// Where it stands.
    #[must_use]
    pub fn shelf(&self) -> Option<&ItemId> {
        self.shelf.as_ref()
    }

    /// When to look at it next.
    #[must_use]
    pub fn next_look(&self) -> Option<Date> {
        self.next_look
    }

    /// How it ended.
    #[must_use]
    pub fn ended(&self) -> Option<&WorkingEnded> {
        match &self.ended.as_ref()?.entry.act {
            Act::WorkingEnded(ended) => Some(ended),
            _ => None,
        }
    }

    fn is_open(&self) -> bool {
        self.begun.is_some() && self.ended.is_none()
    }
}

impl Fold for Working {
    fn step(&mut self, act: &Standing) {
        match &act.entry.act {
            Act::WorkingBegun(begun) => {
                self.begun = Some(act.clone());
                self.shelf = begun.shelf.clone();
                self.next_look = begun.next_look;
            }
            Act::WorkingLooked(looked) => {
                self.looks.push(act.clone());
                self.next_look = looked.next_look;
            }
            Act::WorkingMoved(moved) => {
                self.looks.push(act.clone());
                self.shelf = Some(moved.to.clone());
                self.next_look = moved.next_look;
            }
            Act::WorkingEnded(_) => self.ended = Some(act.clone()),
            _ => {}
        }
    }
}

/// All workings.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Workings {
    threads: Threads<Id, Working>,
    open: BTreeSet<Id>,
}

impl Workings {
    /// A working by its id.
    #[must_use]
    pub fn find(&self, id: Id) -> Option<&Working> {
        self.threads.find(&id)
    }

    /// Every working, the earliest id first.
    pub fn iter(&self) -> impl Iterator<Item = (Id, &Working)> {
        self.threads.iter().map(|(id, working)| (*id, working))
    }

    /// Workings that go on.
    pub fn open(&self) -> impl Iterator<Item = (Id, &Working)> {
        self.open.iter().filter_map(|id| Some((*id, self.find(*id)?)))
    }

    /// Workings to look at by a day, the longest due first; those without a date last.
    #[must_use]
    pub fn due(&self, by: Date) -> Vec<(Id, &Working)> {
        let mut due: Vec<(Id, &Working)> =
            self.open().filter(|(_, working)| working.next_look.is_none_or(|date| date <= by)).collect();
        due.sort_by_key(|(id, working)| (working.next_look.unwrap_or(Date::MAX), *id));
        due
    }
}

impl View for Workings {
    fn change(&mut self, change: &Change) {
        for id in self.threads.change(change, |act| act.entry.act.working(act.id)) {
            if self.threads.find(&id).is_some_and(Working::is_open) {
                self.open.insert(id);
            } else {
                self.open.remove(&id);
            }
        }
    }
}
