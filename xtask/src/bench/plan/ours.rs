//! One day given to our own solver, with a time limit or a limit of counted work, and what was seen on the way.

use std::ops::ControlFlow;
use std::time::{Duration, Instant};

use dayplan::{Budget, Plan, Problem, Proved, Watch, check, solve_with};

/// When a side found what.
#[derive(Debug, Clone, Default)]
pub(super) struct Run {
    /// Each better plan: seconds, value, finish.
    pub(super) marks: Vec<Mark>,
    pub(super) value: Option<u32>,
    pub(super) finish: Option<u32>,
    pub(super) bound: Option<u32>,
    pub(super) proof: Proof,
    /// Seconds until the value was proved, and until everything was.
    pub(super) value_proved: Option<f64>,
    pub(super) decided: Option<f64>,
    /// Seconds in all.
    pub(super) seconds: f64,
    /// Counted work until it was decided or given up; the peer counts none.
    pub(super) work: u64,
    /// What is wrong with the answer; empty when it keeps every rule.
    pub(super) breaches: Vec<String>,
}

/// A plan seen at a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Mark {
    pub(super) seconds: f64,
    pub(super) value: u32,
    pub(super) finish: u32,
}

/// What was proved in the end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Proof {
    #[default]
    Nothing,
    Value,
    Optimal,
    Infeasible,
}

impl Run {
    /// Value at a time, 0 before the first plan.
    pub(super) fn value_at(&self, seconds: f64) -> u32 {
        self.marks.iter().filter(|m| m.seconds <= seconds).map(|m| m.value).max().unwrap_or(0)
    }

    pub(super) fn first_plan(&self) -> Option<f64> {
        self.marks.first().map(|m| m.seconds)
    }

    pub(super) fn proves_value(&self) -> bool {
        matches!(self.proof, Proof::Value | Proof::Optimal)
    }

    pub(super) fn is_decided(&self) -> bool {
        matches!(self.proof, Proof::Optimal | Proof::Infeasible)
    }
}

/// How long a solution may take.
#[derive(Debug, Clone, Copy)]
pub(super) enum Limit {
    Seconds(f64),
    Work(u64),
}

/// Far beyond what a minute allows.
const ENDLESS: u64 = u64::MAX / 4;

/// Solves and checks one day.
pub(super) fn solve(problem: &Problem, limit: Limit) -> Run {
    let (budget, end) = match limit {
        Limit::Seconds(seconds) => (ENDLESS, Some(Duration::from_secs_f64(seconds))),
        Limit::Work(work) => (work, None),
    };
    let mut watch = Stopwatch { begun: Instant::now(), end, run: Run::default() };
    let plan = solve_with(problem, Budget::work(budget), &mut watch);
    let seconds = watch.begun.elapsed().as_secs_f64();
    let mut run = watch.run;
    run.seconds = seconds;
    run.proof = proof_of(plan.proved);
    if run.proof == Proof::Infeasible {
        run.decided = Some(seconds);
    }
    run.value = plan.value;
    run.finish = plan.finish;
    run.bound = plan.bound.map(|b| b.value);
    run.breaches = check(problem, &plan).iter().map(ToString::to_string).collect();
    run
}

pub(super) fn proof_of(proved: Proved) -> Proof {
    match proved {
        Proved::Optimal => Proof::Optimal,
        Proved::Value => Proof::Value,
        Proved::Infeasible => Proof::Infeasible,
        Proved::No | Proved::Unknown => Proof::Nothing,
    }
}

/// Notes each plan with its time, and asks to stop when the time is up.
struct Stopwatch {
    begun: Instant,
    end: Option<Duration>,
    run: Run,
}

impl Watch for Stopwatch {
    fn see(&mut self, plan: &Plan, work: u64) -> ControlFlow<()> {
        let seconds = self.begun.elapsed().as_secs_f64();
        if let (Some(value), Some(finish)) = (plan.value, plan.finish) {
            let mark = Mark { seconds, value, finish };
            if self.run.marks.last().is_none_or(|last| (last.value, last.finish) != (value, finish)) {
                self.run.marks.push(mark);
            }
        }
        if matches!(plan.proved, Proved::Value | Proved::Optimal) && self.run.value_proved.is_none() {
            self.run.value_proved = Some(seconds);
        }
        if plan.proved == Proved::Optimal && self.run.decided.is_none() {
            self.run.decided = Some(seconds);
            self.run.work = work;
        }
        if self.run.decided.is_none() {
            self.run.work = work;
        }
        ControlFlow::Continue(())
    }

    fn should_stop(&mut self) -> bool {
        self.end.is_some_and(|end| self.begun.elapsed() >= end)
    }
}
