//! What is made, with its amounts, its process and its worth.

use batch::fit::{FittedBatch, FittedIngredient, Keeps};
use measure::Mass;

use super::{Planned, words};
use crate::answer::{BatchSheet, IngredientLine, Make};
use crate::plan::candidates::{Candidate, Considered};
use crate::plan::{errand_id, project_id};

/// A move of an amount by rounding is told from this many percent on.
const MOVE_TOLD_PERCENT: f64 = 2.0;

/// The makes of the plan, then its errands.
pub(super) fn makes(planned: &Planned<'_>) -> Vec<Make> {
    let mut makes: Vec<Make> = planned
        .chosen_makes()
        .map(|(considered, candidate)| make_of(planned, considered, candidate))
        .collect();
    let errands = planned.day.errands.iter().filter(|errand| planned.is_chosen(&errand_id(errand)));
    makes.extend(errands.map(|errand| Make {
        project: errand_id(errand),
        name: errand.name.clone(),
        is_errand: true,
        formula: None,
        from: vec![],
        yields: String::new(),
        containers: None,
        keeps: String::new(),
        process: None,
        batches: vec![],
        worth: 0.0,
        worth_parts: vec![],
        verdict: None,
        source: None,
    }));
    makes
}

fn make_of(planned: &Planned<'_>, considered: &Considered<'_>, candidate: &Candidate) -> Make {
    let units = planned.day.units;
    let (yields, containers) = words::yield_of(&candidate.fit.batches);
    let yields = yields.unwrap_or_else(|| {
        let prepared: Mass = candidate
            .fit
            .batches
            .iter()
            .flat_map(|batch| &batch.ingredients)
            .filter(|line| !considered.formula.ingredients[line.index].accepts.is_empty())
            .filter_map(|line| line.weight.or(line.takes))
            .sum();
        format!("about {} as it goes in", words::weight(units, prepared))
    });
    let process = candidate.clearance.as_ref().and_then(|clearance| {
        clearance.processes.first().map(|line| words::process_line(units, line, clearance.acid.as_ref()))
    });
    let citation = &considered.formula.citation;
    Make {
        project: project_id(considered),
        name: words::name_of(considered.formula),
        is_errand: false,
        formula: Some(considered.formula.id.to_string()),
        from: candidate
            .uses
            .iter()
            .map(|(basket, mass)| {
                format!("{} of {}", words::weight(units, *mass), planned.day.baskets[*basket].entered)
            })
            .collect(),
        yields,
        containers,
        keeps: keeps_words(candidate).to_owned(),
        process,
        batches: sheets(planned, &candidate.fit.batches),
        worth: candidate.worth.servings,
        worth_parts: candidate.worth.parts.clone(),
        verdict: candidate.clearance.as_ref().map(|clearance| words::verdict(clearance.verdict).to_owned()),
        source: Some(format!("{}, {}", citation.source, citation.locator)),
    }
}

fn keeps_words(candidate: &Candidate) -> &'static str {
    match candidate.fit.keeps {
        Keeps::ShelfIfCleared if candidate.clearance.is_some() => "on the shelf, processed as below",
        Keeps::ShelfIfCleared => "in its crock until it is sour, then in the refrigerator",
        Keeps::Cold => "in the refrigerator",
        Keeps::Frozen => "in the freezer",
        Keeps::Dried => "dry, airtight and dark",
    }
}

fn sheets(planned: &Planned<'_>, batches: &[FittedBatch]) -> Vec<BatchSheet> {
    batches
        .iter()
        .enumerate()
        .map(|(at, batch)| BatchSheet {
            number: format!("{} of {}", at + 1, batches.len()),
            factor: batch.factor.to_string(),
            // A printed range that begins at nothing is left out at nothing.
            ingredients: batch
                .ingredients
                .iter()
                .filter(|line| line.measured.is_none_or(|amount| amount.value.to_f64() > 0.0))
                .map(|line| ingredient_line(planned, line))
                .collect(),
        })
        .collect()
}

fn ingredient_line(planned: &Planned<'_>, line: &FittedIngredient) -> IngredientLine {
    let name = if line.optional && !line.prep.contains("optional") {
        format!("{} (may be left out)", line.ingredient)
    } else {
        line.ingredient.clone()
    };
    IngredientLine {
        ingredient: name,
        measure: line
            .measured
            .as_ref()
            .map_or_else(|| "as you like".to_owned(), |amount| words::measured(planned.day.units, amount)),
        weight: line
            .weight
            .filter(|_| line.measured.is_none_or(|amount| amount.mass().is_none()))
            .map(|weight| words::weight(planned.day.units, weight)),
        prep: line.prep.clone(),
        moved: (line.moved_percent.abs() > MOVE_TOLD_PERCENT)
            .then(|| format!("moved by {:+.1} % to what can be measured", line.moved_percent)),
    }
}

/// What must be done the evening before, named by its make.
pub(super) fn evening_before(planned: &Planned<'_>) -> Vec<String> {
    planned
        .chosen_makes()
        .flat_map(|(considered, candidate)| {
            candidate
                .work
                .evening
                .iter()
                .map(|line| format!("{}: {line}", words::name_of(considered.formula)))
        })
        .collect()
}
