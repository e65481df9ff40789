//! `stillroom almanac`: a look at what is published.

mod data;
mod list;
mod show;

use anyhow::Result;
use clap::{Args, Subcommand};

use crate::ending::Answered;

pub(crate) use data::load_almanac;

const EXAMPLES: &str = "\
Examples:
  stillroom almanac formulas
  stillroom almanac formula \"pickled jalapeno rings\"
  stillroom almanac process tomatoes-crushed";

/// Look at what is published: produce, formulas, processes, sources.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct AlmanacCommand {
    #[command(subcommand)]
    what: AlmanacPart,
}

#[derive(Debug, Subcommand)]
enum AlmanacPart {
    /// List the produce; with a name, print all that is on file about one
    Produce(show::ShowProduce),
    /// List the formulas
    Formulas(list::ListFormulas),
    /// Print a formula at its printed size, with its source
    Formula(show::ShowFormula),
    /// List the foods with a printed process
    Processes(list::ListProcesses),
    /// Print every line of a food's process
    Process(show::ShowProcess),
    /// List the sources
    Sources(list::ListSources),
    /// Print a source and what rests on it
    Source(show::ShowSource),
}

impl AlmanacCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        match &self.what {
            AlmanacPart::Produce(show) => show.run(&almanac),
            AlmanacPart::Formulas(list) => list.run(&almanac),
            AlmanacPart::Formula(show) => show.run(&almanac),
            AlmanacPart::Processes(list) => list.run(&almanac),
            AlmanacPart::Process(show) => show.run(&almanac),
            AlmanacPart::Sources(list) => list.run(&almanac),
            AlmanacPart::Source(show) => show.run(&almanac),
        }
    }
}
