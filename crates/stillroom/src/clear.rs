//! `stillroom clear`.

use almanac::{Almanac, Verdict};
use anyhow::{Context, Result};
use batch::clear::{ChangesCleared, Clearance, ClearedLine, Instead, Reason, Rider};
use clap::Args;
use kitchen::ask::{self, ClearAnswer, ClearWords};
use kitchen::copied::clear_copied;
use kitchen::house::fill_in_house;
use kitchen::wording::{as_sentence, capitalize, say_acid, say_heating, say_question, say_row};
use measure::write_length_in;

use crate::almanac::load_almanac;
use crate::canners::read_house_file;
use crate::cited::{Cited, lay_out_sources};
use crate::copied::{lay_out_answer, write_answer};
use crate::ending::{Answered, wrong_question};
use crate::house::HouseFile;
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom clear --food tomatoes-crushed --pack hot --jar pint \\
      --canner boiling-water --altitude \"1,200 ft\"
  stillroom clear --food beans-snap --pack raw --jar quart \\
      --canner dial --gauge-error \"+0.5 psi\" --altitude 410m
  stillroom clear --food \"pumpkin puree\"
  stillroom clear --with chile_salsa --change \"less vinegar\"

Exit code 0 when it is tested, 3 when it is not tested or must not be done, 2 when the question is wrong.";

/// Ask whether a food may be processed so: tested, not tested, do not.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct ClearCommand {
    /// The food: an id of the almanac or a name; with --with, that of the formula
    #[arg(long, required_unless_present_any = ["with", "copied"])]
    food: Option<String>,
    /// How it goes into the jar: hot, raw
    #[arg(long)]
    pack: Option<String>,
    /// The jar: half-pint, pint, quart ...
    #[arg(long)]
    jar: Option<String>,
    /// The canner: boiling-water, steam, dial, weighted
    #[arg(long)]
    canner: Option<String>,
    /// The height of the kitchen above the sea: "1,200 ft", 410m
    #[arg(long, allow_hyphen_values = true)]
    altitude: Option<String>,
    /// How far the dial reads high (+) or low (-): "+0.5 psi"
    #[arg(long, value_name = "ERROR", allow_hyphen_values = true)]
    gauge_error: Option<String>,
    /// When the dial was tested: this-year, overdue, never
    #[arg(long, value_name = "WHEN")]
    gauge_tested: Option<String>,
    /// The formula it is made by: an id of the almanac or a name
    #[arg(long, value_name = "FORMULA")]
    with: Option<String>,
    /// What is to be done otherwise, in your own words; may be given again
    #[arg(long = "change", value_name = "WORDS")]
    changes: Vec<String>,
    /// A formula you copied in, as the house file names it
    #[arg(long, value_name = "NAME", conflicts_with_all = ["food", "with", "changes"])]
    copied: Option<String>,
    #[command(flatten)]
    house: HouseFile,
    /// Print clearance/1 as JSON
    #[arg(long)]
    json: bool,
}

impl ClearCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        if let Some(name) = &self.copied {
            return self.run_copied(&almanac, name);
        }
        let words = match self.house.named() {
            None => self.words(),
            Some(path) => {
                let today = jiff::ZonedDateTime::now().date();
                fill_in_house(self.words(), &read_house_file(path, today, &almanac)?, today)
            }
        };
        let answer = ask::clear(&almanac, &words).map_err(wrong_question)?;
        let text = if self.json {
            serde_json::to_string_pretty(&answer).context("the answer cannot be written as JSON")? + "\n"
        } else {
            lay_out(&almanac, &answer)
        };
        Ok(Answered { text, refused: answer.verdict() != Verdict::Tested })
    }

    fn run_copied(&self, almanac: &Almanac, name: &str) -> Result<Answered> {
        let formulas = self.house.read_formulas(almanac)?;
        let answer = clear_copied(almanac, &formulas, name, &self.words()).map_err(wrong_question)?;
        let text = if self.json { write_answer(&answer)? } else { lay_out_answer(almanac, &answer) };
        // Never tested by us, whatever it says.
        Ok(Answered::refusing(text))
    }

    fn words(&self) -> ClearWords {
        ClearWords {
            food: self.food.clone().unwrap_or_default(),
            pack: self.pack.clone(),
            jar: self.jar.clone(),
            canner: self.canner.clone(),
            altitude: self.altitude.clone(),
            gauge_error: self.gauge_error.clone(),
            gauge_tested: self.gauge_tested.clone(),
            with: self.with.clone(),
            changes: self.changes.clone(),
        }
    }
}

fn lay_out(almanac: &Almanac, answer: &ClearAnswer) -> String {
    match answer {
        ClearAnswer::Judged(clearance) => lay_out_clearance(almanac, clearance),
        ClearAnswer::Changes(changes) => lay_out_changes(almanac, changes),
        ClearAnswer::Refused(food) => {
            let refused = &food.refused;
            let named = Some(&food.words.food).filter(|food| !food.is_empty()).or(food.words.with.as_ref());
            let mut leaf = head(refused.verdict, &[as_sentence(named.map_or("", |named| named))]);
            let mut cited = Cited::new(almanac);
            lay_out_reasons(&mut leaf, &mut cited, &refused.because);
            lay_out_instead(&mut leaf, &mut cited, &refused.instead);
            say_whom_to_ask(&mut leaf, refused.verdict);
            lay_out_sources(&mut leaf, &cited.list());
            leaf.finish()
        }
    }
}

