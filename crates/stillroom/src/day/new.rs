//! `stillroom day new`.

use std::fs::OpenOptions;
use std::io::{self, Write};
use std::path::PathBuf;

use anyhow::{Result, anyhow};
use clap::Args;
use kitchen::new_day_file;

use crate::ending::Answered;

const EXAMPLES: &str = "\
Examples:
  stillroom day new              print a day file
  stillroom day new day.toml     write one; what stands there is not overwritten";

/// Write a commented day file to start from.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct NewDay {
    /// Where to write it; without a file it is printed
    file: Option<PathBuf>,
    /// Overwrite what stands there
    #[arg(long, requires = "file")]
    force: bool,
}

impl NewDay {
    pub(crate) fn run(&self) -> Result<Answered> {
        let text = new_day_file(jiff::ZonedDateTime::now().date());
        let Some(file) = &self.file else { return Ok(Answered::with(text)) };
        let mut options = OpenOptions::new();
        options.write(true);
        if self.force {
            options.create(true).truncate(true);
        } else {
            options.create_new(true);
        }
        let written = options.open(file).and_then(|mut open| open.write_all(text.as_bytes()));
        written.map_err(|error| {
            let hint = match error.kind() {
                io::ErrorKind::AlreadyExists => "give another name, or --force to overwrite it",
                _ => "check that the folder is there and that you may write in it",
            };
            anyhow!("{} is not written: {error}; hint: {hint}", file.display())
        })?;
        let name = file.display();
        Ok(Answered::with(format!("{name} is written. Fill it in, then: stillroom day {name}\n")))
    }
}
