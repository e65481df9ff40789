//! `stillroom day`: a day file planned, and the planner's own documents.

mod check;
mod documents;
mod explain;
mod kept;
mod new;
mod plan;
mod sheet;
mod slip;
mod solve;
mod sturdy;
mod why;
mod wording;

use anyhow::Result;
use clap::{Args, Subcommand};

use crate::ending::Answered;

pub(crate) use plan::plan_demo;

const EXAMPLES: &str = "\
Examples:
  stillroom day day.toml
  stillroom day day.toml --html day.html
  stillroom day day.toml --why finish
  stillroom day day.toml --house house.toml --json

Exit code 3 when the day cannot be: the facts that clash are printed.";

/// Plan a day from a day file; write, solve and check days.
#[derive(Debug, Args)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true, after_help = EXAMPLES)]
pub(crate) struct DayCommand {
    #[command(subcommand)]
    verb: Option<DayVerb>,
    #[command(flatten)]
    plan: plan::PlanDay,
}

#[derive(Debug, Subcommand)]
enum DayVerb {
    /// Write a commented day file to start from
    New(new::NewDay),
    /// Plan the rest of a day again: something ran long, broke, or someone left
    Slip(slip::SlipDay),
    /// Say what each make left out would cost, and what one thing more would bring
    Explain(explain::ExplainDay),
    /// Try a planned day on a thousand days whose work runs long or short
    Sturdy(sturdy::TryDay),
    /// Plan a day-problem/1 document and print a day-plan/1 document
    Solve(solve::SolveProblem),
    /// Check a day-plan/1 document against its day-problem/1 document
    Check(check::CheckPlan),
}

impl DayCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        match &self.verb {
            None => self.plan.run(),
            Some(DayVerb::New(new)) => new.run(),
            Some(DayVerb::Slip(slip)) => slip.run(),
            Some(DayVerb::Explain(explain)) => explain.run(),
            Some(DayVerb::Sturdy(sturdy)) => sturdy.run(),
            Some(DayVerb::Solve(solve)) => solve.run(),
            Some(DayVerb::Check(check)) => check.run(),
        }
    }
}
