//! The command line: thin. Each command turns words into a question for `kitchen`, and the answer into text.
//!
//! Exit codes are the same everywhere: 0 an answer, 3 a refusal, 2 the question is wrong, 1 the world failed. On 2
//! and 1 nothing is printed to standard output.

mod abroad;
mod after;
mod almanac;
mod amounts;
mod book;
mod canners;
mod cited;
mod clear;
mod command;
mod completions;
mod copied;
mod day;
mod ending;
mod fit;
mod house;
mod leaf;
mod own;
mod reading;
mod reckon;
mod serve;
mod trouble;
mod wrap;

use std::process::ExitCode;

use clap::Parser;

use command::StillroomCommand;

fn main() -> ExitCode {
    ending::finish(StillroomCommand::parse().run())
}
