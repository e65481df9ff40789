//! Which ways could be chosen together, if nothing but totals counted.
//!
//! Every room is a number of unit-minutes, for the whole day and for stretches of it; every stock is a number. Each
//! way takes of them at least its share. Choosing ways of the greatest value within those totals is a small
//! knapsack: every real plan is one of its answers, so its best value bounds the day's. The best set is put to the
//! engine; a set that clashes comes back as a cut and is never proposed again.
//!
//! Depth first over the projects, bounded by prices on the totals (Lagrange multipliers from a subgradient climb,
//! made once). What is not handled: which minutes a way takes, beyond its share of each stretch.

use super::day::{Day, Take, Way};
use super::work::Meter;

/// Looks for sets of ways.
pub(super) struct Master {
    items: Vec<Item>,
    totals: Vec<i64>,
    /// Price of one unit of each total.
    prices: Vec<f64>,
    /// The most that the items from here on can add over the prices of what they take.
    rest: Vec<f64>,
    cuts: Vec<Vec<usize>>,
    /// Per way of the day: the cuts that name it.
    cuts_of: Vec<Vec<usize>>,
}

/// A project with its ways, the most promising first.
struct Item {
    must: bool,
    entries: Vec<Entry>,
}

struct Entry {
    way: usize,
    value: i32,
    /// The totals it takes of, and how much.
    takes: Vec<(usize, i64)>,
    /// Value less the price of what it takes.
    profit: f64,
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
    pub(super) best: Option<Proposal>,
    /// Whether every set was looked at or bounded away; if not, a better one may exist.
    pub(super) complete: bool,
}

/// Stretches of a room's day that get a total of their own, at most so many per room.
const STRETCHES_MAX: usize = 6;
/// Boundaries of stretches are spread over the day so many.
const STRETCH_GRID: i32 = 20;
/// Steps of the climb for prices.
const CLIMB: usize = 1500;
/// What a node of the search costs on the work meter.
const NODE_COST: u64 = 4;

impl Master {
    pub(super) fn new(day: &Day, meter: &Meter) -> Master {
        let rows = find_rows(day);
        let mut totals: Vec<i64> = rows.iter().map(|row| row.open(day)).collect();
        totals.extend(day.stock.iter().map(|&n| i64::from(n)));
        let entry = |&w: &usize| {
            let way = &day.ways[w];
            let rooms = rows.iter().map(|row| row.share(way));
            let all = rooms.chain(way.uses.iter().map(|&n| i64::from(n)));
            Entry {
                way: w,
                value: way.value,
                takes: all.enumerate().filter(|t| t.1 > 0).collect(),
                profit: 0.0,
            }
        };
        let items =
            day.projects.iter().map(|p| Item { must: p.must, entries: p.ways.iter().map(entry).collect() });
        let mut items: Vec<Item> = items.filter(|i| i.must || !i.entries.is_empty()).collect();
        let prices = climb(&items, &totals);
        meter.add((CLIMB * day.ways.len()) as u64);
        for item in &mut items {
            for entry in &mut item.entries {
                entry.profit = f64::from(entry.value) - cost(&entry.takes, &prices);
            }
            item.entries.sort_by(|a, b| b.profit.total_cmp(&a.profit));
        }
        let weight = |i: &Item| i.entries.iter().map(|e| e.profit.abs()).fold(0.0, f64::max);
        items.sort_by(|a, b| weight(b).total_cmp(&weight(a)));
        let mut rest = vec![0.0; items.len() + 1];
        for (i, item) in items.iter().enumerate().rev() {
            rest[i] = rest[i + 1] + item.most();
        }
        Master { items, totals, prices, rest, cuts: Vec::new(), cuts_of: vec![Vec::new(); day.ways.len()] }
    }

    /// No plan is worth more, whatever is cut.
    pub(super) fn bound(&self) -> i32 {
        let paid: f64 = self.totals.iter().zip(&self.prices).map(|(&t, p)| t as f64 * p).sum();
        let most = self.rest[0] + paid;
        (most + slack(most)).floor().clamp(-1.0, f64::from(i32::MAX)) as i32
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
        let mut all: Vec<&Entry> = self.items.iter().flat_map(|i| &i.entries).collect();
        let rate = |e: &Entry| f64::from(e.value) / (1.0 + f64::from(e.value) - e.profit);
        all.sort_by(|a, b| rate(b).total_cmp(&rate(a)));
        all.iter().map(|e| e.way).collect()
    }

    /// All ways, by what they are worth beyond the price of what they take.
    pub(super) fn order_by_profit(&self) -> Vec<usize> {
        let mut all: Vec<&Entry> = self.items.iter().flat_map(|i| &i.entries).collect();
        all.sort_by(|a, b| b.profit.total_cmp(&a.profit));
        all.iter().map(|e| e.way).collect()
    }

