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
    let source =
        require_one(find_source(almanac, typed), NameKind::Source, typed, |found| found.id.to_string())?;
    let rests = |citation: &Citation| citation.source == source.id || citation.witnesses.contains(&source.id);
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

/// The publication and the place in it of a written citation: `ID, place` or `ID: place`.
#[must_use]
pub fn split_citation<'a, 'w>(almanac: &'a Almanac, written: &'w str) -> Option<(&'a Source, &'w str)> {
    let ends = [written.find(", "), written.find(": ")].into_iter().flatten().min();
    let (id, place) = ends.map_or((written, ""), |end| (&written[..end], &written[end + 2..]));
    almanac.source(&SourceId::from(id)).map(|source| (source, place))
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
