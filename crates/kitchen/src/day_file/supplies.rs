//! What is in the cupboard.

use measure::{Amount, Mass, Percent};

use crate::day::{Supplies, Vinegar};

use super::fault::FaultKind;
use super::jars::MOST_JARS;
use super::nearest::find_nearest;
use super::reader::{Files, Reader};
use super::section::{Entry, Section};

const KEYS: &[&str] =
    &["vinegar", "bottled_lemon", "citric_acid", "sugar", "salt", "pectin", "bags", "freezer", "other"];
const VINEGAR_KEYS: &[&str] = &["kind", "amount", "strength"];
/// Kinds of salt whose spoons weigh differently.
const SALTS: &[&str] = &["canning", "table", "kosher flake", "sea"];
/// Kinds of pectin, which the formulas do not exchange for one another.
const PECTINS: &[&str] = &["powdered", "liquid", "low sugar"];

/// What stands in `[supplies]`; key by key the day's file goes before the house's.
pub(super) fn read_supplies(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Supplies {
    let table = files.find_table("supplies", "[supplies]", &mut reader.faults);
    table.check_keys(KEYS, &mut reader.faults);
    if files.find("supplies").next().is_none() {
        reader.fill_in("nothing in the cupboard is counted on, since no supplies are named: all goes on the list to fetch");
    }
    Supplies {
        vinegar: reader.read(table, "vinegar", read_vinegars).unwrap_or_default(),
        bottled_lemon: reader.read(table, "bottled_lemon", |reader, entry| {
            reader.amount(entry, "\"32 fl oz\"", measure::read_volume)
        }),
        citric_acid: reader
            .read(table, "citric_acid", |reader, entry| reader.amount(entry, "\"3 oz\"", measure::read_mass)),
        sugar: reader.read(table, "sugar", read_sugar).unwrap_or_default(),
        salt: reader.read(table, "salt", read_salt).unwrap_or_default(),
        pectin: reader.read(table, "pectin", read_pectin).unwrap_or_default(),
        bags: reader.read(table, "bags", |reader, entry| entry.whole(0, MOST_JARS, &mut reader.faults)),
        freezer: reader.read(table, "freezer", |reader, entry| {
            reader.amount(entry, "\"60 l\" or \"2 cubic feet\"", measure::read_volume)
        }),
        other: reader.read(table, "other", read_other).unwrap_or_default(),
    }
}

fn read_vinegars(reader: &mut Reader<'_, '_>, entry: Entry<'_>) -> Option<Vec<Vinegar>> {
    let tables = entry.sections("[[supplies.vinegar]]", &mut reader.faults);
    Some(tables.into_iter().filter_map(|table| read_vinegar(table, reader)).collect())
}

fn read_vinegar(table: Section<'_>, reader: &mut Reader<'_, '_>) -> Option<Vinegar> {
    table.check_keys(VINEGAR_KEYS, &mut reader.faults);
    let kind = match table.find("kind") {
        Some(entry) => reader.name(entry),
        None => {
            reader.fill_in("white vinegar, since the `kind` of a vinegar is not given");
            Some("white".into())
        }
    };
    let amount = table
        .require("amount", "amount = \"1 gal\"", &mut reader.faults)
        .and_then(|entry| reader.amount(entry, "\"1 gal\"", measure::read_volume));
    let strength = match table.find("strength") {
        Some(entry) => read_strength(entry, reader),
        None => {
            let called = kind.as_deref().unwrap_or("vinegar");
            reader.fill_in(format!(
                "the {called} vinegar counts for nothing that is canned, since its `strength` is not given"
            ));
            None
        }
    };
    Some(Vinegar { kind: kind?, amount: amount?, strength })
}

/// `"5 %"`; a bare number is percent as well.
fn read_strength(entry: Entry<'_>, reader: &mut Reader<'_, '_>) -> Option<Percent> {
    reader.amount_or_number(entry, "\"5 %\"", "%", measure::read_percent)
}

/// `sugar = "10 lb"`, which is white, or a table by kind.
fn read_sugar(reader: &mut Reader<'_, '_>, entry: Entry<'_>) -> Option<Vec<(String, Mass)>> {
    if entry.is_table() {
        return read_masses(reader, entry, "[supplies.sugar]");
    }
    let mass = reader.amount(entry, "\"10 lb\"", measure::read_mass)?;
    Some(vec![("white".into(), mass)])
}

/// `[supplies.salt]` by kind; one amount without a kind is refused.
fn read_salt(reader: &mut Reader<'_, '_>, entry: Entry<'_>) -> Option<Vec<(String, Mass)>> {
    if !entry.is_table() {
        reader.faults.add(entry.file, entry.key_at, FaultKind::SaltWithoutKind);
        return None;
    }
    check_kinds(reader, entry, "[supplies.salt]", SALTS);
    read_masses(reader, entry, "[supplies.salt]")
}

fn read_masses(
    reader: &mut Reader<'_, '_>,
    entry: Entry<'_>,
    name: &'static str,
) -> Option<Vec<(String, Mass)>> {
    let table = entry.section(name, &mut reader.faults)?;
    let masses = table.entries().into_iter().filter_map(|kind| {
        let mass = reader.amount(kind, "\"3 lb\"", measure::read_mass)?;
        Some((plain_kind(kind.key), mass))
    });
    Some(masses.collect())
}

/// `[supplies.pectin]`: packages by kind.
fn read_pectin(reader: &mut Reader<'_, '_>, entry: Entry<'_>) -> Option<Vec<(String, u32)>> {
    check_kinds(reader, entry, "[supplies.pectin]", PECTINS);
    let table = entry.section("[supplies.pectin]", &mut reader.faults)?;
    let packages = table
        .entries()
        .into_iter()
        .filter_map(|kind| Some((plain_kind(kind.key), kind.whole(0, MOST_JARS, &mut reader.faults)?)));
    Some(packages.collect())
}

fn check_kinds(
    reader: &mut Reader<'_, '_>,
    entry: Entry<'_>,
    name: &'static str,
    known: &'static [&'static str],
) {
    if !entry.is_table() {
        return;
    }
    let Some(table) = entry.section(name, &mut reader.faults) else { return };
    for kind in table.entries() {
        let plain = plain_kind(kind.key);
        if !known.contains(&plain.as_str()) {
            let nearest = find_nearest(&plain, known.iter().copied());
            let fault = FaultKind::UnknownKey { key: kind.key.into(), place: name, nearest, known };
            reader.faults.add(kind.file, kind.key_at, fault);
        }
    }
}

/// A kind as the rest of the program names it: `kosher_flake` and `"kosher flake"` are one.
fn plain_kind(key: &str) -> String {
    key.trim().to_lowercase().replace(['_', '-'], " ")
}

/// `[supplies.other]`: anything else by name, each with any amount.
fn read_other(reader: &mut Reader<'_, '_>, entry: Entry<'_>) -> Option<Vec<(String, Amount)>> {
    let table = entry.section("[supplies.other]", &mut reader.faults)?;
    let others = table.entries().into_iter().filter_map(|item| {
        let words = item.amount("an amount such as \"3 oz\" or a count", &mut reader.faults)?;
        let amount = if words.bare {
            reader.understand(words, measure::read_count).map(Amount::Count)
        } else {
            reader.understand(words, measure::read_amount)
        };
        Some((item.key.trim().to_owned(), amount?))
    });
    Some(others.collect())
}
