//! Syrups: sugar and water for a canner load or a freezing batch.

use measure::{Fraction, Percent};

use crate::Almanac;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a syrup is for.
    SyrupUse {
        /// Canning.
        Canning = "canning",
        /// Freezing.
        Freezing = "freezing",
        /// An old table whose names mean other strengths.
        Superseded = "canning, old Canadian table",
    }
);

/// A syrup as printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Syrup {
    /// What it is for.
    pub used_for: SyrupUse,
    /// Its name: very light to very heavy.
    pub strength: Box<str>,
    /// Its sugar, as printed.
    pub sugar_percent: Option<Percent>,
    /// How much it is for.
    pub batch: Box<str>,
    /// Cups of water.
    pub water_cups: Fraction,
    /// Cups of sugar.
    pub sugar_cups: Fraction,
    /// Cups it makes, where printed.
    pub makes_cups: Option<Fraction>,
    /// Which fruit it suits.
    pub suited_to: Box<str>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `syrups.csv`.
pub(super) fn read_syrups(reading: &mut Reading<'_>) -> Vec<Syrup> {
    const COLUMNS: &[&str] = &[
        "use",
        "strength",
        "percent_sugar_printed",
        "batch",
        "water_cups",
        "sugar_cups",
        "yield_cups",
        "suited_to",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Syrups, COLUMNS, |row| Syrup {
        used_for: row.word("use"),
        strength: row.text("strength").into(),
        sugar_percent: row.maybe_number("percent_sugar_printed").map(Percent::of_hundred),
        batch: row.text("batch").into(),
        water_cups: row.fraction("water_cups"),
        sugar_cups: row.fraction("sugar_cups"),
        makes_cups: row.maybe_fraction("yield_cups"),
        suited_to: row.free_text("suited_to"),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// Every syrup.
    #[must_use]
    pub fn syrups(&self) -> &[Syrup] {
        &self.methods.syrups
    }

    /// The syrups of a strength for a use, one for each printed batch.
    pub fn find_syrups(&self, used_for: SyrupUse, strength: &str) -> impl Iterator<Item = &Syrup> {
        self.methods.syrups.iter().filter(move |row| row.used_for == used_for && &*row.strength == strength)
    }
}
