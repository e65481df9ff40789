//! The book at the command line: where it lies, who writes, and the commands.

pub(crate) mod basket;
pub(crate) mod demo;
pub(crate) mod draw;
pub(crate) mod file;
mod lay;
pub(crate) mod load;
pub(crate) mod lot;
pub(crate) mod put_up;
pub(crate) mod shelf;
pub(crate) mod tell;
pub(crate) mod undo;
pub(crate) mod working;

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, anyhow};
use book::{Book, Id, Moment, SqliteStore, rotate_backups};
use clap::Args;
use etcetera::BaseStrategy as _;
use jiff::Timestamp;
use kitchen::keep::{IdMaker, KeepError, Keeper};

use crate::ending::wrong_question;

/// Where the book is, and who writes in it.
#[derive(Debug, Args)]
pub(crate) struct Place {
    /// The book's file; without it, the one in your data folder
    #[arg(long, value_name = "FILE", env = "STILLROOM_BOOK", hide_env_values = true)]
    book: Option<PathBuf>,
    /// Who writes it down
    #[arg(
        long,
        value_name = "NAME",
        env = "STILLROOM_WHO",
        hide_env_values = true,
        default_value = "the house"
    )]
    who: String,
}

/// The keeper of a book in a file.
pub(crate) type Kept = Keeper<SqliteStore, Chance>;

/// Ids by the chance of the system.
#[derive(Debug)]
pub(crate) struct Chance;

impl IdMaker for Chance {
    fn make(&mut self, now: Timestamp) -> Id {
        let mut chance = [0; 10];
        getrandom::fill(&mut chance).expect("a system without chance cannot run programs either");
        Id::make(now, chance)
    }
}

impl Place {
    /// The file.
    pub(crate) fn path(&self) -> Result<PathBuf> {
        if let Some(path) = &self.book {
            return Ok(path.clone());
        }
        let folders = etcetera::choose_base_strategy()
            .map_err(|_| anyhow!("no data folder is known; hint: say where the book is, with --book FILE"))?;
        Ok(folders.data_dir().join("stillroom").join("house.book"))
    }

    /// Opens the book to look at it.
    pub(crate) fn open(&self) -> Result<Kept> {
        let path = self.path()?;
        if !path.exists() {
            return Err(wrong_question(format!(
                "there is no book at {} yet; hint: the first thing written down begins it, for instance: stillroom \
                 put-up \"damson jam, 9 half-pints\"",
                path.display()
            )));
        }
        self.keep(SqliteStore::open(&path)?)
    }

    /// Opens the book to write in it, and begins it where there is none.
    pub(crate) fn open_or_begin(&self) -> Result<Kept> {
        self.keep(SqliteStore::open_or_begin(&self.path()?)?)
    }

    fn keep(&self, opened: book::Opened) -> Result<Kept> {
        for note in &opened.notes {
            tell_aside(&note.to_string());
        }
        Ok(Keeper::new(Book::open(opened.store)?, Chance, &self.who, &device()))
    }

    /// Writes with the book open, then makes the day's backup.
    pub(crate) fn write<T>(&self, act: impl FnOnce(&mut Kept, &Moment) -> Result<T, KeepError>) -> Result<T> {
        let mut kept = self.open_or_begin()?;
        let now = now();
        let answer = act(&mut kept, &now).map_err(said)?;
        look_after(&mut kept, &now);
        Ok(answer)
    }

    /// Looks with the book open.
    pub(crate) fn read<T>(&self, look: impl FnOnce(&Kept, &Moment) -> Result<T, KeepError>) -> Result<T> {
        look(&self.open()?, &now()).map_err(said)
    }
}

/// A snapshot and a backup when it is time. What was written is saved already, so a fault here is told and no more.
fn look_after(kept: &mut Kept, now: &Moment) {
    if let Err(fault) = kept.book_mut().keep_snapshot() {
        tell_aside(&fault.to_string());
    }
    let store = kept.book().store();
    if let Err(fault) = rotate_backups(store, &backups_of(store.path()), now.date()) {
        tell_aside(&format!("what you wrote is saved, but today's backup was not made: {fault}"));
    }
}

/// The folder of the daily backups, beside the book.
pub(crate) fn backups_of(book: &Path) -> PathBuf {
    let mut name = book.file_name().unwrap_or_default().to_owned();
    name.push(".backups");
    book.with_file_name(name)
}

/// The clock on the wall.
pub(crate) fn now() -> Moment {
    Moment::of(&jiff::ZonedDateTime::now())
}

/// The name of this machine in the journal.
fn device() -> String {
    std::env::var("STILLROOM_DEVICE").unwrap_or_else(|_| "command line".to_owned())
}

/// Whether the question was wrong or the world.
pub(crate) fn said(error: KeepError) -> anyhow::Error {
    if error.is_of_the_question() { wrong_question(error) } else { error.into() }
}

/// Says something beside the answer, on standard error.
pub(crate) fn tell_aside(words: &str) {
    let words = words.replace("; hint: ", "\nhint: ");
    anstream::eprintln!("note: {words}");
}

/// The answer as JSON.
pub(crate) fn as_json(answer: &impl serde::Serialize) -> Result<String> {
    Ok(serde_json::to_string_pretty(answer).context("the answer cannot be written as JSON")? + "\n")
}
