//! The first plan: projects one after another in several orders, each fitted as early as it goes.
//!
//! Nothing is proved here. The point is to have a plan to show within milliseconds, whatever the size of the day.

use super::calendar::Calendar;
use super::day::Day;
use super::draft::{Draft, Pick};

/// The best draft over a few orders; `None` when none of them could place everything that must be done.
pub(super) fn first_draft(day: &Day, work: &mut u64) -> Option<Draft> {
    let keys: [fn(&Day, usize) -> f64; 3] = [worth_per_load, worth, fewer_units_first];
    let mut best: Option<Draft> = None;
    for key in keys {
        let mut order: Vec<usize> = (0..day.ways.len()).collect();
        order.sort_by(|&a, &b| key(day, b).total_cmp(&key(day, a)));
        // What must be done goes first: the rest must not crowd it out.
        order.sort_by_key(|&w| !day.projects[day.ways[w].project].must);
        let draft = place_in_order(day, &order, work);
        if draft.keeps_musts(day) && best.as_ref().is_none_or(|b| draft.rank(day) > b.rank(day)) {
            best = Some(draft);
        }
    }
    best
}

/// Fits each way in turn, unless its project already has one.
pub(super) fn place_in_order(day: &Day, order: &[usize], work: &mut u64) -> Draft {
    let mut calendar = Calendar::new(day);
    let mut stock = day.stock.clone();
    let mut draft = Draft::empty(day);
    for &w in order {
        let way = &day.ways[w];
        let there = way.uses.iter().zip(&stock).all(|(uses, left)| uses <= left);
        if !there || draft.picks[way.project].is_some() {
            continue;
        }
        if let Some(starts) = calendar.fit(way, work) {
            calendar.book(way, &starts);
            stock.iter_mut().zip(&way.uses).for_each(|(left, uses)| *left -= uses);
            draft.picks[way.project] = Some(Pick { way: w, starts });
        }
    }
    draft
}

/// Takes each pick out in turn and fits it again as early as it goes, while that makes the draft better.
pub(super) fn tighten(day: &Day, draft: &mut Draft, work: &mut u64) {
    let mut calendar = Calendar::new(day);
    for pick in draft.chosen() {
        calendar.book(&day.ways[pick.way], &pick.starts);
    }
    let mut better = true;
    while better {
        better = false;
        for p in 0..draft.picks.len() {
            let Some(old) = draft.picks[p].clone() else {
                continue;
            };
            let way = &day.ways[old.way];
            let before = draft.rank(day);
            calendar.release(way, &old.starts);
            let fitted = calendar.fit(way, work);
            draft.picks[p] = fitted.map(|starts| Pick { way: old.way, starts });
            if draft.picks[p].is_some() && draft.rank(day) > before {
                better = true;
            } else {
                draft.picks[p] = Some(old);
            }
            if let Some(pick) = &draft.picks[p] {
                calendar.book(way, &pick.starts);
            }
        }
    }
}

/// Value for the share of the scarcest room or stock that a way takes.
fn worth_per_load(day: &Day, w: usize) -> f64 {
    f64::from(day.ways[w].value) / (0.01 + greatest_share(day, w))
}

fn worth(day: &Day, w: usize) -> f64 {
    f64::from(day.ways[w].value)
}

fn fewer_units_first(day: &Day, w: usize) -> f64 {
    -greatest_share(day, w)
}

fn greatest_share(day: &Day, w: usize) -> f64 {
    let way = &day.ways[w];
    let rooms = day.rooms.iter().enumerate().map(|(r, room)| {
        let open = room.open_until(day.horizon).max(1);
        way.load(r) as f64 / open as f64
    });
    let stocks =
        way.uses.iter().zip(&day.stock).map(|(&uses, &there)| f64::from(uses) / f64::from(there.max(1)));
    rooms.chain(stocks).fold(0.0, f64::max)
}
