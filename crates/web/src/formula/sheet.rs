//! One formula: as it is printed, and fitted to what there is once a weight is given.

use almanac::{Almanac, CannerKind, JarSize};
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::Response;
use batch::fit::{Fit, FitVerdict, FittedBatch, Keeps};
use kitchen::ask::{self, AskError, FitWords, FormulaSheet};
use kitchen::wording::{SaidAmount, as_sentence, capitalize, name_canner, say_amount, say_factor};
use measure::write_mass_metric;
use serde::Deserialize;

use crate::choice::Choice;
use crate::leaf::{self, Place, filters};
use crate::pages::Kitchen;

/// The form as it was typed.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
pub(crate) struct Typed {
    have: String,
    jar: String,
    canner: String,
    altitude: String,
}

#[derive(Template)]
#[template(path = "formula/sheet.html")]
struct SheetPage {
    place: Place,
    name: String,
    sheet: FormulaSheet,
    typed: Typed,
    jars: Vec<Choice>,
    canners: Vec<Choice>,
    /// What is wrong: the field, why, and what to do.
    wrong: Option<(&'static str, String, String)>,
    fitted: Option<Fitted>,
}

impl SheetPage {
    /// What is wrong with a field, if it is that one.
    fn wrong_with(&self, field: &str) -> Option<(&str, &str)> {
        self.wrong
            .as_ref()
            .filter(|(wrong, ..)| *wrong == field)
            .map(|(_, why, hint)| (why.as_str(), hint.as_str()))
    }
}

/// A fit in finished words.
struct Fitted {
    verdict: &'static str,
    fits: bool,
    keeps: &'static str,
    because: Vec<String>,
    batches: Vec<BatchTable>,
    left_over: Vec<String>,
    notes: Vec<(String, Option<String>)>,
}

struct BatchTable {
    heading: String,
    amounts: Vec<SaidAmount>,
    makes: Vec<String>,
    loads: Vec<String>,
}

/// The sheet of one formula.
pub(crate) async fn show(
    State(kitchen): State<Kitchen>,
    Path(id): Path<String>,
    Query(typed): Query<Typed>,
) -> Response {
    let almanac = &kitchen.almanac;
    let Ok(mut sheet) = ask::show_formula(almanac, &id) else { return leaf::nothing_here().await };
    for step in &mut sheet.steps {
        step.act = capitalize(&step.act);
    }
    let (status, wrong, fitted) = if typed.have.trim().is_empty() {
        (StatusCode::OK, None, None)
    } else {
        match ask::fit(almanac, &words_of(&sheet, &typed)) {
            Ok(fit) => (StatusCode::OK, None, Some(word_fit(almanac, &fit))),
            Err(error) => (StatusCode::UNPROCESSABLE_ENTITY, Some(word_wrong(&error)), None),
        }
    };
    let printed = sheet.jars.iter().map(String::as_str);
    let jars =
        Choice::of(printed.filter(|jar| JarSize::find(jar).is_some()).map(|jar| (jar, jar)), &typed.jar);
    let canners = Choice::of(
        CannerKind::ALL.iter().map(|canner| (canner.as_str(), name_canner(*canner))),
        &typed.canner,
    );
    let name = capitalize(&sheet.name);
    leaf::show(
        status,
        &SheetPage { place: Place::Formulas, name, sheet, typed, jars, canners, wrong, fitted },
    )
}

fn words_of(sheet: &FormulaSheet, typed: &Typed) -> FitWords {
    let given = |field: &String| Some(field.trim().to_owned()).filter(|words| !words.is_empty());
    FitWords {
        formula: sheet.id.clone(),
        have: vec![typed.have.trim().to_owned()],
        jars: given(&typed.jar).into_iter().collect(),
        canner: given(&typed.canner),
        altitude: given(&typed.altitude),
    }
}

fn word_wrong(error: &AskError) -> (&'static str, String, String) {
    let field = match error {
        AskError::Unreadable { what: "altitude", .. } => "altitude",
        AskError::UnknownWord { what: "jar", .. } | AskError::Missing { what: "jar", .. } => "jar",
        AskError::UnknownWord { what: "canner", .. } | AskError::Missing { what: "canner", .. } => "canner",
        _ => "have",
    };
    let said = error.to_string();
    let (why, hint) = said.split_once("hint:").unwrap_or((&said, ""));
    (field, as_sentence(why.trim().trim_end_matches(';')), as_sentence(hint.trim()))
}

fn word_fit(almanac: &Almanac, fit: &Fit) -> Fitted {
    let source = |written: &String| match ask::split_citation(almanac, written) {
        Some((source, place)) => format!("{}: {place}", source.title),
        None => written.clone(),
    };
    let fits = fit.verdict == FitVerdict::Fits;
    Fitted {
        verdict: if fits { "It fits" } else { "It does not fit" },
        fits,
        keeps: match fit.keeps {
            Keeps::ShelfIfCleared => {
                "Keeps on the shelf only with a tested process; ask for it first. Else cold."
            }
            Keeps::Cold => "Keeps in the refrigerator.",
            Keeps::Frozen => "Keeps in the freezer.",
            Keeps::Dried => "Keeps dry and airtight.",
        },
        because: fit.because.iter().map(|because| as_sentence(&because.text)).collect(),
        batches: word_batches(fit),
        left_over: fit
            .left_over
            .iter()
            .map(|left| {
                let amount =
                    left.mass.map(|mass| format!(", {}", write_mass_metric(mass))).unwrap_or_default();
                format!("{}{amount}. {}", capitalize(&left.what), as_sentence(&left.goes_to))
            })
            .collect(),
        notes: fit
            .notes
            .iter()
            .map(|note| (as_sentence(&note.text), note.source.as_ref().map(source)))
            .collect(),
    }
}

/// Batches one after the other that take the same are told once.
fn word_batches(fit: &Fit) -> Vec<BatchTable> {
    let mut told = 0;
    let alike = fit.batches.chunk_by(|one, other| one == other);
    alike
        .map(|alike| {
            let (first, last, of) = (told + 1, told + alike.len(), fit.batches.len());
            told = last;
            let factor = say_factor(alike[0].factor);
            let heading = match (first, last) {
                _ if of == 1 => capitalize(&factor),
                (first, last) if first == last => format!("Batch {first} of {of}: {factor}"),
                _ => format!("Batches {first} to {last} of {of}, each: {factor}"),
            };
            word_batch(heading, &alike[0])
        })
        .collect()
}

fn word_batch(heading: String, batch: &FittedBatch) -> BatchTable {
    let range = |low: u32, likely: u32, high: u32, what: String| {
        if low == high {
            format!("{likely} {what}")
        } else {
            format!("{low} to {high} {what}, likely {likely}")
        }
    };
    let jars = batch.jars.iter().map(|jars| {
        let plural = if jars.high == 1 { "" } else { "s" };
        range(jars.low, jars.likely, jars.high, format!("{}{plural}", jars.size))
    });
    let bags =
        batch.bags.iter().map(|bags| range(bags.low, bags.likely, bags.high, format!("{} bags", bags.size)));
    let loads = batch
        .loads
        .iter()
        .map(|load| format!("{} {} jars at once; {} would go in.", load.jars, load.size, load.holds));
    BatchTable {
        heading,
        amounts: batch.ingredients.iter().map(say_amount).collect(),
        makes: jars.chain(bags).collect(),
        loads: loads.collect(),
    }
}
