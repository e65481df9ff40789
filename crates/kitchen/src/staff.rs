//! Who is there and who does what, as a document beside the problem: `people/1`.
//!
//! The problem counts heads in pools and knows no names. This says which heads: hours, breaks and permissions of each
//! person, and the steps they were given. Times are minutes from the start of the problem's horizon, as in the problem.

use serde::{Deserialize, Serialize};

use crate::day::{ClockTime, Person, Span};
use crate::plan::roster::Roster;

/// The name of the format.
pub const PEOPLE_FORMAT: &str = "people/1";

/// Who is there and who does what.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeopleDocument {
    /// [`PEOPLE_FORMAT`].
    pub format: String,
    /// The people, in the order of the day file.
    pub people: Vec<PersonLine>,
    /// Every step that takes somebody, with its person.
    pub turns: Vec<TurnLine>,
}

/// One person.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonLine {
    /// The name.
    pub name: String,
    /// When they are there, as intervals `[a, b)`.
    pub hours: Vec<(u32, u32)>,
    /// When they rest.
    #[serde(default)]
    pub breaks: Vec<(u32, u32)>,
    /// Whether careful work may be given to them.
    pub careful: bool,
    /// The minute from which it may not; `None` when it may at any hour.
    pub careful_until: Option<u32>,
}

/// One step and who does it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TurnLine {
    /// The project.
    pub project: String,
    /// The step.
    pub step: String,
    /// The person's name; `None` where nobody was found.
    pub who: Option<String>,
}

/// The document of a day's people and what they were given.
pub(crate) fn write_staff(people: &[Person], day: Span, roster: &Roster) -> PeopleDocument {
    let from_start = |time: ClockTime| time.0.saturating_sub(day.from.0);
    let spans =
        |spans: &[Span]| spans.iter().map(|span| (from_start(span.from), from_start(span.to))).collect();
    PeopleDocument {
        format: PEOPLE_FORMAT.to_owned(),
        people: people
            .iter()
            .map(|person| PersonLine {
                name: person.name.clone(),
                hours: spans(&person.hours),
                breaks: spans(&person.breaks),
                careful: person.may_do_careful,
                careful_until: person.careful_until.map(from_start),
            })
            .collect(),
        turns: roster
            .turns
            .iter()
            .map(|turn| TurnLine {
                project: turn.project.clone(),
                step: turn.step.clone(),
                who: turn.who.map(|person| people[person].name.clone()),
            })
            .collect(),
    }
}

/// The people of a document whose horizon begins at `starts`.
pub(crate) fn read_staff(document: &PeopleDocument, starts: ClockTime) -> Vec<Person> {
    let at = |minute: u32| ClockTime(starts.0.saturating_add(minute));
    let spans =
        |spans: &[(u32, u32)]| spans.iter().map(|&(from, to)| Span { from: at(from), to: at(to) }).collect();
    document
        .people
        .iter()
        .map(|line| Person {
            name: line.name.clone(),
            hours: spans(&line.hours),
            breaks: spans(&line.breaks),
            careful_until: line.careful_until.map(at),
            may_do_careful: line.careful,
        })
        .collect()
}
