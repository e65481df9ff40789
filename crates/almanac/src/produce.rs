//! Produce: what people call it, how much a piece or a bushel weighs, how much of it is waste, how long it keeps,
//! how sour it is, and how long the hand work takes.

mod acidity;
mod density;
mod fresh_yield;
mod name;
mod procurement;
mod storage;
mod work_rate;

use std::collections::BTreeMap;
use std::sync::OnceLock;

use crate::row::Reading;
use crate::{FormulaId, ProduceId};

pub use acidity::{AcidityFact, AcidityRow, Ph, PhRange};
pub use density::{Density, DensityMeasure};
pub use fresh_yield::FreshYield;
pub use name::Produce;
pub use procurement::{Container, Procurement};
pub use storage::{FreshStorage, Humidity, KeepingDays, StorageRecord, StorageTemp};
pub use work_rate::{Task, WorkRate, WorkTime};

/// The tables about produce.
#[derive(Debug, Clone, Default)]
pub(crate) struct ProduceTables {
    names: BTreeMap<ProduceId, Produce>,
    by_name: OnceLock<name::ByName>,
    densities: Vec<Density>,
    density_keys: BTreeMap<Box<str>, density::DensityKeys>,
    yields: Vec<FreshYield>,
    storage: Vec<FreshStorage>,
    acidity: Vec<AcidityRow>,
    acidity_facts: Vec<AcidityFact>,
    work_rates: Vec<WorkRate>,
    procurement: Vec<Procurement>,
}

/// One line of `ingredient_produce.csv`: the formula, its ingredient, the produce that may stand for it.
pub(crate) type Accepts = (u64, FormulaId, Box<str>, Vec<ProduceId>);

/// Reads the tables about produce.
pub(crate) fn read_produce(reading: &mut Reading<'_>, is_product: impl Fn(&str) -> bool) -> ProduceTables {
    let densities = density::read_densities(reading);
    let density_keys = density::read_density_keys(reading, &densities);
    let yields = fresh_yield::read_yields(reading);
    let storage = storage::read_storage(reading);
    let (acidity, acidity_facts) = acidity::read_acidity(reading);
    let work_rates = work_rate::read_work_rates(reading);
    let procurement = procurement::read_procurement(reading, is_product);
    let mut tables = ProduceTables {
        names: BTreeMap::new(),
        by_name: OnceLock::new(),
        densities,
        density_keys,
        yields,
        storage,
        acidity,
        acidity_facts,
        work_rates,
        procurement,
    };
    tables.names = name::read_names(reading, &tables);
    tables
}

impl ProduceTables {
    /// Whether a produce is on the list.
    pub(crate) fn knows(&self, id: &ProduceId) -> bool {
        self.names.contains_key(id)
    }
}

pub(crate) use name::read_accepts;
