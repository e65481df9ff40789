//! The order of work: a plan to show at once, then the best value, then the earliest finish at that value.

use super::climb::Climber;
use super::day::Day;
use super::draft::Draft;
use super::engine::{Answer, Engine, Wish};
use super::fit::fit_set;
use super::greedy;
use super::master::{Master, Proposal};
use super::mend::Mender;
use super::probe::Probe;
use super::reopen::{Look, Reopener};
use super::work::Clock;

/// What a search found and proved.
#[derive(Debug, Clone)]
pub(super) struct Finding {
    pub(super) draft: Option<Draft>,
    pub(super) bounds: Bounds,
}

impl Finding {
    /// Whether it is proved that no plan exists.
    pub(super) fn is_impossible(&self) -> bool {
        self.bounds.value < 0
    }
}

/// What no plan can pass.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    /// No plan is worth more; -1 when there is none at all.
    pub(super) value: i32,
    /// No plan of the best value ends earlier; `None` while the value is not proved.
    pub(super) finish: Option<i32>,
}

/// Work of the master on one proposal, the first time and at the most.
const MASTER_SLICE: u64 = 200_000;
const MASTER_SLICE_MAX: u64 = 4_000_000;
/// Work on a set that the master proposes, the first time.
const SET_SLICE: u64 = 500_000;
/// Sets that could not be settled before the whole engine is asked for anything better.
const PUSH_EVERY: usize = 2;
/// Work on one set of the climb, in the first round; each round has four times that of the one before.
const CLIMB_SLICE: u64 = 150_000;
/// Work on the climb in all, at the most.
const CLIMB_WORK: u64 = 6_000_000;
/// Rounds of the climb.
const CLIMB_ROUNDS: u32 = 2;
/// Work on opening parts of the first plan.
const FIRST_REOPEN: u64 = 4_000_000;
/// Work on mending what an opened part brought.
const REOPEN_MEND: u64 = 20_000;
/// Work on mending before anything is proved.
const FIRST_MEND: u64 = 500_000;
/// The same on days with many options, for each of them.
const FIRST_MEND_PER_WAY: u64 = 5_000;
/// Work on earlier starts once value and finish are proved.
const LAST_MEND: u64 = 300_000;
/// Rounds of mending without anything better before it is given up for the time.
const PATIENCE: u32 = 150;
/// Work on one question about the value or the finish, the first time.
const QUESTION_SLICE: u64 = 3_000_000;

/// Sets of the best value whose finish is probed one by one, at the most.
const SETS_MAX: usize = 24;

/// What a search is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Goal {
    /// The best plan, and the proof of it.
    BestPlan,
    /// To know whether there is a plan.
    AnyPlan,
}

/// Told of each better draft, and of the same one when more is proved of it, with the bounds on value and finish.
/// Answers whether the draft keeps every rule.
pub(super) type Show<'s> = dyn FnMut(&Draft, Bounds, &mut Clock<'_>) -> bool + 's;

/// Searches until the clock is over or the goal is reached.
pub(super) fn search(day: &Day, goal: Goal, clock: &mut Clock<'_>, show: &mut Show<'_>) -> Finding {
    let mut run = Run {
        day,
        goal,
        best: None,
        value_bound: day.top_value(),
        overlooked: -1,
        has_climbed: false,
        finish_bound: None,
        show,
    };
    if day.is_overbooked() || day.projects.iter().any(|p| p.must && p.ways.is_empty()) {
        run.value_bound = -1;
        return run.finding();
    }
    let mut work = 0;
    if let Some(draft) = greedy::first_draft(day, &mut work) {
        run.improve(draft, clock);
    }
    clock.meter().add(work);
    if run.is_done() {
        return run.finding();
    }
    let mut master = Master::new(day, run.value(), clock.meter());
    run.limit_value(master.bound(), clock);
    run.try_orders(&master, clock);
    let mut mender = Mender::new(day, master.order());
    let first_mend = FIRST_MEND.max(FIRST_MEND_PER_WAY * day.ways.len() as u64);
    run.mend(&mut mender, first_mend, clock);
    if let Some(mut engine) = Engine::new(day, &master.order(), clock.meter()) {
        if let Some(best) = &run.best {
            clock.slice(u64::MAX);
            engine.show(best, clock);
        }
        let mut reopener = Reopener::new(day);
        run.prove_value(&mut engine, &mut master, (&mut mender, &mut reopener), clock);
        if goal == Goal::BestPlan {
            run.prove_finish(engine, &mut master, &mut mender, clock);
        }
    }
    run.finding()
}

