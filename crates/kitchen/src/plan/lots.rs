//! A fit as work: the lots that go through the kitchen together, with what each holds and what it fills.

use almanac::Formula;
use batch::fit::{Fit, FittedBatch};
use measure::Mass;

use crate::day::Day;
use crate::tell::words;
use crate::work::{Lot, LotProduce};

/// The most produce of what is not canned that is worked through in one go (ours): more is done lot by lot.
const MOST_IN_ONE_GO: Mass = Mass::kilograms(7.0);

/// The batches as far as their work is concerned.
pub(super) fn lots_of(day: &Day, formula: &Formula, uses: &[(usize, Mass)], fit: &Fit) -> Vec<Lot> {
    fit.batches
        .iter()
        .flat_map(|batch| {
            let produce: Vec<LotProduce> = batch
                .ingredients
                .iter()
                .filter(|line| !formula.ingredients[line.index].accepts.is_empty())
                .filter_map(|line| {
                    Some(LotProduce {
                        printed: line.ingredient.clone(),
                        called: called(day, formula, uses, line.index),
                        mass: line.takes.or(line.weight)?,
                    })
                })
                .collect();
            let whole = Lot {
                produce,
                containers: batch.jars.iter().map(|jars| jars.likely).sum::<u32>()
                    + batch.bags.as_ref().map_or(0, |bags| bags.likely),
                vessels: vessels_of(batch),
                units: day.units,
                processor: day.equipment.processors > 0,
            };
            if batch.jars.is_empty() { in_goes(whole) } else { vec![whole] }
        })
        .collect()
}

/// A lot cut into as many goes as it takes.
fn in_goes(whole: Lot) -> Vec<Lot> {
    let goes = libm::ceil(whole.total().ratio_to(MOST_IN_ONE_GO)).clamp(1.0, 24.0);
    // Never overflows: between 1 and 24.
    let count = goes as u32;
    if count == 1 {
        return vec![whole];
    }
    let mut share = whole;
    for line in &mut share.produce {
        line.mass = line.mass * (1.0 / goes);
    }
    share.containers = share.containers.div_ceil(count);
    share.vessels = match share.containers {
        0 => String::new(),
        bags => format!("{bags} bags"),
    };
    vec![share; count as usize]
}

/// What the household calls the produce of an ingredient: the basket it comes from, else the printed name.
fn called(day: &Day, formula: &Formula, uses: &[(usize, Mass)], ingredient: usize) -> String {
    let line = &formula.ingredients[ingredient];
    uses.iter()
        .map(|(at, _)| &day.baskets[*at])
        .find(|basket| line.accepts.contains(&basket.produce))
        .map_or_else(|| line.name.to_string(), |basket| basket.entered.clone())
}

/// The jars or bags of a batch in words.
fn vessels_of(batch: &FittedBatch) -> String {
    let jars =
        batch.jars.iter().map(|jars| format!("{} {}", jars.likely, words::jars(jars.size, jars.likely)));
    let bags = batch.bags.iter().map(|bags| format!("{} bags", bags.likely));
    words::and_list(&jars.chain(bags).collect::<Vec<_>>())
}
