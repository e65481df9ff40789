//! Which ways could be chosen together, if nothing but totals counted.
//!
//! Every room is a number of unit-minutes, for the whole day and for stretches of it; every stock is a number. Each
//! way takes of them at least its share. Choosing ways of the greatest value within those totals is a small
//! knapsack: every real plan is one of its answers, so its best value bounds the day's. The best set is put to the
//! engine; a set that clashes comes back as a cut and is never proposed again.
//!
//! Depth first over the projects, bounded by prices on the totals (Lagrange multipliers from a subgradient climb).
//! Each partial set climbs on for a few steps from the prices of the one before it, with ways that no longer fit
//! left out; that is what keeps days with many projects within reach. What is not handled: which minutes a way
//! takes, beyond its share of each stretch.

use super::day::{Day, Take, Way};
use super::work::Meter;

/// Looks for sets of ways.
pub(super) struct Master {
    items: Vec<Item>,
    totals: Vec<i64>,
    /// Price of one unit of each total, for the whole day.
    prices: Vec<f64>,
    bound: f64,
    cuts: Vec<Vec<usize>>,
    /// Per way of the day: the cuts that name it.
    cuts_of: Vec<Vec<usize>>,
}

/// A project with its ways.
struct Item {
    must: bool,
    entries: Vec<Entry>,
}

struct Entry {
    way: usize,
    value: i32,
    /// The totals it takes of, and how much.
    takes: Vec<(usize, i64)>,
}

/// A set of ways, and its value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Proposal {
    pub(super) value: i32,
    pub(super) ways: Vec<usize>,
}

/// What a search for sets came to.
#[derive(Debug)]
pub(super) struct Search {
    /// The best first.
    pub(super) best: Vec<Proposal>,
    /// Whether every set was looked at or bounded away; if not, a better one may exist.
    pub(super) complete: bool,
}

/// Stretches of a room's day that get a total of their own, at most so many per room.
const STRETCHES_MAX: usize = 6;
/// Boundaries of stretches are spread over the day so many.
const STRETCH_GRID: i32 = 20;
/// Steps of the climb for prices.
const CLIMB: usize = 1500;
/// Steps without a smaller bound before the climb goes back to the best prices and on more slowly.
const IDLE_MAX: u32 = 25;
/// Steps of the climb at each partial set.
const CLIMB_PER_NODE: usize = 8;
/// Products of amount and price for one step on the work meter.
const WORK_PER_STEP: u64 = 40;

impl Master {
    /// `goal` is a value that is known to be reached: prices are sought that bound the day near it.
    pub(super) fn new(day: &Day, goal: i32, meter: &Meter) -> Master {
        let rows = find_rows(day);
        let mut totals: Vec<i64> = rows.iter().map(|row| row.open(day)).collect();
        totals.extend(day.stock.iter().map(|&n| i64::from(n)));
        let entry = |&w: &usize| {
            let way = &day.ways[w];
            let rooms = rows.iter().map(|row| row.share(way));
            let all = rooms.chain(way.uses.iter().map(|&n| i64::from(n)));
            Entry { way: w, value: way.value, takes: all.enumerate().filter(|t| t.1 > 0).collect() }
        };
        let items =
            day.projects.iter().map(|p| Item { must: p.must, entries: p.ways.iter().map(entry).collect() });
        let items: Vec<Item> = items.filter(|i| i.must || !i.entries.is_empty()).collect();
        let mut climb = Climb::new(&items, totals.clone(), vec![0.0; totals.len()]);
        climb.steps(CLIMB, f64::from(goal), f64::NEG_INFINITY);
        meter.add(climb.work / WORK_PER_STEP);
        let (bound, prices) = climb.best;
        let cuts_of = vec![Vec::new(); day.ways.len()];
        Master { bound, prices, items, totals, cuts: Vec::new(), cuts_of }
    }

