//! Which family of change rules a food goes by when no formula on file makes it.

use crate::fault::DataProblem;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, FormulaClass, ProductId};

/// The families of one food, and the printed page by which it was put there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodFamily {
    /// The food of the process tables.
    pub product: ProductId,
    /// Its families; several where it may be any of them, and then the strictest rule stands.
    pub classes: Vec<FormulaClass>,
    /// The page; the reading of it is ours.
    pub citation: Citation,
}

impl Almanac {
    /// The families of a food that no formula on file makes; none for a food whose family is not known, for which no
    /// family permits anything.
    #[must_use]
    pub fn families_of(&self, product: &ProductId) -> &[FormulaClass] {
        self.families.iter().find(|row| row.product == *product).map_or(&[], |row| &row.classes)
    }

    /// Every food with a family of its own, as the table lists them.
    #[must_use]
    pub fn food_families(&self) -> &[FoodFamily] {
        &self.families
    }
}

/// Reads `food_families.csv`; the check needs to know which foods there are.
pub(crate) fn read_families(
    reading: &mut Reading<'_>,
    is_product: impl Fn(&str) -> bool,
) -> Vec<(u64, FoodFamily)> {
    const COLUMNS: &[&str] = &["product_id", "class", "source_id", "locator", "basis"];
    reading.rows(Table::FoodFamilies, COLUMNS, |row| {
        let product: ProductId = row.id("product_id");
        if !is_product(product.as_str()) {
            let (text, table) = (product.to_string(), "a process table");
            row.spoil(DataProblem::UnknownKey { column: "product_id", text, table });
        }
        let family = FoodFamily { product, classes: row.words("class", "|"), citation: row.citation() };
        (row.line(), family)
    })
}
