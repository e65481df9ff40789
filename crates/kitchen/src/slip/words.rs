//! What a person says of a slip, understood: acts, people and machines by their words.

use dayplan::{Chosen, Step};
use measure::{Minutes, read_clock, read_minutes, write_clock};

use crate::plan::ABSENCES;
use crate::plan::pools::Pool;
use crate::saved::SavedDay;

/// What is said, as it was typed.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SlipWords {
    /// What time it is: "13:40".
    pub now: String,
    /// Acts that take longer: "crush the tomatoes=20 min".
    pub longer: Vec<String>,
    /// Acts that were planned and have not begun: "peel the peaches".
    pub not_begun: Vec<String>,
    /// Acts that began at another time: "fill the jars=13:15".
    pub began: Vec<String>,
    /// People who are gone: "Wim", "Wim 15:00-16:00".
    pub gone: Vec<String>,
    /// Machines and places that are out of use: "burner".
    pub broken: Vec<String>,
    /// Makes that will not be gone on with.
    pub give_up: Vec<String>,
}

/// What is said, understood.
#[derive(Debug, Clone, Default)]
pub(super) struct Said {
    /// Minutes from midnight.
    pub(super) now: u32,
    /// Steps with the minutes they take more.
    pub(super) longer: Vec<(StepName, u32)>,
    pub(super) not_begun: Vec<StepName>,
    /// Steps with the minute of the horizon at which they began.
    pub(super) began: Vec<(StepName, u32)>,
    /// People by their place, from when to when, in minutes from midnight.
    pub(super) gone: Vec<(usize, u32, u32)>,
    /// Resources of which one is out of use.
    pub(super) broken: Vec<String>,
    pub(super) give_up: Vec<String>,
}

/// A step by its project and name.
pub(super) type StepName = (String, String);

/// Words that name nothing of the day, or too much.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WordFault {
    /// No time of day.
    #[error("{typed:?} is no time of day; hint: write it as 13:40")]
    Time {
        /// What was typed.
        typed: String,
    },
    /// A time outside the planned day.
    #[error("{typed} is outside the planned day, {from} to {to}; hint: give a time within it")]
    OutsideDay {
        /// What was typed.
        typed: String,
        /// When the day begins.
        from: String,
        /// When it ends.
        to: String,
    },
    /// Something without its figure.
    #[error("{typed:?} does not say {what}; hint: write it as {example:?}")]
    NoFigure {
        /// What was typed.
        typed: String,
        /// What is missing.
        what: &'static str,
        /// How it is written.
        example: &'static str,
    },
    /// No act, person, machine or make of that name.
    #[error("no {kind} of this day is called {typed:?}; hint: name one of {known}")]
    Unknown {
        /// What kind of thing was looked for.
        kind: &'static str,
        /// What was typed.
        typed: String,
        /// What there is.
        known: String,
    },
    /// Several acts of that name.
    #[error(
        "{count} acts go by {typed:?}: {known}; hint: say more of its words, or begin with the time it was planned at"
    )]
    Several {
        /// What was typed.
        typed: String,
        /// How many.
        count: usize,
        /// The first of them, with their times.
        known: String,
    },
}

/// Understands what is said of a day.
pub(super) fn read_words(saved: &SavedDay, words: &SlipWords) -> Result<Said, WordFault> {
    let now = read_time(saved, &words.now)?;
    let minute = now - saved.starts;
    let mut said = Said { now, ..Said::default() };
    for typed in &words.longer {
        let (act, figure) = split_figure(typed, "by how much", "fill the jars=10 min")?;
        let more = read_minutes(figure).map_err(|_| WordFault::NoFigure {
            typed: typed.clone(),
            what: "by how many minutes",
            example: "fill the jars=10 min",
        })?;
        said.longer.push((find_act(saved, act, Some(minute))?, more.0));
    }
    for typed in &words.not_begun {
        said.not_begun.push(find_act(saved, typed, Some(minute))?);
    }
    for typed in &words.began {
        let (act, figure) = split_figure(typed, "when", "fill the jars=13:15")?;
        let began = read_time(saved, figure)?;
        said.began.push((find_act(saved, act, Some(minute))?, began - saved.starts));
    }
    for typed in &words.gone {
        said.gone.push(read_gone(saved, typed, now)?);
    }
    for typed in &words.broken {
        said.broken.push(find_resource(saved, typed)?);
    }
    for typed in &words.give_up {
        said.give_up.push(find_make(saved, typed)?);
    }
    Ok(said)
}

