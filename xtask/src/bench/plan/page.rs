//! What a set came to: counts for both sides, then the days one by one.

use std::fmt::{self, Write as _};

use super::library::Known;
use super::ours::{Limit, Proof, Run};
use super::sets::Set;

/// A day with what each side made of it.
#[derive(Debug)]
pub(super) struct Row {
    pub(super) name: String,
    pub(super) known: Known,
    pub(super) ours: Run,
    pub(super) peer: Option<Run>,
}

/// One set, measured.
pub(super) struct Page<'r> {
    pub(super) set: Set,
    pub(super) limit: Limit,
    pub(super) rows: &'r [Row],
}

/// More days than this are not listed one by one, only those left open.
const LISTED_MAX: usize = 60;

impl Row {
    /// The best value that either side reached.
    fn best(&self) -> u32 {
        let peer = self.peer.as_ref().and_then(|p| p.value);
        self.ours.value.max(peer).unwrap_or(0)
    }

    /// What cannot be: broken rules, proofs that deny each other or what is known.
    pub(super) fn contradictions(&self) -> Vec<String> {
        let mut found: Vec<String> = self.ours.breaches.clone();
        if let (Some(value), Some(bound)) = (self.peer.as_ref().and_then(|p| p.value), self.ours.bound)
            && value > bound
        {
            found.push(format!("the peer has {value} where at most {bound} was proved"));
        }
        if let (Some(peer), Proof::Optimal) = (&self.peer, self.ours.proof)
            && peer.value == self.ours.value
            && peer.finish < self.ours.finish
        {
            found.push(format!("the peer ends at {:?}, before {:?}", peer.finish, self.ours.finish));
        }
        if self.ours.proof == Proof::Infeasible && self.peer.as_ref().is_some_and(|p| p.value.is_some()) {
            found.push("the peer has a plan where none was said to exist".to_owned());
        }
        match (self.known, self.ours.proof, self.ours.finish) {
            (Known::NoSchedule, _, Some(finish)) => {
                found.push(format!("ends at {finish}, known to have no schedule"))
            }
            (Known::Between(low, high), Proof::Infeasible, _) => {
                found.push(format!("said to have no schedule, known to end between {low} and {high}"));
            }
            (Known::Between(low, _), _, Some(finish)) if finish < low => {
                found.push(format!("ends at {finish}, before the known bound {low}"));
            }
            (Known::Between(_, high), Proof::Optimal, Some(finish)) if finish > high => {
                found.push(format!("said to end at {finish} at best, known to end by {high}"));
            }
            _ => {}
        }
        found
    }
}

/// One side's figures over all rows.
struct Side<'r> {
    runs: Vec<(&'r Row, &'r Run)>,
    limit: f64,
}

impl Side<'_> {
    fn count(&self, holds: impl Fn(&Row, &Run) -> bool) -> String {
        self.runs.iter().filter(|(row, run)| holds(row, run)).count().to_string()
    }

    fn first_plans(&self) -> Vec<f64> {
        let mut firsts: Vec<f64> = self.runs.iter().filter_map(|(_, run)| run.first_plan()).collect();
        firsts.sort_by(f64::total_cmp);
        firsts
    }

    fn median_first(&self) -> String {
        let firsts = self.first_plans();
        firsts.get(firsts.len() / 2).map_or_else(String::new, |s| format!("{:.1} ms", s * 1000.0))
    }

    fn worst_first(&self) -> String {
        self.first_plans().last().map_or_else(String::new, |s| format!("{:.1} ms", s * 1000.0))
    }

    fn share_at(&self, seconds: f64) -> String {
        let share = |(row, run): &(&Row, &Run)| {
            let best = row.best();
            if best == 0 { 1.0 } else { f64::from(run.value_at(seconds)) / f64::from(best) }
        };
        let sum: f64 = self.runs.iter().map(share).sum();
        format!("{:.2} %", 100.0 * sum / self.runs.len().max(1) as f64)
    }

    fn total(&self) -> f64 {
        self.runs.iter().map(|(_, run)| run.decided.unwrap_or(self.limit).min(self.limit)).sum()
    }

    fn work(&self) -> String {
        format!("{:.1} M", self.runs.iter().map(|(_, run)| run.work as f64).sum::<f64>() / 1e6)
    }
}

impl fmt::Display for Page<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let limit = match self.limit {
            Limit::Seconds(seconds) => format!("{seconds} s"),
            Limit::Work(work) => format!("{work} steps of counted work"),
        };
        writeln!(f, "## {} ({} days, {limit} each, one thread)\n", self.set.name(), self.rows.len())?;
        for bar in self.set.bars() {
            writeln!(f, "- bar: {bar}")?;
        }
        self.write_counts(f)?;
        for row in self.rows {
            for found in row.contradictions() {
                writeln!(f, "- contradiction: {}: {found}", row.name)?;
            }
        }
        self.write_rows(f)
    }
}

