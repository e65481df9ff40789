//! Lots: containers put up together, where they stand, and what became of each.

use almanac::JarSize;
use measure::Volume;
use serde::{Deserialize, Serialize};

use crate::day::RoughDate;
use crate::quantity::Amount;
use crate::{Id, ItemId};

/// Containers of one size.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Contents {
    /// The size: a jar of the published list (`half-pint`), or the household's words (`1 qt bag`).
    pub size: Box<str>,
    /// How many.
    pub count: i64,
}

/// Where containers of one size stand.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Spot {
    /// The size.
    pub size: Box<str>,
    /// The shelf; absent while they stand where they were made.
    pub shelf: Option<ItemId>,
}

impl Spot {
    /// What one container holds to the brim, where its size is a jar of the published list.
    ///
    /// # Examples
    ///
    /// ```
    /// use book::act::Spot;
    /// use measure::Volume;
    ///
    /// let spot = |size: &str| Spot { size: size.into(), shelf: None };
    /// assert_eq!(spot("half-pint").volume(), Some(Volume::fluid_ounces(8.0)));
    /// assert_eq!(spot("Otto's old jar").volume(), None);
    /// ```
    #[must_use]
    pub fn volume(&self) -> Option<Volume> {
        JarSize::find(&self.size).map(JarSize::volume)
    }
}

/// Containers and where they were put.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Put {
    /// The size and the shelf.
    #[serde(rename = "at")]
    pub spot: Spot,
    /// How many.
    pub count: i64,
}

/// How the book came to know of a lot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Told {
    /// It was put up at the bench, load by load.
    AsMade,
    /// It was written down afterwards: process not recorded, no verdict.
    AfterTheFact,
    /// It stood there before this book.
    BeforeThisBook,
}

/// What an open container holds, as far as it decides whether it may be topped up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OpenHolds {
    /// A frozen bag, filled as it comes.
    Frozen,
    /// Dry goods.
    Dry,
    /// A brine crock.
    Brine,
    /// Acid food in a chilled jar: nothing low in acid, oiled or cooked.
    ChilledAcid,
}

/// A lot was put up: so many containers under one label number.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LotPutUp {
    /// The number on the label: `26-031`.
    pub label: Box<str>,
    /// What is in it, in the household's words.
    pub name: Box<str>,
    /// The formula by its id.
    pub formula: Option<Box<str>>,
    /// How the book knows.
    pub told: Told,
    /// When it was put up; absent when nobody knows.
    pub put_up: Option<RoughDate>,
    /// Containers, and where they were put.
    pub containers: Vec<Put>,
    /// How many it was to be.
    #[serde(default)]
    pub planned: Vec<Contents>,
    /// The batch.
    pub batch: Option<Id>,
    /// The loads.
    #[serde(default)]
    pub loads: Vec<Id>,
    /// Lots it was made of: jars that did not seal and were done again.
    #[serde(default)]
    pub from_lots: Vec<Id>,
    /// The box of lids, the bottle of vinegar, the bag of salt.
    #[serde(default)]
    pub supplies: Vec<ItemId>,
    /// Best before, where the household or a publication says so.
    pub eat_by: Option<RoughDate>,
    /// Where it stays open and is topped up: what it holds.
    pub open: Option<OpenHolds>,
}

/// What a seal turned out to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SealOutcome {
    /// It holds.
    Sealed,
    /// It does not.
    Failed,
}

/// Seals were looked at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SealsChecked {
    /// The lot.
    pub lot: Id,
    /// Which containers.
    #[serde(rename = "at")]
    pub spot: Spot,
    /// How many of them.
    pub count: i64,
    /// What was found.
    pub outcome: SealOutcome,
}

/// Why containers were lost before they were eaten.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LossReason {
    /// The glass broke.
    Broken,
    /// It went bad.
    Spoiled,
    /// It ran out.
    Spilt,
    /// It was done again, as another lot.
    DoneAgain,
    /// Called back because a sister was bad.
    CalledBack,
    /// It is not to be found.
    Missing,
}

/// Containers were lost.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ContainersLost {
    /// The lot.
    pub lot: Id,
    /// Which.
    #[serde(rename = "at")]
    pub spot: Spot,
    /// How many.
    pub count: i64,
    /// How many of them had not sealed.
    #[serde(default)]
    pub unsealed: i64,
    /// Why.
    pub reason: LossReason,
}

/// Containers were moved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ContainersMoved {
    /// The lot.
    pub lot: Id,
    /// From where.
    #[serde(rename = "at")]
    pub spot: Spot,
    /// How many.
    pub count: i64,
    /// How many of them had not sealed.
    #[serde(default)]
    pub unsealed: i64,
    /// To which shelf.
    pub to: Option<ItemId>,
}

/// Someone counted. A count is an assertion: it changes nothing until its difference is settled.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ShelfCounted {
    /// The lot.
    pub lot: Id,
    /// What and where.
    #[serde(rename = "at")]
    pub spot: Spot,
    /// How many there are.
    pub count: i64,
}

/// How the difference of a count was settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Settled {
    /// The count is right; nobody knows why. From then on there are as many as were counted.
    Accepted,
    /// The count was wrong, or they stood elsewhere; the book was right.
    BookWasRight,
}

/// The difference of a count was settled.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DifferenceSettled {
    /// The lot.
    pub lot: Id,
    /// The count.
    pub count: Id,
    /// How.
    pub how: Settled,
}

/// Where a container went that was taken off a shelf.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Went {
    /// Eaten at home.
    Eaten,
    /// Given to someone.
    Given(Box<str>),
    /// Swapped with someone.
    Swapped(Box<str>),
    /// Sold to someone, or at a market.
    Sold(Box<str>),
    /// Shown at a fair.
    Shown(Box<str>),
    /// Thrown away, and why.
    Thrown(Box<str>),
}

/// Containers were taken off a shelf. Where they went may be told later, by correcting the entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Drawn {
    /// The lot.
    pub lot: Id,
    /// Which.
    #[serde(rename = "at")]
    pub spot: Spot,
    /// How many.
    pub count: i64,
    /// How many of them had not sealed.
    #[serde(default)]
    pub unsealed: i64,
    /// Where they went, when it is known.
    pub went: Option<Went>,
}

/// Something is wrong with a container of a lot.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TroubleFound {
    /// The lot.
    pub lot: Id,
    /// What was seen: a bulging lid, mould, an off smell.
    pub signs: Vec<Box<str>>,
    /// In how many containers.
    pub count: i64,
}

/// Someone who has a sister container was told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SisterWarned {
    /// The lot.
    pub lot: Id,
    /// Who was told.
    pub told: Box<str>,
}

/// Something was added to an open container. It keeps the date of its oldest part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ToppedUp {
    /// The lot.
    pub lot: Id,
    /// How much.
    pub amount: Option<Amount>,
    /// From which basket.
    pub basket: Option<Id>,
    /// How old the part is, where it is older than its day in the container.
    pub from: Option<RoughDate>,
}

/// An open container was closed: nothing more is added.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpenClosed {
    /// The lot.
    pub lot: Id,
}
