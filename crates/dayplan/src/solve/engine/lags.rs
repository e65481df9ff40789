//! Keeps the lags of one way: a propagator for the learning engine.
//!
//! If the way is chosen, `start[b] >= start[a] + w` for each of its arcs.
//!
//! Lower bounds move while the choice is still open: a start pushed past its last start says that the way is
//! absent, whatever the place of an absent start. Upper bounds move only once the way is known to be chosen.

use pumpkin_core::declare_inference_label;
use pumpkin_core::predicate;
use pumpkin_core::predicates::{Predicate, PropositionalConjunction};
use pumpkin_core::proof::{ConstraintTag, InferenceCode};
use pumpkin_core::propagation::{
    DomainEvents, EventsToRegister, LocalId, PropagationContext, Propagator, PropagatorConstructor,
    PropagatorConstructorContext, PropagatorSpec, ReadDomains, RuntimeCheckers,
};
use pumpkin_core::state::{EmptyDomainConflict, PropagationStatusCP};
use pumpkin_core::variables::DomainId;

use super::super::day::Arc;
use super::super::work::Meter;

declare_inference_label!(LagsKept);

/// What the propagator is made of.
#[derive(Debug)]
pub(super) struct LagsArgs {
    pub(super) starts: Vec<DomainId>,
    /// Last start of each step.
    pub(super) hi: Vec<i32>,
    pub(super) arcs: Vec<Arc>,
    pub(super) tag: ConstraintTag,
    pub(super) meter: Meter,
}

#[derive(Debug, Clone)]
pub(super) struct Lags {
    starts: Vec<DomainId>,
    hi: Vec<i32>,
    arcs: Vec<Arc>,
    code: InferenceCode,
    meter: Meter,
}

impl PropagatorConstructor for LagsArgs {
    type PropagatorImpl = Lags;

    fn create(self, _: PropagatorConstructorContext) -> PropagatorSpec<Lags> {
        let mut events = EventsToRegister::builder();
        for (k, start) in self.starts.iter().enumerate() {
            events = events.add(start, DomainEvents::BOUNDS, LocalId::from(k as u32));
        }
        PropagatorSpec {
            registration: events.build(),
            checkers: RuntimeCheckers::empty(),
            propagator: Lags {
                starts: self.starts,
                hi: self.hi,
                arcs: self.arcs,
                code: InferenceCode::new(self.tag, LagsKept),
                meter: self.meter,
            },
        }
    }
}

impl Propagator for Lags {
    fn name(&self) -> &str {
        "Lags"
    }

    fn propagate_from_scratch(&self, mut ctx: PropagationContext) -> PropagationStatusCP {
        let mut moved = true;
        while moved {
            moved = false;
            self.meter.add(self.arcs.len() as u64);
            for arc in &self.arcs {
                moved |= self.push_later(&mut ctx, arc)?;
                moved |= self.push_earlier(&mut ctx, arc)?;
            }
        }
        Ok(())
    }
}

impl Lags {
    /// From `start[a] >= t` follows `start[b] >= t + w`, or that the way is absent.
    fn push_later(&self, ctx: &mut PropagationContext, arc: &Arc) -> Result<bool, EmptyDomainConflict> {
        let (a, b) = (self.starts[arc.a], self.starts[arc.b]);
        let from = ctx.lower_bound(&a);
        if from > self.hi[arc.a] {
            return Ok(false);
        }
        // One past the last start is as good as any later minute: both mean absent.
        let to = (from + arc.w).min(self.hi[arc.b] + 1);
        if ctx.lower_bound(&b) >= to {
            return Ok(false);
        }
        let why = vec![predicate![a >= to - arc.w]];
        self.post(ctx, predicate![b >= to], why)
    }

    /// From `start[b] <= t`, with `t` no later than its last start, follows `start[a] <= t - w`.
    fn push_earlier(&self, ctx: &mut PropagationContext, arc: &Arc) -> Result<bool, EmptyDomainConflict> {
        let (a, b) = (self.starts[arc.a], self.starts[arc.b]);
        let to = ctx.upper_bound(&b);
        if to > self.hi[arc.b] || ctx.upper_bound(&a) <= to - arc.w {
            return Ok(false);
        }
        let why = vec![predicate![b <= to]];
        self.post(ctx, predicate![a <= to - arc.w], why)
    }

    fn post(
        &self,
        ctx: &mut PropagationContext,
        what: Predicate,
        why: Vec<Predicate>,
    ) -> Result<bool, EmptyDomainConflict> {
        ctx.post(what, (PropositionalConjunction::from(why), &self.code))?;
        Ok(true)
    }
}
