//! How a plan stands up to days on which work takes longer or shorter than planned.
//!
//! **The days.** Each step with a [`Spread`] takes a length drawn from a triangular distribution over low, typical and
//! high; every other step takes exactly as long as planned: timed processes do. Draws come from a generator that is
//! seeded and passed in, and use only operations that are exact to the standard, so that a seed gives the same days on
//! any machine.
//!
//! **The policy.** The plan's order is kept: a step waits for what it comes after, and for the very units of each
//! resource that it follows in the plan. It starts no sooner than planned, but for one that must follow another within
//! [`FOLLOWS_AT_ONCE`] minutes: that starts as soon as it can. A step does not begin while a resource it needs is
//! closed; one that runs into a closed time is finished first. Nothing is planned again.
//!
//! **What is not handled.** Lengths of different steps are drawn independently, though a slow day is slow at
//! everything; so the middle of the finish is right and its ends are drawn too near. Nobody waits with the head of a
//! chain until its tail is free.

mod draw;

use std::collections::BTreeMap;

use self::draw::{Draws, triangular};
use crate::plan::Plan;
use crate::problem::{Choice, Problem, Step};

/// What follows another step within so many minutes is begun as soon as it can be.
const FOLLOWS_AT_ONCE: i32 = 30;
/// How many of the steps that decide are told.
const MOST_DECIDING: usize = 5;

/// How long a step may take, in minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spread {
    /// At the quickest.
    pub low: u32,
    /// Most often.
    pub typical: u32,
    /// At the slowest.
    pub high: u32,
}

/// Steps whose length is not certain, by project and step of the chosen options.
pub type Spreads = BTreeMap<(String, String), Spread>;

/// What became of a plan on many days.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sturdiness {
    /// Days that were tried.
    pub days: u32,
    /// Days on which the work was over in time.
    pub in_time: u32,
    /// The finish that 10, 50 and 90 of a hundred days kept.
    pub finish: [u32; 3],
    /// Days on which some greatest wait was not kept.
    pub broken_days: u32,
    /// The waits that were not kept on some day, the likeliest first.
    pub broken: Vec<BrokenWait>,
    /// The uncertain steps that held up the finish, the most often first.
    pub deciding: Vec<Deciding>,
}

/// A greatest wait that was not kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BrokenWait {
    /// The project.
    pub project: String,
    /// The step that ended.
    pub from: String,
    /// The step that began too late.
    pub to: String,
    /// The greatest wait.
    pub max: i32,
    /// Days on which it was longer.
    pub days: u32,
}

/// A step on the chain of work that ended last.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deciding {
    /// The project.
    pub project: String,
    /// The step.
    pub step: String,
    /// Days on which the finish waited for it.
    pub days: u32,
}

/// Tries a plan that keeps its problem's rules on so many days; `in_time` is the minute by which work should be over.
///
/// `None` for a plan that chooses nothing that could move, and for no days.
#[must_use]
pub fn try_days(
    problem: &Problem,
    plan: &Plan,
    spreads: &Spreads,
    in_time: u32,
    days: u32,
    seed: u64,
) -> Option<Sturdiness> {
    let course = Course::of(problem, plan, spreads);
    if days == 0 || course.legs.iter().all(|leg| leg.is_pinned) {
        return None;
    }
    let mut draws = Draws::seeded(seed);
    let mut finishes = Vec::new();
    let mut broken = vec![0_u32; course.waits.len()];
    let mut decided = vec![0_u32; course.legs.len()];
    let mut broken_days = 0;
    let mut run = Run::default();
    for _ in 0..days {
        course.run(&mut draws, &mut run);
        let last = course.last(&run);
        finishes.push(run.end(last));
        let mut any = false;
        for (count, wait) in broken.iter_mut().zip(&course.waits) {
            // A minute is the least that is planned: less over the limit is no breach.
            if run.starts[wait.to] - run.end(wait.from) >= f64::from(wait.max) + 1.0 {
                *count += 1;
                any = true;
            }
        }
        broken_days += u32::from(any);
        course.count_chain(&run, last, &mut decided);
    }
    finishes.sort_by(f64::total_cmp);
    let limit = f64::from(in_time) + 0.5;
    Some(Sturdiness {
        days,
        // Never wraps: there are as many finishes as days.
        in_time: finishes.iter().filter(|finish| **finish < limit).count() as u32,
        finish: [10, 50, 90].map(|percent| quantile(&finishes, percent)),
        broken_days,
        broken: course.tell_broken(&broken),
        deciding: course.tell_deciding(&decided),
    })
}

