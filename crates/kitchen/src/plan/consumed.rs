//! What an option takes from the stock: produce, jars, lids, bags, room, trays, crocks.

use std::collections::BTreeMap;

use almanac::{Formula, Method};
use batch::fit::Fit;
use measure::{Mass, Volume};

use super::keeping::KeepingWay;
use super::limits;

/// What an option takes from the stock.
pub(super) fn take_from_stock(
    formula: &Formula,
    uses: &[(usize, Mass)],
    way: &KeepingWay,
    fit: &Fit,
) -> BTreeMap<String, u32> {
    let containers = containers_of(fit);
    let mut consumes = BTreeMap::new();
    for (at, mass) in uses {
        consumes.insert(limits::basket_stock(*at), limits::whole_grams(*mass));
    }
    if let Some((size, mouth)) = way.jar {
        // Jars are set out for the most that may come of it.
        let high: u32 = fit.batches.iter().flat_map(|batch| &batch.jars).map(|jars| jars.high).sum();
        consumes.insert(limits::jar_stock(size, mouth), high);
        consumes.insert(limits::lid_stock(mouth), high);
    } else if formula.methods.contains(&Method::Freeze) {
        consumes.insert(limits::BAGS.to_owned(), containers);
        let room = Volume::quarts(f64::from(containers));
        // Never overflows: a day's bags hold a few hundred litres at the most.
        consumes
            .insert(limits::FREEZER.to_owned(), libm::ceil(room.as_millilitres().min(1_000_000.0)) as u32);
    } else if formula.methods.contains(&Method::Dry) {
        let mass: Mass = uses.iter().map(|(_, mass)| *mass).sum();
        consumes.insert(limits::TRAYS.to_owned(), trays_for(mass));
    } else if formula.methods.contains(&Method::Ferment) {
        consumes.insert(limits::CROCKS.to_owned(), u32::try_from(fit.batches.len()).unwrap_or(1));
    }
    consumes
}

/// Dehydrator trays for a weight of fresh produce: about a pound and a half a tray (common practice, no source).
pub(super) fn trays_for(mass: Mass) -> u32 {
    const POUNDS_A_TRAY: f64 = 1.5;
    // Never overflows: a basket weighs at most a ton.
    libm::ceil((mass.as_pounds() / POUNDS_A_TRAY).clamp(1.0, 10_000.0)) as u32
}

/// Likely jars or bags of a fit.
pub(super) fn containers_of(fit: &Fit) -> u32 {
    let jars: u32 = fit.batches.iter().flat_map(|batch| &batch.jars).map(|jars| jars.likely).sum();
    let bags: u32 = fit.batches.iter().filter_map(|batch| batch.bags.as_ref()).map(|bags| bags.likely).sum();
    jars + bags
}
