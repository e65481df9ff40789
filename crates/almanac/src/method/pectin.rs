//! Pectin: its kinds, when they go in, and that none stands for another.

use crate::Almanac;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

/// A kind of pectin.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PectinKind {
    /// What it is.
    pub kind: Box<str>,
    /// How it is sold.
    pub package: Box<str>,
    /// When it goes in.
    pub when_added: Box<str>,
    /// How it is boiled.
    pub boil: Box<str>,
    /// Whether it sets with less sugar.
    pub reduced_sugar: Box<str>,
    /// What sugar it needs.
    pub sugar: Box<str>,
    /// What to mind.
    pub treatment: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `pectin.csv`.
pub(super) fn read_pectins(reading: &mut Reading<'_>) -> Vec<PectinKind> {
    const COLUMNS: &[&str] = &[
        "kind",
        "package",
        "when_added",
        "boil",
        "reduced_sugar_allowed",
        "sugar",
        "treatment",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Pectin, COLUMNS, |row| PectinKind {
        kind: row.text("kind").into(),
        package: row.free_text("package"),
        when_added: row.free_text("when_added"),
        boil: row.free_text("boil"),
        reduced_sugar: row.free_text("reduced_sugar_allowed"),
        sugar: row.free_text("sugar"),
        treatment: row.free_text("treatment"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// Every kind of pectin.
    #[must_use]
    pub fn pectins(&self) -> &[PectinKind] {
        &self.methods.pectins
    }
}
