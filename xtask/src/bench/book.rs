//! The book against its budgets: opening, writing beside a bare insert of the same bytes, what to eat first, memory.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::process::Command;

use anyhow::{Context, Result, bail, ensure};

use super::machine::Machine;
use crate::workspace::{Workspace, cargo};

/// What is measured: the name the hand prints, what it is, the unit, the budget, and whether more is better.
const BUDGETS: [(&str, &str, &str, f64, bool); 8] = [
    ("open-snapshot-ms", "60,000 entries, open to first answer, from a snapshot", "ms", 80.0, false),
    ("open-texts-ms", "60,000 entries, open to first answer, from the texts", "ms", 400.0, false),
    ("append-ratio", "append, against a bare SQLite insert of the same bytes", "times", 1.3, false),
    ("eat-first-per-s", "what to eat first, twenty lots", "a second", 2_000.0, true),
    ("memory-bytes", "60,000 entries, most memory", "bytes", 120_000_000.0, false),
    ("open-10000-ms", "10,000 entries, open from a snapshot", "ms", 3_000.0, false),
    ("open-100000-ms", "100,000 entries, open from a snapshot", "ms", 3_000.0, false),
    ("open-1000000-ms", "1,000,000 entries, open from a snapshot", "ms", 3_000.0, false),
];

/// Builds, measures, records, and compares with the budgets.
///
/// # Errors
///
/// If something cannot be built, run or written, or a budget is broken.
pub(super) fn run(workspace: &Workspace) -> Result<()> {
    let built = cargo()
        .args(["build", "--locked", "--release", "-p", "book", "--bin", "book-hand"])
        .status()
        .context("cargo could not be started")?;
    ensure!(built.success(), "the release build ended with {built}");
    let hand = workspace.target.join("release").join(format!("book-hand{}", std::env::consts::EXE_SUFFIX));
    let folder = workspace.target.join("bench-book");
    if folder.exists() {
        std::fs::remove_dir_all(&folder)
            .with_context(|| format!("{} cannot be emptied", folder.display()))?;
    }
    std::fs::create_dir_all(&folder).with_context(|| format!("{} cannot be made", folder.display()))?;
    let output = Command::new(&hand)
        .arg("measure")
        .arg(&folder)
        .output()
        .with_context(|| format!("{} could not be started", hand.display()))?;
    ensure!(output.status.success(), "measuring failed: {}", String::from_utf8_lossy(&output.stderr));
    std::fs::remove_dir_all(&folder).with_context(|| format!("{} cannot be removed", folder.display()))?;
    record(&read(&String::from_utf8_lossy(&output.stdout))?)
}

/// The numbers by name.
fn read(text: &str) -> Result<BTreeMap<String, f64>> {
    text.lines()
        .map(|line| {
            let (name, number) = line.split_once('\t').with_context(|| format!("{line:?} is no reading"))?;
            Ok((name.to_owned(), number.parse().with_context(|| format!("{number:?} is no number"))?))
        })
        .collect()
}

fn record(readings: &BTreeMap<String, f64>) -> Result<()> {
    let machine = Machine::read()?;
    let today = super::today();
    let mut text = format!(
        "# The book, measured on {today}\n\n- machine: {machine}\n- commit: {}\n- by: `cargo xtask bench book`; times are \
         medians; the peer ran in the same run, turn by turn\n\n| what | measured | budget | |\n| --- | ---: | ---: | --- |\n",
        super::read_commit()?
    );
    let mut broken = Vec::new();
    for (name, what, unit, budget, more_is_better) in BUDGETS {
        let value = *readings.get(name).with_context(|| format!("{name} was not measured"))?;
        let within = if more_is_better { value >= budget } else { value <= budget };
        let verdict = if within { "within" } else { "over" };
        writeln!(text, "| {what} | {value:.2} {unit} | {budget} {unit} | {verdict} |")?;
        if !within {
            broken.push(what);
        }
    }
    let path = format!("benches/runs/book-{today}-{}.md", machine.short_name());
    std::fs::create_dir_all("benches/runs").context("benches/runs cannot be made")?;
    std::fs::write(&path, &text).with_context(|| format!("{path} cannot be written"))?;
    println!("{text}\nwritten to {path}");
    if !broken.is_empty() {
        bail!("outside the budget: {}", broken.join(", "));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_are_read_by_name() {
        assert_eq!(
            read("a\t1.5\nb\t2\n").unwrap(),
            BTreeMap::from([("a".to_owned(), 1.5), ("b".to_owned(), 2.0)])
        );
        assert!(read("a 1.5").is_err());
        assert!(read("a\tfast").is_err());
    }
}
