//! `stillroom dried`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{DriedAnswer, DriedVerdict, DriedWords, look_at_dried, say_dried};

use super::{finish, lay_out_end, lay_out_not_understood, lay_out_section, read_now};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom dried --kind fruit --jarred today
  stillroom dried --kind fruit --outdoors
  stillroom dried \"drops on the lid\" --kind fruit
  stillroom dried mould

Exit code 0 when it is dried on, conditioned or stored, 3 when it is thrown away or nothing printed decides.";

/// Ask about dried food: pasteurizing, conditioning, drops in the jar
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct DriedCommand {
    /// What you see, in your own words; may be given several times
    #[arg(value_name = "WORDS")]
    seen: Vec<String>,
    /// The kind of food: fruit, vegetable, herb
    #[arg(long)]
    kind: Option<String>,
    /// It was dried in the sun or the air
    #[arg(long)]
    outdoors: bool,
    /// The day it went into the jar to be conditioned: today, Saturday, 2026-09-12
    #[arg(long, value_name = "DAY")]
    jarred: Option<String>,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print dried/1 as JSON
    #[arg(long)]
    json: bool,
}

impl DriedCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = DriedWords {
            seen: self.seen.clone(),
            kind: self.kind.clone(),
            outdoors: self.outdoors,
            jarred: self.jarred.clone(),
        };
        let answer =
            look_at_dried(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &DriedAnswer) -> String {
    let kind = if answer.kind == "all" { "food of any kind" } else { answer.kind };
    let mut leaf = Leaf::head(&say_dried(answer), &[format!("Dried {kind}; now {}.", answer.now.in_words())]);
    let mut cited = Cited::new(almanac);
    lay_out_section(&mut leaf, &mut cited, "Because", &answer.because);
    lay_out_not_understood(&mut leaf, &answer.not_understood);
    if answer.verdict != DriedVerdict::Discard {
        lay_out_section(&mut leaf, &mut cited, "Pasteurize it first", &answer.pasteurize);
        lay_out_section(&mut leaf, &mut cited, "Condition it: the longest line is used", &answer.condition);
        lay_out_section(&mut leaf, &mut cited, "How you know that it is dry", &answer.dryness);
        lay_out_section(&mut leaf, &mut cited, "Keep it: a matter of quality", &answer.store);
    } else {
        lay_out_section(&mut leaf, &mut cited, "What stood beside it", &answer.pasteurize);
    }
    lay_out_end(leaf, &cited, answer.is_refusal())
}
