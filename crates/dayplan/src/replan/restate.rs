//! The rest of the day as a problem of its own, in which what has happened cannot move.
//!
//! A step that was begun keeps its start and takes its true length: its window leaves it no other place. Its project
//! must go on with the option chosen. What is over takes nothing any more. Lags between two begun steps are facts and
//! are left out. Everything else starts now or later. What the facts take of a resource beyond what is there is cut
//! off where it begins to be too much, and told.

use std::collections::{BTreeMap, BTreeSet};

use super::slip::Slip;
use crate::plan::{Chosen, Plan};
use crate::problem::{Choice, HORIZON_MAX, Problem, Project, Resource, Step};

/// The rest of a day.
#[derive(Debug, Clone)]
pub(super) struct Rest {
    pub(super) now: u32,
    /// The rest of the day as a problem.
    pub(super) problem: Problem,
    /// The old plan in it: true starts of what has begun, old starts of the others.
    pub(super) old: Vec<Chosen>,
    /// Projects of which something has begun.
    pub(super) begun: BTreeSet<String>,
    pub(super) overdrawn: Vec<Overdrawn>,
}

/// Something under way that takes more of a resource than there is: a fact the plan has to live with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Overdrawn {
    /// The resource.
    pub resource: String,
    /// The first minute at which it is too much.
    pub minute: u32,
    /// Units in use by what cannot be moved.
    pub used: u32,
    /// Units there are.
    pub there: u32,
    /// The project that the plan takes to do without from then on.
    pub project: String,
}

/// When steps were begun and how long they take, by project and step.
type Runs = BTreeMap<(String, String), (u32, u32)>;

/// Whether the window of a step leaves it one place only.
pub(super) fn is_pinned(step: &Step, horizon: u32) -> bool {
    // Never overflows for steps of a valid problem; the sum saturates for others.
    step.earliest.saturating_add(step.minutes) == step.latest_end.unwrap_or(horizon).min(horizon)
        && step.latest_end.is_some()
}

/// The rest of the day after a slip that has no faults.
pub(super) fn restate(problem: &Problem, plan: &Plan, slip: &Slip) -> Rest {
    let runs = runs_of(problem, plan, slip);
    let mut rest = Rest {
        now: slip.now,
        problem: Problem { projects: Vec::new(), ..problem.clone() },
        old: Vec::new(),
        begun: BTreeSet::new(),
        overdrawn: Vec::new(),
    };
    replace_resources(&mut rest.problem, slip);
    for project in &problem.projects {
        let chosen = plan.chosen.iter().find(|chosen| chosen.project == project.id);
        let is_begun =
            chosen.is_some_and(|c| c.starts.keys().any(|s| runs.contains_key(&key(&project.id, s))));
        if slip.given_up.contains(&project.id) {
            take_stock(&mut rest.problem, project, chosen.filter(|_| is_begun));
            continue;
        }
        match chosen {
            Some(chosen) if is_begun => {
                rest.begun.insert(project.id.clone());
                let project = go_on(project, chosen, &runs, slip);
                rest.old.push(true_starts(chosen, &runs));
                rest.problem.projects.push(project);
            }
            _ => {
                rest.old.extend(chosen.cloned());
                rest.problem.projects.push(not_begun(project, chosen, slip));
            }
        }
    }
    let last = runs.values().map(|(start, minutes)| start + minutes).max().unwrap_or(0);
    lengthen(&mut rest.problem, last, &rest.begun);
    settle_facts(&mut rest, slip, &runs);
    rest
}

/// Makes the day longer, for what has begun alone: nobody else is given the added time.
pub(super) fn lengthen(problem: &mut Problem, last: u32, begun: &BTreeSet<String>) {
    let before = problem.horizon;
    if last <= before {
        return;
    }
    problem.horizon = last.min(HORIZON_MAX);
    for project in problem.projects.iter_mut().filter(|project| !begun.contains(&project.id)) {
        for step in project.options.iter_mut().flat_map(|option| &mut option.steps) {
            step.latest_end = Some(step.latest_end.unwrap_or(before).min(before));
        }
    }
}

