//! Foods and practices that are refused, why, and what to do instead.

use crate::RefusalId;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::words::{Stems, stems_of};

closed_list!(
    /// What is refused.
    RefusalKind {
        /// A food.
        Food = "food",
        /// A way of doing it.
        Practice = "practice",
    }
);

/// A food or practice that is refused.
#[derive(Debug, Clone, PartialEq)]
pub struct NotForCanning {
    /// Its name in the table.
    pub id: RefusalId,
    /// What it is.
    pub item: Box<str>,
    /// Food or practice.
    pub kind: RefusalKind,
    /// Why.
    pub reason: Box<str>,
    /// What to do instead.
    pub instead: Box<str>,
    /// Where it stands. A refusal counts whatever its basis or rank.
    pub citation: Citation,
    /// Ways of naming it: it is meant when all words of one of them are there.
    pub(crate) phrases: Vec<Stems>,
}

/// Reads `not_for_canning.csv`.
pub(crate) fn read_refusals(reading: &mut Reading<'_>) -> Vec<(u64, NotForCanning)> {
    const COLUMNS: &[&str] =
        &["item_id", "item", "kind", "reason", "safe_alternative", "words", "source_id", "locator", "basis"];
    reading.rows(Table::NotForCanning, COLUMNS, |row| {
        let refusal = NotForCanning {
            id: row.id("item_id"),
            item: row.text("item").into(),
            kind: row.word("kind"),
            reason: row.text("reason").into(),
            instead: row.text("safe_alternative").into(),
            phrases: row.text("words").split('|').map(stems_of).collect(),
            citation: row.citation(),
        };
        (row.line(), refusal)
    })
}
