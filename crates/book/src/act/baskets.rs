//! Baskets: what came in and still waits.

use serde::{Deserialize, Serialize};

use crate::quantity::{Amount, Milligrams, Price};
use crate::{Id, ItemId};

/// How a basket was weighed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum BasketWeight {
    /// Bowl and all: the tare is written down as it was then, the bowl beside it.
    #[serde(rename = "gross")]
    Gross {
        /// What the scale showed.
        gross_mg: Milligrams,
        /// What the bowl weighs.
        tare_mg: Milligrams,
        /// Which bowl, where it is one of the house.
        bowl: Option<ItemId>,
    },
    /// Without its bowl, or counted, or measured.
    #[serde(rename = "net")]
    Net(Amount),
}

impl BasketWeight {
    /// What is in it.
    #[must_use]
    pub fn net(&self) -> Amount {
        match self {
            Self::Gross { gross_mg, tare_mg, .. } => {
                Amount::Mass(Milligrams(gross_mg.0.saturating_sub(tare_mg.0).max(0)))
            }
            Self::Net(amount) => *amount,
        }
    }
}

/// Produce came into the house.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BasketTakenIn {
    /// What it is, in the household's words.
    pub name: Box<str>,
    /// The produce by its id in the published tables, where it is one of them.
    pub produce: Option<Box<str>>,
    /// How much.
    pub weight: BasketWeight,
    /// Split, overgrown, unripe, fallen, frosted, bought to fill up.
    #[serde(default)]
    pub condition: Vec<Box<str>>,
    /// The garden bed, the neighbour, the market.
    pub origin: Option<Box<str>>,
    /// What was paid.
    pub price: Option<Price>,
}

/// A part of a basket went into a batch or an open container.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BasketUsed {
    /// The basket.
    pub basket: Id,
    /// How much; absent means all that was left.
    pub amount: Option<Amount>,
    /// The batch or lot it went into, where it is in the book.
    pub into: Option<Id>,
}

/// Where produce went that was not put up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WentWhere {
    /// Eaten fresh.
    EatenFresh,
    /// Composted, or fed to hens.
    Composted,
    /// Given away.
    Given,
    /// Sold.
    Sold,
}

/// A part of a basket left the kitchen as it was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BasketLeft {
    /// The basket.
    pub basket: Id,
    /// How much; absent means all that was left.
    pub amount: Option<Amount>,
    /// Where it went.
    pub went: WentWhere,
    /// To whom.
    pub to: Option<Box<str>>,
}
