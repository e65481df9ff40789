//! Ties the finish to the steps: a propagator for the learning engine.
//!
//! If a step is present, `start + minutes <= finish`. A step that could only end later is absent.

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

use super::super::work::Meter;

declare_inference_label!(FinishKept);

/// A step that may be the last.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tail {
    pub(super) start: DomainId,
    pub(super) minutes: i32,
    /// Last start; a later one means absent.
    pub(super) hi: i32,
}

/// What the propagator is made of.
#[derive(Debug)]
pub(super) struct FinishArgs {
    pub(super) tails: Vec<Tail>,
    pub(super) finish: DomainId,
    pub(super) tag: ConstraintTag,
    pub(super) meter: Meter,
}

#[derive(Debug, Clone)]
pub(super) struct Finish {
    tails: Vec<Tail>,
    finish: DomainId,
    code: InferenceCode,
    meter: Meter,
}

impl PropagatorConstructor for FinishArgs {
    type PropagatorImpl = Finish;

    fn create(self, _: PropagatorConstructorContext) -> PropagatorSpec<Finish> {
        let mut events = EventsToRegister::builder();
        events = events.add(&self.finish, DomainEvents::BOUNDS, LocalId::from(0));
        for (k, tail) in self.tails.iter().enumerate() {
            events = events.add(&tail.start, DomainEvents::BOUNDS, LocalId::from(k as u32 + 1));
        }
        PropagatorSpec {
            registration: events.build(),
            checkers: RuntimeCheckers::empty(),
            propagator: Finish {
                tails: self.tails,
                finish: self.finish,
                code: InferenceCode::new(self.tag, FinishKept),
                meter: self.meter,
            },
        }
    }
}

impl Propagator for Finish {
    fn name(&self) -> &str {
        "Finish"
    }

    fn propagate_from_scratch(&self, mut ctx: PropagationContext) -> PropagationStatusCP {
        self.meter.add(self.tails.len() as u64);
        let finish = self.finish;
        let latest = ctx.upper_bound(&finish);
        for &Tail { start, minutes, hi } in &self.tails {
            let (lo, up) = (ctx.lower_bound(&start), ctx.upper_bound(&start));
            let end = lo + minutes;
            if lo > hi {
                continue;
            }
            if up > hi {
                if end > latest {
                    let why = vec![predicate![start >= lo], predicate![finish <= end - 1]];
                    self.post(&mut ctx, predicate![start >= hi + 1], why)?;
                }
                continue;
            }
            if end > ctx.lower_bound(&finish) {
                let why = vec![predicate![start >= lo], predicate![start <= hi]];
                self.post(&mut ctx, predicate![finish >= end], why)?;
            }
            if up + minutes > latest {
                let why = vec![predicate![start <= hi], predicate![finish <= latest]];
                self.post(&mut ctx, predicate![start <= latest - minutes], why)?;
            }
        }
        Ok(())
    }
}

impl Finish {
    fn post(
        &self,
        ctx: &mut PropagationContext,
        what: Predicate,
        why: Vec<Predicate>,
    ) -> Result<(), EmptyDomainConflict> {
        ctx.post(what, (PropositionalConjunction::from(why), &self.code))
    }
}
