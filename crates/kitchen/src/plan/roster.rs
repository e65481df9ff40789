//! Who does which step of a plan, and what to ask of the planner when nobody can.
//!
//! Pools count heads, so a plan may keep every pool and still leave a step to nobody: the only one who may do it is in
//! the middle of something that the others could not take over. Such a step is moved behind what stands in its way (or
//! before it), with the choice of makes kept, and the day is solved again; the roster with the fewest open steps wins.

use std::collections::BTreeMap;

use dayplan::{Budget, Plan, Problem, Project};

use super::candidates::Considered;
use super::people::{self, Deal, Duty};
use super::pools::{self, ABSENCES, EYES_EACH, Pool};
use super::solving::{self, find_choice};
use crate::day::{ClockTime, Person, Span};

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

    /// A chosen option with a step that is left to nobody, where the day can do without it.
    pub(crate) fn open_option(&self, plan: &Plan, shown: &[Considered<'_>]) -> Option<(String, String)> {
        let may_go = |project: &str| {
            shown.iter().any(|considered| solving::project_id(considered) == project && !considered.must)
        };
        let open = self.turns.iter().find(|turn| turn.who.is_none() && may_go(&turn.project))?;
        let chosen = plan.chosen.iter().find(|chosen| chosen.project == open.project)?;
        Some((chosen.project.clone(), chosen.option.clone()))
    }

    /// Steps that are left to nobody.
    fn open(&self) -> usize {
        self.turns.iter().filter(|turn| turn.who.is_none()).count()
    }
}

/// The option in which a problem keeps facts that are nobody's step any more.
const FACTS: &str = "facts";

/// Who is known to have done or to be doing a step, by project and step.
pub(crate) type Known = BTreeMap<(String, String), usize>;

/// Names a person for each attended step of a plan whose day begins at `from`.
pub(crate) fn draw_up(
    people: &[Person],
    from: ClockTime,
    problem: &Problem,
    plan: &Plan,
    known: &Known,
) -> Roster {
    let mut turns = Vec::new();
    for chosen in plan.chosen.iter().filter(|chosen| chosen.project != ABSENCES && chosen.option != FACTS) {
        let Some(choice) = find_choice(problem, &chosen.project, &chosen.option) else { continue };
        for step in &choice.steps {
            let Some(pool) = Pool::serving(&step.needs).filter(|_| step.minutes > 0) else { continue };
            let Some(&start) = chosen.starts.get(&step.id) else { continue };
            let from = from.0 + start;
            let takes = |pool: Pool| step.needs.get(pool.id()).copied().unwrap_or(0);
            let duty = Duty {
                project: chosen.project.clone(),
                span: Span { from: ClockTime(from), to: ClockTime(from + step.minutes) },
                pool,
                is_away: takes(Pool::Hands) > 0 && takes(Pool::Eyes) >= EYES_EACH,
                fixed: known.get(&(chosen.project.clone(), step.id.clone())).copied(),
            };
            turns.push(Turn { project: chosen.project.clone(), step: step.id.clone(), duty, who: None });
        }
    }
    let duties: Vec<Duty> = turns.iter().map(|turn| turn.duty.clone()).collect();
    let Deal { who } = people::deal(people, &duties);
    for (turn, who) in turns.iter_mut().zip(who) {
        turn.who = who;
    }
    Roster { turns }
}

/// Looks at whether a moved step lets somebody do it.
const TRIES: u32 = 16;
/// Work of the planner on each.
const TRY_WORK: u64 = 2_000_000;

/// Where a step may lie, in minutes of the horizon.
#[derive(Debug, Clone, Copy, Default)]
struct Window {
    earliest: u32,
    latest_end: Option<u32>,
}

/// Windows of moved steps, by project and step.
type Windows = BTreeMap<(String, String), Window>;

/// Moves steps that nobody can do, as long as that leaves fewer of them.
pub(crate) fn settle(
    people: &[Person],
    span: Span,
    problem: &Problem,
    plan: Plan,
    known: &Known,
) -> (Plan, Roster) {
    let mut best = (draw_up(people, span.from, problem, &plan, known), plan);
    let mut windows = Windows::new();
    let mut tries = 0;
    'better: while best.0.open() > 0 {
        let moves: Vec<((String, String), Window)> = best
            .0
            .turns
            .iter()
            .filter(|turn| turn.who.is_none())
            .flat_map(|turn| moves_of(people, span, &best.0, turn))
            .collect();
        for (step, window) in moves {
            if tries == TRIES {
                break 'better;
            }
            tries += 1;
            let mut tried = windows.clone();
            let entry = tried.entry(step).or_default();
            entry.earliest = entry.earliest.max(window.earliest);
            entry.latest_end = entry.latest_end.or(window.latest_end);
            let found = dayplan::solve(&fixed_choice(problem, &best.1, &tried), Budget::work(TRY_WORK));
            if found.chosen.len() != best.1.chosen.len() {
                continue;
            }
            let plan = solving::transplant(problem, &best.1, &found);
            let roster = draw_up(people, span.from, problem, &plan, known);
            if roster.open() < best.0.open() {
                best = (roster, plan);
                windows = tried;
                continue 'better;
            }
        }
        break;
    }
    (best.1, best.0)
}

/// Where an open step could go: behind what stands in its way, or before it.
fn moves_of(people: &[Person], span: Span, roster: &Roster, open: &Turn) -> Vec<((String, String), Window)> {
    let step = (open.project.clone(), open.step.clone());
    let length = open.duty.span.to.0 - open.duty.span.from.0;
    let start = open.duty.span.from.0;
    let behind = (start + 1..span.to.0.saturating_sub(length))
        .find(|&from| somebody_is_free(people, roster, open, from));
    let before = (span.from.0..start).rev().find(|&from| somebody_is_free(people, roster, open, from));
    let behind = behind.map(|from| Window { earliest: from - span.from.0, latest_end: None });
    let before = before.map(|from| Window { earliest: 0, latest_end: Some(from + length - span.from.0) });
    behind.into_iter().chain(before).map(|window| (step.clone(), window)).collect()
}

/// Whether somebody who may do an open step has hands or eyes for it from a minute on.
fn somebody_is_free(people: &[Person], roster: &Roster, open: &Turn, from: u32) -> bool {
    let length = open.duty.span.to.0 - open.duty.span.from.0;
    let span = Span { from: ClockTime(from), to: ClockTime(from + length) };
    (0..people.len()).any(|person| {
        pools::can_finish_first(&people[person], open.duty.pool, span)
            && !roster.turns.iter().any(|turn| {
                turn.who == Some(person)
                    && turn.duty.span.from < span.to
                    && span.from < turn.duty.span.to
                    && matches!(turn.duty.pool, Pool::Hands | Pool::CarefulHands)
            })
    })
}

/// The problem with only the chosen options, and the moved steps inside their windows.
fn fixed_choice(problem: &Problem, plan: &Plan, windows: &Windows) -> Problem {
    let projects = plan
        .chosen
        .iter()
        .filter_map(|chosen| {
            let mut choice = find_choice(problem, &chosen.project, &chosen.option)?.clone();
            for step in &mut choice.steps {
                if let Some(window) = windows.get(&(chosen.project.clone(), step.id.clone())) {
                    step.earliest = step.earliest.max(window.earliest);
                    step.latest_end = [step.latest_end, window.latest_end].into_iter().flatten().min();
                }
            }
            Some(Project { id: chosen.project.clone(), must: true, options: vec![choice] })
        })
        .collect();
    Problem { projects, ..problem.clone() }
}
