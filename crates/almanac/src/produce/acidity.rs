//! How sour foods are, as listed. A pH opens nothing: it may explain and it may close.

use crate::Almanac;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::words::stems_of;

/// An acidity.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Ph(f64);

impl Ph {
    /// On the usual scale.
    #[must_use]
    pub const fn new(value: f64) -> Self {
        Self(value)
    }

    /// On the usual scale.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// The acidity listed for a food.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhRange {
    /// The most acid.
    pub low: Ph,
    /// The least acid.
    pub high: Ph,
}

/// A food and its acidity.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidityRow {
    /// The food.
    pub food: Box<str>,
    /// Its acidity.
    pub ph: PhRange,
    /// What else is listed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// A fact about acids: a limit, a strength, a dose.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidityFact {
    /// What.
    pub item: Box<str>,
    /// The figure, as printed.
    pub value: Box<str>,
    /// Its unit, as printed.
    pub unit: Box<str>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `acidity_ph.csv`.
pub(super) fn read_acidity(reading: &mut Reading<'_>) -> (Vec<AcidityRow>, Vec<AcidityFact>) {
    const COLUMNS: &[&str] =
        &["record", "item", "ph_min", "ph_max", "value", "unit", "note", "source_id", "locator", "basis"];
    let mut foods = Vec::new();
    let mut facts = Vec::new();
    reading.rows(Table::Acidity, COLUMNS, |row| {
        let record = row.text("record");
        let item: Box<str> = row.text("item").into();
        let low = row.maybe_number("ph_min");
        let high = row.maybe_number("ph_max");
        let value = row.free_text("value");
        let unit = row.free_text("unit");
        let note = row.free_text("note");
        let citation = row.citation();
        match (record, low, high) {
            ("fact", None, None) => facts.push(AcidityFact { item, value, unit, note, citation }),
            ("food", Some(low), Some(high)) if 0.0 < low && low <= high && high < 14.0 => {
                let ph = PhRange { low: Ph(low), high: Ph(high) };
                foods.push(AcidityRow { food: item, ph, note, citation });
            }
            _ => {
                let what = format!(
                    "a food needs a pH from low to high and a fact needs none, but this is a {record:?}"
                );
                row.contradict(what);
            }
        }
    });
    (foods, facts)
}

impl Almanac {
    /// Every food of the acidity table.
    #[must_use]
    pub fn acidity(&self) -> &[AcidityRow] {
        &self.produce.acidity
    }

    /// Every fact about acids.
    #[must_use]
    pub fn acidity_facts(&self) -> &[AcidityFact] {
        &self.produce.acidity_facts
    }

    /// The listed foods whose names hold every word; lists that disagree stand side by side.
    #[must_use]
    pub fn find_acidity(&self, words: &str) -> Vec<&AcidityRow> {
        let wanted = stems_of(words);
        if wanted.is_empty() {
            return Vec::new();
        }
        self.produce.acidity.iter().filter(|row| wanted.is_subset(&stems_of(&row.food))).collect()
    }
}
