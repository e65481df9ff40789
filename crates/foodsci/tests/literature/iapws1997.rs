//! Published examples: IAPWS R7-97(2012), check values of region 4, tables 35 and 36.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["IAPWSIF97"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: IAPWS R7-97(2012), check values of region 4, tables 35 and 36.
/// Tolerance: the printed digits.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 6);
}
