//! How much work a solution may cost, counted rather than timed, and who may cut it short.

use std::cell::Cell;
use std::rc::Rc;

use pumpkin_core::termination::TerminationCondition;

use crate::plan::Plan;

/// A limit on the work of one solution.
///
/// Work is counted in elementary steps (polls of the search, spans of a timetable looked at, sets of options
/// looked at), never in seconds: the same problem and budget give the same bytes on any machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Budget {
    work: u64,
}

impl Budget {
    /// A budget of so many elementary steps.
    pub fn work(work: u64) -> Budget {
        Budget { work }
    }

    /// The elementary steps it allows.
    pub fn steps(self) -> u64 {
        self.work
    }
}

impl Default for Budget {
    /// 40 million steps: measured at one to five seconds on a small two-core machine when a proof does not come
    /// first, most often under a second when it does.
    fn default() -> Budget {
        Budget::work(40_000_000)
    }
}

/// Someone who watches a solution being made.
pub trait Watch {
    /// Asked often while the work goes on; `true` ends it, with the best plan so far marked as stopped.
    fn should_stop(&mut self) -> bool {
        false
    }

    /// Told of each better plan as it is found. It keeps every rule; what is proved of it is not final.
    fn see(&mut self, plan: &Plan) {
        let _ = plan;
    }
}

/// Nobody watches: the work ends by itself.
#[derive(Debug, Clone, Copy, Default)]
pub struct Unwatched;

impl Watch for Unwatched {}

/// Counts the work done; its clones count together.
#[derive(Debug, Clone, Default)]
pub(super) struct Meter {
    done: Rc<Cell<u64>>,
    decided: Rc<Cell<bool>>,
}

impl Meter {
    pub(super) fn add(&self, steps: u64) {
        self.done.set(self.done.get().saturating_add(steps));
    }

    pub(super) fn done(&self) -> u64 {
        self.done.get()
    }

    /// Notes that the engine's search has just made a decision.
    pub(super) fn note_decision(&self) {
        self.decided.set(true);
    }

    /// Whether a decision was made since this was last asked.
    fn take_decision(&self) -> bool {
        self.decided.replace(false)
    }
}

/// What one poll of the engine's search costs on the scale of the propagators' own counts.
const POLL_COST: u64 = 20;
/// The watcher is asked at every so many polls.
const POLLS_PER_QUESTION: u64 = 64;

/// Ends a piece of work when its share or the whole budget is used up, or when the watcher says so.
pub(super) struct Clock<'w> {
    meter: Meter,
    budget: u64,
    slice_end: u64,
    polls: u64,
    watch: &'w mut dyn Watch,
    stopped: bool,
}

impl<'w> Clock<'w> {
    pub(super) fn new(meter: Meter, budget: Budget, watch: &'w mut dyn Watch) -> Clock<'w> {
        Clock { meter, budget: budget.work, slice_end: budget.work, polls: 0, watch, stopped: false }
    }

    /// A new clock for the same watcher.
    pub(super) fn renew(self, budget: Budget) -> Clock<'w> {
        Clock { stopped: self.stopped, ..Clock::new(Meter::default(), budget, self.watch) }
    }

    /// Starts a piece of work of at most so many steps.
    pub(super) fn slice(&mut self, steps: u64) {
        self.slice_end = self.meter.done().saturating_add(steps).min(self.budget);
    }

    /// What is left of the whole budget.
    pub(super) fn left(&self) -> u64 {
        self.budget.saturating_sub(self.meter.done())
    }

    /// Whether all work must end.
    pub(super) fn is_over(&mut self) -> bool {
        self.stopped = self.stopped || self.watch.should_stop();
        self.stopped || self.left() == 0
    }

    /// Whether this piece of work must end.
    pub(super) fn slice_is_over(&mut self) -> bool {
        self.stopped = self.stopped || self.watch.should_stop();
        self.stopped || self.meter.done() >= self.slice_end
    }

    /// Whether someone asked to stop.
    pub(super) fn was_stopped(&self) -> bool {
        self.stopped
    }

    pub(super) fn meter(&self) -> &Meter {
        &self.meter
    }

    pub(super) fn show(&mut self, plan: &Plan) {
        self.watch.see(plan);
    }
}

impl TerminationCondition for Clock<'_> {
    fn should_stop(&mut self) -> bool {
        self.meter.add(POLL_COST);
        self.polls += 1;
        if self.polls.is_multiple_of(POLLS_PER_QUESTION) && self.watch.should_stop() {
            self.stopped = true;
        }
        // Only right after a decision: stopped before its first one, the engine could not be asked again.
        let decided = self.meter.take_decision();
        decided && (self.stopped || self.meter.done() >= self.slice_end)
    }
}
