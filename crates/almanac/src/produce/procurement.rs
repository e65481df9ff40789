//! How much produce fills a canner load, and what a bushel of it weighs.

use measure::Mass;

use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, ProductId};

closed_list!(
    /// What produce is sold in.
    Container {
        /// A bushel.
        Bushel = "bushel",
        /// A lug.
        Lug = "lug",
        /// A crate.
        Crate = "crate",
        /// A crate of 24 quart boxes.
        Crate24 = "24-quart crate",
        /// A bag of 50 lb.
        Bag50 = "50 lb bag",
    }
);

/// How much produce a food takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Procurement {
    /// The food it becomes.
    pub product: ProductId,
    /// The produce, as printed.
    pub produce: Box<str>,
    /// What it is sold in, and what that weighs.
    pub container: Option<(Container, Mass)>,
    /// For one quart.
    pub per_quart: Option<Mass>,
    /// For a canner load of 7 quarts.
    pub per_quart_load: Option<Mass>,
    /// For a canner load of 9 pints.
    pub per_pint_load: Option<Mass>,
    /// Quarts that a container gives, from the least to the most.
    pub quarts: Option<(u32, u32)>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `procurement.csv`.
pub(super) fn read_procurement(
    reading: &mut Reading<'_>,
    is_product: impl Fn(&str) -> bool,
) -> Vec<Procurement> {
    const COLUMNS: &[&str] = &[
        "product_id",
        "produce",
        "container",
        "container_lb",
        "lb_per_quart",
        "lb_per_7qt_load",
        "lb_per_9pt_load",
        "yield_min_qt",
        "yield_max_qt",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Procurement, COLUMNS, |row| {
        let product: ProductId = row.id("product_id");
        if !is_product(product.as_str()) {
            let (text, table) = (product.to_string(), "a process table");
            row.spoil(DataProblem::UnknownKey { column: "product_id", text, table });
        }
        let produce = row.text("produce").into();
        let container = row.maybe_word("container");
        let weight = row.maybe_number("container_lb").map(Mass::pounds);
        if container.is_some() != weight.is_some() {
            row.contradict("a container needs a weight".to_owned());
        }
        Procurement {
            product,
            produce,
            container: container.zip(weight),
            per_quart: row.maybe_number("lb_per_quart").map(Mass::pounds),
            per_quart_load: row.maybe_number("lb_per_7qt_load").map(Mass::pounds),
            per_pint_load: row.maybe_number("lb_per_9pt_load").map(Mass::pounds),
            quarts: row.maybe_count("yield_min_qt").zip(row.maybe_count("yield_max_qt")),
            note: row.free_text("note"),
            citation: row.citation(),
        }
    })
}

impl Almanac {
    /// Every row on how much produce a food takes.
    #[must_use]
    pub fn procurement(&self) -> &[Procurement] {
        &self.produce.procurement
    }

    /// The rows for a food.
    pub fn find_procurement(&self, product: &ProductId) -> impl Iterator<Item = &Procurement> {
        self.produce.procurement.iter().filter(move |row| row.product == *product)
    }
}
