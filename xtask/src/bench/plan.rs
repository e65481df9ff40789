//! Measures the planner: how good its plans are, how much it proves and how soon, beside a peer on the same days.
//!
//! The peer is a general exact solver behind a script of one's own, called with `--peer SCRIPT`; without it only our
//! side is measured. Published instances are read from the folder given with `--instances DIR`. Each set can be run
//! alone. The record of a run goes to `benches/runs/`.

use std::fmt::Write as _;
use std::path::PathBuf;

use anyhow::{Context, Result, bail, ensure};
use dayplan::Problem;

use self::ours::Limit;
use self::page::{Page, Row};
use self::peer::Peer;
use self::sets::{Item, Set, Sources};
use super::machine::Machine;
use super::{read_commit, today, watch};
use crate::workspace::cargo;

mod hard;
mod library;
mod ours;
mod page;
mod peer;
mod sets;

/// What of the planner to measure.
#[derive(Debug, clap::Args)]
pub(crate) struct Options {
    /// The sets to run, one after another; all of them when none is named.
    #[arg(long = "set", value_name = "SET")]
    sets: Vec<Set>,
    /// A script that makes days and solves them: the peer.
    #[arg(long, value_name = "SCRIPT", env = "STILLROOM_PEER")]
    peer: Option<PathBuf>,
    /// Take days from the peer's script, but do not let it solve them.
    #[arg(long)]
    alone: bool,
    /// The folder of published instances.
    #[arg(long, value_name = "DIR", env = "STILLROOM_INSTANCES")]
    instances: Option<PathBuf>,
    /// Only the first so many days of each set.
    #[arg(long, value_name = "N")]
    first: Option<usize>,
    /// Only days whose name holds this.
    #[arg(long, value_name = "TEXT")]
    only: Option<String>,
    /// Another time limit for each day, in seconds.
    #[arg(long, value_name = "S")]
    seconds: Option<f64>,
    /// A limit of counted work for each day in place of time: the same on any machine.
    #[arg(long, value_name = "STEPS", conflicts_with = "seconds")]
    work: Option<u64>,
    /// Print the result and write no record.
    #[arg(long)]
    dry: bool,
    /// Solve one day file and say nothing: what the memory of a run is measured on.
    #[arg(long, value_name = "FILE", hide = true)]
    one: Option<PathBuf>,
}

/// Runs the sets asked for and records what came of them.
///
/// # Errors
///
/// If a set's source is missing, something cannot be run or written, or an answer contradicts what is known.
pub(super) fn run(options: &Options) -> Result<()> {
    if cfg!(debug_assertions) {
        return run_release();
    }
    if let Some(path) = &options.one {
        let text =
            std::fs::read_to_string(path).with_context(|| format!("{} cannot be read", path.display()))?;
        let problem = Problem::from_json(&text).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
        ours::solve(&problem, limit_for(options, Set::Memory));
        return Ok(());
    }
    let peer = options.peer.as_deref().map(Peer::new).transpose()?;
    let sources = Sources { peer: peer.as_ref(), instances: options.instances.as_deref() };
    let all = <Set as clap::ValueEnum>::value_variants();
    let sets = if options.sets.is_empty() { all } else { options.sets.as_slice() };
    let mut contradictions = 0;
    for &set in sets {
        let mut items = set.items(&sources)?;
        items.retain(|item| options.only.as_ref().is_none_or(|text| item.name.contains(text)));
        items.truncate(options.first.unwrap_or(usize::MAX));
        let text = match set {
            Set::Growth => measure_growth(&items),
            Set::Memory => measure_memory(&items)?,
            _ => {
                let rows = measure(options, set, items, peer.as_ref().filter(|_| !options.alone))?;
                contradictions += rows.iter().map(|row| row.contradictions().len()).sum::<usize>();
                Page { set, limit: limit_for(options, set), rows: &rows }.to_string()
            }
        };
        record(options, set, &text)?;
    }
    ensure!(contradictions == 0, "{contradictions} answers contradict what is known: see the lines above");
    Ok(())
}

/// The same command, built for speed: times of a debug build would say nothing.
fn run_release() -> Result<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let status = cargo()
        .args(["run", "-q", "--locked", "--release", "-p", "xtask", "--"])
        .args(arguments)
        .status()
        .context("cargo could not be started")?;
    if !status.success() {
        bail!("the measurement ended with {status}");
    }
    Ok(())
}

fn limit_for(options: &Options, set: Set) -> Limit {
    match options.work {
        Some(work) => Limit::Work(work),
        None => Limit::Seconds(options.seconds.unwrap_or(set.seconds())),
    }
}

fn measure(options: &Options, set: Set, items: Vec<Item>, peer: Option<&Peer>) -> Result<Vec<Row>> {
    let limit = limit_for(options, set);
    let seconds = options.seconds.unwrap_or(set.seconds());
    let mut rows = Vec::new();
    for item in items {
        let ours = ours::solve(&item.problem, limit);
        let peer = peer.map(|peer| peer.solve(&item.problem, seconds)).transpose()?;
        eprintln!("{} {}: {:.2} s", set.name(), item.name, ours.seconds);
        rows.push(Row { name: item.name, known: item.known, ours, peer });
    }
    Ok(rows)
}

/// Seconds to the first plan is what is looked at; a little more work is allowed so that there is one.
const GROWTH_SECONDS: f64 = 2.0;

fn measure_growth(items: &[Item]) -> String {
    let mut text = String::from(
        "## growth (hard days of our own making)\n\n| day | first plan ms | best value at 2 s |\n",
    );
    text.push_str("| --- | ---: | ---: |\n");
    for item in items {
        let run = ours::solve(&item.problem, Limit::Seconds(GROWTH_SECONDS));
        let first = run.first_plan().map_or_else(String::new, |s| format!("{:.2}", s * 1000.0));
        let _ = writeln!(text, "| {} | {first} | {} |", item.name, run.value.unwrap_or(0));
    }
    text
}

fn measure_memory(items: &[Item]) -> Result<String> {
    let program = std::env::current_exe().context("this program cannot be found")?;
    let file = std::env::temp_dir().join(format!("stillroom-bench-day-{}.json", std::process::id()));
    let mut text = String::from("## memory\n\n| day | peak MB |\n| --- | ---: |\n");
    for item in items {
        std::fs::write(&file, item.problem.to_json())
            .with_context(|| format!("{} cannot be written", file.display()))?;
        let name = file.display().to_string();
        let peak = watch::find_peak(&program, &["bench", "plan", "--one", &name])?;
        let told = peak.map_or_else(|| "not told".to_owned(), |bytes| format!("{:.1}", bytes as f64 / 1e6));
        let _ = writeln!(text, "| {} | {told} |", item.name);
    }
    std::fs::remove_file(&file).with_context(|| format!("{} cannot be removed", file.display()))?;
    Ok(text)
}

fn record(options: &Options, set: Set, text: &str) -> Result<()> {
    println!("{text}");
    if options.dry {
        return Ok(());
    }
    let machine = Machine::read()?;
    let path = format!("benches/runs/{}-plan-{}-{}.md", today(), set.name(), machine.short_name());
    let head = format!(
        "# The planner measured on {}\n\n- machine: {machine}\n- commit: {}\n- by: `cargo xtask bench plan --set {}`\n\n",
        today(),
        read_commit()?,
        set.name()
    );
    std::fs::create_dir_all("benches/runs").context("benches/runs cannot be made")?;
    std::fs::write(&path, head + text).with_context(|| format!("{path} cannot be written"))?;
    println!("written to {path}");
    Ok(())
}
