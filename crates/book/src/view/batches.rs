//! Batches and their loads: what was planned, what was done, with clock times.

use crate::Id;
use crate::act::{Act, BatchBegun, BatchClosed, BatchPlanned, LoadBegun, Work};
use crate::record::{Change, Standing};

use super::View;
use super::thread::{Fold, Threads};

/// One batch.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Batch {
    planned: Option<Standing>,
    begun: Option<Standing>,
    closed: Option<Standing>,
    did: Vec<Standing>,
    loads: Vec<Id>,
}

impl Batch {
    /// Its plan.
    #[must_use]
    pub fn planned(&self) -> Option<&BatchPlanned> {
        match &self.planned.as_ref()?.entry.act {
            Act::BatchPlanned(planned) => Some(planned),
            _ => None,
        }
    }

    /// How it was begun.
    #[must_use]
    pub fn begun(&self) -> Option<&BatchBegun> {
        match &self.begun.as_ref()?.entry.act {
            Act::BatchBegun(begun) => Some(begun),
            _ => None,
        }
    }

    /// How it was closed.
    #[must_use]
    pub fn closed(&self) -> Option<&BatchClosed> {
        match &self.closed.as_ref()?.entry.act {
            Act::BatchClosed(closed) => Some(closed),
            _ => None,
        }
    }

    /// What it is called.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        self.begun().map(|begun| &*begun.name).or(self.planned().map(|planned| &*planned.name))
    }

    /// What was set out with, or else what was planned.
    #[must_use]
    pub fn work(&self) -> Option<&Work> {
        self.begun().map(|begun| &begun.work).or(self.planned().map(|planned| &planned.work))
    }

    /// Steps, amounts, slips and interruptions, as they happened.
    #[must_use]
    pub fn did(&self) -> &[Standing] {
        &self.did
    }

    /// Its loads.
    #[must_use]
    pub fn loads(&self) -> &[Id] {
        &self.loads
    }
}

impl Fold for Batch {
    fn step(&mut self, act: &Standing) {
        match &act.entry.act {
            Act::BatchPlanned(_) => self.planned = Some(act.clone()),
            Act::BatchBegun(_) => self.begun = Some(act.clone()),
            Act::BatchClosed(_) => self.closed = Some(act.clone()),
            Act::LoadBegun(_) => self.loads.push(act.id),
            _ => self.did.push(act.clone()),
        }
    }
}

/// One load.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Load {
    begun: Option<Standing>,
    marks: Vec<Standing>,
    ended: Option<Standing>,
}

impl Load {
    /// How it was begun.
    #[must_use]
    pub fn begun(&self) -> Option<&LoadBegun> {
        match &self.begun.as_ref()?.entry.act {
            Act::LoadBegun(begun) => Some(begun),
            _ => None,
        }
    }

    /// The act by which it was begun: its clock time is there.
    #[must_use]
    pub fn act(&self) -> Option<&Standing> {
        self.begun.as_ref()
    }

    /// What was seen, as it was seen.
    #[must_use]
    pub fn marks(&self) -> &[Standing] {
        &self.marks
    }

    /// The act by which it was ended.
    #[must_use]
    pub fn ended(&self) -> Option<&Standing> {
        self.ended.as_ref()
    }
}

impl Fold for Load {
    fn step(&mut self, act: &Standing) {
        match &act.entry.act {
            Act::LoadBegun(_) => self.begun = Some(act.clone()),
            Act::LoadMarked(_) => self.marks.push(act.clone()),
            Act::LoadEnded(_) => self.ended = Some(act.clone()),
            _ => {}
        }
    }
}

/// All batches and loads.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Batches {
    batches: Threads<Id, Batch>,
    loads: Threads<Id, Load>,
}

impl Batches {
    /// A batch by its id.
    #[must_use]
    pub fn find(&self, id: Id) -> Option<&Batch> {
        self.batches.find(&id)
    }

    /// A load by its id.
    #[must_use]
    pub fn find_load(&self, id: Id) -> Option<&Load> {
        self.loads.find(&id)
    }

    /// Every load that was begun, the earliest first.
    #[must_use]
    pub fn loads(&self) -> Vec<(Id, &Load)> {
        let begun = self.loads.iter().filter(|(_, load)| load.begun.is_some());
        let mut loads: Vec<(Id, &Load)> = begun.map(|(id, load)| (*id, load)).collect();
        loads.sort_by_key(|(id, load)| (load.begun.as_ref().map(|act| act.entry.happened_at.at()), *id));
        loads
    }

    /// Every batch, the earliest id first.
    pub fn iter(&self) -> impl Iterator<Item = (Id, &Batch)> {
        self.batches.iter().map(|(id, batch)| (*id, batch))
    }

    /// Batches begun and not closed.
    pub fn open(&self) -> impl Iterator<Item = (Id, &Batch)> {
        self.iter().filter(|(_, batch)| batch.begun.is_some() && batch.closed.is_none())
    }
}

impl View for Batches {
    fn change(&mut self, change: &Change) {
        self.batches.change(change, |act| act.entry.act.batch(act.id));
        self.loads.change(change, |act| act.entry.act.load(act.id));
    }
}
