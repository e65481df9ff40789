//! The published facts of `data/`, typed, and look-ups that refuse to guess.
//!
//! Every figure carries its [`Citation`]. A look-up gives a row that was found, or says what is missing; it never
//! gives a default. The tables are built into the program and parsed once by [`Almanac::load`].

mod acid;
mod change;
mod closed_list;
mod elsewhere;
mod engineering;
mod fault;
mod formula;
mod guess;
mod id;
mod jar;
mod keeping;
mod load;
mod load_rule;
mod matching;
mod method;
mod note;
mod process;
mod produce;
mod refusal;
mod row;
mod rule;
mod source;
mod tables;
mod words;

pub use acid::{AcidPlace, AcidRemark, AcidRule};
pub use change::{
    AppliesTo, Change, ChangeQuestion, ChangeRule, FoodFamily, IngredientClass, LimitAmount, Verdict, What,
};
pub use elsewhere::{ElsewhereFact, ElsewhereTopic, Place};
pub use engineering::{FoodHeat, JarInside, PlanningRange, RangeOf, RangeUnit, Spread};
pub use fault::{DataFault, DataProblem};
pub use formula::{
    Action, Attention, Care, Equipment, Formula, FormulaClass, FormulaStep, Ingredient, IngredientUnit,
    KeptIn, MeasureUnit, Method, Part, Per, PieceKind, PrintedAmount, Role, ScaleRule, ScalesWith,
    StepMinutes, TempRange, Yield, YieldUnit,
};
pub use guess::{ConditionRow, ServingKind, ServingSize, WorkGuess, serving_kind};
pub use id::{FormulaId, ProduceId, ProductId, RefusalId, RuleId, SourceId};
pub use jar::{Jar, JarLoad, JarSize, Mouth};
pub use keeping::{
    BestBy, BestByScope, Called, CoolingRule, CoolingTopic, DriedFood, DriedRule, DriedTopic, FermentName,
    FermentRule, FermentTopic, FermentVerdict, FreezerLoad, KeepingFigure, KeepingUnit, OilRule, OilTopic,
    OutageAct, OutagePlace, OutageRule, OutageState, PutUpAs, SignRule, SignTopic, SignWeight,
};
pub use load::Almanac;
pub use load_rule::{FoundLoadRule, LoadRule, LoadRuling, LoadTrouble, Noticed};
pub use matching::Match;
pub use method::{
    BlanchMethod, BlanchRecord, Blanching, DriedYield, Drying, DryingRecord, FermentFact, FermentRecord,
    FreezerHeadspace, Freezing, FreezingRecord, JellyFact, JellyRecord, KeepingMonths, PectinKind,
    PrintedRange, Syrup, SyrupUse,
};
pub use note::{KitchenRule, MetricFact, MetricTopic, MetricUnit};
pub use process::{
    Band, CannerKind, FoodGroup, NoProcess, Pack, PrintedLine, Process, ProcessQuestion, Product,
};
pub use produce::{
    AcidityFact, AcidityRow, Container, Density, DensityMeasure, FreshStorage, FreshYield, Humidity,
    KeepingDays, Ph, PhRange, Procurement, Produce, StorageRecord, StorageTemp, Task, WorkRate, WorkTime,
};
pub use refusal::{NotForCanning, RefusalKind};
pub use rule::{CannerRule, RuleMissing, RuleUnit, RuleValue};
pub use source::{Basis, Citation, Rank, Source};
pub use tables::{Table, Tables};