pub(crate) fn head(verdict: Verdict, lines: &[String]) -> Leaf {
    let word = match verdict {
        Verdict::Tested => "Tested.",
        Verdict::NotTested => "Not tested.",
        Verdict::DoNot => "Do not.",
    };
    Leaf::head(word, lines)
}

fn lay_out_clearance(almanac: &Almanac, clearance: &Clearance) -> String {
    let mut leaf = head(clearance.verdict, &[say_question(almanac, clearance)]);
    let mut cited = Cited::new(almanac);
    if !clearance.processes.is_empty() {
        leaf.section(if clearance.processes.len() > 1 { "Any one of these, whole" } else { "The process" });
        for line in &clearance.processes {
            leaf.gap();
            lay_out_process(&mut leaf, &mut cited, line);
        }
    }
    if let Some(acid) = &clearance.acid {
        leaf.gap();
        leaf.line("Acid", &say_acid(acid));
        leaf.under(&cited.mark(&acid.rule().citation));
    }
    lay_out_reasons(&mut leaf, &mut cited, &clearance.because);
    lay_out_instead(&mut leaf, &mut cited, &clearance.instead);
    lay_out_riders(&mut leaf, &mut cited, "Mind", &clearance.riders);
    say_whom_to_ask(&mut leaf, clearance.verdict);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

/// Each change under its own verdict; the strictest stands at the head.
fn lay_out_changes(almanac: &Almanac, answer: &ChangesCleared) -> String {
    let formula = almanac.formula(&answer.question.formula);
    let name = formula.map_or(answer.question.formula.as_str(), |formula| &*formula.name);
    let said = |verdict: Verdict| answer.changes.iter().any(|change| change.verdict == verdict);
    let mixed = said(Verdict::Tested) && answer.verdict != Verdict::Tested;
    let note = if mixed { " Not every change comes to that; the strictest word stands." } else { "" };
    let mut leaf = head(answer.verdict, &[format!("{}, changed.{note}", capitalize(name))]);
    let mut cited = Cited::new(almanac);
    for change in &answer.changes {
        leaf.section(&format!("{}: {}", capitalize(&change.said), verdict_word(change.verdict)));
        // The change stands in the heading already.
        let repeated = format!("{:?}: ", change.said);
        let allowed = change.allowed.iter().map(|allowed| (&allowed.text, &allowed.source));
        let because = change.because.iter().map(|reason| (&reason.text, &reason.source));
        for (text, source) in allowed.chain(because) {
            let text = text.strip_prefix(&repeated).unwrap_or(text);
            said_with_source(&mut leaf, &mut cited, text, source.as_deref());
        }
        lay_out_instead(&mut leaf, &mut cited, &change.instead);
    }
    let of_formula = |reason: &&Reason| !answer.changes.iter().any(|change| change.because.contains(reason));
    let more: Vec<Reason> = answer.because.iter().filter(of_formula).cloned().collect();
    lay_out_reasons(&mut leaf, &mut cited, &more);
    let of_all = |rider: &&Rider| !answer.changes.iter().any(|change| change.allowed.contains(rider));
    let riders: Vec<Rider> = answer.riders.iter().filter(of_all).cloned().collect();
    lay_out_riders(&mut leaf, &mut cited, "Mind", &riders);
    say_whom_to_ask(&mut leaf, answer.verdict);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

/// A refusal ends with whom to ask.
pub(crate) fn say_whom_to_ask(leaf: &mut Leaf, verdict: Verdict) {
    if verdict != Verdict::Tested {
        leaf.section("Whom to ask");
        leaf.line(
            "",
            "Your local extension service or health authority. Until they answer, keep it cold or freeze it.",
        );
    }
}

fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Tested => "tested",
        Verdict::NotTested => "not tested",
        Verdict::DoNot => "do not",
    }
}

pub(crate) fn lay_out_riders(leaf: &mut Leaf, cited: &mut Cited<'_>, title: &str, riders: &[Rider]) {
    if riders.is_empty() {
        return;
    }
    leaf.section(title);
    for rider in riders {
        leaf.gap();
        said_with_source(leaf, cited, &rider.text, rider.source.as_deref());
    }
}

fn said_with_source(leaf: &mut Leaf, cited: &mut Cited<'_>, text: &str, source: Option<&str>) {
    leaf.line("", &as_sentence(text));
    if let Some(source) = source {
        leaf.under(&cited.mark_written(source));
    }
}

fn lay_out_process(leaf: &mut Leaf, cited: &mut Cited<'_>, line: &ClearedLine) {
    let process = line.process();
    leaf.line(&format!("{} min", process.minutes().0), &format!("{}.", say_heating(line)));
    if let Some(rest) = process.rest() {
        leaf.line(&format!("{} min", rest.0), "Then rest before the jars are lifted.");
    }
    leaf.line("Headspace", &write_length_in(process.headspace()));
    leaf.under(&say_row(process));
    leaf.under(&cited.mark(process.citation()));
}

pub(crate) fn lay_out_reasons(leaf: &mut Leaf, cited: &mut Cited<'_>, because: &[Reason]) {
    if because.is_empty() {
        return;
    }
    leaf.section("Because");
    for reason in because {
        said_with_source(leaf, cited, &reason.text, reason.source.as_deref());
    }
}

pub(crate) fn lay_out_instead(leaf: &mut Leaf, cited: &mut Cited<'_>, instead: &[Instead]) {
    if instead.is_empty() {
        return;
    }
    leaf.section("Instead");
    for offer in instead {
        said_with_source(leaf, cited, &offer.text, offer.source.as_deref());
    }
}
