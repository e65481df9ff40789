//! The published facts of `data/`, typed, and look-ups that refuse to guess.
//!
//! Every figure carries its [`Citation`]. A look-up gives a row that was found, or says what is missing; it never
//! gives a default. The tables are built into the program and parsed once by [`Almanac::load`].

mod acid;
mod closed_list;
mod fault;
mod formula;
mod guess;
mod id;
mod jar;
mod load;
mod matching;
mod process;
mod refusal;
mod row;
mod rule;
mod source;
mod tables;
mod unit;
mod words;

pub use acid::{AcidPlace, AcidRemark, AcidRule};
pub use fault::{DataFault, DataProblem};
pub use formula::{
    Action, Attention, Care, Equipment, Formula, FormulaClass, FormulaStep, Ingredient, IngredientUnit,
    KeptIn, MeasureUnit, Method, Part, Per, PieceKind, PrintedAmount, Role, ScaleRule, ScalesWith,
    StepMinutes, TempRange, Yield, YieldUnit,
};
pub use guess::{ConditionRow, ServingKind, ServingSize, WorkGuess, serving_kind};
pub use id::{FormulaId, ProduceId, ProductId, RefusalId, RuleId, SourceId};
pub use jar::{Jar, JarLoad, JarSize, Mouth};
pub use load::Almanac;
pub use matching::Match;
pub use process::{
    Band, CannerKind, FoodGroup, NoProcess, Pack, PrintedLine, Process, ProcessQuestion, Product,
};
pub use refusal::{NotForCanning, RefusalKind};
pub use rule::{CannerRule, RuleMissing, RuleUnit, RuleValue};
pub use source::{Basis, Citation, Rank, Source};
pub use tables::{Table, Tables};
pub use unit::{MassUnit, VolumeUnit};