    /// No plan is worth more, whatever is cut.
    pub(super) fn bound(&self) -> i32 {
        if self.bound == f64::NEG_INFINITY {
            return -1;
        }
        let most = self.bound + slack(self.bound);
        most.floor().clamp(-1.0, f64::from(i32::MAX)) as i32
    }

    /// Never proposes a set with all of these ways again.
    pub(super) fn cut(&mut self, ways: &[usize]) {
        for &w in ways {
            self.cuts_of[w].push(self.cuts.len());
        }
        self.cuts.push(ways.to_vec());
    }

    /// All ways, those that pay best for what they take first.
    pub(super) fn order(&self) -> Vec<usize> {
        self.order_by(|value, cost| value / (1.0 + cost))
    }

    /// All ways, by what they are worth beyond the price of what they take.
    pub(super) fn order_by_profit(&self) -> Vec<usize> {
        self.order_by(|value, cost| value - cost)
    }

    fn order_by(&self, key: fn(f64, f64) -> f64) -> Vec<usize> {
        let all = self.items.iter().flat_map(|i| &i.entries);
        let keyed = all.map(|e| (key(f64::from(e.value), cost(&e.takes, &self.prices)), e.way));
        let mut keyed: Vec<(f64, usize)> = keyed.collect();
        keyed.sort_by(|a, b| b.0.total_cmp(&a.0));
        keyed.into_iter().map(|k| k.1).collect()
    }

    /// Whether a set is known to clash.
    pub(super) fn is_cut(&self, ways: &[usize]) -> bool {
        self.cuts.iter().any(|cut| cut.iter().all(|w| ways.contains(w)))
    }

    /// The `most` sets of the greatest values above `above`, with at most so many steps of work.
    pub(super) fn search(&self, above: i32, most: usize, work: u64, meter: &Meter) -> Search {
        let mut dive = Dive {
            master: self,
            picked: Vec::new(),
            value: 0,
            in_cut: vec![0; self.cuts.len()],
            above,
            most,
            best: Vec::new(),
            work: work * WORK_PER_STEP,
        };
        // A cut of no ways says that nothing can be chosen at all.
        let complete = self.cuts.iter().any(Vec::is_empty) || {
            let open: Vec<usize> = (0..self.items.len()).collect();
            dive.go(&open, &self.totals, &self.prices)
        };
        meter.add(work - dive.work / WORK_PER_STEP);
        Search { best: dive.best, complete }
    }
}

/// Profit of one entry of an item, or of none of them.
type Branch = (f64, Option<usize>);

/// A partial set, and the best full one so far.
struct Dive<'m> {
    master: &'m Master,
    picked: Vec<usize>,
    value: i32,
    /// Per cut: how many of its ways are picked.
    in_cut: Vec<usize>,
    above: i32,
    most: usize,
    /// The best first.
    best: Vec<Proposal>,
    work: u64,
}

