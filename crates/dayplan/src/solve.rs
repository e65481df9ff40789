//! Makes a plan for a day, and proves as much of it as the work allows.
//!
//! **The problem.** Choose at most one option of each project and a start for each of its steps, so that lags,
//! windows, closed times, capacities and stock are kept; the greatest value wins, then the earliest finish, then the
//! least sum of starts. Choice and schedule hang together: which options fit is known only when they are scheduled.
//!
//! **The approach**, in the order of work ([`search`]):
//! 1. [`day`] compiles the problem: longest paths, windows, and out with every option that cannot run alone.
//! 2. [`greedy`] fits options one after another into a [`calendar`], so that there is a plan after a millisecond;
//!    [`mend`] takes a little out and puts something else in.
//! 3. [`master`] looks at totals only (unit-minutes of each resource, stock) and proposes the best set of options
//!    that these allow. It also bounds the value.
//! 4. [`engine`] says whether a set can be scheduled: constraint propagation with learning, in which an option left
//!    out is one whose steps lie beyond the horizon. One set at a time gets an engine of its own ([`fit`]); a set that
//!    cannot be scheduled comes back as the few options that clash, and the master never proposes them together again.
//!    First [`climb`] asks for sets around the best plan, then the master's sets are asked for from the top. When no
//!    set better than the best plan is left, its value is proved. Between proposals an engine of the whole day is
//!    also asked for anything better at all.
//! 5. The engine then probes the finish between the proved bound and the best plan, from both ends.
//! 6. If there is no plan, [`clash`] finds a smallest set of musts, stocks and resources that have none.
//!
//! Every better draft passes [`check`](crate::check) before it is shown or returned; one that did not pass would be
//! dropped for the last that did.
//!
//! **Determinism.** Work is counted ([`work`]), nothing is timed, all orders are fixed, and floating point is used
//! only where each operation is exact to the standard (`+ - * /` and comparisons).
//!
//! **What is not handled.** The least sum of starts is sought by moving options to the left, not proved. The finish
//! of days with two or three pairs of hands is often left unproved: the engine reasons about certain overlaps and
//! overloads there, and does not yet move steps because of an overload to come. A day whose steps add up to more than
//! some 2^28 minutes gets no engine, only the greedy plan.

mod calendar;
mod clash;
mod climb;
mod day;
mod draft;
mod engine;
mod fit;
mod greedy;
mod master;
mod mend;
mod search;
mod work;

pub use self::work::{Budget, Unwatched, Watch};

use self::day::Day;
use self::draft::Draft;
use self::search::{Finding, Goal};
use self::work::{Clock, Meter};
use crate::check::check;
use crate::plan::{Bound, Plan, Proved};
use crate::problem::Problem;

/// The best plan for `problem` that `budget` allows. The same problem and budget give the same plan.
///
/// A problem that has [`Problem::faults`] is answered with `unknown`.
pub fn solve(problem: &Problem, budget: Budget) -> Plan {
    solve_with(problem, budget, &mut Unwatched)
}

/// [`solve`], with someone who sees each better plan and may ask to stop.
pub fn solve_with(problem: &Problem, budget: Budget, watch: &mut dyn Watch) -> Plan {
    if !problem.faults().is_empty() {
        return Plan::without(Proved::Unknown, Vec::new(), false);
    }
    let day = Day::of(problem);
    let mut clock = Clock::new(Meter::default(), budget, watch);
    // The last draft that passed the check: whatever the search makes of it, nothing else leaves this function.
    let mut shown: Option<Draft> = None;
    let finding = search::search(&day, Goal::BestPlan, &mut clock, &mut |draft, clock| {
        let plan = state_draft(&day, problem, draft);
        let keeps = check(problem, &plan).is_empty();
        debug_assert!(keeps, "a draft breaks a rule of {}", problem.to_json());
        if keeps {
            shown = Some(draft.clone());
            clock.show(&plan);
        }
        keeps
    });
    if finding.is_impossible() {
        return state_clash(problem, budget, clock);
    }
    let stopped = clock.was_stopped();
    let Some(draft) = shown else {
        return Plan::without(Proved::Unknown, Vec::new(), stopped);
    };
    let mut plan = state_draft(&day, problem, &draft);
    if finding.draft.as_ref() == Some(&draft) {
        state_proof(&mut plan, &finding);
    }
    plan.stopped = stopped;
    plan
}

/// That no plan exists, and why. Finding out why has a budget of its own, as large as the whole.
fn state_clash(problem: &Problem, budget: Budget, clock: Clock<'_>) -> Plan {
    let mut clock = clock.renew(budget);
    let because = clash::find_clash(problem, &mut clock);
    Plan::without(Proved::Infeasible, because, clock.was_stopped())
}

/// A draft as a plan of which nothing is proved but the plainest bound.
fn state_draft(day: &Day, problem: &Problem, draft: &Draft) -> Plan {
    Plan {
        proved: Proved::No,
        value: Some(draft.value(day).unsigned_abs()),
        finish: Some(draft.finish(day).unsigned_abs()),
        bound: Some(Bound { value: day.top_value().unsigned_abs(), finish: None }),
        chosen: draft.name(day, problem),
        because: Vec::new(),
        stopped: false,
    }
}

