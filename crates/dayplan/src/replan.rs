//! Plans the rest of a day that has gone otherwise than planned.
//!
//! **What holds.** A step that was begun keeps its start; what is over is a fact; the clock stands at now; the resources
//! are those there are now ([`Slip`]). A project under way goes on with the option it was begun with: it is never
//! dropped for worth, only where it cannot be finished at all.
//!
//! **The answer.** First, at once, the old plan shifted to the right in its old order ([`shift`]). Then the planner
//! looks at the rest of the day as a problem of its own ([`restate`]) for more worth, and among plans of the best
//! worth found for one that moves the fewest steps ([`steady`]) and ends no later than the shifted one. What is
//! returned is never worse than shifting.
//!
//! **What has gone wrong already** is told and lived with, in this order of preference: makes not yet begun are left
//! out, what follows something begun waits longer than it should ([`Missed`]), the day ends later than it should, what
//! must be done and has not begun is left out, what has begun is given up. Each is tried only when all before it
//! leave no plan.
//!
//! **What is not handled.** That nothing moves more than it must is sought, not proved. Which of two things on a dead
//! burner comes off it is not chosen by worth: what came last does without ([`Overdrawn`]).

mod restate;
mod shift;
mod slip;
mod steady;

use std::collections::BTreeMap;

pub use self::restate::Overdrawn;
pub use self::slip::{Away, Begun, Length, SLIP_FORMAT, Slip, SlipFault};

use self::restate::{Rest, find_option, is_pinned, restate};
use self::shift::{Board, Leave};
use crate::check::check;
use crate::plan::{Bound, Chosen, Plan, Proved};
use crate::problem::{HORIZON_MAX, Problem};
use crate::solve::{Budget, solve};

/// The rest of a day, planned again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Replanned {
    /// The rest of the day as a problem: what has begun has one place only.
    pub problem: Problem,
    /// Its plan, which keeps every rule of that problem.
    pub plan: Plan,
    /// What is otherwise than in the old plan, in the order of the new starts.
    pub changes: Vec<Change>,
    /// What waits longer than it should.
    pub missed: Vec<Missed>,
    /// What is under way and takes more than there is.
    pub overdrawn: Vec<Overdrawn>,
    /// Why not everything that must be done is: `must:ID`, `stock:ID`, `resource:ID` that clash, as far as it was found.
    pub because: Vec<String>,
    /// Minutes by which the work ends after the day.
    pub late_by: u32,
}

/// One difference between the old plan and the new one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A step starts at another minute.
    Moved {
        /// Its project.
        project: String,
        /// The step.
        step: String,
        /// Its old start.
        from: u32,
        /// Its new start.
        to: u32,
    },
    /// A project is done in another way.
    Resized {
        /// The project.
        project: String,
        /// The old option.
        from: String,
        /// The new one.
        to: String,
    },
    /// A project is no longer done.
    Left {
        /// The project.
        project: String,
        /// Whether it was begun.
        begun: bool,
    },
    /// A project is done that was not planned before.
    Added {
        /// The project.
        project: String,
        /// Its option.
        option: String,
    },
}

/// A wait that is longer than its limit, though nothing shorter could be had.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Missed {
    /// The project.
    pub project: String,
    /// The step that ended.
    pub from: String,
    /// The step that should have begun sooner.
    pub to: String,
    /// Minutes between the two, in the new plan.
    pub gap: i64,
    /// The most there should be.
    pub max: i32,
    /// Whether both have begun already, so that it is a fact and not a plan.
    pub is_past: bool,
}

/// The rest of a day shifted to the right: the answer that is there at once.
///
/// # Errors
/// Every way in which the slip does not go with the problem and the plan.
pub fn shift(problem: &Problem, plan: &Plan, slip: &Slip) -> Result<Replanned, Vec<SlipFault>> {
    let faults = slip.faults(problem, plan);
    if !faults.is_empty() {
        return Err(faults);
    }
    let mut rest = restate(problem, plan, slip);
    let shifted = fall_back(&mut rest);
    Ok(tell(problem, plan, slip, &rest, shifted, Proved::No))
}

