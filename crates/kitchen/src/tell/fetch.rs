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
    let mut short: BTreeMap<String, Short> = BTreeMap::new();
    for (considered, candidate) in planned.chosen_makes() {
        for (name, mass) in &candidate.fetched_produce {
            let entry = short.entry(name.clone()).or_default();
            entry.mass = entry.mass + *mass;
            entry.for_makes.push(words::name_of(considered.formula));
            let measured = candidate.fit.batches.iter().flat_map(|batch| &batch.ingredients);
            entry.measured.extend(
                measured
                    .filter(|line| line.ingredient == *name)
                    .filter_map(|line| line.measured.as_ref())
                    .map(|amount| words::measured(planned.day.units, amount)),
            );
        }
    }
    short.into_iter().map(|(what, short)| short.into_line(planned, what)).collect()
}

/// One kind of produce that is short.
#[derive(Default)]
struct Short {
    mass: Mass,
    measured: Vec<String>,
    for_makes: Vec<String>,
}

impl Short {
    /// Told as the formula measures it where one batch asks for it: nobody shops for half an ounce of garlic.
    fn into_line(self, planned: &Planned<'_>, what: String) -> FetchLine {
        let weight = words::weight(planned.day.units, self.mass);
        let short = match self.measured.as_slice() {
            [only] if *only != weight => format!("{only} ({weight})"),
            _ => weight,
        };
        FetchLine { what, short, shop: String::new(), for_makes: self.for_makes }
    }
}