impl Page<'_> {
    fn write_counts(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let limit = match self.limit {
            Limit::Seconds(seconds) => seconds,
            Limit::Work(_) => f64::INFINITY,
        };
        let ours = Side { runs: self.rows.iter().map(|row| (row, &row.ours)).collect(), limit };
        let peer = Side {
            runs: self.rows.iter().filter_map(|row| Some((row, row.peer.as_ref()?))).collect(),
            limit,
        };
        let has_peer = !peer.runs.is_empty();
        writeln!(f, "\n| | ours | peer |\n| --- | ---: | ---: |")?;
        let mut line = |what: &str, of: &dyn Fn(&Side<'_>) -> String| {
            let theirs = if has_peer { of(&peer) } else { String::new() };
            writeln!(f, "| {what} | {} | {theirs} |", of(&ours))
        };
        line("first plan, median", &|s| s.median_first())?;
        line("first plan, worst", &|s| s.worst_first())?;
        line("best known value within 1 s", &|s| s.count(|row, run| run.value_at(1.0) == row.best()))?;
        line("best known value in the end", &|s| s.count(|row, run| run.value.unwrap_or(0) == row.best()))?;
        line("share of the best known value at 1 s", &|s| s.share_at(1.0))?;
        line("value proved", &|s| s.count(|_, run| run.proves_value() || run.proof == Proof::Infeasible))?;
        line("value and finish proved", &|s| s.count(|_, run| run.is_decided()))?;
        line("decided within 1 s", &|s| s.count(|_, run| run.decided.is_some_and(|at| at <= 1.0)))?;
        if limit.is_finite() {
            line("seconds until decided or given up", &|s| format!("{:.1}", s.total()))?;
        }
        line("counted work", &|s| s.work())?;
        writeln!(f)
    }

    fn write_rows(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let is_listed = |row: &&Row| {
            let open = !row.ours.is_decided() || row.peer.as_ref().is_some_and(|p| !p.is_decided());
            self.rows.len() <= LISTED_MAX || open || !row.contradictions().is_empty()
        };
        writeln!(f, "\n| day | ours | first ms | decided s | work M | peer | decided s |")?;
        writeln!(f, "| --- | --- | ---: | ---: | ---: | --- | ---: |")?;
        for row in self.rows.iter().filter(is_listed) {
            let ours = &row.ours;
            let first = ours.first_plan().map_or_else(String::new, |s| format!("{:.1}", s * 1000.0));
            let (theirs, decided) =
                row.peer.as_ref().map_or_else(Default::default, |p| (tell(p), told_at(p)));
            writeln!(
                f,
                "| {} | {} | {first} | {} | {:.1} | {theirs} | {decided} |",
                row.name,
                tell(ours),
                told_at(ours),
                ours.work as f64 / 1e6
            )?;
        }
        Ok(())
    }
}

fn told_at(run: &Run) -> String {
    run.decided.map_or_else(String::new, |s| format!("{s:.2}"))
}

/// `value/finish`, and what is proved of it.
fn tell(run: &Run) -> String {
    let mut text = String::new();
    if let (Some(value), Some(finish)) = (run.value, run.finish) {
        let _ = write!(text, "{value}/{finish} ");
    }
    text.push_str(match run.proof {
        Proof::Nothing => "open",
        Proof::Value => "value",
        Proof::Optimal => "both",
        Proof::Infeasible => "none exists",
    });
    if let (Proof::Nothing, Some(bound)) = (run.proof, run.bound) {
        let _ = write!(text, " (at most {bound})");
    }
    text
}

#[cfg(test)]
mod tests {
    use super::super::ours::Mark;
    use super::*;

    fn run(value: u32, finish: u32, proof: Proof) -> Run {
        let marks = vec![Mark { seconds: 0.5, value, finish }];
        Run { marks, value: Some(value), finish: Some(finish), bound: Some(value), proof, ..Run::default() }
    }

    fn row(ours: Run, peer: Run, known: Known) -> Row {
        Row { name: "x".into(), known, ours, peer: Some(peer) }
    }

    #[test]
    fn proofs_that_deny_each_other_are_told() {
        let found = |row: Row| row.contradictions().len();
        assert_eq!(found(row(run(7, 9, Proof::Optimal), run(7, 9, Proof::Optimal), Known::Nothing)), 0);
        assert_eq!(found(row(run(7, 9, Proof::Value), run(8, 9, Proof::Nothing), Known::Nothing)), 1);
        assert_eq!(found(row(run(7, 9, Proof::Optimal), run(7, 8, Proof::Nothing), Known::Nothing)), 1);
        assert_eq!(found(row(run(0, 9, Proof::Optimal), run(0, 9, Proof::Nothing), Known::Between(5, 8))), 1);
        assert_eq!(found(row(run(0, 9, Proof::Value), run(0, 9, Proof::Nothing), Known::NoSchedule)), 1);
    }

    #[test]
    fn the_page_counts_both_sides() {
        let rows = [row(run(7, 9, Proof::Optimal), run(8, 9, Proof::Nothing), Known::Nothing)];
        let page = Page { set: Set::Hard, limit: Limit::Seconds(10.0), rows: &rows }.to_string();
        assert!(page.contains("| best known value within 1 s | 0 | 1 |\n"), "{page}");
        assert!(page.contains("| value and finish proved | 1 | 0 |\n"), "{page}");
        assert!(page.contains("- contradiction: x: the peer has 8"), "{page}");
        assert!(page.contains("| x | 7/9 both | 500.0 |"), "{page}");
    }
}
