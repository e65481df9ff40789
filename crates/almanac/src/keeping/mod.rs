//! What is printed about food after it is put up: signs on jars, power cuts, cooling, food in oil, ferments and dried
//! food.
//!
//! The rows say what to do in our own short sentences, and code only chooses between them: the strictest of those that
//! are printed, the others beside it. A person's words are matched to the phrases of a row.

mod best_by;
mod cooling;
mod dried;
mod ferment;
mod figure;
mod oil;
mod outage;
mod phrases;
mod sign;

use crate::Almanac;
use crate::row::Reading;

pub use best_by::{BestBy, BestByScope, PutUpAs};
pub use cooling::{CoolingRule, CoolingTopic};
pub use dried::{DriedFood, DriedRule, DriedTopic};
pub use ferment::{FermentName, FermentRule, FermentTopic, FermentVerdict};
pub use figure::{KeepingFigure, KeepingUnit};
pub use oil::{OilRule, OilTopic};
pub use outage::{FreezerLoad, OutageAct, OutagePlace, OutageRule, OutageState};
pub use phrases::Called;
pub use sign::{SignRule, SignTopic, SignWeight};

/// The tables about food after it is put up.
#[derive(Debug, Clone, Default)]
pub(crate) struct KeepingTables {
    signs: Vec<SignRule>,
    outage: Vec<OutageRule>,
    cooling: Vec<CoolingRule>,
    oil: Vec<OilRule>,
    ferments: Vec<FermentRule>,
    ferment_names: Vec<FermentName>,
    dried: Vec<DriedRule>,
    best_by: Vec<BestBy>,
}

/// Reads the tables about food after it is put up.
pub(crate) fn read_keeping(reading: &mut Reading<'_>, knows_product: impl Fn(&str) -> bool) -> KeepingTables {
    KeepingTables {
        signs: sign::read_signs(reading),
        outage: outage::read_outage(reading),
        cooling: cooling::read_cooling(reading),
        oil: oil::read_oil(reading),
        ferments: ferment::read_ferment_rules(reading),
        ferment_names: ferment::read_ferment_names(reading, knows_product),
        dried: dried::read_dried(reading),
        best_by: best_by::read_best_by(reading),
    }
}

impl Almanac {
    /// Every row about signs on jars, in the order of the table.
    #[must_use]
    pub fn signs(&self) -> &[SignRule] {
        &self.keeping.signs
    }

    /// The signs that a person's words call up. Nothing hides anything: a word of danger counts beside any other.
    #[must_use]
    pub fn find_signs(&self, typed: &str) -> Called<'_, SignRule> {
        phrases::call_up(typed, &self.keeping.signs, |row| &row.phrases, phrases::Longer::StandsBeside)
    }

    /// Every row about cuts of power and floods, in the order of the table.
    #[must_use]
    pub fn outage_rules(&self) -> &[OutageRule] {
        &self.keeping.outage
    }

    /// The rows about cuts of power that a person's words call up: foods and questions. `cream` is not meant where
    /// `ice cream` is said.
    #[must_use]
    pub fn find_outage_rules(&self, typed: &str) -> Called<'_, OutageRule> {
        phrases::call_up(typed, &self.keeping.outage, |row| &row.phrases, phrases::Longer::HidesShorter)
    }

    /// Every row about cooling hot food.
    #[must_use]
    pub fn cooling_rules(&self) -> &[CoolingRule] {
        &self.keeping.cooling
    }

    /// Every row about food in oil.
    #[must_use]
    pub fn oil_rules(&self) -> &[OilRule] {
        &self.keeping.oil
    }

    /// The rows about food in oil that a person's words call up.
    #[must_use]
    pub fn find_oil_rules(&self, typed: &str) -> Called<'_, OilRule> {
        phrases::call_up(typed, &self.keeping.oil, |row| &row.phrases, phrases::Longer::StandsBeside)
    }

    /// Every rule for ferments.
    #[must_use]
    pub fn ferment_rules(&self) -> &[FermentRule] {
        &self.keeping.ferments
    }

    /// The signs on a ferment that a person's words call up.
    #[must_use]
    pub fn find_ferment_signs(&self, typed: &str) -> Called<'_, FermentRule> {
        phrases::call_up(typed, &self.keeping.ferments, |row| &row.phrases, phrases::Longer::StandsBeside)
    }

    /// The ferments that are named, with or without printed rules.
    #[must_use]
    pub fn ferment_names(&self) -> &[FermentName] {
        &self.keeping.ferment_names
    }

    /// The ferments that a person's words call up.
    #[must_use]
    pub fn find_ferment_names(&self, typed: &str) -> Called<'_, FermentName> {
        phrases::call_up(
            typed,
            &self.keeping.ferment_names,
            |row| &row.phrases,
            phrases::Longer::HidesShorter,
        )
    }

    /// Every rule for dried food.
    #[must_use]
    pub fn dried_rules(&self) -> &[DriedRule] {
        &self.keeping.dried
    }

    /// The signs on dried food that a person's words call up.
    #[must_use]
    pub fn find_dried_signs(&self, typed: &str) -> Called<'_, DriedRule> {
        phrases::call_up(typed, &self.keeping.dried, |row| &row.phrases, phrases::Longer::StandsBeside)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn load() -> Almanac {
        Almanac::load().expect("the tables built in have no fault")
    }

    #[test]
    fn every_phrase_calls_up_its_own_row() {
        let almanac = load();
        for row in almanac.signs() {
            for phrase in row.phrases.written() {
                assert!(almanac.find_signs(phrase).rows.iter().any(|found| found.id == row.id), "{phrase}");
            }
        }
        for row in almanac.outage_rules() {
            for phrase in row.phrases.written() {
                let found = almanac.find_outage_rules(phrase);
                assert!(found.rows.iter().any(|found| found.id == row.id), "{phrase} of {}", row.id);
            }
        }
    }

    #[test]
    fn no_row_says_that_anything_is_safe() {
        let almanac = load();
        let keeping = &almanac.keeping;
        let says = keeping
            .signs
            .iter()
            .map(|row| &row.say)
            .chain(keeping.outage.iter().map(|row| &row.say))
            .chain(keeping.cooling.iter().map(|row| &row.say))
            .chain(keeping.oil.iter().map(|row| &row.say))
            .chain(keeping.ferments.iter().map(|row| &row.say))
            .chain(keeping.dried.iter().map(|row| &row.say))
            .chain(keeping.best_by.iter().map(|row| &row.say));
        for say in says {
            assert!(!say.to_lowercase().contains("safe"), "{say}");
        }
    }

    #[test]
    fn words_that_are_not_understood_are_handed_back() {
        let almanac = load();
        let found = almanac.find_signs("the lid is rusty and it hums");
        assert!(!found.rows.is_empty());
        assert_eq!(found.not_understood, ["hums"]);
        assert!(almanac.find_signs("frobnicated").rows.is_empty());
    }

    #[test]
    fn the_longer_name_of_a_food_hides_the_shorter() {
        let almanac = load();
        let items = |typed: &str| {
            let found = almanac.find_outage_rules(typed);
            found.rows.iter().map(|row| row.item.to_string()).collect::<Vec<_>>()
        };
        assert!(
            items("ice cream").iter().all(|item| item.starts_with("ice cream")),
            "{:?}",
            items("ice cream")
        );
        assert!(
            items("cheddar cheese").iter().all(|item| item.contains("hard")),
            "{:?}",
            items("cheddar cheese")
        );
        assert!(items("cheese").len() > 4);
    }
}