struct Run<'d, 's> {
    day: &'d Day,
    goal: Goal,
    best: Option<Draft>,
    value_bound: i32,
    /// What sets may be worth that contain a postponed one, where the master did not look at them all.
    overlooked: i32,
    /// Whether the climb over sets was made.
    has_climbed: bool,
    finish_bound: Option<i32>,
    show: &'s mut Show<'s>,
}

impl Run<'_, '_> {
    fn finding(self) -> Finding {
        Finding { bounds: self.bounds(), draft: self.best }
    }

    fn bounds(&self) -> Bounds {
        let proved = (0..=self.value()).contains(&self.value_bound);
        // Before anything is known of the finish: no plan ends before it begins.
        Bounds { value: self.value_bound, finish: self.finish_bound.or(proved.then_some(0)) }
    }

    /// Notes that no plan is worth more than this.
    fn limit_value(&mut self, most: i32, clock: &mut Clock<'_>) {
        if most < self.value_bound {
            self.value_bound = most;
            self.tell(clock);
        }
    }

    /// Notes that no plan of the best value ends before this.
    fn limit_finish(&mut self, least: i32, clock: &mut Clock<'_>) {
        if self.finish_bound.is_none_or(|known| known < least) {
            self.finish_bound = Some(least);
            self.tell(clock);
        }
    }

    /// Shows the best draft again, of which more is proved now.
    fn tell(&mut self, clock: &mut Clock<'_>) {
        if let Some(best) = &self.best {
            let bounds = self.bounds();
            (self.show)(best, bounds, clock);
        }
    }

    fn is_done(&self) -> bool {
        self.goal == Goal::AnyPlan && self.best.is_some()
    }

    fn value(&self) -> i32 {
        self.best.as_ref().map_or(-1, |b| b.value(self.day))
    }

    /// Keeps a draft, tightened, if it is better than the best.
    fn improve(&mut self, mut draft: Draft, clock: &mut Clock<'_>) {
        let better = |d: &Draft, best: &Option<Draft>| {
            best.as_ref().is_none_or(|b| d.rank(self.day) > b.rank(self.day))
        };
        let mut work = 0;
        if self.best.is_none() || draft.value(self.day) >= self.value() {
            greedy::tighten(self.day, &mut draft, &mut work);
        }
        clock.meter().add(work);
        // A draft that breaks a rule must not stand for a value that is reached: proofs are made against it.
        let bounds = self.bounds();
        if better(&draft, &self.best) && (self.show)(&draft, bounds, clock) {
            self.best = Some(draft);
        }
    }

    /// Mends the best draft for a while.
    fn mend(&mut self, mender: &mut Mender<'_>, work: u64, clock: &mut Clock<'_>) {
        if let Some(best) = &self.best {
            clock.slice(work);
            let mended = mender.mend(best, PATIENCE, clock);
            self.improve(mended, clock);
        }
    }

    /// Greedy drafts in the orders that the master's prices suggest.
    fn try_orders(&mut self, master: &Master, clock: &mut Clock<'_>) {
        for mut order in [master.order(), master.order_by_profit()] {
            order.sort_by_key(|&w| !self.day.projects[self.day.ways[w].project].must);
            let mut work = 0;
            let draft = greedy::place_in_order(self.day, &order, &mut work);
            clock.meter().add(work);
            if draft.keeps_musts(self.day) {
                self.improve(draft, clock);
            }
        }
    }