/// The rest of a day as well as it can be planned in a budget: never worse than [`shift`], which `see` is shown first.
///
/// # Errors
/// Every way in which the slip does not go with the problem and the plan.
pub fn replan(
    problem: &Problem,
    plan: &Plan,
    slip: &Slip,
    budget: Budget,
    see: &mut dyn FnMut(&Replanned),
) -> Result<Replanned, Vec<SlipFault>> {
    let faults = slip.faults(problem, plan);
    if !faults.is_empty() {
        return Err(faults);
    }
    let strict = restate(problem, plan, slip);
    let mut rest = strict.clone();
    let shifted = fall_back(&mut rest);
    let mut best = tell(problem, plan, slip, &rest, shifted.clone(), Proved::No);
    see(&best);
    // The limits as they were first: it may be that only the shifting could not keep them.
    let strained = rest.problem != strict.problem;
    let half = budget.steps() / 2;
    if strained {
        let found = solve(&strict.problem, Budget::work(half));
        if found.value.is_some() {
            return Ok(better(problem, plan, slip, &strict, found, best, budget.steps() - half));
        }
        best.because = found.because;
        tighten(&mut rest, &strict, half / 2);
    }
    let left = if strained { half / 4 } else { half };
    let found = solve(&rest.problem, Budget::work(left));
    let because = std::mem::take(&mut best.because);
    best = better(problem, plan, slip, &rest, found, best, left);
    let gives_up = best.changes.iter().any(
        |change| matches!(change, Change::Left { project, begun } if *begun || is_must(problem, project)),
    );
    if gives_up || best.late_by > 0 {
        best.because = because;
    }
    Ok(best)
}

/// Work of the planner on one look at whether a wait can be shorter.
const WAIT_WORK: u64 = 150_000;

/// Shortens what the shifting let wait, as far as a plan for what must be done is found: jars that stand matter more
/// than makes that have not begun. Each wait is tried at its own limit, then at a quarter and a half of what it is over.
fn tighten(rest: &mut Rest, strict: &Rest, budget: u64) {
    let mut tries = budget / WAIT_WORK;
    for p in 0..rest.problem.projects.len() {
        for l in 0..rest.problem.projects[p].options.first().map_or(0, |option| option.lags.len()) {
            let Some(now) = rest.problem.projects[p].options[0].lags[l].max else { continue };
            let Some(limit) = strict.problem.projects[p].options[0].lags[l].max.filter(|max| *max < now)
            else {
                continue;
            };
            let over = now - limit;
            for wait in [limit, limit + over / 4, limit + over / 2] {
                if tries == 0 {
                    return;
                }
                tries -= 1;
                let mut tried = rest.problem.clone();
                tried.projects[p].options[0].lags[l].max = Some(wait);
                let mut musts = tried.clone();
                musts.projects.retain(|project| project.must);
                if solve(&musts, Budget::work(WAIT_WORK)).value.is_some() {
                    rest.problem = tried;
                    break;
                }
            }
        }
    }
}

fn is_must(problem: &Problem, project: &str) -> bool {
    problem.projects.iter().any(|other| other.id == project && other.must)
}

