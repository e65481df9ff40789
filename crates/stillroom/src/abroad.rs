//! `stillroom abroad`.

use almanac::{Almanac, Basis};
use anyhow::{Context, Result};
use clap::Args;
use kitchen::elsewhere::{ElsewhereAnswer, ElsewhereWords, ask_elsewhere, word_height};
use kitchen::load::{Said, WHOM_TO_ASK};

use crate::almanac::load_almanac;
use crate::cited::{Cited, lay_out_sources};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;
use kitchen::wording::as_sentence;

const EXAMPLES: &str = "\
Examples:
  stillroom abroad
  stillroom abroad canada --jar \"500 ml\" --altitude 410m
  stillroom abroad australia --json

Exit code 3 when nothing is on file of the place.";

/// See what authorities outside the United States say, and what a metric jar may be asked for as.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct AbroadCommand {
    /// The place: canada, australia, new-zealand, united-kingdom, european-union
    place: Option<String>,
    /// A jar by what it holds: "500 ml"
    #[arg(long)]
    jar: Option<String>,
    /// The height of the kitchen above the sea: 410m
    #[arg(long, allow_hyphen_values = true)]
    altitude: Option<String>,
    /// Print abroad/1 as JSON
    #[arg(long)]
    json: bool,
}

impl AbroadCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let words = ElsewhereWords {
            place: self.place.clone(),
            jar: self.jar.clone(),
            altitude: self.altitude.clone(),
        };
        let answer = ask_elsewhere(&almanac, &words).map_err(wrong_question)?;
        let text = if self.json {
            serde_json::to_string_pretty(&answer).context("the answer cannot be written as JSON")? + "\n"
        } else {
            lay_out(&almanac, &answer)
        };
        Ok(Answered { text, refused: !answer.is_on_file })
    }
}

fn lay_out(almanac: &Almanac, answer: &ElsewhereAnswer) -> String {
    let mut leaf = Leaf::head("Where you live", &[]);
    let mut cited = Cited::new(almanac);
    leaf.section("What is said");
    lay_out_said(&mut leaf, &mut cited, &answer.says);
    if let Some(jar) = &answer.jar {
        leaf.section(&format!("A jar of {:.0} ml", jar.volume.as_millilitres()));
        lay_out_said(&mut leaf, &mut cited, &jar.says);
    }
    if let Some(height) = answer.altitude {
        leaf.section("The altitude");
        leaf.line("", &word_height(height));
    }
    leaf.section("Whom to ask");
    leaf.line("", WHOM_TO_ASK);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

fn lay_out_said(leaf: &mut Leaf, cited: &mut Cited<'_>, says: &[Said]) {
    for said in says {
        leaf.gap();
        leaf.line("", &as_sentence(&said.text));
        let Some(citation) = &said.citation else { continue };
        let place = cited.mark(citation);
        let recalled = citation.basis == Basis::Memory;
        leaf.under(&if recalled { format!("Recalled, not seen in print. {place}") } else { place });
    }
}
