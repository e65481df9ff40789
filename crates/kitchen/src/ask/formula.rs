//! Formulas as they are printed.

use almanac::{
    Almanac, Basis, Formula, FormulaStep, Ingredient, IngredientUnit, MeasureUnit, Per, PieceKind,
    PrintedAmount, YieldUnit,
};
use batch::clear::find_doubt;
use measure::{Fraction, Minutes, write_length_in, write_minutes, write_temp_fahrenheit};
use serde::Serialize;

use super::error::{AskError, NameKind};
use super::listed::{Listed, join};
use super::names::require_one;
use super::source::cite;

/// A formula as it is printed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FormulaSheet {
    /// The id.
    pub id: String,
    /// The name.
    pub name: String,
    /// How the food is kept.
    pub methods: Vec<String>,
    /// What it makes, as printed.
    pub makes: String,
    /// The jars it is printed for.
    pub jars: Vec<String>,
    /// The headspace in words.
    pub headspace: Option<String>,
    /// How it may be scaled.
    pub scale: String,
    /// What the cook may change.
    pub may_vary: String,
    /// The food in the process tables.
    pub process: Option<String>,
    /// What goes in.
    pub ingredients: Vec<IngredientOnFile>,
    /// What is done.
    pub steps: Vec<StepOnFile>,
    /// What else is printed.
    pub note: String,
    /// Where it is printed.
    pub source: String,
    /// How it got here: `read`, `memory`.
    pub basis: String,
    /// How far the publication is trusted: `full`, `lower`.
    pub rank: String,
    /// Whether a process of its food may be called tested for it: every row that keeps the jar was read in a source of
    /// full rank.
    pub may_be_tested: bool,
}

/// One ingredient as it is printed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct IngredientOnFile {
    /// Its name.
    pub name: String,
    /// How much, with its unit.
    pub amount: String,
    /// How it is prepared.
    pub prep: String,
    /// Its part in the balance that keeps the food.
    pub part: String,
    /// Whether that balance hangs on it.
    pub safety_critical: bool,
}

/// One step as it is printed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepOnFile {
    /// Its place.
    pub order: u32,
    /// What is done, to what.
    pub act: String,
    /// How long, in words; empty where nothing is printed.
    pub minutes: String,
    /// How hot, in words; empty where nothing is printed.
    pub heat: String,
    /// What else is printed.
    pub note: String,
}

/// Every formula.
#[must_use]
pub fn list_formulas(almanac: &Almanac) -> Vec<Listed> {
    let listed = almanac.formulas().map(|formula| Listed {
        id: formula.id.to_string(),
        name: formula.name.to_string(),
        about: join(formula.methods.iter(), " or "),
    });
    listed.collect()
}

/// A formula at its printed size.
///
/// # Errors
///
/// When the word names no formula, or several.
pub fn show_formula(almanac: &Almanac, typed: &str) -> Result<FormulaSheet, AskError> {
    let formula =
        require_one(almanac.find_formula(typed), NameKind::Formula, typed, |found| found.id.to_string())?;
    Ok(FormulaSheet {
        id: formula.id.to_string(),
        name: formula.name.to_string(),
        methods: formula.methods.iter().map(ToString::to_string).collect(),
        makes: word_yield(formula),
        jars: formula.jars.iter().map(ToString::to_string).collect(),
        headspace: formula.headspace.map(write_length_in),
        scale: formula.scale.to_string(),
        may_vary: formula.may_vary.to_string(),
        process: formula.product.as_ref().map(ToString::to_string),
        ingredients: formula.ingredients.iter().map(word_ingredient).collect(),
        steps: formula.steps.iter().map(word_step).collect(),
        note: formula.note.to_string(),
        source: cite(almanac, &formula.citation),
        basis: formula.citation.basis.to_string(),
        rank: formula.citation.rank.to_string(),
        may_be_tested: find_doubt(formula).is_none(),
    })
}

fn word_yield(formula: &Formula) -> String {
    formula.yield_.as_ref().map_or_else(String::new, |yielded| {
        let unit = match yielded.unit {
            YieldUnit::Jar(jar) => jar.to_string(),
            YieldUnit::GallonOfContainer => "gallon of container".to_owned(),
            YieldUnit::Sheet => "sheet of 13 by 15 in".to_owned(),
        };
        let many = yielded.max > Fraction::ONE && !unit.contains(' ');
        let plural = if many { "s" } else { "" };
        let per = if yielded.per.is_empty() { String::new() } else { format!(" from {}", yielded.per) };
        format!("{} {unit}{plural}{per}", yielded.printed)
    })
}