    /// The set of the greatest value above `above`, looking at `nodes` partial sets at the most.
    pub(super) fn search(&self, above: i32, nodes: u64, meter: &Meter) -> Search {
        let mut dive = Dive {
            master: self,
            left: self.totals.clone(),
            picked: Vec::new(),
            value: 0,
            in_cut: vec![0; self.cuts.len()],
            above,
            best: None,
            nodes,
        };
        // A cut of no ways says that nothing can be chosen at all.
        let complete = if self.cuts.iter().any(Vec::is_empty) { true } else { dive.go(0) };
        meter.add((nodes - dive.nodes) * NODE_COST);
        Search { best: dive.best, complete }
    }
}

impl Item {
    /// The most it can add: one of its ways, or nothing where that is allowed.
    fn most(&self) -> f64 {
        let least = if self.must { f64::NEG_INFINITY } else { 0.0 };
        self.entries.iter().map(|e| e.profit).fold(least, f64::max)
    }
}

/// A partial set, and the best full one so far.
struct Dive<'m> {
    master: &'m Master,
    left: Vec<i64>,
    picked: Vec<usize>,
    value: i32,
    /// Per cut: how many of its ways are picked.
    in_cut: Vec<usize>,
    above: i32,
    best: Option<Proposal>,
    nodes: u64,
}

impl Dive<'_> {
    /// Looks at every set that continues the picked one from item `i`; false when the nodes ran out.
    fn go(&mut self, i: usize) -> bool {
        if self.nodes == 0 {
            return false;
        }
        self.nodes -= 1;
        let master = self.master;
        let Some(item) = master.items.get(i) else {
            if self.value > self.above {
                self.above = self.value;
                let (value, ways) = (self.value, self.picked.clone());
                self.best = Some(Proposal { value, ways });
            }
            return true;
        };
        let paid: f64 = self.left.iter().zip(&master.prices).map(|(&l, p)| l as f64 * p).sum();
        let most = f64::from(self.value) + master.rest[i] + paid;
        if most + slack(most) < f64::from(self.above) + 1.0 {
            return true;
        }
        let mut without = !item.must;
        for entry in &item.entries {
            if without && entry.profit <= 0.0 {
                without = false;
                if !self.go(i + 1) {
                    return false;
                }
            }
            if !self.go_with(i, entry) {
                return false;
            }
        }
        !without || self.go(i + 1)
    }

    fn go_with(&mut self, i: usize, entry: &Entry) -> bool {
        if entry.takes.iter().any(|&(k, n)| self.left[k] < n) {
            return true;
        }
        let master = self.master;
        let cuts = &master.cuts_of[entry.way];
        let mut cut = false;
        for &c in cuts {
            self.in_cut[c] += 1;
            cut |= self.in_cut[c] == master.cuts[c].len();
        }
        let mut complete = true;
        if !cut {
            entry.takes.iter().for_each(|&(k, n)| self.left[k] -= n);
            self.picked.push(entry.way);
            self.value += entry.value;
            complete = self.go(i + 1);
            self.value -= entry.value;
            self.picked.pop();
            entry.takes.iter().for_each(|&(k, n)| self.left[k] += n);
        }
        for &c in cuts {
            self.in_cut[c] -= 1;
        }
        complete
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

/// Prices that make the bound small: a subgradient climb of fixed length, the best prices kept.
fn climb(items: &[Item], totals: &[i64]) -> Vec<f64> {
    let size: Vec<f64> = totals.iter().map(|&t| t.max(1) as f64).collect();
    let mut prices = vec![0.0; totals.len()];
    let mut best = (f64::INFINITY, prices.clone());
    let mut pace = 1.0;
    for round in 0..CLIMB {
        let mut spare: Vec<f64> = totals.iter().map(|&t| t as f64).collect();
        let mut bound: f64 = spare.iter().zip(&prices).map(|(s, p)| s * p).sum();
        for item in items {
            let profit = |e: &Entry| f64::from(e.value) - cost(&e.takes, &prices);
            let top = item.entries.iter().map(|e| (profit(e), e)).max_by(|a, b| a.0.total_cmp(&b.0));
            if let Some((profit, entry)) = top.filter(|t| item.must || t.0 > 0.0) {
                bound += profit;
                entry.takes.iter().for_each(|&(k, n)| spare[k] -= n as f64);
            }
        }
        if bound < best.0 {
            best = (bound, prices.clone());
        } else if round % 30 == 29 {
            pace *= 0.85;
        }
        let pull: Vec<f64> = spare.iter().zip(&size).map(|(s, z)| s / z).collect();
        let norm = pull.iter().map(|x| x * x).sum::<f64>().max(1e-9);
        for (k, price) in prices.iter_mut().enumerate() {
            *price = (*price - pace * 0.05 * bound.abs() * pull[k] / norm / size[k]).max(0.0);
        }
    }
    best.1
}

fn cost(takes: &[(usize, i64)], prices: &[f64]) -> f64 {
    takes.iter().map(|&(k, n)| n as f64 * prices[k]).sum()
}

/// What rounding may have added to or taken from a bound; always given to the cautious side.
fn slack(bound: f64) -> f64 {
    1e-6 * (1.0 + bound.abs())
}