impl Dive<'_> {
    /// Looks at every set that continues the picked one from the open items; false when the work ran out.
    fn go(&mut self, open: &[usize], left: &[i64], prices: &[f64]) -> bool {
        let master = self.master;
        if open.is_empty() {
            if self.value > self.above {
                self.keep();
            }
            return true;
        }
        let items = open.iter().map(|&i| &master.items[i]);
        let mut climb = Climb::new(items, left.to_vec(), prices.to_vec());
        let wanted = f64::from(self.above + 1 - self.value);
        climb.steps(CLIMB_PER_NODE, wanted, wanted);
        let used = climb.work;
        let (most, prices) = climb.best;
        if used >= self.work {
            self.work = 0;
            return false;
        }
        self.work -= used;
        if most == f64::NEG_INFINITY || most + slack(most) < wanted {
            return true;
        }
        let (place, branches) = self.decide(open, left, &prices);
        let mut rest = open.to_vec();
        let item = &master.items[rest.remove(place)];
        let top = branches[0].0;
        for (profit, entry) in branches {
            let most = most - (top - profit);
            if most + slack(most) < f64::from(self.above + 1 - self.value) {
                return true;
            }
            let complete = match entry {
                Some(e) => self.go_with(&item.entries[e], &rest, left, &prices),
                None => self.go(&rest, left, &prices),
            };
            if !complete {
                return false;
            }
        }
        true
    }

    /// Keeps the picked set; once there are enough, only better ones than the last are of interest.
    fn keep(&mut self) {
        let (value, ways) = (self.value, self.picked.clone());
        let place = self.best.partition_point(|set| set.value >= value);
        self.best.insert(place, Proposal { value, ways });
        self.best.truncate(self.most);
        if let Some(last) = self.best.last().filter(|_| self.best.len() == self.most) {
            self.above = last.value;
        }
    }

    /// The open item whose choice is clearest, and its branches, best first.
    fn decide(&self, open: &[usize], left: &[i64], prices: &[f64]) -> (usize, Vec<Branch>) {
        let mut clearest: Option<(f64, usize, Vec<Branch>)> = None;
        for (place, &i) in open.iter().enumerate() {
            let item = &self.master.items[i];
            let fitting = item.entries.iter().enumerate().filter(|(_, e)| fits(e, left));
            let mut branches: Vec<Branch> =
                fitting.map(|(k, e)| (f64::from(e.value) - cost(&e.takes, prices), Some(k))).collect();
            if !item.must {
                branches.push((0.0, None));
            }
            branches.sort_by(|a, b| b.0.total_cmp(&a.0));
            let lead = match branches.as_slice() {
                [] => f64::INFINITY,
                [_] => f64::MAX,
                [a, b, ..] => a.0 - b.0,
            };
            if clearest.as_ref().is_none_or(|c| lead > c.0) {
                clearest = Some((lead, place, branches));
            }
        }
        let (_, place, branches) = clearest.expect("there is an open item");
        (place, branches)
    }

    fn go_with(&mut self, entry: &Entry, rest: &[usize], left: &[i64], prices: &[f64]) -> bool {
        let master = self.master;
        let cuts = &master.cuts_of[entry.way];
        let mut cut = false;
        for &c in cuts {
            self.in_cut[c] += 1;
            cut |= self.in_cut[c] == master.cuts[c].len();
        }
        let mut complete = true;
        if !cut {
            let mut left = left.to_vec();
            entry.takes.iter().for_each(|&(k, n)| left[k] -= n);
            self.picked.push(entry.way);
            self.value += entry.value;
            complete = self.go(rest, &left, prices);
            self.value -= entry.value;
            self.picked.pop();
        }
        for &c in cuts {
            self.in_cut[c] -= 1;
        }
        complete
    }
}

fn fits(entry: &Entry, left: &[i64]) -> bool {
    entry.takes.iter().all(|&(k, n)| n <= left[k])
}

/// A subgradient climb for prices that make the bound small.
struct Climb<'m> {
    /// Per open item: whether it must be done, and the entries that still fit.
    items: Vec<(bool, Vec<&'m Entry>)>,
    left: Vec<f64>,
    prices: Vec<f64>,
    /// The smallest bound so far and its prices.
    best: (f64, Vec<f64>),
    work: u64,
}

