//! Which basket serves which ingredient, in what state, and what must be fetched.

use std::collections::BTreeMap;

use almanac::{Almanac, Formula, Part};
use batch::fit::{self, Fit, FitQuestion, Have, IngredientRef};
use measure::Mass;

use super::setting::{Setting, condition_word};
use crate::day::{Basket, Day};

/// The largest share of a formula's produce that is fetched rather than found in a basket (ours).
const FETCHED_SHARE: f64 = 0.35;

/// The index of the ingredient that the formula is about: the produce that weighs most in a printed batch.
pub(crate) fn main_ingredient(almanac: &Almanac, formula: &Formula) -> Option<usize> {
    /// More than any printed batch takes.
    const PLENTY: Mass = Mass::kilograms(500.0);
    let produce: Vec<usize> =
        (0..formula.ingredients.len()).filter(|&at| !formula.ingredients[at].accepts.is_empty()).collect();
    let printed = produce.iter().find_map(|&at| {
        let question = FitQuestion {
            formula: formula.id.clone(),
            have: vec![Have { ingredient: IngredientRef::Index(at), mass: PLENTY }],
            jars: vec![],
            canner: None,
            altitude: None,
            most_batches: Some(1),
        };
        let fit = fit::fit(almanac, &question).ok()?;
        fit.batches.into_iter().next()
    })?;
    let weight = |at: usize| {
        let line = printed.ingredients.iter().find(|line| line.index == at);
        line.and_then(|line| line.takes.or(line.weight)).map_or(0.0, Mass::as_grams)
    };
    // The first of equals: formulas name their main produce first.
    produce.into_iter().min_by(|&a, &b| weight(b).total_cmp(&weight(a)).then(a.cmp(&b)))
}

/// The baskets that serve an ingredient.
pub(crate) fn baskets_of(day: &Day, formula: &Formula, ingredient: usize) -> Vec<usize> {
    let accepted = &formula.ingredients[ingredient].accepts;
    (0..day.baskets.len()).filter(|&at| accepted.contains(&day.baskets[at].produce)).collect()
}

/// Why a basket's state rules a formula out.
pub(crate) fn unfit_state(almanac: &Almanac, formula: &Formula, basket: &Basket) -> Option<String> {
    let whole = formula.name.contains("whole") || formula.name.contains("halved");
    let canned = formula.product.is_some();
    basket.condition.iter().find_map(|condition| {
        let row = almanac.find_condition(condition_word(*condition))?;
        if canned && row.not_canned {
            return Some(format!("the {} are {}: {}", basket.entered, row.condition, row.note));
        }
        (whole && row.not_whole)
            .then(|| format!("the {} are {} and will not stay whole", basket.entered, row.condition))
    })
}

/// What the produce lines of a fit take from baskets, and what must be fetched.
pub(crate) type ProduceUse = (Vec<(usize, Mass)>, Vec<(String, Mass)>);

/// Finds the produce of a fit in the baskets.
pub(crate) fn produce_of_fit(
    setting: &Setting<'_>,
    formula: &Formula,
    main: usize,
    main_basket: usize,
    fit: &Fit,
) -> Result<ProduceUse, String> {
    let day = setting.day;
    let mut needed: BTreeMap<usize, Mass> = BTreeMap::new();
    for line in fit.batches.iter().flat_map(|batch| &batch.ingredients) {
        let is_produce = !formula.ingredients[line.index].accepts.is_empty();
        if let (true, false, Some(takes)) = (is_produce, line.optional, line.takes.or(line.weight)) {
            *needed.entry(line.index).or_insert(Mass::ZERO) =
                needed.get(&line.index).copied().unwrap_or_default() + takes;
        }
    }
    let total: Mass = needed.values().copied().sum();
    let mut left: Vec<Mass> =
        day.baskets.iter().map(|basket| basket.net * setting.sound_share(basket)).collect();
    let mut uses: BTreeMap<usize, Mass> = BTreeMap::new();
    let mut fetched = Vec::new();
    let mut fetched_total = Mass::ZERO;
    for (&index, &takes) in &needed {
        let mut missing = takes;
        let mut sources = baskets_of(day, formula, index);
        if index == main {
            sources.retain(|&at| at == main_basket);
        }
        for at in sources {
            let share = setting.sound_share(&day.baskets[at]).max(0.01);
            let taken = missing.min(left[at]);
            left[at] = left[at] - taken;
            missing = missing - taken;
            let gross = uses.entry(at).or_insert(Mass::ZERO);
            *gross = *gross + taken * (1.0 / share);
        }
        // A few grams short of the printed weight is within the printed measure.
        if missing > Mass::grams(5.0) {
            let small_part = formula.ingredients[index].part != Part::Produce || index != main;
            if !small_part {
                return Err(format!("there is too little of {}", formula.ingredients[index].name));
            }
            fetched_total = fetched_total + missing;
            fetched.push((formula.ingredients[index].name.to_string(), missing));
        }
    }
    if fetched_total > total * FETCHED_SHARE {
        let what: Vec<&str> = fetched.iter().map(|(name, _)| name.as_str()).collect();
        return Err(format!("too much of it would have to be bought: {}", what.join(", ")));
    }
    Ok((uses.into_iter().filter(|(_, mass)| *mass > Mass::ZERO).collect(), fetched))
}