fn key(project: &str, step: &str) -> (String, String) {
    (project.to_owned(), step.to_owned())
}

/// Start and length of everything begun; what its window pins and puts before now has begun as well.
fn runs_of(problem: &Problem, plan: &Plan, slip: &Slip) -> Runs {
    let mut runs = Runs::new();
    for chosen in &plan.chosen {
        let Some(option) = find_option(problem, &chosen.project, &chosen.option) else { continue };
        for step in &option.steps {
            let said = slip.begun.iter().find(|b| b.project == chosen.project && b.step == step.id);
            let of_itself = is_pinned(step, problem.horizon) && step.earliest < slip.now;
            let run = match said {
                Some(begun) => Some((begun.start, begun.minutes.unwrap_or(step.minutes))),
                None => of_itself.then_some((step.earliest, step.minutes)),
            };
            if let Some(run) = run {
                runs.insert(key(&chosen.project, &step.id), run);
            }
        }
    }
    runs
}

/// An option by its names.
pub(super) fn find_option<'p>(problem: &'p Problem, project: &str, option: &str) -> Option<&'p Choice> {
    problem.projects.iter().find(|p| p.id == project)?.options.iter().find(|o| o.id == option)
}

fn replace_resources(problem: &mut Problem, slip: &Slip) {
    for resource in &mut problem.resources {
        if let Some(other) = slip.resources.iter().find(|other| other.id == resource.id) {
            *resource = other.clone();
        }
        // What was closed is over; what is closed now is closed from now on.
        resource.closed.retain(|&(_, to)| to > slip.now);
        for interval in &mut resource.closed {
            interval.0 = interval.0.max(slip.now);
        }
    }
}

/// What a project that was begun and given up has used of the stock is gone.
fn take_stock(problem: &mut Problem, project: &Project, chosen: Option<&Chosen>) {
    let Some(chosen) = chosen else { return };
    let Some(option) = project.options.iter().find(|option| option.id == chosen.option) else { return };
    for (id, amount) in &option.consumes {
        if let Some(there) = problem.stock.get_mut(id) {
            *there = there.saturating_sub(*amount);
        }
    }
}

/// A project under way: it goes on as chosen, and what has begun stays where it is.
fn go_on(project: &Project, chosen: &Chosen, runs: &Runs, slip: &Slip) -> Project {
    let option = project.options.iter().find(|option| option.id == chosen.option);
    let mut option = option.cloned().unwrap_or_default();
    for step in &mut option.steps {
        match runs.get(&key(&project.id, &step.id)) {
            Some(&(start, minutes)) => {
                step.minutes = minutes;
                step.earliest = start;
                step.latest_end = Some(start + minutes);
                if start + minutes <= slip.now {
                    step.needs.clear();
                }
            }
            None => wait_till_now(step, &project.id, slip),
        }
    }
    let run = |step: &str| runs.get(&key(&project.id, step)).copied();
    option.lags.retain(|lag| match (run(&lag.from), run(&lag.to)) {
        (Some(_), Some(_)) => false,
        (None, Some((start, _))) => {
            let minutes = option.steps.iter().find(|s| s.id == lag.from).map_or(0, |step| step.minutes);
            i64::from(slip.now) + i64::from(minutes) + i64::from(lag.min) <= i64::from(start)
        }
        _ => true,
    });
    option.holds.retain(|hold| run(&hold.to).is_none_or(|(start, minutes)| start + minutes > slip.now));
    Project { id: project.id.clone(), must: true, options: vec![option] }
}

fn wait_till_now(step: &mut Step, project: &str, slip: &Slip) {
    step.earliest = step.earliest.max(slip.now);
    if let Some(length) = slip.lengths.iter().find(|l| l.project == project && l.step == step.id) {
        step.minutes = length.minutes;
    }
}

