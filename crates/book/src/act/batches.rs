//! Batches, their steps and their loads: what was planned and what was done, in one shape.

use jiff::civil::Time;
use serde::{Deserialize, Serialize};

use super::lots::Contents;
use crate::quantity::{Amount, Pascals};
use crate::{Id, ItemId};

/// One ingredient of a batch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// What, in the formula's words.
    pub name: Box<str>,
    /// How much.
    pub amount: Option<Amount>,
    /// The basket it comes from.
    pub basket: Option<Id>,
    /// The bottle, bag or box of the house it comes from: vinegar, salt, lids.
    pub supply: Option<ItemId>,
}

/// One step of a batch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlannedStep {
    /// Its name within the batch.
    pub step: Box<str>,
    /// When it is to begin, by the clock on the wall.
    pub at: Option<Time>,
    /// How long it is to take.
    pub minutes: Option<i64>,
    /// Who does it.
    pub who: Option<ItemId>,
}

/// One load of a batch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlannedLoad {
    /// The canner, the kettle, the dehydrator.
    pub appliance: Option<ItemId>,
    /// What goes in.
    #[serde(default)]
    pub containers: Vec<Contents>,
    /// The process it is to get.
    pub process: Option<ProcessNote>,
}

/// What a batch is made of and how: the same shape for the plan and for the record.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Work {
    /// Ingredients.
    #[serde(default)]
    pub lines: Vec<Line>,
    /// Steps.
    #[serde(default)]
    pub steps: Vec<PlannedStep>,
    /// Loads.
    #[serde(default)]
    pub loads: Vec<PlannedLoad>,
    /// Containers in all.
    #[serde(default)]
    pub containers: Vec<Contents>,
}

/// The process a load was given, as a note of what was read. It is a record and permits nothing: whether a process is
/// tested is asked of the published tables each time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ProcessNote {
    /// The food as the process table names it.
    pub product: Option<Box<str>>,
    /// Minutes.
    pub minutes: Option<i64>,
    /// Pressure, where a pressure canner was used.
    pub pressure_pa: Option<Pascals>,
    /// The publication by its id, and where in it.
    pub source_id: Option<Box<str>>,
    /// The page or table.
    pub locator: Option<Box<str>>,
    /// The answer then: *tested*, *not tested*, or as it was entered from a publication of the household.
    pub verdict: Option<Box<str>>,
}

/// A batch was planned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BatchPlanned {
    /// What it is called.
    pub name: Box<str>,
    /// The formula by its id.
    pub formula: Option<Box<str>>,
    /// What is to be done.
    pub work: Work,
}

/// A batch was begun.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BatchBegun {
    /// Its plan, where there was one; the batch then goes by the plan's id.
    pub plan: Option<Id>,
    /// What it is called.
    pub name: Box<str>,
    /// The formula by its id.
    pub formula: Option<Box<str>>,
    /// What was set out with.
    pub work: Work,
}

/// A step was begun, now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepBegun {
    /// The batch.
    pub batch: Id,
    /// The step's name.
    pub step: Box<str>,
}

/// A step was done, now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepDone {
    /// The batch.
    pub batch: Id,
    /// The step's name.
    pub step: Box<str>,
}

/// So much of an ingredient was really used.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct AmountUsed {
    /// The batch.
    pub batch: Id,
    /// What, and how much, and from where.
    pub line: Line,
}

/// The day was interrupted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Interrupted {
    /// The batch, where it was one.
    pub batch: Option<Id>,
    /// By what.
    pub by: Box<str>,
    /// For how long, where it is known.
    pub minutes: Option<i64>,
}

/// The day has moved: a step ran long, a burner died, someone left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slipped {
    /// The batch, where it was one.
    pub batch: Option<Id>,
    /// What slipped.
    pub what: Box<str>,
    /// By how much.
    pub minutes: Option<i64>,
}

/// A batch is finished, or given up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BatchClosed {
    /// The batch.
    pub batch: Id,
    /// Whether it was given up.
    #[serde(default)]
    pub given_up: bool,
    /// A word for next time: a little sharper.
    pub next_time: Option<Box<str>>,
}

/// A load went in, now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LoadBegun {
    /// The batch, where it is in the book.
    pub batch: Option<Id>,
    /// The canner, the kettle, the dehydrator.
    pub appliance: Option<ItemId>,
    /// The gauge.
    pub gauge: Option<ItemId>,
    /// What went in.
    #[serde(default)]
    pub containers: Vec<Contents>,
    /// The process to be kept.
    pub process: Option<ProcessNote>,
}

/// What was seen at a load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LoadMark {
    /// The water boils over the jars.
    CameToTheBoil,
    /// Steam streams out; the venting begins.
    Venting,
    /// The weight is on, or the dial shows the pressure: the process begins.
    AtPressure,
    /// The gauge was read.
    GaugeRead,
    /// The water was looked at.
    WaterChecked,
    /// It fell below: the printed rules say what then.
    FellBelow,
    /// The process is over: the heat is off.
    HeatOff,
    /// The pressure is down by itself.
    PressureDown,
    /// The jars are out.
    TakenOut,
}

/// Something was seen at a load, now. Clock times are these entries, never countdowns.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LoadMarked {
    /// The load.
    pub load: Id,
    /// What.
    pub mark: LoadMark,
    /// What the gauge showed.
    pub reading_pa: Option<Pascals>,
}

/// A load is done, now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LoadEnded {
    /// The load.
    pub load: Id,
    /// Whether it got its whole process, as far as the one who stood by can say.
    pub whole: Option<bool>,
}
