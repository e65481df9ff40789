//! Reading a day file and the house file beside it.
//!
//! Both are TOML. Reading gathers every fault of both with file, line and column, and fills in everything that
//! was left out but the altitude, a sentence for each. `docs/guide/day-file.md` documents every key.

mod baskets;
mod copied;
mod equipment;
mod errands;
mod fault;
mod jars;
mod lookup;
mod nearest;
mod new_file;
mod people;
mod reader;
mod section;
mod supplies;
mod text;
mod waits;
mod wishes;

use almanac::Almanac;
use jiff::civil::Date;

use crate::day::{Day, Units};
use crate::house::House;

pub(crate) use copied::read_written_formulas;
pub use copied::{OwnFormula, OwnKeep};
pub use fault::{DayFault, DayFaults, Encoding, FaultKind, WhichFile};
pub use new_file::new_day_file;

use fault::Faults;
use reader::{Files, Reader};
use section::Section;

const KEYS: &[&str] = &[
    "date", "altitude", "units", "person", "kitchen", "bowl", "canner", "basket", "jars", "lids", "supplies",
    "wish", "likes", "errand", "format",
];
/// What may stand in the house file beside those.
const HOUSE_KEYS: &[&str] = &[
    "date",
    "altitude",
    "units",
    "person",
    "kitchen",
    "bowl",
    "canner",
    "basket",
    "jars",
    "lids",
    "supplies",
    "wish",
    "likes",
    "errand",
    "format",
    "copied",
    "confirmed",
    "own",
];
/// What belongs to one day and has no place in the house file.
const DAY_ONLY: [&str; 3] = ["date", "basket", "errand"];

/// Reads a day that says its own date.
///
/// # Errors
///
/// Every fault of both files at once; a day without a date is one.
pub fn read_day(day_text: &[u8], house_text: Option<&[u8]>, almanac: &Almanac) -> Result<Day, DayFaults> {
    read(day_text, house_text, almanac, None)
}

/// Reads a day; one that says no date is `today`.
///
/// # Errors
///
/// Every fault of both files at once.
pub fn read_day_on(
    today: Date,
    day_text: &[u8],
    house_text: Option<&[u8]>,
    almanac: &Almanac,
) -> Result<Day, DayFaults> {
    read(day_text, house_text, almanac, Some(today))
}

/// Reads a house file by itself, as far as a process asks for it: the altitude and the canners. A gauge tested
/// after `today` is a fault.
///
/// # Errors
///
/// Every fault of these parts at once, and every key that the file may not hold.
pub fn read_house_on(today: Date, house_bytes: &[u8], almanac: &Almanac) -> Result<House, DayFaults> {
    let house = text::decode(house_bytes);
    let house_text = house.as_deref().ok();
    let mut faults = Faults::of(None, house_text);
    if let Err(problem) = &house {
        let (place, kind) = &**problem;
        faults.add_at(WhichFile::House, *place, kind.clone());
    }
    let root = house_text.and_then(|text| text::parse(text, WhichFile::House, &mut faults));
    let house = root.as_ref().map(|root| Section::of_file(WhichFile::House, root));
    let files = Files { day: None, house };
    let mut reader = Reader { almanac, faults, filled_in: Vec::new(), file_lost: house.is_none() };
    files.check_keys(KEYS, &mut reader.faults);
    refuse_day_only(files, &mut reader.faults);
    check_formats(files, &mut reader);
    let altitude = reader.read(files, "altitude", read_height);
    let canners = equipment::read_canners(files, Some(today), &mut reader);
    match reader.faults.finish() {
        None => Ok(House { altitude, canners }),
        Some(faults) => Err(faults),
    }
}

/// A file that says its format must say one that is known here.
fn check_formats(files: Files<'_>, reader: &mut Reader<'_, '_>) {
    for (root, format) in [(files.day, "day/1"), (files.house, "house/1")] {
        if let Some(entry) = root.and_then(|root| root.find("format")) {
            reader.choose(entry, &[(format, ())]);
        }
    }
}

fn read_height(reader: &mut Reader<'_, '_>, entry: section::Entry<'_>) -> Option<measure::Altitude> {
    reader.amount(entry, "\"2,350 ft\" or \"720 m\"", measure::read_altitude)
}

