//! Workings: what goes on by itself for days and wants to be looked at.

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

use crate::quantity::{Amount, HundredthsPh, MilliCelsius, Milligrams};
use crate::{Id, ItemId};

/// What kind of working.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WorkingKind {
    /// A ferment.
    Ferment,
    /// Drying.
    Drying,
    /// Dried pieces evening out in a jar.
    Conditioning,
    /// Jars cooling, twelve hours and more before the seals are looked at.
    Cooling,
    /// A pickle or liqueur that wants weeks.
    Steeping,
}

/// A working was begun.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkingBegun {
    /// What it is called.
    pub name: Box<str>,
    /// What kind.
    pub what: WorkingKind,
    /// Its batch, where it has one.
    pub batch: Option<Id>,
    /// Its lot, where it has one: jars that cool.
    pub lot: Option<Id>,
    /// What it is in.
    pub vessel: Option<ItemId>,
    /// Where it stands.
    pub shelf: Option<ItemId>,
    /// How much there is of it.
    pub amount: Option<Amount>,
    /// When to look at it next.
    pub next_look: Option<Date>,
}

/// What grows on a surface.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Surface {
    /// Nothing.
    Clear,
    /// A thin white film.
    Film,
    /// Mould.
    Mould,
}

/// A working was looked at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkingLooked {
    /// The working.
    pub working: Id,
    /// How warm it is.
    pub temp_mc: Option<MilliCelsius>,
    /// What the meter or the strip showed.
    pub ph_hundredths: Option<HundredthsPh>,
    /// What it weighs.
    pub weight_mg: Option<Milligrams>,
    /// How it tastes: not sour enough.
    pub taste: Option<Box<str>>,
    /// What grows on it.
    pub surface: Option<Surface>,
    /// What was added to keep it covered.
    pub topped_up: Option<Amount>,
    /// When to look at it next.
    pub next_look: Option<Date>,
}

/// A working was moved: into the cold, off the rack.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkingMoved {
    /// The working.
    pub working: Id,
    /// To where.
    pub to: ItemId,
    /// When to look at it next.
    pub next_look: Option<Date>,
}

/// How a working ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WorkingOutcome {
    /// It is done and put up.
    Done,
    /// It was eaten from the crock.
    Eaten,
    /// It was thrown away.
    Thrown,
}

/// A working ended.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkingEnded {
    /// The working.
    pub working: Id,
    /// How.
    pub outcome: WorkingOutcome,
    /// The lot it became.
    pub lot: Option<Id>,
}