/// The better of what the planner found and what stands, with as few moved steps as can be found.
fn better(
    problem: &Problem,
    plan: &Plan,
    slip: &Slip,
    rest: &Rest,
    found: Plan,
    standing: Replanned,
    work: u64,
) -> Replanned {
    let proved =
        if matches!(found.proved, Proved::Optimal | Proved::Value) { Proved::Value } else { Proved::No };
    let same_rules = standing.problem == rest.problem;
    // At equal worth the old choice stands.
    let keep_choice = same_rules && standing.plan.value >= found.value;
    let start = if keep_choice { standing.plan.chosen.clone() } else { found.chosen };
    let old_finish = finish_of_rest(rest, &rest.old);
    let finish = finish_of_rest(rest, &start).max(old_finish.min(rest.problem.horizon));
    let kept = steady::keep_still(rest, start.clone(), finish, work);
    let proved = if found.value == Some(worth(rest, &kept)) { proved } else { Proved::No };
    let [kept, start] = [kept, start].map(|chosen| tell(problem, plan, slip, rest, chosen, proved));
    let rank = |told: &Replanned| {
        let moved = steady::moved_steps(rest, &told.plan.chosen).len();
        (
            told.plan.value,
            std::cmp::Reverse(moved),
            std::cmp::Reverse(finish_of_rest(rest, &told.plan.chosen)),
        )
    };
    let mut candidates: Vec<Replanned> = [kept, start].into_iter().filter(is_kept).collect();
    if same_rules {
        candidates.push(Replanned { plan: Plan { proved, ..standing.plan.clone() }, ..standing.clone() });
        let last = candidates.last_mut().expect("it was pushed just now");
        state_bound(&mut last.plan, found.value);
    }
    // The first of equals: `max_by_key` takes the last.
    candidates.into_iter().rev().max_by_key(rank).unwrap_or(standing)
}

fn is_kept(told: &Replanned) -> bool {
    check(&told.problem, &told.plan).is_empty()
}

/// The last end of what is not pinned.
fn finish_of_rest(rest: &Rest, chosen: &[Chosen]) -> u32 {
    let ends = chosen.iter().flat_map(|pick| {
        let option = find_option(&rest.problem, &pick.project, &pick.option);
        let steps = option.map_or(&[][..], |option| option.steps.as_slice());
        let free = steps.iter().filter(|step| !is_pinned(step, rest.problem.horizon));
        free.filter_map(|step| Some(pick.starts.get(&step.id)? + step.minutes)).collect::<Vec<u32>>()
    });
    ends.max().unwrap_or(0)
}

/// Shifts what was chosen, and gives way step by step where that does not go; what had to be left out or stretched is
/// changed in the rest's problem, so that the answer keeps its rules.
fn fall_back(rest: &mut Rest) -> Vec<Chosen> {
    const LEAVES: [Leave; 3] = [
        Leave { wait_longer: false, end_later: false },
        Leave { wait_longer: true, end_later: false },
        Leave { wait_longer: true, end_later: true },
    ];
    for most in [Dropping::NotBegun, Dropping::Musts, Dropping::Begun, Dropping::Fixed] {
        for leave in LEAVES {
            if let Some((chosen, board)) = shift_dropping(rest, leave, most) {
                loosen(rest, &chosen, &board, leave);
                return chosen;
            }
        }
    }
    unreachable!("with everything left out, nothing has no place")
}

/// What may be left out when there is no place for all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Dropping {
    /// Makes that have not begun and are no must.
    NotBegun,
    /// Musts that have not begun as well.
    Musts,
    /// What has begun as well.
    Begun,
    /// What has one place only, and cannot keep it.
    Fixed,
}

fn shift_dropping(rest: &mut Rest, leave: Leave, most: Dropping) -> Option<(Vec<Chosen>, Board)> {
    let mut chosen = rest.old.clone();
    loop {
        let is_begun = |pick: &Chosen| rest.begun.contains(&pick.project);
        let mut board = Board::of(&rest.problem, &chosen, |of| leave.end_later && is_begun(&chosen[of]));
        match board.shift(leave) {
            Ok(()) if board.last_end() <= i64::from(HORIZON_MAX) => {
                for (of, pick) in chosen.iter_mut().enumerate() {
                    pick.starts = board.starts_of(of);
                }
                for old in &rest.old {
                    give_up_dropped(&mut rest.problem, &chosen, &old.project);
                }
                return Some((chosen, board));
            }
            Ok(()) => return None,
            Err(stuck) => {
                let at = whom_to_drop(rest, &chosen, stuck.of, most)?;
                chosen.remove(at);
            }
        }
    }
}

