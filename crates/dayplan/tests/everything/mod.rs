//! The best value and finish of a tiny day by trying every choice and every start.

use std::collections::BTreeMap;

use dayplan::{Choice, Problem};

/// One way to run one option: when it ends and what it uses at each minute.
struct Run {
    finish: u32,
    /// Per resource and minute.
    uses: Vec<Vec<u32>>,
}

/// The greatest value and, among plans of that value, the earliest finish; `None` when there is no plan.
pub fn try_everything(problem: &Problem) -> Option<(u32, u32)> {
    let runs: Vec<Vec<Vec<Run>>> =
        problem.projects.iter().map(|p| p.options.iter().map(|o| all_runs(problem, o)).collect()).collect();
    let free: Vec<Vec<u32>> = problem.resources.iter().map(|r| free_of(problem, r)).collect();
    let mut best = None;
    choose(problem, &runs, 0, (0, 0), &free, &problem.stock, &mut best);
    best.map(|(value, late): (u32, std::cmp::Reverse<u32>)| (value, late.0))
}

fn free_of(problem: &Problem, resource: &dayplan::Resource) -> Vec<u32> {
    let shut = |t: u32| resource.closed.iter().any(|&(a, b)| a <= t && t < b);
    (0..problem.horizon).map(|t| if shut(t) { 0 } else { resource.capacity }).collect()
}

fn choose(
    problem: &Problem,
    runs: &[Vec<Vec<Run>>],
    p: usize,
    (value, finish): (u32, u32),
    free: &[Vec<u32>],
    stock: &BTreeMap<String, u32>,
    best: &mut Option<(u32, std::cmp::Reverse<u32>)>,
) {
    let Some(project) = problem.projects.get(p) else {
        *best = (*best).max(Some((value, std::cmp::Reverse(finish))));
        return;
    };
    if !project.must {
        choose(problem, runs, p + 1, (value, finish), free, stock, best);
    }
    for (option, runs_of_option) in project.options.iter().zip(&runs[p]) {
        let mut left = stock.clone();
        let enough = option.consumes.iter().all(|(id, n)| match left.get_mut(id) {
            Some(there) if *there >= *n => {
                *there -= n;
                true
            }
            _ => false,
        });
        if !enough {
            continue;
        }
        for run in runs_of_option {
            if let Some(free) = take(free, &run.uses) {
                let so_far = (value + option.value, finish.max(run.finish));
                choose(problem, runs, p + 1, so_far, &free, &left, best);
            }
        }
    }
}

fn take(free: &[Vec<u32>], uses: &[Vec<u32>]) -> Option<Vec<Vec<u32>>> {
    let rows = free.iter().zip(uses);
    rows.map(|(free, uses)| free.iter().zip(uses).map(|(f, u)| f.checked_sub(*u)).collect()).collect()
}

fn all_runs(problem: &Problem, option: &Choice) -> Vec<Run> {
    let mut starts = vec![0u32; option.steps.len()];
    let mut runs = Vec::new();
    loop {
        runs.extend(run(problem, option, &starts));
        let Some(k) = starts.iter().position(|&s| s < problem.horizon) else {
            return runs;
        };
        starts[k] += 1;
        starts[..k].fill(0);
    }
}

fn run(problem: &Problem, option: &Choice, starts: &[u32]) -> Option<Run> {
    let at = |id: &str| option.steps.iter().position(|s| s.id == id).expect("lags and holds name steps");
    let end = |k: usize| starts[k] + option.steps[k].minutes;
    for (k, step) in option.steps.iter().enumerate() {
        let latest = step.latest_end.unwrap_or(problem.horizon).min(problem.horizon);
        if starts[k] < step.earliest || end(k) > latest {
            return None;
        }
    }
    for lag in &option.lags {
        let gap = starts[at(&lag.to)] as i32 - end(at(&lag.from)) as i32;
        if gap < lag.min || lag.max.is_some_and(|max| gap > max) {
            return None;
        }
    }
    let mut uses = vec![vec![0; problem.horizon as usize]; problem.resources.len()];
    let mut add = |id: &str, n: u32, from: u32, to: u32| {
        let r = problem.resources.iter().position(|r| r.id == id).expect("needs and holds name resources");
        (from..to).for_each(|t| uses[r][t as usize] += n);
    };
    for (k, step) in option.steps.iter().enumerate() {
        step.needs.iter().for_each(|(id, &n)| add(id, n, starts[k], end(k)));
    }
    for hold in &option.holds {
        add(&hold.resource, hold.amount, starts[at(&hold.from)], end(at(&hold.to)));
    }
    let fits = problem.resources.iter().zip(&uses).all(|(r, row)| {
        let free = free_of(problem, r);
        row.iter().zip(&free).all(|(u, f)| u <= f)
    });
    let finish = (0..starts.len()).map(end).max().unwrap_or(0);
    fits.then_some(Run { finish, uses })
}
