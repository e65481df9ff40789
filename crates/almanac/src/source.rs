//! Where a figure comes from, and how far it may be trusted.

use crate::SourceId;
use std::sync::Arc;

use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::row::{Reading, Sources};
use crate::tables::Table;

closed_list!(
    /// How a figure got into its row.
    Basis {
        /// Seen in print at the place named.
        Read = "read",
        /// Worked out by arithmetic from printed figures.
        Computed = "computed",
        /// A first guess, to be replaced by the household's own records.
        Estimate = "estimate",
        /// Our reading of printed rules.
        Derived = "derived",
        /// Recalled and never seen: it may add caution and permits nothing.
        Memory = "memory",
    }
);

closed_list!(
    /// How far a source is trusted.
    Rank {
        /// A national authority, an extension service, a reviewed paper, or a copy that names one.
        Full = "full",
        /// An owner's manual, a private copy, a single answer, our own reading.
        Lower = "lower",
    }
);

/// A publication, or another place where figures were found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Its name in the tables.
    pub id: SourceId,
    /// Issuer, title, year.
    pub title: Box<str>,
    /// The latest year in the title; none for a page that carries none.
    pub year: Option<u16>,
    /// How far it is trusted.
    pub rank: Rank,
    /// Why it has that rank.
    pub why: Box<str>,
}

/// The paper trail of one row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Citation {
    /// The publication.
    pub source: SourceId,
    /// Others that print the same, or a part of it. They lend the row no rank.
    pub witnesses: Arc<[SourceId]>,
    /// Page, table or heading in it.
    pub locator: Arc<str>,
    /// How the figure got here.
    pub basis: Basis,
    /// How far the publication is trusted.
    pub rank: Rank,
    /// The year of the publication, else the one its place names; none for a page that carries none.
    pub year: Option<u16>,
}

impl Citation {
    /// Whether the word *tested* may stand on this row: seen in print, in a source of full rank.
    #[must_use]
    pub fn may_be_called_tested(&self) -> bool {
        self.basis == Basis::Read && self.rank == Rank::Full
    }
}

/// One entry as the file spells it.
#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    title: String,
    rank: String,
    why: String,
}

/// Reads `sources.toml`.
pub(crate) fn read_sources(reading: &mut Reading<'_>) -> Sources {
    let mut sources = Sources::new();
    let text = reading.tables.text(Table::Sources);
    let line_at = |offset: usize| 1 + text.bytes().take(offset).filter(|byte| *byte == b'\n').count() as u64;
    let entries = match toml::from_str::<std::collections::BTreeMap<toml::Spanned<String>, Entry>>(text) {
        Ok(entries) => entries,
        Err(error) => {
            let line = error.span().map_or(1, |span| line_at(span.start));
            let reason = error.message().to_owned();
            reading.note(Table::Sources, line, DataProblem::Unreadable { reason });
            return sources;
        }
    };
    for (key, entry) in entries {
        let id = SourceId::from(key.get_ref().as_str());
        let Some(rank) = Rank::find(&entry.rank) else {
            let problem =
                DataProblem::NotInList { column: "rank", text: entry.rank, list: "full, lower".to_owned() };
            reading.note(Table::Sources, line_at(key.span().start), problem);
            continue;
        };
        let year = latest_year(&entry.title);
        let source = Source { id: id.clone(), title: entry.title.into(), year, rank, why: entry.why.into() };
        sources.insert(id, source);
    }
    sources
}

/// The latest year named in a title. Numbers of leaflets are longer, shorter or joined to letters.
pub(crate) fn latest_year(title: &str) -> Option<u16> {
    /// The first bulletins on home canning are of this century; nothing on file is older.
    const YEARS: std::ops::RangeInclusive<u16> = 1900..=2099;
    let words = title.split(|mark: char| !mark.is_alphanumeric()).filter(|word| word.len() == 4);
    words.filter_map(|word| word.parse().ok()).filter(|year| YEARS.contains(year)).max()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Almanac, Table, Tables};

    fn gauge_rule_naming(sources: &str) -> Tables {
        let text = Tables::embedded().text(Table::CannerRules).to_owned();
        let named = "isu-gauges-2024; osu-deschutes-gauges; ohio-morrow-gauges; utk-marshall-gauges";
        assert!(text.contains(named), "the rule on file names its four publications");
        Tables::embedded().with(Table::CannerRules, text.replace(named, sources))
    }

    #[test]
    fn who_prints_the_same_is_named_beside_the_publication() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        let citation = &almanac.rule("gauge-replace-over-2").expect("a rule on file").citation;
        assert_eq!(citation.source, SourceId::from("isu-gauges-2024"));
        let witnesses: Vec<&str> = citation.witnesses.iter().map(SourceId::as_str).collect();
        assert_eq!(witnesses, ["osu-deschutes-gauges", "ohio-morrow-gauges", "utk-marshall-gauges"]);
    }

    #[test]
    fn a_witness_must_be_listed_like_any_source() {
        let faults =
            Almanac::from_tables(&gauge_rule_naming("isu-gauges-2024; hearsay")).expect_err("a fault");
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(told.len(), 1, "{told:?}");
        assert!(told[0].contains("source_id is \"hearsay\", which sources.toml does not hold"), "{told:?}");
    }

    #[test]
    fn a_witness_of_full_rank_does_not_raise_a_row() {
        let rank = |sources| {
            let almanac = Almanac::from_tables(&gauge_rule_naming(sources)).expect("the sources are listed");
            almanac.rule("gauge-replace-over-2").expect("a rule on file").citation.may_be_called_tested()
        };
        assert!(rank("isu-gauges-2024; ASKEXT_HALF"));
        assert!(!rank("ASKEXT_HALF; isu-gauges-2024"));
    }

    #[test]
    fn the_year_of_a_title_is_its_latest_and_no_leaflet_number() {
        assert_eq!(latest_year("Extension, Thickeners, 10 September 2018 and 16 August 2022"), Some(2022));
        assert_eq!(latest_year("Bulletin 4384, FCS8183, no. 93085"), None);
    }
}
