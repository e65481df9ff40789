//! `stillroom book`: the file itself.

use std::io::Write as _;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use book::{BackupError, export_lines, read_lines, restore_book};
use clap::{Args, Subcommand};

use super::{Place, now};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;
use crate::reading::read_text;
use kitchen::wording::{as_sentence, capitalize};

/// The book's file: verify, export, import, back up, restore.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom book verify\n  stillroom book backup stick.backup\n  stillroom book export book.jsonl"
)]
pub(crate) struct BookCommand {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Read everything and compare it with everything that can be compared
    #[command(after_help = "Examples:\n  stillroom book verify")]
    Verify {
        /// Take the book as it is for the right one, whatever was there before
        #[arg(long)]
        accept: bool,
        #[command(flatten)]
        place: Place,
    },
    /// Write every entry as plain text, one a line
    #[command(
        after_help = "Examples:\n  stillroom book export book.jsonl\n  stillroom book export > book.jsonl"
    )]
    Export {
        /// Where to; without it, standard output
        file: Option<PathBuf>,
        #[command(flatten)]
        place: Place,
    },
    /// Add the entries of an exported file that are not here yet
    #[command(after_help = "Examples:\n  stillroom book import book.jsonl")]
    Import {
        /// The file; - for standard input
        file: PathBuf,
        #[command(flatten)]
        place: Place,
    },
    /// Copy the book into a new file, in use or not
    #[command(after_help = "Examples:\n  stillroom book backup stick.backup")]
    Backup {
        /// The new file
        file: PathBuf,
        #[command(flatten)]
        place: Place,
    },
    /// Put a backup in the book's place; the old file is kept
    #[command(after_help = "Examples:\n  stillroom book restore stick.backup")]
    Restore {
        /// The backup
        file: PathBuf,
        #[command(flatten)]
        place: Place,
    },
    /// Say where the book and its backups lie
    #[command(after_help = "Examples:\n  stillroom book path")]
    Path {
        #[command(flatten)]
        place: Place,
    },
}

impl BookCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        match &self.what {
            What::Verify { accept, place } => verify(place, *accept),
            What::Export { file, place } => export(place, file.as_ref()),
            What::Import { file, place } => import(place, file),
            What::Backup { file, place } => {
                let head = place.open()?.book().store().back_up(file).map_err(said)?;
                let text = format!(
                    "{} entries are copied to {} and were read there.\n",
                    head.position.0,
                    file.display()
                );
                Ok(Answered::with(text))
            }
            What::Restore { file, place } => {
                let path = place.path()?;
                let (head, kept) = restore_book(file, &path, now().at()).map_err(said)?;
                let kept = kept.map(|kept| format!("What was there is kept as {}.\n", kept.display()));
                Ok(Answered::with(format!(
                    "{} holds {} entries again.\n{}",
                    path.display(),
                    head.position.0,
                    kept.unwrap_or_default()
                )))
            }
            What::Path { place } => {
                let path = place.path()?;
                Ok(Answered::with(format!("{}\n{}\n", path.display(), super::backups_of(&path).display())))
            }
        }
    }
}

fn said(error: BackupError) -> anyhow::Error {
    match error {
        BackupError::Exists { .. } | BackupError::InUse { .. } => wrong_question(error),
        other => other.into(),
    }
}

fn verify(place: &Place, accept: bool) -> Result<Answered> {
    // The store alone: a damaged book is to be looked at, though no view can be drawn from it.
    let path = place.path()?;
    let mut opened = book::SqliteStore::open(&path)?;
    if accept {
        opened.store.accept_as_it_is()?;
    } else {
        opened.notes.iter().for_each(|note| super::tell_aside(&note.to_string()));
    }
    let found = opened.store.verify()?;
    let mut leaf = Leaf::head(
        if found.damages.is_empty() { "The book is whole." } else { "The book is damaged." },
        &[format!("{} entries, the last with the link {}", found.entries, found.head.link)],
    );
    leaf.section(&path.display().to_string());
    for damage in found.damages.iter().take(MOST_TOLD) {
        leaf.line("damage", &as_sentence(&damage.to_string()));
    }
    for (kind, count) in &found.unknown {
        leaf.line(
            &count.to_string(),
            &format!("{kind}: written by a newer program; kept, and counted nowhere"),
        );
    }
    if !found.loose.is_empty() {
        let count = found.loose.len();
        leaf.line(
            &count.to_string(),
            "that correct or strike what is not here yet; import the other book to complete them",
        );
    }
    if found.damages.is_empty() {
        leaf.line("", "Every entry is the one that was written, none is missing.");
        return Ok(Answered::with(leaf.finish()));
    }
    leaf.line("", "Leave this file as it is. Restore the last good backup: stillroom book restore FILE");
    Ok(Answered::refusing(leaf.finish()))
}

/// How many damages are told one by one.
const MOST_TOLD: usize = 20;

fn export(place: &Place, file: Option<&PathBuf>) -> Result<Answered> {
    let kept = place.open()?;
    let mut text = String::new();
    let head = export_lines(kept.book().store(), &mut |part| text += part)?;
    let Some(file) = file else { return Ok(Answered::with(text)) };
    let write = || -> std::io::Result<()> {
        let mut open = std::fs::OpenOptions::new().write(true).create_new(true).open(file)?;
        open.write_all(text.as_bytes())?;
        open.sync_all()
    };
    write().with_context(|| {
        format!("{} is not written; hint: give a new name in a folder that is there", file.display())
    })?;
    Ok(Answered::with(format!("{} entries are written to {}.\n", head.position.0, file.display())))
}

fn import(place: &Place, file: &Path) -> Result<Answered> {
    let entries =
        read_lines(&read_text(file)?).map_err(|faults| wrong_question(capitalize(&faults.to_string())))?;
    let mut kept = place.open_or_begin()?;
    let added = kept.book_mut().merge(&entries)?;
    kept.book_mut().keep_snapshot()?;
    let known = entries.len() as u64 - added;
    Ok(Answered::with(format!("{added} entries are added; {known} were here already.\n")))
}
