//! What is said of a slip as facts: everything went as planned but for that, and for what must follow from it.

use std::collections::BTreeSet;

use dayplan::{Away, Begun, Length, Slip};

use super::words::{Said, StepName, planned_steps};
use crate::day::{ClockTime, Person, Span};
use crate::plan::pools::{self, Pool};
use crate::saved::SavedDay;
use crate::tell::words::length;

/// The facts for the planner, and the people as they are from now on.
pub(super) struct Facts {
    pub(super) slip: Slip,
    pub(super) people: Vec<Person>,
    /// What was concluded, a sentence each.
    pub(super) taken: Vec<String>,
}

/// States what is said as facts.
pub(super) fn state_facts(saved: &SavedDay, said: &Said) -> Facts {
    let minute = said.now - saved.starts;
    let mut facts =
        Facts { slip: Slip::as_planned(&saved.plan, minute), people: saved.people(), taken: Vec::new() };
    add_lengths(saved, said, &mut facts.slip);
    let not_begun = conclude_not_begun(saved, said, &facts.slip);
    for (project, step) in &not_begun {
        facts.taken.push(format!(
            "\"{}\" ({}) has not begun, for it comes after what ran long",
            saved.act_of(project, step),
            saved.name_of(project)
        ));
    }
    let waits = |begun: &Begun| {
        let name = (begun.project.clone(), begun.step.clone());
        said.not_begun.contains(&name) || not_begun.contains(&name)
    };
    facts.slip.begun.retain(|begun| !waits(begun));
    if !facts.slip.begun.is_empty()
        && said.began.is_empty()
        && said.longer.is_empty()
        && said.not_begun.is_empty()
    {
        facts.taken.push("up to now everything went as planned".to_owned());
    }
    facts.slip.given_up.clone_from(&said.give_up);
    break_down(saved, said, &mut facts.slip);
    send_away(saved, said, &mut facts);
    facts
}

/// True starts and lengths of what was said to be otherwise.
fn add_lengths(saved: &SavedDay, said: &Said, slip: &mut Slip) {
    let planned = |name: &StepName| {
        planned_steps(saved)
            .find(|(chosen, step, _)| chosen.project == name.0 && step.id == name.1)
            .map_or(0, |(_, step, _)| step.minutes)
    };
    for (name, start) in &said.began {
        slip.begun.retain(|begun| (&begun.project, &begun.step) != (&name.0, &name.1));
        let (project, step) = name.clone();
        slip.begun.push(Begun { project, step, start: *start, minutes: None });
    }
    for (name, more) in &said.longer {
        let minutes = planned(name) + more;
        match slip.begun.iter_mut().find(|begun| (&begun.project, &begun.step) == (&name.0, &name.1)) {
            Some(begun) => begun.minutes = Some(minutes),
            None => {
                let (project, step) = name.clone();
                slip.lengths.push(Length { project, step, minutes });
            }
        }
    }
}

/// Steps that were to begin by now and cannot have: what they wait for is not over, or their person was not free.
fn conclude_not_begun(saved: &SavedDay, said: &Said, slip: &Slip) -> BTreeSet<StepName> {
    let told: BTreeSet<&StepName> =
        said.began.iter().map(|(name, _)| name).chain(said.longer.iter().map(|(name, _)| name)).collect();
    let turns = saved.known_turns();
    let mut waiting: BTreeSet<StepName> = said.not_begun.iter().cloned().collect();
    loop {
        let ends = |name: &StepName| {
            let begun = slip.begun.iter().find(|b| (&b.project, &b.step) == (&name.0, &name.1));
            let planned = planned_steps(saved).find(|(c, s, _)| c.project == name.0 && s.id == name.1);
            match (begun.filter(|_| !waiting.contains(name)), planned) {
                (Some(begun), Some((_, step, _))) => {
                    Some(begun.start + begun.minutes.unwrap_or(step.minutes))
                }
                _ => None,
            }
        };
        let must_wait = |begun: &&Begun| {
            let name = (begun.project.clone(), begun.step.clone());
            if told.contains(&name) || waiting.contains(&name) {
                return false;
            }
            waits_for_work(saved, begun, &ends)
                || waits_for_hands(saved, slip, &turns, begun, &waiting, &told, &ends)
        };
        let more: Vec<StepName> =
            slip.begun.iter().filter(must_wait).map(|b| (b.project.clone(), b.step.clone())).collect();
        if more.is_empty() {
            let said: BTreeSet<StepName> = said.not_begun.iter().cloned().collect();
            return waiting.difference(&said).cloned().collect();
        }
        waiting.extend(more);
    }
}

