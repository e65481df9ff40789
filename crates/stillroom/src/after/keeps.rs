//! `stillroom keeps`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{KeepsAnswer, KeepsWords, say_keeping, tell_keeping};
use kitchen::wording::capitalize;

use super::{finish, lay_out_end, lay_out_not_understood, lay_out_section, read_now, word_day_or_moment};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom keeps \"green beans\" --as canned --put-up today
  stillroom keeps peppers --as dried --store \"70 F\"
  stillroom keeps corn --as frozen

Exit code 0 with what is printed, 3 when nothing is printed for so warm a store.";

/// Ask how long food that is put up stays at its best
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct KeepsCommand {
    /// The food, in your own words
    food: String,
    /// How it is put up: canned, frozen, dried, fermented, refrigerator-pickle, freezer-jam, cellar
    #[arg(long = "as", value_name = "KIND")]
    kind: String,
    /// The day it was put up: today, Saturday, 2026-09-12
    #[arg(long, value_name = "DAY")]
    put_up: Option<String>,
    /// How warm the store is: "60 F", "15 C"
    #[arg(long, value_name = "TEMP", allow_hyphen_values = true)]
    store: Option<String>,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print keeps/1 as JSON
    #[arg(long)]
    json: bool,
}

impl KeepsCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = KeepsWords {
            food: self.food.clone(),
            kind: self.kind.clone(),
            put_up: self.put_up.clone(),
            store: self.store.clone(),
        };
        let answer =
            tell_keeping(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &KeepsAnswer) -> String {
    let put_up = answer.put_up.as_ref().map(|day| format!(", put up {}", word_day_or_moment(day)));
    let said =
        format!("{}, {}{}.", capitalize(&answer.question.food), answer.kind, put_up.unwrap_or_default());
    let mut leaf = Leaf::head(&say_keeping(answer), &[said]);
    let mut cited = Cited::new(almanac);
    lay_out_section(&mut leaf, &mut cited, "Printed, the shortest first: a matter of quality", &answer.told);
    lay_out_section(&mut leaf, &mut cited, "Besides", &answer.limits);
    lay_out_not_understood(&mut leaf, &answer.not_understood);
    leaf.section("Mind");
    leaf.line("", "No date makes food good. Before you eat from it look at it: `stillroom sign` says what a sign means.");
    lay_out_end(leaf, &cited, false)
}
