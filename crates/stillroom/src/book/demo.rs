//! `stillroom demo`: the book of an invented household.

use std::path::PathBuf;

use anyhow::Result;
use book::{Book, SqliteStore};
use clap::Args;
use kitchen::keep::{Keeper, Seeded, write_demo};

use crate::ending::{Answered, wrong_question};

/// Make the book of an invented household, two years of it, to look around in.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom demo demo.book\n  stillroom demo demo.book --seed 7")]
pub(crate) struct DemoCommand {
    /// The new file
    file: PathBuf,
    /// Another seed makes other years
    #[arg(long, default_value_t = 1)]
    seed: u64,
}

impl DemoCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        if self.file.exists() {
            let hint = "give a new name; nothing is written over";
            return Err(wrong_question(format!("{} is there already; hint: {hint}", self.file.display())));
        }
        let store = SqliteStore::open_or_begin(&self.file)?.store;
        let mut kept = Keeper::new(Book::open(store)?, Seeded::new(self.seed), "Marta", "kitchen telephone");
        write_demo(&mut kept, self.seed).map_err(super::said)?;
        let entries = kept.book().head().position.0;
        let name = self.file.display();
        Ok(Answered::with(format!(
            "{name} holds two years of the Brandl household, {entries} entries, all invented. Look around:\n  \
             stillroom shelf list --book {name}\n  stillroom shelf first --book {name}\n  \
             stillroom tell 2025-09-01..2025-09-30 --book {name}\n"
        )))
    }
}
