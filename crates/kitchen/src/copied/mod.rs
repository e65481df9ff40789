//! Formulas a household copied from a publication it owns, rows it confirmed from its own copy, and formulas of its
//! own, as they stand in the house file.
//!
//! A copied formula is checked by every rule as it is read, and each refusal says its line. A formula of the
//! household's own gets no process: it is laid beside the nearest tested one.

mod beside;

use almanac::Almanac;
use batch::clear::{
    CopiedCleared, CopiedFault, CopiedFormula, CopiedQuestion, OwnCopy, clear_copied as clear_formula,
};

use crate::ask::AskError;
use crate::ask::{ClearWords, read_copied_question};
use crate::day_file::{DayFaults, read_written_formulas};

pub use crate::day_file::{OwnFormula, OwnKeep};
pub use beside::{Beside, BesideLine, BesideShare, lay_beside};

/// The formulas of a house file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HouseFormulas {
    /// Copied formulas and confirmed rows.
    pub copied: Vec<HouseCopy>,
    /// The household's own.
    pub own: Vec<OwnFormula>,
}

/// A copied formula or a confirmed row, checked.
#[derive(Debug, Clone, PartialEq)]
pub struct HouseCopy {
    /// What the household calls it.
    pub name: String,
    /// Where it is printed.
    pub copy: OwnCopy,
    /// Whether it is a row that the household confirmed, and no whole formula.
    pub is_row: bool,
    /// The line on which it begins.
    pub line: usize,
    /// The formula, or every rule that refuses it.
    pub checked: Result<CopiedFormula, Vec<PlacedFault>>,
}

/// A rule that refuses, with the line it speaks of.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedFault {
    /// The line, counted from one.
    pub line: usize,
    /// The rule.
    pub fault: CopiedFault,
}

/// Reads and checks the formulas of a house file.
///
/// # Errors
///
/// Everything that cannot be read, at once, each with its line. What can be read and breaks a rule is no error: it
/// stands in the answer, with the line of every rule that refuses it.
pub fn read_house_formulas(
    almanac: &Almanac,
    house: &[u8],
    this_year: u16,
) -> Result<HouseFormulas, DayFaults> {
    let written = read_written_formulas(almanac, house)?;
    let copied = written.copied.into_iter().map(|written| {
        let draft = written.draft.clone();
        let (name, copy, is_row) = (draft.name.clone(), draft.copy.clone(), draft.formula.is_none());
        let line = written.line(batch::clear::CopiedPlace::Whole);
        let checked = CopiedFormula::check(almanac, draft, this_year).map_err(|faults| {
            let mut placed: Vec<PlacedFault> = faults
                .into_iter()
                .map(|fault| PlacedFault { line: written.line(fault.place), fault })
                .collect();
            placed.sort_by_key(|placed| placed.line);
            placed
        });
        HouseCopy { name, copy, is_row, line, checked }
    });
    Ok(HouseFormulas { copied: copied.collect(), own: written.own })
}

/// The answer about a copied formula: its process as entered, or every rule that refuses it.
#[derive(Debug, Clone, PartialEq)]
pub enum CopiedAnswer {
    /// It meets the rules.
    Cleared(Box<CopiedCleared>),
    /// It does not.
    Refused(Box<HouseCopy>),
}

/// Answers how a copied formula is processed here.
///
/// # Errors
///
/// When no copied formula has that name, or when a pack, jar, canner, altitude or gauge is missing or cannot be read.
pub fn clear_copied(
    almanac: &Almanac,
    formulas: &HouseFormulas,
    name: &str,
    words: &ClearWords,
) -> Result<CopiedAnswer, AskError> {
    let found = find_copied(formulas, name)?;
    let formula = match &found.checked {
        Ok(formula) => formula,
        Err(_) => return Ok(CopiedAnswer::Refused(Box::new(found.clone()))),
    };
    let question: CopiedQuestion = read_copied_question(words)?;
    Ok(CopiedAnswer::Cleared(Box::new(clear_formula(almanac, formula, &question))))
}

/// The copied formula of a name, whatever its capitals.
fn find_copied<'a>(formulas: &'a HouseFormulas, name: &str) -> Result<&'a HouseCopy, AskError> {
    let typed = name.trim();
    formulas.copied.iter().find(|copied| copied.name.eq_ignore_ascii_case(typed)).ok_or_else(|| {
        AskError::UnknownWord {
            what: "copied formula of the house file",
            typed: typed.to_owned(),
            known: formulas.copied.iter().map(|copied| copied.name.clone()).collect(),
        }
    })
}

#[cfg(test)]
mod tests;
