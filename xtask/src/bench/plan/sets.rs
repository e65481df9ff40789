//! The sets of days that are measured, and what each of them is held to.

use std::path::Path;

use anyhow::{Context, Result};

use super::hard;
use super::library::{Known, read_set};
use super::peer::Peer;

/// A set of the measurement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, clap::ValueEnum)]
pub(crate) enum Set {
    /// 40 days as the peer's script makes them.
    Days,
    /// 40 other days of the same kind, not looked at before.
    Unseen,
    /// 12 days of 20, 30 and 40 projects.
    Large,
    /// 40 hard days of our own making.
    Hard,
    /// PSPLIB, 480 instances of 30 activities.
    J30,
    /// 720 instances of 10 and 20 activities with greatest lags.
    Max,
    /// PSPLIB, 60 instances of 60 activities.
    J60,
    /// Time to the first plan against the number of projects.
    Growth,
    /// Memory on days of 40 projects.
    Memory,
}

/// A day to be measured.
#[derive(Debug)]
pub(super) struct Item {
    pub(super) name: String,
    pub(super) problem: dayplan::Problem,
    pub(super) known: Known,
}

/// What a set needs from outside.
pub(super) struct Sources<'s> {
    pub(super) peer: Option<&'s Peer>,
    pub(super) instances: Option<&'s Path>,
}

impl Set {
    /// Its name on the command line and in records.
    pub(super) fn name(self) -> &'static str {
        match self {
            Set::Days => "days",
            Set::Unseen => "unseen",
            Set::Large => "large",
            Set::Hard => "hard",
            Set::J30 => "j30",
            Set::Max => "max",
            Set::J60 => "j60",
            Set::Growth => "growth",
            Set::Memory => "memory",
        }
    }

    /// Seconds for each day.
    pub(super) fn seconds(self) -> f64 {
        match self {
            Set::J30 | Set::Max => 5.0,
            _ => 10.0,
        }
    }

    /// What the set is held to, in words.
    pub(super) fn bars(self) -> &'static [&'static str] {
        match self {
            Set::Days | Set::Unseen => &[
                "a checked plan within 20 ms median, 100 ms worst",
                "best known value within 1 s on 38 (aim 40)",
                "value proved on 40, value and finish on at least 34 (aim 36)",
                "ahead of the peer on each count",
            ],
            Set::Large => &[
                "a checked plan within 100 ms on each",
                "mean of the best known value at 1 s above 99 %",
                "value proved on at least 9 (aim 10)",
                "at equal value, finish at most 1.005 of the peer's",
            ],
            Set::Hard => &["at least the peer's value on each", "more proofs than the peer"],
            Set::J30 => &["at least 472 (aim 474) proved", "total time at most 0.75 (aim 0.6) of the peer's"],
            Set::Max => &["all decided", "total time at most 0.75 (aim 0.6) of the peer's"],
            Set::J60 => &["at least as many proved as the peer"],
            Set::Growth => &["below quadratic to 160 projects"],
            Set::Memory => &["under 200 MB at 40 projects"],
        }
    }

    /// Its days.
    pub(super) fn items(self, sources: &Sources<'_>) -> Result<Vec<Item>> {
        let made = |arguments: Vec<(String, Vec<String>)>| -> Result<Vec<Item>> {
            let peer = sources.peer.with_context(|| {
                format!("the set {} is made by the peer's script; hint: name it with --peer", self.name())
            })?;
            let make = |(name, arguments): (String, Vec<String>)| {
                Ok(Item { name, problem: peer.make(&arguments)?, known: Known::Nothing })
            };
            arguments.into_iter().map(make).collect()
        };
        let plain = |seeds: std::ops::RangeInclusive<u32>| {
            let seeded = |n: u32| (format!("s{n:02}"), vec!["--seed".to_owned(), n.to_string()]);
            seeds.map(seeded).collect()
        };
        match self {
            Set::Days => made(plain(1..=40)),
            Set::Unseen => made(plain(1001..=1040)),
            Set::Large => made(large_days(&[20, 30, 40])),
            Set::Memory => made(large_days(&[40])),
            Set::Hard => {
                let item = |seed| Item {
                    name: format!("h{seed:02}"),
                    problem: hard::make_day(seed),
                    known: Known::Nothing,
                };
                Ok(hard::SEEDS.map(item).collect())
            }
            Set::Growth => {
                let item = |n: u32| Item {
                    name: format!("{n} projects"),
                    problem: hard::make_day_of(n, u64::from(n)),
                    known: Known::Nothing,
                };
                Ok([5, 10, 20, 40, 80, 160].map(item).into())
            }
            Set::J30 => library(sources, &[("psplib_j30", "psplib_j30")]),
            Set::J60 => library(sources, &[("psplib_j60_sample", "psplib_j60")]),
            Set::Max => library(sources, &["sm_j10", "sm_j20", "ubo10", "ubo20"].map(|set| (set, set))),
        }
    }
}

fn large_days(sizes: &[u32]) -> Vec<(String, Vec<String>)> {
    let mut days = Vec::new();
    for size in sizes {
        for seed in 101..=104 {
            let words = format!("--seed {seed} --projects {size} --hands 3");
            days.push((format!("L{size}_{seed}"), words.split(' ').map(str::to_owned).collect()));
        }
    }
    days
}

fn library(sources: &Sources<'_>, sets: &[(&str, &str)]) -> Result<Vec<Item>> {
    let root = sources
        .instances
        .context("published instances are not in the tree; hint: name their folder with --instances")?;
    let mut items = Vec::new();
    for (folder, table) in sets {
        // The sets with greatest lags stand in a folder of their own.
        let home = if root.join(folder).is_dir() { root.to_owned() } else { root.join("rcpsp_max") };
        let table = home.join(format!("{table}_best_known.csv"));
        for instance in read_set(&home.join(folder), &table)? {
            let name = format!("{folder}/{}", instance.name);
            items.push(Item { name, problem: instance.problem, known: instance.known });
        }
    }
    Ok(items)
}
