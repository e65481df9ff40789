//! Printed processes, line by line.

use almanac::{Almanac, PrintedLine, Product};
use measure::write_altitude;
use serde::Serialize;

use super::error::{AskError, NameKind};
use super::listed::{Listed, join};
use super::names::require_one;
use super::source::cite;

/// A food with every printed line of its process.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProcessSheet {
    /// The id.
    pub id: String,
    /// Its names.
    pub names: Vec<String>,
    /// Its group.
    pub group: String,
    /// The printed lines.
    pub rows: Vec<ProcessRow>,
}

/// One printed line of a process.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProcessRow {
    /// The canner.
    pub canner: String,
    /// The pack.
    pub pack: String,
    /// The jar.
    pub jar: String,
    /// The altitude band in words.
    pub band: String,
    /// Minutes; `None` where the row may not be called tested.
    pub minutes: Option<u32>,
    /// Pressure in psi, where the canner has one.
    pub psi: Option<f64>,
    /// Where it is printed.
    pub source: String,
    /// How it got here.
    pub basis: String,
}

/// Every food with a printed process.
#[must_use]
pub fn list_processes(almanac: &Almanac) -> Vec<Listed> {
    let listed = almanac.products().map(|product| Listed {
        id: product.id.to_string(),
        name: product.names.first().map(ToString::to_string).unwrap_or_default(),
        about: join(product.canners.iter(), ", "),
    });
    listed.collect()
}

/// A food with every printed line of its process.
///
/// # Errors
///
/// When the word names no such food, or several.
pub fn show_process(almanac: &Almanac, typed: &str) -> Result<ProcessSheet, AskError> {
    let product =
        require_one(almanac.find_product(typed), NameKind::Food, typed, |found| found.id.to_string())?;
    Ok(sheet_of(almanac, product))
}

fn sheet_of(almanac: &Almanac, product: &Product) -> ProcessSheet {
    ProcessSheet {
        id: product.id.to_string(),
        names: product.names.iter().map(ToString::to_string).collect(),
        group: product.group.to_string(),
        rows: almanac.printed_lines(&product.id).map(|line| word_row(almanac, &line)).collect(),
    }
}

fn word_row(almanac: &Almanac, line: &PrintedLine<'_>) -> ProcessRow {
    let band = line.band();
    let from = write_altitude(band.min);
    ProcessRow {
        canner: line.canner().to_string(),
        pack: line.pack().to_string(),
        jar: line.jar().to_string(),
        band: band.max.map_or_else(
            || format!("{from} and up"),
            |max| format!("{} to {}", from.trim_end_matches(" ft"), write_altitude(max)),
        ),
        minutes: line.process().map(|process| process.minutes().0),
        psi: line.process().and_then(|process| process.pressure()).map(|pressure| pressure.as_psi()),
        source: cite(almanac, line.citation()),
        basis: line.citation().basis.to_string(),
    }
}
