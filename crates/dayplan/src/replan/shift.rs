//! Shifts the rest of a plan to the right in its old order: the answer that is there at once.
//!
//! Every step starts at its old minute and only ever moves later: past now, past what it waits for, past what is in
//! its way, and later with the step it must not be far behind. When two want the same thing, the one that came later
//! in the old plan waits. So the order is kept where it can be, nothing moves that is not pushed, and the work ends:
//! a step that leaves its window is where the shifting is stuck.

use super::restate::{find_option, is_pinned};
use crate::plan::Chosen;
use crate::problem::{Problem, Resource};

/// The chosen options with everything that ties their steps.
#[derive(Debug, Clone)]
pub(super) struct Board {
    pub(super) slots: Vec<Slot>,
    ties: Vec<Tie>,
    takes: Vec<Take>,
    rooms: Vec<Resource>,
}

/// A step with its place.
#[derive(Debug, Clone)]
pub(super) struct Slot {
    /// Which of the chosen options it belongs to.
    pub(super) of: usize,
    pub(super) step: String,
    pub(super) minutes: i64,
    pub(super) start: i64,
    latest: i64,
    /// Where it stood before; the order of the old plan.
    old: i64,
    pub(super) is_pinned: bool,
    /// Whether it must follow something begun within a time: it goes before others.
    is_tied: bool,
}

/// A lag between two slots.
#[derive(Debug, Clone, Copy)]
struct Tie {
    from: usize,
    to: usize,
    min: i64,
    max: Option<i64>,
}

/// Units of a room from the start of one slot to the end of another.
#[derive(Debug, Clone, Copy)]
struct Take {
    room: usize,
    units: u32,
    from: usize,
    to: usize,
}

/// How strictly the rest is kept to.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Leave {
    /// What follows something begun may follow later than it should.
    pub(super) wait_longer: bool,
    /// What was begun may end after its time and after the day.
    pub(super) end_later: bool,
}

/// Where the shifting got stuck: one of the chosen options that has no place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Stuck {
    pub(super) of: usize,
}

/// Moves looked at before the shifting is given up.
const MOVES_MAX: u32 = 6_000;

/// Beyond any minute of a day.
const NEVER: i64 = 1 << 40;

impl Board {
    /// The chosen options at their old starts. `may_end_later` says of each of them whether its ends may slip.
    pub(super) fn of(problem: &Problem, chosen: &[Chosen], may_end_later: impl Fn(usize) -> bool) -> Board {
        let mut board =
            Board { slots: vec![], ties: vec![], takes: vec![], rooms: problem.resources.clone() };
        for (of, pick) in chosen.iter().enumerate() {
            let Some(option) = find_option(problem, &pick.project, &pick.option) else { continue };
            let first = board.slots.len();
            let place = |id: &str| first + option.steps.iter().position(|s| s.id == id).unwrap_or_default();
            for step in &option.steps {
                let pinned = is_pinned(step, problem.horizon);
                let latest = i64::from(step.latest_end.unwrap_or(problem.horizon).min(problem.horizon));
                let old = i64::from(pick.starts.get(&step.id).copied().unwrap_or(step.earliest));
                board.slots.push(Slot {
                    of,
                    step: step.id.clone(),
                    minutes: i64::from(step.minutes),
                    start: if pinned { i64::from(step.earliest) } else { old.max(i64::from(step.earliest)) },
                    latest: if may_end_later(of) && !pinned {
                        NEVER
                    } else {
                        latest - i64::from(step.minutes)
                    },
                    old,
                    is_pinned: pinned,
                    is_tied: false,
                });
            }
            for lag in &option.lags {
                let max = lag.max.map(i64::from);
                board.ties.push(Tie {
                    from: place(&lag.from),
                    to: place(&lag.to),
                    min: i64::from(lag.min),
                    max,
                });
            }
            board.add_takes(option, place);
        }
        board.mark_tied();
        board
    }

    fn add_takes(&mut self, option: &crate::problem::Choice, place: impl Fn(&str) -> usize) {
        let room = |id: &str| self.rooms.iter().position(|room| room.id == id);
        let mut takes = Vec::new();
        for step in &option.steps {
            for (id, &units) in &step.needs {
                let at = place(&step.id);
                takes.extend(room(id).map(|room| Take { room, units, from: at, to: at }));
            }
        }
        for hold in &option.holds {
            let (from, to) = (place(&hold.from), place(&hold.to));
            takes.extend(room(&hold.resource).map(|room| Take { room, units: hold.amount, from, to }));
        }
        takes.retain(|take| take.units > 0);
        self.takes.extend(takes);
    }

    /// Marks what must follow something that cannot move within a time, and what must follow that.
    fn mark_tied(&mut self) {
        let mut changed = true;
        while changed {
            changed = false;
            for tie in self.ties.iter().filter(|tie| tie.max.is_some()) {
                let from = &self.slots[tie.from];
                if (from.is_pinned || from.is_tied)
                    && !self.slots[tie.to].is_pinned
                    && !self.slots[tie.to].is_tied
                {
                    self.slots[tie.to].is_tied = true;
                    changed = true;
                }
            }
        }
    }

