//! `stillroom reckon why`: heat going into one jar during a printed process.

use anyhow::{Context, Result};
use clap::Args;
use kitchen::ask::ClearWords;
use kitchen::reckon::{HeatHistory, WhyError, WhyWords, explain_heat};
use kitchen::wording::{as_sentence, capitalize};

use super::chart::draw;
use super::laid_out::{cite, lay_out_notes};
use crate::almanac::load_almanac;
use crate::cited::{Cited, lay_out_sources};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom reckon why --food tomatoes-crushed --pack hot --jar pint \\
      --canner boiling-water --altitude \"1,200 ft\"

It explains a printed process and can never make one. Exit code 3 when no process is printed for the question.";

/// Heat going into one jar during a printed process, and why the minutes are what they are
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct WhyCommand {
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
    /// The food when the lid goes on: 180F, 82C
    #[arg(long, value_name = "TEMPERATURE")]
    filled_at: Option<String>,
    /// Print heat-history/1 as JSON
    #[arg(long)]
    json: bool,
}

impl WhyCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = WhyWords {
            clear: ClearWords {
                food: self.food.clone(),
                pack: self.pack.clone(),
                jar: self.jar.clone(),
                canner: self.canner.clone(),
                altitude: self.altitude.clone(),
                gauge_error: self.gauge_error.clone(),
                gauge_tested: self.gauge_tested.clone(),
                with: None,
                changes: Vec::new(),
            },
            filled_at: self.filled_at.clone(),
        };
        let history = match explain_heat(&almanac, &words) {
            Ok(history) => history,
            Err(error @ (WhyError::NothingPrinted { .. } | WhyError::JarNotMeasured { .. }))
                if !self.json =>
            {
                let said = error.to_string().replace("; hint: ", ". Instead: ");
                return Ok(Answered::refusing(as_sentence(&said) + "\n"));
            }
            Err(error) => return Err(wrong_question(error)),
        };
        let text = if self.json {
            serde_json::to_string_pretty(&history).context("the answer cannot be written as JSON")? + "\n"
        } else {
            lay_out(&almanac, &history)
        };
        Ok(Answered::with(text))
    }
}

fn lay_out(almanac: &almanac::Almanac, history: &HeatHistory) -> String {
    let printed = match history.printed_psi {
        Some(psi) => format!("Printed: {} minutes at {psi} psi.", history.printed_minutes),
        None => format!("Printed: {} minutes.", history.printed_minutes),
    };
    let mut leaf = Leaf::head(
        history.explains_only,
        &[
            capitalize(&history.question),
            printed,
            "Minutes are counted from the full boil, or from pressure.".to_owned(),
        ],
    );
    leaf.section("The middle of this jar");
    for (minute, picture) in draw(&history.lines) {
        leaf.line_set(&minute, &picture);
    }
    leaf.line("", "█ the middle, likeliest; ░ where nine in ten kitchens lie; · what the jar stands in");
    leaf.section("Why the minutes are what they are");
    let said: Vec<String> = history.compared.iter().map(|note| as_sentence(&note.text)).collect();
    leaf.each(&said);
    lay_out_notes(&mut leaf, &history.notes);
    let mut cited = Cited::new(almanac);
    let places: Vec<(String, String)> =
        history.sources.iter().map(|source| (source.basis.clone(), cite(&mut cited, source))).collect();
    leaf.section("Resting on");
    for (basis, place) in places {
        leaf.line(&basis, &place);
    }
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}
