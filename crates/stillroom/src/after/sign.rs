//! `stillroom sign`.

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::after::{SignAnswer, SignVerdict, SignWords, look_at_signs, say_sign};
use kitchen::wording::as_sentence;

use super::{finish, lay_out_end, lay_out_not_understood, lay_out_section, lay_out_told};
use crate::almanac::load_almanac;
use crate::cited::Cited;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

const EXAMPLES: &str = "\
Examples:
  stillroom sign \"bulging lid\"
  stillroom sign \"rusty lid\" \"fruit floats\"
  stillroom sign \"lost liquid\" --lost \"60 %\"
  stillroom sign \"how to throw away\"

Exit code 0 when the jar may be kept or used, 3 when it is thrown away or nothing printed decides, 2 when nothing of
it is understood; then what can be asked is listed.";

/// Ask what a sign on a jar means: quality or danger, and what to do now
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct SignCommand {
    /// What you see, in your own words; may be given several times
    #[arg(value_name = "WORDS")]
    seen: Vec<String>,
    /// How much of the liquid is gone: "60 %"
    #[arg(long, value_name = "SHARE")]
    lost: Option<String>,
    /// Print sign/1 as JSON
    #[arg(long)]
    json: bool,
}

impl SignCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = SignWords { seen: self.seen.clone(), lost: self.lost.clone() };
        let answer = look_at_signs(&almanac, &words).map_err(wrong_question)?;
        finish(&answer, answer.is_refusal(), self.json, || lay_out(&almanac, &answer))
    }
}

fn lay_out(almanac: &Almanac, answer: &SignAnswer) -> String {
    let mut leaf = Leaf::head(say_sign(answer), &[as_sentence(&answer.question.seen.join("; "))]);
    let mut cited = Cited::new(almanac);
    lay_out_section(&mut leaf, &mut cited, "Because", &answer.because);
    lay_out_not_understood(&mut leaf, &answer.not_understood);
    lay_out_section(&mut leaf, &mut cited, "How to throw it away", &answer.throw_away);
    lay_out_section(&mut leaf, &mut cited, "How to clean up", &answer.clean_up);
    lay_out_section(&mut leaf, &mut cited, "Which other jars are in question", &answer.sisters);
    lay_out_section(&mut leaf, &mut cited, "Besides", &answer.beside);
    leaf.section("Mind");
    if matches!(answer.verdict, SignVerdict::Quality | SignVerdict::UseFirst) {
        leaf.line(
            "",
            "That holds while the lid is down and nothing else is odd. Anything else you see: ask again.",
        );
    }
    lay_out_told(&mut leaf, &mut cited, &answer.looks);
    if answer.verdict == SignVerdict::AsUnsealed {
        leaf.section("Now");
        leaf.line(
            "",
            "`stillroom seals --heat-off \"15:40\"` says until when there is a way out, and which.",
        );
        leaf.line("", "Was the process itself wrong, say so with `--wrong-process`: the time is shorter.");
    }
    lay_out_end(leaf, &cited, answer.is_refusal())
}
