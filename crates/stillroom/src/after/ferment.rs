//! `stillroom ferment`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{FermentAnswer, FermentPart, FermentWords, look_at_ferment, say_ferment};
use kitchen::wording::capitalize;

use super::{finish, lay_out_end, lay_out_not_understood, lay_out_told, read_now, word_day_or_moment};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom ferment sauerkraut --salt \"2.25 %\" --temp \"70 F\" --started today
  stillroom ferment kraut --sign \"white scum on top\"
  stillroom ferment kimchi --ph 4.8
  stillroom ferment \"pepper mash\"

Exit code 0 when nothing bars it, 3 when it is thrown away, must not be done or is not tested.";

/// Ask about a ferment: salt, warmth, time, what grows on it, where it goes
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct FermentCommand {
    /// What ferments: sauerkraut, fermented dill pickles, kimchi
    product: String,
    /// Its salt as a share of the weight: "2.25 %"
    #[arg(long, value_name = "SHARE")]
    salt: Option<String>,
    /// How warm it stands: "70 F", "21 C"
    #[arg(long, allow_hyphen_values = true)]
    temp: Option<String>,
    /// The day it was begun: today, Saturday, 2026-09-12
    #[arg(long, value_name = "DAY")]
    started: Option<String>,
    /// What you see on it, in your own words; may be given again
    #[arg(long = "sign", value_name = "WORDS")]
    seen: Vec<String>,
    /// A pH that you measured; it may close and opens nothing
    #[arg(long)]
    ph: Option<String>,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print ferment/1 as JSON
    #[arg(long)]
    json: bool,
}

impl FermentCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = FermentWords {
            product: self.product.clone(),
            salt: self.salt.clone(),
            temp: self.temp.clone(),
            started: self.started.clone(),
            seen: self.seen.clone(),
            ph: self.ph.clone(),
        };
        let answer =
            look_at_ferment(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &FermentAnswer) -> String {
    let mut leaf = Leaf::head(
        say_ferment(answer),
        &[format!("{}; now {}.", capitalize(&answer.product), answer.now.in_words())],
    );
    let mut cited = Cited::new(almanac);
    for part in &answer.parts {
        lay_out_part(&mut leaf, &mut cited, part, answer);
    }
    lay_out_not_understood(&mut leaf, &answer.not_understood);
    lay_out_end(leaf, &cited, answer.is_refusal())
}

fn lay_out_part(leaf: &mut Leaf, cited: &mut Cited<'_>, part: &FermentPart, answer: &FermentAnswer) {
    let title = match part.part {
        "salt" => "Salt",
        "temperature" => "Warmth",
        "time" => "Time",
        "sign" => "What you see",
        "ph" => "The pH reading",
        "keep" => "Where it goes",
        "gap" => "Looked for and not found",
        _ => "The shelf",
    };
    let verdict = match part.verdict {
        "discard" => ": throw it away",
        "do-not" => ": do not",
        "not-tested" => ": not tested",
        "tested" => ": as printed",
        _ => "",
    };
    leaf.section(&format!("{title}{verdict}"));
    if let Some(text) = &part.text {
        leaf.line("", text);
    }
    if let ("time", Some((from, by))) = (part.part, answer.done_from.as_ref().zip(answer.done_by.as_ref())) {
        leaf.line(
            "",
            &format!(
                "Done from {} to {}, when the bubbles have stopped.",
                word_day_or_moment(from),
                word_day_or_moment(by)
            ),
        );
    }
    lay_out_told(leaf, cited, &part.told);
}
