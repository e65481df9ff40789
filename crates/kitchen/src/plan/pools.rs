//! People as pools the planner can count: hands, careful hands, eyes, careful eyes.
//!
//! The problem format knows a resource with one capacity and closed times. People come and go at different
//! hours, so a pool's capacity is the most that are ever there, times with nobody are closed, and the times in
//! between are taken up by fixed steps of one `must` project, [`ABSENCES`]: who is away works elsewhere.

use std::collections::BTreeMap;

use dayplan::{Choice, Project, Resource, Step};

use crate::day::{ClockTime, Person, Span};

/// The id of the project whose steps stand for absent people.
pub(crate) const ABSENCES: &str = "absences";

/// How many things one person may keep an eye on while their hands do something else (ours: a first guess).
pub(crate) const EYES_EACH: u32 = 2;

/// What the planner counts people by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Pool {
    /// Someone works at it.
    Hands,
    /// Someone works at it who still may do careful work.
    CarefulHands,
    /// Someone is in the kitchen and looks.
    Eyes,
    /// The same, under pressure or over hot sugar.
    CarefulEyes,
}

impl Pool {
    /// Every pool, in the order in which they are written.
    pub(crate) const ALL: [Self; 4] = [Self::Hands, Self::CarefulHands, Self::Eyes, Self::CarefulEyes];

    /// Its id as a resource.
    pub(crate) fn id(self) -> &'static str {
        match self {
            Self::Hands => "hands",
            Self::CarefulHands => "careful-hands",
            Self::Eyes => "eyes",
            Self::CarefulEyes => "careful-eyes",
        }
    }

    /// The pool that serves a step with these needs.
    pub(crate) fn serving(needs: &BTreeMap<String, u32>) -> Option<Self> {
        [Self::CarefulHands, Self::Hands, Self::CarefulEyes, Self::Eyes]
            .into_iter()
            .find(|pool| needs.contains_key(pool.id()))
    }

    /// What one person adds to it at a minute of the day.
    pub(crate) fn share(self, person: &Person, at: ClockTime) -> u32 {
        let there = is_there(person, at);
        let careful = person.may_do_careful && person.careful_until.is_none_or(|until| at < until);
        match self {
            Self::Hands => u32::from(there && !on_break(person, at)),
            Self::CarefulHands => u32::from(there && careful && !on_break(person, at)),
            Self::Eyes if there => EYES_EACH,
            Self::CarefulEyes if there && careful => EYES_EACH,
            Self::Eyes | Self::CarefulEyes => 0,
        }
    }
}

/// Whether a person is in the kitchen at a minute.
pub(crate) fn is_there(person: &Person, at: ClockTime) -> bool {
    person.hours.iter().any(|span| span.from <= at && at < span.to)
}

/// Whether a person rests at a minute.
fn on_break(person: &Person, at: ClockTime) -> bool {
    person.breaks.iter().any(|span| span.from <= at && at < span.to)
}

/// Whether a person can do a piece of work over a whole stretch.
pub(crate) fn can_serve(person: &Person, pool: Pool, over: Span) -> bool {
    (over.from.0..over.to.0).all(|minute| pool.share(person, ClockTime(minute)) > 0)
}

/// Minutes by which a break may begin later, so that someone finishes what they are at; half of it stays in any case.
const BREAK_MAY_SLIP: u32 = 20;

/// Whether a person can do a piece of work over a whole stretch if they finish it before they rest.
pub(crate) fn can_finish_first(person: &Person, pool: Pool, over: Span) -> bool {
    let mut later = person.clone();
    for rest in &mut later.breaks {
        let runs_into = over.from < rest.from && rest.from < over.to;
        let late = over.to.0.saturating_sub(rest.from.0);
        let half_stays = 2 * late <= rest.to.0 - rest.from.0;
        if runs_into && late <= BREAK_MAY_SLIP && half_stays {
            rest.from = over.to;
        }
    }
    can_serve(&later, pool, over)
}

/// The stretch from the first arrival to the last leaving; `None` when nobody comes at all.
pub(crate) fn day_span(people: &[Person]) -> Option<Span> {
    let spans = || people.iter().flat_map(|person| &person.hours);
    let from = spans().map(|span| span.from).min()?;
    let to = spans().map(|span| span.to).max()?;
    (from < to).then_some(Span { from, to })
}

/// The pools of a day as resources, and the absences as fixed steps.
pub(crate) struct Pools {
    /// One resource for each pool.
    pub(crate) resources: Vec<Resource>,
    /// The project of absences, where there are any.
    pub(crate) absences: Option<Project>,
}

