//! Things of the house: people, bowls, canners, shelves, supplies, wishes.

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use super::lots::Contents;
use crate::ItemId;
use crate::day::RoughDate;
use crate::quantity::{Milligrams, Pascals, Price};

/// What a shelf is, as far as it decides how long things keep.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ShelfKind {
    /// A shelf of the pantry.
    Pantry,
    /// A cellar.
    Cellar,
    /// A drawer of the freezer.
    Freezer,
    /// A refrigerator.
    Refrigerator,
}

/// One thing of the house.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HouseThing {
    /// Someone who works in the kitchen.
    Person {
        /// What they are called.
        name: Box<str>,
        /// Whether careful work may be given to them.
        careful: bool,
    },
    /// A bowl, with what it weighs.
    Bowl {
        /// What it is called.
        name: Box<str>,
        /// What it weighs empty.
        tare_mg: Milligrams,
    },
    /// A canner, a kettle, a dehydrator.
    Appliance {
        /// What it is called.
        name: Box<str>,
        /// Its kind in the words of the published tables.
        kind: Box<str>,
        /// What goes in at once.
        holds: Vec<Contents>,
    },
    /// A dial gauge, and when it was last tested.
    Gauge {
        /// What it is called.
        name: Box<str>,
        /// How far it reads high (positive) or low.
        error_pa: Option<Pascals>,
        /// When that was found.
        tested: Option<Date>,
    },
    /// Burners of the stove.
    Burners {
        /// How many.
        count: i64,
    },
    /// Empty jars of one size and mouth.
    Jars {
        /// The size.
        size: Box<str>,
        /// The mouth: regular, wide.
        mouth: Option<Box<str>>,
        /// How many.
        count: i64,
    },
    /// A shelf.
    Shelf {
        /// What it is called.
        name: Box<str>,
        /// What it is, where that was said.
        kind: Option<ShelfKind>,
    },
    /// A box of lids, a bottle of vinegar, a bag of salt.
    Supply {
        /// What it is.
        name: Box<str>,
        /// What its maker stamped on it.
        stamp: Option<Box<str>>,
        /// When it was bought.
        bought: Option<RoughDate>,
        /// What was paid.
        price: Option<Price>,
    },
    /// How much the household likes something.
    Like {
        /// What.
        name: Box<str>,
        /// From -2, nobody eats it, to 2, there is never enough.
        how_much: i64,
    },
    /// What the winter wants.
    Target {
        /// What, as lots are named.
        name: Box<str>,
        /// How many, by size.
        wants: Vec<Contents>,
    },
    /// A formula the household copied or made up. Not tested by us, whatever it says.
    OwnFormula {
        /// What it is called.
        name: Box<str>,
        /// The whole of it as text.
        text: Box<str>,
    },
    /// A recalled row of the published tables that the household has looked up in print.
    ConfirmedRow {
        /// The row's name.
        row: Box<str>,
        /// Where it was seen.
        seen_in: Box<str>,
    },
}

/// A thing of the house is as said here, from now on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct HouseSet {
    /// Its name for good.
    pub item: ItemId,
    /// What it is.
    pub thing: HouseThing,
}

/// A thing of the house is no more.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct HouseDropped {
    /// Its name.
    pub item: ItemId,
}
