//! Each ingredient and step by itself: what it is known to be, and whether it is refused wherever it stands.

use almanac::{Almanac, IngredientClass as Class, Part, RefusalKind, What};

use super::{CopiedFault, CopiedPlace, CopiedProblem, DraftFormula};
use crate::clear::change::{find_thing, words_of};
use crate::clear::near::HomeIngredient;

pub(super) fn check_parts(
    almanac: &Almanac,
    name: &str,
    formula: &DraftFormula,
    faults: &mut Vec<CopiedFault>,
) {
    if formula.ingredients.is_empty() {
        faults.push(CopiedFault::at(CopiedPlace::Whole, CopiedProblem::NoIngredients));
    }
    if formula.steps.is_empty() {
        faults.push(CopiedFault::at(CopiedPlace::Whole, CopiedProblem::NoSteps));
    }
    refuse(almanac, name, CopiedPlace::Name, |_| true, faults);
    for (at, ingredient) in formula.ingredients.iter().enumerate() {
        let place = CopiedPlace::Ingredient(at);
        check_part(almanac, ingredient, place, faults);
        // What is refused by itself is taken where a tested formula holds it.
        let tested = is_in_a_tested_formula(almanac, &ingredient.what);
        refuse(almanac, &ingredient.what, place, |kind| kind == RefusalKind::Food && !tested, faults);
    }
    for (at, step) in formula.steps.iter().enumerate() {
        let place = CopiedPlace::Step(at);
        refuse(almanac, step, place, |kind| kind == RefusalKind::Practice, faults);
    }
}

fn refuse(
    almanac: &Almanac,
    words: &str,
    place: CopiedPlace,
    counts: impl Fn(RefusalKind) -> bool,
    faults: &mut Vec<CopiedFault>,
) {
    for refusal in almanac.find_refusals(words).into_iter().filter(|refusal| counts(refusal.kind)) {
        let problem = CopiedProblem::Refused {
            words: words.to_owned(),
            item: refusal.item.to_string(),
            reason: refusal.reason.to_string(),
            instead: refusal.instead.to_string(),
        };
        faults.push(CopiedFault::cited(place, problem, Some(&refusal.citation)));
    }
}

fn is_in_a_tested_formula(almanac: &Almanac, what: &str) -> bool {
    let words = words_of(what);
    let tested = almanac.formulas().filter(|formula| formula.product.is_some());
    !words.is_empty()
        && tested.flat_map(|formula| &formula.ingredients).any(|line| {
            let name = words_of(&line.name);
            words.iter().all(|word| name.contains(word))
        })
}

/// Whether the part a household gave is as strict as what the thing is known to be.
fn check_part(
    almanac: &Almanac,
    ingredient: &HomeIngredient,
    place: CopiedPlace,
    faults: &mut Vec<CopiedFault>,
) {
    let what = ingredient.what.clone();
    if is_thickener(&what) {
        // Whether the nearest tested formula prints it is asked with the balance.
        return;
    }
    match (ingredient.part, known_part(almanac, &what)) {
        (Part::Acid, _) if !counts_as_acid(&what) => {
            let rule = almanac.kitchen_rule("A4").map(|rule| &rule.citation);
            faults.push(CopiedFault::cited(place, CopiedProblem::NotAcid { what }, rule));
        }
        (typed, Some(known @ (Part::LowAcid | Part::Oil | Part::Liquid)))
            if typed != known && typed != Part::LowAcid =>
        {
            faults.push(CopiedFault::at(place, CopiedProblem::PartTooMild { what, typed, known }));
        }
        (Part::Produce | Part::Spice | Part::Other | Part::Liquid, None) => {
            faults.push(CopiedFault::at(place, CopiedProblem::NotKnownAsAcidFood { what }));
        }
        _ => {}
    }
}