fn state_proof(plan: &mut Plan, finding: &Finding) {
    let value = finding.value_bound.unsigned_abs();
    let finish = finding.finish_bound.map(i32::unsigned_abs);
    plan.bound = Some(Bound { value, finish });
    plan.proved = match finish {
        None => Proved::No,
        Some(_) if finish == plan.finish => Proved::Optimal,
        Some(_) => Proved::Value,
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Problem {
        Problem::from_json(text).unwrap()
    }

    /// Two ways to spend one pair of hands; the steps of the first may overlap, and two of them at once cannot.
    const OVERLAPPING: &str = r#"{"format":"day-problem/1","horizon":40,"resources":[{"id":"hands","capacity":1}],
        "projects":[
          {"id":"stir","options":[{"id":"o","value":5,
            "steps":[{"id":"a","minutes":10,"needs":{"hands":1}},{"id":"b","minutes":10,"needs":{"hands":1}},
                     {"id":"c","minutes":30}],
            "lags":[{"from":"a","to":"b","min":-10,"max":20},{"from":"c","to":"a","min":-30,"max":0}]}]},
          {"id":"roast","options":[{"id":"o","value":6,
            "steps":[{"id":"a","minutes":15,"needs":{"hands":1}},{"id":"b","minutes":15,"needs":{"hands":1}}],
            "lags":[{"from":"a","to":"b","min":-15}]}]}]}"#;

    #[test]
    fn steps_that_may_overlap_do_not_meet_when_their_option_is_left_out() {
        let plan = solve(&read(OVERLAPPING), Budget::default());
        assert_eq!((plan.proved, plan.value, plan.finish), (Proved::Optimal, Some(6), Some(30)));
        let long = read(&OVERLAPPING.replace("\"horizon\":40", "\"horizon\":50"));
        let plan = solve(&long, Budget::default());
        assert_eq!((plan.proved, plan.value, plan.finish), (Proved::Optimal, Some(11), Some(50)));
    }

    #[test]
    fn a_must_that_fits_nowhere_is_named_with_what_it_clashes_with() {
        let day = r#"{"format":"day-problem/1","horizon":60,"stock":{"jar":1,"lid":9},
            "resources":[{"id":"hands","capacity":1,"closed":[[20,40]]},{"id":"pot","capacity":1}],
            "projects":[
              {"id":"jam","must":true,"options":[{"id":"o","value":1,"consumes":{"lid":1},
                "steps":[{"id":"s","minutes":15,"needs":{"hands":1,"pot":1}}]}]},
              {"id":"talk","must":true,"options":[{"id":"o","value":0,
                "steps":[{"id":"s","minutes":20,"needs":{"hands":1},"earliest":0,"latest_end":20}]}]},
              {"id":"call","must":true,"options":[{"id":"o","value":0,
                "steps":[{"id":"s","minutes":10,"needs":{"hands":1},"earliest":45,"latest_end":55}]}]}]}"#;
        let plan = solve(&read(day), Budget::default());
        assert_eq!(plan.proved, Proved::Infeasible);
        assert_eq!(plan.because, ["must:call", "must:jam", "must:talk", "resource:hands"]);
    }

    #[test]
    fn a_must_that_asks_too_much_at_its_only_time_is_named() {
        let day = r#"{"format":"day-problem/1","horizon":4,"resources":[{"id":"hands","capacity":1}],
            "projects":[{"id":"jam","must":true,"options":[{"id":"o","value":0,
              "steps":[{"id":"s","minutes":3,"needs":{"hands":1},"earliest":1}],
              "holds":[{"resource":"hands","amount":1,"from":"s","to":"s"}]}]}]}"#;
        let plan = solve(&read(day), Budget::default());
        assert_eq!(
            (plan.proved, plan.because),
            (Proved::Infeasible, vec!["must:jam".into(), "resource:hands".into()])
        );
    }

    #[test]
    fn a_full_room_does_not_hinder_a_hold_that_takes_nothing() {
        let day = r#"{"format":"day-problem/1","horizon":3,"resources":[{"id":"pot","capacity":1}],
            "projects":[{"id":"jam","must":true,"options":[{"id":"o","value":0,
              "steps":[{"id":"boil","minutes":3,"needs":{"pot":1}},{"id":"look","minutes":0}],
              "holds":[{"resource":"pot","amount":1,"from":"boil","to":"look"}]}]}]}"#;
        let plan = solve(&read(day), Budget::default());
        assert_eq!((plan.proved, plan.value, plan.finish), (Proved::Optimal, Some(0), Some(3)));
    }

    #[test]
    fn an_empty_day_has_an_empty_plan() {
        let plan = solve(&Problem::default(), Budget::default());
        assert_eq!((plan.proved, plan.value, plan.finish), (Proved::Optimal, Some(0), Some(0)));
        assert_eq!(check(&Problem::default(), &plan), vec![]);
    }

    #[test]
    fn a_faulty_problem_gets_no_plan() {
        let problem = Problem { horizon: 1_000_000, ..Problem::default() };
        assert_eq!(solve(&problem, Budget::default()).proved, Proved::Unknown);
    }

    /// Stops at the first question after a plan was seen.
    struct Impatient(Vec<Plan>);

    impl Watch for Impatient {
        fn should_stop(&mut self) -> bool {
            !self.0.is_empty()
        }

        fn see(&mut self, plan: &Plan) {
            self.0.push(plan.clone());
        }
    }

    #[test]
    fn whoever_watches_sees_each_plan_and_may_stop() {
        let problem = read(OVERLAPPING);
        let mut watch = Impatient(Vec::new());
        let plan = solve_with(&problem, Budget::default(), &mut watch);
        assert!(plan.stopped);
        assert_eq!(check(&problem, &plan), vec![]);
        assert!(!watch.0.is_empty());
        assert!(watch.0.iter().all(|seen| check(&problem, seen).is_empty() && seen.value <= plan.value));
    }
}
