//! `stillroom seals`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{SealsAnswer, SealsWords, plan_seals, say_seals};

use super::{finish, lay_out_end, lay_out_section, lay_out_told, read_now};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom seals --heat-off \"15:40\"
  stillroom seals --heat-off \"yesterday 15:40\" --wrong-process
  stillroom seals

Exit code 0 while an unsealed jar has a way out, 3 when it is too late or nobody wrote down when the heat went off.";

/// Plan the look at the seals, and what becomes of a jar that did not seal
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct SealsCommand {
    /// When the heat went off: "15:40", "yesterday 15:40", "2026-09-12 15:40"
    #[arg(long, value_name = "WHEN")]
    heat_off: Option<String>,
    /// Something was wrong with the process: time, acid, pack, jar, vent, canner or altitude
    #[arg(long)]
    wrong_process: bool,
    /// Reckon from this moment and not from the clock: "2026-09-12 23:10"
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
    /// Print seals/1 as JSON
    #[arg(long)]
    json: bool,
}

impl SealsCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = SealsWords { heat_off: self.heat_off.clone(), process_was_wrong: self.wrong_process };
        let answer = plan_seals(&almanac, &words, &read_now(self.now.as_deref())?).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &SealsAnswer) -> String {
    let mut leaf = Leaf::head(&say_seals(answer), &[said_of(answer)]);
    let mut cited = Cited::new(almanac);
    if !answer.question.process_was_wrong {
        leaf.section("The look at the seals");
        if let Some(look) = &answer.look_at {
            leaf.line("", &format!("Not before {}: the earlier end of what is printed.", look.in_words()));
        }
        lay_out_told(&mut leaf, &mut cited, &answer.wait);
        leaf.line(
            "",
            "A jar that fails one of these counts as unsealed. None of them says that the food is good.",
        );
        lay_out_told(&mut leaf, &mut cited, &answer.tests);
    }
    if !answer.ways.is_empty() {
        leaf.section(if answer.question.process_was_wrong {
            "The ways out, sealed or not"
        } else {
            "A jar that did not seal"
        });
        for way in &answer.ways {
            leaf.gap();
            leaf.named("", &way.text);
            lay_out_told(&mut leaf, &mut cited, &way.told);
        }
    }
    lay_out_section(&mut leaf, &mut cited, "The clock", &answer.clock);
    lay_out_section(&mut leaf, &mut cited, "What is thrown away", &answer.discard);
    leaf.section("To begin again");
    leaf.line("", "`stillroom trouble unsealed` shows the process for your food, and `stillroom trouble` the clocks of a load that \
        stopped, boiled dry or went wrong.");
    lay_out_end(leaf, &cited, answer.is_refusal())
}

fn said_of(answer: &SealsAnswer) -> String {
    let off = answer.heat_off.as_ref().map_or_else(
        || "Nobody wrote down when the heat went off, and it counts as late".to_owned(),
        |off| format!("Heat off {}", off.in_words()),
    );
    format!("{off}; now {}.", answer.now.in_words())
}
