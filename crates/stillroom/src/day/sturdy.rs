//! `stillroom day sturdy`: a kept day tried on a thousand days that go otherwise.

use std::path::PathBuf;

use anyhow::{Context, Result};
use clap::Args;
use kitchen::sturdy::{DayTried, try_day};

use super::kept::read_day_kept;
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;
use kitchen::wording::capitalize;

const EXAMPLES: &str = "\
Examples:
  stillroom day day.toml --json > today.json
  stillroom day sturdy today.json

The days are seeded: the same day gives the same answer.";

/// Try a planned day on a thousand days whose work runs long or short.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct TryDay {
    /// The planned day, kept with --json; `-` is standard input
    day: PathBuf,
    /// Print the whole answer as JSON
    #[arg(long)]
    json: bool,
}

impl TryDay {
    pub(crate) fn run(&self) -> Result<Answered> {
        let tried = try_day(&read_day_kept(&self.day)?)
            .ok_or_else(|| wrong_question("nothing is planned that day; hint: plan something first"))?;
        if self.json {
            let text =
                serde_json::to_string_pretty(&tried).context("the answer cannot be written as JSON")?;
            return Ok(Answered::with(text + "\n"));
        }
        Ok(Answered::with(lay_out(&tried)))
    }
}

fn lay_out(tried: &DayTried) -> String {
    let days = format!("Tried on {} days whose work runs long or short.", tried.days);
    let mut leaf = Leaf::head(&tried.date_in_words, &[days]);
    let share = |days: u32| format!("{} in 100", (days * 100 + tried.days / 2) / tried.days);
    leaf.section("When it ends");
    leaf.line(
        &share(tried.in_time),
        &format!("days are over by {}, when the last one leaves.", clock(tried.ends)),
    );
    for (minute, words) in tried.finish.iter().zip(["on a quick day", "on a middling day", "on a slow day"]) {
        leaf.line(&clock(*minute), &format!("{}.", capitalize(words)));
    }
    if !tried.deciding.is_empty() {
        leaf.section("What decides it");
        for act in &tried.deciding {
            leaf.line(&share(act.days), &format!("{}: {}.", capitalize(&act.make), act.act));
        }
    }
    leaf.section("What may wait too long");
    leaf.line(&share(tried.broken_days), "days have something wait longer than it should.");
    for wait in &tried.waits {
        let words = format!(
            "{}: \"{}\" comes more than {} min after \"{}\".",
            capitalize(&wait.make),
            wait.to,
            wait.most_min,
            wait.from
        );
        leaf.line(&share(wait.days), &words);
    }
    leaf.finish()
}

/// The time of day: `9:05`.
fn clock(minute: u32) -> String {
    format!("{}:{:02}", minute / 60 % 24, minute % 60)
}
