//! Who does what: the planner counts pools, this gives each piece of work a name.
//!
//! Work is dealt out in order of its start; who is at something when a break begins finishes it first. Hands go to one person at a time; eyes may be kept on
//! [`EYES_EACH`] things beside the hands' work. Among those who can, the one who
//! did the step before in the same make goes on with it, then the one with the fewest minutes so far, so that
//! hand-overs are few and shares fair. When dealing in that order leaves a piece to nobody, the deal is searched
//! with a bounded number of tries, and then by handing work on: who could do the piece gives what is in the way to
//! somebody else. What still fails is reported, never hidden.

use super::pools::{self, EYES_EACH, Pool};
use crate::day::{Person, Span};

/// A piece of work that wants a person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Duty {
    /// The make or errand it belongs to.
    pub(crate) project: String,
    /// When.
    pub(crate) span: Span,
    /// From which pool.
    pub(crate) pool: Pool,
    /// Whether it takes the person out of the kitchen, eyes and all.
    pub(crate) is_away: bool,
    /// Who is at it already, or did it: a fact.
    pub(crate) fixed: Option<usize>,
}

/// The person of each duty, by position in the people's list; `None` where nobody could serve.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Deal {
    /// One entry per duty, in the order given.
    pub(crate) who: Vec<Option<usize>>,
}

/// How many placements the search may try before it leaves the rest to the first fit.
const TRIES: u32 = 20_000;

/// How many times in a row work is handed on to make room for an open piece.
const HAND_ONS: u32 = 4;

/// Deals the duties out to the people.
pub(crate) fn deal(people: &[Person], duties: &[Duty]) -> Deal {
    let mut order: Vec<usize> = (0..duties.len()).filter(|&at| duties[at].fixed.is_none()).collect();
    let fixed: Vec<Option<usize>> = duties.iter().map(|duty| duty.fixed).collect();
    // Hands before eyes at the same minute: a watcher is easier found than a worker.
    order.sort_by_key(|&at| (duties[at].span.from, is_eyes(duties[at].pool), duties[at].span.to, at));
    let able: Vec<Vec<usize>> = duties
        .iter()
        .map(|duty| {
            (0..people.len()).filter(|&p| pools::can_finish_first(&people[p], duty.pool, duty.span)).collect()
        })
        .collect();
    let mut search = Search { people, duties, order: &order, able: &able, who: fixed.clone(), left: TRIES };
    if search.place(0) {
        return Deal { who: search.who };
    }
    // Not in order of time, then: those whom few can do first, or the longest first.
    let mut by_choice = order.clone();
    by_choice.sort_by_key(|&at| able[at].len());
    let mut by_length = order.clone();
    by_length.sort_by_key(|&at| std::cmp::Reverse(duties[at].span.to.0 - duties[at].span.from.0));
    let deals = [&order, &by_choice, &by_length].map(|order| {
        let mut search = Search { people, duties, order, able: &able, who: fixed.clone(), left: 0 };
        search.place_first_fit();
        search.hand_on();
        search.who
    });
    let open = |who: &Vec<Option<usize>>| who.iter().filter(|person| person.is_none()).count();
    Deal { who: deals.into_iter().min_by_key(open).unwrap_or_default() }
}

/// Whether a pool is one of eyes.
fn is_eyes(pool: Pool) -> bool {
    matches!(pool, Pool::Eyes | Pool::CarefulEyes)
}

/// A deal under way.
struct Search<'a> {
    people: &'a [Person],
    duties: &'a [Duty],
    order: &'a [usize],
    able: &'a [Vec<usize>],
    who: Vec<Option<usize>>,
    left: u32,
}

