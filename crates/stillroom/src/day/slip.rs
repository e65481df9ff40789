//! `stillroom day slip`: the day has moved, and the rest of it is planned again.

use std::path::PathBuf;

use anyhow::{Context, Result};
use clap::Args;
use kitchen::answer::{ClockLine, LineAttention};
use kitchen::slip::{SlipAnswer, SlipWords, slip_day};

use super::kept::read_day_kept;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;
use kitchen::wording::{as_sentence, capitalize};

const EXAMPLES: &str = "\
Examples:
  stillroom day day.toml --json > today.json
  stillroom day slip today.json --now 13:40 --longer \"fill the jars=15 min\"
  stillroom day slip today.json --now 15:05 --gone Wim --broken burner
  stillroom day slip today.json --now 11:30 --not-begun \"peel peaches\" --json

What is not said went as planned. With --json the answer can be slipped again.
Exit code 3 when something cannot be kept: it is said what.";

/// Plan the rest of a day again: something ran long, broke, or someone left.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct SlipDay {
    /// The planned day, kept with --json; `-` is standard input
    day: PathBuf,
    /// What time it is
    #[arg(long, value_name = "TIME")]
    now: String,
    /// An act that takes longer than planned, and by how much
    #[arg(long, value_name = "ACT=MINUTES")]
    longer: Vec<String>,
    /// An act that was to begin by now and has not
    #[arg(long, value_name = "ACT")]
    not_begun: Vec<String>,
    /// An act that began at another time
    #[arg(long, value_name = "ACT=TIME")]
    began: Vec<String>,
    /// Someone who is gone, from now on or over some hours
    #[arg(long, value_name = "NAME [HOURS]")]
    gone: Vec<String>,
    /// A machine or place of which one is out of use
    #[arg(long, value_name = "WHAT")]
    broken: Vec<String>,
    /// A make that will not be gone on with
    #[arg(long, value_name = "MAKE")]
    give_up: Vec<String>,
    /// Print the whole answer as JSON
    #[arg(long)]
    json: bool,
}

impl SlipDay {
    pub(crate) fn run(&self) -> Result<Answered> {
        let saved = read_day_kept(&self.day)?;
        let words = SlipWords {
            now: self.now.clone(),
            longer: self.longer.clone(),
            not_begun: self.not_begun.clone(),
            began: self.began.clone(),
            gone: self.gone.clone(),
            broken: self.broken.clone(),
            give_up: self.give_up.clone(),
        };
        let answer = slip_day(&saved, &words, &mut |_| ()).map_err(wrong_question)?;
        let text = if self.json {
            serde_json::to_string_pretty(&answer).context("the answer cannot be written as JSON")? + "\n"
        } else {
            lay_out_slip(&answer)
        };
        Ok(Answered { text, refused: !answer.troubles.is_empty() })
    }
}

/// The rest of the day at 80 columns: what cannot be kept, what changes, and the clock from now on.
fn lay_out_slip(answer: &SlipAnswer) -> String {
    let finish = answer.finish.map_or_else(String::new, |finish| format!("Done by about {}.", clock(finish)));
    let mut leaf =
        Leaf::head(&answer.date_in_words, &[format!("Planned again at {}. {finish}", clock(answer.now))]);
    if !answer.troubles.is_empty() {
        leaf.section("This cannot be kept");
        leaf.each(&sentences(&answer.troubles));
    }
    leaf.section("What changes");
    leaf.each(&sentences(&answer.changes));
    match (answer.changes.is_empty(), answer.rest_stays) {
        (true, _) => leaf.line("", "Nothing. Go on as planned."),
        (false, true) => leaf.line("", "Everything else stays where it was."),
        (false, false) => {}
    }
    let left: Vec<&ClockLine> = answer.clock.iter().filter(|line| line.to > answer.now).collect();
    if !left.is_empty() {
        leaf.section("From now on");
        for line in left {
            lay_out_line(&mut leaf, line);
        }
    }
    if !answer.taken.is_empty() {
        leaf.section("Taken for granted");
        leaf.each(&sentences(&answer.taken));
    }
    leaf.finish()
}

fn lay_out_line(leaf: &mut Leaf, line: &ClockLine) {
    let times = format!("{}-{}", clock(line.from), clock(line.to));
    let who = line.who.as_deref().unwrap_or_default();
    let act = as_sentence(&line.act);
    let make = &line.make;
    match line.attention {
        LineAttention::Alone => leaf.by_itself(&times, &capitalize(&format!("{make}: {act}"))),
        LineAttention::Hands => leaf.line(&times, &format!("{who}, {make}: {act}")),
        LineAttention::Eyes => leaf.line(&times, &format!("{who} has an eye on {make}: {act}")),
    }
    if line.must_not_be_left {
        leaf.under("Must not be left.");
    }
    if let Some(caution) = &line.caution {
        leaf.under(&format!("Mind: {}", as_sentence(caution)));
    }
}

fn sentences(words: &[String]) -> Vec<String> {
    words.iter().map(|words| as_sentence(words)).collect()
}

/// The time of day: `9:05`.
fn clock(minute: u32) -> String {
    format!("{}:{:02}", minute / 60 % 24, minute % 60)
}
