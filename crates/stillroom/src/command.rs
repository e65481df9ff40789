//! The commands by name.

use clap::{Parser, Subcommand};

use crate::ending::Answered;
use crate::{abroad, almanac, canners, clear, completions, day, fit, load, serve};

const EXAMPLES: &str = "\
Examples:
  stillroom                      plan the day of an invented household
  stillroom day new day.toml     write a day file to start from
  stillroom day day.toml         plan your own day";

/// Plan a day of putting up food for the winter: what to make, how much of everything, the tested process for each
/// jar, when to do each step.
///
/// Without a command it plans the day of an invented household.
#[derive(Debug, Parser)]
#[command(name = "stillroom", version, after_help = EXAMPLES)]
pub(crate) struct StillroomCommand {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Plan a day from a day file; write, solve and check days
    Day(day::DayCommand),
    /// Ask whether a food may be processed so
    Clear(clear::ClearCommand),
    /// Ask about a load: when its clock starts and ends, what to do in trouble
    Load(load::LoadCommand),
    /// List the canners of the house with their gauges
    Canners(canners::CannersCommand),
    /// Fit a formula to what there is
    Fit(fit::FitCommand),
    /// See what authorities outside the United States say; metric jars
    Abroad(abroad::AbroadCommand),
    /// Look at what is published
    Almanac(almanac::AlmanacCommand),
    /// Serve the kitchen's pages on this machine
    Serve(serve::ServeCommand),
    /// Print completions for a shell
    Completions(completions::CompletionsCommand),
}

impl StillroomCommand {
    /// Does what was asked.
    pub(crate) fn run(&self) -> anyhow::Result<Answered> {
        match &self.command {
            None => day::plan_demo(),
            Some(Command::Day(command)) => command.run(),
            Some(Command::Clear(command)) => command.run(),
            Some(Command::Load(command)) => command.run(),
            Some(Command::Canners(command)) => command.run(),
            Some(Command::Fit(command)) => command.run(),
            Some(Command::Abroad(command)) => command.run(),
            Some(Command::Almanac(command)) => command.run(),
            Some(Command::Serve(command)) => command.run(),
            Some(Command::Completions(command)) => Ok(command.run()),
        }
    }
}
