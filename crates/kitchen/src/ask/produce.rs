//! Produce: what it weighs, what is waste, how long it waits, which formulas take it.

use almanac::{Almanac, Citation, FreshStorage, Produce};
use measure::{Mass, write_mass_us, write_percent, write_temp_fahrenheit};
use serde::Serialize;

use super::error::{AskError, NameKind};
use super::listed::{Listed, join};
use super::names::require_one;
use super::source::cite;

/// All that is on file about a kind of produce.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProduceSheet {
    /// The id.
    pub id: String,
    /// The name.
    pub name: String,
    /// Other names for it.
    pub also: Vec<String>,
    /// What a piece or a bushel weighs.
    pub weighs: Vec<ProduceFact>,
    /// How much of it is eaten.
    pub edible: Vec<ProduceFact>,
    /// How long it keeps, and how; publications that disagree stand side by side.
    pub keeps: Vec<ProduceFact>,
    /// The formulas that take it.
    pub formulas: Vec<String>,
}

/// One fact with where it is printed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProduceFact {
    /// In words.
    pub says: String,
    /// Where it is printed.
    pub source: String,
    /// How it got here.
    pub basis: String,
}

/// Every kind of produce.
#[must_use]
pub fn list_produce(almanac: &Almanac) -> Vec<Listed> {
    let listed = almanac.produce_list().map(|produce| Listed {
        id: produce.id.to_string(),
        name: produce.name.to_string(),
        about: join(produce.aliases.iter(), ", "),
    });
    listed.collect()
}

/// All that is on file about a kind of produce.
///
/// # Errors
///
/// When the word names no produce, or several.
pub fn show_produce(almanac: &Almanac, typed: &str) -> Result<ProduceSheet, AskError> {
    let produce =
        require_one(almanac.find_produce(typed), NameKind::Produce, typed, |found| found.id.to_string())?;
    let takes =
        almanac.formulas().filter(|formula| formula.ingredients.iter().any(|line| line.accepts(&produce.id)));
    Ok(ProduceSheet {
        id: produce.id.to_string(),
        name: produce.name.to_string(),
        also: produce.aliases.iter().map(ToString::to_string).collect(),
        weighs: word_weights(almanac, produce),
        edible: word_edible(almanac, produce),
        keeps: almanac.find_storage(produce).into_iter().map(|row| word_storage(almanac, row)).collect(),
        formulas: takes.map(|formula| formula.id.to_string()).collect(),
    })
}

fn word_weights(almanac: &Almanac, produce: &Produce) -> Vec<ProduceFact> {
    let piece = |what: &str, mass: Option<Mass>| {
        mass.map(|mass| format!("one of middling size, {what}: {}", write_mass_us(mass)))
    };
    let pieces = [piece("as it comes", produce.each_as_purchased), piece("trimmed", produce.each_edible)];
    let containers =
        produce.containers.iter().map(|(container, mass)| format!("a {container}: {}", write_mass_us(*mass)));
    let facts = pieces.into_iter().flatten().chain(containers);
    facts.map(|says| fact(almanac, says, &produce.citation)).collect()
}

fn word_edible(almanac: &Almanac, produce: &Produce) -> Vec<ProduceFact> {
    let facts = almanac.find_yield(produce).map(|row| {
        let removed =
            if row.removed.is_empty() { String::new() } else { format!("; taken off: {}", row.removed) };
        fact(
            almanac,
            format!("{} of what is bought or picked{removed}", write_percent(row.edible)),
            &row.citation,
        )
    });
    facts.into_iter().collect()
}

fn word_storage(almanac: &Almanac, row: &FreshStorage) -> ProduceFact {
    let temps: Vec<String> =
        [row.temp.low, row.temp.high].into_iter().flatten().map(write_temp_fahrenheit).collect();
    let heat = match temps.as_slice() {
        [] => String::new(),
        [low, high] if low != high => format!(" at {low} to {high}"),
        [one, ..] => format!(" at {one}"),
    };
    let note = if row.note.is_empty() { String::new() } else { format!("; {}", row.note) };
    let life = if row.life_printed.is_empty() { "how long is not printed" } else { &row.life_printed };
    fact(almanac, format!("{}: {life}{heat}{note}", row.produce), &row.citation)
}

fn fact(almanac: &Almanac, says: String, citation: &Citation) -> ProduceFact {
    ProduceFact { says, source: cite(almanac, citation), basis: citation.basis.to_string() }
}
