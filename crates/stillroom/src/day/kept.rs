//! A planned day that was kept as JSON.

use std::path::Path;

use anyhow::Result;
use kitchen::saved::SavedDay;

use crate::ending::wrong_question;
use crate::reading::read_text;

/// Reads a kept day, or says why it cannot be gone on with.
pub(super) fn read_day_kept(path: &Path) -> Result<SavedDay> {
    let text = read_text(path)?;
    SavedDay::from_json(&text).map_err(|fault| wrong_question(format!("{}: {fault}", path.display())))
}
