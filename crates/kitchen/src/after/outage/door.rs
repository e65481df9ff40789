//! How long a closed door holds.

use almanac::{Almanac, FreezerLoad, OutagePlace, OutageRule, OutageState};
use measure::Minutes;
use serde::Serialize;

use crate::after::error::AfterError;
use crate::after::told::Told;
use crate::after::when::Moment;

/// The clock of one door.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DoorClock {
    /// `refrigerator`, `full freezer`, `half-full freezer`.
    pub what: String,
    /// Until when the strictest source trusts a closed door.
    pub until: Moment,
    /// Until when the most generous one does; the same where all agree.
    pub at_the_most: Moment,
    /// Whether the power was out for longer than the strictest allows.
    pub passed: bool,
    /// The rows, the strictest first.
    pub told: Vec<Told>,
}

/// The words for how full a freezer is.
pub(super) fn read_load(typed: &str) -> Result<FreezerLoad, AfterError> {
    let word = typed.trim().to_lowercase();
    let word = word.strip_suffix(" full").unwrap_or(&word);
    FreezerLoad::find(word.strip_suffix("-full").unwrap_or(word)).ok_or_else(|| AfterError::UnknownWord {
        what: "word for how full a freezer is",
        typed: typed.to_owned(),
        known: FreezerLoad::ALL.iter().map(|load| load.as_str().to_owned()).collect(),
    })
}

/// The clocks of the refrigerator and of the freezer; where nobody said how full it is, both are told.
pub(super) fn door_clocks(
    almanac: &Almanac,
    lost: &Moment,
    until_now: &Moment,
    load: Option<FreezerLoad>,
) -> Vec<DoorClock> {
    let freezers = [FreezerLoad::Half, FreezerLoad::Full].into_iter();
    let freezers = freezers.filter(|asked| load.is_none_or(|load| load == *asked));
    let doors = std::iter::once((OutagePlace::Refrigerator, None))
        .chain(freezers.map(|load| (OutagePlace::Freezer, Some(load))));
    doors.filter_map(|(place, load)| door_clock(almanac, place, load, lost, until_now)).collect()
}

fn door_clock(
    almanac: &Almanac,
    place: OutagePlace,
    load: Option<FreezerLoad>,
    lost: &Moment,
    until_now: &Moment,
) -> Option<DoorClock> {
    let rows = holding_rows(almanac, place, load);
    let (shortest, longest) = (rows.first()?.1, rows.last()?.1);
    let until = lost.plus(shortest);
    let what = match load {
        None => place.as_str().to_owned(),
        Some(FreezerLoad::Full) => "full freezer".to_owned(),
        Some(FreezerLoad::Half) => "half-full freezer".to_owned(),
    };
    let told = rows.into_iter().map(|(row, _)| Told::from(row)).collect();
    let passed = *until_now > until;
    Some(DoorClock { what, until, at_the_most: lost.plus(longest), passed, told })
}

/// The rows that say how long a door holds, the strictest first.
pub(super) fn holding_rows(
    almanac: &Almanac,
    place: OutagePlace,
    load: Option<FreezerLoad>,
) -> Vec<(&OutageRule, Minutes)> {
    let meant = |row: &&OutageRule| row.state == OutageState::Clock && row.place == place && row.load == load;
    let rows = almanac.outage_rules().iter().filter(meant);
    let mut rows: Vec<_> = rows.filter_map(|row| Some((row, row.figure?.as_minutes()?.0))).collect();
    rows.sort_by_key(|(_, holds)| *holds);
    rows
}
