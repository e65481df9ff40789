//! The planner's documents, read whole with every fault.

use std::path::Path;

use anyhow::Result;
use dayplan::Fault;

use crate::ending::wrong_question;
use crate::reading::read_text;

/// Reads a document, or says every fault of it with the name of its file.
pub(super) fn read_document<T>(path: &Path, read: fn(&str) -> Result<T, Vec<Fault>>) -> Result<T> {
    let text = read_text(path)?;
    read(&text).map_err(|faults| {
        let lines: Vec<String> = faults.iter().map(|fault| format!("{}: {fault}", path.display())).collect();
        wrong_question(lines.join("\n"))
    })
}
