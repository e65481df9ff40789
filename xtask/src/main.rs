//! Developer commands: `cargo xtask check`, `tidy`, `bench`, `rulebook`, `long`.
//!
//! One module a command. Nothing here is shipped; what a person needs to plan a day is in `crates/`.

use std::process::ExitCode;

use clap::{Parser, Subcommand};

mod bench;
mod check;
mod guide;
mod long;
mod rulebook;
mod tidy;
mod workspace;

/// Developer commands of Stillroom.
#[derive(Debug, Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask")]
struct Cli {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Everything a change has to pass: format, lints, tests, tidiness, docs, release build, demo day.
    Check,
    /// The rules of the tree that no compiler knows: headers, arrows, sources, licences, what may not be tracked.
    Tidy,
    /// Measures the release build against its budgets and records the run in `benches/runs/`.
    Bench(bench::Options),
    /// Writes the page of clearance rules, `docs/methods/clearance.md`, from the tables of `data/`.
    Rulebook,
    /// Runs that take too long for every change, with their last result in the tree.
    Long {
        #[command(subcommand)]
        which: long::Long,
    },
}

fn main() -> ExitCode {
    let outcome = match Cli::parse().command {
        Command::Check => check::run(),
        Command::Tidy => tidy::run(),
        Command::Bench(options) => bench::run(&options),
        Command::Rulebook => rulebook::run(),
        Command::Long { which } => long::run(which),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}
