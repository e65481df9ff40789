//! `stillroom put-up`, and `stillroom stands`.

use std::io::Read as _;

use anyhow::{Context as _, Result};
use book::RoughDate;
use book::act::OpenHolds;
use clap::{Args, ValueEnum};
use kitchen::keep::PutUpWords;

use super::lay::{lay_lots, lay_one};
use super::{Place, as_json};
use crate::ending::Answered;

const EXAMPLES: &str = "\
Examples:
  stillroom put-up \"damson jam, 9 half-pints\"
  stillroom put-up \"corn, 6 1 qt bags, chest freezer\"
  stillroom put-up \"berries, 1 bag, freezer\" --open frozen";

/// Write down what was put up, after the fact, in one line: food, count, size.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct PutUpCommand {
    /// Food, counts with sizes; a place and a date too, if you like
    line: String,
    /// Where it stands
    #[arg(long)]
    shelf: Option<String>,
    /// When it was put up, if not today: 2026-09-12, 2026-09, 2026
    #[arg(long, value_name = "DATE")]
    on: Option<RoughDate>,
    /// Best before
    #[arg(long, value_name = "DATE")]
    eat_by: Option<RoughDate>,
    /// The formula, by its id
    #[arg(long)]
    formula: Option<String>,
    /// The box of lids, the bottle of vinegar, the bag of salt; may be given again
    #[arg(long = "supply", value_name = "NAME")]
    supplies: Vec<String>,
    /// How many it was to be: "10 half-pints"
    #[arg(long, value_name = "CONTAINERS")]
    planned: Option<String>,
    /// It came out of the load that went in last
    #[arg(long)]
    from_load: bool,
    /// It stays open and is topped up; what it holds
    #[arg(long, value_name = "WHAT")]
    open: Option<Open>,
    /// Print the answer as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

/// What an open container holds.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Open {
    /// A frozen bag
    Frozen,
    /// Dry goods
    Dry,
    /// A brine crock
    Brine,
    /// Acid food in a chilled jar
    ChilledAcid,
}

impl From<Open> for OpenHolds {
    fn from(open: Open) -> Self {
        match open {
            Open::Frozen => Self::Frozen,
            Open::Dry => Self::Dry,
            Open::Brine => Self::Brine,
            Open::ChilledAcid => Self::ChilledAcid,
        }
    }
}

impl PutUpCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let words = PutUpWords {
            line: self.line.clone(),
            shelf: self.shelf.clone(),
            put_up: self.on,
            eat_by: self.eat_by,
            formula: self.formula.clone(),
            supplies: self.supplies.clone(),
            open: self.open.map(OpenHolds::from),
            planned: self.planned.clone(),
            from_last_load: self.from_load,
        };
        let lot = self.place.write(|kept, now| kept.put_up(now, &words))?;
        Ok(Answered::with(if self.json {
            as_json(&lot)?
        } else {
            lay_one(&format!("Written down. Put {} on the label.", lot.label), &lot)
        }))
    }
}

const STANDS_EXAMPLES: &str = "\
Examples:
  stillroom stands \"peaches, 12 quarts, 2024, cellar\" \"beans, 7 pints\" \\
      \"pickles, 3 quarts, not known\"
  stillroom stands < shelves.txt

Each line keeps the year and the place of the one before it.";

/// Write down what already stands here, a line a kind: food, count, size, year or `not known`, place.
#[derive(Debug, Args)]
#[command(after_help = STANDS_EXAMPLES)]
pub(crate) struct StandsCommand {
    /// The lines; without any they are read from standard input
    lines: Vec<String>,
    /// Print the answer as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

impl StandsCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let lines = if self.lines.is_empty() {
            let mut text = String::new();
            std::io::stdin().read_to_string(&mut text).context("standard input cannot be read")?;
            text.lines().map(str::to_owned).collect()
        } else {
            self.lines.clone()
        };
        let lots = self.place.write(|kept, now| kept.stand(now, &lines))?;
        let text =
            if self.json { as_json(&lots)? } else { lay_lots("Written down: from before this book.", &lots) };
        Ok(Answered::with(text))
    }
}
