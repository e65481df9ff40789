//! Keeps one room's unit-minutes within what there is between any two minutes: a propagator for the learning engine.
//!
//! For all minutes `a < b`: the unit-minutes of the present takes that start no earlier than `a` and end no later
//! than `b` sum to at most the open unit-minutes in `[a, b)`.
//!
//! The timetable next door sees only what certainly overlaps. This sees that too much work is left for the time that
//! is left, which is what makes one pair of hands hard to fill. The check runs over the ends from early to late; a
//! tree over the starts holds for each group the greatest "open until the earliest start, plus all work from there
//! on" (P. Vilim's theta tree, 2004, with open unit-minutes in place of minutes).

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

declare_inference_label!(EnergyKept);

/// A use of the room and the unit-minutes it takes at the least.
#[derive(Debug, Clone)]
pub(super) struct Job {
    pub(super) start: DomainId,
    /// Last start; a later one means absent.
    pub(super) hi: i32,
    pub(super) end: AffineView<DomainId>,
    pub(super) energy: i64,
}

/// What the propagator is made of.
#[derive(Debug)]
pub(super) struct EnergyArgs {
    pub(super) jobs: Vec<Job>,
    /// Minutes at which the units that can be had change, and how many from there on.
    pub(super) levels: Vec<(i32, i32)>,
    pub(super) tag: ConstraintTag,
    pub(super) meter: Meter,
}

#[derive(Debug, Clone)]
pub(super) struct EnergyKeeper {
    jobs: Vec<Job>,
    /// Minute, unit-minutes there are before it, units from there on.
    supply: Vec<(i32, i64, i64)>,
    code: InferenceCode,
    meter: Meter,
    /// Scratch space: the present jobs as earliest start, latest end, place.
    present: Vec<(i32, i32, usize)>,
    by_end: Vec<usize>,
    tree: Vec<Node>,
}

/// Work of a group of jobs, and the greatest "supply before the start, plus the work from there on".
#[derive(Debug, Clone, Copy)]
struct Node {
    work: i64,
    reach: i64,
}

const EMPTY: Node = Node { work: 0, reach: i64::MIN / 2 };

impl PropagatorConstructor for EnergyArgs {
    type PropagatorImpl = EnergyKeeper;

    fn create(self, _: PropagatorConstructorContext) -> PropagatorSpec<EnergyKeeper> {
        let mut events = EventsToRegister::builder();
        for (k, job) in self.jobs.iter().enumerate() {
            let id = 2 * k as u32;
            events = events.add(&job.start, DomainEvents::BOUNDS, LocalId::from(id));
            events = events.add(&job.end, DomainEvents::BOUNDS, LocalId::from(id + 1));
        }
        let mut supply: Vec<(i32, i64, i64)> = Vec::new();
        for &(minute, units) in &self.levels {
            let before = supply.last().map_or(0, |&(m, s, u)| s + u * i64::from(minute - m));
            supply.push((minute, before, i64::from(units)));
        }
        PropagatorSpec {
            registration: events.build(),
            checkers: RuntimeCheckers::empty(),
            propagator: EnergyKeeper {
                jobs: self.jobs,
                supply,
                code: InferenceCode::new(self.tag, EnergyKept),
                meter: self.meter,
                present: Vec::new(),
                by_end: Vec::new(),
                tree: Vec::new(),
            },
        }
    }
}

impl Propagator for EnergyKeeper {
    fn name(&self) -> &str {
        "Energy"
    }

    fn propagate_from_scratch(&self, ctx: PropagationContext) -> PropagationStatusCP {
        self.clone().propagate(ctx)
    }

    fn propagate(&mut self, ctx: PropagationContext) -> PropagationStatusCP {
        self.collect(&ctx);
        match self.find_overload() {
            None => Ok(()),
            Some((from, to, over)) => Err(Conflict::Propagator(PropagatorConflict {
                conjunction: PropositionalConjunction::from(self.explain(from, to, over)),
                inference_code: self.code.clone(),
            })),
        }
    }
}

impl EnergyKeeper {
    /// Unit-minutes there are before a minute.
    fn supply_before(&self, minute: i32) -> i64 {
        let k = self.supply.partition_point(|s| s.0 <= minute);
        let (from, before, units) = self.supply[k.max(1) - 1];
        before + units * i64::from(minute - from)
    }

    fn collect(&mut self, ctx: &PropagationContext) {
        self.present.clear();
        for (k, job) in self.jobs.iter().enumerate() {
            if ctx.upper_bound(&job.start) <= job.hi {
                self.present.push((ctx.lower_bound(&job.start), ctx.upper_bound(&job.end), k));
            }
        }
        self.present.sort_unstable();
        self.by_end.clear();
        self.by_end.extend(0..self.present.len());
        let present = &self.present;
        self.by_end.sort_unstable_by_key(|&p| (present[p].1, p));
        self.meter.add((self.jobs.len() / 8 + 2 * self.present.len()) as u64);
    }

    /// Two minutes with more work between them than there is supply, and by how much.
    fn find_overload(&mut self) -> Option<(i32, i32, i64)> {
        let leaves = self.present.len().next_power_of_two();
        self.tree.clear();
        self.tree.resize(2 * leaves, EMPTY);
        for i in 0..self.by_end.len() {
            let place = self.by_end[i];
            let (start, end, job) = self.present[place];
            let work = self.jobs[job].energy;
            let mut node = leaves + place;
            self.tree[node] = Node { work, reach: self.supply_before(start) + work };
            while node > 1 {
                node /= 2;
                let (a, b) = (self.tree[2 * node], self.tree[2 * node + 1]);
                self.tree[node] = Node { work: a.work + b.work, reach: (a.reach + b.work).max(b.reach) };
            }
            let over = self.tree[1].reach - self.supply_before(end);
            if over > 0 {
                return Some((self.critical_start(leaves), end, over));
            }
        }
        None
    }

    /// The start from which the greatest reach of all is counted.
    fn critical_start(&self, leaves: usize) -> i32 {
        let mut node = 1;
        while node < leaves {
            let (a, b) = (self.tree[2 * node], self.tree[2 * node + 1]);
            node = if b.reach >= a.reach + b.work { 2 * node + 1 } else { 2 * node };
        }
        self.present[node - leaves].0
    }

    /// Bounds that keep enough work between two minutes to overload them.
    fn explain(&self, from: i32, to: i32, over: i64) -> Vec<Predicate> {
        let within = self.present.iter().filter(|p| p.0 >= from && p.1 <= to);
        let mut jobs: Vec<&Job> = within.map(|p| &self.jobs[p.2]).collect();
        jobs.sort_by_key(|job| job.energy);
        // A hold's start and end may already have passed each other; one job must stay even then.
        let work: i64 = jobs.iter().map(|job| job.energy).sum();
        let mut spare = over.min(work) - 1;
        let mut why = Vec::new();
        for job in jobs {
            if job.energy <= spare {
                spare -= job.energy;
                continue;
            }
            let (start, end) = (job.start, job.end);
            why.push(predicate![start >= from]);
            why.push(predicate![end <= to]);
        }
        why
    }
}
