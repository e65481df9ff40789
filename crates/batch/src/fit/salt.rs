//! Salt that is weighed against the produce of a ferment.
//!
//! The publication prints spoons for a weight of cabbage; spoons differ by more than half with the kind of salt, so the
//! salt is weighed. The band stands in the ferment table; its lower end is the default and a floor.

use almanac::{Almanac, Citation, FermentRecord, Part};

use super::answer::{Note, NoteCode};
use super::line::{Balance, Line, PrintedAmount};
use super::notes::cite;

/// The row that holds the band served for shredded cabbage.
const KRAUT_BAND: &str = "kitchen band served, percent of net cabbage weight";

/// How much salt is weighed against the produce.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct SaltByWeight {
    /// The percent of the produce that is taken.
    pub(crate) percent: f64,
    /// The highest percent that is printed.
    most: f64,
    /// The printed percent is of the finished weight, and the produce is not the whole of it.
    of_whole: bool,
    pub(crate) citation: Option<Citation>,
}

/// The salt of a dry-salted ferment; `None` where salt goes with the batch.
pub(crate) fn salt_by_weight(almanac: &Almanac, lines: &[Line], balance: Balance) -> Option<SaltByWeight> {
    if !balance.salt_is_a_floor {
        return None;
    }
    let salt = lines.iter().find(|line| line.part == Part::Salt)?;
    match salt.amount {
        PrintedAmount::PercentOfWhole { low, high } => {
            let percent = of_produce(low.to_f64());
            Some(SaltByWeight { percent, most: high.to_f64(), of_whole: true, citation: None })
        }
        PrintedAmount::PerBatch { .. } if !has_brine(lines) => {
            let mut rows = almanac.find_ferment("sauerkraut", FermentRecord::Salt);
            let row = rows.find(|row| &*row.parameter == KRAUT_BAND)?;
            let (percent, most) = row.figures()?;
            Some(SaltByWeight { percent, most, of_whole: false, citation: Some(row.citation.clone()) })
        }
        _ => None,
    }
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
pub(crate) fn note_salt(salt: &SaltByWeight) -> Note {
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
             bowl, and take {per_kilogram} g for each kilogram, never less, and no more than {} %; by weight, whatever \
             the kind of salt",
            salt.percent, salt.most
        )
    };
    Note { code: NoteCode::SaltByWeight, text, source: salt.citation.as_ref().map(cite) }
}