/// Whether a step comes after one of its own make that has not ended by its start.
fn waits_for_work(saved: &SavedDay, begun: &Begun, ends: &dyn Fn(&StepName) -> Option<u32>) -> bool {
    let chosen = saved.plan.chosen.iter().find(|chosen| chosen.project == begun.project);
    let project = saved.problem.projects.iter().find(|project| project.id == begun.project);
    let option = chosen.and_then(|c| project?.options.iter().find(|option| option.id == c.option));
    let lags = option.map_or(&[][..], |option| option.lags.as_slice());
    lags.iter().filter(|lag| lag.to == begun.step).any(|lag| {
        let from = (begun.project.clone(), lag.from.clone());
        // What lies before the plan's own memory is over.
        let known = planned_steps(saved).any(|(c, s, _)| c.project == from.0 && s.id == from.1);
        known && ends(&from).is_none_or(|end| i64::from(end) + i64::from(lag.min) > i64::from(begun.start))
    })
}

/// Whether the hands that were to begin a step were still at something that ran long.
fn waits_for_hands(
    saved: &SavedDay,
    slip: &Slip,
    turns: &crate::plan::roster::Known,
    begun: &Begun,
    waiting: &BTreeSet<StepName>,
    told: &BTreeSet<&StepName>,
    ends: &dyn Fn(&StepName) -> Option<u32>,
) -> bool {
    let hands = |project: &str, step: &str| {
        let planned = planned_steps(saved).find(|(c, s, _)| c.project == project && s.id == step);
        planned.is_some_and(|(_, step, _)| step.needs.contains_key("hands"))
    };
    let name = (begun.project.clone(), begun.step.clone());
    let Some(person) = turns.get(&name).filter(|_| hands(&name.0, &name.1)) else { return false };
    slip.begun.iter().any(|other| {
        let busy = (other.project.clone(), other.step.clone());
        told.contains(&busy)
            && !waiting.contains(&busy)
            && turns.get(&busy) == Some(person)
            && hands(&busy.0, &busy.1)
            && other.start <= begun.start
            && ends(&busy).is_some_and(|end| end > begun.start)
    })
}

/// One less of what is out of use.
fn break_down(saved: &SavedDay, said: &Said, slip: &mut Slip) {
    for id in &said.broken {
        // A strong burner is one of the burners; and there are never more strong ones than burners.
        let also = match id.as_str() {
            "strong-burner" => Some("burner"),
            _ => None,
        };
        for id in [Some(id.as_str()), also].into_iter().flatten() {
            lose_one(saved, slip, id);
        }
        let of = |id: &str| {
            let resources = slip.resources.iter().chain(&saved.problem.resources);
            resources.into_iter().find(|resource| resource.id == id).map(|resource| resource.capacity)
        };
        if let (Some(burners), Some(strong)) = (of("burner"), of("strong-burner"))
            && strong > burners
        {
            lose_one(saved, slip, "strong-burner");
        }
    }
}

fn lose_one(saved: &SavedDay, slip: &mut Slip, id: &str) {
    if !slip.resources.iter().any(|resource| resource.id == id) {
        let there = saved.problem.resources.iter().find(|resource| resource.id == id);
        slip.resources.extend(there.cloned());
    }
    if let Some(resource) = slip.resources.iter_mut().find(|resource| resource.id == id) {
        resource.capacity = resource.capacity.saturating_sub(1);
    }
}

/// Takes people out of their hours, and what they add to each pool out of the day.
fn send_away(saved: &SavedDay, said: &Said, facts: &mut Facts) {
    for &(person, from, to) in &said.gone {
        let last = saved.starts + saved.problem.horizon;
        let (from, to) = (from.max(saved.starts), to);
        for pool in Pool::ALL {
            let levels: Vec<u32> = (from..to.min(last))
                .map(|minute| pool.share(&facts.people[person], ClockTime(minute)))
                .collect();
            for (start, end, units) in
                pools::level_stretches(&levels).into_iter().filter(|(_, _, units)| *units > 0)
            {
                let start = from - saved.starts + start;
                facts.slip.away.push(Away {
                    resource: pool.id().to_owned(),
                    units,
                    from: start,
                    to: from - saved.starts + end,
                });
            }
        }
        let gone = Span { from: ClockTime(from), to: ClockTime(to) };
        let name = facts.people[person].name.clone();
        facts.people[person].hours =
            facts.people[person].hours.iter().flat_map(|hours| cut_out(*hours, gone)).collect();
        if to < saved.ends {
            facts.taken.push(format!("{name} is away for {}", length(to - from)));
        } else {
            facts.taken.push(format!("{name} does not come back today"));
        }
    }
}

/// What is left of a stretch of hours.
fn cut_out(hours: Span, gone: Span) -> Vec<Span> {
    let before = Span { from: hours.from, to: hours.to.min(gone.from) };
    let after = Span { from: hours.from.max(gone.to), to: hours.to };
    [before, after].into_iter().filter(|span| span.from < span.to).collect()
}
