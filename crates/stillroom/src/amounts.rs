//! What a batch takes, in three columns beside the line: what, by measure, by weight.

use kitchen::wording::SaidAmount;
use paper::day::Amount;

use crate::leaf::{BESIDE, Leaf};
use crate::wrap::{to_the_left, to_the_right, wrap};

const WEIGHT: usize = 15;
const MEASURE: usize = 18;
const WHAT: usize = BESIDE - MEASURE - WEIGHT;

/// Lays out the amounts of one batch.
pub(crate) fn lay_out_amounts(leaf: &mut Leaf, amounts: &[Amount]) {
    for amount in amounts {
        let what = wrap(&word_what(amount), WHAT - 1);
        let measure = wrap(&amount.measure, MEASURE - 1);
        let weight = amount.weight.as_deref().unwrap_or("not known");
        for at in 0..what.len().max(measure.len()) {
            let cell = |lines: &[String]| lines.get(at).cloned().unwrap_or_default();
            let weight = if at == 0 { weight } else { "" };
            let row = to_the_left(&cell(&what), WHAT) + &to_the_right(&cell(&measure), MEASURE);
            leaf.set((row + &to_the_right(weight, WEIGHT)).trim_end());
        }
    }
}

/// An amount as the paper takes it.
pub(crate) fn for_paper(said: SaidAmount) -> Amount {
    let SaidAmount { what, prep, measure, weight, moved } = said;
    Amount { what, prep, measure, weight, moved }
}

fn word_what(amount: &Amount) -> String {
    match (amount.prep.as_str(), &amount.moved) {
        ("", None) => amount.what.clone(),
        ("", Some(moved)) => format!("{} ({moved})", amount.what),
        (prep, None) => format!("{}, {prep}", amount.what),
        (prep, Some(moved)) => format!("{}, {prep} ({moved})", amount.what),
    }
}
