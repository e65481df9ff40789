//! The book under a thousand kills, and with every byte of a small one flipped.

use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::workspace::{Workspace, cargo};

/// How often a writer is killed.
const KILLS: &str = "1000";

/// Where the moments of the kills come from.
const SEED: &str = "20261125";

/// Every byte.
const STRIDE: &str = "1";

/// Builds the hand that writes and is killed, and lets it do both runs.
///
/// # Errors
///
/// If something acknowledged was missing, a flip went unnoticed, or the runs could not be made.
pub(super) fn run(workspace: &Workspace) -> Result<()> {
    let built = cargo()
        .args(["build", "--locked", "-p", "book", "--bin", "book-hand"])
        .status()
        .context("cargo could not be started")?;
    ensure!(built.success(), "the hand could not be built: {built}");
    let hand = workspace.target.join("debug").join(format!("book-hand{}", std::env::consts::EXE_SUFFIX));
    let folder = workspace.target.join("long-book");
    if folder.exists() {
        std::fs::remove_dir_all(&folder)
            .with_context(|| format!("{} cannot be emptied", folder.display()))?;
    }
    std::fs::create_dir_all(&folder).with_context(|| format!("{} cannot be made", folder.display()))?;
    let ask = |words: &[&str]| -> Result<String> {
        let output = Command::new(&hand)
            .arg(words[0])
            .arg(&folder)
            .args(&words[1..])
            .output()
            .with_context(|| format!("{} could not be started", hand.display()))?;
        let said = String::from_utf8_lossy(&output.stdout).trim().to_owned();
        ensure!(output.status.success(), "{}: {said}", words.join(" "));
        Ok(said)
    };
    let kills = ask(&["ordeal", KILLS, SEED])?;
    let flips = ask(&["flips", STRIDE])?;
    let today = jiff::tz::Offset::UTC.to_datetime(jiff::Timestamp::now()).date();
    super::record(
        "book",
        &format!(
            "# The book under faults, {today}\n\nBy `cargo xtask long book`, on {} {}.\n\n- Killed while writing: {kills}.\n\
             - One bit flipped in each byte: {flips}.\n",
            std::env::consts::OS,
            std::env::consts::ARCH
        ),
    )
}
