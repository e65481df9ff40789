//! Reading the process tables: the only place where a process is made.

use std::collections::BTreeMap;

use measure::{Altitude, Length, Pressure};

use super::{Band, CannerKind, FoodGroup, PrintedLine, Process, Product};
use crate::ProductId;
use crate::fault::DataProblem;
use crate::row::{Reading, Row};
use crate::tables::Table;

/// The rows of both process tables, by food.
#[derive(Debug, Clone, Default)]
pub(crate) struct ProcessRows {
    by_product: BTreeMap<ProductId, (Product, Vec<Process>)>,
}

impl ProcessRows {
    /// The foods, in the order of their ids.
    pub(crate) fn products(&self) -> impl Iterator<Item = &Product> {
        self.by_product.values().map(|(product, _)| product)
    }

    /// One food.
    pub(crate) fn product(&self, id: &ProductId) -> Option<&Product> {
        self.by_product.get(id).map(|(product, _)| product)
    }

    /// Whether a food is in a process table.
    pub(crate) fn knows(&self, id: &str) -> bool {
        self.by_product.contains_key(id)
    }

    /// Every line of a food.
    pub(crate) fn lines(&self, id: &ProductId) -> impl Iterator<Item = PrintedLine<'_>> {
        self.rows_of(id).iter().map(|row| PrintedLine { row })
    }

    /// Whether the boiling-water table asks for acid in each jar of a food.
    pub(crate) fn asks_for_acid(&self, id: &ProductId) -> bool {
        self.rows_of(id).iter().any(|row| row.acid_in_each_jar)
    }

    pub(super) fn rows_of(&self, id: &ProductId) -> &[Process] {
        self.by_product.get(id).map_or(&[], |(_, rows)| rows)
    }

    fn add(&mut self, name: &str, group: FoodGroup, row: Process) {
        let (product, rows) = self.by_product.entry(row.product.clone()).or_insert_with(|| {
            let id = row.product.clone();
            (Product { id, names: Vec::new(), group, canners: Vec::new() }, Vec::new())
        });
        if !product.names.iter().any(|known| &**known == name) {
            product.names.push(name.into());
        }
        if !product.canners.contains(&row.canner) {
            product.canners.push(row.canner);
            if row.canner == CannerKind::BoilingWater {
                product.canners.push(CannerKind::Steam);
            }
        }
        rows.push(row);
    }
}

/// Reads both process tables and checks that the bands of each printed line join.
pub(crate) fn read_processes(reading: &mut Reading<'_>) -> ProcessRows {
    const BOILING_WATER: &[&str] = &[
        "product_id",
        "product",
        "food_group",
        "pack",
        "jar",
        "alt_min_ft",
        "alt_max_ft",
        "minutes",
        "headspace_in",
        "acidification_required",
        "source_id",
        "locator",
        "basis",
    ];
    const PRESSURE: &[&str] = &[
        "product_id",
        "product",
        "food_group",
        "pack",
        "jar",
        "minutes",
        "gauge",
        "alt_min_ft",
        "alt_max_ft",
        "psi",
        "headspace_in",
        "option",
        "source_id",
        "locator",
        "basis",
    ];
    let mut rows = ProcessRows::default();
    let mut read = |table, columns, of: fn(&mut Row<'_>) -> Process| {
        let read = reading.rows(table, columns, |row| {
            let name = row.text("product").to_owned();
            let group = row.word("food_group");
            (row.line(), name, group, of(row))
        });
        check_bands(reading, table, &read);
        for (_, name, group, process) in read {
            rows.add(&name, group, process);
        }
    };
    read(Table::BoilingWater, BOILING_WATER, boiling_water_row);
    read(Table::Pressure, PRESSURE, pressure_row);
    rows
}

fn boiling_water_row(row: &mut Row<'_>) -> Process {
    Process {
        product: row.id("product_id"),
        pack: row.word("pack"),
        jar_row: row.word("jar"),
        canner: CannerKind::BoilingWater,
        band: band_of(row),
        minutes: row.minutes("minutes"),
        pressure: None,
        headspace: Length::inches(row.number("headspace_in")),
        option: "".into(),
        acid_in_each_jar: row.yes("acidification_required"),
        rest: None,
        jar_rules: Vec::new(),
        citation: row.citation(),
    }
}

fn pressure_row(row: &mut Row<'_>) -> Process {
    Process {
        product: row.id("product_id"),
        pack: row.word("pack"),
        jar_row: row.word("jar"),
        minutes: row.minutes("minutes"),
        canner: gauge_of(row),
        band: band_of(row),
        pressure: Some(Pressure::psi(row.number("psi"))),
        headspace: Length::inches(row.number("headspace_in")),
        option: row.free_text("option"),
        acid_in_each_jar: false,
        rest: None,
        jar_rules: Vec::new(),
        citation: row.citation(),
    }
}

fn gauge_of(row: &mut Row<'_>) -> CannerKind {
    let canner: CannerKind = row.word("gauge");
    if !canner.is_pressure() {
        row.contradict(format!("{canner} is no gauge"));
    }
    canner
}

fn band_of(row: &mut Row<'_>) -> Band {
    let min = Altitude::feet(row.count("alt_min_ft"));
    let max = row.maybe_count("alt_max_ft").map(Altitude::feet);
    if max.is_some_and(|max| max < min) {
        row.contradict("the band ends below its start".to_owned());
    }
    Band { min, max }
}

/// One printed line is the rows that differ only by band; its bands start at 0 and join. Rows of two sources for
/// the same band stand side by side.
fn check_bands(reading: &mut Reading<'_>, table: Table, rows: &[(u64, String, FoodGroup, Process)]) {
    let mut lines: BTreeMap<_, BTreeMap<Band, u64>> = BTreeMap::new();
    for (line, _, _, row) in rows {
        let key = (&row.product, row.pack, row.jar_row, row.canner, &row.option);
        lines.entry(key).or_default().entry(row.band).or_insert(*line);
    }
    for ((product, pack, jar, canner, option), bands) in lines {
        let mut next = Some(0);
        for (band, line) in bands {
            if next != Some(band.min.as_feet()) {
                let name = format!("{product}, {pack}, {jar}, {canner} {option}").trim_end().to_owned();
                let problem = DataProblem::BandsDoNotJoin { line: name, feet: band.min.as_feet() };
                reading.note(table, line, problem);
            }
            next = band.max.map(|max| max.as_feet() + 1);
        }
    }
}
