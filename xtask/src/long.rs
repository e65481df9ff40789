//! Runs that take too long for every change. Each writes its last result into the tree, so that a reader sees what
//! held and when.

use anyhow::{Context, Result};

use crate::workspace::Workspace;

mod mutants;

/// Which long run.
#[derive(Debug, Clone, Copy, clap::Subcommand)]
pub(crate) enum Long {
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
        Long::Mutants => mutants::run(&workspace),
    }
}
