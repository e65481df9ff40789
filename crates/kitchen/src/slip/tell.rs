//! A day that was planned again, in words: what moved and by how much, and what cannot be kept.

use std::collections::BTreeMap;

use dayplan::{Change, Plan, Replanned, Slip};
use measure::{Minutes, write_clock};

use crate::answer::{ClockLine, LineAttention};
use crate::day::Person;
use crate::plan::ABSENCES;
use crate::plan::pools::Pool;
use crate::plan::roster::Roster;
use crate::saved::SavedDay;
use crate::tell::words::length;

/// The changes once the people were dealt out, which may have moved a step for somebody to be free for it.
pub(super) fn moved_again(told: &Replanned, before: &Plan, after: &Plan, slip: &Slip) -> Vec<Change> {
    let mut changes: Vec<Change> =
        told.changes.iter().filter(|change| !matches!(change, Change::Moved { .. })).cloned().collect();
    for old in &before.chosen {
        let Some(new) =
            after.chosen.iter().find(|new| new.project == old.project && new.option == old.option)
        else {
            continue;
        };
        for (step, &to) in &new.starts {
            let has_begun = slip.begun.iter().any(|b| b.project == old.project && b.step == *step);
            let Some(&from) = old.starts.get(step).filter(|from| **from != to && !has_begun) else {
                continue;
            };
            changes.push(Change::Moved { project: old.project.clone(), step: step.clone(), from, to });
        }
    }
    changes
}

/// Every act of the new plan with its person; those that are over as well.
pub(super) fn clock_lines(
    saved: &SavedDay,
    people: &[Person],
    told: &Replanned,
    roster: &Roster,
) -> Vec<ClockLine> {
    let mut clock = Vec::new();
    let done = saved.known_turns();
    for chosen in told.plan.chosen.iter().filter(|c| c.project != ABSENCES && c.option != "facts") {
        let project = told.problem.projects.iter().find(|project| project.id == chosen.project);
        let option = project.and_then(|project| project.options.iter().find(|o| o.id == chosen.option));
        for step in option.map_or(&[][..], |option| option.steps.as_slice()) {
            let Some(start) = chosen.starts.get(&step.id) else { continue };
            let name = (chosen.project.clone(), step.id.clone());
            let turn = roster.turn(&chosen.project, &step.id);
            let who = match turn {
                Some(turn) => {
                    Some(turn.who.map_or_else(|| "whoever is free".to_owned(), |p| people[p].name.clone()))
                }
                None => done.get(&name).map(|person| people[*person].name.clone()),
            };
            let attention = match Pool::serving(&step.needs) {
                Some(Pool::Hands | Pool::CarefulHands) => LineAttention::Hands,
                Some(Pool::Eyes | Pool::CarefulEyes) => LineAttention::Eyes,
                None if who.is_some() => LineAttention::Hands,
                None => LineAttention::Alone,
            };
            let act = saved.acts.get(&name);
            clock.push(ClockLine {
                from: saved.starts + start,
                to: saved.starts + start + step.minutes,
                who,
                attention,
                act: saved.act_of(&chosen.project, &step.id),
                detail: vec![],
                project: chosen.project.clone(),
                step: step.id.clone(),
                make: saved.name_of(&chosen.project),
                caution: act.and_then(|act| act.caution.clone()),
                must_not_be_left: act.is_some_and(|act| act.must_not_be_left),
            });
        }
    }
    clock.sort_by(|a, b| (a.from, a.to, &a.project, &a.step).cmp(&(b.from, b.to, &b.project, &b.step)));
    clock
}

/// Whether a step that is still to come stays where it was.
pub(super) fn something_stays(saved: &SavedDay, told: &Replanned, slip: &Slip) -> bool {
    super::words::planned_steps(saved).any(|(chosen, step, start)| {
        let new = told.plan.chosen.iter().find(|new| new.project == chosen.project);
        let begun = slip.begun.iter().any(|b| b.project == chosen.project && b.step == step.id);
        !begun && new.is_some_and(|new| new.starts.get(&step.id) == Some(&start))
    })
}

/// What is otherwise than planned: what is left out or added first, then make by make what moved.
pub(super) fn word_changes(saved: &SavedDay, told: &Replanned) -> Vec<String> {
    let mut lines = Vec::new();
    let mut moved: BTreeMap<&str, Vec<(&str, u32, u32)>> = BTreeMap::new();
    for change in &told.changes {
        match change {
            Change::Left { project, begun: true } => {
                lines.push(format!("{} is given up", saved.name_of(project)));
            }
            Change::Left { project, begun: false } => {
                lines.push(format!("{} is left out today", saved.name_of(project)));
            }
            Change::Added { project, .. } => {
                lines.push(format!("{} is made as well", saved.name_of(project)))
            }
            Change::Resized { project, .. } => {
                lines.push(format!("{} is made in another size or another way", saved.name_of(project)));
            }
            Change::Moved { project, step, from, to } => {
                moved.entry(project).or_default().push((step, *from, *to))
            }
        }
    }
    let mut makes: Vec<(u32, String)> = Vec::new();
    for (project, mut steps) in moved {
        steps.sort_by_key(|(_, _, to)| *to);
        let first = steps.first().map_or(0, |(_, _, to)| *to);
        makes.extend(word_moves(saved, project, &steps).into_iter().map(|line| (first, line)));
    }
    makes.sort_by_key(|(first, _)| *first);
    lines.extend(makes.into_iter().map(|(_, line)| line));
    lines
}