/// A time of day within the planned day, in minutes from midnight.
pub(crate) fn read_time(saved: &SavedDay, typed: &str) -> Result<u32, WordFault> {
    let time = read_clock(typed).map_err(|_| WordFault::Time { typed: typed.to_owned() })?.0;
    let last = saved.starts + saved.problem.horizon;
    if (saved.starts..=last.max(saved.ends)).contains(&time) {
        return Ok(time);
    }
    let clock = |minute: u32| write_clock(Minutes(minute));
    Err(WordFault::OutsideDay {
        typed: typed.to_owned(),
        from: clock(saved.starts),
        to: clock(last.max(saved.ends)),
    })
}

fn split_figure<'t>(
    typed: &'t str,
    what: &'static str,
    example: &'static str,
) -> Result<(&'t str, &'t str), WordFault> {
    let parts = typed.rsplit_once('=').map(|(act, figure)| (act.trim(), figure.trim()));
    parts.filter(|(act, figure)| !act.is_empty() && !figure.is_empty()).ok_or_else(|| WordFault::NoFigure {
        typed: typed.to_owned(),
        what,
        example,
    })
}

/// A planned step: which it is, when it starts, how long it takes.
pub(super) fn planned_steps(saved: &SavedDay) -> impl Iterator<Item = (&Chosen, &Step, u32)> {
    let chosen =
        saved.plan.chosen.iter().filter(|chosen| chosen.project != ABSENCES && chosen.option != "facts");
    chosen.flat_map(|chosen| {
        let project = saved.problem.projects.iter().find(|project| project.id == chosen.project);
        let option = project.and_then(|project| project.options.iter().find(|o| o.id == chosen.option));
        let steps = option.map_or(&[][..], |option| option.steps.as_slice());
        steps.iter().filter_map(move |step| Some((chosen, step, *chosen.starts.get(&step.id)?)))
    })
}

/// The act that goes by these words: the one under way before others, then the next that is to come.
fn find_act(saved: &SavedDay, typed: &str, now: Option<u32>) -> Result<StepName, WordFault> {
    let (time, words) = split_time(typed);
    let wanted: Vec<String> = words_of(words);
    let fits = |chosen: &Chosen, step: &Step, start: u32| {
        let text = format!("{} {}", saved.name_of(&chosen.project), saved.act_of(&chosen.project, &step.id));
        let there = words_of(&text);
        time.is_none_or(|time| time == saved.starts + start)
            && wanted.iter().all(|word| there.iter().any(|other| other.starts_with(word.as_str())))
    };
    let mut found: Vec<(&Chosen, &Step, u32)> =
        planned_steps(saved).filter(|(chosen, step, start)| fits(chosen, step, *start)).collect();
    found.sort_by_key(|(_, _, start)| *start);
    let under_way = |(_, step, start): &&(&Chosen, &Step, u32)| {
        now.is_some_and(|now| *start <= now && now <= start + step.minutes)
    };
    let running: Vec<_> = found.iter().filter(under_way).collect();
    match (found.as_slice(), running.as_slice()) {
        ([], _) => Err(WordFault::Unknown {
            kind: "act",
            typed: typed.to_owned(),
            known: list_acts(saved, &planned_near(saved, now)),
        }),
        ([(chosen, step, _)], _) => Ok((chosen.project.clone(), step.id.clone())),
        (_, [(chosen, step, _)]) => Ok((chosen.project.clone(), step.id.clone())),
        (several, _) => Err(WordFault::Several {
            typed: typed.to_owned(),
            count: several.len(),
            known: list_acts(saved, several),
        }),
    }
}

/// A time of day before the words, where there is one.
fn split_time(typed: &str) -> (Option<u32>, &str) {
    let first = typed.split_whitespace().next().unwrap_or_default();
    match read_clock(first) {
        Ok(time) if first.contains(':') => (Some(time.0), typed.trim_start()[first.len()..].trim_start()),
        _ => (None, typed),
    }
}

