//! Everything a person can do, as the journal holds it: one type a kind, one module a corner of the house.
//!
//! A field that was not known is absent; nothing is guessed in. References are ids of entries or of things of the
//! house. New optional fields may be added to a kind; a kind never changes its meaning: a new one is added.

mod baskets;
mod batches;
mod house;
mod lots;
mod workings;

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::Id;

pub use baskets::{BasketLeft, BasketTakenIn, BasketUsed, BasketWeight, WentWhere};
pub use batches::{
    AmountUsed, BatchBegun, BatchClosed, BatchPlanned, Interrupted, Line, LoadBegun, LoadEnded, LoadMark,
    LoadMarked, PlannedLoad, PlannedStep, ProcessNote, Slipped, StepBegun, StepDone, Work,
};
pub use house::{HouseDropped, HouseSet, HouseThing, ShelfKind};
pub use lots::{
    ContainersLost, ContainersMoved, Contents, DifferenceSettled, Drawn, LossReason, LotPutUp, OpenClosed,
    OpenHolds, Put, SealOutcome, SealsChecked, Settled, ShelfCounted, SisterWarned, Spot, Told, ToppedUp,
    TroubleFound, Went,
};
pub use workings::{
    Surface, WorkingBegun, WorkingEnded, WorkingKind, WorkingLooked, WorkingMoved, WorkingOutcome,
};

/// A word of the household about anything.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Noted {
    /// What it is about: a basket, a batch, a lot; none for the day itself.
    pub about: Option<Id>,
    /// The words.
    pub words: Box<str>,
}

/// Takes back the entry it follows. The reason stands in the entry's `why`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Struck {}

/// An act of a kind this program does not know: written by a newer one, kept and carried, counted nowhere.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Unknown {
    /// Its kind as written.
    pub kind: Box<str>,
    /// Its body as canonical JSON.
    pub json: Box<str>,
}

/// Declares the acts, each with the name of its kind.
macro_rules! acts {
    ($($name:ident = $kind:literal),+ $(,)?) => {
        /// One act.
        #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
        #[expect(missing_docs, reason = "each variant is documented at the type it holds")]
        pub enum Act {
            $($name($name),)+
            Unknown(Unknown),
        }

        impl Act {
            /// The kinds this program knows, in the order of the documented format.
            pub const KINDS: &[&str] = &[$($kind),+];

            /// The name of its kind.
            #[must_use]
            pub fn kind(&self) -> &str {
                match self {
                    $(Self::$name(_) => $kind,)+
                    Self::Unknown(unknown) => &unknown.kind,
                }
            }

            /// Reads a body of a known kind; `None` for a kind that is not known.
            pub(crate) fn read(kind: &str, body: &str) -> Option<Result<Self, serde_json::Error>> {
                match kind {
                    $($kind => Some(serde_json::from_str(body).map(Self::$name)),)+
                    _ => None,
                }
            }

            /// The body as JSON, with what is absent written as null.
            pub(crate) fn to_value(&self) -> Result<Value, serde_json::Error> {
                match self {
                    $(Self::$name(body) => serde_json::to_value(body),)+
                    Self::Unknown(unknown) => serde_json::from_str(&unknown.json),
                }
            }
        }

        $(impl From<$name> for Act {
            fn from(body: $name) -> Self {
                Self::$name(body)
            }
        })+
    };
}

acts!(
    HouseSet = "house-set",
    HouseDropped = "house-dropped",
    BasketTakenIn = "basket-taken-in",
    BasketUsed = "basket-used",
    BasketLeft = "basket-left",
    BatchPlanned = "batch-planned",
    BatchBegun = "batch-begun",
    StepBegun = "step-begun",
    StepDone = "step-done",
    AmountUsed = "amount-used",
    Interrupted = "interrupted",
    Slipped = "slipped",
    BatchClosed = "batch-closed",
    LoadBegun = "load-begun",
    LoadMarked = "load-marked",
    LoadEnded = "load-ended",
    LotPutUp = "lot-put-up",
    SealsChecked = "seals-checked",
    ContainersLost = "containers-lost",
    ContainersMoved = "containers-moved",
    ShelfCounted = "shelf-counted",
    DifferenceSettled = "difference-settled",
    Drawn = "drawn",
    TroubleFound = "trouble-found",
    SisterWarned = "sister-warned",
    ToppedUp = "topped-up",
    OpenClosed = "open-closed",
    WorkingBegun = "working-begun",
    WorkingLooked = "working-looked",
    WorkingMoved = "working-moved",
    WorkingEnded = "working-ended",
    Noted = "noted",
    Struck = "struck",
);

impl Act {
    /// The lot it is about, where it is about one; `own` is the id that its entry has.
    #[must_use]
    pub fn lot(&self, own: Id) -> Option<Id> {
        Some(match self {
            Self::LotPutUp(_) => own,
            Self::SealsChecked(act) => act.lot,
            Self::ContainersLost(act) => act.lot,
            Self::ContainersMoved(act) => act.lot,
            Self::ShelfCounted(act) => act.lot,
            Self::DifferenceSettled(act) => act.lot,
            Self::Drawn(act) => act.lot,
            Self::TroubleFound(act) => act.lot,
            Self::SisterWarned(act) => act.lot,
            Self::ToppedUp(act) => act.lot,
            Self::OpenClosed(act) => act.lot,
            _ => return None,
        })
    }

    /// The basket it is about, where it is about one.
    #[must_use]
    pub fn basket(&self, own: Id) -> Option<Id> {
        Some(match self {
            Self::BasketTakenIn(_) => own,
            Self::BasketUsed(act) => act.basket,
            Self::BasketLeft(act) => act.basket,
            _ => return None,
        })
    }

    /// The batch it is about, where it is about one.
    #[must_use]
    pub fn batch(&self, own: Id) -> Option<Id> {
        match self {
            Self::BatchPlanned(_) => Some(own),
            Self::BatchBegun(act) => Some(act.plan.unwrap_or(own)),
            Self::StepBegun(act) => Some(act.batch),
            Self::StepDone(act) => Some(act.batch),
            Self::AmountUsed(act) => Some(act.batch),
            Self::Interrupted(act) => act.batch,
            Self::Slipped(act) => act.batch,
            Self::BatchClosed(act) => Some(act.batch),
            Self::LoadBegun(act) => act.batch,
            _ => None,
        }
    }

    /// The load it is about, where it is about one.
    #[must_use]
    pub fn load(&self, own: Id) -> Option<Id> {
        Some(match self {
            Self::LoadBegun(_) => own,
            Self::LoadMarked(act) => act.load,
            Self::LoadEnded(act) => act.load,
            _ => return None,
        })
    }

    /// The working it is about, where it is about one.
    #[must_use]
    pub fn working(&self, own: Id) -> Option<Id> {
        Some(match self {
            Self::WorkingBegun(_) => own,
            Self::WorkingLooked(act) => act.working,
            Self::WorkingMoved(act) => act.working,
            Self::WorkingEnded(act) => act.working,
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn no_two_acts_share_a_kind() {
        assert_eq!(Act::KINDS.iter().collect::<BTreeSet<_>>().len(), Act::KINDS.len());
    }

    #[test]
    fn a_body_is_read_by_its_kind() {
        let act = Act::from(Noted { about: None, words: "first frost".into() });
        let body = act.to_value().unwrap().to_string();
        assert_eq!(Act::read(act.kind(), &body).unwrap().unwrap(), act);
        assert!(Act::read("moon-howled-at", &body).is_none());
        assert!(Act::read("drawn", &body).unwrap().is_err());
    }
}
