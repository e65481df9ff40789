//! The nearest tested formula: found by what goes in, with the shares that keep it.
//!
//! It explains and it vetoes; it never permits. A household's mix is laid beside it line by line, and a copied
//! formula with more low-acid food, less acid or more water than its nearest tested neighbour is refused.
//!
//! Weights lean to the strict side: produce of the tested formula counts as it goes into the pot, trimmed, and that of
//! the household as it was written down.

use almanac::{Almanac, DensityMeasure, Formula, Part};
use measure::{Amount, Fraction, Mass, Percent};

use super::change::{find_thing, words_of};
use super::judge::find_doubt;
use crate::fit::PrintedWeights;

/// One ingredient as a household wrote it down.
#[derive(Debug, Clone, PartialEq)]
pub struct HomeIngredient {
    /// What it is, in the household's words.
    pub what: String,
    /// How much; none where nothing is printed.
    pub amount: Option<Amount>,
    /// What it is in the balance that keeps the jar.
    pub part: Part,
}

/// The shares of a mix: of its produce, its low-acid food and its acid together, water, sugar and salt left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// Low-acid food.
    pub low_acid: Percent,
    /// Acid.
    pub acid: Percent,
    /// Water and other liquid, against the same whole.
    pub liquid: Percent,
}

/// The tested formula nearest to a mix.
#[derive(Debug, Clone, PartialEq)]
pub struct Nearest<'a> {
    /// The formula.
    pub formula: &'a Formula,
    /// Its shares; none where a part of it cannot be weighed.
    pub shares: Option<Shares>,
    /// The printed line that answers each ingredient of the mix, by its place; none where it holds nothing like it.
    pub matched: Vec<Option<usize>>,
}

/// What weighs more in a likeness: food and acid make a formula what it is, seasoning does not.
const WEIGHT_OF_FOOD: u32 = 4;

/// Finds the tested formula nearest to a mix. None where no tested formula shares any of its food.
#[must_use]
pub fn find_nearest<'a>(almanac: &'a Almanac, mix: &[HomeIngredient]) -> Option<Nearest<'a>> {
    let tested =
        almanac.formulas().filter(|formula| formula.product.is_some() && find_doubt(formula).is_none());
    let foods = weigh_foods(almanac, mix);
    let scored = tested.filter_map(|formula| {
        let matched = match_lines(formula, mix);
        let likeness = covered(&foods, &matched)? * 2 + likeness(formula, mix, &matched);
        Some((likeness, formula, matched))
    });
    // The first of several that are equally near, in the order of their names.
    let best = scored.reduce(|best, other| if other.0 > best.0 { other } else { best });
    let (_, formula, matched) = best?;
    Some(Nearest { formula, shares: shares_of_formula(almanac, formula), matched })
}

/// What each food of a mix weighs, and nothing for the rest; all alike where one cannot be weighed.
fn weigh_foods(almanac: &Almanac, mix: &[HomeIngredient]) -> Vec<f64> {
    let foods = || mix.iter().map(|one| is_food(one.part));
    let masses: Option<Vec<f64>> = mix
        .iter()
        .map(|one| if is_food(one.part) { weigh(almanac, one).map(Mass::as_grams) } else { Some(0.0) })
        .collect();
    masses.unwrap_or_else(|| foods().map(|food| if food { 1.0 } else { 0.0 }).collect())
}

/// In thousandths: how much of the food of a mix, by weight, a formula holds too. None where it is nothing.
fn covered(foods: &[f64], matched: &[Option<usize>]) -> Option<u32> {
    let all: f64 = foods.iter().sum();
    let both: f64 = foods.iter().zip(matched).filter(|(_, line)| line.is_some()).map(|(food, _)| food).sum();
    // Never truncates: a share is at most a thousand thousandths.
    (both > 0.0 && all > 0.0).then(|| (both / all * 1000.0).round() as u32)
}

/// In thousandths: what both hold, against all that either holds.
fn likeness(formula: &Formula, mix: &[HomeIngredient], matched: &[Option<usize>]) -> u32 {
    let weight = |part: Part| if is_food(part) || part == Part::Acid { WEIGHT_OF_FOOD } else { 1 };
    let shared: u32 = mix
        .iter()
        .zip(matched)
        .filter(|(_, line)| line.is_some())
        .map(|(ingredient, _)| weight(ingredient.part))
        .sum();
    let all_mine: u32 = mix.iter().map(|ingredient| weight(ingredient.part)).sum();
    let unmatched = formula.ingredients.iter().enumerate().filter(|(at, _)| !matched.contains(&Some(*at)));
    let only_theirs: u32 = unmatched.map(|(_, ingredient)| weight(ingredient.part)).sum();
    shared * 1000 / (all_mine + only_theirs).max(1)
}

fn is_food(part: Part) -> bool {
    matches!(part, Part::Produce | Part::LowAcid)
}