impl<'m> Climb<'m> {
    fn new(items: impl IntoIterator<Item = &'m Item>, left: Vec<i64>, prices: Vec<f64>) -> Climb<'m> {
        let fitting = |i: &'m Item| (i.must, i.entries.iter().filter(|e| fits(e, &left)).collect());
        Climb {
            items: items.into_iter().map(fitting).collect(),
            left: left.iter().map(|&n| n as f64).collect(),
            best: (f64::INFINITY, prices.clone()),
            prices,
            work: 0,
        }
    }

    /// Climbs towards `goal`, and no further than below `enough`.
    fn steps(&mut self, steps: usize, goal: f64, enough: f64) {
        let (mut pace, mut idle) = (1.0, 0);
        for _ in 0..steps {
            let (bound, spare) = self.look();
            if bound < self.best.0 {
                self.best = (bound, self.prices.clone());
                idle = 0;
            } else {
                idle += 1;
                if idle == IDLE_MAX {
                    (pace, idle) = (pace * 0.7, 0);
                    self.prices.clone_from(&self.best.1);
                    continue;
                }
            }
            if bound + slack(bound) < enough || bound == f64::NEG_INFINITY {
                return;
            }
            self.step(pace * (bound - goal).max(0.001 * bound.abs()), &spare);
        }
    }

    /// The bound at the present prices, and what would be left of each total.
    fn look(&mut self) -> (f64, Vec<f64>) {
        let mut spare = self.left.clone();
        let mut bound: f64 = spare.iter().zip(&self.prices).map(|(s, p)| s * p).sum();
        for (must, entries) in &self.items {
            let mut top: (f64, Option<&Entry>) = (if *must { f64::NEG_INFINITY } else { 0.0 }, None);
            for entry in entries {
                let profit = f64::from(entry.value) - cost(&entry.takes, &self.prices);
                self.work += entry.takes.len() as u64;
                if profit > top.0 {
                    top = (profit, Some(entry));
                }
            }
            bound += top.0;
            if let Some(entry) = top.1 {
                entry.takes.iter().for_each(|&(k, n)| spare[k] -= n as f64);
            }
        }
        self.work += self.left.len() as u64;
        (bound, spare)
    }

    fn step(&mut self, rise: f64, spare: &[f64]) {
        let pull = |k: usize| spare[k] / self.left[k].max(1.0);
        let active = |k: &usize| spare[*k] < 0.0 || self.prices[*k] > 0.0;
        let norm: f64 = (0..spare.len()).filter(active).map(|k| pull(k) * pull(k)).sum();
        let stride = rise / norm.max(1e-9);
        for k in 0..spare.len() {
            self.prices[k] = (self.prices[k] - stride * pull(k) / self.left[k].max(1.0)).max(0.0);
        }
    }
}

/// A room's unit-minutes within `[from, to)`.
struct Row {
    room: usize,
    from: i32,
    to: i32,
}

impl Row {
    fn open(&self, day: &Day) -> i64 {
        let room = &day.rooms[self.room];
        room.open_until(self.to) - room.open_until(self.from)
    }

    /// What a way takes of it at the least, wherever its steps lie in their windows.
    fn share(&self, way: &Way) -> i64 {
        let takes = way.takes.iter().filter(|t| t.room == self.room);
        takes.map(|t| i64::from(t.amount) * i64::from(self.minutes_within(way, t))).sum()
    }

