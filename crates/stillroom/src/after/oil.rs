//! `stillroom oil`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{OilAnswer, OilWords, date_oil, say_oil};
use kitchen::wording::capitalize;

use super::{finish, lay_out_end, lay_out_not_understood, lay_out_section, read_now, word_day_or_moment};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom oil garlic --made today
  stillroom oil \"hot peppers\" --made yesterday
  stillroom oil pesto --made today --stood-warm

Exit code 0 while it may stay in the refrigerator or be frozen, 3 when it is thrown away.";

/// Ask how long garlic, herbs or peppers in oil may stay in the refrigerator
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct OilCommand {
    /// What is in the oil
    food: String,
    /// The day it was made: today, yesterday, Saturday, 2026-09-12
    #[arg(long, value_name = "DAY")]
    made: Option<String>,
    /// It stood at room temperature
    #[arg(long)]
    stood_warm: bool,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print oil/1 as JSON
    #[arg(long)]
    json: bool,
}

impl OilCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words =
            OilWords { food: self.food.clone(), made: self.made.clone(), stood_warm: self.stood_warm };
        let answer = date_oil(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &OilAnswer) -> String {
    let made = answer.made.as_ref().map_or_else(
        || "nobody says when it was made, and it counts as too old".to_owned(),
        |made| format!("made {}, which is the first day", word_day_or_moment(made)),
    );
    let said =
        format!("{} in oil, {made}; now {}.", capitalize(&answer.question.food), answer.now.in_words());
    let mut leaf = Leaf::head(&say_oil(answer), &[said]);
    let mut cited = Cited::new(almanac);
    lay_out_section(
        &mut leaf,
        &mut cited,
        "The strictest line is used, the others stand beside it",
        &answer.limits,
    );
    lay_out_section(&mut leaf, &mut cited, "To keep it longer", &answer.freeze);
    lay_out_section(&mut leaf, &mut cited, "Never", &answer.never);
    lay_out_section(&mut leaf, &mut cited, "Longer times you may meet; not used", &answer.longer);
    lay_out_section(&mut leaf, &mut cited, "Printed elsewhere", &answer.elsewhere);
    lay_out_not_understood(&mut leaf, &answer.not_understood);
    lay_out_end(leaf, &cited, answer.is_refusal())
}
