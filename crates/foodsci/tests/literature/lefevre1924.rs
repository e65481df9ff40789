//! Published examples: E. LeFevre, Making Fermented Pickles, USDA Farmers' Bulletin 1438, 1924, table 1 and the text under it.

use crate::ledger::{Check, assert_all, check_printed};
use crate::{rows, worked};

const SOURCES: &[&str] = &["LEFEVRE"];

pub(crate) fn checks() -> Vec<Check> {
    rows::worked()
        .iter()
        .filter(|row| SOURCES.contains(&row.source.as_str()))
        .map(|row| check_printed(row, worked::compute(row)))
        .collect()
}

/// Source: E. LeFevre, Making Fermented Pickles, USDA Farmers' Bulletin 1438, 1924, table 1 and the text under it.
/// Tolerance: the printed digits; 'about' in the text.
#[test]
fn the_models_give_the_printed_answers() {
    assert_all(&checks(), 14);
}
