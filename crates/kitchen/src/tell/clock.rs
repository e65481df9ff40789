//! The day as a list of acts with clock times and names.

use almanac::Attention;

use super::Planned;
use crate::answer::{ClockLine, LineAttention};
use crate::plan::{ABSENCES, errand_id, errand_step_id};

/// Every act of the plan in order of its start.
pub(super) fn clock_lines(planned: &Planned<'_>) -> Vec<ClockLine> {
    let mut clock: Vec<ClockLine> = Vec::new();
    for chosen in planned.plan.chosen.iter().filter(|chosen| chosen.project != ABSENCES) {
        let place = Place { planned, project: &chosen.project, make: planned.name_of(&chosen.project) };
        if let Some(candidate) = planned.candidate(&chosen.project, &chosen.option) {
            clock.extend(candidate.work.steps.iter().filter_map(|step| {
                let start = *chosen.starts.get(&step.id)?;
                Some(ClockLine {
                    detail: step.detail.clone(),
                    caution: step.caution.clone(),
                    must_not_be_left: step.must_not_be_left,
                    ..place.line(&step.id, &step.title, start, step.minutes, step.attention)
                })
            }));
        } else if let Some(errand) =
            planned.day.errands.iter().find(|errand| errand_id(errand) == chosen.project)
        {
            clock.extend(errand.steps.iter().enumerate().filter_map(|(at, step)| {
                let id = errand_step_id(at, step);
                let start = *chosen.starts.get(&id)?;
                let attention = if step.away { Attention::Hands } else { step.attention };
                Some(place.line(&id, &step.what, start, step.minutes.0, attention))
            }));
        }
    }
    clock.sort_by(|a, b| {
        (a.from, a.attention as u8, a.to, &a.project).cmp(&(b.from, b.attention as u8, b.to, &b.project))
    });
    clock
}

/// The make or errand a line belongs to.
struct Place<'p, 'a> {
    planned: &'p Planned<'a>,
    project: &'p str,
    make: String,
}

impl Place<'_, '_> {
    /// A line with its clock times and its person.
    fn line(&self, step: &str, act: &str, start: u32, minutes: u32, attention: Attention) -> ClockLine {
        let from = self.planned.span.from.0 + start;
        let turn = self.planned.roster.turn(self.project, step);
        let name = |person: usize| self.planned.day.people[person].name.clone();
        ClockLine {
            from,
            to: from + minutes,
            who: turn.map(|turn| turn.who.map_or_else(|| "whoever is free".to_owned(), name)),
            attention: match attention {
                Attention::Hands => LineAttention::Hands,
                Attention::Eyes => LineAttention::Eyes,
                Attention::None => LineAttention::Alone,
            },
            act: act.to_owned(),
            detail: vec![],
            project: self.project.to_owned(),
            step: step.to_owned(),
            make: self.make.clone(),
            caution: None,
            must_not_be_left: false,
        }
    }
}
