//! Cuts of power and floods: how long a closed door holds, and what to do with each food.

use measure::Temp;

use super::figure::KeepingFigure;
use super::phrases::{Phrases, askable};
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// Where the food is.
    OutagePlace {
        /// In the refrigerator.
        Refrigerator = "refrigerator",
        /// In the freezer.
        Freezer = "freezer",
        /// Anywhere.
        Any = "any",
        /// In flood water.
        Flood = "flood",
        /// In a canner.
        Canner = "canner",
    }
);

closed_list!(
    /// How full a freezer is.
    FreezerLoad {
        /// Full.
        Full = "full",
        /// Half full or less.
        Half = "half",
    }
);

closed_list!(
    /// What a row about cuts of power speaks of.
    OutageState {
        /// How long a closed door holds.
        Clock = "clock",
        /// Ice crystals are left, or the food is as cold as refrigerated.
        Cold = "cold",
        /// The food was above a temperature for longer than a time.
        Warm = "warm",
        /// A question of its own.
        Question = "question",
    }
);

closed_list!(
    /// What a row says to do, the strictest first.
    OutageAct {
        /// Throw it away.
        Discard = "discard",
        /// Ask: nothing is printed.
        Ask = "ask",
        /// Freeze it again.
        Refreeze = "refreeze",
        /// Keep it.
        Keep = "keep",
        /// A door holds.
        Hold = "hold",
        /// The sentence of the row says it.
        Tell = "tell",
    }
);

/// A row about cuts of power and floods.
#[derive(Debug, Clone, PartialEq)]
pub struct OutageRule {
    /// Its name.
    pub id: RuleId,
    /// Where the food is.
    pub place: OutagePlace,
    /// How full the freezer is, on the rows that tell them apart.
    pub load: Option<FreezerLoad>,
    /// What it speaks of.
    pub state: OutageState,
    /// The food, the appliance or the question, as the row names it.
    pub item: Box<str>,
    /// What to do.
    pub act: OutageAct,
    /// The same as a sentence; empty on the rows of a chart.
    pub say: Box<str>,
    /// The temperature the row turns on.
    pub limit: Option<Temp>,
    /// Its figure.
    pub figure: Option<KeepingFigure>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
    /// The ways of naming it.
    pub(super) phrases: Phrases,
}

/// Reads `outage.csv`.
pub(super) fn read_outage(reading: &mut Reading<'_>) -> Vec<OutageRule> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "place",
        "load",
        "state",
        "item",
        "act",
        "say",
        "words",
        "temp_F",
        "value_min",
        "value_max",
        "unit",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Outage, COLUMNS, |row| {
        let rule = OutageRule {
            id: row.id("rule_id"),
            place: row.word("place"),
            load: row.maybe_word("load"),
            state: row.word("state"),
            item: row.text("item").into(),
            act: row.word("act"),
            say: row.free_text("say"),
            phrases: Phrases::read(row.text("words")),
            limit: row.maybe_number("temp_F").map(Temp::fahrenheit),
            figure: KeepingFigure::read(row),
            note: row.free_text("note"),
            citation: row.citation(),
        };
        let of_chart = matches!(rule.state, OutageState::Cold | OutageState::Warm);
        if of_chart && rule.limit.is_none() {
            row.contradict(format!("{} turns on a temperature and has none", rule.id));
        }
        if rule.say.is_empty() && !of_chart {
            row.contradict(format!("{} says nothing", rule.id));
        }
        rule
    })
}

impl Almanac {
    /// The foods and questions of a cut of power, in words that are understood.
    #[must_use]
    pub fn askable_outage(&self) -> Vec<String> {
        let rows = self.outage_rules().iter().filter(|row| row.state != OutageState::Clock);
        askable(rows.map(|row| &row.phrases))
    }
}
