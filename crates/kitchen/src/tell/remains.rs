//! What is left over and what goes on after the day.

use almanac::Method;
use measure::Mass;

use super::{Planned, words};
use crate::answer::{ClockLine, LaterLine, LeftOverLine};
use crate::day::Waits;
use crate::plan::worth::waits_words;

/// A left-over weight below this is a handful and goes into lunch.
const A_HANDFUL: Mass = Mass::grams(150.0);

/// Produce, brine and syrup that are left, and where each goes.
pub(super) fn left_over(planned: &Planned<'_>) -> Vec<LeftOverLine> {
    let mut lines = Vec::new();
    for (at, basket) in planned.day.baskets.iter().enumerate() {
        let used: Mass = planned
            .chosen()
            .flat_map(|candidate| &candidate.uses)
            .filter(|(from, _)| *from == at)
            .map(|(_, mass)| *mass)
            .sum();
        let left = basket.net - used;
        if left > A_HANDFUL {
            lines.push(LeftOverLine {
                what: format!("{} of {}", words::weight(planned.day.units, left), basket.entered),
                goes_to: place_for(planned, at, basket.waits),
            });
        }
    }
    for (considered, candidate) in planned.chosen_makes() {
        // Left-over produce is counted by basket above; what else a fit leaves is liquid.
        let liquids = candidate.fit.left_over.iter().filter(|left| {
            !considered
                .formula
                .ingredients
                .iter()
                .any(|line| !line.accepts.is_empty() && *line.name == *left.what)
        });
        lines.extend(liquids.map(|left| LeftOverLine {
            what: match left.mass {
                Some(mass) => format!("{} of {}", words::weight(planned.day.units, mass), left.what),
                None => left.what.clone(),
            },
            goes_to: left.goes_to.clone(),
        }));
    }
    lines.dedup_by(|a, b| a.what == b.what && a.goes_to == b.goes_to);
    lines
}

/// Where left-over produce goes: it waits, or into the freezer or dryer by a formula on file, or to the table.
fn place_for(planned: &Planned<'_>, basket: usize, waits: Waits) -> String {
    let simple = planned
        .shown
        .iter()
        .chain(&planned.unshown)
        .filter(|considered| {
            considered.formula.methods.iter().any(|method| matches!(method, Method::Freeze | Method::Dry))
        })
        .find(|considered| {
            considered.options.iter().any(|option| option.uses.iter().any(|(at, _)| *at == basket))
        });
    match (waits, simple) {
        (Waits::Week | Waits::Days, _) => format!("it will wait {}", waits_words(waits)),
        (_, Some(considered)) => {
            format!(
                "{}, or eat it first; it will wait {}",
                words::name_of(considered.formula),
                waits_words(waits)
            )
        }
        (_, None) => format!("eat it or give it away; it will wait {}", waits_words(waits)),
    }
}

/// What goes on after the day, with the time to look at it.
pub(super) fn later(planned: &Planned<'_>, clock: &[ClockLine]) -> Vec<LaterLine> {
    let mut lines: Vec<(u32, LaterLine)> = Vec::new();
    for chosen in &planned.plan.chosen {
        let Some(candidate) = planned.candidate(&chosen.project, &chosen.option) else { continue };
        let make = planned.name_of(&chosen.project);
        for work in &candidate.work.later {
            let Some(start) = chosen.starts.get(&work.after) else { continue };
            let step = candidate.work.steps.iter().find(|step| step.id == work.after);
            let from = planned.span.from.0 + start + step.map_or(0, |step| step.minutes);
            lines.push((
                from,
                LaterLine {
                    when: when_words(planned, from, work.minutes),
                    what: work.what.clone(),
                    make: make.clone(),
                },
            ));
        }
    }
    // The same rest after several loads of one make is told once, from the last load.
    lines.sort_by_key(|(from, _)| std::cmp::Reverse(*from));
    let mut told: Vec<LaterLine> = Vec::new();
    for (_, line) in lines {
        if !told.iter().any(|other| other.what == line.what && other.make == line.make) {
            told.push(line);
        }
    }
    told.reverse();
    debug_assert!(clock.len() >= planned.plan.chosen.len().saturating_sub(1));
    told
}

const MINUTES_A_DAY: u32 = 1_440;

/// "until Sunday 07:40 to 19:40", "3 to 4 weeks, from today".
fn when_words(planned: &Planned<'_>, from: u32, (least, most): (u32, u32)) -> String {
    let days = |minutes: u32| minutes.div_ceil(MINUTES_A_DAY);
    if least > 3 * MINUTES_A_DAY {
        let dates = if days(least) == days(most) {
            date_after(planned, days(least))
        } else {
            format!("{} to {}", date_after(planned, days(least)), date_after(planned, days(most)))
        };
        return format!("look at it every few days; ready about {dates}");
    }
    let clock = |minute: u32| {
        let day = minute / MINUTES_A_DAY;
        let time = measure::write_clock(measure::Minutes(minute % MINUTES_A_DAY));
        match day {
            0 => time,
            1 => format!("{time} tomorrow"),
            _ => format!("{time} on {}", date_after(planned, day)),
        }
    };
    if least == most {
        return format!("until {}", clock(from + most));
    }
    format!("from {}, for {} to {}", clock(from), words::length(least), words::length(most))
}

/// A date some days after the day, `Tuesday 1 September`.
fn date_after(planned: &Planned<'_>, days: u32) -> String {
    let mut date = planned.day.date;
    for _ in 0..days {
        date = date.tomorrow().unwrap_or(date);
    }
    let words = super::date_in_words(date);
    words.rsplit_once(' ').map_or(words.clone(), |(without_year, _)| without_year.to_owned())
}
