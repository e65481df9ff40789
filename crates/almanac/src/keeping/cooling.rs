//! Cooling hot food: the two stages, what was tried, and what met them.

use measure::Temp;

use super::figure::KeepingFigure;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// What a row about cooling is for.
    CoolingTopic {
        /// A stage of the rule.
        Stage = "stage",
        /// The rule as a whole.
        Whole = "whole",
        /// How long food may be warm.
        Exposure = "exposure",
        /// A time that was measured.
        Measured = "measured",
        /// How deep, and in what.
        Depth = "depth",
        /// A way that met the rule.
        Works = "works",
        /// A way that did not.
        Fails = "fails",
        /// Stirring.
        Stir = "stir",
        /// Why it matters.
        Growth = "growth",
    }
);

/// A row about cooling.
#[derive(Debug, Clone, PartialEq)]
pub struct CoolingRule {
    /// Its name.
    pub id: RuleId,
    /// What it is for.
    pub topic: CoolingTopic,
    /// What it speaks of.
    pub item: Box<str>,
    /// What it says, in our words.
    pub say: Box<str>,
    /// From this temperature.
    pub from: Option<Temp>,
    /// Down to this one.
    pub to: Option<Temp>,
    /// Its figure.
    pub figure: Option<KeepingFigure>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `cooling.csv`.
pub(super) fn read_cooling(reading: &mut Reading<'_>) -> Vec<CoolingRule> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "topic",
        "item",
        "say",
        "from_F",
        "to_F",
        "value_min",
        "value_max",
        "unit",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Cooling, COLUMNS, |row| CoolingRule {
        id: row.id("rule_id"),
        topic: row.word("topic"),
        item: row.text("item").into(),
        say: row.text("say").into(),
        from: row.maybe_number("from_F").map(Temp::fahrenheit),
        to: row.maybe_number("to_F").map(Temp::fahrenheit),
        figure: KeepingFigure::read(row),
        citation: row.citation(),
    })
}

impl Almanac {
    /// The rows about cooling that are for one thing.
    pub fn cooling_for(&self, topic: CoolingTopic) -> impl Iterator<Item = &CoolingRule> {
        self.cooling_rules().iter().filter(move |row| row.topic == topic)
    }
}