/// A project of which nothing has begun: any of its options, from now on.
fn not_begun(project: &Project, chosen: Option<&Chosen>, slip: &Slip) -> Project {
    let mut project = project.clone();
    for option in &mut project.options {
        let is_chosen = chosen.is_some_and(|chosen| chosen.option == option.id);
        for step in &mut option.steps {
            if is_chosen {
                wait_till_now(step, &project.id, slip);
            } else {
                step.earliest = step.earliest.max(slip.now);
            }
        }
    }
    project
}

fn true_starts(chosen: &Chosen, runs: &Runs) -> Chosen {
    let mut chosen = chosen.clone();
    for (step, start) in &mut chosen.starts {
        if let Some((begun, _)) = runs.get(&key(&chosen.project, step)) {
            *start = *begun;
        }
    }
    chosen
}

/// What takes units of one resource and cannot be moved.
struct Fact {
    from: u32,
    to: u32,
    units: u32,
    source: Source,
}

/// Where a fact comes from, by places in the restated problem.
#[derive(Clone, Copy)]
enum Source {
    /// A begun step, by project and step.
    Step(usize, usize),
    /// A hold that was begun, by project and hold.
    Hold(usize, usize),
    /// A step whose window pins it and that has not begun.
    Pinned(usize, usize),
    /// Units that are away.
    Away,
}

/// Cuts off what the facts take beyond what is there, and adds the project of what is left of them.
fn settle_facts(rest: &mut Rest, slip: &Slip, runs: &Runs) {
    let mut left: Vec<Step> = Vec::new();
    for at in 0..rest.problem.resources.len() {
        let resource = rest.problem.resources[at].clone();
        let mut facts = facts_of(rest, slip, runs, &resource.id);
        while let Some((minute, used, there)) = first_too_much(&facts, &resource, rest.now) {
            let active = |fact: &Fact| fact.from <= minute && minute < fact.to && fact.units > 0;
            // What began last gives way; what is away gives way last, for it is not there to be used anyhow.
            let yields = (0..facts.len()).filter(|&f| active(&facts[f])).max_by_key(|&f| {
                let rank = match facts[f].source {
                    Source::Step(..) | Source::Hold(..) => 2,
                    Source::Pinned(..) => 1,
                    Source::Away => 0,
                };
                (rank, facts[f].from, f)
            });
            let Some(f) = yields else { break };
            if let Source::Away = facts[f].source {
                facts[f].units -= (used - there).min(facts[f].units);
                continue;
            }
            rest.overdrawn.extend(tell_overdrawn(rest, &resource.id, minute, used, there, facts[f].source));
            forget_use(&mut rest.problem, &resource.id, facts[f].source);
            facts[f].to = minute;
            if minute > rest.now {
                left.push(fixed_step(&resource.id, &facts[f], left.len(), rest.now));
            }
        }
        let away = facts.iter().filter(|f| matches!(f.source, Source::Away) && f.units > 0 && f.from < f.to);
        for fact in away {
            left.push(fixed_step(&resource.id, fact, left.len(), rest.now));
        }
    }
    add_facts(rest, left);
}

fn facts_of(rest: &Rest, slip: &Slip, runs: &Runs, resource: &str) -> Vec<Fact> {
    let mut facts = Vec::new();
    for (p, project) in rest.problem.projects.iter().enumerate() {
        let [option] = project.options.as_slice() else { continue };
        let run = |step: &str| runs.get(&key(&project.id, step)).copied();
        for (s, step) in option.steps.iter().enumerate() {
            let Some(&units) = step.needs.get(resource) else { continue };
            if let Some((start, minutes)) = run(&step.id) {
                facts.push(Fact { from: start, to: start + minutes, units, source: Source::Step(p, s) });
            } else if project.must && is_pinned(step, rest.problem.horizon) {
                let (from, to) = (step.earliest, step.earliest + step.minutes);
                facts.push(Fact { from, to, units, source: Source::Pinned(p, s) });
            }
        }
        for (h, hold) in option.holds.iter().enumerate().filter(|(_, hold)| hold.resource == resource) {
            let Some((from, _)) = run(&hold.from) else { continue };
            // A hold whose end has not begun lasts at least through this minute.
            let to = run(&hold.to).map_or(rest.now + 1, |(start, minutes)| start + minutes);
            facts.push(Fact { from, to, units: hold.amount, source: Source::Hold(p, h) });
        }
    }
    for away in slip.away.iter().filter(|away| away.resource == resource && away.to > slip.now) {
        let (from, to) = (away.from.max(slip.now), away.to.min(rest.problem.horizon));
        let shut =
            rest.problem.resources.iter().find(|r| r.id == resource).map_or(&[][..], |r| &r.closed[..]);
        // While a resource is closed nobody is missed.
        let spans = open_spans((from, to), shut);
        facts.extend(spans.into_iter().map(|(from, to)| Fact {
            from,
            to,
            units: away.units,
            source: Source::Away,
        }));
    }
    facts
}

