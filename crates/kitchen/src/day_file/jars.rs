//! Jars and lids.

use std::collections::BTreeMap;

use almanac::{JarSize, Mouth};

use crate::day::{JarStock, LidStock};

use super::fault::{FaultKind, WhichFile};
use super::reader::{Files, Reader};
use super::section::{Entry, Section};

const JARS_KEYS: &[&str] = &["size", "mouth", "count"];

/// More jars than this are a warehouse's.
pub(super) const MOST_JARS: u32 = 10_000;

/// The jars of the day's file, else of the house's.
pub(super) fn read_jars(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Vec<JarStock> {
    if files.find("jars").next().is_none() {
        reader.fill_in("no jars, since none are counted: nothing goes into jars");
    }
    let jars = reader.read(files, "jars", |reader, entry| {
        let mut seen = BTreeMap::new();
        let tables = entry.sections("[[jars]]", &mut reader.faults);
        Some(tables.into_iter().filter_map(|table| read_jar_stock(table, &mut seen, reader)).collect())
    });
    jars.unwrap_or_default()
}

fn read_jar_stock(
    table: Section<'_>,
    seen: &mut BTreeMap<(JarSize, Mouth), usize>,
    reader: &mut Reader<'_, '_>,
) -> Option<JarStock> {
    table.check_keys(JARS_KEYS, &mut reader.faults);
    let size =
        table.require("size", "size = \"pint\"", &mut reader.faults).and_then(|entry| reader.jar_size(entry));
    let mouth = match table.find("mouth") {
        Some(entry) => reader.mouth(entry),
        None => {
            if let Some(size) = size {
                reader.fill_in(format!("a regular mouth for the {size} jars whose `mouth` is not given"));
            }
            Some(Mouth::Regular)
        }
    };
    let count = table
        .require("count", "count = 12", &mut reader.faults)
        .and_then(|entry| entry.whole(0, MOST_JARS, &mut reader.faults));
    let (size, mouth) = (size?, mouth?);
    let line = reader.faults.place(table.file, table.at).0;
    let first_line = *seen.entry((size, mouth)).or_insert(line);
    if first_line != line {
        let kind = FaultKind::JarsTwice { size: size.to_string(), mouth: mouth.to_string(), first_line };
        reader.faults.add(table.file, table.at, kind);
    }
    Some(JarStock { size, mouth, count: count? })
}

/// The lids of `[lids]`, by mouth; those of the day's file go before those of the house's.
pub(super) fn read_lids(files: Files<'_>, reader: &mut Reader<'_, '_>) -> Vec<LidStock> {
    let table = files.find_table("lids", "[lids]", &mut reader.faults);
    table.check_keys(&["regular", "wide"], &mut reader.faults);
    if files.find("lids").next().is_none() {
        reader.fill_in("no new lids, since none are counted: all go on the list to fetch");
    }
    let mut lids = Vec::new();
    for &mouth in Mouth::ALL {
        let count =
            reader.read(table, mouth.as_str(), |reader, entry| entry.whole(0, MOST_JARS, &mut reader.faults));
        lids.extend(count.map(|count| LidStock { mouth, count }));
    }
    lids
}

impl Reader<'_, '_> {
    /// Reads the name of a jar size.
    pub(super) fn jar_size(&mut self, entry: Entry<'_>) -> Option<JarSize> {
        let words = entry.words("a jar size such as \"pint\"", &mut self.faults)?;
        self.jar_size_named(words.text, words.file, words.at)
    }

    /// The jar size of a name: `pint`, `pints`, `half pint`.
    pub(super) fn jar_size_named(&mut self, name: &str, file: WhichFile, at: usize) -> Option<JarSize> {
        let plain = name.trim().to_lowercase().replace([' ', '_'], "-");
        let single = plain.strip_suffix('s').unwrap_or(&plain);
        let found = JarSize::find(&plain).or_else(|| JarSize::find(single));
        if found.is_none() {
            let known = JarSize::ALL.iter().map(|size| size.to_string()).collect();
            self.faults.add(file, at, FaultKind::UnknownJar { word: name.into(), known });
        }
        found
    }

    fn mouth(&mut self, entry: Entry<'_>) -> Option<Mouth> {
        let mouths: Vec<_> = Mouth::ALL.iter().map(|&mouth| (mouth.as_str(), mouth)).collect();
        self.choose(entry, &mouths)
    }
}
