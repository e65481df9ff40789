//! The publications an answer rests on: numbered where they are named, and listed once.

use almanac::{Almanac, Citation, Rank, Source};
use kitchen::ask::split_citation;
use paper::day::Publication;

use crate::leaf::Leaf;

/// The publications named so far, in the order met.
#[derive(Debug)]
pub(crate) struct Cited<'a> {
    almanac: &'a Almanac,
    titles: Vec<String>,
}

impl<'a> Cited<'a> {
    /// None named yet.
    pub(crate) fn new(almanac: &'a Almanac) -> Self {
        Self { almanac, titles: Vec::new() }
    }

    /// The place in the publication with the number it is listed under: `Guide 3 p. 3-8 [1]`.
    pub(crate) fn mark(&mut self, citation: &Citation) -> String {
        match self.almanac.source(&citation.source) {
            Some(source) => self.number(source, &citation.locator),
            None => format!("{}: {}", citation.source, citation.locator),
        }
    }

    /// The same for a citation that is written already; one that names no publication on file stays as it is.
    pub(crate) fn mark_written(&mut self, written: &str) -> String {
        match split_citation(self.almanac, written) {
            Some((source, place)) => self.number(source, place),
            None => written.to_owned(),
        }
    }

    fn number(&mut self, source: &Source, place: &str) -> String {
        let at =
            self.titles.iter().position(|title| *title == title_with_year(source)).unwrap_or_else(|| {
                self.titles.push(title_with_year(source));
                self.titles.len() - 1
            });
        format!("{place} [{}]", at + 1).trim_start().to_owned()
    }

    /// The publications, each under its number.
    pub(crate) fn list(&self) -> Vec<Publication> {
        let numbered = self.titles.iter().enumerate();
        numbered
            .map(|(at, title)| Publication { mark: format!("[{}]", at + 1), title: title.clone() })
            .collect()
    }
}

/// The title, which names the year; a publication that carries none says so.
fn title_with_year(source: &Source) -> String {
    match (source.year, source.rank) {
        (None, Rank::Full) if !source.title.contains("no date") => {
            format!("{} (no year on the page)", source.title)
        }
        _ => source.title.to_string(),
    }
}

/// Lays out publications as the last section.
pub(crate) fn lay_out_sources(leaf: &mut Leaf, sources: &[Publication]) {
    if sources.is_empty() {
        return;
    }
    leaf.section("Sources");
    for source in sources {
        leaf.line(&source.mark, &source.title);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_publication_is_listed_once_however_often_it_is_named() {
        let almanac = Almanac::load().expect("the tables built in have no fault");
        let mut cited = Cited::new(&almanac);
        assert_eq!(cited.mark_written("USDA539_15, Guide 3 p. 3-8"), "Guide 3 p. 3-8 [1]");
        assert_eq!(cited.mark_written("USDA539_15: Guide 1"), "Guide 1 [1]");
        assert_eq!(cited.mark_written("a book at home"), "a book at home");
        assert_eq!(cited.list().len(), 1);
    }
}