/// Whom to leave out: the one that has no place if it may be left, else the one of least worth that may.
fn whom_to_drop(rest: &Rest, chosen: &[Chosen], stuck: usize, most: Dropping) -> Option<usize> {
    let class = |pick: &Chosen| {
        if is_all_pinned(rest, pick) {
            return Dropping::Fixed;
        }
        let must = is_must(&rest.problem, &pick.project);
        match (rest.begun.contains(&pick.project), must) {
            (true, _) => Dropping::Begun,
            (false, true) => Dropping::Musts,
            (false, false) => Dropping::NotBegun,
        }
    };
    let may_go = |pick: &Chosen| class(pick) <= most;
    if chosen.get(stuck).is_some_and(|pick| class(pick) == Dropping::NotBegun) {
        return Some(stuck);
    }
    let worth_of =
        |pick: &Chosen| find_option(&rest.problem, &pick.project, &pick.option).map_or(0, |o| o.value);
    let others = (0..chosen.len()).filter(|&at| may_go(&chosen[at]));
    others.min_by_key(|&at| (class(&chosen[at]), at != stuck, worth_of(&chosen[at]), at))
}

/// Whether a chosen option has nothing left that could move.
fn is_all_pinned(rest: &Rest, pick: &Chosen) -> bool {
    let option = find_option(&rest.problem, &pick.project, &pick.option);
    option.is_none_or(|option| option.steps.iter().all(|step| is_pinned(step, rest.problem.horizon)))
}

/// A must that was left out is none any more; what was begun and is given up goes, and what it used of the stock with it.
fn give_up_dropped(problem: &mut Problem, chosen: &[Chosen], project: &str) {
    if chosen.iter().any(|pick| pick.project == project) {
        return;
    }
    if let Some(project) = problem.projects.iter_mut().find(|other| other.id == project) {
        project.must = false;
    }
}

/// Widens what the shifting could not keep, as far as it had to.
fn loosen(rest: &mut Rest, chosen: &[Chosen], board: &Board, leave: Leave) {
    let begun = rest.begun.clone();
    for pick in chosen.iter().filter(|pick| begun.contains(&pick.project)) {
        let horizon = rest.problem.horizon;
        let Some(option) = rest.problem.projects.iter_mut().find(|p| p.id == pick.project) else { continue };
        for option in &mut option.options {
            if leave.wait_longer {
                let ends: BTreeMap<String, i64> =
                    option.steps.iter().map(|s| (s.id.clone(), end_of(pick, s))).collect();
                for lag in &mut option.lags {
                    let gap = i64::from(pick.starts[&lag.to]) - ends[&lag.from];
                    let gap = i32::try_from(gap).unwrap_or(i32::MAX);
                    lag.max = lag.max.map(|max| max.max(gap));
                }
            }
            if leave.end_later {
                for step in option.steps.iter_mut().filter(|step| !is_pinned(step, horizon)) {
                    let end = u32::try_from(end_of(pick, step)).unwrap_or(u32::MAX);
                    step.latest_end = step.latest_end.map(|latest| latest.max(end));
                }
            }
        }
    }
    if leave.end_later {
        let last = u32::try_from(board.last_end()).unwrap_or(HORIZON_MAX);
        restate::lengthen(&mut rest.problem, last, &begun);
    }
}

fn end_of(pick: &Chosen, step: &crate::problem::Step) -> i64 {
    i64::from(pick.starts.get(&step.id).copied().unwrap_or(0)) + i64::from(step.minutes)
}

fn worth(rest: &Rest, chosen: &[Chosen]) -> u32 {
    chosen
        .iter()
        .filter_map(|pick| find_option(&rest.problem, &pick.project, &pick.option))
        .map(|o| o.value)
        .sum()
}

