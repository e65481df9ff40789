//! `stillroom copied` and the answer of `stillroom clear --copied`.

use almanac::Almanac;
use anyhow::{Context, Result};
use batch::clear::{CopiedCleared, Entered};
use clap::Args;
use kitchen::copied::{CopiedAnswer, HouseCopy, HouseFormulas, PlacedFault};
use kitchen::wording::{as_sentence, capitalize, name_canner, say_acid};
use measure::{write_altitude, write_length_in, write_pressure};
use serde_json::{Value, json};

use crate::almanac::load_almanac;
use crate::cited::{Cited, lay_out_sources};
use crate::clear::{head, lay_out_instead, lay_out_reasons, lay_out_riders, say_whom_to_ask};
use crate::ending::Answered;
use crate::house::HouseFile;
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom copied
  stillroom copied --house house.toml --json

How one of them is processed: stillroom clear --copied \"porch relish\" --pack hot --jar pint \\
    --canner boiling-water --altitude \"1,200 ft\"

Each [[copied]] formula and each [[confirmed]] row is checked by every rule. Exit code 0 when all meet
them, 3 when a rule refuses one, 2 when the file cannot be read.";

/// Check the formulas you copied from your own publications, as they stand in the house file.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct CopiedCommand {
    #[command(flatten)]
    house: HouseFile,
    /// Print the list as JSON
    #[arg(long)]
    json: bool,
}

impl CopiedCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let formulas = self.house.read_formulas(&almanac)?;
        let refused = formulas.copied.iter().any(|copied| copied.checked.is_err());
        let text = if self.json {
            let list: Vec<Value> = formulas.copied.iter().map(write_copy).collect();
            serde_json::to_string_pretty(&json!({ "format": "copied/1", "copied": list }))
                .context("the list cannot be written as JSON")?
                + "\n"
        } else {
            lay_out_list(&almanac, &self.house, &formulas)
        };
        Ok(Answered { text, refused })
    }
}

fn write_copy(copied: &HouseCopy) -> Value {
    let faults = copied.checked.as_ref().err().map_or(&[][..], Vec::as_slice);
    let refused: Vec<Value> = faults
        .iter()
        .map(|PlacedFault { line, fault }| {
            json!({ "line": line, "verdict": fault.problem.verdict().as_str(), "text": fault.problem.to_string(),
                    "instead": fault.problem.hint(), "source": fault.source })
        })
        .collect();
    json!({ "name": copied.name, "is_row": copied.is_row, "line": copied.line, "title": copied.copy.title,
            "year": copied.copy.year, "page": copied.copy.page, "issuer": copied.copy.issuer.as_str(),
            "refused": refused })
}

