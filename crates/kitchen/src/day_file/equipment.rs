//! The stove, the pots, the machines, the bowls and the canners.

use almanac::{CannerKind, JarSize};
use jiff::civil::Date;
use measure::{Mass, Pressure};

use crate::day::{Bowl, Canner, Equipment};

use super::fault::FaultKind;
use super::reader::{Files, Names, Reader};
use super::section::{Entry, Section};

const KITCHEN_KEYS: &[&str] = &[
    "burners",
    "strong_burners",
    "pots",
    "ovens",
    "processors",
    "blenders",
    "dehydrator_trays",
    "sinks",
    "jelly_bags",
    "crocks",
];
const BOWL_KEYS: &[&str] = &["name", "tare"];
const CANNER_KEYS: &[&str] = &["name", "kind", "holds", "gauge_error", "gauge_tested"];

/// More of one thing than this in one kitchen is a slip of the pen.
const MOST: u32 = 100;

/// A bowl with its tare as it was written, so that a fault can repeat it.
pub(super) struct WrittenBowl {
    /// The bowl.
    pub(super) bowl: Bowl,
    /// Its tare as written.
    pub(super) tare: String,
}

/// What stands in `[kitchen]`, each missing figure filled in with ours.
pub(super) fn read_equipment(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Equipment {
    let kitchen = files.find_table("kitchen", "[kitchen]", &mut reader.faults);
    kitchen.check_keys(KITCHEN_KEYS, &mut reader.faults);
    let mut count = |key: &'static str, ours: u32, thing: &str| {
        let least = u32::from(key == "burners");
        let given = reader.read(kitchen, key, |reader, entry| entry.whole(least, MOST, &mut reader.faults));
        given.unwrap_or_else(|| {
            if kitchen.find(key).next().is_none() {
                reader.fill_in(format!("{thing}, since `{key}` is not given"));
            }
            ours
        })
    };
    let burners = count("burners", 4, "4 burners");
    let usual_strong = burners.min(2);
    let strong_burners = count(
        "strong_burners",
        usual_strong,
        &format!("{usual_strong} of the burners strong enough for a canner"),
    );
    let equipment = Equipment {
        burners,
        strong_burners,
        pots: count("pots", 2, "2 big pots besides the canners"),
        ovens: count("ovens", 1, "1 oven"),
        processors: count("processors", 0, "no food processor"),
        blenders: count("blenders", 0, "no blender"),
        dryer_trays: count("dehydrator_trays", 0, "no dehydrator"),
        sinks: count("sinks", 1, "1 sink"),
        jelly_bags: count("jelly_bags", 1, "1 jelly bag or straining cloth"),
        crocks: count("crocks", 1, "1 crock or big jar for a ferment"),
        bowls: Vec::new(),
    };
    if strong_burners > burners
        && !reader.file_lost
        && let Some(entry) = kitchen.find("strong_burners").last()
    {
        let kind = FaultKind::StrongAboveAll { strong: strong_burners, burners };
        reader.faults.add(entry.file, entry.value_at(), kind);
    }
    equipment
}

