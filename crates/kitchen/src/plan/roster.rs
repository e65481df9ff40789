//! Who does which step of a plan, and what to ask of the planner when nobody can.
//!
//! Pools count heads, so a plan may keep every pool and still leave a step to nobody: the only one who may do it is in
//! the middle of something that the others could not take over. Such a step is moved behind what stands in its way (or
//! before it), with the choice of makes kept, and the day is solved again; the roster with the fewest open steps wins.

use std::collections::BTreeMap;

use almanac::{Attention, Care};
use dayplan::{Budget, Plan, Problem, Project, Step};

use super::people::{self, Deal, Duty};
use super::pools::{self, ABSENCES, Pool};
use super::solving::{self, find_choice};
use super::{candidates::Considered, errand_id, errand_step_id};
use crate::day::{ClockTime, Day, Span};

/// A step of the plan, and who does it.
#[derive(Debug, Clone)]
pub(crate) struct Turn {
    pub(crate) project: String,
    pub(crate) step: String,
    pub(crate) duty: Duty,
    /// The person's place in the day's list; `None` where nobody can.
    pub(crate) who: Option<usize>,
}

/// Every attended step of a plan with its person.
#[derive(Debug, Clone, Default)]
pub(crate) struct Roster {
    pub(crate) turns: Vec<Turn>,
}

impl Roster {
    /// Who does a step; `None` for a step that needs nobody.
    pub(crate) fn turn(&self, project: &str, step: &str) -> Option<&Turn> {
        self.turns.iter().find(|turn| turn.project == project && turn.step == step)
    }

    /// Steps that are left to nobody.
    fn open(&self) -> usize {
        self.turns.iter().filter(|turn| turn.who.is_none()).count()
    }
}

/// The pool that serves a step.
pub(crate) fn pool_of(attention: Attention, care: Care) -> Option<Pool> {
    match (attention, care) {
        (Attention::Hands, Care::Ordinary) => Some(Pool::Hands),
        (Attention::Hands, Care::Careful) => Some(Pool::CarefulHands),
        (Attention::Eyes, Care::Ordinary) => Some(Pool::Eyes),
        (Attention::Eyes, Care::Careful) => Some(Pool::CarefulEyes),
        (Attention::None, _) => None,
    }
}

/// Names a person for each attended step.
pub(crate) fn draw_up(day: &Day, span: Span, shown: &[Considered<'_>], plan: &Plan) -> Roster {
    let mut turns = Vec::new();
    for chosen in plan.chosen.iter().filter(|chosen| chosen.project != ABSENCES) {
        for (step, minutes, pool) in attended_steps(day, shown, &chosen.project, &chosen.option) {
            let Some(&start) = chosen.starts.get(&step) else { continue };
            if minutes == 0 {
                continue;
            }
            let from = span.from.0 + start;
            let duty = Duty {
                project: chosen.project.clone(),
                span: Span { from: ClockTime(from), to: ClockTime(from + minutes) },
                pool,
            };
            turns.push(Turn { project: chosen.project.clone(), step, duty, who: None });
        }
    }
    let duties: Vec<Duty> = turns.iter().map(|turn| turn.duty.clone()).collect();
    let Deal { who } = people::deal(&day.people, &duties);
    for (turn, who) in turns.iter_mut().zip(who) {
        turn.who = who;
    }
    Roster { turns }
}

/// The attended steps of a chosen option, with their minutes and pool.
fn attended_steps(
    day: &Day,
    shown: &[Considered<'_>],
    project: &str,
    option: &str,
) -> Vec<(String, u32, Pool)> {
    let candidate = shown
        .iter()
        .find(|considered| solving::project_id(considered) == project)
        .and_then(|considered| considered.options.iter().find(|candidate| candidate.id == option));
    if let Some(candidate) = candidate {
        let pooled = |step: &crate::work::WorkStep| {
            Some((step.id.clone(), step.minutes, pool_of(step.attention, step.care)?))
        };
        return candidate.work.steps.iter().filter_map(pooled).collect();
    }
    let Some(errand) = day.errands.iter().find(|errand| errand_id(errand) == project) else { return vec![] };
    let steps = errand.steps.iter().enumerate();
    steps
        .filter_map(|(at, step)| {
            let attention = if step.away { Attention::Hands } else { step.attention };
            Some((errand_step_id(at, step), step.minutes.0, pool_of(attention, Care::Ordinary)?))
        })
        .collect()
}

/// Rounds of moving what nobody can do.
const ROUNDS: u32 = 6;
/// Work of the planner on each round.
const ROUND_WORK: u64 = 1_000_000;

/// Moves steps that nobody can do, as long as that leaves fewer of them.
pub(crate) fn settle(
    day: &Day,
    span: Span,
    shown: &[Considered<'_>],
    problem: &Problem,
    plan: Plan,
) -> (Plan, Roster) {
    let mut best = (draw_up(day, span, shown, &plan), plan);
    let mut moved: BTreeMap<(String, String), Step> = BTreeMap::new();
    for _ in 0..ROUNDS {
        let Some(open) = best.0.turns.iter().find(|turn| turn.who.is_none()) else { break };
        let Some(behind) = free_from(day, &best.0, open) else { break };
        let entry = moved.entry((open.project.clone(), open.step.clone())).or_default();
        entry.earliest = entry.earliest.max(behind.0.saturating_sub(span.from.0));
        let fixed = fixed_choice(problem, &best.1, &moved);
        let found = dayplan::solve(&fixed, Budget::work(ROUND_WORK));
        if found.chosen.len() != best.1.chosen.len() {
            break;
        }
        let plan = solving::transplant(problem, &best.1, &found);
        let roster = draw_up(day, span, shown, &plan);
        if roster.open() <= best.0.open() {
            best = (roster, plan);
        }
    }
    (best.1, best.0)
}

/// The first minute at which somebody who may do an open step has hands or eyes for it.
fn free_from(day: &Day, roster: &Roster, open: &Turn) -> Option<ClockTime> {
    let last = day.people.iter().flat_map(|person| &person.hours).map(|hours| hours.to).max()?;
    let length = open.duty.span.to.0 - open.duty.span.from.0;
    (open.duty.span.from.0 + 1..last.0).map(ClockTime).find(|&from| {
        let span = Span { from, to: ClockTime(from.0 + length) };
        (0..day.people.len()).any(|person| {
            pools::can_serve(&day.people[person], open.duty.pool, span)
                && !roster.turns.iter().any(|turn| {
                    turn.who == Some(person)
                        && turn.duty.span.from < span.to
                        && span.from < turn.duty.span.to
                        && matches!(turn.duty.pool, Pool::Hands | Pool::CarefulHands)
                })
        })
    })
}

/// The problem with only the chosen options, and the moved steps not before their time.
fn fixed_choice(problem: &Problem, plan: &Plan, moved: &BTreeMap<(String, String), Step>) -> Problem {
    let projects = plan
        .chosen
        .iter()
        .filter_map(|chosen| {
            let mut choice = find_choice(problem, &chosen.project, &chosen.option)?.clone();
            for step in &mut choice.steps {
                if let Some(later) = moved.get(&(chosen.project.clone(), step.id.clone())) {
                    step.earliest = step.earliest.max(later.earliest);
                }
            }
            Some(Project { id: chosen.project.clone(), must: true, options: vec![choice] })
        })
        .collect();
    Problem { projects, ..problem.clone() }
}
