//! The commands by name.

use clap::{Parser, Subcommand};

use crate::ending::Answered;
use crate::{
    abroad, after, almanac, book, canners, clear, completions, copied, day, fit, own, reckon, serve, trouble,
};

const EXAMPLES: &str = "\
Examples:
  stillroom                      plan the day of an invented household
  stillroom day new day.toml     write a day file to start from
  stillroom day day.toml         plan your own day
  stillroom put-up \"damson jam, 9 half-pints\"
                                 write down what was put up";

/// Plan a day of putting up food for the winter: what to make, how much of everything, the tested process for each
/// jar, when to do each step. Keep the book of what was put up, where it stands and what became of it.
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
    /// Check the formulas you copied from your own publications
    Copied(copied::CopiedCommand),
    /// Lay a formula of your own beside the nearest tested one
    Own(own::OwnCommand),
    /// Ask about a load: when its clock starts and ends, what to do in trouble
    Trouble(trouble::TroubleCommand),
    /// List the canners of the house with their gauges
    Canners(canners::CannersCommand),
    /// See what authorities outside the United States say; metric jars
    Abroad(abroad::AbroadCommand),
    /// Fit a formula to what there is
    Fit(fit::FitCommand),
    /// Ask what a sign on a jar means, and what to do now
    Sign(after::SignCommand),
    /// Plan the look at the seals
    Seals(after::SealsCommand),
    /// Ask what a cut of power or a flood means for each food
    Outage(after::OutageCommand),
    /// Ask by when a large pot must be cold
    Cool(after::CoolCommand),
    /// Ask how long food in oil may stay in the refrigerator
    Oil(after::OilCommand),
    /// Ask about a ferment
    Ferment(after::FermentCommand),
    /// Ask about dried food
    Dried(after::DriedCommand),
    /// Ask how long food that is put up stays at its best
    Keeps(after::KeepsCommand),
    /// Do a small sum of the kitchen, or see why a printed time is what it is
    Reckon(reckon::ReckonCommand),
    /// Write down what was put up, in one line
    PutUp(book::put_up::PutUpCommand),
    /// Write down what already stands here
    Stands(book::put_up::StandsCommand),
    /// Took one: a container leaves a shelf
    Draw(book::draw::DrawCommand),
    /// What stands where, what to eat first; move and count
    Shelf(book::shelf::ShelfCommand),
    /// One lot: its seals, losses, trouble, sisters
    Lot(book::lot::LotCommand),
    /// What came in and still waits
    Basket(book::basket::BasketCommand),
    /// What went into a canner, and when
    Load(book::load::LoadCommand),
    /// Ferments, drying, cooling jars
    Working(book::working::WorkingCommand),
    /// What a week, a month, a season came to
    Tell(book::tell::TellCommand),
    /// Take back an act
    TakeBack(book::undo::TakeBackCommand),
    /// Everything that was ever said about a lot
    History(book::undo::HistoryCommand),
    /// The book's file: verify, export, import, back up, restore
    Book(book::file::BookCommand),
    /// Make the book of an invented household
    Demo(book::demo::DemoCommand),
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
            Some(Command::Copied(command)) => command.run(),
            Some(Command::Own(command)) => command.run(),
            Some(Command::Trouble(command)) => command.run(),
            Some(Command::Canners(command)) => command.run(),
            Some(Command::Abroad(command)) => command.run(),
            Some(Command::Fit(command)) => command.run(),
            Some(Command::Sign(command)) => command.run(),
            Some(Command::Seals(command)) => command.run(),
            Some(Command::Outage(command)) => command.run(),
            Some(Command::Cool(command)) => command.run(),
            Some(Command::Oil(command)) => command.run(),
            Some(Command::Ferment(command)) => command.run(),
            Some(Command::Dried(command)) => command.run(),
            Some(Command::Keeps(command)) => command.run(),
            Some(Command::Reckon(command)) => command.run(),
            Some(Command::PutUp(command)) => command.run(),
            Some(Command::Stands(command)) => command.run(),
            Some(Command::Draw(command)) => command.run(),
            Some(Command::Shelf(command)) => command.run(),
            Some(Command::Lot(command)) => command.run(),
            Some(Command::Basket(command)) => command.run(),
            Some(Command::Load(command)) => command.run(),
            Some(Command::Working(command)) => command.run(),
            Some(Command::Tell(command)) => command.run(),
            Some(Command::TakeBack(command)) => command.run(),
            Some(Command::History(command)) => command.run(),
            Some(Command::Book(command)) => command.run(),
            Some(Command::Demo(command)) => command.run(),
            Some(Command::Almanac(command)) => command.run(),
            Some(Command::Serve(command)) => command.run(),
            Some(Command::Completions(command)) => Ok(command.run()),
        }
    }
}
