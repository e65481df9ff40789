//! The share of a printed formula that is made: from the scarcest ingredient, in exact numbers a cook can measure.
//!
//! A factor is measurable when every guarded amount reaches a mark of cup, spoon or scale by a move of at most 2 %
//! in its allowed direction. If the scarcest ingredient gives a factor that is not, the next lower one that is takes
//! its place; a step down of more than 2 % is shown. Where nothing within [`WIDEST_STEP_DOWN`] is measurable the
//! largest factor is kept and the moves of the amounts are shown instead: they still go the safe way.

use measure::Fraction;

use super::line::{Balance, Line};
use super::measurable::Rounding;

/// The furthest an amount may move before it is shown, in percent (house rule for roundings).
pub(crate) const SHOWN_MOVE_PERCENT: f64 = 2.0;
/// How far the factor steps down in search of a measurable one; ours: more would waste produce.
const WIDEST_STEP_DOWN: f64 = 0.15;
/// Parts a batch is divided into by cooks: all up to twenty-four, and binary ones below.
const DENOMINATORS: [i64; 27] =
    [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 32, 40, 48];
/// Slack for numbers that came through floating point: a millionth of a batch.
const HAIR: f64 = 1e-6;

/// A chosen factor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Chosen {
    pub(crate) factor: Fraction,
    /// How far below the limit it lies, in percent.
    pub(crate) stepped_down_percent: f64,
}

/// The largest measurable factor not above `limit`; `None` when not even a forty-eighth of a batch is there.
pub(crate) fn choose_factor(lines: &[Line], balance: Balance, limit: f64) -> Option<Chosen> {
    let below = factors_below(limit);
    let lowest = limit * (1.0 - WIDEST_STEP_DOWN);
    let fits = |factor: &&Fraction| lines.iter().all(|line| is_measurable(line, balance, **factor));
    let measurable = below
        .iter()
        .take_while(|factor| factor.to_f64() >= lowest)
        .find(fits)
        .map(|largest| plainest(&below, *largest, fits));
    let whole_only = lines.iter().any(|line| line.binds_the_factor(balance) && is_indivisible(line));
    let factor = match (measurable, whole_only) {
        (Some(factor), _) => factor,
        // Indivisible pieces: nothing but a whole number of them will do, however far down that is.
        (None, true) => {
            *below.iter().find(|factor| lines.iter().all(|line| is_measurable(line, balance, **factor)))?
        }
        (None, false) => *below.first()?,
    };
    let stepped_down_percent = ((1.0 - factor.to_f64() / limit) * 100.0).max(0.0);
    Some(Chosen { factor, stepped_down_percent })
}

/// The measurable factor with the smallest denominator within the 2 % that need not be shown: three quarters before
/// thirteen seventeenths. It rises with `largest`, since what leaves the range at its lower end was below the rest.
fn plainest(below: &[Fraction], largest: Fraction, fits: impl Fn(&&Fraction) -> bool) -> Fraction {
    let lowest = largest.to_f64() * (1.0 - SHOWN_MOVE_PERCENT / 100.0);
    below
        .iter()
        .filter(|factor| **factor <= largest && factor.to_f64() >= lowest)
        .filter(fits)
        .min_by_key(|factor| factor.denominator())
        .copied()
        .unwrap_or(largest)
}

/// Factors a cook may use, from the largest not above `limit` down.
fn factors_below(limit: f64) -> Vec<Fraction> {
    let mut factors: Vec<Fraction> = DENOMINATORS
        .iter()
        .flat_map(|&denominator| {
            // Never overflows: the limit was cut to one batch, or to the number of batches a person can weigh.
            let most = libm::floor((limit + HAIR) * denominator as f64) as i64;
            (1..=most.min(denominator * 4)).filter_map(move |numerator| Fraction::new(numerator, denominator))
        })
        .collect();
    factors.sort_unstable_by(|one, other| other.cmp(one));
    factors.dedup();
    factors
}

fn is_measurable(line: &Line, balance: Balance, factor: Fraction) -> bool {
    if factor == Fraction::ONE || !line.binds_the_factor(balance) {
        return true;
    }
    let Some(whole) = line.of_one_batch(balance) else { return true };
    let rounding = line.rounding(balance);
    let moved =
        whole.times(factor).and_then(|exact| Some(exact.to_mark(rounding)?.moved_percent_from(exact)));
    // An amount beyond the bounds of a fraction is not one a cook measures.
    moved.is_some_and(|moved| match rounding {
        Rounding::NeverUp => moved >= -SHOWN_MOVE_PERCENT,
        Rounding::NeverDown | Rounding::Nearest => moved <= SHOWN_MOVE_PERCENT,
    })
}

fn is_indivisible(line: &Line) -> bool {
    matches!(
        line.amount,
        super::line::PrintedAmount::PerBatch { unit: super::measurable::CookUnit::Large, .. }
    )
}
