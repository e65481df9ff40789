//! The produce people bring in: its names, and where each other table speaks of it.

use std::collections::BTreeMap;

use measure::Mass;

use super::density::DensityMeasure;
use super::procurement::Container;
use super::{Accepts, ProduceTables};
use crate::fault::DataProblem;
use crate::load::keyed;
use crate::matching::{Match, match_name};
use crate::row::{Reading, Row};
use crate::source::Citation;
use crate::tables::Table;
use crate::words::{Stems, stems_of};
use crate::{Almanac, Ingredient, ProduceId};

/// A kind of produce.
#[derive(Debug, Clone, PartialEq)]
pub struct Produce {
    /// Its name in the tables.
    pub id: ProduceId,
    /// Its name for people, in the plural.
    pub name: Box<str>,
    /// Other names for it.
    pub aliases: Vec<Box<str>>,
    /// What a piece of middling size weighs once trimmed; none when no table says.
    pub each_edible: Option<Mass>,
    /// What such a piece weighs as it comes; none when no table says. Worked out from the trimmed weight and the
    /// share that is edible.
    pub each_as_purchased: Option<Mass>,
    /// What it is sold in by the bushel or crate, and what that weighs.
    pub containers: Vec<(Container, Mass)>,
    pub(super) density_key: Option<Box<str>>,
    pub(super) yield_key: Option<Box<str>>,
    pub(super) storage_keys: Vec<Box<str>>,
    pub(super) work_words: Vec<Box<str>>,
    /// Where the names come from.
    pub citation: Citation,
}

/// Produce by the stems of each of its names; none where two share them.
pub(super) type ByName = BTreeMap<Stems, Option<ProduceId>>;

/// Reads `names.csv` and follows its keys into the other tables.
pub(super) fn read_names(reading: &mut Reading<'_>, tables: &ProduceTables) -> BTreeMap<ProduceId, Produce> {
    const COLUMNS: &[&str] = &[
        "produce_id",
        "name",
        "aliases",
        "density_key",
        "each_form",
        "yield_key",
        "storage_keys",
        "work_words",
        "container_product_id",
        "source_id",
        "locator",
        "basis",
    ];
    let rows = reading.rows(Table::ProduceNames, COLUMNS, |row| {
        let id = row.id("produce_id");
        let name = row.text("name").into();
        let aliases = row.names("aliases");
        let densities = &tables.densities;
        let density_key = known_key(row, "density_key", Table::Densities, |key| {
            densities.iter().any(|density| &*density.ingredient == key)
        });
        let each_edible = piece_of(row, density_key.as_deref(), tables);
        let yield_key = known_key(row, "yield_key", Table::FreshYields, |key| {
            tables.yields.iter().any(|known| &*known.produce == key)
        });
        let storage_keys = known_keys(row, "storage_keys", Table::FreshStorage, |key| {
            tables.storage.iter().any(|known| &*known.produce == key)
        });
        let work_words = known_keys(row, "work_words", Table::WorkRates, |word| {
            tables.work_rates.iter().any(|known| known.produce.starts_with(word))
        });
        let sold_as = known_key(row, "container_product_id", Table::Procurement, |key| {
            tables.procurement.iter().any(|known| known.product.as_str() == key)
        });
        let containers = tables
            .procurement
            .iter()
            .filter(|known| sold_as.as_deref() == Some(known.product.as_str()))
            .filter_map(|known| known.container)
            .collect();
        let fresh = tables.yields.iter().find(|known| yield_key.as_deref() == Some(&*known.produce));
        let each_as_purchased = each_edible.zip(fresh).map(|(piece, fresh)| fresh.as_purchased_for(piece));
        let citation = row.citation();
        let produce = Produce {
            id,
            name,
            aliases,
            each_edible,
            each_as_purchased,
            containers,
            density_key,
            yield_key,
            storage_keys,
            work_words,
            citation,
        };
        (row.line(), produce)
    });
    keyed(reading, Table::ProduceNames, rows, |produce| produce.id.clone())
}

