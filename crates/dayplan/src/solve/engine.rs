//! The day as a model for a learning engine, and questions put to it.
//!
//! Each step of each way has one start: within its window when the way is chosen, and at a place of its own
//! beyond the horizon when it is not. "Absent" and "late" are then the same thing, and a bound may move before the
//! choice is made: a start pushed past its last minute says that the way is absent. The places beyond the horizon
//! lie far enough apart that no two absent steps ever meet, so rules about running at the same time need no
//! exception for them. Lags are not kept between absent steps; their keeper knows that.

mod branch;
mod energy;
mod finish;
mod lags;
mod room;

use pumpkin_conflict_resolvers::resolvers::ResolutionResolver;
use pumpkin_core::Solver;
use pumpkin_core::predicate;
use pumpkin_core::predicates::Predicate;
use pumpkin_core::results::{ProblemSolution, SatisfactionResultUnderAssumptions, SolutionReference};
use pumpkin_core::variables::{DomainId, TransformableVariable};
use pumpkin_propagators::disjunctive::ArgDisjunctiveTask;

use self::branch::{Branch, ByTime};
use self::energy::{EnergyArgs, Job};
use self::finish::{FinishArgs, Tail};
use self::lags::LagsArgs;
use self::room::{RoomArgs, Use};
use super::day::{Day, NO_PATH, Way};
use super::draft::{Draft, Pick};
use super::work::{Clock, Meter};

/// The model of one day and all that was learnt about it.
pub(super) struct Engine<'d> {
    day: &'d Day,
    solver: Solver,
    branch: Branch,
    resolver: ResolutionResolver,
    /// Per way: 1 when it is chosen.
    on: Vec<DomainId>,
    /// Per way and step.
    starts: Vec<Vec<DomainId>>,
    value: DomainId,
    finish: DomainId,
}

/// What an answer must have.
#[derive(Debug, Clone, Default)]
pub(super) struct Wish {
    /// Ways that are chosen.
    pub(super) ways: Vec<usize>,
    pub(super) value_at_least: Option<i32>,
    pub(super) finish_at_most: Option<i32>,
}

/// What came of a wish.
#[derive(Debug)]
pub(super) enum Answer {
    Found(Draft),
    /// The wish cannot be met: these of its ways, with its other parts, clash.
    Clash(Vec<usize>),
    /// Nothing can be met any more, whatever is wished.
    Never,
    /// The work given was not enough to tell.
    Open,
}

/// Farthest place for an absent start; keeps sums of a few starts within the engine's numbers.
const PLACE_MAX: i64 = i32::MAX as i64 / 8;

/// A room's energy is watched when at least one part in so many of what there is could be asked for.
const ENERGY_SHARE: i64 = 3;