/// The bowls of both files; one of the day takes the place of one of the house with the same name.
pub(super) fn read_bowls(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Vec<WrittenBowl> {
    let mut names = Names::of("[[bowl]]");
    let mut bowls: Vec<WrittenBowl> = Vec::new();
    for entry in files.find("bowl") {
        for table in entry.sections("[[bowl]]", &mut reader.faults) {
            if let Some(bowl) = read_bowl(table, &mut names, reader) {
                bowls.retain(|other| !other.bowl.name.eq_ignore_ascii_case(&bowl.bowl.name));
                bowls.push(bowl);
            }
        }
    }
    bowls
}

fn read_bowl(table: Section<'_>, names: &mut Names, reader: &mut Reader<'_, '_>) -> Option<WrittenBowl> {
    table.check_keys(BOWL_KEYS, &mut reader.faults);
    let tare = table.find("tare").and_then(|entry| {
        let mass = reader.amount(entry, "\"1 lb 5 oz\"", measure::read_mass)?;
        if mass <= Mass::ZERO {
            let kind = FaultKind::WeightlessBowl;
            reader.faults.add(entry.file, entry.value_at(), kind);
            return None;
        }
        let written = entry.amount("a weight", &mut reader.faults)?;
        Some((mass, written.text.trim().to_owned()))
    });
    let entry = table.require("name", "name = \"blue\"", &mut reader.faults)?;
    let name = reader.name(entry)?;
    names.check(&name, entry, &mut reader.faults);
    let (tare, written) = tare.unzip();
    Some(WrittenBowl { bowl: Bowl { name, tare }, tare: written.unwrap_or_default() })
}

/// The canners of the day's file, else of the house's; none when none is named.
pub(super) fn read_canners(files: Files<'_>, date: Option<Date>, reader: &mut Reader<'_, '_>) -> Vec<Canner> {
    if files.find("canner").next().is_none() {
        reader.fill_in("no canner, since none is named: nothing is canned");
    }
    let canners = reader.read(files, "canner", |reader, entry| {
        let mut names = Names::of("[[canner]]");
        let tables = entry.sections("[[canner]]", &mut reader.faults);
        Some(tables.into_iter().filter_map(|table| read_canner(table, date, &mut names, reader)).collect())
    });
    canners.unwrap_or_default()
}

fn read_canner(
    table: Section<'_>,
    date: Option<Date>,
    names: &mut Names,
    reader: &mut Reader<'_, '_>,
) -> Option<Canner> {
    table.check_keys(CANNER_KEYS, &mut reader.faults);
    let id = table.require("name", "name = \"big kettle\"", &mut reader.faults).and_then(|entry| {
        let name = reader.name(entry)?;
        names.check(&name, entry, &mut reader.faults);
        Some(name)
    });
    let kinds: Vec<_> = CannerKind::ALL.iter().map(|&kind| (kind.as_str(), kind)).collect();
    let kind = table
        .require("kind", "kind = \"boiling-water\", or steam, dial, weighted", &mut reader.faults)
        .and_then(|entry| reader.choose(entry, &kinds));
    let called = id.clone().unwrap_or_else(|| "without a name".into());
    let holds = table.find("holds").map(|entry| read_holds(entry, reader)).unwrap_or_default();
    let gauge_error = table.find("gauge_error").and_then(|entry| {
        check_dial(kind, &called, "gauge_error", entry, reader);
        read_gauge_error(entry, reader)
    });
    let gauge_tested = table.find("gauge_tested").and_then(|entry| {
        check_dial(kind, &called, "gauge_tested", entry, reader);
        let tested = entry.date(&mut reader.faults)?;
        if let Some(day) = date.filter(|&day| day < tested) {
            let kind = FaultKind::TestedLater {
                canner: called.clone(),
                tested: tested.to_string(),
                day: day.to_string(),
            };
            reader.faults.add(entry.file, entry.value_at(), kind);
        }
        Some(tested)
    });
    let kind = kind?;
    if kind == CannerKind::Dial && gauge_tested.is_none() && table.find("gauge_tested").is_none() {
        reader
            .fill_in(format!("the gauge of {called} counts as untested, since `gauge_tested` is not given"));
    }
    Some(Canner { id: id?, kind, holds, gauge_error, gauge_tested })
}

fn read_gauge_error(entry: Entry<'_>, reader: &mut Reader<'_, '_>) -> Option<Pressure> {
    reader.amount(entry, "\"+0.5 psi\"", measure::read_pressure)
}

fn check_dial(
    kind: Option<CannerKind>,
    canner: &str,
    key: &'static str,
    entry: Entry<'_>,
    reader: &mut Reader<'_, '_>,
) {
    if kind.is_some_and(|kind| kind != CannerKind::Dial) {
        reader.faults.add(entry.file, entry.key_at, FaultKind::NoDial { canner: canner.into(), key });
    }
}

/// `holds = { quart = 7, pint = 9 }`.
fn read_holds(entry: Entry<'_>, reader: &mut Reader<'_, '_>) -> Vec<(JarSize, u32)> {
    let Some(table) = entry.section("holds = { quart = 7, pint = 9 }", &mut reader.faults) else {
        return Vec::new();
    };
    let mut holds = Vec::new();
    for load in table.entries() {
        let size = reader.jar_size_named(load.key, load.file, load.key_at);
        let count = load.whole(0, MOST, &mut reader.faults);
        holds.extend(size.zip(count));
    }
    holds
}
