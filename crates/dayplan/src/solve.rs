//! Makes a plan for a day.

mod calendar;
mod clash;
mod day;
mod draft;
mod engine;
mod greedy;
mod master;
mod mend;
mod search;
mod work;

pub use self::work::{Budget, Unwatched, Watch};

use self::day::Day;
use self::draft::Draft;
use self::search::{Finding, Goal};
use self::work::{Clock, Meter};
use crate::check::check;
use crate::plan::{Bound, Plan, Proved};
use crate::problem::Problem;

/// The best plan for `problem` that `budget` allows. The same problem and budget give the same plan.
///
/// A problem that has [`Problem::faults`] is answered with `unknown`.
pub fn solve(problem: &Problem, budget: Budget) -> Plan {
    solve_with(problem, budget, &mut Unwatched)
}

/// [`solve`], with someone who sees each better plan and may ask to stop.
pub fn solve_with(problem: &Problem, budget: Budget, watch: &mut dyn Watch) -> Plan {
    if !problem.faults().is_empty() {
        return Plan::without(Proved::Unknown, Vec::new(), false);
    }
    let day = Day::of(problem);
    let mut clock = Clock::new(Meter::default(), budget, watch);
    // The last draft that passed the check: whatever the search makes of it, nothing else leaves this function.
    let mut shown: Option<Draft> = None;
    let finding = search::search(&day, Goal::BestPlan, &mut clock, &mut |draft, clock| {
        let plan = state_draft(&day, problem, draft);
        if check(problem, &plan).is_empty() {
            shown = Some(draft.clone());
            clock.show(&plan);
        }
    });
    if finding.is_impossible() {
        return state_clash(problem, budget, clock);
    }
    let stopped = clock.was_stopped();
    let Some(draft) = shown else {
        return Plan::without(Proved::Unknown, Vec::new(), stopped);
    };
    let mut plan = state_draft(&day, problem, &draft);
    if finding.draft.as_ref() == Some(&draft) {
        state_proof(&mut plan, &finding);
    }
    plan.stopped = stopped;
    plan
}

/// That no plan exists, and why. Finding out why has a budget of its own, as large as the whole.
fn state_clash(problem: &Problem, budget: Budget, clock: Clock<'_>) -> Plan {
    let mut clock = clock.renew(budget);
    let because = clash::find_clash(problem, &mut clock);
    Plan::without(Proved::Infeasible, because, clock.was_stopped())
}

/// A draft as a plan of which nothing is proved but the plainest bound.
fn state_draft(day: &Day, problem: &Problem, draft: &Draft) -> Plan {
    Plan {
        proved: Proved::No,
        value: Some(draft.value(day).unsigned_abs()),
        finish: Some(draft.finish(day).unsigned_abs()),
        bound: Some(Bound { value: day.top_value().unsigned_abs(), finish: None }),
        chosen: draft.name(day, problem),
        because: Vec::new(),
        stopped: false,
    }
}

fn state_proof(plan: &mut Plan, finding: &Finding) {
    let value = finding.value_bound.unsigned_abs();
    let finish = finding.finish_bound.map(i32::unsigned_abs);
    plan.bound = Some(Bound { value, finish });
    plan.proved = match finish {
        None => Proved::No,
        Some(_) if finish == plan.finish => Proved::Optimal,
        Some(_) => Proved::Value,
    };
}
