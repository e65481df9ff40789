//! From a stated day to a planned one: candidates, limits, the problem, and what the plan says.

pub(crate) mod candidates;
mod choose;
mod consumed;
mod errands;
mod keeping;
mod likes;
mod limits;
mod lots;
pub(crate) mod people;
pub(crate) mod pools;
mod produce;
pub(crate) mod roster;
mod setting;
mod solving;
pub(crate) mod worth;

use almanac::Almanac;

pub(crate) use errands::{errand_id, errand_step_id};
pub(crate) use limits::{basket_of_stock, stock_words};
pub(crate) use pools::ABSENCES;
pub(crate) use solving::{project_id, real_finish};

use crate::answer::DayAnswer;
use crate::day::{ClockTime, Day, Span};
use crate::tell::{self, Planned};

/// What an errand that is no must adds, in the planner's tenths of a serving: a little, so that it is done when
/// it fits and never in place of food.
const ERRAND_VALUE: u32 = 5;

/// Minutes at the end of the day in which nothing is planned: a day that is full to its last minute ends late.
pub(crate) const KEPT_FREE: u32 = 15;

/// How often a way of making something that finds nobody for a step is given up and the day planned again.
const SECOND_THOUGHTS: u32 = 3;

/// Plans a day: what to make of what came in, how much of everything, the process for each jar, when to do what,
/// what to buy first, what is left over. Reads no clock and no file; the same day gives the same answer.
#[must_use]
pub fn plan_day(almanac: &Almanac, day: &Day) -> DayAnswer {
    // A day on which nobody comes is an empty day, not an error: the answer says that nothing fits.
    let span = pools::day_span(&day.people).unwrap_or(Span { from: ClockTime(0), to: ClockTime(0) });
    let setting = setting::Setting::of(almanac, day);
    let (all, aside) = candidates::consider_all(&setting);
    let length = span.to.0 - span.from.0;
    let horizon = if length > 4 * KEPT_FREE { length - KEPT_FREE } else { length };
    let (mut shown, unshown) = choose::choose(day, all);
    let state = |shown: &[candidates::Considered<'_>]| {
        let mut projects: Vec<dayplan::Project> = shown.iter().map(solving::project_of).collect();
        projects.extend(day.errands.iter().map(|errand| errands::errand_project(errand, span, ERRAND_VALUE)));
        solving::state_problem(
            horizon,
            limits::kitchen_resources(day),
            setting.stock.clone(),
            pools::count_people(&day.people, Span { from: span.from, to: ClockTime(span.from.0 + horizon) }),
            projects,
        )
    };
    let mut problem = state(&shown);
    let mut plan = solving::solve_day(&problem);
    // A wish for something of a produce binds only when the best plan makes nothing of it.
    let chosen = plan.chosen.iter().map(|chosen| chosen.project.clone()).collect();
    if choose::mark_missing_musts(day, &mut shown, &chosen) {
        problem = state(&shown);
        plan = solving::solve_day(&problem);
    }
    let (mut plan, mut roster) = roster::settle(day, span, &shown, &problem, plan);
    for _ in 0..SECOND_THOUGHTS {
        let Some((project, option)) = roster.open_option(&plan, &shown) else { break };
        for considered in shown.iter_mut().filter(|considered| project_id(considered) == project) {
            considered.options.retain(|candidate| candidate.id != option);
        }
        problem = state(&shown);
        (plan, roster) = roster::settle(day, span, &shown, &problem, solving::solve_day(&problem));
    }
    // What still finds nobody is left out: a shorter plan that people can do is worth more than one they cannot.
    while let Some((project, _)) = roster.open_option(&plan, &shown) {
        plan = solving::leave_out(&problem, plan, &project);
        roster = roster::draw_up(day, span, &shown, &plan);
    }
    tell::tell(Planned { almanac, day, span, shown, unshown, aside, problem, plan, roster })
}
