//! What authorities of other countries say. It shows and warns; it gives no process.

use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// A place whose authorities say something on file.
    Place {
        /// Canada and its provinces.
        Canada = "canada",
        /// Australia.
        Australia = "australia",
        /// New Zealand.
        NewZealand = "new-zealand",
        /// The United Kingdom.
        UnitedKingdom = "united-kingdom",
        /// The European Union.
        EuropeanUnion = "european-union",
        /// Where countries differ.
        Everywhere = "everywhere",
    }
);

closed_list!(
    /// What is spoken of.
    ElsewhereTopic {
        /// Which food in which canner.
        Canners = "canners",
        /// Acid that is added.
        Acid = "acid",
        /// Sugar and pectin.
        Sugar = "sugar",
        /// Food in oil.
        Oil = "oil",
        /// Jar sizes.
        Jars = "jars",
        /// Tables of processes.
        Tables = "tables",
    }
);

/// What is said in one place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ElsewhereFact {
    /// Its name.
    pub id: RuleId,
    /// Where.
    pub place: Place,
    /// Of what.
    pub about: ElsewhereTopic,
    /// In our own short words.
    pub says: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `elsewhere.csv`.
pub(crate) fn read_elsewhere(reading: &mut Reading<'_>) -> Vec<ElsewhereFact> {
    const COLUMNS: &[&str] = &["fact_id", "place", "about", "says", "source_id", "locator", "basis"];
    reading.rows(Table::Elsewhere, COLUMNS, |row| ElsewhereFact {
        id: row.id("fact_id"),
        place: row.word("place"),
        about: row.word("about"),
        says: row.text("says").into(),
        citation: row.citation(),
    })
}

impl Almanac {
    /// What authorities of other countries say, in the order of the table.
    #[must_use]
    pub fn elsewhere(&self) -> &[ElsewhereFact] {
        &self.elsewhere
    }
}
