//! What must be bought or borrowed first, in shop units.

use std::collections::BTreeMap;

use measure::Mass;

use super::{Planned, words};
use crate::answer::FetchLine;

/// Everything that the chosen makes need and the kitchen does not hold.
pub(super) fn to_fetch(planned: &Planned<'_>) -> Vec<FetchLine> {
    let mut lines = produce(planned);
    lines.extend(crate::supplies::missing_supplies(planned));
    lines
}

/// Produce that no basket holds enough of.
fn produce(planned: &Planned<'_>) -> Vec<FetchLine> {
    let mut short: BTreeMap<String, (Mass, Vec<String>)> = BTreeMap::new();
    for (considered, candidate) in planned.chosen_makes() {
        for (name, mass) in &candidate.fetched_produce {
            let entry = short.entry(name.clone()).or_default();
            entry.0 = entry.0 + *mass;
            entry.1.push(words::name_of(considered.formula));
        }
    }
    short
        .into_iter()
        .map(|(what, (mass, for_makes))| FetchLine {
            what,
            short: words::weight(planned.day.units, mass),
            shop: String::new(),
            for_makes,
        })
        .collect()
}
