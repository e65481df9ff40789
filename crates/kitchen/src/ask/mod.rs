//! The questions anyone may ask without a day: may this be processed so, what does a formula come to, what is on
//! file. Words go in, typed answers come out.
//!
//! Nothing here decides. A word becomes an id, or an error that says which ids it may be; an amount is read; then
//! the almanac or a batch is asked.

mod almanac;
mod clear;
mod error;
mod fit;
mod names;

pub use almanac::{
    FormulaSheet, IngredientOnFile, Listed, ProcessRow, ProcessSheet, SourceSheet, StepOnFile, cite, list_formulas,
    list_processes, list_sources, name_sources, show_formula, show_process, show_source,
};
pub use clear::{ClearAnswer, ClearWords, RefusedFood, clear};
pub use error::{AskError, NameKind, WAYS_TO_FIND_ALTITUDE};
pub use fit::{FitWords, fit};
