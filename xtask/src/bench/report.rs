//! The record of one run: a Markdown page with each reading beside its budget.

use std::fmt;
use std::time::Duration;

use jiff::civil::Date;

use super::machine::Machine;

/// One run, ready to be written.
#[derive(Debug)]
pub(super) struct Report {
    pub(super) date: Date,
    pub(super) machine: Machine,
    /// The commit that was measured.
    pub(super) commit: String,
    pub(super) readings: Vec<Reading>,
}

/// One measured value and the budget it must stay under.
#[derive(Debug)]
pub(super) struct Reading {
    /// What was measured.
    pub(super) what: &'static str,
    unit: &'static str,
    budget: f64,
    /// `None` for what was not measured in this run.
    value: Option<f64>,
}

impl Reading {
    /// A time whose budget is stated in seconds.
    pub(super) fn seconds(what: &'static str, budget: f64, value: Option<Duration>) -> Reading {
        Reading { what, unit: "s", budget, value: value.map(|time| time.as_secs_f64()) }
    }

    /// A time whose budget is stated in milliseconds.
    pub(super) fn milliseconds(what: &'static str, budget: f64, value: Option<Duration>) -> Reading {
        Reading { what, unit: "ms", budget, value: value.map(|time| time.as_secs_f64() * 1000.0) }
    }

    /// A size whose budget is stated in megabytes, of a million bytes each.
    pub(super) fn megabytes(what: &'static str, budget: f64, bytes: Option<u64>) -> Reading {
        // Exact: sizes of programs and memories are far below 2^53.
        Reading { what, unit: "MB", budget, value: bytes.map(|bytes| bytes as f64 / 1_000_000.0) }
    }

    /// Whether the budget is broken. What was not measured breaks none.
    pub(super) fn is_over(&self) -> bool {
        self.value.is_some_and(|value| value >= self.budget)
    }
}

impl fmt::Display for Report {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "# Measured on {}\n", self.date)?;
        writeln!(f, "- machine: {}", self.machine)?;
        writeln!(f, "- commit: {}", self.commit)?;
        writeln!(f, "- by: `cargo xtask bench`; times are medians, memory is the system's own peak\n")?;
        writeln!(f, "| what | measured | budget | |")?;
        writeln!(f, "| --- | ---: | ---: | --- |")?;
        for reading in &self.readings {
            let (measured, verdict) = match reading.value {
                None => ("not measured".to_owned(), ""),
                Some(value) if reading.is_over() => (format!("{value:.3} {}", reading.unit), "over"),
                Some(value) => (format!("{value:.3} {}", reading.unit), "within"),
            };
            writeln!(
                f,
                "| {} | {measured} | {} {} | {verdict} |",
                reading.what, reading.budget, reading.unit
            )?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_budget_is_broken_at_its_figure() {
        assert!(!Reading::seconds("x", 1.0, Some(Duration::from_millis(999))).is_over());
        assert!(Reading::seconds("x", 1.0, Some(Duration::from_secs(1))).is_over());
        assert!(Reading::milliseconds("x", 30.0, Some(Duration::from_millis(31))).is_over());
        assert!(Reading::megabytes("x", 64.0, Some(64_000_000)).is_over());
        assert!(!Reading::megabytes("x", 64.0, Some(63_999_999)).is_over());
        assert!(!Reading::seconds("x", 1.0, None).is_over());
    }

    #[test]
    fn the_page_shows_value_budget_and_verdict() {
        let machine = Machine { processor: "Example 9".into(), cores: 2, system: "linux x".into() };
        let readings = vec![
            Reading::seconds("demo day", 1.0, Some(Duration::from_millis(250))),
            Reading::megabytes("size", 25.0, Some(26_000_000)),
            Reading::seconds("cold", 480.0, None),
        ];
        let page =
            Report { date: jiff::civil::date(2026, 11, 25), machine, commit: "abc1234".into(), readings }
                .to_string();
        assert!(
            page.starts_with("# Measured on 2026-11-25\n\n- machine: Example 9, 2 cores, linux x\n"),
            "{page}"
        );
        assert!(page.contains("| demo day | 0.250 s | 1 s | within |\n"), "{page}");
        assert!(page.contains("| size | 26.000 MB | 25 MB | over |\n"), "{page}");
        assert!(page.contains("| cold | not measured | 480 s |  |\n"), "{page}");
    }
}
