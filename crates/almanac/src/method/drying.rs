//! Drying: what is done first, how hot, how long, what is left, how long it keeps.

use measure::{Mass, Percent};

use super::{PrintedRange, rows_named};
use crate::Almanac;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a row of the drying table is about.
    DryingRecord {
        /// How a food is dried.
        Food = "food",
        /// What is left of it.
        Yield = "yield",
        /// A rule for all.
        Rule = "rule",
    }
);

/// What is left of a fresh weight.
#[derive(Debug, Clone, PartialEq)]
pub struct DriedYield {
    /// Fresh.
    pub fresh: Mass,
    /// Dried.
    pub dried: Mass,
    /// Dried, in pints, as printed.
    pub pints: Option<PrintedRange>,
}

/// A row of the drying table.
#[derive(Debug, Clone, PartialEq)]
pub struct Drying {
    /// What it is about.
    pub record: DryingRecord,
    /// The food, or the rule.
    pub food: Box<str>,
    /// Its cut.
    pub form: Box<str>,
    /// What is done first.
    pub pretreatment: Box<str>,
    /// Minutes in boiling water.
    pub water_blanch: Option<PrintedRange>,
    /// Minutes in steam.
    pub steam_blanch: Option<PrintedRange>,
    /// Degrees Fahrenheit in the dryer.
    pub dryer_fahrenheit: Option<PrintedRange>,
    /// Hours, from and to.
    pub hours: Option<(u32, u32)>,
    /// How one knows it is done.
    pub done_test: Box<str>,
    /// What is left.
    pub dried: Option<DriedYield>,
    /// The water left in it.
    pub final_moisture: Option<PrintedRange>,
    /// Months it keeps at 60 F.
    pub months_at_60f: Option<PrintedRange>,
    /// Months it keeps at 70 F.
    pub months_at_70f: Option<PrintedRange>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

impl DriedYield {
    /// The dried weight as a share of the fresh.
    #[must_use]
    pub fn share(&self) -> Percent {
        Percent::fraction(self.dried.ratio_to(self.fresh))
    }
}

/// Reads `drying.csv`.
pub(super) fn read_drying(reading: &mut Reading<'_>) -> Vec<Drying> {
    const COLUMNS: &[&str] = &[
        "record",
        "food",
        "form",
        "pretreatment",
        "water_blanch_min",
        "steam_blanch_min",
        "dryer_temp_F",
        "hours_min",
        "hours_max",
        "done_test",
        "fresh_lb",
        "dried_lb",
        "dried_volume_pints",
        "final_moisture_pct",
        "storage_months_60F",
        "storage_months_70F",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Drying, COLUMNS, |row| Drying {
        record: row.word("record"),
        food: row.text("food").into(),
        form: row.free_text("form"),
        pretreatment: row.free_text("pretreatment"),
        water_blanch: PrintedRange::read(row.cell("water_blanch_min")),
        steam_blanch: PrintedRange::read(row.cell("steam_blanch_min")),
        dryer_fahrenheit: PrintedRange::read(row.cell("dryer_temp_F")),
        hours: row.maybe_count("hours_min").zip(row.maybe_count("hours_max")),
        done_test: row.free_text("done_test"),
        dried: {
            let fresh = row.maybe_number("fresh_lb").map(Mass::pounds);
            let dried = row.maybe_number("dried_lb").map(Mass::pounds);
            let pints = PrintedRange::read(row.cell("dried_volume_pints"));
            fresh.zip(dried).map(|(fresh, dried)| DriedYield { fresh, dried, pints })
        },
        final_moisture: PrintedRange::read(row.cell("final_moisture_pct")),
        months_at_60f: PrintedRange::read(row.cell("storage_months_60F")),
        months_at_70f: PrintedRange::read(row.cell("storage_months_70F")),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// Every row of the drying table.
    #[must_use]
    pub fn drying(&self) -> &[Drying] {
        &self.methods.drying
    }

    /// The rows for a food; sources that disagree stand side by side.
    #[must_use]
    pub fn find_drying(&self, food: &str) -> Vec<&Drying> {
        let named = rows_named(&self.methods.drying, food, |row| &row.food);
        named.into_iter().filter(|row| row.record != DryingRecord::Rule).collect()
    }
}
