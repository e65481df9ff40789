//! Dried food: pasteurizing, conditioning, and the signs in a jar.

use measure::Temp;

use super::figure::KeepingFigure;
use super::phrases::{Phrases, askable};
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// What a rule for dried food is for.
    DriedTopic {
        /// Pasteurizing in the freezer.
        PasteurizeFreezer = "pasteurize-freezer",
        /// Pasteurizing in the oven.
        PasteurizeOven = "pasteurize-oven",
        /// Conditioning.
        Condition = "condition",
        /// Drops in the jar.
        Condensation = "condensation",
        /// Mould.
        Mould = "mould",
        /// Insects.
        Insects = "insects",
        /// How one knows it is dry.
        Dryness = "dryness",
        /// Cooling before packing.
        Cool = "cool",
        /// Drying too hot.
        Harden = "harden",
        /// Keeping it.
        Store = "store",
    }
);

closed_list!(
    /// The kind of dried food a rule is for.
    DriedFood {
        /// Fruit.
        Fruit = "fruit",
        /// Vegetables.
        Vegetable = "vegetable",
        /// Herbs.
        Herb = "herb",
        /// Any.
        All = "all",
    }
);

/// A rule for dried food.
#[derive(Debug, Clone, PartialEq)]
pub struct DriedRule {
    /// Its name.
    pub id: RuleId,
    /// What it is for.
    pub topic: DriedTopic,
    /// Which food.
    pub food: DriedFood,
    /// What it says, in our words.
    pub say: Box<str>,
    /// Its figure.
    pub figure: Option<KeepingFigure>,
    /// At which temperature.
    pub at: Option<Temp>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
    /// The ways of naming it.
    pub(super) phrases: Phrases,
}

/// Reads `dried.csv`.
pub(super) fn read_dried(reading: &mut Reading<'_>) -> Vec<DriedRule> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "topic",
        "food",
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
    reading.rows(Table::Dried, COLUMNS, |row| DriedRule {
        id: row.id("rule_id"),
        topic: row.word("topic"),
        food: row.word("food"),
        say: row.text("say").into(),
        phrases: Phrases::read(row.cell("words")),
        figure: KeepingFigure::read(row),
        at: row.maybe_number("temp_F").map(Temp::fahrenheit),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// The rules for one kind of dried food that are for one thing, those for any food with them.
    pub fn dried_rules_for(&self, food: DriedFood, topic: DriedTopic) -> impl Iterator<Item = &DriedRule> {
        let meant =
            move |row: &&DriedRule| row.food == food || row.food == DriedFood::All || food == DriedFood::All;
        self.dried_rules().iter().filter(move |row| row.topic == topic).filter(meant)
    }

    /// The signs on dried food that can be asked about, in words that are understood.
    #[must_use]
    pub fn askable_dried_signs(&self) -> Vec<String> {
        askable(self.dried_rules().iter().map(|row| &row.phrases))
    }
}
