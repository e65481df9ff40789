//! Makes a plan for a day.

mod calendar;
mod day;
mod draft;
mod greedy;
mod work;

pub use self::work::{Budget, Unwatched, Watch};

use self::day::Day;
use self::draft::Draft;
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
    let _ = (budget, watch);
    if !problem.faults().is_empty() {
        return Plan::without(Proved::Unknown, Vec::new(), false);
    }
    let day = Day::of(problem);
    let mut work = 0;
    let Some(mut draft) = greedy::first_draft(&day, &mut work) else {
        return Plan::without(Proved::Unknown, Vec::new(), false);
    };
    greedy::tighten(&day, &mut draft, &mut work);
    let plan = state(&day, problem, &draft);
    if check(problem, &plan).is_empty() { plan } else { Plan::without(Proved::Unknown, Vec::new(), false) }
}

fn state(day: &Day, problem: &Problem, draft: &Draft) -> Plan {
    let best = |ways: &[usize]| ways.iter().map(|&w| day.ways[w].value).max().unwrap_or(0);
    let top: i32 = day.projects.iter().map(|p| best(&p.ways)).sum();
    Plan {
        proved: Proved::No,
        value: Some(draft.value(day).unsigned_abs()),
        finish: Some(draft.finish(day).unsigned_abs()),
        bound: Some(Bound { value: top.unsigned_abs(), finish: None }),
        chosen: draft.name(day, problem),
        because: Vec::new(),
        stopped: false,
    }
}