fn read(
    day_bytes: &[u8],
    house_bytes: Option<&[u8]>,
    almanac: &Almanac,
    today: Option<Date>,
) -> Result<Day, DayFaults> {
    let day = text::decode(day_bytes);
    let house = house_bytes.map(text::decode);
    let day_text = day.as_deref().ok();
    let house_text = house.as_ref().and_then(|text| text.as_deref().ok());
    let mut faults = Faults::of(day_text, house_text);
    let undecodable = [
        (WhichFile::Day, day.as_ref().err()),
        (WhichFile::House, house.as_ref().and_then(|text| text.as_ref().err())),
    ];
    for (file, problem) in undecodable {
        if let Some((place, kind)) = problem.map(|problem| &**problem) {
            faults.add_at(file, *place, kind.clone());
        }
    }
    let day_root = day_text.and_then(|text| text::parse(text, WhichFile::Day, &mut faults));
    let house_root = house_text.and_then(|text| text::parse(text, WhichFile::House, &mut faults));
    let files = Files {
        day: day_root.as_ref().map(|root| Section::of_file(WhichFile::Day, root)),
        house: house_root.as_ref().map(|root| Section::of_file(WhichFile::House, root)),
    };
    let file_lost = files.day.is_none() || (house_bytes.is_some() && files.house.is_none());
    read_files(files, Reader { almanac, faults, filled_in: Vec::new(), file_lost }, today)
}

fn read_files(files: Files<'_>, mut reader: Reader<'_, '_>, today: Option<Date>) -> Result<Day, DayFaults> {
    check_root_keys(files, &mut reader.faults);
    copied::check_format(files, &mut reader);
    refuse_day_only(files, &mut reader.faults);
    let date = read_date(files, today, &mut reader);
    check_formats(files, &mut reader);
    let altitude = reader.read(files, "altitude", read_height);
    let units = read_units(files, &mut reader);
    let people = people::read_people(files, &mut reader);
    let mut equipment = equipment::read_equipment(files, &mut reader);
    let bowls = equipment::read_bowls(files, &mut reader);
    let canners = equipment::read_canners(files, date, &mut reader);
    let baskets = baskets::read_baskets(files, &bowls, &mut reader);
    equipment.bowls = bowls.into_iter().map(|written| written.bowl).collect();
    let jars = jars::read_jars(files, &mut reader);
    let lids = jars::read_lids(files, &mut reader);
    let supplies = supplies::read_supplies(files, &mut reader);
    let wishes = wishes::read_wishes(files, &mut reader);
    let errands = errands::read_errands(files, &equipment, &mut reader);
    let Reader { faults, filled_in, .. } = reader;
    match (faults.finish(), date) {
        (None, Some(date)) => Ok(Day {
            date,
            altitude,
            units,
            people,
            equipment,
            canners,
            baskets,
            jars,
            lids,
            supplies,
            wishes,
            errands,
            filled_in,
        }),
        (faults, _) => Err(faults.expect("a day without a date is a fault of its own")),
    }
}

/// Notes every unknown key of either file.
fn check_root_keys(files: Files<'_>, faults: &mut Faults<'_>) {
    for (root, known) in [(files.day, KEYS), (files.house, HOUSE_KEYS)] {
        if let Some(root) = root {
            root.check_keys(known, faults);
        }
    }
}

/// Notes what stands in the house file and belongs to one day.
fn refuse_day_only(files: Files<'_>, faults: &mut Faults<'_>) {
    for key in DAY_ONLY {
        if let Some(entry) = files.house.and_then(|root| root.find(key)) {
            faults.add(entry.file, entry.key_at, FaultKind::DayOnly { key });
        }
    }
}

fn read_date(files: Files<'_>, today: Option<Date>, reader: &mut Reader<'_, '_>) -> Option<Date> {
    let root = files.day?;
    match (root.find("date"), today) {
        (Some(entry), _) => entry.date(&mut reader.faults),
        (None, Some(today)) => {
            reader.fill_in(format!("today, {today}, since `date` is not given"));
            Some(today)
        }
        (None, None) => {
            root.require("date", "date = 2026-08-29", &mut reader.faults);
            None
        }
    }
}

fn read_units(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Units {
    const UNITS: &[(&str, Units)] = &[("us", Units::Us), ("metric", Units::Metric)];
    if files.find("units").next().is_none() {
        reader.fill_in("cups, spoons, pounds and Fahrenheit, since `units` is not given");
    }
    reader.read(files, "units", |reader, entry| reader.choose(entry, UNITS)).unwrap_or(Units::Us)
}
