//! Garlic, herbs and vegetables in oil.

use measure::Temp;

use super::figure::KeepingFigure;
use super::phrases::{Phrases, askable};
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// What a row about food in oil is for.
    OilTopic {
        /// How long it may stay in the refrigerator.
        Limit = "limit",
        /// A longer time that is printed and never used.
        Longer = "longer",
        /// Freezing it.
        Freeze = "freeze",
        /// Room temperature.
        NeverWarm = "never-warm",
        /// What happened.
        Why = "why",
        /// What is printed elsewhere and is not on file whole.
        Elsewhere = "elsewhere",
    }
);

/// A row about food in oil.
#[derive(Debug, Clone, PartialEq)]
pub struct OilRule {
    /// Its name.
    pub id: RuleId,
    /// The food.
    pub food: Box<str>,
    /// What it is for.
    pub topic: OilTopic,
    /// What it says, in our words.
    pub say: Box<str>,
    /// Its figure.
    pub figure: Option<KeepingFigure>,
    /// At this temperature or below.
    pub at_most: Option<Temp>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
    /// The ways of naming it.
    pub(super) phrases: Phrases,
}

/// Reads `oil.csv`.
pub(super) fn read_oil(reading: &mut Reading<'_>) -> Vec<OilRule> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "food",
        "topic",
        "say",
        "words",
        "value_min",
        "value_max",
        "unit",
        "temp_F",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Oil, COLUMNS, |row| OilRule {
        id: row.id("rule_id"),
        food: row.text("food").into(),
        topic: row.word("topic"),
        say: row.text("say").into(),
        phrases: Phrases::read(row.text("words")),
        figure: KeepingFigure::read(row),
        at_most: row.maybe_number("temp_F").map(Temp::fahrenheit),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// The foods in oil that can be asked about, in words that are understood.
    #[must_use]
    pub fn askable_oil(&self) -> Vec<String> {
        askable(self.oil_rules().iter().map(|row| &row.phrases))
    }
}
