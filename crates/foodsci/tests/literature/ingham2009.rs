//! Published examples: B. Ingham, University of Wisconsin-Madison, memorandum on the least sterilizing value, May 2009, table.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["INGHAM2009"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: B. Ingham, University of Wisconsin-Madison, memorandum on the least sterilizing value, May 2009, table.
/// Tolerance: the rounding of the memorandum.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 6);
}
