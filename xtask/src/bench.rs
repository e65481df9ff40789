//! Measures the release build against its budgets and records the run, with date and machine, in `benches/runs/`.
//!
//! Times and memory come from separate runs: watching a program's memory takes a core from it on a small machine.
//! A budget that is broken ends the command with an error after the record is written.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use anyhow::{Context, Result, bail, ensure};

use crate::workspace::{Workspace, cargo};
use machine::Machine;
use report::{Reading, Report};

mod book;
mod machine;
mod plan;
mod report;
mod watch;

/// The club day: thirty baskets and six people.
const CLUB_DAY: &str = "demo/club/day.toml";

/// Runs of the start-up measurement; the median is recorded.
const START_UP_RUNS: usize = 20;

/// Runs of each planned day; the median is recorded.
const DAY_RUNS: usize = 5;

/// What to measure beside the usual.
#[derive(Debug, clap::Args)]
pub(crate) struct Options {
    /// Another thing to measure than the whole program.
    #[command(subcommand)]
    what: Option<What>,
    /// Also measure `cargo run --release` from an empty target folder, which takes minutes.
    #[arg(long)]
    cold: bool,
}

/// Something to measure by itself.
#[derive(Debug, clap::Subcommand)]
enum What {
    /// The planner, on many days and beside a peer.
    Plan(plan::Options),
    /// The book: opening, writing, what to eat first, memory.
    Book,
}

/// Builds, measures, records, and compares with the budgets.
///
/// # Errors
///
/// If something cannot be built, run or written, or a budget is broken.
pub(crate) fn run(options: &Options) -> Result<()> {
    let workspace = Workspace::read()?;
    std::env::set_current_dir(&workspace.root)
        .with_context(|| format!("{} cannot be entered", workspace.root.display()))?;
    match &options.what {
        Some(What::Plan(options)) => return plan::run(options),
        Some(What::Book) => return book::run(&workspace),
        None => {}
    }
    ensure!(Path::new(CLUB_DAY).is_file(), "{CLUB_DAY} is not there, so the club day cannot be measured");

    let cold = if options.cold { Some(time_cold_build(&workspace)?) } else { None };
    let built =
        cargo().args(["build", "--locked", "--release"]).status().context("cargo could not be started")?;
    ensure!(built.success(), "the release build ended with {built}");

    let program = workspace.release_program();
    let demo: &[&str] = &[];
    let club: &[&str] = &["day", CLUB_DAY];
    let produce: &[&str] = &["almanac", "produce"];
    let size =
        std::fs::metadata(&program).with_context(|| format!("{} is not there", program.display()))?.len();
    let readings = vec![
        Reading::seconds("demo day", 1.0, Some(watch::time_median(&program, demo, DAY_RUNS)?)),
        Reading::seconds("club day", 10.0, Some(watch::time_median(&program, club, DAY_RUNS)?)),
        Reading::milliseconds(
            "start-up, `stillroom almanac produce`",
            30.0,
            Some(watch::time_median(&program, produce, START_UP_RUNS)?),
        ),
        Reading::megabytes("peak memory, demo day", 64.0, watch::find_peak(&program, demo)?),
        Reading::megabytes("peak memory, club day", 200.0, watch::find_peak(&program, club)?),
        Reading::megabytes("size of the program", 25.0, Some(size)),
        Reading::seconds("cold `cargo run --release`, packages already fetched", 480.0, cold),
    ];
    let report = Report { date: today(), machine: Machine::read()?, commit: read_commit()?, readings };
    record(&report)
}

/// Writes the record, prints it, and fails if a budget is broken.
fn record(report: &Report) -> Result<()> {
    let path = format!("benches/runs/{}-{}.md", report.date, report.machine.short_name());
    std::fs::create_dir_all("benches/runs").context("benches/runs cannot be made")?;
    std::fs::write(&path, report.to_string()).with_context(|| format!("{path} cannot be written"))?;
    println!("{report}\nwritten to {path}");
    let broken: Vec<&str> =
        report.readings.iter().filter(|reading| reading.is_over()).map(|r| r.what).collect();
    if !broken.is_empty() {
        bail!("over budget: {}", broken.join(", "));
    }
    Ok(())
}

/// Today's date where Greenwich is.
fn today() -> jiff::civil::Date {
    jiff::tz::Offset::UTC.to_datetime(jiff::Timestamp::now()).date()
}

/// The commit that was measured, and whether files had changed since.
fn read_commit() -> Result<String> {
    let ask = |arguments: &[&str]| -> Result<String> {
        let output = Command::new("git").args(arguments).output().context("git could not be started")?;
        ensure!(output.status.success(), "git {} failed", arguments.join(" "));
        Ok(String::from_utf8_lossy(&output.stdout).trim().to_owned())
    };
    let commit = ask(&["rev-parse", "--short", "HEAD"])?;
    let is_clean = ask(&["status", "--porcelain", "--untracked-files=no"])?.is_empty();
    Ok(if is_clean { commit } else { format!("{commit} with changes") })
}

/// How long `cargo run --release` takes in an empty target folder.
fn time_cold_build(workspace: &Workspace) -> Result<Duration> {
    let folder = workspace.target.join("cold");
    let clear = || -> Result<()> {
        if folder.exists() {
            std::fs::remove_dir_all(&folder)
                .with_context(|| format!("{} cannot be removed", folder.display()))?;
        }
        Ok(())
    };
    clear()?;
    let mut command = cargo();
    command.args(["run", "--locked", "--release"]).env("CARGO_TARGET_DIR", &folder).stdout(Stdio::null());
    let taken = watch::time_once(&mut command)?;
    clear()?;
    Ok(taken)
}
