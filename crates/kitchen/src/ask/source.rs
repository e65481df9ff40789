//! Publications, how far they are trusted, and what rests on them.

use almanac::{Almanac, Citation, Match, Source, SourceId};
use serde::Serialize;

use super::error::{AskError, NameKind};
use super::listed::Listed;
use super::names::require_one;

/// A publication and what rests on it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SourceSheet {
    /// The id.
    pub id: String,
    /// Issuer, title, year.
    pub title: String,
    /// How far it is trusted.
    pub rank: String,
    /// Why.
    pub why: String,
    /// The formulas that rest on it.
    pub formulas: Vec<String>,
    /// The foods with a process from it.
    pub processes: Vec<String>,
}

/// Every publication.
#[must_use]
pub fn list_sources(almanac: &Almanac) -> Vec<Listed> {
    let listed = almanac.sources().map(|source| Listed {
        id: source.id.to_string(),
        name: source.title.to_string(),
        about: source.rank.to_string(),
    });
    listed.collect()
}

/// A publication and what rests on it.
///
/// # Errors
///
/// When the word is the id of no publication and stands in no title, or in several.
pub fn show_source(almanac: &Almanac, typed: &str) -> Result<SourceSheet, AskError> {
    let source = require_one(find_source(almanac, typed), NameKind::Source, typed, |found| found.id.to_string())?;
    let rests = |citation: &Citation| citation.source == source.id;
    let formulas = almanac.formulas().filter(|formula| rests(&formula.citation));
    let processes = almanac
        .products()
        .filter(|product| almanac.printed_lines(&product.id).any(|line| rests(line.citation())));
    Ok(SourceSheet {
        id: source.id.to_string(),
        title: source.title.to_string(),
        rank: source.rank.to_string(),
        why: source.why.to_string(),
        formulas: formulas.map(|formula| formula.id.to_string()).collect(),
        processes: processes.map(|product| product.id.to_string()).collect(),
    })
}

/// Where a row is printed, in one line for people.
#[must_use]
pub fn cite(almanac: &Almanac, citation: &Citation) -> String {
    let title = almanac.source(&citation.source).map_or(citation.source.as_str(), |source| &source.title);
    format!("{title}: {}", citation.locator)
}

/// Citations of the form `ID, place` or `ID: place`, with the title of the publication in place of its id.
#[must_use]
pub fn name_sources(almanac: &Almanac, cited: &str) -> String {
    let ends = [cited.find(", "), cited.find(": ")].into_iter().flatten().min();
    let (id, place) = ends.map_or((cited, ""), |end| (&cited[..end], &cited[end + 2..]));
    match almanac.source(&SourceId::from(id)) {
        Some(source) if place.is_empty() => source.title.to_string(),
        Some(source) => format!("{}: {place}", source.title),
        None => cited.to_owned(),
    }
}

fn find_source<'a>(almanac: &'a Almanac, typed: &str) -> Match<'a, Source> {
    let typed = typed.trim();
    if let Some(source) = almanac.source(&SourceId::from(typed)) {
        return Match::One(source);
    }
    let typed = typed.to_lowercase();
    let holds = |text: &str| !typed.is_empty() && text.to_lowercase().contains(&typed);
    let found: Vec<_> =
        almanac.sources().filter(|source| holds(source.id.as_str()) || holds(&source.title)).collect();
    match found.as_slice() {
        [one] => Match::One(one),
        [] => Match::Nearest(Vec::new()),
        _ => Match::Several(found),
    }
}
