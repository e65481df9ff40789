//! The balance of acid and low-acid food, measured against the nearest tested formula. Until models can veto, this is
//! the veto.

use almanac::{Almanac, CannerKind, Formula, FormulaClass, Part, ProductId};

use super::parts::is_thickener;
use super::{CopiedDraft, CopiedFault, CopiedPlace, CopiedProblem, DraftFormula};
use crate::clear::change::words_of;
use crate::clear::near::{HomeIngredient, Shares, find_nearest, shares_of_mix};

/// The food whose printed rows count: the one named, else that of a tested formula of the very same foods. Leaving the
/// name out opens nothing.
pub(super) fn find_floor(almanac: &Almanac, draft: &CopiedDraft) -> Option<ProductId> {
    if draft.food.is_some() {
        return draft.food.clone();
    }
    if let Some(named) = almanac.find_product(&draft.name).one() {
        return Some(named.id.clone());
    }
    let mix = &draft.formula.as_ref()?.ingredients;
    let nearest = find_nearest(almanac, mix)?;
    let is_food = |part: Part| matches!(part, Part::Produce | Part::LowAcid);
    let all_mine = mix.iter().zip(&nearest.matched).all(|(one, line)| line.is_some() || !is_food(one.part));
    let mut theirs = nearest.formula.ingredients.iter().enumerate().filter(|(_, line)| is_food(line.part));
    let all_theirs = theirs.all(|(at, _)| nearest.matched.contains(&Some(at)));
    nearest.formula.product.clone().filter(|_| all_mine && all_theirs)
}

pub(super) fn check_balance(
    almanac: &Almanac,
    draft: &CopiedDraft,
    formula: &DraftFormula,
    faults: &mut Vec<CopiedFault>,
) {
    let mix = &formula.ingredients;
    let nearest = find_nearest(almanac, mix);
    check_thickeners(almanac, mix, nearest.as_ref().map(|nearest| nearest.formula), faults);
    let holds = |part: Part| mix.iter().any(|ingredient| ingredient.part == part);
    let cool = draft.processes.iter().map(|process| process.canner).find(|canner| !canner.is_pressure());
    // Tomatoes need their acid under pressure too.
    let needs_acid = nearest.as_ref().map(|nearest| nearest.formula).filter(|formula| {
        acid_keeps(formula) && (cool.is_some() || formula.class == Some(FormulaClass::TomatoPlain))
    });
    if let Some(formula) = needs_acid.filter(|_| !holds(Part::Acid)) {
        let problem = CopiedProblem::NoAcid { formula: formula.name.to_string() };
        faults.push(CopiedFault::cited(CopiedPlace::Whole, problem, Some(&formula.citation)));
    }
    let Some(canner) = cool else { return };
    let low_acid = holds(Part::LowAcid) || holds(Part::Oil);
    if low_acid && !holds(Part::Acid) {
        return refuse_low_acid(almanac, canner, faults);
    }
    let Some(nearest) = nearest else {
        if low_acid {
            faults.push(CopiedFault::at(CopiedPlace::Whole, CopiedProblem::NothingNear));
        }
        return;
    };
    let shares = match shares_of_mix(almanac, mix) {
        Ok(shares) => shares,
        Err(at) => {
            let problem = CopiedProblem::NoWeight { what: mix[at].what.clone() };
            return faults.push(CopiedFault::at(CopiedPlace::Ingredient(at), problem));
        }
    };
    match (shares, nearest.shares) {
        (Some(mine), Some(tested)) => measure_against(mix, mine, tested, nearest.formula, faults),
        (_, None) if low_acid => {
            faults.push(CopiedFault::at(CopiedPlace::Whole, CopiedProblem::NothingNear));
        }
        _ => {}
    }
}

fn refuse_low_acid(almanac: &Almanac, canner: CannerKind, faults: &mut Vec<CopiedFault>) {
    let refusal = almanac.refusal("low-acid-in-boiling-water").map(|refusal| &refusal.citation);
    faults.push(CopiedFault::cited(CopiedPlace::Whole, CopiedProblem::LowAcid { canner }, refusal));
}

/// Lying within this of the tested share counts as the same, in percent: weights of cups are known no better.
const HAIR: f64 = 0.5;

fn measure_against(
    mix: &[HomeIngredient],
    mine: Shares,
    tested: Shares,
    formula: &Formula,
    faults: &mut Vec<CopiedFault>,
) {
    let name = || formula.name.to_string();
    let mut refuse = |problem| {
        faults.push(CopiedFault::cited(CopiedPlace::Whole, problem, Some(&formula.citation)));
    };
    if mine.low_acid.as_percent() > tested.low_acid.as_percent() + HAIR {
        let (share, limit) = (mine.low_acid, tested.low_acid);
        refuse(CopiedProblem::TooMuchLowAcid { share, limit, formula: name() });
    }
    if !acid_keeps(formula) {
        return;
    }
    if mine.acid.as_percent() + HAIR < tested.acid.as_percent() {
        let (share, limit) = (mine.acid, tested.acid);
        refuse(CopiedProblem::TooLittleAcid { share, limit, formula: name() });
    }
    if mine.liquid.as_percent() > tested.liquid.as_percent() + HAIR {
        let (share, limit) = (mine.liquid, tested.liquid);
        refuse(CopiedProblem::TooMuchLiquid { share, limit, formula: name() });
    }
    if only_vinegar(mix.iter().filter(|one| one.part == Part::Acid).map(|one| &*one.what))
        && !only_vinegar(
            formula.ingredients.iter().filter(|line| line.part == Part::Acid).map(|line| &*line.name),
        )
    {
        refuse(CopiedProblem::VinegarForLemon { formula: name() });
    }
}

/// Whether acid is what keeps the formula; in a jam it helps the set.
fn acid_keeps(formula: &Formula) -> bool {
    formula.ingredients.iter().any(|line| line.part == Part::Acid && line.safety_critical)
}

fn only_vinegar<'a>(mut acids: impl Iterator<Item = &'a str>) -> bool {
    acids.all(|name| words_of(name).iter().any(|word| word == "vinegar"))
}

/// A thickener only where the nearest tested formula prints the same one.
fn check_thickeners(
    almanac: &Almanac,
    mix: &[HomeIngredient],
    nearest: Option<&Formula>,
    faults: &mut Vec<CopiedFault>,
) {
    for (at, ingredient) in mix.iter().enumerate().filter(|(_, one)| is_thickener(&one.what)) {
        let words = words_of(&ingredient.what);
        let printed = nearest.is_some_and(|formula| {
            formula.ingredients.iter().any(|line| is_thickener(&line.name) && words_of(&line.name) == words)
        });
        if !printed {
            let rule = almanac.kitchen_rule("A12").map(|rule| &rule.citation);
            let problem = CopiedProblem::Thickener { what: ingredient.what.clone() };
            faults.push(CopiedFault::cited(CopiedPlace::Ingredient(at), problem, rule));
        }
    }
}
