//! Ferments: salt, brine, time, end points, and what has been measured of them.

use crate::Almanac;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a row of the ferment table is about.
    FermentRecord {
        /// Salt.
        Salt = "salt",
        /// Temperature and time.
        TemperatureTime = "temperature_time",
        /// Brine.
        Brine = "brine",
        /// Vessels.
        Container = "container",
        /// When it is done.
        Endpoint = "endpoint",
        /// Keeping it.
        Storage = "storage",
        /// What to mind.
        Safety = "safety",
        /// Measured over days.
        Timeseries = "timeseries",
        /// Rates of growth.
        Kinetics = "kinetics",
        /// What was looked for and not found.
        Gap = "gap",
    }
);

/// A row of the ferment table. Its figures are kept with the unit that is printed beside them.
#[derive(Debug, Clone, PartialEq)]
pub struct FermentFact {
    /// What it is about.
    pub record: FermentRecord,
    /// The ferment, or the organism.
    pub product: Box<str>,
    /// What is measured.
    pub parameter: Box<str>,
    /// The figure as printed, from and to; words where no figure is printed.
    pub low: Box<str>,
    /// Its upper end as printed.
    pub high: Box<str>,
    /// Its unit.
    pub unit: Box<str>,
    /// On which day.
    pub day: Box<str>,
    /// At what temperature, in degrees Celsius as printed.
    pub celsius: Box<str>,
    /// The same in degrees Fahrenheit as printed.
    pub fahrenheit: Box<str>,
    /// At what pH, as printed.
    pub ph: Box<str>,
    /// At what acid, percent as lactic, as printed.
    pub lactic_percent: Box<str>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

impl FermentFact {
    /// The figure, where both ends are numbers; in the unit of the row.
    #[must_use]
    pub fn figures(&self) -> Option<(f64, f64)> {
        self.low.parse().ok().zip(self.high.parse().ok())
    }
}

/// Reads `fermentation.csv`.
pub(super) fn read_ferments(reading: &mut Reading<'_>) -> Vec<FermentFact> {
    const COLUMNS: &[&str] = &[
        "record",
        "product",
        "parameter",
        "value_min",
        "value_max",
        "unit",
        "day",
        "temp_C",
        "temp_F",
        "pH",
        "titratable_acid_pct_lactic",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Fermentation, COLUMNS, |row| FermentFact {
        record: row.word("record"),
        product: row.text("product").into(),
        parameter: row.text("parameter").into(),
        low: row.free_text("value_min"),
        high: row.free_text("value_max"),
        unit: row.free_text("unit"),
        day: row.free_text("day"),
        celsius: row.free_text("temp_C"),
        fahrenheit: row.free_text("temp_F"),
        ph: row.free_text("pH"),
        lactic_percent: row.free_text("titratable_acid_pct_lactic"),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// Every row of the ferment table.
    #[must_use]
    pub fn ferments(&self) -> &[FermentFact] {
        &self.methods.ferments
    }

    /// The rows of one kind about one ferment, such as the salt of `sauerkraut`.
    pub fn find_ferment(&self, product: &str, record: FermentRecord) -> impl Iterator<Item = &FermentFact> {
        self.methods.ferments.iter().filter(move |row| row.record == record && &*row.product == product)
    }
}
