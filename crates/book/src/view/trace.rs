//! From one bad jar to everything that touched it, and to every sister container and whoever has it.

use std::collections::BTreeSet;

use crate::act::{Act, Line};
use crate::{Id, ItemId};

use super::all::Views;
use super::lots::Lot;

/// A lot that shares something with another.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sister {
    /// The lot.
    pub lot: Id,
    /// Whether a load is shared: the jars stood in one canner.
    pub same_load: bool,
    /// Whether the batch is shared: the food came out of one pot.
    pub same_batch: bool,
    /// Bottles, bags, boxes and gauges that are shared.
    pub same_items: BTreeSet<ItemId>,
    /// Baskets that are shared.
    pub same_baskets: BTreeSet<Id>,
}

/// What a lot came from.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Trace {
    /// The batch.
    pub batch: Option<Id>,
    /// The loads.
    pub loads: BTreeSet<Id>,
    /// Baskets.
    pub baskets: BTreeSet<Id>,
    /// Lids, salt, vinegar, canner, gauge.
    pub items: BTreeSet<ItemId>,
    /// Lots it was made of.
    pub from_lots: BTreeSet<Id>,
    /// Lots that share something with it: those of one load or batch first.
    pub sisters: Vec<Sister>,
}

/// Follows a lot back, and from there to its sisters; `None` if there is no such lot.
#[must_use]
pub fn trace_lot(views: &Views, id: Id) -> Option<Trace> {
    let mut trace = find_roots(views, views.lots.find(id)?)?;
    for (other_id, other) in views.lots.iter().filter(|(other, _)| *other != id) {
        let Some(roots) = find_roots(views, other) else { continue };
        let sister = Sister {
            lot: other_id,
            same_load: !roots.loads.is_disjoint(&trace.loads),
            same_batch: roots.batch.is_some() && roots.batch == trace.batch
                || roots.from_lots.contains(&id)
                || trace.from_lots.contains(&other_id),
            same_items: roots.items.intersection(&trace.items).cloned().collect(),
            same_baskets: roots.baskets.intersection(&trace.baskets).copied().collect(),
        };
        let is_sister = sister.same_load
            || sister.same_batch
            || !sister.same_items.is_empty()
            || !sister.same_baskets.is_empty();
        if is_sister {
            trace.sisters.push(sister);
        }
    }
    trace.sisters.sort_by_key(|sister| (!sister.same_load, !sister.same_batch, sister.lot));
    Some(trace)
}

/// What one lot came from, without its sisters.
fn find_roots(views: &Views, lot: &Lot) -> Option<Trace> {
    let put_up = lot.put_up()?;
    let mut trace = Trace {
        batch: put_up.batch,
        loads: put_up.loads.iter().copied().collect(),
        items: put_up.supplies.iter().cloned().collect(),
        from_lots: put_up.from_lots.iter().copied().collect(),
        ..Trace::default()
    };
    for load in put_up.loads.iter().filter_map(|load| views.batches.find_load(*load)?.begun()) {
        trace.items.extend(load.appliance.iter().chain(&load.gauge).cloned());
        trace.batch = trace.batch.or(load.batch);
    }
    if let Some(batch) = trace.batch.and_then(|batch| views.batches.find(batch)) {
        let used = batch.did().iter().filter_map(|act| match &act.entry.act {
            Act::AmountUsed(used) => Some(&used.line),
            _ => None,
        });
        for line in batch.work().into_iter().flat_map(|work| &work.lines).chain(used) {
            let Line { basket, supply, .. } = line;
            trace.baskets.extend(basket);
            trace.items.extend(supply.clone());
        }
    }
    for top_up in lot.top_ups() {
        if let Act::ToppedUp(topped) = &top_up.entry.act {
            trace.baskets.extend(topped.basket);
        }
    }
    Some(trace)
}