/// Whether it is named as something that thickens.
pub(super) fn is_thickener(what: &str) -> bool {
    const THICKENERS: &[&str] = &[
        "flour",
        "starch",
        "cornstarch",
        "cornflour",
        "tapioca",
        "arrowroot",
        "roux",
        "gelatin",
        "thickener",
    ];
    let words = words_of(what);
    let named = find_thing(&words).is_some_and(|thing| thing.classes.contains(&Class::Thickener));
    named || words.iter().any(|word| THICKENERS.contains(&word.as_str()))
}

/// Vinegar of full strength, bottled lemon or lime juice, citric acid. A vinegar said to be weaker, homemade or of
/// fruit just pressed does not count.
fn counts_as_acid(what: &str) -> bool {
    /// Acidity below which vinegar is weaker than any formula asks for, in percent (USDA, Complete Guide to Home
    /// Canning, 2015, p. 1-28).
    const FULL_STRENGTH: f64 = 5.0;
    const WEAK: &[What] =
        &[What::HomemadeVinegar, What::VinegarUnder5Percent, What::FreshCitrusJuice, What::KeyLimeJuice];
    let words = words_of(what);
    let has = |word: &str| words.iter().any(|said| said == word);
    let strength = words.windows(2).find(|pair| pair[1] == "percent").map(|pair| pair[0].parse::<f64>());
    let strong_enough = match strength {
        None => true,
        Some(Ok(share)) => share >= FULL_STRENGTH,
        Some(Err(_)) => false,
    };
    let thing = find_thing(&words);
    let weak = thing.is_some_and(|thing| thing.whats.iter().any(|what| WEAK.contains(what)));
    let fresh =
        ["fresh", "squeezed", "homemade", "home", "own", "key", "diluted", "weak"].into_iter().any(has);
    let citric = has("citric") && has("acid");
    let juice = (has("lemon") || has("lime")) && has("bottled");
    strong_enough && !weak && !fresh && (has("vinegar") || juice || citric)
}

/// What a thing is known to be: by the words of the change rules, by a tested formula that holds it, by the acidity
/// listed for it. The strictest counts.
fn known_part(almanac: &Almanac, what: &str) -> Option<Part> {
    let words = words_of(what);
    if words.is_empty() {
        return None;
    }
    let thing = find_thing(&words).or_else(|| find_thing(&words[words.len() - 1..]));
    let by_class = thing.and_then(|thing| thing.classes.iter().find_map(|class| part_of(*class)));
    let lines = almanac.formulas().flat_map(|formula| &formula.ingredients).filter(|line| {
        let name = words_of(&line.name);
        words.iter().all(|word| name.contains(word))
    });
    let by_formula: Vec<Part> = lines.map(|line| line.part).collect();
    let strict = [Part::Oil, Part::LowAcid];
    if let Some(known) = strict.into_iter().find(|part| by_class == Some(*part) || by_formula.contains(part))
    {
        return Some(known);
    }
    /// At or below this a food is acid (USDA, Complete Guide to Home Canning, 2015, p. 1-8).
    const ACID_AT_MOST: f64 = 4.6;
    let listed = almanac.find_acidity(what);
    if listed.iter().any(|row| row.ph.high.value() > ACID_AT_MOST) {
        return Some(Part::LowAcid);
    }
    by_class.or_else(|| by_formula.first().copied()).or((!listed.is_empty()).then_some(Part::Produce))
}

fn part_of(class: Class) -> Option<Part> {
    match class {
        Class::Acid | Class::LemonJuice | Class::Vinegar => Some(Part::Acid),
        Class::Garlic
        | Class::HerbFresh
        | Class::HotPepper
        | Class::SweetPepper
        | Class::LowAcidVegetable
        | Class::Onion => Some(Part::LowAcid),
        Class::HerbDried | Class::Spice => Some(Part::Spice),
        Class::Oil => Some(Part::Oil),
        Class::Pectin => Some(Part::Pectin),
        Class::Produce | Class::TomatoKind => Some(Part::Produce),
        Class::Salt => Some(Part::Salt),
        Class::Sugar => Some(Part::Sugar),
        Class::Water => Some(Part::Liquid),
        Class::Thickener | Class::Other => None,
    }
}
