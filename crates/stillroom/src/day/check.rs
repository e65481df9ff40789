//! `stillroom day check`.

use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use dayplan::{Plan, Problem, check};

use super::documents::read_document;
use crate::ending::Answered;

const EXAMPLES: &str = "\
Examples:
  stillroom day check problem.json plan.json
  stillroom day solve problem.json | stillroom day check problem.json -

Exit code 0 when the plan keeps every rule, else 3 with every rule broken.";

/// Check a day-plan/1 document against its day-problem/1 document.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct CheckPlan {
    /// The problem
    problem: PathBuf,
    /// The plan; `-` is standard input
    plan: PathBuf,
}

impl CheckPlan {
    pub(crate) fn run(&self) -> Result<Answered> {
        let problem = read_document(&self.problem, Problem::from_json)?;
        let plan = read_document(&self.plan, Plan::from_json)?;
        let breaches = check(&problem, &plan);
        if breaches.is_empty() {
            return Ok(Answered::with(praise(&plan)));
        }
        Ok(Answered::refusing(breaches.iter().map(|breach| format!("{breach}\n")).collect()))
    }
}

/// One line on a plan that keeps every rule.
fn praise(plan: &Plan) -> String {
    match (plan.value, plan.finish) {
        (Some(value), Some(finish)) => format!("the plan keeps every rule: value {value}, finish {finish}\n"),
        _ => {
            "the document keeps its form; it claims that there is no plan, which is not checked\n".to_owned()
        }
    }
}
