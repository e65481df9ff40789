//! Runs a program and watches it: how long it takes, how much memory it holds at most.

use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};

/// How often the memory of a running program is looked at.
const LOOK_EVERY: Duration = Duration::from_micros(500);

/// The wall time of one run, which must exit 0.
pub(super) fn time_once(command: &mut Command) -> Result<Duration> {
    let begun = Instant::now();
    let status = command.status().with_context(|| format!("{command:?} could not be started"))?;
    let taken = begun.elapsed();
    ensure!(status.success(), "{command:?} ended with {status}");
    Ok(taken)
}

/// The median wall time of several runs of a program whose output nobody reads.
pub(super) fn time_median(program: &Path, arguments: &[&str], runs: usize) -> Result<Duration> {
    let times: Vec<Duration> =
        (0..runs).map(|_| time_once(&mut quiet(program, arguments))).collect::<Result<_>>()?;
    find_median(times).context("a median needs at least one run")
}

/// The most memory that one run held, in bytes; `None` where the system does not tell.
///
/// The system keeps the peak itself, so only what is taken in the last half millisecond can be missed.
pub(super) fn find_peak(program: &Path, arguments: &[&str]) -> Result<Option<u64>> {
    let mut command = quiet(program, arguments);
    let mut child = command.spawn().with_context(|| format!("{command:?} could not be started"))?;
    let mut peak = None;
    let status = loop {
        if let Some(seen) = read_peak(&child) {
            peak = Some(seen);
        }
        if let Some(status) = child.try_wait().with_context(|| format!("{command:?} was lost"))? {
            break status;
        }
        std::thread::sleep(LOOK_EVERY);
    };
    ensure!(status.success(), "{command:?} ended with {status}");
    ensure!(
        peak.is_some() || !cfg!(target_os = "linux"),
        "{command:?} ended before its memory was looked at"
    );
    Ok(peak)
}

fn quiet(program: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).stdin(Stdio::null()).stdout(Stdio::null());
    command
}

/// The peak so far of a running program, as Linux tells it.
fn read_peak(child: &Child) -> Option<u64> {
    parse_peak(&std::fs::read_to_string(format!("/proc/{}/status", child.id())).ok()?)
}

/// Reads `VmHWM:   1234 kB`, in bytes.
fn parse_peak(status: &str) -> Option<u64> {
    let figure = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kibibytes: u64 = figure.trim().strip_suffix("kB")?.trim().parse().ok()?;
    kibibytes.checked_mul(1024)
}

/// The middle one; of an even number, the earlier of the two in the middle.
fn find_median(mut times: Vec<Duration>) -> Option<Duration> {
    times.sort();
    times.get(times.len().checked_sub(1)? / 2).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn milliseconds(times: &[u64]) -> Vec<Duration> {
        times.iter().map(|time| Duration::from_millis(*time)).collect()
    }

    #[test]
    fn the_median_is_one_of_the_times() {
        assert_eq!(find_median(milliseconds(&[9, 1, 5])), Some(Duration::from_millis(5)));
        assert_eq!(find_median(milliseconds(&[9, 1, 5, 7])), Some(Duration::from_millis(5)));
        assert_eq!(find_median(milliseconds(&[4])), Some(Duration::from_millis(4)));
        assert_eq!(find_median(Vec::new()), None);
    }

    #[test]
    fn the_peak_is_read_in_bytes() {
        assert_eq!(parse_peak("Name:\tx\nVmPeak:\t 90 kB\nVmHWM:\t    12 kB\nVmRSS:\t 8 kB\n"), Some(12_288));
        assert_eq!(parse_peak("Name:\tx\nState:\tZ (zombie)\n"), None);
        assert_eq!(parse_peak("VmHWM:\t some kB\n"), None);
    }

    #[test]
    fn a_program_that_fails_is_not_measured() {
        let ours = std::env::current_exe().unwrap();
        assert!(time_median(&ours, &["--no-such-option"], 2).is_err());
        assert!(find_peak(&ours, &["--no-such-option"]).is_err());
    }

    #[test]
    fn a_program_that_ends_well_is_measured() {
        let ours = std::env::current_exe().unwrap();
        assert!(time_median(&ours, &["--list"], 3).unwrap() > Duration::ZERO);
    }
}
