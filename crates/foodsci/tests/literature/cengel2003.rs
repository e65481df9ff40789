//! Published examples: Y. A. Çengel, Heat Transfer: A Practical Approach, 2nd ed., 2003, examples 4-3 and 4-8.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["CENGEL"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: Y. A. Çengel, Heat Transfer: A Practical Approach, 2nd ed., 2003, examples 4-3 and 4-8.
/// Tolerance: the reading of the charts, printed with each row.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 3);
}
