//! Runs that take too long for every change. Each writes its last result into `benches/long/`, so that a reader sees
//! what held and when; a shorter form of each stands in the tests.

use anyhow::{Context, Result};

use crate::workspace::Workspace;

mod book;
mod mutants;

/// Which long run.
#[derive(Debug, Clone, Copy, clap::Subcommand)]
pub(crate) enum Long {
    /// Kills a writer of the book a thousand times and flips every byte of a small one.
    Book,
    /// Spoils the clearance and the change rules line by line, and lists what no test noticed.
    Mutants,
}

/// Carries out a long run and records what came of it.
///
/// # Errors
///
/// If something did not hold, or could not be run or written.
pub(crate) fn run(which: Long) -> Result<()> {
    let workspace = Workspace::read()?;
    std::env::set_current_dir(&workspace.root)
        .with_context(|| format!("{} cannot be entered", workspace.root.display()))?;
    match which {
        Long::Book => book::run(&workspace),
        Long::Mutants => mutants::run(&workspace),
    }
}

/// Writes the record of a run.
fn record(name: &str, text: &str) -> Result<()> {
    let path = format!("benches/long/{name}.md");
    std::fs::create_dir_all("benches/long").context("benches/long cannot be made")?;
    std::fs::write(&path, text).with_context(|| format!("{path} cannot be written"))?;
    println!("{text}\nwritten to {path}");
    Ok(())
}
