//! Published examples: R. P. Singh, D. R. Heldman, Introduction to Food Engineering, 4th ed., 2009; R. L. Earle, Unit Operations in Food Processing; R. T. Toledo, 2007; R. M. Felder and R. W. Rousseau; M. R. Adams and M. O. Moss; examination papers.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] =
    &["SH710", "SH", "SHMC", "EARLE", "TOLEDO", "FELDERJAM", "GATEXE", "EXAMQ", "ADAMSMOSS", "FONOTE"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: R. P. Singh, D. R. Heldman, Introduction to Food Engineering, 4th ed., 2009; R. L. Earle, Unit Operations in Food Processing; R. T. Toledo, 2007; R. M. Felder and R. W. Rousseau; M. R. Adams and M. O. Moss; examination papers.
/// Tolerance: the rounding of each answer.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 12);
}
