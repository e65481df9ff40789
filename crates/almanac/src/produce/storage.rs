//! How long fresh produce keeps, and how.

use measure::{Percent, Temp};

use crate::closed_list::closed_list;
use crate::row::{Reading, Row};
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, Produce};

closed_list!(
    /// What a row of the storage table is about.
    StorageRecord {
        /// One kind of produce.
        Produce = "produce",
        /// What gives off ethylene, or is harmed by it.
        Ethylene = "ethylene",
        /// A rule for storing.
        Rule = "rule",
        /// Several kinds that may stand together.
        Group = "group",
    }
);

/// Days that it keeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KeepingDays {
    /// At the least.
    pub min: u32,
    /// At the most.
    pub max: u32,
}

/// The temperatures it keeps at; an end that is not printed is left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StorageTemp {
    /// The lower end.
    pub low: Option<Temp>,
    /// The upper end.
    pub high: Option<Temp>,
}

/// The relative humidity it keeps at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Humidity {
    /// The lower end.
    pub low: Percent,
    /// The upper end.
    pub high: Percent,
}

/// A row of the storage table.
#[derive(Debug, Clone, PartialEq)]
pub struct FreshStorage {
    /// What it is about.
    pub record: StorageRecord,
    /// The produce, the rule, or the group.
    pub produce: Box<str>,
    /// How cold.
    pub temp: StorageTemp,
    /// How damp.
    pub humidity: Option<Humidity>,
    /// How long, as printed.
    pub life_printed: Box<str>,
    /// How long, in days.
    pub life: Option<KeepingDays>,
    /// How much it suffers from cold.
    pub chilling: Box<str>,
    /// What it has to do with ethylene.
    pub ethylene: Box<str>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `fresh_storage.csv`.
pub(super) fn read_storage(reading: &mut Reading<'_>) -> Vec<FreshStorage> {
    const COLUMNS: &[&str] = &[
        "record",
        "produce",
        "temp_min_F",
        "temp_max_F",
        "rh_min",
        "rh_max",
        "life_text",
        "life_min_days",
        "life_max_days",
        "chilling_sensitivity",
        "ethylene",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::FreshStorage, COLUMNS, |row| FreshStorage {
        record: row.word("record"),
        produce: row.text("produce").into(),
        temp: StorageTemp {
            low: row.maybe_number("temp_min_F").map(Temp::fahrenheit),
            high: row.maybe_number("temp_max_F").map(Temp::fahrenheit),
        },
        humidity: row
            .maybe_number("rh_min")
            .zip(row.maybe_number("rh_max"))
            .map(|(low, high)| Humidity { low: Percent::of_hundred(low), high: Percent::of_hundred(high) }),
        life_printed: row.free_text("life_text"),
        life: life_of(row),
        chilling: row.free_text("chilling_sensitivity"),
        ethylene: row.free_text("ethylene"),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

fn life_of(row: &mut Row<'_>) -> Option<KeepingDays> {
    let min = row.maybe_count("life_min_days");
    let max = row.maybe_count("life_max_days");
    if min.is_some() != max.is_some() || min > max {
        let what = "life_min_days and life_max_days are no range".to_owned();
        row.contradict(what);
    }
    Some(KeepingDays { min: min?, max: max? })
}

impl Almanac {
    /// Every row of the storage table.
    #[must_use]
    pub fn fresh_storage(&self) -> &[FreshStorage] {
        &self.produce.storage
    }

    /// The rows about a kind of produce, the shortest life first; rows that only say how, not how long, come last.
    /// Publications that disagree stand side by side.
    #[must_use]
    pub fn find_storage(&self, produce: &Produce) -> Vec<&FreshStorage> {
        let keyed = |row: &&FreshStorage| {
            row.record == StorageRecord::Produce && produce.storage_keys.contains(&row.produce)
        };
        let mut rows: Vec<&FreshStorage> = self.produce.storage.iter().filter(keyed).collect();
        rows.sort_by_key(|row| row.life.map_or((u32::MAX, u32::MAX), |life| (life.min, life.max)));
        rows
    }
}
