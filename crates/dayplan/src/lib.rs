//! Choice and schedule of a kitchen day as one problem: what to do, when, and how well that is proved.
//!
//! A [`Problem`] is a `day-problem/1` document, a [`Plan`] a `day-plan/1` document. [`solve`] makes a plan within
//! a [`Budget`] of counted work; [`check`] judges any plan, ours or another's. The crate knows steps, resources,
//! lags and values; it knows nothing of jars or of people, reads no file and no clock, and gives the same bytes
//! for the same problem and budget.

mod breach;
mod check;
mod explain;
mod fault;
mod plan;
mod problem;
mod reading;
mod replan;
mod solve;
mod sturdy;

pub use breach::Breach;
pub use check::check;
pub use explain::{Forced, Helped, Relief, find_help, force_in};
pub use fault::{Fault, Wrong};
pub use plan::{Bound, Chosen, PLAN_FORMAT, Plan, Proved};
pub use problem::{
    AMOUNT_MAX, Choice, HORIZON_MAX, Hold, Lag, PROBLEM_FORMAT, Problem, Project, Resource, Step,
    VALUE_SUM_MAX,
};
pub use replan::{
    Away, Begun, Change, Length, Missed, Overdrawn, Replanned, SLIP_FORMAT, Slip, SlipFault, replan, shift,
};
pub use solve::{Budget, Unwatched, Watch, solve, solve_with};
pub use sturdy::{BrokenWait, Deciding, Spread, Spreads, Sturdiness, try_days};
