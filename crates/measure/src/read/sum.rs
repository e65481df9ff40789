//! Amounts of several parts: `2 lb 3 oz`, `1 h 20 min`, `a pound and a half`.

use std::ops::{Add, Mul};

use super::cursor::Cursor;
use super::error::ReadError;
use super::number::{Marks, take_number};
use crate::fraction::Fraction;

/// A unit as it is written: how much one of it is, and what a point or comma before it may mean.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Unit<Q> {
    one: Q,
    marks: Marks,
}

impl<Q> Unit<Q> {
    /// A unit small enough that nobody writes thousandths of it.
    pub(crate) const fn counted_whole(one: Q) -> Self {
        Self { one, marks: Marks::Whole }
    }

    /// A unit of which decimals are written.
    pub(crate) const fn in_parts(one: Q) -> Self {
        Self { one, marks: Marks::Parts }
    }
}

/// What can be added up from parts.
pub(crate) trait Summed: Copy + PartialOrd + Add<Output = Self> + Mul<f64, Output = Self> {}

impl<Q: Copy + PartialOrd + Add<Output = Q> + Mul<f64, Output = Q>> Summed for Q {}

/// Reads parts up to the end of the text and adds them. Each part's unit must be smaller than the one before
/// it, so that `3 oz 2 lb` and `2 lb 2 lb` are taken for slips.
pub(crate) fn take_sum<Q: Summed>(
    cursor: &mut Cursor<'_>,
    find_unit: impl Fn(&str) -> Option<Unit<Q>>,
    limit: Q,
    limit_in_words: &'static str,
) -> Result<Q, ReadError> {
    cursor.skip_spaces();
    let column = cursor.column();
    let mut so_far: Option<(Q, Unit<Q>)> = None;
    let mut joined = false;
    let total = loop {
        let number = take_number(cursor)?;
        let number_column = number.column();
        // "a pound and a half": a bare part behind "and" counts in the unit before it.
        if let (true, Some((sum, unit))) = (joined, so_far)
            && cursor.is_done()
            && let part = number.clone().resolve(unit.marks, cursor)?
            && part < Fraction::ONE
        {
            break sum + unit.one * part.to_f64();
        }
        let unit = cursor.take_unit(&find_unit)?;
        if so_far.is_some_and(|(_, larger)| larger.one <= unit.one) {
            return Err(cursor.unreadable_at(number_column));
        }
        let part = unit.one * number.resolve(unit.marks, cursor)?.to_f64();
        let sum = so_far.map_or(part, |(sum, _)| sum + part);
        if cursor.is_done() {
            break sum;
        }
        so_far = Some((sum, unit));
        joined = cursor.take(|c| matches!(c, ',' | '+')).is_none() && cursor.take_any_of(&["and", "&"]);
    };
    // Written so that a sum that is no number would be refused too.
    if total <= limit { Ok(total) } else { Err(cursor.too_large(column, limit_in_words)) }
}
