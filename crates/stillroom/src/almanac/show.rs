//! `stillroom almanac formula`, `process`, `source`: one thing, whole.

use almanac::Almanac;
use anyhow::{Context, Result};
use clap::Args;
use kitchen::ask::{
    self, FormulaSheet, IngredientOnFile, ProcessRow, ProcessSheet, ProduceSheet, SourceSheet, StepOnFile,
};
use serde::Serialize;

use super::list::lay_out_list;
use crate::ending::{Answered, wrong_question};
use crate::leaf::{BESIDE, Leaf};
use crate::wrap::{to_the_right, wrap};
use kitchen::wording::{as_sentence, capitalize};

/// List the produce; with a name, print all that is on file about one.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom almanac produce\n  stillroom almanac produce peaches")]
pub(crate) struct ShowProduce {
    /// An id or a name; without it, the list
    name: Option<String>,
    /// Print it as JSON
    #[arg(long)]
    json: bool,
}

/// Print a formula at its printed size, with its source.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom almanac formula pickled_jalapeno_rings")]
pub(crate) struct ShowFormula {
    /// An id or a name
    name: String,
    /// Print it as JSON
    #[arg(long)]
    json: bool,
}

/// Print every line of a food's process: canner, pack, jar, altitude, minutes.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom almanac process \"crushed tomatoes\"")]
pub(crate) struct ShowProcess {
    /// An id or a name
    name: String,
    /// Print it as JSON
    #[arg(long)]
    json: bool,
}

/// Print a source and what rests on it.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom almanac source USDA539_15")]
pub(crate) struct ShowSource {
    /// An id, or words of its title
    name: String,
    /// Print it as JSON
    #[arg(long)]
    json: bool,
}

impl ShowProduce {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        let Some(name) = &self.name else {
            return print(self.json, &ask::list_produce(almanac), |lines| lay_out_list(lines));
        };
        let sheet = ask::show_produce(almanac, name).map_err(wrong_question)?;
        print(self.json, &sheet, lay_out_produce)
    }
}

impl ShowFormula {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        let sheet = ask::show_formula(almanac, &self.name).map_err(wrong_question)?;
        print(self.json, &sheet, lay_out_formula)
    }
}

impl ShowProcess {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        let sheet = ask::show_process(almanac, &self.name).map_err(wrong_question)?;
        print(self.json, &sheet, lay_out_process)
    }
}

impl ShowSource {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        let sheet = ask::show_source(almanac, &self.name).map_err(wrong_question)?;
        print(self.json, &sheet, lay_out_source)
    }
}

fn print<T: Serialize>(json: bool, sheet: &T, lay_out: impl Fn(&T) -> String) -> Result<Answered> {
    Ok(Answered::with(if json {
        serde_json::to_string_pretty(sheet).context("it cannot be written as JSON")? + "\n"
    } else {
        lay_out(sheet)
    }))
}

fn lay_out_formula(sheet: &FormulaSheet) -> String {
    let mut lines = vec![format!("{}. {}", sheet.id, as_sentence(&sheet.methods.join(" or ")))];
    if !sheet.makes.is_empty() {
        lines.push(format!("Makes {}.", sheet.makes));
    }
    let mut leaf = Leaf::head(&capitalize(&sheet.name), &lines);
    leaf.section("What goes in");
    leaf.gap();
    for ingredient in &sheet.ingredients {
        lay_out_ingredient(&mut leaf, ingredient);
    }
    if sheet.ingredients.iter().any(|ingredient| ingredient.safety_critical) {
        leaf.gap();
        leaf.line(
            "*",
            "Changed from what is printed, it is another food, and the process no longer covers it.",
        );
    }
    if !sheet.steps.is_empty() {
        leaf.section("What is done");
        leaf.gap();
        for step in &sheet.steps {
            lay_out_step(&mut leaf, step);
        }
    }
    leaf.section("To know");
    if !sheet.jars.is_empty() {
        leaf.line("Jars", &sheet.jars.join(", "));
    }
    if let Some(headspace) = &sheet.headspace {
        leaf.line("Headspace", headspace);
    }
    leaf.line("Scaling", &sheet.scale);
    if !sheet.may_vary.is_empty() {
        leaf.line("May vary", &sheet.may_vary);
    }
    if !sheet.note.is_empty() {
        leaf.line("Note", &sheet.note);
    }
    if let Some(process) = &sheet.process {
        let ask = format!("ask: stillroom clear --food {process}");
        let none = "none: the formula is not tested; keep it in the refrigerator or the freezer".to_owned();
        leaf.line("Process", if sheet.may_be_tested { &ask } else { &none });
    }
    leaf.line("Source", &sheet.source);
    let basis = match (sheet.basis.as_str(), sheet.rank.as_str()) {
        ("read", "lower") => "read in print, in a source of lower rank; never called tested".to_owned(),
        (basis, _) => word_basis(basis),
    };
    leaf.line("Basis", &basis);
    leaf.finish()
}

