//! Jelly: the gel point, tests, classes of fruit, batches, keeping.

use measure::{Altitude, Temp};

use super::rows_named;
use crate::Almanac;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a row of the jelly table is about.
    JellyRecord {
        /// The gel point.
        GelPoint = "gel_point",
        /// A test of the gel.
        Test = "test",
        /// How much pectin and acid a fruit has.
        FruitClass = "fruit_class",
        /// Ripe and unripe together.
        FruitMix = "fruit_mix",
        /// What it makes.
        Yield = "yield",
        /// How much at once.
        Batch = "batch",
        /// How big a pot.
        Kettle = "kettle",
        /// Jars.
        Jar = "jar",
        /// Acid.
        Acid = "acid",
        /// Keeping it.
        Storage = "storage",
        /// When a cooked butter is done.
        EndPoint = "end_point",
        /// Cooking a soft jelly again.
        Remake = "remake",
    }
);

/// A row of the jelly table. Its figures are kept with the unit that is printed beside them.
#[derive(Debug, Clone, PartialEq)]
pub struct JellyFact {
    /// What it is about.
    pub record: JellyRecord,
    /// The fruit, the test, the batch.
    pub item: Box<str>,
    /// Its class, or when it holds.
    pub condition: Box<str>,
    /// The figure, from and to.
    pub value: Option<(f64, f64)>,
    /// Its unit.
    pub unit: Box<str>,
    /// At what height.
    pub altitude: Option<Altitude>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `jelly.csv`.
pub(super) fn read_jelly(reading: &mut Reading<'_>) -> Vec<JellyFact> {
    const COLUMNS: &[&str] = &[
        "record",
        "item",
        "class_or_condition",
        "value_min",
        "value_max",
        "unit",
        "altitude_ft",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Jelly, COLUMNS, |row| {
        let record = row.word("record");
        let item = row.text("item").into();
        let condition = row.free_text("class_or_condition");
        let low = row.maybe_number("value_min");
        let high = row.maybe_number("value_max");
        JellyFact {
            record,
            item,
            condition,
            // One end alone is a floor or a ceiling; the unit says which.
            value: low.or(high).zip(high.or(low)),
            unit: row.free_text("unit"),
            altitude: row.maybe_count("altitude_ft").map(Altitude::feet),
            note: row.free_text("note"),
            citation: row.citation(),
        }
    })
}

impl Almanac {
    /// Every row of the jelly table.
    #[must_use]
    pub fn jelly_facts(&self) -> &[JellyFact] {
        &self.methods.jelly
    }

    /// The rows about a fruit, a test or a batch.
    #[must_use]
    pub fn find_jelly(&self, item: &str) -> Vec<&JellyFact> {
        rows_named(&self.methods.jelly, item, |row| &row.item)
    }

    /// The printed gel point at the printed height at or next above this one, so that the jelly is never cooked
    /// past it; none above the last printed height.
    #[must_use]
    pub fn find_gel_point(&self, altitude: Altitude) -> Option<(Temp, &Citation)> {
        let printed = self.methods.jelly.iter().filter(|row| row.record == JellyRecord::GelPoint);
        printed
            .filter_map(|row| Some((row.altitude?, row.value?.0, &row.citation)))
            .filter(|(height, _, _)| *height >= altitude)
            .min_by_key(|(height, _, _)| *height)
            .map(|(_, fahrenheit, citation)| (Temp::fahrenheit(fahrenheit), citation))
    }
}