/// The least finish that so many of a hundred days kept, in whole minutes.
fn quantile(sorted: &[f64], percent: usize) -> u32 {
    let at = (sorted.len() * percent).div_ceil(100).max(1) - 1;
    // Never negative, and far below 2^32: a finish is some days of minutes.
    libm::round(sorted[at]) as u32
}

/// A step of the plan with what it waits for.
#[derive(Debug)]
struct Leg {
    project: String,
    step: String,
    minutes: f64,
    spread: Option<Spread>,
    planned: f64,
    is_pinned: bool,
    /// Whether it starts as soon as it can, rather than when planned.
    follows: bool,
    /// Legs whose end it waits for, with minutes after it.
    after: Vec<(usize, f64)>,
    /// When what it needs is closed.
    closed: Vec<(f64, f64)>,
}

/// A greatest wait between two legs.
#[derive(Debug)]
struct Wait {
    from: usize,
    to: usize,
    max: i32,
}

/// A plan as it is run: legs in the order of their planned starts.
#[derive(Debug, Default)]
struct Course {
    legs: Vec<Leg>,
    waits: Vec<Wait>,
}

/// One day.
#[derive(Debug, Default)]
struct Run {
    starts: Vec<f64>,
    lengths: Vec<f64>,
    /// What each leg waited for last.
    held_by: Vec<Option<usize>>,
}

impl Run {
    fn end(&self, leg: usize) -> f64 {
        self.starts[leg] + self.lengths[leg]
    }
}

/// Units of a resource over a stretch of the plan.
struct Taking {
    from: usize,
    to: usize,
    units: u32,
}

impl Course {
    fn of(problem: &Problem, plan: &Plan, spreads: &Spreads) -> Course {
        let mut course = Course::default();
        let mut picks: Vec<(&str, &Choice, &BTreeMap<String, u32>)> = Vec::new();
        for chosen in &plan.chosen {
            let project = problem.projects.iter().find(|project| project.id == chosen.project);
            let option = project.and_then(|p| p.options.iter().find(|option| option.id == chosen.option));
            picks.extend(option.map(|option| (chosen.project.as_str(), option, &chosen.starts)));
        }
        for (project, option, starts) in &picks {
            for step in &option.steps {
                let start = starts.get(&step.id).copied().unwrap_or(0);
                course.legs.push(leg_of(problem, project, option, step, start, spreads));
            }
        }
        course.legs.sort_by(|a, b| a.planned.total_cmp(&b.planned));
        let places: BTreeMap<(String, String), usize> = course
            .legs
            .iter()
            .enumerate()
            .map(|(at, leg)| ((leg.project.clone(), leg.step.clone()), at))
            .collect();
        let place = |project: &str, step: &str| places[&(project.to_owned(), step.to_owned())];
        for (project, option, _) in &picks {
            for lag in &option.lags {
                let (from, to) = (place(project, &lag.from), place(project, &lag.to));
                course.legs[to].after.push((from, f64::from(lag.min)));
                course.waits.extend(lag.max.map(|max| Wait { from, to, max }));
            }
        }
        for resource in &problem.resources {
            let mut takings = Vec::new();
            for (project, option, _) in &picks {
                for step in &option.steps {
                    let at = place(project, &step.id);
                    takings.extend(step.needs.get(&resource.id).map(|&units| Taking {
                        from: at,
                        to: at,
                        units,
                    }));
                }
                for hold in option.holds.iter().filter(|hold| hold.resource == resource.id) {
                    let (from, to) = (place(project, &hold.from), place(project, &hold.to));
                    takings.push(Taking { from, to, units: hold.amount });
                }
            }
            course.hand_out(resource.capacity, takings);
        }
        course
    }

    /// Hands the units of a resource out as the plan does: who takes some waits for those who had them before.
    fn hand_out(&mut self, capacity: u32, mut takings: Vec<Taking>) {
        let planned_end = |legs: &[Leg], leg: usize| legs[leg].planned + legs[leg].minutes;
        takings.retain(|t| t.units > 0 && self.legs[t.from].planned < planned_end(&self.legs, t.to));
        takings.sort_by(|a, b| self.legs[a.from].planned.total_cmp(&self.legs[b.from].planned));
        // Units, who had them last, and until when in the plan.
        let mut parts: Vec<(u32, Option<usize>, f64)> = vec![(capacity, None, f64::NEG_INFINITY)];
        for taking in takings {
            let start = self.legs[taking.from].planned;
            let mut wanted = taking.units;
            parts.sort_by(|a, b| a.2.total_cmp(&b.2));
            for part in parts.iter_mut().filter(|part| part.2 <= start) {
                let given = part.0.min(wanted);
                if given == 0 {
                    continue;
                }
                part.0 -= given;
                wanted -= given;
                if let Some(before) = part.1.filter(|before| *before != taking.from) {
                    self.legs[taking.from].after.push((before, 0.0));
                }
            }
            parts.retain(|part| part.0 > 0);
            parts.push((taking.units - wanted, Some(taking.to), planned_end(&self.legs, taking.to)));
        }
    }

