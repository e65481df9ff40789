//! Baskets: what came in, and what is left of it.

use crate::Id;
use crate::act::{Act, BasketTakenIn};
use crate::quantity::{Amount, Microlitres, Milligrams};
use crate::record::{Change, Standing};

use super::View;
use super::thread::{Fold, Threads};

/// What is left of a basket.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Remaining {
    /// So much.
    Known(Amount),
    /// Something was taken that was measured another way: at most so much.
    AtMost(Amount),
    /// Nothing.
    Nothing,
}

/// One basket.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Basket {
    taken_in: Option<Standing>,
    used: Vec<Standing>,
    left: Vec<Standing>,
}

impl Basket {
    /// What came in; `None` when that was struck and something about it was not.
    #[must_use]
    pub fn taken_in(&self) -> Option<&BasketTakenIn> {
        match &self.taken_in.as_ref()?.entry.act {
            Act::BasketTakenIn(taken) => Some(taken),
            _ => None,
        }
    }

    /// The act by which it came in.
    #[must_use]
    pub fn act(&self) -> Option<&Standing> {
        self.taken_in.as_ref()
    }

    /// What was used of it.
    #[must_use]
    pub fn used(&self) -> &[Standing] {
        &self.used
    }

    /// What left the kitchen as it was.
    #[must_use]
    pub fn left(&self) -> &[Standing] {
        &self.left
    }

    /// What is left of it.
    #[must_use]
    pub fn remaining(&self) -> Remaining {
        let Some(taken) = self.taken_in() else { return Remaining::Nothing };
        let mut rest = taken.weight.net();
        let mut is_sharp = true;
        for act in self.used.iter().chain(&self.left) {
            let amount = match &act.entry.act {
                Act::BasketUsed(used) => used.amount,
                Act::BasketLeft(left) => left.amount,
                _ => continue,
            };
            let Some(amount) = amount else { return Remaining::Nothing };
            rest = match (rest, amount) {
                (Amount::Mass(rest), Amount::Mass(part)) => {
                    Amount::Mass(Milligrams(rest.0.saturating_sub(part.0)))
                }
                (Amount::Volume(rest), Amount::Volume(part)) => {
                    Amount::Volume(Microlitres(rest.0.saturating_sub(part.0)))
                }
                (Amount::Count(rest), Amount::Count(part)) => Amount::Count(rest.saturating_sub(part)),
                (rest, _) => {
                    is_sharp = false;
                    rest
                }
            };
        }
        let (Amount::Mass(Milligrams(number)) | Amount::Volume(Microlitres(number)) | Amount::Count(number)) =
            rest;
        match number {
            ..=0 => Remaining::Nothing,
            _ if is_sharp => Remaining::Known(rest),
            _ => Remaining::AtMost(rest),
        }
    }
}

impl Fold for Basket {
    fn step(&mut self, act: &Standing) {
        match &act.entry.act {
            Act::BasketTakenIn(_) => self.taken_in = Some(act.clone()),
            Act::BasketUsed(_) => self.used.push(act.clone()),
            Act::BasketLeft(_) => self.left.push(act.clone()),
            _ => {}
        }
    }
}

/// All baskets.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Baskets {
    threads: Threads<Id, Basket>,
}

impl Baskets {
    /// A basket by its id.
    #[must_use]
    pub fn find(&self, id: Id) -> Option<&Basket> {
        self.threads.find(&id)
    }

    /// Every basket, the earliest id first.
    pub fn iter(&self) -> impl Iterator<Item = (Id, &Basket)> {
        self.threads.iter().map(|(id, basket)| (*id, basket))
    }

    /// Baskets that still hold something.
    pub fn waiting(&self) -> impl Iterator<Item = (Id, &Basket)> {
        self.iter().filter(|(_, basket)| basket.remaining() != Remaining::Nothing)
    }
}

impl View for Baskets {
    fn change(&mut self, change: &Change) {
        self.threads.change(change, |act| act.entry.act.basket(act.id));
    }
}
