//! A clearance as one reads it: the question, the printed line, the acid.

use almanac::{Almanac, CannerKind, Process};
use batch::clear::{AcidDose, Clearance, ClearedLine};
use measure::{write_altitude, write_pressure, write_volume_us};

use super::sentence::capitalize;

/// The question as it was understood.
#[must_use]
pub fn say_question(almanac: &Almanac, clearance: &Clearance) -> String {
    let asked = &clearance.question;
    let name = almanac.product(&asked.product).and_then(|product| product.names.first());
    let name = capitalize(name.map_or(asked.product.as_str(), |name| name));
    let formula =
        asked.formula.as_ref().map(|id| almanac.formula(id).map_or(id.as_str(), |found| &*found.name));
    let with = formula.map(|formula| format!(", by the formula {formula}")).unwrap_or_default();
    let changes: Vec<String> = asked.changes.iter().map(|change| format!("; {change}")).collect();
    format!(
        "{name}, {} pack, {} jars, {}, {}{with}{}.",
        asked.pack,
        asked.jar,
        name_canner(asked.canner),
        write_altitude(asked.altitude),
        changes.concat()
    )
}

/// The canner as one calls it.
#[must_use]
pub fn name_canner(canner: CannerKind) -> &'static str {
    match canner {
        CannerKind::BoilingWater => "boiling-water canner",
        CannerKind::Steam => "steam canner",
        CannerKind::Dial => "dial gauge",
        CannerKind::Weighted => "weighted gauge",
    }
}

/// How the jars are heated and from when the minutes count.
#[must_use]
pub fn say_heating(line: &ClearedLine) -> String {
    let process = line.process();
    let printed = process.pressure().map(write_pressure).unwrap_or_default();
    match process.canner() {
        CannerKind::BoilingWater => "In boiling water, counted from a full rolling boil".to_owned(),
        CannerKind::Steam => "In steady steam, counted from a full head of steam".to_owned(),
        CannerKind::Weighted => format!("Under the weight for {printed}, counted from when it rocks"),
        CannerKind::Dial => match line.hold() {
            Some(hold) if process.pressure() != Some(hold) => {
                format!("Hold the dial at {} for its error; {printed} is printed", write_pressure(hold))
            }
            _ => format!("Hold the dial at {printed}"),
        },
    }
}

/// The printed row that is served: its jar and its band of altitude.
#[must_use]
pub fn say_row(process: &Process) -> String {
    let band = process.band();
    let from = write_altitude(band.min);
    let to = band.max.map_or_else(|| "and up".to_owned(), |max| format!("to {}", write_altitude(max)));
    let option = if process.option().is_empty() { String::new() } else { format!(", {}", process.option()) };
    format!("The printed row: {}, {from} {to}{option}.", process.jar_row())
}

/// The acid that goes into each jar.
#[must_use]
pub fn say_acid(acid: &AcidDose) -> String {
    let rule = acid.rule();
    let ways = [
        rule.lemon.map(|lemon| format!("{} bottled lemon juice", write_volume_us(lemon))),
        rule.citric.map(|citric| format!("{} citric acid", write_volume_us(citric))),
        rule.vinegar.map(|vinegar| format!("{} vinegar of 5 %", write_volume_us(vinegar))),
    ];
    let ways: Vec<String> = ways.into_iter().flatten().collect();
    let enough = if ways.len() > 1 { " Each is enough." } else { "" };
    format!("Into each {}: {}.{enough}", rule.jar, ways.join(", or "))
}
