//! `stillroom cool`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{CoolingAnswer, CoolingWords, plan_cooling, say_cooling, say_mark};

use super::{finish, lay_out_end, lay_out_section, lay_out_told, read_now};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom cool --off \"18:20\"
  stillroom cool --off \"18:20\" --temp \"95 F\"

Exit code 0 while the pot is on its way, 3 when it missed a mark.";

/// Ask by when a large pot must be cold
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct CoolCommand {
    /// When it came off the heat: "18:20", "yesterday 18:20", "2026-09-12 18:20"
    #[arg(long, value_name = "WHEN")]
    off: String,
    /// What a thermometer in the middle of it reads now: "95 F"
    #[arg(long, allow_hyphen_values = true)]
    temp: Option<String>,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print cooling/1 as JSON
    #[arg(long)]
    json: bool,
}

impl CoolCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = CoolingWords { off: self.off.clone(), temp: self.temp.clone() };
        let answer =
            plan_cooling(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &CoolingAnswer) -> String {
    let said = format!("Off the heat {}; now {}.", answer.off.in_words(), answer.now.in_words());
    let mut leaf = Leaf::head(&say_cooling(answer), &[said]);
    let mut cited = Cited::new(almanac);
    if !answer.marks.is_empty() {
        leaf.section("The marks, counted from the moment it came off the heat");
        for mark in &answer.marks {
            leaf.named("", &say_mark(mark));
            lay_out_told(&mut leaf, &mut cited, std::slice::from_ref(&mark.told));
        }
    }
    lay_out_section(&mut leaf, &mut cited, "What helps", &answer.helps);
    lay_out_section(&mut leaf, &mut cited, "What was tried and was too slow", &answer.fails);
    lay_out_section(&mut leaf, &mut cited, "Why", &answer.why);
    lay_out_end(leaf, &cited, answer.is_refusal())
}
