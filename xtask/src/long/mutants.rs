//! Every line of the clearance spoiled in turn: a spoiling that no test notices is listed.
//!
//! `cargo-mutants` must be installed. The reasons beside the survivors stand in `docs/methods/mutants.md`, which is
//! written by hand from the list this run leaves.

use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::workspace::Workspace;

/// What is spoiled: everything that can turn a refusal into a permission.
const FILES: &[(&str, &str)] = &[
    ("batch", "crates/batch/src/clear/**/*.rs"),
    ("almanac", "crates/almanac/src/change.rs"),
    ("almanac", "crates/almanac/src/process/find.rs"),
];

/// Longer than any of the tests takes, in seconds: a spoiling that never ends is noticed by this.
const TIMEOUT_S: &str = "240";

/// Spoils, and counts what no test noticed.
///
/// # Errors
///
/// If the run cannot be made.
pub(super) fn run(workspace: &Workspace) -> Result<()> {
    let folder = workspace.target.join("long-mutants");
    let mut command = Command::new("cargo");
    command.args(["mutants", "--test-tool", "nextest", "--no-shuffle", "-j1", "--timeout", TIMEOUT_S]);
    command.arg("--output").arg(&folder);
    for (package, file) in FILES {
        command.args(["--package", package, "--file", file]);
    }
    let status =
        command.status().context("cargo mutants could not be started; is cargo-mutants installed")?;
    let list = folder.join("mutants.out").join("missed.txt");
    let missed = std::fs::read_to_string(&list)
        .with_context(|| format!("{} cannot be read; the run ended with {status}", list.display()))?;
    let caught = folder.join("mutants.out").join("caught.txt");
    let caught = std::fs::read_to_string(&caught).map_or(0, |text| text.lines().count());
    ensure!(caught > 0, "no spoiling was noticed by any test: the run ended with {status}");
    println!("{caught} spoilings were noticed, {} were not:\n{missed}", missed.lines().count());
    println!(
        "Give each its reason in docs/methods/mutants.md; one that loosens an answer needs a test instead."
    );
    Ok(())
}
