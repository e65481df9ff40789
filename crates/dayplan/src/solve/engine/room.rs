//! Keeps one room within its capacity: a propagator for the learning engine.
//!
//! At every minute `t`, the amounts of the present takes with `start <= t < end` sum to at most the capacity, and
//! to 0 where the room is shut; what is booked ahead counts with them.
//!
//! A timetable over the parts that are certain: a present take certainly covers `[latest start, earliest end)`.
//! Whatever has no room beside those parts is moved past them; each move is explained by the takes that cover
//! one minute. The end of a take may hang on another step than its start, so its length may vary.

use pumpkin_core::declare_inference_label;
use pumpkin_core::predicate;
use pumpkin_core::predicates::{Predicate, PropositionalConjunction};
use pumpkin_core::proof::{ConstraintTag, InferenceCode};
use pumpkin_core::propagation::{
    DomainEvents, EventsToRegister, LocalId, PropagationContext, Propagator, PropagatorConstructor,
    PropagatorConstructorContext, PropagatorSpec, ReadDomains, RuntimeCheckers,
};
use pumpkin_core::state::{Conflict, PropagationStatusCP, PropagatorConflict};
use pumpkin_core::variables::{AffineView, DomainId};

use super::super::work::Meter;

declare_inference_label!(RoomKept);

/// A use of the room.
#[derive(Debug, Clone)]
pub(super) struct Use {
    pub(super) start: DomainId,
    /// Last start; a later one means absent.
    pub(super) hi: i32,
    pub(super) end: AffineView<DomainId>,
    pub(super) amount: i32,
}

/// What the propagator is made of.
#[derive(Debug)]
pub(super) struct RoomArgs {
    pub(super) uses: Vec<Use>,
    pub(super) capacity: i32,
    /// What is in use in any case: from, to, amount; all of it where the room is shut.
    pub(super) base: Vec<(i32, i32, i32)>,
    pub(super) tag: ConstraintTag,
    pub(super) meter: Meter,
}

#[derive(Debug, Clone)]
pub(super) struct RoomKeeper {
    uses: Vec<Use>,
    capacity: i32,
    base: Vec<(i32, i32, i32)>,
    code: InferenceCode,
    meter: Meter,
    /// Scratch space: minute and change of level.
    changes: Vec<(i32, i32)>,
    table: Vec<Span>,
}

/// A span of the timetable in which something is certainly in use.
#[derive(Debug, Clone, Copy)]
struct Span {
    from: i32,
    to: i32,
    level: i32,
}

impl PropagatorConstructor for RoomArgs {
    type PropagatorImpl = RoomKeeper;

    fn create(self, _: PropagatorConstructorContext) -> PropagatorSpec<RoomKeeper> {
        let mut events = EventsToRegister::builder();
        for (k, one) in self.uses.iter().enumerate() {
            let id = 2 * k as u32;
            events = events.add(&one.start, DomainEvents::BOUNDS, LocalId::from(id));
            events = events.add(&one.end, DomainEvents::BOUNDS, LocalId::from(id + 1));
        }
        PropagatorSpec {
            registration: events.build(),
            checkers: RuntimeCheckers::empty(),
            propagator: RoomKeeper {
                uses: self.uses,
                capacity: self.capacity,
                base: self.base,
                code: InferenceCode::new(self.tag, RoomKept),
                meter: self.meter,
                changes: Vec::new(),
                table: Vec::new(),
            },
        }
    }
}

impl Propagator for RoomKeeper {
    fn name(&self) -> &str {
        "Room"
    }

    fn propagate_from_scratch(&self, ctx: PropagationContext) -> PropagationStatusCP {
        self.clone().propagate(ctx)
    }

    fn propagate(&mut self, mut ctx: PropagationContext) -> PropagationStatusCP {
        self.draw_table(&ctx);
        if let Some(over) = self.table.iter().find(|s| s.level > self.capacity) {
            let why = self.explain(&ctx, over.from, usize::MAX, 0);
            return Err(Conflict::Propagator(PropagatorConflict {
                conjunction: PropositionalConjunction::from(why),
                inference_code: self.code.clone(),
            }));
        }
        if !self.table.is_empty() {
            for j in 0..self.uses.len() {
                self.push_later(&mut ctx, j)?;
                self.push_earlier(&mut ctx, j)?;
            }
        }
        Ok(())
    }
}

impl RoomKeeper {
    /// The minutes that use `j` certainly covers, if it is present.
    fn certain(&self, ctx: &PropagationContext, j: usize) -> Option<(i32, i32)> {
        let one = &self.uses[j];
        let from = ctx.upper_bound(&one.start);
        let to = ctx.lower_bound(&one.end);
        (from <= one.hi && from < to).then_some((from, to))
    }

