//! A plan in the making: for each project, the way chosen and its starts.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::day::Day;
use crate::plan::Chosen;
use crate::problem::Problem;

/// A way with its starts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pick {
    pub(super) way: usize,
    pub(super) starts: Vec<i32>,
}

/// One pick or none per project.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Draft {
    pub(super) picks: Vec<Option<Pick>>,
}

impl Draft {
    pub(super) fn empty(day: &Day) -> Draft {
        Draft { picks: vec![None; day.projects.len()] }
    }

    pub(super) fn value(&self, day: &Day) -> i32 {
        self.chosen().map(|p| day.ways[p.way].value).sum()
    }

    /// The last end of a step, 0 when nothing is chosen.
    pub(super) fn finish(&self, day: &Day) -> i32 {
        let ends = self.chosen().flat_map(|p| {
            let minutes = &day.ways[p.way].minutes;
            p.starts.iter().zip(minutes).map(|(s, m)| s + m)
        });
        ends.max().unwrap_or(0)
    }

    fn sum_of_starts(&self) -> i64 {
        self.chosen().flat_map(|p| &p.starts).map(|&s| i64::from(s)).sum()
    }

    /// What the format calls better, as a number that is greater for the better draft.
    pub(super) fn rank(&self, day: &Day) -> (i32, Reverse<i32>, Reverse<i64>) {
        (self.value(day), Reverse(self.finish(day)), Reverse(self.sum_of_starts()))
    }

    /// Whether everything that must be done is.
    pub(super) fn keeps_musts(&self, day: &Day) -> bool {
        let pairs = day.projects.iter().zip(&self.picks);
        pairs.into_iter().all(|(project, pick)| pick.is_some() || !project.must)
    }

    pub(super) fn chosen(&self) -> impl Iterator<Item = &Pick> {
        self.picks.iter().flatten()
    }

    /// The draft in the words of the problem.
    pub(super) fn name(&self, day: &Day, problem: &Problem) -> Vec<Chosen> {
        let name = |pick: &Pick| {
            let way = &day.ways[pick.way];
            let project = &problem.projects[way.project];
            let option = &project.options[way.option];
            let starts: BTreeMap<String, u32> = option
                .steps
                .iter()
                .zip(&pick.starts)
                .map(|(step, &start)| (step.id.clone(), start.unsigned_abs()))
                .collect();
            Chosen { project: project.id.clone(), option: option.id.clone(), starts }
        };
        self.chosen().map(name).collect()
    }
}
