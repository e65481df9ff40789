//! Freezing: how food is packed, how much room it needs, how long it stays good.

use measure::Length;

use super::rows_named;
use crate::Almanac;
use crate::closed_list::closed_list;
use crate::row::{Reading, Row};
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a row of the freezing table is about.
    FreezingRecord {
        /// A food.
        Food = "food",
        /// A rule: headspace, rate, storage, syrup.
        Rule = "rule",
    }
);

/// Headspace by the mouth and size of the container.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreezerHeadspace {
    /// A pint with a wide mouth.
    pub wide_pint: Length,
    /// A quart with a wide mouth.
    pub wide_quart: Length,
    /// A pint with a narrow mouth.
    pub narrow_pint: Length,
    /// A quart with a narrow mouth.
    pub narrow_quart: Length,
}

/// Months that frozen food stays good: a matter of quality.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KeepingMonths {
    /// At the least; none when only an upper end is printed.
    pub min: Option<u32>,
    /// At the most.
    pub max: u32,
}

/// A row of the freezing table.
#[derive(Debug, Clone, PartialEq)]
pub struct Freezing {
    /// What it is about.
    pub record: FreezingRecord,
    /// The food, or what the rule is about.
    pub food: Box<str>,
    /// How it is prepared.
    pub preparation: Box<str>,
    /// The packs to choose from, as printed.
    pub packs: Box<str>,
    /// Whether it is blanched, as printed.
    pub blanch: Box<str>,
    /// Which headspace row it goes by, or its own headspace, as printed.
    pub headspace_key: Box<str>,
    /// The headspaces, on the rows that print them.
    pub headspace: Option<FreezerHeadspace>,
    /// An amount that belongs to the row, as printed.
    pub amount: Box<str>,
    /// How long it stays good.
    pub months: Option<KeepingMonths>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `freezing.csv`.
pub(super) fn read_freezing(reading: &mut Reading<'_>) -> Vec<Freezing> {
    const COLUMNS: &[&str] = &[
        "record",
        "food",
        "preparation",
        "pack_options",
        "blanch",
        "headspace_key",
        "wide_pint_in",
        "wide_quart_in",
        "narrow_pint_in",
        "narrow_quart_in",
        "amount_rule",
        "storage_months_min",
        "storage_months_max",
        "safety_or_quality_note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Freezing, COLUMNS, |row| Freezing {
        record: row.word("record"),
        food: row.text("food").into(),
        preparation: row.free_text("preparation"),
        packs: row.free_text("pack_options"),
        blanch: row.free_text("blanch"),
        headspace_key: row.free_text("headspace_key"),
        headspace: headspace_of(row),
        amount: row.free_text("amount_rule"),
        months: months_of(row),
        note: row.free_text("safety_or_quality_note"),
        citation: row.citation(),
    })
}

fn headspace_of(row: &mut Row<'_>) -> Option<FreezerHeadspace> {
    let columns = ["wide_pint_in", "wide_quart_in", "narrow_pint_in", "narrow_quart_in"];
    let read = columns.map(|column| row.maybe_number(column).map(Length::inches));
    match read {
        [Some(wide_pint), Some(wide_quart), Some(narrow_pint), Some(narrow_quart)] => {
            Some(FreezerHeadspace { wide_pint, wide_quart, narrow_pint, narrow_quart })
        }
        [None, None, None, None] => None,
        _ => {
            let what = "the four headspaces are printed together".to_owned();
            row.contradict(what);
            None
        }
    }
}

fn months_of(row: &mut Row<'_>) -> Option<KeepingMonths> {
    let min = row.maybe_count("storage_months_min");
    let max = row.maybe_count("storage_months_max");
    if min.is_some_and(|min| max.is_none_or(|max| max < min)) {
        let what = "storage_months_min has no storage_months_max above it".to_owned();
        row.contradict(what);
    }
    Some(KeepingMonths { min, max: max? })
}

impl Almanac {
    /// Every row of the freezing table.
    #[must_use]
    pub fn freezing(&self) -> &[Freezing] {
        &self.methods.freezing
    }

    /// The rows for a food; sources that disagree stand side by side.
    #[must_use]
    pub fn find_freezing(&self, food: &str) -> Vec<&Freezing> {
        let named = rows_named(&self.methods.freezing, food, |row| &row.food);
        named.into_iter().filter(|row| row.record == FreezingRecord::Food).collect()
    }

    /// The printed headspaces for a key such as `liquid` or `dry`.
    #[must_use]
    pub fn find_freezer_headspace(&self, key: &str) -> Option<(FreezerHeadspace, &Citation)> {
        let row =
            self.methods.freezing.iter().find(|row| &*row.headspace_key == key && row.headspace.is_some())?;
        Some((row.headspace?, &row.citation))
    }
}
