//! Climbs from a draft over sets of ways: puts one way in, takes one or two out, and asks the engine whether that fits.
//!
//! On tight days (one pair of hands, long chains with short waits) the master's totals promise sets that cannot be
//! scheduled, and the greedy calendar cannot place chains that the engine places in a moment. What the engine is good
//! at is one small set and nothing else, so this asks for many of those. Sets that fit are kept at once; those that
//! clash are never asked again, nor any set that contains the clash.

use std::collections::BTreeSet;

use super::day::Day;

/// Sets asked from one draft before the climb rests, at the most.
const MOVES_MAX: usize = 150;
/// Above this share of a room's open minutes a set hardly ever fits; such sets are asked last.
const CROWDED: f64 = 0.94;

/// What the climb remembers.
#[derive(Debug, Default)]
pub(super) struct Climber {
    /// Sets that cannot be scheduled, sorted each.
    clashes: Vec<Vec<usize>>,
    /// Sets that were asked, with the work given.
    asked: BTreeSet<(u32, Vec<usize>)>,
}

/// A set worth asking for.
#[derive(Debug, Clone)]
pub(super) struct Move {
    pub(super) ways: Vec<usize>,
    value: i32,
    crowded: bool,
}

impl Climber {
    /// Remembers a clash.
    pub(super) fn cut(&mut self, ways: &[usize]) {
        let mut ways = ways.to_vec();
        ways.sort_unstable();
        self.clashes.push(ways);
    }

    /// Remembers that a set was asked with the work of a round.
    pub(super) fn note(&mut self, round: u32, ways: &[usize]) {
        self.asked.insert((round, ways.to_vec()));
    }

    /// The sets around `base` that are worth more, those with room to spare first and of these the best first.
    pub(super) fn moves(&self, day: &Day, base: &[usize], round: u32) -> Vec<Move> {
        let worth: i32 = base.iter().map(|&w| day.ways[w].value).sum();
        let mut found: Vec<Move> = Vec::new();
        let mut seen: BTreeSet<Vec<usize>> = BTreeSet::new();
        for w in 0..day.ways.len() {
            if base.contains(&w) {
                continue;
            }
            let rest: Vec<usize> =
                base.iter().copied().filter(|&b| day.ways[b].project != day.ways[w].project).collect();
            for out in droppable(day, &rest) {
                let mut ways: Vec<usize> = rest.iter().copied().filter(|b| !out.contains(b)).collect();
                ways.push(w);
                ways.sort_unstable();
                let value: i32 = ways.iter().map(|&w| day.ways[w].value).sum();
                if value <= worth || !self.is_open(day, &ways, round) || !seen.insert(ways.clone()) {
                    continue;
                }
                let crowded = crowding(day, &ways) > CROWDED;
                found.push(Move { ways, value, crowded });
            }
        }
        found.sort_by(|a, b| {
            (a.crowded, -a.value).cmp(&(b.crowded, -b.value)).then_with(|| a.ways.cmp(&b.ways))
        });
        found.truncate(MOVES_MAX);
        found
    }

    /// Whether a set is not known to clash and was not asked in this round.
    pub(super) fn is_open(&self, day: &Day, ways: &[usize], round: u32) -> bool {
        fits_totals(day, ways)
            && !self.asked.contains(&(round, ways.to_vec()))
            && !self.clashes.iter().any(|clash| clash.iter().all(|w| ways.binary_search(w).is_ok()))
    }
}

/// What may be taken out: nothing, one or two ways whose projects need not be done.
fn droppable(day: &Day, rest: &[usize]) -> Vec<Vec<usize>> {
    let free: Vec<usize> =
        rest.iter().copied().filter(|&w| !day.projects[day.ways[w].project].must).collect();
    let mut out = vec![vec![]];
    for (k, &a) in free.iter().enumerate() {
        out.push(vec![a]);
        out.extend(free[k + 1..].iter().map(|&b| vec![a, b]));
    }
    out
}

/// Whether stock and each room's minutes suffice.
fn fits_totals(day: &Day, ways: &[usize]) -> bool {
    let stock = (0..day.stock.len()).all(|k| {
        ways.iter().map(|&w| i64::from(day.ways[w].uses[k])).sum::<i64>() <= i64::from(day.stock[k])
    });
    stock && crowding(day, ways) <= 1.0
}

/// The share of its open minutes that the busiest room is used for.
fn crowding(day: &Day, ways: &[usize]) -> f64 {
    (0..day.rooms.len())
        .map(|room| {
            let load: i64 = ways.iter().map(|&w| day.ways[w].load(room)).sum();
            let open = day.rooms[room].open_until(day.horizon);
            if load == 0 { 0.0 } else { load as f64 / open.max(1) as f64 }
        })
        .fold(0.0, f64::max)
}