/// How much of an ingredient is printed, in words.
pub(crate) fn word_printed_amount(ingredient: &Ingredient) -> String {
    match &ingredient.amount {
        Some(_) if ingredient.citation.basis == Basis::Memory => "not seen in print".to_owned(),
        Some(amount) => word_amount(amount, ingredient.unit),
        None => "as you like".to_owned(),
    }
}

fn word_ingredient(ingredient: &Ingredient) -> IngredientOnFile {
    IngredientOnFile {
        name: ingredient.name.to_string(),
        amount: word_printed_amount(ingredient),
        prep: ingredient.prep.to_string(),
        part: ingredient.part.to_string(),
        safety_critical: ingredient.safety_critical,
    }
}

/// An amount as a cook writes it: `2 1/2 to 3 lb`, `2 tbsp in each pint`.
fn word_amount(amount: &PrintedAmount, unit: IngredientUnit) -> String {
    let number = if amount.min == amount.max {
        amount.max.to_string()
    } else {
        format!("{} to {}", amount.min, amount.max)
    };
    let unit = word_unit(unit, amount.max);
    format!("{number} {unit}").trim_end().to_owned()
}

fn word_unit(unit: IngredientUnit, number: Fraction) -> String {
    let plural = |name: &str| if number > Fraction::ONE { format!("{name}s") } else { name.to_owned() };
    match unit {
        IngredientUnit::Volume(unit) => unit.name_behind(number).to_owned(),
        IngredientUnit::Mass(unit) => unit.name().to_owned(),
        IngredientUnit::Each(PieceKind::Each) | IngredientUnit::AsYouLike => String::new(),
        IngredientUnit::Each(PieceKind::Large) => "large".to_owned(),
        IngredientUnit::Each(PieceKind::Bunch) if number > Fraction::ONE => "bunches".to_owned(),
        IngredientUnit::Each(piece) => plural(piece.as_str()),
        IngredientUnit::Package => plural("package"),
        IngredientUnit::Pouch if number > Fraction::ONE => "pouches".to_owned(),
        IngredientUnit::Pouch => "pouch".to_owned(),
        IngredientUnit::Drop => plural("drop"),
        IngredientUnit::Percent => "% of the weight".to_owned(),
        IngredientUnit::Part => plural("part"),
        IngredientUnit::CannerLoad => "to a canner load".to_owned(),
        IngredientUnit::Per { unit, per } => {
            let unit = match unit {
                MeasureUnit::Volume(unit) => unit.name_behind(number),
                MeasureUnit::Mass(unit) => unit.name(),
            };
            format!("{unit} {}", word_per(per))
        }
    }
}

fn word_per(per: Per) -> String {
    match per {
        Per::Jar(jar) => format!("in each {jar}"),
        Per::CupJuice => "to a cup of juice".to_owned(),
        Per::PoundFruit => "to a pound of fruit".to_owned(),
        Per::FivePoundsFruit => "to 5 pounds of fruit".to_owned(),
        Per::QuartKernels => "to a quart of kernels".to_owned(),
        Per::CupWater => "to a cup of water".to_owned(),
        Per::QuartSyrup => "to a quart of syrup".to_owned(),
        Per::GallonBlanchingWater => "to a gallon of blanching water".to_owned(),
        Per::GallonHoldingWater => "to a gallon of holding water".to_owned(),
    }
}

fn word_step(step: &FormulaStep) -> StepOnFile {
    let range = |low: String, high: String| if low == high { low } else { format!("{low} to {high}") };
    StepOnFile {
        order: step.order,
        act: format!("{}: {}", step.action, step.what),
        minutes: match step.minutes {
            // A recalled time is shown nowhere.
            Some(_) if step.citation.basis == Basis::Memory => "on file, not verified".to_owned(),
            Some(minutes) => range(word_minutes(minutes.low), word_minutes(minutes.high)),
            None => String::new(),
        },
        heat: step.temp.map_or_else(String::new, |temp| {
            range(write_temp_fahrenheit(temp.low), write_temp_fahrenheit(temp.high))
        }),
        note: step.note.to_string(),
    }
}

/// Minutes as they are printed; a part of one stays a part.
fn word_minutes(minutes: Fraction) -> String {
    match u32::try_from(minutes.numerator()) {
        Ok(whole) if minutes.is_whole() => write_minutes(Minutes(whole)),
        _ => format!("{minutes} min"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_minute_is_not_rounded_away() {
        assert_eq!(word_minutes(Fraction::new(3, 2).unwrap()), "1 1/2 min");
        assert_eq!(word_minutes(Fraction::whole(90)), "1 h 30 min");
    }
}
