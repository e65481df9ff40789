//! One printed row, told to a person.

use almanac::{Citation, KeepingFigure, RuleId};
use measure::write_temp_fahrenheit;
use serde::Serialize;

/// What a row says, with the figure that stands beside it and the place it comes from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Told {
    /// The name of the row.
    pub rule: String,
    /// The figure: `24 h`, `2 to 3 days`.
    pub figure: Option<String>,
    /// What to do or to know.
    pub text: String,
    /// The publication and the place in it.
    pub source: String,
    /// How the row got here.
    pub basis: String,
}

impl Told {
    /// A row told by its own sentence.
    pub(super) fn of(
        rule: &RuleId,
        say: &str,
        note: &str,
        figure: Option<&KeepingFigure>,
        citation: &Citation,
    ) -> Self {
        let text = if note.is_empty() {
            say.to_owned()
        } else {
            format!("{} ({note}).", say.trim_end_matches('.')).trim_start().to_owned()
        };
        Self {
            rule: rule.to_string(),
            figure: figure.map(KeepingFigure::words),
            text,
            source: format!("{}, {}", citation.source, citation.locator),
            basis: citation.basis.to_string(),
        }
    }
}

impl Told {
    /// The same with a temperature beside its figure.
    fn at(mut self, temp: Option<String>) -> Self {
        self.figure = match (self.figure.take(), temp) {
            (Some(figure), Some(temp)) => Some(format!("{figure}, {temp}")),
            (figure, temp) => figure.or(temp),
        };
        self
    }
}

impl From<&almanac::SignRule> for Told {
    fn from(row: &almanac::SignRule) -> Self {
        Self::of(&row.id, &row.say, &row.note, row.figure.as_ref(), &row.citation)
    }
}

impl From<&almanac::OutageRule> for Told {
    fn from(row: &almanac::OutageRule) -> Self {
        Self::of(&row.id, &row.say, &row.note, row.figure.as_ref(), &row.citation)
    }
}

impl From<&almanac::BestBy> for Told {
    fn from(row: &almanac::BestBy) -> Self {
        let told = Self::of(&row.id, &row.say, &row.note, row.figure.as_ref(), &row.citation);
        told.at(row.warmest.map(write_temp_fahrenheit))
    }
}

impl From<&almanac::CoolingRule> for Told {
    fn from(row: &almanac::CoolingRule) -> Self {
        Self::of(&row.id, &row.say, "", row.figure.as_ref(), &row.citation)
    }
}

impl From<&almanac::OilRule> for Told {
    fn from(row: &almanac::OilRule) -> Self {
        let told = Self::of(&row.id, &row.say, &row.note, row.figure.as_ref(), &row.citation);
        told.at(row.at_most.map(|temp| format!("{} or below", write_temp_fahrenheit(temp))))
    }
}

impl From<&almanac::FermentRule> for Told {
    fn from(row: &almanac::FermentRule) -> Self {
        Self::of(&row.id, &row.say, "", None, &row.citation)
    }
}

impl From<&almanac::DriedRule> for Told {
    fn from(row: &almanac::DriedRule) -> Self {
        let told = Self::of(&row.id, &row.say, &row.note, row.figure.as_ref(), &row.citation);
        told.at(row.at.map(write_temp_fahrenheit))
    }
}
