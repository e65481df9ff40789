//! `stillroom clear`.

use almanac::{Almanac, Verdict};
use anyhow::{Context, Result};
use batch::clear::{Clearance, ClearedLine, Instead, Reason};
use clap::Args;
use kitchen::ask::{self, ClearAnswer, ClearWords};
use kitchen::house::fill_in_house;
use kitchen::wording::{as_sentence, say_acid, say_heating, say_question, say_row};
use measure::{write_altitude, write_length_in};

use crate::almanac::load_almanac;
use crate::canners::read_house_file;
use crate::cited::{Cited, lay_out_sources};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom clear --food tomatoes-crushed --pack hot --jar pint \\
      --canner boiling-water --altitude \"1,200 ft\"
  stillroom clear --food beans-snap --pack raw --jar quart \\
      --canner dial --gauge-error \"+0.5 psi\" --altitude 410m
  stillroom clear --food \"pumpkin puree\"

Exit code 0 when it is tested, 3 when it is not tested or must not be done, 2 when the question is wrong.";

/// Ask whether a food may be processed so: tested, not tested, do not.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct ClearCommand {
    /// The food: an id of the almanac or a name
    #[arg(long)]
    food: String,
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
    /// The house file, for the altitude and the gauge of a canner it names
    #[arg(long, value_name = "FILE")]
    house: Option<std::path::PathBuf>,
    /// Print clearance/1 as JSON
    #[arg(long)]
    json: bool,
}

impl ClearCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = match &self.house {
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

    fn words(&self) -> ClearWords {
        ClearWords {
            food: self.food.clone(),
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
        ClearAnswer::Refused(food) => {
            let refused = &food.refused;
            let mut leaf = head(refused.verdict, &[as_sentence(&food.words.food)]);
            lay_out_reasons(&mut leaf, &refused.because);
            let mut cited = Cited::new(almanac);
            lay_out_instead(&mut leaf, &mut cited, &refused.instead);
            lay_out_sources(&mut leaf, &cited.list());
            leaf.finish()
        }
    }
}

fn head(verdict: Verdict, lines: &[String]) -> Leaf {
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
    lay_out_reasons(&mut leaf, &clearance.because);
    if let Some(entered) = &clearance.entered {
        leaf.section("Printed, as you entered it");
        leaf.line("", &format!("{}, {}, page {}.", entered.title, entered.year, entered.page));
        for band in &entered.bands {
            let from = write_altitude(band.band.min);
            let to = band
                .band
                .max
                .map_or_else(|| "and up".to_owned(), |max| format!("to {}", write_altitude(max)));
            leaf.line(&format!("{} min", band.minutes.0), &format!("{from} {to}"));
        }
    }
    lay_out_instead(&mut leaf, &mut cited, &clearance.instead);
    if !clearance.riders.is_empty() {
        leaf.section("Mind");
        for rider in &clearance.riders {
            leaf.gap();
            leaf.line("", &as_sentence(&rider.text));
            if let Some(source) = &rider.source {
                leaf.under(&cited.mark_written(source));
            }
        }
    }
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
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

fn lay_out_reasons(leaf: &mut Leaf, because: &[Reason]) {
    if because.is_empty() {
        return;
    }
    leaf.section("Because");
    for reason in because {
        leaf.line("", &as_sentence(&reason.text));
    }
}

fn lay_out_instead(leaf: &mut Leaf, cited: &mut Cited<'_>, instead: &[Instead]) {
    if instead.is_empty() {
        return;
    }
    leaf.section("Instead");
    for offer in instead {
        leaf.line("", &as_sentence(&offer.text));
        if let Some(source) = &offer.source {
            leaf.under(&cited.mark_written(source));
        }
    }
}