    fn draw_table(&mut self, ctx: &PropagationContext) {
        self.changes.clear();
        for &(from, to, amount) in &self.base {
            self.changes.push((from, amount));
            self.changes.push((to, -amount));
        }
        for j in 0..self.uses.len() {
            if let Some((from, to)) = self.certain(ctx, j) {
                self.changes.push((from, self.uses[j].amount));
                self.changes.push((to, -self.uses[j].amount));
            }
        }
        self.changes.sort_unstable();
        self.table.clear();
        let (mut level, mut since) = (0, 0);
        for &(minute, by) in &self.changes {
            if level > 0 && minute > since {
                self.table.push(Span { from: since, to: minute, level });
            }
            since = minute;
            level += by;
        }
        self.meter.add((self.uses.len() + self.changes.len()) as u64);
    }

    /// Moves the start of `j` past the last minute it would have to cover and cannot.
    fn push_later(&self, ctx: &mut PropagationContext, j: usize) -> PropagationStatusCP {
        let Use { start, hi, end, .. } = self.uses[j].clone();
        loop {
            let (from, to) = (ctx.lower_bound(&start), ctx.lower_bound(&end));
            if from > hi || to <= from {
                return Ok(());
            }
            let first = self.table.partition_point(|s| s.to <= from);
            let within = self.table[first..].iter().take_while(|s| s.from < to);
            let own = self.certain(ctx, j);
            let Some(span) = within.filter(|s| self.leaves_no_room(s, j, own)).last() else {
                return Ok(());
            };
            let minute = span.to.min(to) - 1;
            let mut why = self.explain(ctx, minute, j, self.uses[j].amount);
            why.push(predicate![end >= minute + 1]);
            let why = PropositionalConjunction::from(why);
            ctx.post(predicate![start >= minute + 1], (why, &self.code))?;
        }
    }

    /// Moves the end of `j`, once it is present, before the first minute it would have to cover and cannot.
    fn push_earlier(&self, ctx: &mut PropagationContext, j: usize) -> PropagationStatusCP {
        let Use { start, hi, end, .. } = self.uses[j].clone();
        loop {
            let (from, to) = (ctx.upper_bound(&start), ctx.upper_bound(&end));
            if from > hi || to <= from {
                return Ok(());
            }
            let first = self.table.partition_point(|s| s.to <= from);
            let mut within = self.table[first..].iter().take_while(|s| s.from < to);
            let own = self.certain(ctx, j);
            let Some(span) = within.find(|s| self.leaves_no_room(s, j, own)) else {
                return Ok(());
            };
            let minute = span.from.max(from);
            let mut why = self.explain(ctx, minute, j, self.uses[j].amount);
            why.push(predicate![start <= minute]);
            let why = PropositionalConjunction::from(why);
            ctx.post(predicate![end <= minute], (why, &self.code))?;
        }
    }

    /// Whether `j` cannot run in a span beside the others. Its own certain part is in the table and does not count.
    fn leaves_no_room(&self, span: &Span, j: usize, own: Option<(i32, i32)>) -> bool {
        let amount = self.uses[j].amount;
        let within = own.is_some_and(|(from, to)| from <= span.from && span.to <= to);
        let others = span.level - if within { amount } else { 0 };
        others > self.capacity - amount
    }

    /// Bounds that put more than the capacity less `need` in use at `minute`, `j` left aside.
    fn explain(&self, ctx: &PropagationContext, minute: i32, j: usize, need: i32) -> Vec<Predicate> {
        let base = self.base.iter().filter(|&&(from, to, _)| from <= minute && minute < to);
        let mut left = self.capacity - need - base.map(|b| b.2).sum::<i32>();
        let mut why = Vec::new();
        if left < 0 {
            return why;
        }
        let covers = |&i: &usize| {
            let part = self.certain(ctx, i);
            i != j && part.is_some_and(|(from, to)| from <= minute && minute < to)
        };
        let mut cover: Vec<usize> = (0..self.uses.len()).filter(covers).collect();
        cover.sort_by_key(|&i| std::cmp::Reverse(self.uses[i].amount));
        for i in cover {
            let (start, end) = (self.uses[i].start, self.uses[i].end);
            why.push(predicate![start <= minute]);
            why.push(predicate![end >= minute + 1]);
            left -= self.uses[i].amount;
            if left < 0 {
                return why;
            }
        }
        unreachable!("the table shows more in use at {minute} than the takes that cover it")
    }
}