impl Search<'_> {
    /// Places the duties from the `depth`-th on, going back where one finds nobody.
    fn place(&mut self, depth: usize) -> bool {
        let Some(&at) = self.order.get(depth) else { return true };
        for person in self.preferred(at) {
            if self.left == 0 {
                return false;
            }
            self.left -= 1;
            self.who[at] = Some(person);
            if self.place(depth + 1) {
                return true;
            }
            self.who[at] = None;
        }
        false
    }

    /// Places each duty with the first who can, and leaves the rest to nobody.
    fn place_first_fit(&mut self) {
        for &at in self.order {
            self.who[at] = self.preferred(at).first().copied();
        }
    }

    /// Gives open duties to somebody whose work in the way can go to others.
    fn hand_on(&mut self) {
        for &at in self.order {
            if self.who[at].is_none() {
                self.make_room(at, HAND_ONS);
            }
        }
    }

    /// Finds a person for a duty, handing on what is in the way, at most `depth` deep.
    fn make_room(&mut self, at: usize, depth: u32) -> bool {
        if let Some(&person) = self.preferred(at).first() {
            self.who[at] = Some(person);
            return true;
        }
        if depth == 0 {
            return false;
        }
        for &person in &self.able[at] {
            if self.in_the_way(person, at).into_iter().any(|other| self.duties[other].fixed.is_some()) {
                continue;
            }
            let before = self.who.clone();
            for other in self.in_the_way(person, at) {
                self.who[other] = None;
            }
            let moved: Vec<usize> = (0..before.len()).filter(|&k| before[k] != self.who[k]).collect();
            self.who[at] = Some(person);
            if moved.iter().all(|&other| self.make_room(other, depth - 1)) {
                return true;
            }
            self.who = before;
        }
        false
    }

    /// The duties of a person that keep them from a duty.
    fn in_the_way(&self, person: usize, at: usize) -> Vec<usize> {
        let duty = &self.duties[at];
        self.taken(person)
            .filter(|&other| {
                let there = &self.duties[other];
                let same = is_eyes(there.pool) == is_eyes(duty.pool);
                (same || there.is_away || duty.is_away)
                    && there.span.from < duty.span.to
                    && duty.span.from < there.span.to
            })
            .collect()
    }

    /// Who may take a duty, the one who should first.
    fn preferred(&self, at: usize) -> Vec<usize> {
        let mut free: Vec<usize> =
            self.able[at].iter().copied().filter(|&person| self.is_free(person, at)).collect();
        let before = self.last_in_project(at);
        let duty = &self.duties[at];
        free.sort_by_key(|&person| {
            let late = !pools::can_serve(&self.people[person], duty.pool, duty.span);
            (late, Some(person) != before, self.minutes_of(person), person)
        });
        free
    }

    /// Whether a person's hands, or one of their eyes, are free over a duty.
    fn is_free(&self, person: usize, at: usize) -> bool {
        let limit = if is_eyes(self.duties[at].pool) { EYES_EACH as usize } else { 1 };
        let in_the_way = self.in_the_way(person, at);
        // Who is out of the kitchen can keep an eye on nothing, and who keeps one on something cannot leave.
        let leaves = self.duties[at].is_away || in_the_way.iter().any(|&other| self.duties[other].is_away);
        in_the_way.len() < if leaves { 1 } else { limit }
    }

    /// The duties a person has so far.
    fn taken(&self, person: usize) -> impl Iterator<Item = usize> + '_ {
        self.who.iter().enumerate().filter(move |(_, who)| **who == Some(person)).map(|(at, _)| at)
    }

    /// Minutes of hand work a person has so far.
    fn minutes_of(&self, person: usize) -> u32 {
        self.taken(person)
            .filter(|&at| !is_eyes(self.duties[at].pool))
            .map(|at| self.duties[at].span.to.0 - self.duties[at].span.from.0)
            .sum()
    }

    /// Who did the last dealt duty of the same project before this one.
    fn last_in_project(&self, at: usize) -> Option<usize> {
        let duty = &self.duties[at];
        (0..self.duties.len())
            .filter(|&other| self.who[other].is_some() && self.duties[other].project == duty.project)
            .filter(|&other| self.duties[other].span.from <= duty.span.from && other != at)
            .max_by_key(|&other| self.duties[other].span.to)
            .and_then(|other| self.who[other])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::day::ClockTime;

    fn person(name: &str, from: u32, to: u32, careful: bool) -> Person {
        Person {
            name: name.to_owned(),
            hours: vec![Span { from: ClockTime(from), to: ClockTime(to) }],
            breaks: vec![],
            careful_until: None,
            may_do_careful: careful,
        }
    }

    fn duty(project: &str, from: u32, to: u32, pool: Pool) -> Duty {
        let span = Span { from: ClockTime(from), to: ClockTime(to) };
        Duty { project: project.to_owned(), span, pool, is_away: false, fixed: None }
    }

    #[test]
    fn nobody_leaves_the_kitchen_while_they_keep_an_eye_on_something() {
        let people = [person("one", 0, 100, true), person("two", 0, 100, true)];
        let drive = Duty { is_away: true, ..duty("school", 20, 60, Pool::Hands) };
        let who = deal(&people, &[duty("pot", 0, 100, Pool::Eyes), drive.clone()]).who;
        assert!(who.iter().all(Option::is_some));
        assert_ne!(who[0], who[1]);
        let alone = deal(&people[..1], &[duty("pot", 0, 100, Pool::Eyes), drive]).who;
        assert_eq!(alone.iter().flatten().count(), 1);
    }

    #[test]
    fn who_is_at_something_already_stays_at_it() {
        let people = [person("one", 0, 100, true), person("two", 0, 100, true)];
        let begun = Duty { fixed: Some(1), ..duty("a", 0, 40, Pool::Hands) };
        let who = deal(&people, &[begun, duty("b", 10, 30, Pool::Hands)]).who;
        assert_eq!(who, vec![Some(1), Some(0)]);
    }

    #[test]
    fn careful_work_finds_the_one_who_may_do_it() {
        let people = [person("careful", 0, 100, true), person("not", 0, 100, false)];
        let duties = [duty("a", 0, 50, Pool::Hands), duty("b", 0, 50, Pool::CarefulHands)];
        assert_eq!(deal(&people, &duties).who, vec![Some(1), Some(0)]);
    }

    #[test]
    fn nobody_is_in_two_places() {
        let people = [person("one", 0, 100, true)];
        let duties = [duty("a", 0, 50, Pool::Hands), duty("b", 20, 60, Pool::Hands)];
        assert_eq!(deal(&people, &duties).who.iter().flatten().count(), 1);
    }

    #[test]
    fn work_is_handed_on_to_make_room_for_the_one_who_may() {
        let people =
            [person("not", 0, 100, false), person("careful", 0, 100, true), person("late", 50, 100, true)];
        let duties = [
            duty("a", 0, 40, Pool::Hands),
            duty("b", 10, 60, Pool::CarefulHands),
            duty("c", 45, 70, Pool::Hands),
            duty("d", 55, 80, Pool::CarefulHands),
        ];
        let who = deal(&people, &duties).who;
        assert!(who.iter().all(Option::is_some), "{who:?}");
        assert_eq!(who[1], Some(1));
        assert_eq!(who[3], Some(2));
    }

    #[test]
    fn the_same_person_goes_on_with_a_make() {
        let people = [person("one", 0, 100, true), person("two", 0, 100, true)];
        let duties =
            [duty("a", 0, 40, Pool::Hands), duty("b", 0, 10, Pool::Hands), duty("a", 40, 50, Pool::Hands)];
        let who = deal(&people, &duties).who;
        assert_eq!(who[0], who[2]);
        assert_ne!(who[0], who[1]);
    }

    #[test]
    fn hands_and_eyes_go_together_in_one_person() {
        let people = [person("one", 0, 100, true)];
        let duties = [
            duty("a", 0, 40, Pool::Eyes),
            duty("b", 0, 40, Pool::Hands),
            duty("c", 10, 20, Pool::CarefulEyes),
        ];
        assert_eq!(deal(&people, &duties).who, vec![Some(0), Some(0), Some(0)]);
    }
}
