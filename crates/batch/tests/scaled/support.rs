//! Asking and reading a fit in one line.

use std::sync::OnceLock;

use almanac::{Almanac, FormulaId};
use batch::fit::{Fit, FitQuestion, FittedIngredient, Have, IngredientRef, fit};
use measure::{Mass, read_mass};

/// The almanac, read once.
pub fn almanac() -> &'static Almanac {
    static ALMANAC: OnceLock<Almanac> = OnceLock::new();
    ALMANAC.get_or_init(|| Almanac::load().expect("the built-in tables have no fault"))
}

/// A question about a formula and what there is: `3 lb` or `onions=1 kg`.
pub fn question(formula: &str, haves: &[&str]) -> FitQuestion {
    let have = haves
        .iter()
        .map(|have| {
            let (ingredient, mass) = match have.split_once('=') {
                Some((name, mass)) => (IngredientRef::Named(name.to_owned()), mass),
                None => (IngredientRef::MainProduce, *have),
            };
            Have { ingredient, mass: read_mass(mass).expect("a test writes weights that read") }
        })
        .collect();
    FitQuestion {
        formula: FormulaId::from(formula),
        have,
        jars: Vec::new(),
        canner: None,
        altitude: None,
        most_batches: None,
    }
}

/// The answer.
pub fn answer(formula: &str, haves: &[&str]) -> Fit {
    fit(almanac(), &question(formula, haves)).expect("a test asks what can be answered")
}

/// A line of a batch, by words of its name.
pub fn line<'a>(fit: &'a Fit, batch: usize, name: &str) -> &'a FittedIngredient {
    fit.batches[batch]
        .ingredients
        .iter()
        .find(|line| line.ingredient.contains(name))
        .unwrap_or_else(|| panic!("no {name} in batch {batch} of {:?}", fit.question.formula))
}

/// The measured amount of a line as it is written: `3 3/4 cup`.
pub fn measured(fit: &Fit, batch: usize, name: &str) -> String {
    line(fit, batch, name)
        .measured
        .map_or_else(|| "as you like".to_owned(), |amount| format!("{} {}", amount.value, amount.unit.told()))
}

/// What the batches take of a line.
pub fn taken(fit: &Fit, index: usize) -> Mass {
    fit.batches
        .iter()
        .flat_map(|batch| &batch.ingredients)
        .filter(|line| line.index == index)
        .filter_map(|line| line.takes)
        .sum()
}
