//! Published examples: Practical Action briefs on jams and juices; a syrup laboratory manual; FAO Agricultural Services Bulletin 119, 1995; R. A. Robinson and R. H. Stokes, 1965; titration and vacuum course notes.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["PAJAM", "PAJUICE", "SYRUPLAB", "FAO", "RS1965", "KRAUTLAB", "VINTA", "IASRI"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: Practical Action briefs on jams and juices; a syrup laboratory manual; FAO Agricultural Services Bulletin 119, 1995; R. A. Robinson and R. H. Stokes, 1965; titration and vacuum course notes.
/// Tolerance: the rounding of each answer; for water activity the spread between tabulated values.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 8);
}
