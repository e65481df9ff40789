//! `stillroom almanac formulas`, `processes`, `sources`: a line each.

use almanac::Almanac;
use anyhow::{Context, Result};
use clap::Args;
use kitchen::ask::{self, Listed};
use unicode_width::UnicodeWidthStr;

use crate::ending::Answered;
use crate::leaf::WIDTH;
use crate::wrap::{to_the_left, wrap};

/// What every list takes.
#[derive(Debug, Args)]
struct Narrowing {
    /// Only lines that hold this
    #[arg(value_name = "WORDS")]
    holding: Option<String>,
    /// Print the list as JSON
    #[arg(long)]
    json: bool,
}

/// List the formulas: id, name, method.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom almanac formulas\n  stillroom almanac formulas pepper")]
pub(crate) struct ListFormulas {
    #[command(flatten)]
    narrowing: Narrowing,
}

/// List the foods with a printed process: id, name, canners.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom almanac processes\n  stillroom almanac processes tomato --json"
)]
pub(crate) struct ListProcesses {
    #[command(flatten)]
    narrowing: Narrowing,
}

/// List the sources: id, title, rank.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom almanac sources\n  stillroom almanac sources 2015")]
pub(crate) struct ListSources {
    #[command(flatten)]
    narrowing: Narrowing,
}

impl ListFormulas {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        self.narrowing.print(ask::list_formulas(almanac))
    }
}

impl ListProcesses {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        self.narrowing.print(ask::list_processes(almanac))
    }
}

impl ListSources {
    pub(super) fn run(&self, almanac: &Almanac) -> Result<Answered> {
        self.narrowing.print(ask::list_sources(almanac))
    }
}

impl Narrowing {
    fn print(&self, mut lines: Vec<Listed>) -> Result<Answered> {
        if let Some(holding) = &self.holding {
            lines.retain(|line| holds(line, holding));
        }
        let text = if self.json {
            serde_json::to_string_pretty(&lines).context("the list cannot be written as JSON")? + "\n"
        } else if let (Some(holding), true) = (&self.holding, lines.is_empty()) {
            format!("Nothing in this list holds \"{holding}\"; without a word it is printed whole.\n")
        } else {
            lay_out_list(&lines)
        };
        // An empty list is an answer of its own: nothing on file holds these words.
        Ok(Answered { refused: lines.is_empty(), text })
    }
}

fn holds(line: &Listed, words: &str) -> bool {
    let text = format!("{} {} {}", line.id, line.name, line.about).to_lowercase();
    words.to_lowercase().split_whitespace().all(|word| text.contains(word))
}

/// The id, then its name and what else tells it from others; long ids stand on a line of their own.
pub(super) fn lay_out_list(lines: &[Listed]) -> String {
    const ID: usize = 30;
    let mut text = String::new();
    for line in lines {
        let about = if line.about.is_empty() { String::new() } else { format!(" ({})", line.about) };
        let mut rows = wrap(&format!("{}{about}", line.name), WIDTH - ID).into_iter();
        if line.id.width() < ID {
            text += &format!("{}{}\n", to_the_left(&line.id, ID), rows.next().unwrap_or_default());
        } else {
            text += &format!("{}\n", line.id);
        }
        for row in rows {
            text += &format!("{}{row}\n", " ".repeat(ID));
        }
    }
    text
}