/// The printed line that answers each ingredient; no line answers two.
fn match_lines(formula: &Formula, mix: &[HomeIngredient]) -> Vec<Option<usize>> {
    let mut taken = vec![false; formula.ingredients.len()];
    let mut find = |ingredient: &HomeIngredient| {
        let alike = |name: &str, part: Part| is_alike(&ingredient.what, ingredient.part, name, part);
        let lines = formula.ingredients.iter().enumerate();
        let found = lines
            .filter(|(at, line)| !taken[*at] && alike(&line.name, line.part))
            .max_by_key(|(at, line)| (shared_words(&ingredient.what, &line.name), std::cmp::Reverse(*at)));
        let at = found.map(|(at, _)| at)?;
        taken[at] = true;
        Some(at)
    };
    mix.iter().map(&mut find).collect()
}

/// Whether two names mean things of one kind: a word in common, or one class of the change rules; and in the jar they
/// do the same.
fn is_alike(one: &str, part: Part, other: &str, other_part: Part) -> bool {
    let kin = part == other_part || is_food(part) && is_food(other_part);
    let same_class = || {
        let (one, other) = (find_thing(&words_of(one)), find_thing(&words_of(other)));
        one.zip(other).is_some_and(|(one, other)| one.names_a_kind_of(&other))
    };
    kin && (shared_words(one, other) > 0 || same_class())
}

/// Words that say how a thing looks or is cut, and not what it is.
const LOOKS: &[&str] = &[
    "red", "green", "white", "yellow", "hot", "sweet", "fresh", "dried", "dry", "ripe", "large", "small",
    "ground", "whole", "chopped", "sliced", "diced", "canning", "pickling", "percent", "5", "bottled", "raw",
    "and", "or", "mixed", "powdered",
];

fn shared_words(one: &str, other: &str) -> usize {
    let other = words_of(other);
    words_of(one).iter().filter(|word| !LOOKS.contains(&word.as_str()) && other.contains(word)).count()
}

/// The shares of a printed formula; none where a part of its balance cannot be weighed or goes in jar by jar.
pub(crate) fn shares_of_formula(almanac: &Almanac, formula: &Formula) -> Option<Shares> {
    let weights = PrintedWeights::of(almanac, formula)?;
    shares(weights.low_acid, weights.produce, weights.acid, weights.liquid)
}

/// The shares of a mix; none where it holds neither food nor acid.
///
/// # Errors
/// The place of the ingredient that cannot be weighed.
pub fn shares_of_mix(almanac: &Almanac, mix: &[HomeIngredient]) -> Result<Option<Shares>, usize> {
    let mut sums = [Mass::ZERO; 4];
    for (at, ingredient) in mix.iter().enumerate() {
        let place = match ingredient.part {
            Part::LowAcid | Part::Oil => 0,
            Part::Produce => 1,
            Part::Acid => 2,
            Part::Liquid => 3,
            _ => continue,
        };
        sums[place] = sums[place] + weigh(almanac, ingredient).ok_or(at)?;
    }
    let [low_acid, produce, acid, liquid] = sums;
    Ok(shares(low_acid, produce, acid, liquid))
}

fn shares(low_acid: Mass, produce: Mass, acid: Mass, liquid: Mass) -> Option<Shares> {
    let whole = low_acid + produce + acid;
    if whole <= Mass::ZERO {
        return None;
    }
    let of = |part: Mass| Percent::of_hundred(part.ratio_to(whole) * 100.0);
    Some(Shares { low_acid: of(low_acid), acid: of(acid), liquid: of(liquid) })
}

/// The form by which cups of produce are weighed: cut, as it stands in most formulas.
const CUT: &str = "chopped sliced slices pieces";

/// What an ingredient weighs as it was written down; none where nothing on file says.
pub(crate) fn weigh(almanac: &Almanac, ingredient: &HomeIngredient) -> Option<Mass> {
    let names = names_of(ingredient);
    match ingredient.amount.as_ref()? {
        Amount::Mass(mass) => Some(*mass),
        Amount::Volume(volume) => {
            names.iter().find_map(|name| almanac.weigh_volume(name, Some(CUT), *volume)).map(|(mass, _)| mass)
        }
        Amount::Count(number) => weigh_pieces(almanac, &names, *number),
        Amount::Container { .. } => None,
    }
}

fn weigh_pieces(almanac: &Almanac, names: &[String], number: Fraction) -> Option<Mass> {
    let one = names.iter().find_map(|name| {
        let listed = almanac.find_produce(name).one().and_then(|produce| produce.each_as_purchased);
        listed.or_else(|| almanac.find_density(name, None, DensityMeasure::Each).map(|row| row.mass()))
    })?;
    Some(one * number.to_f64())
}

/// The names under which it may be weighed: its own, without how it looks, its last word; acids and liquids by what
/// they are.
fn names_of(ingredient: &HomeIngredient) -> Vec<String> {
    let words = words_of(&ingredient.what);
    let plain: Vec<String> = words.iter().filter(|word| !LOOKS.contains(&word.as_str())).cloned().collect();
    let mut names = vec![ingredient.what.clone(), words.join(" "), plain.join(" ")];
    names.extend(plain.last().cloned());
    match ingredient.part {
        Part::Acid if words.iter().any(|word| word == "vinegar") => names.push("vinegar".to_owned()),
        Part::Acid if words.iter().any(|word| word == "lemon" || word == "lime") => {
            names.push("lemon juice".to_owned());
        }
        Part::Liquid => names.push("water".to_owned()),
        _ => {}
    }
    names
}