    fn minutes_within(&self, way: &Way, take: &Take) -> i32 {
        // At its earliest and at its latest the take reaches this far into the stretch; in between, farther.
        let early = way.lo[take.from] + take.least - self.from;
        let late = self.to - way.hi[take.from];
        take.least.min(self.to - self.from).min(early).min(late).max(0)
    }
}

/// The whole day of each room, and the stretches of it that are most sought after.
fn find_rows(day: &Day) -> Vec<Row> {
    let mut rows = Vec::new();
    let step = (day.horizon / STRETCH_GRID).max(1);
    for room in 0..day.rooms.len() {
        let mut stretches: Vec<(f64, Row)> = Vec::new();
        for a in 0..STRETCH_GRID {
            for b in a + 1..=STRETCH_GRID {
                let row = Row {
                    room,
                    from: a * step,
                    to: if b == STRETCH_GRID { day.horizon } else { (b * step).min(day.horizon) },
                };
                if row.from >= row.to || (a == 0 && b == STRETCH_GRID) {
                    continue;
                }
                let sought = day
                    .projects
                    .iter()
                    .map(|p| p.ways.iter().map(|&w| row.share(&day.ways[w])).max().unwrap_or(0));
                let sought: i64 = sought.sum();
                let open = row.open(day);
                if sought > open {
                    stretches.push((sought as f64 / (open as f64 + 1.0), row));
                }
            }
        }
        stretches.sort_by(|a, b| b.0.total_cmp(&a.0));
        rows.push(Row { room, from: 0, to: day.horizon });
        rows.extend(stretches.into_iter().take(STRETCHES_MAX).map(|s| s.1));
    }
    rows
}

fn cost(takes: &[(usize, i64)], prices: &[f64]) -> f64 {
    takes.iter().map(|&(k, n)| n as f64 * prices[k]).sum()
}

/// What rounding may have added to or taken from a bound; always given to the cautious side.
fn slack(bound: f64) -> f64 {
    1e-6 * (1.0 + bound.abs())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::{Choice, Problem, Project, Resource, Step};

    /// Projects of one option each: value, minutes of the one pair of hands.
    fn day(horizon: u32, projects: &[(u32, u32)]) -> Day {
        let project = |(p, &(value, minutes)): (usize, &(u32, u32))| Project {
            id: format!("p{p}"),
            must: false,
            options: vec![Choice {
                id: "only".into(),
                value,
                steps: vec![Step {
                    id: "do".into(),
                    minutes,
                    needs: [("hands".to_owned(), 1)].into(),
                    ..Step::default()
                }],
                ..Choice::default()
            }],
        };
        Day::of(&Problem {
            horizon,
            resources: vec![Resource { id: "hands".into(), capacity: 1, closed: vec![] }],
            projects: projects.iter().enumerate().map(project).collect(),
            ..Problem::default()
        })
    }

    #[test]
    fn the_best_set_fills_the_hands_with_the_greatest_value() {
        let day = day(10, &[(60, 6), (50, 5), (50, 5), (10, 4)]);
        let meter = Meter::default();
        let search = Master::new(&day, 0, &meter).search(-1, 1, 1_000_000, &meter);
        assert!(search.complete);
        assert_eq!(search.best[0].value, 100);
    }

    #[test]
    fn a_cut_set_is_not_proposed_again_and_the_bound_stands() {
        let day = day(10, &[(60, 6), (50, 5), (50, 5), (10, 4)]);
        let meter = Meter::default();
        let mut master = Master::new(&day, 0, &meter);
        assert!(master.bound() >= 100, "{}", master.bound());
        master.cut(&[1, 2]);
        let best = master.search(-1, 1, 1_000_000, &meter).best;
        assert_eq!(best[0].value, 70);
        master.cut(&[]);
        assert_eq!(master.search(-1, 1, 1_000_000, &meter).best, vec![]);
    }

    #[test]
    fn a_search_cut_short_says_so() {
        let day = day(10, &[(60, 6), (50, 5), (50, 5), (10, 4)]);
        let meter = Meter::default();
        assert!(!Master::new(&day, 0, &meter).search(-1, 1, 0, &meter).complete);
    }

    #[test]
    fn a_short_stretch_of_the_day_has_its_own_total() {
        // Both must run within the first ten minutes of a hundred: the whole day has room, that stretch has not.
        let mut day = day(100, &[(7, 8), (5, 8)]);
        for way in &mut day.ways {
            way.hi = vec![2];
        }
        let meter = Meter::default();
        let best = Master::new(&day, 0, &meter).search(-1, 1, 1_000_000, &meter).best;
        assert_eq!(best[0].value, 7);
    }

    #[test]
    fn several_sets_come_best_first_and_none_is_missed() {
        let day = day(10, &[(60, 6), (50, 5), (50, 5), (10, 4)]);
        let meter = Meter::default();
        let master = Master::new(&day, 0, &meter);
        let values = |most| -> Vec<i32> {
            master.search(50, most, 1_000_000, &meter).best.iter().map(|set| set.value).collect()
        };
        // 50 + 50; 60 + 10; twice 50 + 10; 60.
        assert_eq!(values(9), vec![100, 70, 60, 60, 60]);
        assert_eq!(values(2), vec![100, 70]);
    }
}
