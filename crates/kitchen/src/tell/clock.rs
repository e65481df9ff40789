//! The day as a list of acts with clock times and names.

use almanac::{Attention, Care};

use super::Planned;
use crate::answer::{ClockLine, LineAttention};
use crate::day::{ClockTime, Span};
use crate::plan::people::{self, Duty};
use crate::plan::pools::Pool;
use crate::plan::{ABSENCES, errand_id, errand_step_id};

/// Every act of the plan in order of its start.
pub(super) fn clock_lines(planned: &Planned<'_>) -> Vec<ClockLine> {
    let mut lines = Vec::new();
    for chosen in planned.plan.chosen.iter().filter(|chosen| chosen.project != ABSENCES) {
        if let Some(candidate) = planned.candidate(&chosen.project, &chosen.option) {
            let make = planned.name_of(&chosen.project);
            for step in &candidate.work.steps {
                let Some(&start) = chosen.starts.get(&step.id) else { continue };
                lines.push(Acting {
                    line: ClockLine {
                        from: planned.span.from.0 + start,
                        to: planned.span.from.0 + start + step.minutes,
                        who: None,
                        attention: line_attention(step.attention),
                        act: step.title.clone(),
                        detail: step.detail.clone(),
                        project: chosen.project.clone(),
                        make: make.clone(),
                        caution: step.caution.clone(),
                        must_not_be_left: step.must_not_be_left,
                    },
                    pool: pool_of(step.attention, step.care),
                });
            }
        } else if let Some(errand) =
            planned.day.errands.iter().find(|errand| errand_id(errand) == chosen.project)
        {
            for (at, step) in errand.steps.iter().enumerate() {
                let Some(&start) = chosen.starts.get(&errand_step_id(at, step)) else { continue };
                let attention = if step.away { Attention::Hands } else { step.attention };
                lines.push(Acting {
                    line: ClockLine {
                        from: planned.span.from.0 + start,
                        to: planned.span.from.0 + start + step.minutes.0,
                        who: None,
                        attention: line_attention(attention),
                        act: step.what.clone(),
                        detail: vec![],
                        project: chosen.project.clone(),
                        make: errand.name.clone(),
                        caution: None,
                        must_not_be_left: false,
                    },
                    pool: pool_of(attention, Care::Ordinary),
                });
            }
        }
    }
    name_people(planned, &mut lines);
    let mut clock: Vec<ClockLine> = lines.into_iter().map(|acting| acting.line).collect();
    clock.sort_by(|a, b| {
        (a.from, a.attention as u8, a.to, &a.project).cmp(&(b.from, b.attention as u8, b.to, &b.project))
    });
    clock
}

/// A line with the pool that serves it.
struct Acting {
    line: ClockLine,
    pool: Option<Pool>,
}

fn name_people(planned: &Planned<'_>, lines: &mut [Acting]) {
    let duties: Vec<(usize, Duty)> = lines
        .iter()
        .enumerate()
        .filter(|(_, acting)| acting.line.from < acting.line.to)
        .filter_map(|(at, acting)| {
            let span = Span { from: ClockTime(acting.line.from), to: ClockTime(acting.line.to) };
            Some((at, Duty { project: acting.line.project.clone(), span, pool: acting.pool? }))
        })
        .collect();
    let bare: Vec<Duty> = duties.iter().map(|(_, duty)| duty.clone()).collect();
    let deal = people::deal(&planned.day.people, &bare);
    for ((at, _), who) in duties.iter().zip(deal.who) {
        lines[*at].line.who =
            Some(who.map_or_else(
                || "whoever is free".to_owned(),
                |person| planned.day.people[person].name.clone(),
            ));
    }
}

fn line_attention(attention: Attention) -> LineAttention {
    match attention {
        Attention::Hands => LineAttention::Hands,
        Attention::Eyes => LineAttention::Eyes,
        Attention::None => LineAttention::Alone,
    }
}

fn pool_of(attention: Attention, care: Care) -> Option<Pool> {
    match (attention, care) {
        (Attention::Hands, Care::Ordinary) => Some(Pool::Hands),
        (Attention::Hands, Care::Careful) => Some(Pool::CarefulHands),
        (Attention::Eyes, Care::Ordinary) => Some(Pool::Eyes),
        (Attention::Eyes, Care::Careful) => Some(Pool::CarefulEyes),
        (Attention::None, _) => None,
    }
}
