//! Acid that goes into the jar: bottled lemon juice, citric acid or vinegar, each enough by itself.

use measure::Volume;

use crate::ProductId;
use crate::closed_list::ClosedList;
use crate::jar::JarSize;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

/// Where the acid of a row belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AcidPlace {
    /// It is added jar by jar.
    EachJar,
    /// It is part of the tested formula and may not be reduced.
    InFormula,
}

/// The acid printed for one food and jar. The amounts are alternatives, not a sum.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidRule {
    /// The food.
    pub product: ProductId,
    /// The printed jar: the jar asked about, or the next larger printed one.
    pub jar: JarSize,
    /// Bottled lemon juice; none when that acid is not printed.
    pub lemon: Option<Volume>,
    /// Citric acid, by the spoon; none when that acid is not printed.
    pub citric: Option<Volume>,
    /// Vinegar of 5 percent; none when that acid is not printed.
    pub vinegar: Option<Volume>,
    /// Whether it may not be left out.
    pub mandatory: bool,
    /// Where it belongs.
    pub place: AcidPlace,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// A row that names no jar: what is said about a food, or a whole family of foods, as such.
#[derive(Debug, Clone, PartialEq)]
pub struct AcidRemark {
    /// The food, or a family such as `salsa-any`.
    pub about: Box<str>,
    /// Whether acid may not be left out; its amount is inside the tested formula.
    pub mandatory: bool,
    /// What is said.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Rows of the acid table.
#[derive(Debug, Clone, Default)]
pub(crate) struct AcidRows {
    pub(crate) rules: Vec<(u64, AcidRule)>,
    pub(crate) remarks: Vec<(u64, AcidRemark)>,
}

/// Reads `acidification.csv`. Every rule is read as acid for each jar; the loader marks those inside a formula.
pub(crate) fn read_acid(reading: &mut Reading<'_>) -> AcidRows {
    const COLUMNS: &[&str] = &[
        "product_id",
        "product",
        "jar",
        "bottled_lemon_juice_tbsp",
        "citric_acid_tsp",
        "vinegar_5pct_tbsp",
        "mandatory",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    let mut rows = AcidRows::default();
    let read = reading.rows(Table::Acidification, COLUMNS, |row| {
        let product: ProductId = row.id("product_id");
        let jar = row.maybe_word("jar");
        let lemon = row.maybe_number("bottled_lemon_juice_tbsp").map(Volume::tablespoons);
        let citric = row.maybe_number("citric_acid_tsp").map(Volume::teaspoons);
        let vinegar = row.maybe_number("vinegar_5pct_tbsp").map(Volume::tablespoons);
        let mandatory = row.yes("mandatory");
        let note = row.free_text("note");
        let citation = row.citation();
        if jar.is_some() && lemon.is_none() && citric.is_none() && vinegar.is_none() {
            let what = "a row for a jar names no amount of any acid".to_owned();
            row.contradict(what);
        }
        let place = AcidPlace::EachJar;
        let shown = jar.unwrap_or(JarSize::LIST[0]);
        let rule = AcidRule { product, jar: shown, lemon, citric, vinegar, mandatory, place, note, citation };
        (row.line(), jar.is_some(), rule)
    });
    for (line, names_a_jar, rule) in read {
        if names_a_jar {
            rows.rules.push((line, rule));
        } else {
            let AcidRule { product, mandatory, note, citation, .. } = rule;
            let about = product.as_str().into();
            rows.remarks.push((line, AcidRemark { about, mandatory, note, citation }));
        }
    }
    rows
}
