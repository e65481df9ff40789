//! What is on file: formulas, processes, sources, each with where it is printed.

use almanac::{
    Almanac, Citation, Formula, IngredientUnit, Match, MeasureUnit, Per, PieceKind, PrintedAmount, PrintedLine,
    Product, SourceId,
};
use measure::{Fraction, write_altitude, write_length_in, write_temp_fahrenheit};
use serde::Serialize;

use super::error::{AskError, NameKind};
use super::names::require_one;

/// One line of a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Listed {
    /// The id.
    pub id: String,
    /// The name for people.
    pub name: String,
    /// What else tells it from others, short.
    pub about: String,
}

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

/// A food with every printed line of its process.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProcessSheet {
    /// The id.
    pub id: String,
    /// Its names.
    pub names: Vec<String>,
    /// Its group.
    pub group: String,
    /// The printed lines.
    pub rows: Vec<ProcessRow>,
}

/// One printed line of a process.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProcessRow {
    /// The canner.
    pub canner: String,
    /// The pack.
    pub pack: String,
    /// The jar.
    pub jar: String,
    /// The altitude band in words.
    pub band: String,
    /// Minutes; `None` where the row may not be called tested.
    pub minutes: Option<u32>,
    /// Pressure in psi, where the canner has one.
    pub psi: Option<f64>,
    /// Where it is printed.
    pub source: String,
    /// How it got here.
    pub basis: String,
}

/// A publication and what rests on it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SourceSheet {
    /// The id.
    pub id: String,
    /// Issuer, title, year.
    pub title: String,
    /// How far it is trusted.
    pub rank: String,
    /// Why.
    pub why: String,
    /// The formulas that rest on it.
    pub formulas: Vec<String>,
    /// The foods with a process from it.
    pub processes: Vec<String>,
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

/// Every food with a printed process.
#[must_use]
pub fn list_processes(almanac: &Almanac) -> Vec<Listed> {
    let listed = almanac.products().map(|product| Listed {
        id: product.id.to_string(),
        name: product.names.first().map(ToString::to_string).unwrap_or_default(),
        about: join(product.canners.iter(), ", "),
    });
    listed.collect()
}

/// Every publication.
#[must_use]
pub fn list_sources(almanac: &Almanac) -> Vec<Listed> {
    let listed = almanac.sources().map(|source| Listed {
        id: source.id.to_string(),
        name: source.title.to_string(),
        about: source.rank.to_string(),
    });
    listed.collect()
}

/// A formula at its printed size.
///
/// # Errors
///
/// When the word names no formula, or several.
pub fn show_formula(almanac: &Almanac, typed: &str) -> Result<FormulaSheet, AskError> {
    let formula = require_one(almanac.find_formula(typed), NameKind::Formula, typed, |found| found.id.to_string())?;
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
    })
}

/// A food with every printed line of its process.
///
/// # Errors
///
/// When the word names no such food, or several.
pub fn show_process(almanac: &Almanac, typed: &str) -> Result<ProcessSheet, AskError> {
    let product = require_one(almanac.find_product(typed), NameKind::Food, typed, |found| found.id.to_string())?;
    Ok(sheet_of(almanac, product))
}

/// A publication and what rests on it.
///
/// # Errors
///
/// When the word is the id of no publication and stands in no title, or in several.
pub fn show_source(almanac: &Almanac, typed: &str) -> Result<SourceSheet, AskError> {
    let source = require_one(find_source(almanac, typed), NameKind::Source, typed, |found| found.id.to_string())?;
    let rests = |citation: &Citation| citation.source == source.id;
    let formulas = almanac.formulas().filter(|formula| rests(&formula.citation));
    let processes = almanac
        .products()
        .filter(|product| almanac.printed_lines(&product.id).any(|line| rests(line.citation())));
    Ok(SourceSheet {
        id: source.id.to_string(),
        title: source.title.to_string(),
        rank: source.rank.to_string(),
        why: source.why.to_string(),
        formulas: formulas.map(|formula| formula.id.to_string()).collect(),
        processes: processes.map(|product| product.id.to_string()).collect(),
    })
}

/// Where a row is printed, in one line for people.
#[must_use]
pub fn cite(almanac: &Almanac, citation: &Citation) -> String {
    let title = almanac.source(&citation.source).map_or(citation.source.as_str(), |source| &source.title);
    format!("{title}: {}", citation.locator)
}