    /// Totals do not tell on this day what goes together: better plans come from changes of the best one.
    fn come_from_below(
        &mut self,
        (mender, reopener): (&mut Mender<'_>, &mut Reopener<'_>),
        master: &mut Master,
        work: u64,
        clock: &mut Clock<'_>,
    ) {
        if self.has_climbed {
            return self.reopen(reopener, master, mender, 2 * work, clock);
        }
        self.has_climbed = true;
        self.reopen(reopener, master, mender, FIRST_REOPEN, clock);
        self.climb(master, mender, clock);
    }

    /// Opens parts of the best plan for something worth more, with so much work.
    fn reopen(
        &mut self,
        reopener: &mut Reopener<'_>,
        master: &Master,
        mender: &mut Mender<'_>,
        work: u64,
        clock: &mut Clock<'_>,
    ) {
        let order = master.order();
        let end = clock.left().saturating_sub(work);
        while clock.left() > end && self.value() < self.value_bound && !self.is_done() && !clock.is_over() {
            let Some(best) = self.best.clone() else { return };
            match reopener.look(&best, &order, clock) {
                Look::Better(draft) => {
                    self.improve(draft, clock);
                    self.mend(mender, REOPEN_MEND, clock);
                }
                Look::Nothing => {}
                Look::NothingAnywhere => self.limit_value(self.value(), clock),
            }
        }
    }

    /// Climbs over sets of ways until no set around the best plan is worth more and fits, with growing work.
    fn climb(&mut self, master: &mut Master, mender: &mut Mender<'_>, clock: &mut Clock<'_>) {
        let mut climber = Climber::default();
        let end = clock.left().saturating_sub(CLIMB_WORK);
        for round in 0..CLIMB_ROUNDS {
            let slice = CLIMB_SLICE << (2 * round);
            while self.climb_once(master, &mut climber, (round, slice, end), clock) {
                self.mend(mender, slice, clock);
            }
        }
    }

    /// Asks for the sets around the best plan until one fits; false when none does.
    fn climb_once(
        &mut self,
        master: &mut Master,
        climber: &mut Climber,
        (round, slice, end): (u32, u64, u64),
        clock: &mut Clock<'_>,
    ) -> bool {
        let Some(best) = &self.best else { return false };
        let mut base: Vec<usize> = best.chosen().map(|pick| pick.way).collect();
        base.sort_unstable();
        for step in climber.moves(self.day, &base, round) {
            let is_spent = clock.is_over() || clock.left() <= end;
            if is_spent || self.value() >= self.value_bound || self.is_done() {
                return false;
            }
            // A clash found meanwhile may settle it.
            if !climber.is_open(self.day, &step.ways, round) {
                continue;
            }
            climber.note(round, &step.ways);
            match fit_set(self.day, &step.ways, slice, clock) {
                Answer::Found(draft) => {
                    self.improve(draft, clock);
                    return true;
                }
                Answer::Clash(ways) => {
                    climber.cut(&ways);
                    master.cut(&ways);
                }
                Answer::Never => self.limit_value(self.value(), clock),
                Answer::Open => {}
            }
        }
        false
    }

