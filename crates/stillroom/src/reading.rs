//! Files that a command is given.

use std::fs;
use std::io::{self, Read};
use std::path::Path;

use anyhow::{Context, Result};

use crate::ending::wrong_question;

/// The bytes of a file; `-` is standard input.
pub(crate) fn read_bytes(path: &Path) -> Result<Vec<u8>> {
    if path == Path::new("-") {
        let mut bytes = Vec::new();
        io::stdin().read_to_end(&mut bytes).context("standard input cannot be read")?;
        return Ok(bytes);
    }
    fs::read(path).map_err(|error| {
        let hint = match error.kind() {
            io::ErrorKind::NotFound => "check the name and the folder",
            _ => "check that it is a file and that you may read it",
        };
        anyhow::anyhow!("{} cannot be read: {error}; hint: {hint}", path.display())
    })
}

/// The text of a document that must be UTF-8.
pub(crate) fn read_text(path: &Path) -> Result<String> {
    String::from_utf8(read_bytes(path)?).map_err(|error| {
        let at = error.utf8_error().valid_up_to() + 1;
        wrong_question(format!(
            "{} is not UTF-8 text from byte {at} on; hint: give a JSON document",
            path.display()
        ))
    })
}
