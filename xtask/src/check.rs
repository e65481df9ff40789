//! Everything a change has to pass, in the order that finds a mistake soonest.
//!
//! A step either passes or ends the run with one line that names it; no step warns and goes on. Seeds and case
//! counts are set here and snapshots are compared, never written, so that two runs on one tree say the same.

use std::path::Path;
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, anyhow, bail, ensure};

use crate::workspace::{Workspace, cargo};
use crate::{guide, tidy};

/// The seed of every property test: a failure here is a failure everywhere.
const PROPERTY_SEED: &str = "20261125";

/// Cases of each property test: enough for the rare fractions, few enough for two cores.
const PROPERTY_CASES: &str = "256";

/// Runs every step.
///
/// # Errors
///
/// The first step that does not pass, by name.
pub(crate) fn run() -> Result<()> {
    let begun = Instant::now();
    let workspace = Workspace::read()?;
    std::env::set_current_dir(&workspace.root)
        .with_context(|| format!("{} cannot be entered", workspace.root.display()))?;
    // The test runner keeps to this folder even where cargo builds elsewhere.
    let report = workspace.root.join("target/nextest/default/junit.xml");
    // A report left by an earlier run must never stand for this one.
    if report.exists() {
        std::fs::remove_file(&report).with_context(|| format!("{} cannot be removed", report.display()))?;
    }

    step("format", || pass(cargo().args(["fmt", "--all", "--check"])))?;
    step("tidy", tidy::run)?;
    step("clippy", || {
        pass(cargo().args(["clippy", "--locked", "--workspace", "--all-targets", "--", "-D", "warnings"]))
    })?;
    step("tests", || pass(tested(cargo().args(["nextest", "run", "--locked", "--workspace"]))))?;
    step("doc tests", || pass(tested(cargo().args(["test", "--locked", "--workspace", "--doc"]))))?;
    step("docs", || {
        pass(cargo().args(["doc", "--locked", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
    })?;
    step("release build", || pass(cargo().args(["build", "--locked", "--release"])))?;
    let program = workspace.release_program();
    step("demo day", || pass(&mut Command::new(&program)))?;
    step("guide", || guide::compare(&program, &workspace.root))?;

    let passed = count_passed(&report)?;
    println!("check: everything passed in {} s", begun.elapsed().as_secs());
    println!("{passed} passed, 0 failed");
    Ok(())
}

/// Runs one step under its name.
fn step(name: &str, act: impl FnOnce() -> Result<()>) -> Result<()> {
    println!("check: {name}");
    act().map_err(|error| anyhow!("check stopped at {name}: {error:#}"))
}

/// Runs a command with our own output and fails unless it exits 0.
fn pass(command: &mut Command) -> Result<()> {
    let program = Path::new(command.get_program()).file_name().unwrap_or_default().display().to_string();
    let status = command.status().with_context(|| format!("{program} could not be started"))?;
    ensure!(status.success(), "{program} ended with {status}");
    Ok(())
}

/// The surroundings every test runs in.
fn tested(command: &mut Command) -> &mut Command {
    command
        .env("INSTA_UPDATE", "no")
        .env_remove("INSTA_FORCE_PASS")
        .env("PROPTEST_RNG_SEED", PROPERTY_SEED)
        .env("PROPTEST_CASES", PROPERTY_CASES)
        .env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "true")
}

/// The number of tests in the report of the test runner.
fn count_passed(report: &Path) -> Result<u64> {
    let text = std::fs::read_to_string(report)
        .with_context(|| format!("the test runner left no report at {}", report.display()))?;
    read_count(&text)
}

/// Reads `tests`, `failures` and `errors` off the opening tag of the report.
fn read_count(report: &str) -> Result<u64> {
    let tag = report
        .split_once("<testsuites ")
        .and_then(|(_, rest)| rest.split_once('>'))
        .map(|(tag, _)| tag)
        .context("the report of the test runner has no opening tag")?;
    let figure = |name: &str| -> Result<u64> {
        let opening = format!("{name}=\"");
        let (_, rest) =
            tag.split_once(&opening).with_context(|| format!("the report does not say {name}"))?;
        let (digits, _) =
            rest.split_once('"').with_context(|| format!("{name} of the report is not closed"))?;
        digits.parse().with_context(|| format!("{name} of the report is {digits:?}, not a number"))
    };
    let (tests, failures, errors) = (figure("tests")?, figure("failures")?, figure("errors")?);
    if failures + errors > 0 {
        bail!("the report of the test runner counts {failures} failures and {errors} errors");
    }
    ensure!(tests > 0, "no test ran");
    Ok(tests)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn report(tests: u64, failures: u64, errors: u64) -> String {
        format!(
            "<?xml version=\"1.0\"?>\n<testsuites name=\"nextest-run\" tests=\"{tests}\" \
             failures=\"{failures}\" errors=\"{errors}\" time=\"0.1\">\n</testsuites>\n"
        )
    }

    #[test]
    fn the_count_is_read_off_the_report() {
        assert_eq!(read_count(&report(41, 0, 0)).unwrap(), 41);
    }

    #[test]
    fn a_run_of_no_test_does_not_pass() {
        assert_eq!(read_count(&report(0, 0, 0)).unwrap_err().to_string(), "no test ran");
    }

    #[test]
    fn a_counted_failure_does_not_pass() {
        assert!(read_count(&report(9, 1, 0)).is_err());
        assert!(read_count(&report(9, 0, 1)).is_err());
    }

    #[test]
    fn a_report_without_figures_is_refused() {
        assert!(read_count("<testsuites name=\"x\">").is_err());
        assert!(read_count("").is_err());
    }

    #[test]
    fn a_step_that_fails_is_named() {
        let error = step("lint", || bail!("two warnings")).unwrap_err();
        assert_eq!(error.to_string(), "check stopped at lint: two warnings");
    }

    #[test]
    fn a_command_that_exits_badly_fails_its_step() {
        let mut ours = Command::new(std::env::current_exe().unwrap());
        assert!(pass(ours.arg("--no-such-option")).is_err());
        assert!(pass(&mut Command::new("no-such-program-anywhere")).is_err());
    }
}