/// The answer: the plan with its figures, and what is otherwise than before.
fn tell(
    problem: &Problem,
    plan: &Plan,
    slip: &Slip,
    rest: &Rest,
    mut chosen: Vec<Chosen>,
    proved: Proved,
) -> Replanned {
    let order = |pick: &Chosen| rest.problem.projects.iter().position(|project| project.id == pick.project);
    chosen.sort_by_key(order);
    let value = worth(rest, &chosen);
    let ends = chosen.iter().flat_map(|pick| {
        let option = find_option(&rest.problem, &pick.project, &pick.option);
        option.map_or(&[][..], |option| option.steps.as_slice()).iter().map(|step| end_of(pick, step))
    });
    let finish = u32::try_from(ends.max().unwrap_or(0)).unwrap_or(u32::MAX);
    let mut told = Plan {
        proved,
        value: Some(value),
        finish: Some(finish),
        bound: None,
        chosen,
        because: Vec::new(),
        stopped: false,
    };
    state_bound(&mut told, Some(value));
    Replanned {
        changes: find_changes(rest, plan, slip, &told.chosen),
        missed: find_missed(problem, rest, &told.chosen),
        overdrawn: rest.overdrawn.clone(),
        because: Vec::new(),
        late_by: rest
            .problem
            .horizon
            .saturating_sub(problem.horizon)
            .min(finish.saturating_sub(problem.horizon)),
        problem: rest.problem.clone(),
        plan: told,
    }
}

/// A proved value is its own bound; else nothing is said of bounds.
fn state_bound(plan: &mut Plan, value: Option<u32>) {
    if plan.proved == Proved::Value && plan.value != value {
        plan.proved = Proved::No;
    }
    plan.bound = match (plan.proved, plan.value) {
        (Proved::Value, Some(value)) => Some(Bound { value, finish: None }),
        _ => None,
    };
}

fn find_changes(rest: &Rest, plan: &Plan, slip: &Slip, chosen: &[Chosen]) -> Vec<Change> {
    let mut changes: Vec<(u32, Change)> = Vec::new();
    for old in &plan.chosen {
        let project = old.project.clone();
        let Some(new) = chosen.iter().find(|new| new.project == project) else {
            let begun = slip.begun.iter().any(|begun| begun.project == project);
            changes.push((rest.now, Change::Left { project, begun }));
            continue;
        };
        if new.option != old.option {
            let first = new.starts.values().min().copied().unwrap_or(0);
            changes
                .push((first, Change::Resized { project, from: old.option.clone(), to: new.option.clone() }));
            continue;
        }
        for (step, &to) in &new.starts {
            let has_begun = slip.begun.iter().any(|b| b.project == project && b.step == *step);
            let Some(&from) = old.starts.get(step).filter(|from| **from != to && !has_begun) else {
                continue;
            };
            changes.push((to, Change::Moved { project: project.clone(), step: step.clone(), from, to }));
        }
    }
    for new in chosen.iter().filter(|new| !rest.old.iter().any(|old| old.project == new.project)) {
        let first = new.starts.values().min().copied().unwrap_or(0);
        let (project, option) = (new.project.clone(), new.option.clone());
        changes.push((first, Change::Added { project, option }));
    }
    changes.sort_by_key(|(minute, _)| *minute);
    changes.into_iter().map(|(_, change)| change).collect()
}

/// Lags of the original problem that the day as it went, and as it is planned now, does not keep.
fn find_missed(problem: &Problem, rest: &Rest, chosen: &[Chosen]) -> Vec<Missed> {
    let mut missed = Vec::new();
    for pick in chosen {
        let Some(before) = find_option(problem, &pick.project, &pick.option) else { continue };
        let Some(after) = find_option(&rest.problem, &pick.project, &pick.option) else { continue };
        let step = |id: &str| after.steps.iter().find(|step| step.id == id);
        for lag in &before.lags {
            let (Some(max), Some(from), Some(to)) = (lag.max, step(&lag.from), step(&lag.to)) else {
                continue;
            };
            let gap = i64::from(pick.starts.get(&to.id).copied().unwrap_or(0)) - end_of(pick, from);
            if gap > i64::from(max) {
                let has_begun = |step: &crate::problem::Step| {
                    step.earliest < rest.now && is_pinned(step, rest.problem.horizon)
                };
                missed.push(Missed {
                    project: pick.project.clone(),
                    from: from.id.clone(),
                    to: to.id.clone(),
                    gap,
                    max,
                    is_past: has_begun(from) && has_begun(to),
                });
            }
        }
    }
    missed
}