impl<'d> Engine<'d> {
    /// The model, with ways tried in the order given; `None` for days beyond the engine's numbers.
    pub(super) fn new(day: &'d Day, order: &[usize], meter: &Meter) -> Option<Engine<'d>> {
        let places = absent_places(day).filter(|_| has_small_sums(day))?;
        let mut solver = Solver::default();
        let on: Vec<DomainId> = day.ways.iter().map(|_| solver.new_bounded_integer(0, 1)).collect();
        let starts: Vec<Vec<DomainId>> = day
            .ways
            .iter()
            .zip(&places)
            .map(|(way, places)| {
                let ends = way.lo.iter().zip(places);
                ends.map(|(&lo, &place)| solver.new_bounded_integer(lo, place)).collect()
            })
            .collect();
        let top = day.top_value();
        let value = solver.new_bounded_integer(0, top);
        let finish = solver.new_bounded_integer(0, day.horizon);
        let plain = ByTime {
            ways: order.iter().map(|&w| on[w]).collect(),
            starts: starts.iter().flatten().copied().collect(),
            rest: vec![finish, value],
            delay: Vec::new(),
        };
        let mut engine = Engine {
            day,
            solver,
            branch: Branch::new(plain, meter.clone()),
            resolver: ResolutionResolver::default(),
            on,
            starts,
            value,
            finish,
        };
        engine.post_choice(&places, meter);
        engine.post_stock_and_value();
        engine.post_rooms(meter);
        engine.post_finish(meter);
        Some(engine)
    }

    /// Looks for a draft with what is wished, until the clock's slice ends.
    pub(super) fn ask(&mut self, wish: &Wish, clock: &mut Clock<'_>) -> Answer {
        let (value, finish) = (self.value, self.finish);
        let mut assume: Vec<Predicate> = wish.ways.iter().map(|&w| self.chosen(w)).collect();
        assume.extend(wish.value_at_least.map(|n| predicate![value >= n]));
        assume.extend(wish.finish_at_most.map(|n| predicate![finish <= n]));
        self.ask_under(&assume, &wish.ways, clock)
    }

    /// Shows the engine a draft, so that its search starts out from there.
    pub(super) fn show(&mut self, draft: &Draft, clock: &mut Clock<'_>) {
        let mut assume = Vec::new();
        let mut chosen = vec![false; self.on.len()];
        for pick in draft.chosen() {
            chosen[pick.way] = true;
            assume.push(self.chosen(pick.way));
            for (&x, &start) in self.starts[pick.way].iter().zip(&pick.starts) {
                assume.push(predicate![x == start]);
            }
        }
        for (&on, _) in self.on.iter().zip(&chosen).filter(|(_, chosen)| !**chosen) {
            assume.push(predicate![on <= 0]);
        }
        let answer = self.ask_under(&assume, &[], clock);
        debug_assert!(
            !matches!(answer, Answer::Clash(_) | Answer::Never),
            "a draft that keeps every rule is refused"
        );
    }

    /// From now on, answers with a lower value are of no interest.
    pub(super) fn require_value(&mut self, value: i32) {
        let x = self.value;
        self.add_clause([predicate![x >= value]]);
    }

    /// From now on, answers with a greater value are known not to exist.
    pub(super) fn limit_value(&mut self, value: i32) {
        let x = self.value;
        self.add_clause([predicate![x <= value]]);
    }

    /// From now on, answers with an earlier finish are known not to exist.
    pub(super) fn require_finish(&mut self, finish: i32) {
        let x = self.finish;
        self.add_clause([predicate![x >= finish]]);
    }

    /// The earliest finish that is not yet ruled out.
    pub(super) fn finish_bound(&self) -> i32 {
        self.solver.lower_bound(&self.finish)
    }

    /// From now on, answers with other ways than these are known not to exist.
    pub(super) fn require_ways(&mut self, ways: &[usize]) {
        for (w, on) in self.on.clone().into_iter().enumerate() {
            let settled = if ways.contains(&w) { predicate![on >= 1] } else { predicate![on <= 0] };
            self.add_clause([settled]);
        }
    }

    /// Whether the search goes by time rather than by what it learnt.
    pub(super) fn go_by_time(&mut self, by_time: bool) {
        self.branch.by_time = by_time;
    }

    /// Searches in another order of time from now on.
    pub(super) fn shake(&mut self, most: u64) {
        self.branch.shake(most);
    }

    fn chosen(&self, way: usize) -> Predicate {
        let on = self.on[way];
        predicate![on >= 1]
    }

    fn ask_under(&mut self, assume: &[Predicate], ways: &[usize], clock: &mut Clock<'_>) -> Answer {
        let (solver, branch) = (&mut self.solver, &mut self.branch);
        let result = solver.satisfy_under_assumptions(branch, clock, &mut self.resolver, assume);
        match result {
            SatisfactionResultUnderAssumptions::Satisfiable(found) => {
                Answer::Found(read(self.day, &self.on, &self.starts, &found.solution()))
            }
            SatisfactionResultUnderAssumptions::UnsatisfiableUnderAssumptions(mut clash) => {
                let core = clash.extract_core();
                let on = &self.on;
                let named = |&w: &usize| {
                    let on = on[w];
                    core.contains(&predicate![on >= 1])
                };
                Answer::Clash(ways.iter().copied().filter(named).collect())
            }
            SatisfactionResultUnderAssumptions::Unsatisfiable(_) => Answer::Never,
            SatisfactionResultUnderAssumptions::Unknown(_) => Answer::Open,
        }
    }

    fn add_clause(&mut self, clause: impl IntoIterator<Item = Predicate>) {
        let tag = self.solver.new_constraint_tag();
        self.solver.add_clause(clause, tag);
    }

    /// At most one way of a project, exactly one where it must be done: `sum of on <= 1`, `>= 1`. A way is chosen
    /// if and only if its starts are within their windows.
    fn post_choice(&mut self, places: &[Vec<i32>], meter: &Meter) {
        let day = self.day;
        for project in &day.projects {
            for (k, &a) in project.ways.iter().enumerate() {
                for &b in &project.ways[k + 1..] {
                    let (a, b) = (self.on[a], self.on[b]);
                    self.add_clause([predicate![a <= 0], predicate![b <= 0]]);
                }
            }
            if project.must {
                let any: Vec<Predicate> = project.ways.iter().map(|&w| self.chosen(w)).collect();
                self.add_clause(any);
            }
        }
        for (w, way) in day.ways.iter().enumerate() {
            let on = self.on[w];
            for (k, x) in self.starts[w].clone().into_iter().enumerate() {
                self.add_clause([predicate![on <= 0], predicate![x <= way.hi[k]]]);
                self.add_clause([predicate![on >= 1], predicate![x >= places[w][k]]]);
            }
            if !way.arcs.is_empty() {
                let tag = self.solver.new_constraint_tag();
                let _ = self.solver.add_propagator(LagsArgs {
                    starts: self.starts[w].clone(),
                    hi: way.hi.clone(),
                    arcs: way.arcs.clone(),
                    tag,
                    meter: meter.clone(),
                });
            }
        }
    }

    /// What the chosen ways use of a stock is at most what there is: `sum of uses * on <= stock`; and
    /// `value = sum of value * on`.
    fn post_stock_and_value(&mut self) {
        let day = self.day;
        for (k, &there) in day.stock.iter().enumerate() {
            let uses = |w: usize| day.ways[w].uses[k];
            self.post_at_most(uses, there);
        }
        for (r, room) in day.rooms.iter().enumerate() {
            // Implied, and found sooner this way: the room's minutes are a stock as well.
            let open = room.open_until(day.horizon);
            let loads: Vec<i64> = day.ways.iter().map(|w| w.load(r)).collect();
            if let Ok(open) = i32::try_from(open) {
                let load = |w: usize| i32::try_from(loads[w]).unwrap_or(i32::MAX).min(open + 1);
                self.post_at_most(load, open);
            }
        }
        let worth = self.on.iter().zip(&day.ways).filter(|(_, way)| way.value > 0);
        let mut terms = vec![self.value.scaled(-1)];
        terms.extend(worth.map(|(on, way)| on.scaled(way.value)));
        let tag = self.solver.new_constraint_tag();
        self.solver.add_constraint(pumpkin_constraints::equals(terms, 0, tag)).post();
    }

    fn post_at_most(&mut self, amount: impl Fn(usize) -> i32, most: i32) {
        let all = self.on.iter().enumerate().map(|(w, on)| (amount(w), on));
        let terms: Vec<_> = all.filter(|t| t.0 > 0).map(|(amount, on)| on.scaled(amount)).collect();
        if !terms.is_empty() {
            let tag = self.solver.new_constraint_tag();
            let rule = pumpkin_constraints::less_than_or_equals(terms, most, tag);
            self.solver.add_constraint(rule).post();
        }
    }

    fn post_rooms(&mut self, meter: &Meter) {
        let day = self.day;
        for (r, room) in day.rooms.iter().enumerate() {
            let (mut uses, mut least) = (Vec::new(), Vec::new());
            for (way, starts) in day.ways.iter().zip(&self.starts) {
                for take in way.takes.iter().filter(|t| t.room == r) {
                    uses.push(Use {
                        start: starts[take.from],
                        hi: way.hi[take.from],
                        end: starts[take.to].offset(way.minutes[take.to]),
                        amount: take.amount,
                    });
                    least.push(take.least);
                }
            }
            if uses.is_empty() {
                continue;
            }
            self.post_one_at_a_time(r);
            let shut = room.shut.iter().map(|&(from, to)| (from, to, room.capacity));
            let base: Vec<_> = shut.chain(room.booked.iter().map(|b| (b.from, b.to, b.amount))).collect();
            self.post_energy(r, &uses, &least, meter);
            let tag = self.solver.new_constraint_tag();
            let _ = self.solver.add_propagator(RoomArgs {
                uses,
                capacity: room.capacity,
                base: base.clone(),
                tag,
                meter: meter.clone(),
            });
        }
    }

    /// Work between two minutes is at most what there is between them. Only where much is asked of the room: it is
    /// implied by the rule of the timetable, and costs as much.
    fn post_energy(&mut self, r: usize, uses: &[Use], least: &[i32], meter: &Meter) {
        let room = &self.day.rooms[r];
        let jobs = jobs_of(uses, least);
        let asked: i64 = jobs.iter().map(|job| job.energy).sum();
        if jobs.is_empty() || asked * ENERGY_SHARE < room.open_until(self.day.horizon) {
            return;
        }
        let tag = self.solver.new_constraint_tag();
        let levels = room.levels();
        let _ = self.solver.add_propagator(EnergyArgs { jobs, levels, tag, meter: meter.clone() });
    }

    /// Takes of more than half a room never meet: `end(i) <= start(j)` or `end(j) <= start(i)`. Implied by the
    /// room's capacity; the engine's own rule for such takes sees more.
    fn post_one_at_a_time(&mut self, r: usize) {
        let day = self.day;
        let room = &day.rooms[r];
        let most = room.most();
        let mut tasks = Vec::new();
        for (way, starts) in day.ways.iter().zip(&self.starts) {
            for (k, start) in starts.iter().enumerate() {
                let large = way.takes.iter().filter(|t| t.room == r && t.from == k);
                let large = large.filter(|t| 2 * t.amount > most && t.least > 0);
                if let Some(minutes) = large.map(|t| t.least).max() {
                    tasks.push((*start, minutes));
                }
            }
        }
        if tasks.len() < 2 {
            return;
        }
        for &(from, to) in &room.shut {
            tasks.push((self.solver.new_bounded_integer(from, from), to - from));
        }
        let tasks = tasks.into_iter().map(|(start, minutes)| ArgDisjunctiveTask {
            start_time: start.scaled(1),
            processing_time: minutes,
        });
        let tag = self.solver.new_constraint_tag();
        let rule = pumpkin_constraints::disjunctive_strict(tasks.collect::<Vec<_>>(), tag);
        self.solver.add_constraint(rule).post();
    }

    fn post_finish(&mut self, meter: &Meter) {
        let mut tails = Vec::new();
        for (way, starts) in self.day.ways.iter().zip(&self.starts) {
            for k in (0..starts.len()).filter(|&k| may_be_last(way, k)) {
                tails.push(Tail { start: starts[k], minutes: way.minutes[k], hi: way.hi[k] });
            }
        }
        let tag = self.solver.new_constraint_tag();
        let _ =
            self.solver.add_propagator(FinishArgs { tails, finish: self.finish, tag, meter: meter.clone() });
    }
}

fn jobs_of(uses: &[Use], least: &[i32]) -> Vec<Job> {
    let pairs = uses.iter().zip(least).filter(|(_, least)| **least > 0);
    pairs
        .map(|(one, &least)| Job {
            start: one.start,
            hi: one.hi,
            end: one.end,
            energy: i64::from(one.amount) * i64::from(least),
        })
        .collect()
}

/// A place beyond the horizon for each start, all runs and holds from there apart.
fn absent_places(day: &Day) -> Option<Vec<Vec<i32>>> {
    let mut next = i64::from(day.horizon) + 1;
    let mut places = Vec::new();
    for way in &day.ways {
        let mut row = Vec::new();
        for (k, &minutes) in way.minutes.iter().enumerate() {
            row.push(i32::try_from(next).ok()?);
            let holds = way.takes.iter().filter(|t| t.from == k).map(|t| t.least);
            next += i64::from(holds.fold(minutes, i32::max)) + 1;
        }
        places.push(row);
    }
    (next < PLACE_MAX).then_some(places)
}

/// Whether all takes of a room at once are still within the engine's numbers.
fn has_small_sums(day: &Day) -> bool {
    let amounts = |r: usize| {
        let takes = day.ways.iter().flat_map(|way| &way.takes).filter(move |t| t.room == r);
        takes.map(|t| i64::from(t.amount)).sum::<i64>()
    };
    (0..day.rooms.len()).all(|r| amounts(r) < PLACE_MAX)
}

/// Whether no other step of the way always ends as late.
fn may_be_last(way: &Way, k: usize) -> bool {
    let later = |j: usize| {
        let gap = way.gap[k][j];
        let by = gap.saturating_add(way.minutes[j]) - way.minutes[k];
        // Two steps that always end together: the first of them stands for both.
        gap > NO_PATH && j != k && (by > 0 || (by == 0 && (way.gap[j][k] != -gap || j < k)))
    };
    !(0..way.minutes.len()).any(later)
}

fn read(day: &Day, on: &[DomainId], starts: &[Vec<DomainId>], found: &SolutionReference<'_>) -> Draft {
    let mut draft = Draft::empty(day);
    for (w, way) in day.ways.iter().enumerate() {
        if found.get_integer_value(on[w]) == 1 {
            let starts = starts[w].iter().map(|&x| found.get_integer_value(x)).collect();
            draft.picks[way.project] = Some(Pick { way: w, starts });
        }
    }
    draft
}
