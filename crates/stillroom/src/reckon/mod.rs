//! `stillroom reckon`: small sums, and why a printed time is what it is.
//!
//! The sums are a list of the kitchen's; each becomes a command here, so that one that is added there is asked for and
//! explained here without a line.

mod chart;
mod laid_out;
mod why;

use anyhow::{Context, Result};
use clap::{Arg, ArgAction, ArgMatches, Args, Command, FromArgMatches, Subcommand};
use kitchen::reckon::{Need, Sum, list_sums, reckon};

use crate::almanac::load_almanac;
use crate::ending::{Answered, wrong_question};

const EXAMPLES: &str = "\
Examples:
  stillroom reckon
  stillroom reckon ferment-salt gross=3410g bowl=610g percent=2.25
  stillroom reckon gel-point altitude=\"1,200 ft\" --json

Inputs are KEY=VALUE, amounts as you write them. Exit code 3 when something speaks against what was asked.";

/// Do a small sum of the kitchen, or see why a printed time is what it is.
///
/// Without a sum it lists them with what they ask for.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct ReckonCommand {
    #[command(subcommand)]
    asked: Option<Asked>,
}

impl ReckonCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        match &self.asked {
            None => Ok(Answered::with(laid_out::lay_out_list(&list_sums()))),
            Some(Asked::Why(command)) => command.run(),
            Some(Asked::Sum { name, inputs, json }) => answer(name, inputs, *json),
        }
    }
}

/// A sum with its inputs, or the heat of a printed process.
#[derive(Debug)]
enum Asked {
    Sum { name: &'static str, inputs: Vec<String>, json: bool },
    Why(why::WhyCommand),
}

fn answer(name: &str, inputs: &[String], json: bool) -> Result<Answered> {
    let almanac = load_almanac()?;
    let reckoning = reckon(&almanac, name, inputs).map_err(wrong_question)?;
    let text = if json {
        serde_json::to_string_pretty(&reckoning).context("the answer cannot be written as JSON")? + "\n"
    } else {
        laid_out::lay_out(&almanac, &reckoning)
    };
    Ok(Answered { text, refused: reckoning.is_vetoed() })
}

const WHY: &str = "why";
const INPUTS: &str = "inputs";
const JSON: &str = "json";

/// The command of one sum.
fn sum_command(sum: &'static Sum) -> Command {
    Command::new(sum.name)
        .about(capital(sum.what))
        .arg(Arg::new(INPUTS).value_name("KEY=VALUE").num_args(0..).help("What it asks for, below"))
        .arg(Arg::new(JSON).long(JSON).action(ArgAction::SetTrue).help("Print reckoning/1 as JSON"))
        .after_help(format!(
            "Asks for:\n{}\n\nWorked out as:\n  {}\n  {}\n\nExamples:\n  {}",
            laid_out::list_inputs(sum),
            sum.equation,
            sum.source,
            laid_out::example(sum)
        ))
}

fn capital(words: &str) -> String {
    kitchen::wording::capitalize(words)
}

impl Subcommand for Asked {
    fn augment_subcommands(command: Command) -> Command {
        let why = why::WhyCommand::augment_args(Command::new(WHY));
        list_sums()
            .into_iter()
            .fold(command, |command, sum| command.subcommand(sum_command(sum)))
            .subcommand(why)
    }

    fn augment_subcommands_for_update(command: Command) -> Command {
        Self::augment_subcommands(command)
    }

    fn has_subcommand(name: &str) -> bool {
        name == WHY || list_sums().iter().any(|sum| sum.name == name)
    }
}

impl FromArgMatches for Asked {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let Some((name, matches)) = matches.subcommand() else {
            return Err(clap::Error::new(clap::error::ErrorKind::MissingSubcommand));
        };
        if name == WHY {
            return why::WhyCommand::from_arg_matches(matches).map(Self::Why);
        }
        let Some(sum) = list_sums().into_iter().find(|sum| sum.name == name) else {
            return Err(clap::Error::new(clap::error::ErrorKind::InvalidSubcommand));
        };
        let inputs = matches.get_many::<String>(INPUTS).unwrap_or_default().cloned().collect();
        Ok(Self::Sum { name: sum.name, inputs, json: matches.get_flag(JSON) })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

/// How an input's need is said.
fn say_need(need: Need) -> &'static str {
    match need {
        Need::Must => "",
        Need::May => " (may be left out)",
    }
}
