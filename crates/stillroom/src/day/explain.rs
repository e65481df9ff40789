//! `stillroom day explain`: what each make left out would cost, and what would help most.

use std::path::PathBuf;

use anyhow::{Context, Result};
use clap::Args;
use kitchen::explain::{DayExplained, explain_day};

use super::kept::read_day_kept;
use crate::ending::Answered;
use crate::leaf::Leaf;
use kitchen::wording::{as_sentence, capitalize};

const EXAMPLES: &str = "\
Examples:
  stillroom day day.toml --json > today.json
  stillroom day explain today.json

Each answer comes of planning a changed day; the same day gives the same answers.";

/// Say what each make left out would cost, and what one thing more would bring.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct ExplainDay {
    /// The planned day, kept with --json; `-` is standard input
    day: PathBuf,
    /// Print the whole answer as JSON
    #[arg(long)]
    json: bool,
}

impl ExplainDay {
    pub(crate) fn run(&self) -> Result<Answered> {
        let explained = explain_day(&read_day_kept(&self.day)?);
        if self.json {
            let text =
                serde_json::to_string_pretty(&explained).context("the answer cannot be written as JSON")?;
            return Ok(Answered::with(text + "\n"));
        }
        Ok(Answered::with(lay_out(&explained)))
    }
}

fn lay_out(explained: &DayExplained) -> String {
    let mut leaf = Leaf::head(&explained.date_in_words, &["Why the day is as it is.".to_owned()]);
    leaf.section("What would help, the most first");
    if explained.helps.is_empty() {
        leaf.line("", "Nothing that was tried brings anything more today.");
    }
    for help in &explained.helps {
        leaf.line(
            &format!("+{:.1}", help.gain),
            &capitalize(&format!("{}: {}", help.what, as_small(&help.words))),
        );
    }
    if !explained.no_help.is_empty() {
        leaf.line("0", &as_sentence(&explained.no_help.join(", ")));
    }
    if !explained.left_out.is_empty() {
        leaf.section("Left out, and what it would take to make it");
        for left in &explained.left_out {
            let figure = left.costs.map_or_else(String::new, |costs| format!("-{costs:.1}"));
            leaf.named(&figure, &capitalize(&left.name));
            leaf.line("", &as_sentence(&left.words));
        }
    }
    leaf.line("", "Figures are servings for the winter.");
    leaf.finish()
}

/// With its stop, and no capital: it goes on after a colon.
fn as_small(words: &str) -> String {
    format!("{words}.")
}
