//! What to eat first: what has not sealed, then what is past its date, then the oldest.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::Date;

use crate::Id;

use super::lots::{Lot, Lots};

/// Where a lot stands in the row.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    /// Those with containers that have not sealed come first.
    all_sealed: bool,
    /// The date of the oldest part; a lot of unknown age comes before all others.
    oldest: Option<Date>,
    /// Until when it is best.
    eat_by: Option<Date>,
}

/// Lots with something left, in the order in which they are to be eaten.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct EatFirst {
    row: BTreeSet<(Rank, Id)>,
    by_date: BTreeSet<(Date, Id)>,
    ranks: BTreeMap<Id, Rank>,
}

impl EatFirst {
    /// Draws the row from the lots.
    #[must_use]
    pub fn rebuild(lots: &Lots) -> Self {
        let mut row = Self::default();
        for (id, lot) in lots.iter() {
            row.refresh(id, Some(lot));
        }
        row
    }

    /// The lots to eat first, as of a day: what has not sealed, what is past its date, then by age.
    pub fn in_order(&self, today: Date) -> impl Iterator<Item = Id> {
        let unsealed = self.row.iter().take_while(|(rank, _)| !rank.all_sealed).map(|(_, id)| *id);
        let is_sealed = |id: &Id| self.ranks.get(id).is_some_and(|rank| rank.all_sealed);
        let is_past = move |rank: &Rank| rank.eat_by.is_some_and(|date| date < today);
        let past = self
            .by_date
            .iter()
            .take_while(move |(date, _)| *date < today)
            .map(|(_, id)| *id)
            .filter(is_sealed);
        let rest =
            self.row.iter().filter(move |(rank, _)| rank.all_sealed && !is_past(rank)).map(|(_, id)| *id);
        unsealed.chain(past).chain(rest)
    }

    pub(crate) fn refresh(&mut self, id: Id, lot: Option<&Lot>) {
        if let Some(rank) = self.ranks.remove(&id) {
            self.row.remove(&(rank, id));
            rank.eat_by.map(|date| self.by_date.remove(&(date, id)));
        }
        let Some(lot) = lot else { return };
        let stock = lot.total();
        if stock.count == 0 {
            return;
        }
        let rank = Rank {
            all_sealed: stock.unsealed == 0,
            oldest: lot.oldest().map(|date| date.earliest()),
            eat_by: lot.put_up().and_then(|put_up| put_up.eat_by).map(|date| date.earliest()),
        };
        self.ranks.insert(id, rank);
        self.row.insert((rank, id));
        rank.eat_by.map(|date| self.by_date.insert((date, id)));
    }
}
