//! First guesses of our own: how long unprinted work takes, what a poor state costs, how much a serving is.
//!
//! None of these is published and none touches a process; every row is an estimate and says so. The household's own
//! records are to replace them.

use measure::{Mass, Percent, Volume};

use crate::closed_list::closed_list;
use crate::formula::{Action, Equipment, Formula, FormulaClass, Method};
use crate::row::Reading;
use crate::tables::Table;
use crate::{Almanac, Citation};

/// How long a line of a formula takes when nobody printed it: fixed, per kilogram and per container.
#[derive(Debug, Clone)]
pub struct WorkGuess {
    /// The verb; `None` for washing up, which no formula prints.
    pub action: Option<Action>,
    /// Where it is done.
    pub equipment: Equipment,
    /// Words that the line must hold; empty for any.
    pub keyword: Box<str>,
    /// Minutes whatever the amount.
    pub fixed_min: f64,
    /// Minutes for each kilogram of produce.
    pub per_kg_min: f64,
    /// Minutes for each container.
    pub per_jar_min: f64,
    /// The quickest, as a share of the typical.
    pub low_factor: f64,
    /// The slowest, as a share of the typical.
    pub high_factor: f64,
    /// What is meant.
    pub note: Box<str>,
    /// Where it comes from.
    pub citation: Citation,
}

/// What a state of produce costs and rules out.
#[derive(Debug, Clone)]
pub struct ConditionRow {
    /// The word of the day file.
    pub condition: Box<str>,
    /// The share of the weight that is cut away.
    pub loss: Percent,
    /// It will not stay whole or in halves.
    pub not_whole: bool,
    /// It is not for canning.
    pub not_canned: bool,
    /// What to do with it.
    pub note: Box<str>,
    /// Where it comes from.
    pub citation: Citation,
}

closed_list!(
    /// Kinds of food as they are served.
    ServingKind {
        /// Fruit, vegetables, tomatoes.
        Plain = "plain",
        /// Juice.
        Juice = "juice",
        /// Sauce.
        Sauce = "sauce",
        /// Pickles.
        Pickle = "pickle",
        /// Relish, salsa, chutney, ketchup.
        Relish = "relish",
        /// Jam, jelly, butter, syrup.
        Sweet = "sweet",
        /// Kraut and other ferments.
        Ferment = "ferment",
        /// From the freezer.
        Frozen = "frozen",
        /// Dried.
        Dried = "dried",
        /// Herbs and pastes.
        Herb = "herb",
    }
);

/// How much one serving of a kind is.
#[derive(Debug, Clone)]
pub struct ServingSize {
    /// The kind.
    pub kind: ServingKind,
    /// One serving, as it stands in its jar.
    pub volume: Volume,
    /// The fresh produce that one serving is made of.
    pub fresh: Mass,
    /// What is meant.
    pub note: Box<str>,
    /// Where it comes from.
    pub citation: Citation,
}

/// The three tables.
#[derive(Debug, Clone, Default)]
pub(crate) struct Guesses {
    work: Vec<WorkGuess>,
    conditions: Vec<ConditionRow>,
    servings: Vec<ServingSize>,
}

/// The verb of the row for washing up.
const WASH_UP: &str = "wash up";

/// Reads `first_guesses.csv`, `conditions.csv` and `serving_sizes.csv`.
pub(crate) fn read_guesses(reading: &mut Reading<'_>) -> Guesses {
    Guesses {
        work: read_work(reading),
        conditions: read_conditions(reading),
        servings: read_servings(reading),
    }
}