    /// Runs one day.
    fn run(&self, draws: &mut Draws, run: &mut Run) {
        run.lengths.clear();
        run.lengths.extend(self.legs.iter().map(|leg| match leg.spread {
            Some(spread) => triangular(spread, draws.unit()),
            None => leg.minutes,
        }));
        run.starts.clear();
        run.starts.extend(self.legs.iter().map(|leg| if leg.follows { 0.0 } else { leg.planned }));
        run.held_by.clear();
        run.held_by.resize(self.legs.len(), None);
        // Legs come in the order of their planned starts, so that one round is enough but for overlaps.
        for _ in 0..=self.legs.len() {
            if !self.push(run) {
                return;
            }
        }
    }

    fn push(&self, run: &mut Run) -> bool {
        let mut pushed = false;
        for (at, leg) in self.legs.iter().enumerate().filter(|(_, leg)| !leg.is_pinned) {
            let mut start = run.starts[at];
            for &(before, minutes) in &leg.after {
                let soonest = run.end(before) + minutes;
                if soonest > start {
                    start = soonest;
                    run.held_by[at] = Some(before);
                }
            }
            for &(shut, open) in &leg.closed {
                if shut <= start && start < open {
                    start = open;
                }
            }
            if start > run.starts[at] {
                run.starts[at] = start;
                pushed = true;
            }
        }
        pushed
    }

    /// The leg that ends last, of those that can move.
    fn last(&self, run: &Run) -> usize {
        let free = (0..self.legs.len()).filter(|&leg| !self.legs[leg].is_pinned);
        free.max_by(|&a, &b| run.end(a).total_cmp(&run.end(b))).unwrap_or(0)
    }

    /// Counts the uncertain legs on the chain that the last one waited for.
    fn count_chain(&self, run: &Run, last: usize, decided: &mut [u32]) {
        let mut at = Some(last);
        let mut left = self.legs.len();
        while let Some(leg) = at.filter(|_| left > 0) {
            decided[leg] += u32::from(self.legs[leg].spread.is_some());
            at = run.held_by[leg];
            left -= 1;
        }
    }

    fn tell_broken(&self, counts: &[u32]) -> Vec<BrokenWait> {
        let mut broken: Vec<BrokenWait> = self
            .waits
            .iter()
            .zip(counts)
            .filter(|(_, days)| **days > 0)
            .map(|(wait, &days)| BrokenWait {
                project: self.legs[wait.to].project.clone(),
                from: self.legs[wait.from].step.clone(),
                to: self.legs[wait.to].step.clone(),
                max: wait.max,
                days,
            })
            .collect();
        broken
            .sort_by(|a, b| b.days.cmp(&a.days).then_with(|| (&a.project, &a.to).cmp(&(&b.project, &b.to))));
        broken
    }

    fn tell_deciding(&self, counts: &[u32]) -> Vec<Deciding> {
        let counted = self.legs.iter().zip(counts).filter(|(_, days)| **days > 0);
        let mut deciding: Vec<Deciding> = counted
            .map(|(leg, &days)| Deciding { project: leg.project.clone(), step: leg.step.clone(), days })
            .collect();
        deciding.sort_by(|a, b| {
            b.days.cmp(&a.days).then_with(|| (&a.project, &a.step).cmp(&(&b.project, &b.step)))
        });
        deciding.truncate(MOST_DECIDING);
        deciding
    }
}

