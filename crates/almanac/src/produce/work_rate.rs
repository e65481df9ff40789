//! How long hand work takes: first guesses of our own, to be replaced by the household's records.

use measure::{Mass, Minutes};

use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, Produce};

closed_list!(
    /// A piece of hand work.
    Task {
        /// Wash.
        Wash = "wash",
        /// Trim.
        Trim = "trim",
        /// Peel.
        Peel = "peel",
        /// Core.
        Core = "core",
        /// Take the seeds out.
        Seed = "seed",
        /// Take the stems off.
        Stem = "stem",
        /// Pit.
        Pit = "pit",
        /// Slice.
        Slice = "slice",
        /// Chop.
        Chop = "chop",
        /// Shred.
        Shred = "shred",
        /// Cut up.
        Cut = "cut",
        /// Shell.
        Shell = "shell",
        /// Husk.
        Husk = "husk",
        /// Crush.
        Crush = "crush",
        /// Grind.
        Grind = "grind",
        /// Put through a sieve or mill.
        Sieve = "sieve",
        /// Strain.
        Strain = "strain",
        /// Mix.
        Mix = "mix",
        /// Press.
        Press = "press",
        /// Blister skins.
        Blister = "blister",
        /// Blanch.
        Blanch = "blanch",
        /// Pack.
        Pack = "pack",
        /// Spread out.
        Spread = "spread",
        /// Lay on trays.
        Tray = "tray",
        /// Label.
        Label = "label",
    }
);

/// How long a piece of hand work takes.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkRate {
    /// The work.
    pub task: Task,
    /// On what, and with what tool.
    pub produce: Box<str>,
    low: f64,
    typical: f64,
    high: f64,
    /// To set up and clear away.
    pub setup: Minutes,
    /// Where it comes from.
    pub citation: Citation,
}

/// How long it takes for an amount, setting up and clearing away included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WorkTime {
    /// For quick hands.
    pub low: Minutes,
    /// For most.
    pub typical: Minutes,
    /// For slow hands.
    pub high: Minutes,
}

impl WorkRate {
    /// How long it takes for so much, in whole minutes rounded up.
    #[must_use]
    pub fn time_for(&self, amount: Mass) -> WorkTime {
        // Never overflows: a rate is under an hour a kilogram, and a basket weighs less than a lorry.
        let minutes = |per_kg: f64| Minutes((per_kg * amount.as_kilograms()).ceil() as u32) + self.setup;
        WorkTime { low: minutes(self.low), typical: minutes(self.typical), high: minutes(self.high) }
    }
}

/// Reads `work_rates.csv`.
pub(super) fn read_work_rates(reading: &mut Reading<'_>) -> Vec<WorkRate> {
    const COLUMNS: &[&str] = &[
        "task",
        "produce",
        "minutes_per_kg_low",
        "minutes_per_kg_typical",
        "minutes_per_kg_high",
        "setup_min",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::WorkRates, COLUMNS, |row| {
        let rate = WorkRate {
            task: row.word("task"),
            produce: row.text("produce").into(),
            low: row.number("minutes_per_kg_low"),
            typical: row.number("minutes_per_kg_typical"),
            high: row.number("minutes_per_kg_high"),
            setup: row.minutes("setup_min"),
            citation: row.citation(),
        };
        if !(0.0 < rate.low && rate.low <= rate.typical && rate.typical <= rate.high) {
            row.contradict("low, typical and high do not rise".to_owned());
        }
        rate
    })
}

impl Almanac {
    /// Every rate of hand work.
    #[must_use]
    pub fn work_rates(&self) -> &[WorkRate] {
        &self.produce.work_rates
    }

    /// The rates of a piece of work on a kind of produce: one for each tool, as the table lists them. The words of
    /// the produce are tried in turn, the nearest first (`onions` before `root vegetables`).
    #[must_use]
    pub fn find_work_rates(&self, task: Task, produce: &Produce) -> Vec<&WorkRate> {
        let of_word = |word: &str| -> Vec<&WorkRate> {
            let rates = self.produce.work_rates.iter();
            rates.filter(|rate| rate.task == task && rate.produce.starts_with(word)).collect()
        };
        produce
            .work_words
            .iter()
            .map(|word| of_word(word))
            .find(|rates| !rates.is_empty())
            .unwrap_or_default()
    }

    /// The rates of a piece of work by words of the table, for work that belongs to no kind of produce.
    #[must_use]
    pub fn find_work_rates_for(&self, task: Task, words: &str) -> Vec<&WorkRate> {
        let rates = self.produce.work_rates.iter();
        rates.filter(|rate| rate.task == task && rate.produce.contains(words)).collect()
    }
}