/// The acts around a minute, for someone who must name one.
fn planned_near(saved: &SavedDay, now: Option<u32>) -> Vec<(&Chosen, &Step, u32)> {
    let now = now.unwrap_or(0);
    let mut near: Vec<_> =
        planned_steps(saved).filter(|(_, step, start)| start + step.minutes >= now).collect();
    near.sort_by_key(|(_, _, start)| *start);
    near
}

fn list_acts(saved: &SavedDay, acts: &[(&Chosen, &Step, u32)]) -> String {
    /// More than these nobody reads.
    const MOST: usize = 5;
    let said = acts.iter().take(MOST).map(|(chosen, step, start)| {
        let time = write_clock(Minutes(saved.starts + start));
        format!("\"{time} {}\" ({})", saved.act_of(&chosen.project, &step.id), saved.name_of(&chosen.project))
    });
    said.collect::<Vec<_>>().join(", ")
}

/// Lower-case words without their plural.
fn words_of(text: &str) -> Vec<String> {
    const SMALL: [&str; 5] = ["the", "a", "an", "of", "and"];
    let words = text.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let words = words.map(|word| word.to_lowercase()).filter(|word| !SMALL.contains(&word.as_str()));
    words.map(|word| word.strip_suffix('s').map_or(word.clone(), str::to_owned)).collect()
}

/// "Wim", "Wim 15:00", "Wim 15:00-16:00": who, and from when to when in minutes from midnight.
fn read_gone(saved: &SavedDay, typed: &str, now: u32) -> Result<(usize, u32, u32), WordFault> {
    let end = saved.ends.max(saved.starts + saved.problem.horizon);
    let (name, span) = match typed.rsplit_once(' ') {
        Some((name, span)) if span.contains(':') => (name.trim(), Some(span)),
        _ => (typed.trim(), None),
    };
    let person = saved.staff.people.iter().position(|line| line.name.eq_ignore_ascii_case(name));
    let person = person.ok_or_else(|| WordFault::Unknown {
        kind: "person",
        typed: name.to_owned(),
        known: saved.staff.people.iter().map(|line| line.name.as_str()).collect::<Vec<_>>().join(", "),
    })?;
    let Some(span) = span else { return Ok((person, now, end)) };
    let (from, to) = match span.split_once('-') {
        Some((from, to)) => (read_time(saved, from)?, read_time(saved, to)?),
        None => (read_time(saved, span)?, end),
    };
    if to < from {
        return Err(WordFault::Time { typed: span.to_owned() });
    }
    Ok((person, from.max(now), to))
}

/// A machine or place by its words; people are no machines.
fn find_resource(saved: &SavedDay, typed: &str) -> Result<String, WordFault> {
    let is_pool = |id: &str| Pool::ALL.iter().any(|pool| pool.id() == id);
    let things: Vec<&str> =
        saved.problem.resources.iter().map(|r| r.id.as_str()).filter(|id| !is_pool(id)).collect();
    let wanted = words_of(typed);
    let exact = things.iter().find(|id| words_of(id) == wanted);
    let holds = |id: &&&str| !wanted.is_empty() && wanted.iter().all(|word| words_of(id).contains(word));
    let mut held = things.iter().filter(holds);
    let found = exact.or_else(|| held.next().filter(|_| held.next().is_none()));
    found.map(|id| (*id).to_owned()).ok_or_else(|| WordFault::Unknown {
        kind: "machine or place",
        typed: typed.to_owned(),
        known: things.iter().map(|id| id.replace('-', " ")).collect::<Vec<_>>().join(", "),
    })
}

/// A planned make or errand by its words.
fn find_make(saved: &SavedDay, typed: &str) -> Result<String, WordFault> {
    let makes: Vec<&str> = saved
        .plan
        .chosen
        .iter()
        .filter(|chosen| chosen.project != ABSENCES && chosen.option != "facts")
        .map(|chosen| chosen.project.as_str())
        .collect();
    let wanted = words_of(typed);
    let holds = |id: &&&str| {
        let there = words_of(&saved.name_of(id));
        !wanted.is_empty() && wanted.iter().all(|word| there.contains(word))
    };
    let mut found = makes.iter().filter(holds);
    match (found.next(), found.next()) {
        (Some(id), None) => Ok((*id).to_owned()),
        _ => Err(WordFault::Unknown {
            kind: "make",
            typed: typed.to_owned(),
            known: makes.iter().map(|id| saved.name_of(id)).collect::<Vec<_>>().join("; "),
        }),
    }
}
