//! Blanching: how long a vegetable is dipped or steamed before it is frozen.

use super::{PrintedRange, rows_named};
use crate::Almanac;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a row of the blanching table is about.
    BlanchRecord {
        /// One vegetable.
        Item = "item",
        /// A rule for all.
        Rule = "rule",
    }
);

closed_list!(
    /// How it is heated.
    BlanchMethod {
        /// In boiling water.
        Water = "water",
        /// In steam.
        Steam = "steam",
        /// Boiled.
        Boil = "boil",
        /// Cooked through.
        Cook = "cook",
        /// Any of these.
        Any = "any",
    }
);

/// A row of the blanching table.
#[derive(Debug, Clone, PartialEq)]
pub struct Blanching {
    /// What it is about.
    pub record: BlanchRecord,
    /// The vegetable, or the rule.
    pub vegetable: Box<str>,
    /// Its size or cut.
    pub preparation: Box<str>,
    /// How it is heated.
    pub method: BlanchMethod,
    /// How many minutes.
    pub minutes: Option<PrintedRange>,
    /// How long it is cooled.
    pub cooling: Box<str>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `blanching.csv`.
pub(super) fn read_blanching(reading: &mut Reading<'_>) -> Vec<Blanching> {
    const COLUMNS: &[&str] = &[
        "record",
        "vegetable",
        "preparation",
        "method",
        "minutes",
        "cooling",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Blanching, COLUMNS, |row| Blanching {
        record: row.word("record"),
        vegetable: row.text("vegetable").into(),
        preparation: row.free_text("preparation"),
        method: row.word("method"),
        minutes: PrintedRange::read(row.cell("minutes")),
        cooling: row.free_text("cooling"),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// Every row of the blanching table.
    #[must_use]
    pub fn blanching(&self) -> &[Blanching] {
        &self.methods.blanching
    }

    /// The rows for a vegetable; sources that disagree stand side by side.
    #[must_use]
    pub fn find_blanching(&self, vegetable: &str) -> Vec<&Blanching> {
        let named = rows_named(&self.methods.blanching, vegetable, |row| &row.vegetable);
        named.into_iter().filter(|row| row.record == BlanchRecord::Item).collect()
    }
}
