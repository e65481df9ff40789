//! `stillroom day solve`.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use dayplan::{Budget, Problem, Proved, solve};

use super::documents::read_document;
use crate::ending::Answered;

const EXAMPLES: &str = "\
Examples:
  stillroom day solve problem.json > plan.json
  stillroom day solve problem.json --work 2000000

Exit code 0 with a plan, 3 when there is none or none was found.";

/// Plan a day-problem/1 document and print a day-plan/1 document.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct SolveProblem {
    /// The problem; `-` is standard input
    problem: PathBuf,
    /// How much work it may cost, in elementary steps; the same work gives the same plan
    #[arg(long, value_name = "N")]
    work: Option<u64>,
}

impl SolveProblem {
    pub(crate) fn run(&self) -> Result<Answered> {
        let problem = read_document(&self.problem, Problem::from_json)?;
        let plan = solve(&problem, self.work.map_or_else(Budget::default, Budget::work));
        let refused = matches!(plan.proved, Proved::Infeasible | Proved::Unknown);
        Ok(Answered { text: plan.to_json() + "\n", refused })
    }
}