/// Counts the people of a day, minute by minute, into resources over `day`.
pub(crate) fn count_people(people: &[Person], day: Span) -> Pools {
    let mut resources = Vec::new();
    let mut steps = Vec::new();
    for pool in Pool::ALL {
        let levels: Vec<u32> = (day.from.0..day.to.0)
            .map(|minute| people.iter().map(|person| pool.share(person, ClockTime(minute))).sum())
            .collect();
        let capacity = levels.iter().copied().max().unwrap_or(0);
        let mut closed = Vec::new();
        for (start, end, level) in level_stretches(&levels) {
            if level == 0 {
                closed.push((start, end));
            } else if level < capacity {
                steps.push(Step {
                    id: format!("{}-short-from-{start}", pool.id()),
                    minutes: end - start,
                    needs: BTreeMap::from([(pool.id().to_owned(), capacity - level)]),
                    earliest: start,
                    latest_end: Some(end),
                });
            }
        }
        resources.push(Resource { id: pool.id().to_owned(), capacity, closed });
    }
    let absences = (!steps.is_empty()).then(|| Project {
        id: ABSENCES.to_owned(),
        must: true,
        options: vec![Choice { id: "as-stated".to_owned(), steps, ..Choice::default() }],
    });
    Pools { resources, absences }
}

/// The maximal stretches of equal level, as `(start, end, level)`.
pub(crate) fn level_stretches(levels: &[u32]) -> Vec<(u32, u32, u32)> {
    let mut stretches: Vec<(u32, u32, u32)> = Vec::new();
    for (minute, &level) in (0_u32..).zip(levels) {
        match stretches.last_mut() {
            Some(last) if last.2 == level => last.1 = minute + 1,
            _ => stretches.push((minute, minute + 1, level)),
        }
    }
    stretches
}

#[cfg(test)]
mod tests {
    use super::*;

    fn person(from: u32, to: u32, careful_until: Option<u32>) -> Person {
        Person {
            name: format!("from {from}"),
            hours: vec![Span { from: ClockTime(from), to: ClockTime(to) }],
            breaks: vec![],
            careful_until: careful_until.map(ClockTime),
            may_do_careful: true,
        }
    }

    #[test]
    fn someone_who_comes_later_is_a_fixed_step_until_then() {
        let people = [person(480, 1080, None), person(900, 1080, None)];
        let day = day_span(&people).expect("both have hours");
        let pools = count_people(&people, day);
        assert_eq!(pools.resources[0].capacity, 2);
        assert!(pools.resources[0].closed.is_empty());
        let absences = pools.absences.expect("one is away in the morning");
        let hands = &absences.options[0].steps[0];
        assert_eq!((hands.earliest, hands.minutes, hands.latest_end), (0, 420, Some(420)));
        assert_eq!(hands.needs["hands"], 1);
    }

    #[test]
    fn a_break_of_the_only_person_closes_hands_but_not_eyes() {
        let mut cook = person(480, 1020, None);
        cook.breaks = vec![Span { from: ClockTime(720), to: ClockTime(750) }];
        let pools = count_people(&[cook], Span { from: ClockTime(480), to: ClockTime(1020) });
        assert_eq!(pools.resources[0].closed, vec![(240, 270)]);
        assert!(pools.resources[2].closed.is_empty());
        assert!(pools.absences.is_none());
    }

    #[test]
    fn a_break_may_slip_a_little_and_no_more() {
        let mut cook = person(480, 1020, None);
        cook.breaks = vec![Span { from: ClockTime(720), to: ClockTime(765) }];
        let over = |to| Span { from: ClockTime(700), to: ClockTime(to) };
        assert!(!can_serve(&cook, Pool::Hands, over(735)));
        assert!(can_finish_first(&cook, Pool::Hands, over(735)));
        assert!(!can_finish_first(&cook, Pool::Hands, over(745)));
        let in_it = Span { from: ClockTime(730), to: ClockTime(735) };
        assert!(!can_finish_first(&cook, Pool::Hands, in_it), "work does not begin in a break");
    }

    #[test]
    fn careful_hands_close_when_careful_work_must_end() {
        let pools =
            count_people(&[person(480, 1020, Some(900))], Span { from: ClockTime(480), to: ClockTime(1020) });
        assert_eq!(pools.resources[1].closed, vec![(420, 540)]);
    }
}