/// The moves of one make: one sentence where all go by the same minutes, else one for each.
fn word_moves(saved: &SavedDay, project: &str, steps: &[(&str, u32, u32)]) -> Vec<String> {
    let make = saved.name_of(project);
    let clock = |minute: u32| write_clock(Minutes(saved.starts + minute));
    let by = |from: u32, to: u32| {
        if to > from {
            format!("{} later", length(to - from))
        } else {
            format!("{} earlier", length(from - to))
        }
    };
    let delta = |&(_, from, to): &(&str, u32, u32)| i64::from(to) - i64::from(from);
    match steps {
        [] => vec![],
        [(step, from, to)] => {
            vec![format!(
                "{make}: \"{}\" at {} instead of {}",
                saved.act_of(project, step),
                clock(*to),
                clock(*from)
            )]
        }
        [first @ (step, from, to), rest @ ..] if rest.iter().all(|other| delta(other) == delta(first)) => {
            vec![format!(
                "{make}: {} from \"{}\" on, which is at {} instead of {}",
                by(*from, *to),
                saved.act_of(project, step),
                clock(*to),
                clock(*from)
            )]
        }
        several => {
            let (step, from, to) = several[0];
            vec![format!(
                "{make}: {} acts move, the first \"{}\" at {} instead of {}; their new times stand below",
                several.len(),
                saved.act_of(project, step),
                clock(to),
                clock(from)
            )]
        }
    }
}

/// What cannot be kept, each with what to do.
pub(super) fn word_troubles(saved: &SavedDay, told: &Replanned, roster: &Roster) -> Vec<String> {
    let clock = |minute: u32| write_clock(Minutes(saved.starts + minute));
    let mut lines = Vec::new();
    for missed in &told.missed {
        let (from, to) =
            (saved.act_of(&missed.project, &missed.from), saved.act_of(&missed.project, &missed.to));
        let verb = if missed.is_past { "were" } else { "will be" };
        let to_act = saved.acts.get(&(missed.project.clone(), missed.to.clone()));
        let advice = if to_act.is_some_and(|act| act.must_not_be_left) {
            "stay with it from when it begins, and give it all its minutes from then"
        } else {
            // No row says how long cooked, cut or filled food may stand, so none is made up.
            "look at it before you go on; nothing on file lets food that is cooked, cut or in the jar wait longer, so \
             put it in the refrigerator, and ask your extension service before it is canned"
        };
        lines.push(format!(
            "{}: between \"{from}\" and \"{to}\" there {verb} {}, and there should be {} at most; {advice}",
            saved.name_of(&missed.project),
            minutes_words(missed.gap),
            minutes_words(i64::from(missed.max))
        ));
    }
    for over in &told.overdrawn {
        lines.push(format!(
            "at {} {} {} are in use and there are {}; {} has to do without one, or put something else off",
            clock(over.minute),
            over.used,
            plural(&over.resource),
            over.there,
            saved.name_of(&over.project)
        ));
    }
    if told.late_by > 0 {
        lines.push(format!("the work ends {} after the day does", length(told.late_by)));
    }
    for turn in roster.turns.iter().filter(|turn| turn.who.is_none()) {
        lines.push(format!(
            "{}: nobody who may do it is free for \"{}\" at {}; find somebody who may before you go on with it",
            saved.name_of(&turn.project),
            saved.act_of(&turn.project, &turn.step),
            write_clock(Minutes(turn.duty.span.from.0))
        ));
    }
    if !told.because.is_empty() {
        let mut facts: Vec<String> = told.because.iter().filter_map(|fact| clashing(saved, fact)).collect();
        facts.dedup();
        if facts.len() > 1 {
            lines.push(format!("these cannot all be: {}", facts.join("; ")));
        }
    }
    lines
}

/// One of the facts that clash, in words.
fn clashing(saved: &SavedDay, fact: &str) -> Option<String> {
    let (kind, id) = fact.split_once(':')?;
    Some(match kind {
        "must" if id == ABSENCES || id.starts_with("as-it-stands") => {
            "the hours at which people are away".to_owned()
        }
        "must" => format!("{} is finished", saved.name_of(id)),
        "resource" => format!("there are no more {} than there are", plural(id)),
        _ => format!("there is no more of {} than there is", id.replace('-', " ")),
    })
}

fn minutes_words(minutes: i64) -> String {
    u32::try_from(minutes).map_or_else(|_| "no time".to_owned(), length)
}

/// A resource in the plural.
fn plural(id: &str) -> String {
    match id {
        "hands" => "pairs of hands".to_owned(),
        "careful-hands" => "pairs of hands for careful work".to_owned(),
        "eyes" | "careful-eyes" => "pairs of eyes".to_owned(),
        "kettle" => "big pots".to_owned(),
        other => format!("{}s", other.replace('-', " ")),
    }
}
