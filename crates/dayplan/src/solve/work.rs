//! How much work a solution may cost, counted rather than timed, and who may cut it short.

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
    /// Enough for a household's day.
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