    /// Shifts until everything is kept, or says what has no place.
    pub(super) fn shift(&mut self, leave: Leave) -> Result<(), Stuck> {
        for _ in 0..MOVES_MAX {
            self.keep_lags(leave)?;
            let Some((room, minute, until)) = self.first_conflict() else { return Ok(()) };
            self.make_way(room, minute, until)?;
        }
        let last = self.slots.iter().filter(|slot| !slot.is_pinned).max_by_key(|slot| slot.start);
        Err(Stuck { of: last.map_or(0, |slot| slot.of) })
    }

    fn keep_lags(&mut self, leave: Leave) -> Result<(), Stuck> {
        let mut changed = true;
        let mut rounds = 0;
        while changed {
            changed = false;
            rounds += 1;
            if rounds > self.slots.len() + 1_000 {
                return Err(Stuck { of: self.slots.first().map_or(0, |slot| slot.of) });
            }
            for at in 0..self.ties.len() {
                let Tie { from, to, min, max } = self.ties[at];
                let soonest = self.slots[from].start + self.slots[from].minutes + min;
                if self.slots[to].start < soonest {
                    self.move_to(to, soonest)?;
                    changed = true;
                }
                let Some(max) = max else { continue };
                let needed = self.slots[to].start - max - self.slots[from].minutes;
                if self.slots[from].start < needed && !(leave.wait_longer && self.slots[from].is_pinned) {
                    self.move_to(from, needed)?;
                    changed = true;
                }
            }
        }
        match self.slots.iter().find(|slot| slot.start > slot.latest && !slot.is_pinned) {
            Some(slot) => Err(Stuck { of: slot.of }),
            None => Ok(()),
        }
    }

    fn move_to(&mut self, at: usize, start: i64) -> Result<(), Stuck> {
        let slot = &mut self.slots[at];
        if slot.is_pinned || start > slot.latest {
            return Err(Stuck { of: slot.of });
        }
        slot.start = start;
        Ok(())
    }

    fn span(&self, take: &Take) -> (i64, i64) {
        (self.slots[take.from].start, self.slots[take.to].start + self.slots[take.to].minutes)
    }

    /// The first minute at which a room is overfull: the room, the minute, and how long it is closed where it is.
    fn first_conflict(&self) -> Option<(usize, i64, Option<i64>)> {
        let mut first: Option<(i64, usize, Option<i64>)> = None;
        for (room, resource) in self.rooms.iter().enumerate() {
            let mut changes: Vec<(i64, i64)> = Vec::new();
            for take in self.takes.iter().filter(|take| take.room == room) {
                let (from, to) = self.span(take);
                if from < to {
                    changes.push((from, i64::from(take.units)));
                    changes.push((to, -i64::from(take.units)));
                    for &(shut, open) in &resource.closed {
                        let (shut, open) = (i64::from(shut), i64::from(open));
                        let minute = from.max(shut);
                        if minute < to.min(open) && first.is_none_or(|(m, ..)| minute < m) {
                            first = Some((minute, room, Some(open)));
                        }
                    }
                }
            }
            changes.sort_unstable();
            let mut used = 0;
            for (minute, by) in changes {
                if first.is_some_and(|(m, ..)| m <= minute) {
                    break;
                }
                used += by;
                // Ends sort before starts of the same minute, so `used` is never too high in between.
                if used > i64::from(resource.capacity) {
                    first = Some((minute, room, None));
                }
            }
        }
        first.map(|(minute, room, open)| (room, minute, open))
    }

    /// Moves one of those who meet in a room behind another, or behind the closed time.
    fn make_way(&mut self, room: usize, minute: i64, open: Option<i64>) -> Result<(), Stuck> {
        let active: Vec<Take> = self
            .takes
            .iter()
            .filter(|take| take.room == room)
            .filter(|take| {
                let (from, to) = self.span(take);
                from <= minute && minute < to
            })
            .copied()
            .collect();
        let yields = active.iter().filter(|take| !self.slots[take.from].is_pinned).max_by_key(|take| {
            let slot = &self.slots[take.from];
            (!slot.is_tied, slot.old, take.from)
        });
        let Some(yields) = yields.copied() else {
            // Only begun holds meet here: whoever holds longest without an end in sight has no place.
            let of = active.last().map_or(0, |take| self.slots[take.to].of);
            return Err(Stuck { of });
        };
        let others = active.iter().filter(|take| take.from != yields.from);
        let free = open.or_else(|| others.map(|take| self.span(take).1).min());
        let start = free.unwrap_or(minute + 1).max(self.slots[yields.from].start + 1);
        self.move_to(yields.from, start)
    }

    /// The starts of one of the chosen options.
    pub(super) fn starts_of(&self, of: usize) -> std::collections::BTreeMap<String, u32> {
        let own = self.slots.iter().filter(|slot| slot.of == of);
        // Never wraps: starts are not negative, and slots that end later stay within the horizon the format allows.
        own.map(|slot| (slot.step.clone(), u32::try_from(slot.start).unwrap_or(u32::MAX))).collect()
    }

    /// The last end of all.
    pub(super) fn last_end(&self) -> i64 {
        self.slots.iter().map(|slot| slot.start + slot.minutes).max().unwrap_or(0)
    }
}