fn read_work(reading: &mut Reading<'_>) -> Vec<WorkGuess> {
    const COLUMNS: &[&str] = &[
        "action",
        "equipment",
        "keyword",
        "fixed_min",
        "per_kg_min",
        "per_jar_min",
        "low_factor",
        "high_factor",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::FirstGuesses, COLUMNS, |row| WorkGuess {
        action: if row.cell("action") == WASH_UP { None } else { Some(row.word("action")) },
        equipment: row.word("equipment"),
        keyword: row.free_text("keyword"),
        fixed_min: row.number("fixed_min"),
        per_kg_min: row.number("per_kg_min"),
        per_jar_min: row.number("per_jar_min"),
        low_factor: row.number("low_factor"),
        high_factor: row.number("high_factor"),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

fn read_conditions(reading: &mut Reading<'_>) -> Vec<ConditionRow> {
    const COLUMNS: &[&str] =
        &["condition", "loss_percent", "not_whole", "not_canned", "note", "source_id", "locator", "basis"];
    reading.rows(Table::Conditions, COLUMNS, |row| ConditionRow {
        condition: row.text("condition").into(),
        loss: Percent::of_hundred(row.number("loss_percent")),
        not_whole: row.yes("not_whole"),
        not_canned: row.yes("not_canned"),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

fn read_servings(reading: &mut Reading<'_>) -> Vec<ServingSize> {
    const COLUMNS: &[&str] =
        &["kind", "ml_per_serving", "fresh_g_per_serving", "note", "source_id", "locator", "basis"];
    reading.rows(Table::ServingSizes, COLUMNS, |row| ServingSize {
        kind: row.word("kind"),
        volume: Volume::millilitres(row.number("ml_per_serving")),
        fresh: Mass::grams(row.number("fresh_g_per_serving")),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// The first guess for a line: the row of its verb and place whose words it holds, the longest words first.
    #[must_use]
    pub fn find_guess(&self, action: Action, equipment: Equipment, what: &str) -> Option<&WorkGuess> {
        let rows = || self.guesses.work.iter().filter(|row| row.action == Some(action));
        let speaks_of = |row: &&WorkGuess| what.contains(&*row.keyword);
        rows()
            .filter(|row| row.equipment == equipment)
            .filter(speaks_of)
            .max_by_key(|row| row.keyword.len())
            .or_else(|| rows().filter(speaks_of).max_by_key(|row| row.keyword.len()))
    }

    /// The first guess for washing up after a batch.
    #[must_use]
    pub fn wash_up_guess(&self) -> Option<&WorkGuess> {
        self.guesses.work.iter().find(|row| row.action.is_none())
    }

    /// What a state of produce costs.
    #[must_use]
    pub fn find_condition(&self, word: &str) -> Option<&ConditionRow> {
        self.guesses.conditions.iter().find(|row| &*row.condition == word)
    }

    /// How much one serving of a kind is.
    #[must_use]
    pub fn serving(&self, kind: ServingKind) -> Option<&ServingSize> {
        self.guesses.servings.iter().find(|row| row.kind == kind)
    }

    /// How much one serving of what a formula makes is.
    #[must_use]
    pub fn serving_of(&self, formula: &Formula) -> Option<&ServingSize> {
        self.serving(serving_kind(formula))
    }
}

/// How what a formula makes is served.
#[must_use]
pub fn serving_kind(formula: &Formula) -> ServingKind {
    let named = |words: &[&str]| {
        words.iter().any(|word| formula.name.contains(word) || formula.id.as_str().contains(word))
    };
    if formula.methods.contains(&Method::Dry) {
        return if named(&["herb", "garlic", "onion"]) { ServingKind::Herb } else { ServingKind::Dried };
    }
    if formula.methods.contains(&Method::Freeze) {
        if named(&["herb", "pesto", "garlic"]) {
            return ServingKind::Herb;
        }
        return if named(&["jam"]) { ServingKind::Sweet } else { ServingKind::Frozen };
    }
    if named(&["juice"]) {
        return ServingKind::Juice;
    }
    if named(&["relish", "chutney", "ketchup", "piccalilli", "hot_sauce", "pepper_sauce", "horseradish"]) {
        return ServingKind::Relish;
    }
    if named(&["jam", "jelly", "butter", "syrup", "marmalade", "spread", "curd"]) {
        return ServingKind::Sweet;
    }
    if formula.methods.contains(&Method::Ferment) {
        return ServingKind::Ferment;
    }
    match formula.class {
        Some(FormulaClass::Salsa) => ServingKind::Relish,
        Some(FormulaClass::PickleFresh | FormulaClass::PickleFermented) => ServingKind::Pickle,
        Some(FormulaClass::Sauce | FormulaClass::SoupMixed) => ServingKind::Sauce,
        _ => ServingKind::Plain,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unprinted_line_of_every_formula_has_a_first_guess() {
        let almanac = Almanac::load().expect("the tables are sound");
        let mut missing = Vec::new();
        for formula in almanac.formulas() {
            for line in formula.steps.iter().filter(|line| line.minutes.is_none()) {
                let is_process = line.action == Action::Process;
                if !is_process && almanac.find_guess(line.action, line.equipment, &line.what).is_none() {
                    missing.push(format!("{} {} {}", formula.id, line.action, line.what));
                }
            }
        }
        assert_eq!(missing, Vec::<String>::new());
    }

    #[test]
    fn the_longest_matching_words_win() {
        let almanac = Almanac::load().expect("the tables are sound");
        let of = |what| almanac.find_guess(Action::Boil, Equipment::Kettle, what).map(|row| row.per_kg_min);
        assert_eq!(of("juice down by one third, stirring more as it thickens"), Some(6.5));
        assert_eq!(of("vinegar and salt"), Some(1.0));
    }

    #[test]
    fn every_kind_has_a_serving_size() {
        let almanac = Almanac::load().expect("the tables are sound");
        for kind in ServingKind::ALL {
            assert!(
                almanac.serving(*kind).is_some_and(|row| row.volume > Volume::ZERO && row.fresh > Mass::ZERO),
                "{kind}"
            );
        }
    }
}