/// What a piece weighs, by the form named in the row.
fn piece_of(row: &mut Row<'_>, key: Option<&str>, tables: &ProduceTables) -> Option<Mass> {
    let form = row.cell("each_form");
    if form.is_empty() {
        return None;
    }
    let of_form = tables.densities.iter().find(|density| {
        density.measure == DensityMeasure::Each && &*density.form == form && key == Some(&*density.ingredient)
    });
    if of_form.is_none() {
        let (text, table) = (form.to_owned(), Table::Densities.file());
        row.spoil(DataProblem::UnknownKey { column: "each_form", text, table });
    }
    of_form.map(super::Density::mass)
}

fn known_key(
    row: &mut Row<'_>,
    column: &'static str,
    table: Table,
    known: impl Fn(&str) -> bool,
) -> Option<Box<str>> {
    known_keys(row, column, table, known).into_iter().next()
}

fn known_keys(
    row: &mut Row<'_>,
    column: &'static str,
    table: Table,
    known: impl Fn(&str) -> bool,
) -> Vec<Box<str>> {
    let keys: Vec<Box<str>> = row.names(column);
    for key in keys.iter().filter(|key| !known(key)) {
        let (text, table) = (key.to_string(), table.file());
        row.spoil(DataProblem::UnknownKey { column, text, table });
    }
    keys
}

/// Reads `ingredient_produce.csv`.
pub(crate) fn read_accepts(reading: &mut Reading<'_>, produce: &ProduceTables) -> Vec<Accepts> {
    const COLUMNS: &[&str] =
        &["formula_id", "ingredient", "produce_ids", "note", "source_id", "locator", "basis"];
    reading.rows(Table::IngredientProduce, COLUMNS, |row| {
        let formula = row.id("formula_id");
        let ingredient = row.text("ingredient").into();
        let accepted: Vec<ProduceId> = row.names("produce_ids");
        for id in accepted.iter().filter(|id| !produce.knows(id)) {
            let (text, table) = (id.to_string(), Table::ProduceNames.file());
            row.spoil(DataProblem::UnknownKey { column: "produce_ids", text, table });
        }
        let note = row.cell("note");
        if accepted.is_empty() != (note == "bought ready") {
            let what = "a line names produce or is bought ready".to_owned();
            row.contradict(what);
        }
        row.citation();
        (row.line(), formula, ingredient, accepted)
    })
}

impl Almanac {
    /// Every kind of produce, in the order of the ids.
    pub fn produce_list(&self) -> impl Iterator<Item = &Produce> {
        self.produce.names.values()
    }

    /// A kind of produce.
    #[must_use]
    pub fn produce(&self, id: &ProduceId) -> Option<&Produce> {
        self.produce.names.get(id)
    }

    /// The produce a person means.
    #[must_use]
    pub fn find_produce(&self, typed: &str) -> Match<'_, Produce> {
        if let Some(named) = self.produce_named(typed) {
            return Match::One(named);
        }
        match_name(typed, self.produce.names.values(), |produce| {
            let names = [produce.id.as_str(), &*produce.name];
            names.into_iter().chain(produce.aliases.iter().map(|alias| &**alias)).collect()
        })
    }
}

impl Almanac {
    /// The produce of which this is a whole name; none when it is of none, or of several.
    pub(super) fn produce_named(&self, name: &str) -> Option<&Produce> {
        let by_name = self.produce.by_name.get_or_init(|| {
            let mut by_name = ByName::new();
            for produce in self.produce.names.values() {
                let names = [produce.id.as_str(), &*produce.name];
                for name in names.into_iter().chain(produce.aliases.iter().map(|alias| &**alias)) {
                    let known = by_name.entry(stems_of(name)).or_insert_with(|| Some(produce.id.clone()));
                    if known.as_ref().is_some_and(|known| *known != produce.id) {
                        *known = None;
                    }
                }
            }
            by_name
        });
        by_name.get(&stems_of(name))?.as_ref().and_then(|id| self.produce(id))
    }
}

impl Ingredient {
    /// Whether a kind of produce may stand for this line.
    #[must_use]
    pub fn accepts(&self, produce: &ProduceId) -> bool {
        self.accepts.contains(produce)
    }
}