    /// Puts the master's sets to the engine, best first, until none is left that is worth more than the best plan.
    fn prove_value(
        &mut self,
        engine: &mut Engine<'_>,
        master: &mut Master,
        (mender, reopener): (&mut Mender<'_>, &mut Reopener<'_>),
        clock: &mut Clock<'_>,
    ) {
        let mut postponed: Vec<Proposal> = Vec::new();
        let mut pool = Pool::default();
        let (mut slice, mut master_slice) = (SET_SLICE, MASTER_SLICE);
        while self.value() < self.value_bound && !self.is_done() && !clock.is_over() {
            let set = pool.next(master, self.value()).or_else(|| {
                pool.fill(master, self.value(), master_slice, clock);
                pool.next(master, self.value())
            });
            if pool.complete {
                let open = postponed.iter().map(|p| p.value).max().unwrap_or(-1);
                let top = set.as_ref().map_or(pool.beyond, |p| p.value);
                let top = top.max(open).max(self.overlooked).max(self.value());
                self.limit_value(top, clock);
            } else if pool.is_fresh() {
                // Too many sets to look at them all: better plans come from below for a while.
                self.push_value(engine, slice / 4, clock);
                self.come_from_below((mender, reopener), master, slice, clock);
                master_slice = master_slice.saturating_mul(2).min(MASTER_SLICE_MAX);
            }
            let Some(set) = set.filter(|set| set.value > self.value()) else {
                if pool.is_exhausted() && self.value() < self.value_bound {
                    slice = slice.saturating_mul(2);
                    self.retry(engine, master, &mut postponed, slice, clock);
                }
                continue;
            };
            if !self.try_set(master, &set, slice, clock) {
                // The cut hides every set that contains this one. Seen in full, such a set would have come first.
                if !pool.complete {
                    self.overlooked = self.value_bound;
                }
                master.postpone(&set.ways);
                postponed.push(set);
                if postponed.len().is_multiple_of(PUSH_EVERY) {
                    self.push_value(engine, slice, clock);
                }
                self.mend(mender, slice / 4, clock);
                self.come_from_below((mender, reopener), master, slice, clock);
            }
        }
    }

    /// Asks whether a set fits; false when that could not be told.
    fn try_set(&mut self, master: &mut Master, set: &Proposal, slice: u64, clock: &mut Clock<'_>) -> bool {
        match fit_set(self.day, &set.ways, slice, clock) {
            Answer::Found(draft) => self.improve(draft, clock),
            Answer::Clash(ways) => master.cut(&ways),
            Answer::Never => self.limit_value(self.value(), clock),
            Answer::Open => return false,
        }
        true
    }

    /// Sets that were too hard the first time, with more work each, and a question about any better value.
    fn retry(
        &mut self,
        engine: &mut Engine<'_>,
        master: &mut Master,
        postponed: &mut Vec<Proposal>,
        slice: u64,
        clock: &mut Clock<'_>,
    ) {
        clock.slice(slice);
        let wish = Wish { value_at_least: Some(self.value() + 1), ..Wish::default() };
        match engine.ask(&wish, clock) {
            Answer::Found(draft) => self.improve(draft, clock),
            Answer::Clash(_) | Answer::Never => self.limit_value(self.value(), clock),
            Answer::Open => {}
        }
        postponed.sort_by_key(|p| std::cmp::Reverse(p.value));
        let mut still = Vec::new();
        for set in std::mem::take(postponed) {
            let wanted = set.value > self.value() && self.value() < self.value_bound;
            if wanted && (clock.is_over() || !self.try_set(master, &set, slice, clock)) {
                still.push(set);
            }
        }
        *postponed = still;
    }

    /// Asks for any plan worth more, again and again, in steps that grow while they succeed.
    fn push_value(&mut self, engine: &mut Engine<'_>, slice: u64, clock: &mut Clock<'_>) {
        let mut step = 1;
        while self.value() < self.value_bound && !self.is_done() {
            let aim = (self.value() + step).min(self.value_bound);
            clock.slice(slice);
            let wish = Wish { value_at_least: Some(aim), ..Wish::default() };
            match engine.ask(&wish, clock) {
                Answer::Found(draft) => self.improve(draft, clock),
                Answer::Clash(_) | Answer::Never => self.limit_value(aim - 1, clock),
                Answer::Open => return,
            }
            step = (2 * step).min(1 + (self.value_bound - self.value()) / 4);
        }
    }

    /// All sets of ways that could be worth as much as the best plan, if there are few.
    fn sets_of_best_value(&self, master: &mut Master, clock: &mut Clock<'_>) -> Option<Vec<Vec<usize>>> {
        // What is left of the cuts are clashes, so what the master does not find does not exist.
        master.lift_postponed();
        let search = master.search(self.value() - 1, SETS_MAX + 1, MASTER_SLICE_MAX, clock.meter());
        let few = search.complete && search.best.len() <= SETS_MAX;
        few.then(|| search.best.into_iter().map(|set| set.ways).collect())
    }

