//! How much of fresh produce is left once it is trimmed.

use measure::{Mass, Percent};

use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, Produce};

/// What is thrown away of a kind of produce, by weight as purchased.
#[derive(Debug, Clone, PartialEq)]
pub struct FreshYield {
    /// What, and how it is trimmed.
    pub produce: Box<str>,
    /// What it is a share of.
    pub start: Box<str>,
    /// What is thrown away.
    pub removed: Box<str>,
    /// The share thrown away.
    pub refuse: Percent,
    /// The share left.
    pub edible: Percent,
    /// Where it stands.
    pub citation: Citation,
}

impl FreshYield {
    /// What is left of so much as purchased.
    #[must_use]
    pub fn edible_of(&self, as_purchased: Mass) -> Mass {
        as_purchased * self.edible.as_fraction()
    }

    /// How much must be there to be left with so much.
    #[must_use]
    pub fn as_purchased_for(&self, edible: Mass) -> Mass {
        // Never divides by zero: a row with nothing edible is refused when it is read.
        edible * (1.0 / self.edible.as_fraction())
    }
}

/// Reads `yields_fresh.csv`.
pub(super) fn read_yields(reading: &mut Reading<'_>) -> Vec<FreshYield> {
    const COLUMNS: &[&str] = &[
        "produce",
        "start",
        "what_is_removed",
        "refuse_pct",
        "edible_pct",
        "as_purchased_per_edible",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::FreshYields, COLUMNS, |row| {
        let produce = row.text("produce").into();
        let start = row.text("start").into();
        let removed = row.free_text("what_is_removed");
        let refuse = row.number("refuse_pct");
        let edible = row.number("edible_pct");
        let per_edible = row.number("as_purchased_per_edible");
        // The third figure is the inverse of the second, rounded to three places.
        let joins = (refuse + edible - 100.0).abs() < 1e-9 && (per_edible * edible - 100.0).abs() < 0.1;
        if edible <= 0.0 || !joins {
            let what =
                format!("{refuse} % refuse, {edible} % edible and a factor of {per_edible} do not join");
            row.contradict(what);
        }
        FreshYield {
            produce,
            start,
            removed,
            refuse: Percent::of_hundred(refuse),
            edible: Percent::of_hundred(edible),
            citation: row.citation(),
        }
    })
}

impl Almanac {
    /// Every yield, as the table lists them.
    #[must_use]
    pub fn fresh_yields(&self) -> &[FreshYield] {
        &self.produce.yields
    }

    /// The yield of a kind of produce as it is usually trimmed; none when none is published.
    #[must_use]
    pub fn find_yield(&self, produce: &Produce) -> Option<&FreshYield> {
        let key = produce.yield_key.as_deref()?;
        self.produce.yields.iter().find(|row| &*row.produce == key)
    }
}