/// How a row got here, in words a cook can use.
fn word_basis(basis: &str) -> String {
    match basis {
        "read" => "read in print".to_owned(),
        "memory" => "recalled, not seen in print; never called tested".to_owned(),
        "estimate" => "our own first guess".to_owned(),
        other => other.to_owned(),
    }
}

fn lay_out_ingredient(leaf: &mut Leaf, ingredient: &IngredientOnFile) {
    const AMOUNT: usize = 24;
    let prep = if ingredient.prep.is_empty() { String::new() } else { format!(", {}", ingredient.prep) };
    let held = if ingredient.safety_critical { " *" } else { "" };
    let name = wrap(&format!("{}{prep}{held}", ingredient.name), BESIDE - AMOUNT - 2);
    let amount = wrap(&ingredient.amount, AMOUNT);
    for at in 0..name.len().max(amount.len()) {
        let cell = |lines: &[String]| lines.get(at).cloned().unwrap_or_default();
        leaf.set((to_the_right(&cell(&amount), AMOUNT) + "  " + &cell(&name)).trim_end());
    }
}

fn lay_out_step(leaf: &mut Leaf, step: &StepOnFile) {
    let parts = [step.act.as_str(), &step.minutes, &step.heat];
    let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    leaf.line(&step.order.to_string(), &as_sentence(&said.join(", ")));
    if !step.note.is_empty() {
        leaf.under(&step.note);
    }
}

fn lay_out_process(sheet: &ProcessSheet) -> String {
    let names: Vec<String> = sheet.names.iter().map(|name| capitalize(name)).collect();
    let about = format!("{}, {}.", sheet.id, sheet.group);
    let mut leaf = Leaf::head(&names.join("; "), &[about]);
    let mut last: Option<&ProcessRow> = None;
    for row in &sheet.rows {
        let same = last.is_some_and(|last| {
            last.canner == row.canner
                && last.pack == row.pack
                && last.jar == row.jar
                && last.source == row.source
        });
        if !same {
            leaf.section(&format!("{}, {} pack, {}", capitalize(&row.canner), row.pack, row.jar));
            leaf.under(&row.source);
        }
        let figure = row.minutes.map_or_else(|| "-".to_owned(), |minutes| format!("{minutes} min"));
        let psi = row.psi.map(|psi| format!("{psi} psi, ")).unwrap_or_default();
        let unverified = if row.minutes.is_none() { "; on file, not verified: look it up there" } else { "" };
        leaf.line(&figure, &format!("{psi}{}{unverified}", row.band));
        last = Some(row);
    }
    leaf.finish()
}

fn lay_out_produce(sheet: &ProduceSheet) -> String {
    let mut leaf = Leaf::head(
        &capitalize(&sheet.name),
        &[format!("{}.", [std::slice::from_ref(&sheet.id), sheet.also.as_slice()].concat().join(", "))],
    );
    for (title, facts) in [("Weighs", &sheet.weighs), ("Is eaten", &sheet.edible), ("Keeps", &sheet.keeps)] {
        if facts.is_empty() {
            continue;
        }
        leaf.section(title);
        for (at, fact) in facts.iter().enumerate() {
            leaf.line("", &as_sentence(&fact.says));
            // Facts of one place in a row name it once.
            let next = facts.get(at + 1).map_or("", |next| &next.source);
            if fact.source != next {
                leaf.under(&format!("{} ({})", fact.source, word_basis(&fact.basis)));
            }
        }
    }
    if !sheet.formulas.is_empty() {
        leaf.section("Formulas that take it");
        leaf.line(&sheet.formulas.len().to_string(), &sheet.formulas.join(", "));
    }
    leaf.finish()
}

fn lay_out_source(sheet: &SourceSheet) -> String {
    let mut leaf = Leaf::head(&sheet.title, std::slice::from_ref(&sheet.id));
    leaf.section("How far it is trusted");
    leaf.line(&sheet.rank, &as_sentence(&sheet.why));
    for (title, ids) in [("Formulas", &sheet.formulas), ("Processes", &sheet.processes)] {
        if !ids.is_empty() {
            leaf.section(title);
            leaf.line(&ids.len().to_string(), &ids.join(", "));
        }
    }
    leaf.finish()
}
