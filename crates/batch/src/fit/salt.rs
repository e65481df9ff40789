//! Salt that is weighed against the produce of a ferment.
//!
//! The publication prints spoons for a weight of cabbage; spoons differ by more than half with the kind of salt, so
//! the salt is weighed. The band and its default are those of the printed ratio (3 tablespoons for 5 pounds, 2.4 %).

use almanac::Part;

use super::answer::{Note, NoteCode};
use super::line::{Balance, Line, PrintedAmount};

/// The kitchen band for shredded cabbage, percent of its weight net of the bowl: the lower end is the default and a
/// floor, above the higher end the printed formulas do not go. USDA, Complete Guide to Home Canning, 2015, guide 6,
/// p. 6-8 (3 tablespoons for 5 pounds, 2.4 %); the ends as Clemson Cooperative Extension gives them.
const KRAUT_BAND_PERCENT: (f64, f64) = (2.25, 2.5);

/// How much salt is weighed against the produce.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SaltByWeight {
    /// The percent taken.
    pub(crate) percent: f64,
    /// The highest percent that is printed.
    pub(crate) most: f64,
    /// The percent is of the finished weight, as printed, and the produce is not the whole of it.
    pub(crate) of_whole: bool,
}

/// The salt of a dry-salted ferment; `None` where salt goes with the batch.
pub(crate) fn salt_by_weight(lines: &[Line], balance: Balance) -> Option<SaltByWeight> {
    if !balance.salt_is_a_floor {
        return None;
    }
    lines.iter().filter(|line| line.part == Part::Salt).find_map(|line| match line.amount {
        PrintedAmount::PercentOfWhole { low, high } => {
            Some(SaltByWeight { percent: of_produce(low.to_f64()), most: high.to_f64(), of_whole: true })
        }
        PrintedAmount::PerBatch { .. } if !has_brine(lines) => {
            let (percent, most) = KRAUT_BAND_PERCENT;
            Some(SaltByWeight { percent, most, of_whole: false })
        }
        _ => None,
    })
}

fn has_brine(lines: &[Line]) -> bool {
    lines
        .iter()
        .any(|line| line.part == Part::Liquid && matches!(line.amount, PrintedAmount::PerBatch { .. }))
}

/// The share of the produce that makes a share of produce and salt together.
fn of_produce(percent_of_whole: f64) -> f64 {
    100.0 * percent_of_whole / (100.0 - percent_of_whole)
}

/// What must be said of weighed salt.
pub(crate) fn note_salt(salt: SaltByWeight) -> Note {
    let per_kilogram = libm::ceil(salt.percent * 100.0 - 1e-9) / 10.0;
    let text = if salt.of_whole {
        format!(
            "the salt is the least that is printed, for a finished weight between it and {} %; weigh everything that \
             goes in, net of the bowl, and take at least {per_kilogram} g for each kilogram",
            salt.most
        )
    } else {
        format!(
            "the salt is {} % of the weight given; weigh the produce again when it is trimmed and shredded, net of the \
             bowl, and take {per_kilogram} g for each kilogram, never less, and no more than {} %; of any salt, by \
             weight",
            salt.percent, salt.most
        )
    };
    let source =
        (!salt.of_whole).then(|| "USDA, Complete Guide to Home Canning, 2015, guide 6, p. 6-8".to_owned());
    Note { code: NoteCode::SaltByWeight, text, source }
}
