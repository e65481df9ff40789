//! The questions anyone may ask without a day: may this be processed so, what does a formula come to, what is on
//! file. Words go in, typed answers come out.
//!
//! Nothing here decides. A word becomes an id, or an error that says which ids it may be; an amount is read; then
//! the almanac or a batch is asked.

mod clear;
mod error;
mod fit;
mod formula;
mod listed;
mod names;
mod process;
mod produce;
mod source;

pub(crate) use clear::read_copied_question;
pub use clear::{ClearAnswer, ClearWords, RefusedFood, clear};
pub use error::{AskError, NameKind, WAYS_TO_FIND_ALTITUDE};
pub use fit::{FitWords, fit};
pub(crate) use formula::word_printed_amount;
pub use formula::{FormulaSheet, IngredientOnFile, StepOnFile, list_formulas, show_formula};
pub use listed::Listed;
pub(crate) use names::{read_canner, read_jar, require_one};
pub use process::{ProcessRow, ProcessSheet, list_processes, show_process};
pub use produce::{ProduceFact, ProduceSheet, list_produce, show_produce};
pub use source::{SourceSheet, cite, list_sources, show_source, split_citation};
