//! What every look at a candidate needs: the tables, the day, and what there is of everything.

use std::collections::BTreeMap;

use almanac::{Almanac, JarSize};
use batch::fit::CannerLoad;

use super::limits;
use crate::day::{Basket, Condition, Day};

/// The tables, the day and its stock.
#[derive(Debug, Clone)]
pub(crate) struct Setting<'a> {
    pub(crate) almanac: &'a Almanac,
    pub(crate) day: &'a Day,
    /// What there is to be used up, by stock line.
    pub(crate) stock: BTreeMap<String, u32>,
}

impl<'a> Setting<'a> {
    /// The setting of a day.
    pub(crate) fn of(almanac: &'a Almanac, day: &'a Day) -> Self {
        Self { almanac, day, stock: limits::stock_of(day) }
    }

    /// The share of a basket that is left when bad parts are cut away.
    pub(crate) fn sound_share(&self, basket: &Basket) -> f64 {
        basket
            .condition
            .iter()
            .filter_map(|condition| self.almanac.find_condition(condition_word(*condition)))
            .map(|row| 1.0 - row.loss.as_fraction())
            .product()
    }

    /// What a canner of the house holds: as the owner found it, else the lower printed load.
    pub(crate) fn canner_load(&self, at: usize) -> CannerLoad {
        let canner = &self.day.canners[at];
        let mut holds: BTreeMap<JarSize, u32> = BTreeMap::new();
        for jar in self.almanac.jars() {
            let printed = if canner.kind.is_pressure() { jar.pressure_load } else { jar.boiling_water_load };
            if let Some(load) = printed {
                holds.insert(jar.size, load.low);
            }
        }
        holds.extend(canner.holds.iter().copied());
        CannerLoad { id: canner.id.clone(), kind: canner.kind, holds }
    }

    /// The first stock line of which an option takes more than there is, with what it takes and what there is.
    pub(crate) fn first_short(&self, consumes: &BTreeMap<String, u32>) -> Option<(String, u32, u32)> {
        consumes.iter().find_map(|(line, &needs)| {
            let there = *self.stock.get(line)?;
            (needs > there).then(|| (line.clone(), needs, there))
        })
    }
}

/// The word of a condition in the tables and in day files.
pub(crate) fn condition_word(condition: Condition) -> &'static str {
    match condition {
        Condition::Sound => "sound",
        Condition::Split => "split",
        Condition::Bruised => "bruised",
        Condition::Overgrown => "overgrown",
        Condition::Unripe => "unripe",
        Condition::Ripe => "ripe",
        Condition::Soft => "soft",
        Condition::Fallen => "fallen",
        Condition::Limp => "limp",
        Condition::Cut => "cut",
        Condition::Frozen => "frozen",
        Condition::Frosted => "frosted",
        Condition::Bought => "bought",
    }
}