/// The parts of a span outside the closed intervals.
fn open_spans(span: (u32, u32), closed: &[(u32, u32)]) -> Vec<(u32, u32)> {
    let mut spans = vec![span];
    for &(shut, open) in closed {
        spans = spans
            .into_iter()
            .flat_map(|(from, to)| [(from, to.min(shut)), (from.max(open), to)])
            .filter(|(from, to)| from < to)
            .collect();
    }
    spans
}

/// The first minute from now on at which the facts take more than there is: minute, units in use, units there.
fn first_too_much(facts: &[Fact], resource: &Resource, now: u32) -> Option<(u32, u32, u32)> {
    let starts = facts.iter().map(|fact| fact.from).chain(resource.closed.iter().map(|&(from, _)| from));
    let moments: BTreeSet<u32> = starts.map(|minute| minute.max(now)).chain([now]).collect();
    moments.into_iter().find_map(|minute| {
        let active = facts.iter().filter(|fact| fact.from <= minute && minute < fact.to);
        let used: u32 = active.map(|fact| fact.units).sum();
        let shut = resource.closed.iter().any(|&(from, to)| from <= minute && minute < to);
        let there = if shut { 0 } else { resource.capacity };
        (used > there).then_some((minute, used, there))
    })
}

fn tell_overdrawn(
    rest: &Rest,
    resource: &str,
    minute: u32,
    used: u32,
    there: u32,
    source: Source,
) -> Option<Overdrawn> {
    let (Source::Step(p, _) | Source::Hold(p, _)) = source else { return None };
    let project = rest.problem.projects[p].id.clone();
    Some(Overdrawn { resource: resource.to_owned(), minute, used, there, project })
}

fn forget_use(problem: &mut Problem, resource: &str, source: Source) {
    match source {
        Source::Step(p, s) | Source::Pinned(p, s) => {
            problem.projects[p].options[0].steps[s].needs.remove(resource);
        }
        // Holds are kept in their places, so that the other facts still find theirs.
        Source::Hold(p, h) => problem.projects[p].options[0].holds[h].amount = 0,
        Source::Away => {}
    }
}

/// A fact as a step that cannot move.
fn fixed_step(resource: &str, fact: &Fact, number: usize, now: u32) -> Step {
    let from = fact.from.max(now);
    Step {
        id: format!("{resource}-{number}"),
        minutes: fact.to - from,
        needs: BTreeMap::from([(resource.to_owned(), fact.units)]),
        earliest: from,
        latest_end: Some(fact.to),
    }
}

/// The project that holds the facts which are nobody's step any more.
fn add_facts(rest: &mut Rest, steps: Vec<Step>) {
    if steps.is_empty() {
        return;
    }
    let mut id = "as-it-stands".to_owned();
    while rest.problem.projects.iter().any(|project| project.id == id) {
        id.push('-');
    }
    let starts = steps.iter().map(|step| (step.id.clone(), step.earliest)).collect();
    rest.old.push(Chosen { project: id.clone(), option: "facts".to_owned(), starts });
    rest.begun.insert(id.clone());
    let option = Choice { id: "facts".to_owned(), steps, ..Choice::default() };
    rest.problem.projects.push(Project { id, must: true, options: vec![option] });
}