/// Citations of the form `ID, place` or `ID: place`, with the title of the publication in place of its id.
#[must_use]
pub fn name_sources(almanac: &Almanac, cited: &str) -> String {
    let ends = [cited.find(", "), cited.find(": ")].into_iter().flatten().min();
    let (id, place) = ends.map_or((cited, ""), |end| (&cited[..end], &cited[end + 2..]));
    match almanac.source(&SourceId::from(id)) {
        Some(source) if place.is_empty() => source.title.to_string(),
        Some(source) => format!("{}: {place}", source.title),
        None => cited.to_owned(),
    }
}

fn find_source<'a>(almanac: &'a Almanac, typed: &str) -> Match<'a, almanac::Source> {
    let typed = typed.trim();
    if let Some(source) = almanac.source(&SourceId::from(typed)) {
        return Match::One(source);
    }
    let typed = typed.to_lowercase();
    let holds = |text: &str| !typed.is_empty() && text.to_lowercase().contains(&typed);
    let found: Vec<_> =
        almanac.sources().filter(|source| holds(source.id.as_str()) || holds(&source.title)).collect();
    match found.as_slice() {
        [one] => Match::One(one),
        [] => Match::Nearest(Vec::new()),
        _ => Match::Several(found),
    }
}

fn sheet_of(almanac: &Almanac, product: &Product) -> ProcessSheet {
    ProcessSheet {
        id: product.id.to_string(),
        names: product.names.iter().map(ToString::to_string).collect(),
        group: product.group.to_string(),
        rows: almanac.printed_lines(&product.id).map(|line| word_row(almanac, &line)).collect(),
    }
}

fn word_row(almanac: &Almanac, line: &PrintedLine<'_>) -> ProcessRow {
    let band = line.band();
    let from = write_altitude(band.min);
    ProcessRow {
        canner: line.canner().to_string(),
        pack: line.pack().to_string(),
        jar: line.jar().to_string(),
        band: band.max.map_or_else(|| format!("{from} and up"), |max| format!("{from} to {}", write_altitude(max))),
        minutes: line.process().map(|process| process.minutes().0),
        psi: line.process().and_then(|process| process.pressure()).map(|pressure| pressure.as_psi()),
        source: cite(almanac, line.citation()),
        basis: line.citation().basis.to_string(),
    }
}

fn word_yield(formula: &Formula) -> String {
    formula.yield_.as_ref().map_or_else(String::new, |yielded| {
        let unit = match yielded.unit {
            almanac::YieldUnit::Jar(jar) => jar.to_string(),
            almanac::YieldUnit::GallonOfContainer => "gallon of container".to_owned(),
            almanac::YieldUnit::Sheet => "sheet of 13 by 15 in".to_owned(),
        };
        let many = yielded.max > Fraction::ONE && !unit.contains(' ');
        let plural = if many { "s" } else { "" };
        let per = if yielded.per.is_empty() { String::new() } else { format!(" from {}", yielded.per) };
        format!("{} {unit}{plural}{per}", yielded.printed)
    })
}

fn word_ingredient(ingredient: &almanac::Ingredient) -> IngredientOnFile {
    IngredientOnFile {
        name: ingredient.name.to_string(),
        amount: ingredient.amount.as_ref().map_or_else(|| "as you like".to_owned(), |amount| word_amount(amount, ingredient.unit)),
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

fn word_step(step: &almanac::FormulaStep) -> StepOnFile {
    let range = |low: String, high: String| if low == high { low } else { format!("{low} to {high}") };
    StepOnFile {
        order: step.order,
        act: format!("{} {}", step.action, step.what),
        minutes: step.minutes.map_or_else(String::new, |minutes| {
            format!("{} min", range(minutes.low.to_string(), minutes.high.to_string()))
        }),
        heat: step.temp.map_or_else(String::new, |temp| {
            range(write_temp_fahrenheit(temp.low), write_temp_fahrenheit(temp.high))
        }),
        note: step.note.to_string(),
    }
}

fn join<T: ToString>(items: impl Iterator<Item = T>, between: &str) -> String {
    items.map(|item| item.to_string()).collect::<Vec<_>>().join(between)
}
