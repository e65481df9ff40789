//! How long food that is put up stays at its best: a matter of quality.

use measure::Temp;

use super::figure::KeepingFigure;
use super::phrases::{Called, Longer, Phrases, askable, call_up};
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// How food is put up.
    PutUpAs {
        /// In jars.
        Canned = "canned",
        /// In the freezer.
        Frozen = "frozen",
        /// Dried.
        Dried = "dried",
        /// Fermented, in the refrigerator.
        Fermented = "fermented",
        /// Pickled and not processed, in the refrigerator.
        RefrigeratorPickle = "refrigerator-pickle",
        /// Uncooked jam, in the freezer.
        FreezerJam = "freezer-jam",
        /// Fresh, in a cellar.
        Cellar = "cellar",
    }
);

closed_list!(
    /// What a row about keeping is for.
    BestByScope {
        /// Some foods of its kind.
        Food = "food",
        /// Every food of its kind.
        All = "all",
        /// A limit of its kind.
        Limit = "limit",
    }
);

/// A row about keeping.
#[derive(Debug, Clone, PartialEq)]
pub struct BestBy {
    /// Its name.
    pub id: RuleId,
    /// How the food is put up.
    pub kind: PutUpAs,
    /// What it is for.
    pub scope: BestByScope,
    /// The food, as the row names it.
    pub food: Box<str>,
    /// What it says, in our words.
    pub say: Box<str>,
    /// The warmest store it is printed for; none where no temperature is printed.
    pub warmest: Option<Temp>,
    /// Its figure: weeks or months.
    pub figure: Option<KeepingFigure>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
    phrases: Phrases,
}

/// Reads `best_by.csv`.
pub(super) fn read_best_by(reading: &mut Reading<'_>) -> Vec<BestBy> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "kind",
        "scope",
        "food",
        "say",
        "words",
        "temp_low_F",
        "temp_high_F",
        "value_min",
        "value_max",
        "unit",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::BestBy, COLUMNS, |row| {
        let (id, kind, scope) = (row.id("rule_id"), row.word("kind"), row.word("scope"));
        let (food, say) = (row.text("food").into(), row.text("say").into());
        let words = row.cell("words");
        if words.is_empty() == (scope == BestByScope::Food) {
            row.contradict("a row for some foods has words, and no other row has".to_owned());
        }
        let coldest = row.maybe_number("temp_low_F");
        let warmest = row.maybe_number("temp_high_F");
        if coldest.is_some() != warmest.is_some() || coldest > warmest {
            row.contradict("a temperature needs both its ends, the lower first".to_owned());
        }
        BestBy {
            id,
            kind,
            scope,
            food,
            say,
            phrases: Phrases::read(words),
            warmest: warmest.map(Temp::fahrenheit),
            figure: KeepingFigure::read(row),
            note: row.free_text("note"),
            citation: row.citation(),
        }
    })
}

impl Almanac {
    /// Every row about keeping, in the order of the table.
    #[must_use]
    pub fn best_by(&self) -> &[BestBy] {
        &self.keeping.best_by
    }

    /// The rows for some foods that a person's words call up.
    #[must_use]
    pub fn find_best_by(&self, typed: &str) -> Called<'_, BestBy> {
        call_up(typed, self.best_by(), |row| &row.phrases, Longer::HidesShorter)
    }

    /// The foods put up in this way that can be asked about, in words that are understood.
    #[must_use]
    pub fn askable_best_by(&self, kind: PutUpAs) -> Vec<String> {
        askable(self.best_by().iter().filter(|row| row.kind == kind).map(|row| &row.phrases))
    }
}
