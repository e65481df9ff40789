//! Where the engine goes next: by the conflicts of late, or plainly by time.

use pumpkin_core::branching::branchers::autonomous_search::AutonomousSearch;
use pumpkin_core::branching::{Brancher, BrancherEvent, SelectionContext};
use pumpkin_core::predicate;
use pumpkin_core::predicates::Predicate;
use pumpkin_core::results::SolutionReference;
use pumpkin_core::variables::DomainId;

use super::super::work::Meter;

/// Ways first, in the order given; then the earliest start as early as it goes; then whatever is left.
#[derive(Debug, Clone)]
pub(super) struct ByTime {
    pub(super) ways: Vec<DomainId>,
    pub(super) starts: Vec<DomainId>,
    pub(super) rest: Vec<DomainId>,
    /// Minutes by which each start is taken for later than it is; none at first.
    pub(super) delay: Vec<i32>,
}

impl Brancher for ByTime {
    fn next_decision(&mut self, ctx: &mut SelectionContext) -> Option<Predicate> {
        if let Some(&way) = self.ways.iter().find(|&&w| !ctx.is_integer_fixed(w)) {
            return Some(predicate![way >= 1]);
        }
        let open = self.starts.iter().enumerate().filter(|&(_, &s)| !ctx.is_integer_fixed(s));
        let delay = |k: usize| self.delay.get(k).copied().unwrap_or(0);
        let earliest = open.min_by_key(|&(k, &s)| (ctx.lower_bound(s) + delay(k), ctx.upper_bound(s)));
        let earliest = earliest.map(|(_, start)| start);
        let mut rest = self.rest.iter();
        let next = earliest.or_else(|| rest.find(|&&x| !ctx.is_integer_fixed(x)));
        next.map(|&x| {
            let least = ctx.lower_bound(x);
            predicate![x <= least]
        })
    }

    fn subscribe_to_events(&self) -> Vec<BrancherEvent> {
        Vec::new()
    }
}

/// Either of two searches over the same variables; both learn from every conflict.
#[derive(Debug)]
pub(super) struct Branch {
    learned: AutonomousSearch<ByTime>,
    plain: ByTime,
    meter: Meter,
    /// Whether the plain search leads.
    pub(super) by_time: bool,
}

impl Branch {
    pub(super) fn new(plain: ByTime, meter: Meter) -> Branch {
        Branch { learned: AutonomousSearch::new(plain.clone()), plain, meter, by_time: false }
    }

    /// Starts over in another order of time: each start is taken for up to `most` minutes later, by a fixed draw.
    pub(super) fn shake(&mut self, most: u64) {
        let draw = |k: usize| {
            let mixed = (k as u64 + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15);
            let mixed = (mixed ^ (mixed >> 31)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            ((mixed >> 33) % (most + 1)) as i32
        };
        self.plain.delay = (0..self.plain.starts.len()).map(draw).collect();
        self.learned = AutonomousSearch::new(self.plain.clone());
    }
}

impl Brancher for Branch {
    fn next_decision(&mut self, ctx: &mut SelectionContext) -> Option<Predicate> {
        let next = if self.by_time { self.plain.next_decision(ctx) } else { self.learned.next_decision(ctx) };
        if next.is_some() {
            self.meter.note_decision();
        }
        next
    }

    fn on_conflict(&mut self) {
        self.learned.on_conflict();
    }

    fn on_backtrack(&mut self) {
        self.learned.on_backtrack();
    }

    fn on_solution(&mut self, solution: SolutionReference) {
        self.learned.on_solution(solution);
    }

    fn on_unassign_integer(&mut self, variable: DomainId, value: i32) {
        self.learned.on_unassign_integer(variable, value);
    }

    fn on_appearance_in_conflict_predicate(&mut self, predicate: Predicate) {
        self.learned.on_appearance_in_conflict_predicate(predicate);
    }

    fn on_restart(&mut self) {
        self.learned.on_restart();
    }

    fn synchronise(&mut self, ctx: &mut SelectionContext) {
        self.learned.synchronise(ctx);
    }

    fn is_restart_pointless(&mut self) -> bool {
        false
    }

    fn subscribe_to_events(&self) -> Vec<BrancherEvent> {
        self.learned.subscribe_to_events()
    }
}
