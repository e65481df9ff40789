//! The house file as a command is given it, and the year it is read in.

use std::path::{Path, PathBuf};

use almanac::Almanac;
use anyhow::Result;
use clap::Args;
use kitchen::copied::{HouseFormulas, read_house_formulas};

use crate::ending::wrong_question;
use crate::reading::read_bytes;

/// The file that is looked for where the command is run.
const HOUSE_FILE: &str = "house.toml";

/// Which house file.
#[derive(Debug, Args)]
pub(crate) struct HouseFile {
    /// The house file; without it, house.toml where the command is run
    #[arg(long, value_name = "FILE")]
    house: Option<PathBuf>,
}

impl HouseFile {
    /// The file as it is called in a message.
    pub(crate) fn path(&self) -> &Path {
        self.house.as_deref().unwrap_or(Path::new(HOUSE_FILE))
    }

    /// The file that was named, if one was.
    pub(crate) fn named(&self) -> Option<&Path> {
        self.house.as_deref()
    }

    /// Its copied and own formulas, each copied one checked.
    pub(crate) fn read_formulas(&self, almanac: &Almanac) -> Result<HouseFormulas> {
        let this_year = jiff::ZonedDateTime::now().date().year();
        // Never below zero: no clock stands before the first year.
        let this_year = u16::try_from(this_year).unwrap_or_default();
        let read = read_house_formulas(almanac, &read_bytes(self.path())?, this_year);
        read.map_err(|faults| {
            let name = self.path().display().to_string();
            let lines: Vec<String> = faults
                .faults
                .iter()
                .map(|fault| {
                    let (line, column, kind) = (fault.line, fault.column, &fault.kind);
                    format!("{name}:{line}:{column}: {kind}\n  hint: {}", kind.hint())
                })
                .collect();
            wrong_question(lines.join("\n"))
        })
    }
}