fn leg_of(
    problem: &Problem,
    project: &str,
    option: &Choice,
    step: &Step,
    start: u32,
    spreads: &Spreads,
) -> Leg {
    let is_pinned = step.latest_end == Some(step.earliest + step.minutes);
    let closed = problem.resources.iter().filter(|resource| step.needs.contains_key(&resource.id));
    let follows =
        option.lags.iter().any(|lag| lag.to == step.id && lag.max.is_some_and(|max| max <= FOLLOWS_AT_ONCE));
    let mut closed: Vec<(f64, f64)> = closed
        .flat_map(|r| r.closed.iter().map(|&(shut, open)| (f64::from(shut), f64::from(open))))
        .collect();
    closed.sort_by(|a, b| a.0.total_cmp(&b.0));
    Leg {
        project: project.to_owned(),
        step: step.id.clone(),
        minutes: f64::from(step.minutes),
        spread: spreads.get(&(project.to_owned(), step.id.clone())).copied().filter(|_| !is_pinned),
        planned: f64::from(start),
        is_pinned,
        follows,
        after: Vec::new(),
        closed,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solve::{Budget, solve};

    const DAY: &str = r#"{"format":"day-problem/1","horizon":120,"resources":[{"id":"hands","capacity":1}],
        "projects":[
          {"id":"jam","must":true,"options":[{"id":"o","value":1,
            "steps":[{"id":"cut","minutes":20,"needs":{"hands":1}},{"id":"boil","minutes":30},
                     {"id":"fill","minutes":10,"needs":{"hands":1}}],
            "lags":[{"from":"cut","to":"boil","max":10},{"from":"boil","to":"fill","max":0}]}]},
          {"id":"bread","must":true,"options":[{"id":"o","value":1,
            "steps":[{"id":"knead","minutes":30,"needs":{"hands":1}}]}]}]}"#;

    fn day() -> (Problem, Plan) {
        let problem = Problem::from_json(DAY).unwrap();
        let plan = solve(&problem, Budget::default());
        assert_eq!(plan.finish, Some(60), "the bread is kneaded while the jam boils");
        (problem, plan)
    }

    fn spread(project: &str, step: &str, low: u32, typical: u32, high: u32) -> Spreads {
        BTreeMap::from([((project.to_owned(), step.to_owned()), Spread { low, typical, high })])
    }

    #[test]
    fn days_without_doubt_are_the_planned_day() {
        let (problem, plan) = day();
        let tried = try_days(&problem, &plan, &Spreads::new(), 60, 100, 1).unwrap();
        assert_eq!((tried.in_time, tried.broken_days, tried.finish), (100, 0, [60; 3]));
        assert_eq!((tried.broken, tried.deciding), (vec![], vec![]));
        assert_eq!(try_days(&problem, &plan, &Spreads::new(), 60, 0, 1), None);
    }

    #[test]
    fn hot_jam_waits_when_the_kneading_runs_long() {
        let (problem, plan) = day();
        // Kneading begins at 20 and always takes 40: hands are free at 60, ten minutes after the jam is ready.
        let tried = try_days(&problem, &plan, &spread("bread", "knead", 40, 40, 40), 65, 50, 1).unwrap();
        assert_eq!((tried.in_time, tried.broken_days, tried.finish), (0, 50, [70; 3]));
        assert_eq!(tried.broken.len(), 1);
        assert_eq!(
            (tried.broken[0].from.as_str(), tried.broken[0].to.as_str(), tried.broken[0].days),
            ("boil", "fill", 50)
        );
        assert_eq!((tried.deciding[0].step.as_str(), tried.deciding[0].days), ("knead", 50));
    }

    #[test]
    fn the_finish_follows_the_distribution_of_its_last_step() {
        let (problem, plan) = day();
        // The filling starts at 50 and takes 4 to 12 minutes, most often 7. By the triangular distribution it is over
        // in 9.17 minutes on four days of five (high - sqrt((1 - p)(high - low)(high - typical))).
        let tried = try_days(&problem, &plan, &spread("jam", "fill", 4, 7, 12), 59, 10_000, 7).unwrap();
        // 59.5 less 50 is 9.5 minutes: 1 - (12 - 9.5)^2 / (8 * 5) = 0.84375.
        assert!((8_340..8_540).contains(&tried.in_time), "{}", tried.in_time);
        assert_eq!(tried.finish, [56, 58, 60]);
        assert_eq!(tried.deciding[0].days, 10_000);
    }

    #[test]
    fn a_seed_gives_the_same_days() {
        let (problem, plan) = day();
        let spreads = spread("bread", "knead", 20, 30, 50);
        let with = |seed| try_days(&problem, &plan, &spreads, 60, 1_000, seed).unwrap();
        assert_eq!(with(3), with(3));
        assert_ne!(with(3).broken_days, with(4).broken_days);
        // A step that can only be slower makes no day better.
        let slower = try_days(&problem, &plan, &spread("bread", "knead", 30, 40, 60), 60, 1_000, 3).unwrap();
        assert!(slower.in_time <= with(3).in_time && slower.finish[1] >= with(3).finish[1]);
    }
}