    /// Probes the finish between its bound and the best plan's, until they meet: of each set of the best value by
    /// itself where these are few, and of the whole day where they are many.
    fn prove_finish(
        &mut self,
        mut engine: Engine<'_>,
        master: &mut Master,
        mender: &mut Mender<'_>,
        clock: &mut Clock<'_>,
    ) {
        let value = self.value();
        if value < 0 || value < self.value_bound {
            return;
        }
        self.mend(mender, FIRST_MEND, clock);
        let day = self.day;
        let sets = self.sets_of_best_value(master, clock).unwrap_or_default();
        let parts: Vec<Day> = sets.iter().map(|ways| day.restrict(ways)).collect();
        let mut probes = Vec::new();
        if let Some(best) = &self.best {
            let slice = if sets.len() == 1 { QUESTION_SLICE } else { SET_SLICE };
            for (part, ways) in parts.iter().zip(&sets) {
                let least = day.earliest_finish(ways);
                probes.extend(Probe::of_set(part, (ways, least), best, slice, clock));
            }
        }
        if probes.is_empty() || probes.len() < sets.len() {
            engine.limit_value(value);
            engine.require_value(value);
            probes = vec![Probe::of_day(engine, day.ways.len(), QUESTION_SLICE)];
        }
        self.probe(&mut probes, mender, clock);
    }

    fn probe(&mut self, probes: &mut [Probe<'_>], mender: &mut Mender<'_>, clock: &mut Clock<'_>) {
        loop {
            let best = self.best.as_ref().map_or(0, |b| b.finish(self.day));
            let low = probes.iter().map(Probe::low).min().unwrap_or(0).min(best);
            self.limit_finish(low, clock);
            if low >= best {
                // What is left of the wish is to begin early.
                return self.mend(mender, LAST_MEND, clock);
            }
            if clock.is_over() {
                return;
            }
            let open = probes.iter_mut().filter(|probe| probe.low() < best);
            if let Some(probe) = open.min_by_key(|probe| (probe.turns(), probe.low()))
                && let Some(draft) = probe.ask(best, clock)
            {
                self.improve(draft, clock);
            }
        }
    }
}

/// Sets that the master proposed and that were not asked for yet.
#[derive(Debug, Default)]
struct Pool {
    /// The best last.
    sets: Vec<Proposal>,
    /// Whether the master looked at every set.
    complete: bool,
    /// If so: what a set that is not in the pool is worth at the most.
    beyond: i32,
    /// Sets asked of the master so far, and taken since.
    size: usize,
    taken: usize,
}

/// Sets asked of the master at once, the first time and at the most: each look costs it much the same.
const POOL_MIN: usize = 4;
const POOL_MAX: usize = 256;

impl Pool {
    fn fill(&mut self, master: &Master, above: i32, work: u64, clock: &Clock<'_>) {
        self.size = (2 * self.size).clamp(POOL_MIN, POOL_MAX);
        let search = master.search(above, self.size, work, clock.meter());
        self.complete = search.complete;
        let full = search.best.len() == self.size;
        self.beyond = search.best.last().filter(|_| full).map_or(above, |set| set.value);
        self.sets = search.best;
        self.sets.reverse();
        self.taken = 0;
    }

    /// The best set that is worth more than `above` and not cut since.
    fn next(&mut self, master: &Master, above: i32) -> Option<Proposal> {
        while let Some(set) = self.sets.pop() {
            if set.value > above && !master.is_cut(&set.ways) {
                self.taken += 1;
                return Some(set);
            }
        }
        None
    }

    /// Whether no set was taken since it was filled, but for the first.
    fn is_fresh(&self) -> bool {
        self.taken <= 1
    }

    /// Whether the master has nothing more to propose, as it stands.
    fn is_exhausted(&self) -> bool {
        self.complete && self.sets.is_empty() && self.taken == 0
    }
}