fn lay_out_list(almanac: &Almanac, house: &HouseFile, formulas: &HouseFormulas) -> String {
    let count = formulas.copied.len();
    let about = match count {
        0 => "Nothing was copied in. Write a [[copied]] formula into the file as the guide shows.".to_owned(),
        1 => "One entry. It is never called tested by us.".to_owned(),
        _ => format!("{count} entries. None of them is ever called tested by us."),
    };
    let mut leaf = Leaf::head(&format!("Copied in: {}", house.path().display()), &[about]);
    let mut cited = Cited::new(almanac);
    for copied in &formulas.copied {
        leaf.section(&capitalize(&copied.name));
        leaf.line(&format!("line {}", copied.line), &as_sentence(&printed_in(copied)));
        lay_out_check(&mut leaf, &mut cited, copied);
    }
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

fn printed_in(copied: &HouseCopy) -> String {
    let (title, year, page) = (&copied.copy.title, copied.copy.year, &copied.copy.page);
    format!("not tested by us; printed, as you entered it, in {title}, {year}, p. {page}")
}

fn lay_out_check(leaf: &mut Leaf, cited: &mut Cited<'_>, copied: &HouseCopy) {
    match &copied.checked {
        Ok(_) => {
            leaf.line("", "It breaks no rule on file. Ask `stillroom clear --copied` how it is processed.");
        }
        Err(faults) => {
            for PlacedFault { line, fault } in faults {
                leaf.line(&format!("line {line}"), &as_sentence(&fault.problem.to_string()));
                if let Some(source) = &fault.source {
                    leaf.under(&cited.mark_written(source));
                }
                leaf.under(&as_sentence(&fault.problem.hint()));
            }
        }
    }
}

/// The answer about one copied formula, for people.
pub(crate) fn lay_out_answer(almanac: &Almanac, answer: &CopiedAnswer) -> String {
    match answer {
        CopiedAnswer::Cleared(cleared) => lay_out_cleared(almanac, cleared),
        CopiedAnswer::Refused(copied) => {
            let mut leaf = head(verdict_of(copied), &[format!("{}, copied in.", capitalize(&copied.name))]);
            let mut cited = Cited::new(almanac);
            leaf.section("Because");
            lay_out_check(&mut leaf, &mut cited, copied);
            say_whom_to_ask(&mut leaf, verdict_of(copied));
            lay_out_sources(&mut leaf, &cited.list());
            leaf.finish()
        }
    }
}

/// The answer about one copied formula, for programs.
pub(crate) fn write_answer(answer: &CopiedAnswer) -> Result<String> {
    let value = match answer {
        CopiedAnswer::Cleared(cleared) => serde_json::to_value(cleared),
        CopiedAnswer::Refused(copied) => Ok(write_refused(copied)),
    };
    let value = value.context("the answer cannot be written as JSON")?;
    Ok(serde_json::to_string_pretty(&value).context("the answer cannot be written as JSON")? + "\n")
}

fn write_refused(copied: &HouseCopy) -> Value {
    let faults = copied.checked.as_ref().err().map_or(&[][..], Vec::as_slice);
    let because: Vec<Value> = faults
        .iter()
        .map(|PlacedFault { line, fault }| {
            json!({ "code": fault.problem.code(), "text": format!("line {line}: {}", fault.problem),
                    "source": fault.source })
        })
        .collect();
    let instead: Vec<Value> = faults
        .iter()
        .map(|placed| json!({ "what": "instead", "text": placed.fault.problem.hint(), "source": null }))
        .collect();
    json!({ "format": "clearance/1", "judged": "copied", "verdict": verdict_of(copied).as_str(),
            "question": { "food": copied.name, "pack": null, "jar": null, "canner": null, "altitude_ft": null,
                          "gauge_error_psi": null, "with": null, "changes": [] },
            "processes": [], "acid": null, "riders": [], "because": because, "instead": instead, "changes": [],
            "entered": null, "sources": [] })
}

/// The strictest of the rules that refuse it.
fn verdict_of(copied: &HouseCopy) -> almanac::Verdict {
    let faults = copied.checked.as_ref().err().map_or(&[][..], Vec::as_slice);
    let strictest = faults.iter().map(|placed| placed.fault.problem.verdict()).max();
    strictest.unwrap_or(almanac::Verdict::NotTested)
}

fn lay_out_cleared(almanac: &Almanac, cleared: &CopiedCleared) -> String {
    let asked = &cleared.question;
    let question = format!(
        "{}, copied in; {} pack, {} jars, {}, {}.",
        capitalize(&cleared.name),
        asked.pack,
        asked.jar,
        name_canner(asked.canner),
        write_altitude(asked.altitude)
    );
    let mut leaf = head(cleared.verdict, &[question]);
    let mut cited = Cited::new(almanac);
    if let Some(entered) = &cleared.entered {
        lay_out_entered(&mut leaf, entered);
    } else {
        lay_out_reasons(&mut leaf, &mut cited, &cleared.because);
    }
    if let Some(acid) = &cleared.acid {
        leaf.gap();
        leaf.line("Acid", &say_acid(acid));
        leaf.under(&cited.mark(&acid.rule().citation));
    }
    lay_out_instead(&mut leaf, &mut cited, &cleared.instead);
    lay_out_riders(&mut leaf, &mut cited, "Mind", &cleared.riders);
    say_whom_to_ask(&mut leaf, cleared.verdict);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

fn lay_out_entered(leaf: &mut Leaf, entered: &Entered) {
    leaf.section("As you entered it");
    leaf.line("", &as_sentence(&entered.words()));
    leaf.gap();
    let band = entered.band();
    let how = match (band.pressure(), band.hold()) {
        (Some(printed), Some(hold)) if printed != hold => {
            format!(
                "Hold the dial at {} for its error; {} was entered.",
                write_pressure(hold),
                write_pressure(printed)
            )
        }
        (Some(printed), _) => format!("At {}.", write_pressure(printed)),
        (None, _) => "Counted as the rules below say.".to_owned(),
    };
    leaf.line(&format!("{} min", band.minutes().0), &how);
    if let Some(headspace) = band.headspace() {
        leaf.line("Headspace", &write_length_in(headspace));
    }
    let heights = band.band();
    let to = heights.max.map_or_else(|| "and up".to_owned(), |max| format!("to {}", write_altitude(max)));
    leaf.under(&format!("The row you entered: {} {to}.", write_altitude(heights.min)));
}
