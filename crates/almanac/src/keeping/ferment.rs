//! Ferments: bands of salt and of temperature, signs, and where the finished ferment goes.

use super::figure::KeepingUnit;
use super::phrases::{Phrases, askable};
use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, ProductId, RuleId};

closed_list!(
    /// What a rule for ferments is for.
    FermentTopic {
        /// A band of salt.
        Salt = "salt",
        /// A brine of fixed proportion.
        Brine = "brine",
        /// What salt never is.
        SaltNever = "salt-never",
        /// A band of temperature.
        Temperature = "temperature",
        /// How long it takes.
        Time = "time",
        /// A sign.
        Sign = "sign",
        /// A pH that closes.
        Ph = "ph",
        /// Keeping it.
        Keep = "keep",
        /// What was looked for and not found.
        Gap = "gap",
    }
);

closed_list!(
    /// What a rule for ferments says, the strictest first.
    FermentVerdict {
        /// Throw it away.
        Discard = "discard",
        /// Do not.
        DoNot = "do-not",
        /// Not printed.
        NotTested = "not-tested",
        /// Mind it.
        Care = "care",
        /// As printed.
        Tested = "tested",
    }
);

/// A rule for ferments.
#[derive(Debug, Clone, PartialEq)]
pub struct FermentRule {
    /// Its name.
    pub id: RuleId,
    /// The ferment, or `any`.
    pub product: Box<str>,
    /// What it is for.
    pub topic: FermentTopic,
    /// What it says.
    pub verdict: FermentVerdict,
    /// The lower end of its band.
    from: Option<f64>,
    /// The upper end of its band.
    to: Option<f64>,
    /// What the band counts.
    pub unit: Option<KeepingUnit>,
    /// At which temperature, as printed.
    pub at: Box<str>,
    /// What it says, in our words.
    pub say: Box<str>,
    /// Where it stands.
    pub citation: Citation,
    /// The ways of naming it.
    pub(super) phrases: Phrases,
}

impl FermentRule {
    /// Both ends of the band as plain counts of its unit.
    #[must_use]
    pub fn band(&self) -> (Option<f64>, Option<f64>) {
        (self.from, self.to)
    }

    /// Whether the rule is for a ferment.
    #[must_use]
    pub fn is_for(&self, product: &str) -> bool {
        &*self.product == product || &*self.product == "any"
    }
}

/// A ferment that people name.
#[derive(Debug, Clone, PartialEq)]
pub struct FermentName {
    /// The ferment.
    pub product: Box<str>,
    /// The food of the process tables that it becomes; none when no process is printed for it.
    pub process: Option<ProductId>,
    /// The ways of naming it.
    pub(super) phrases: Phrases,
}

/// Reads `ferments.csv`.
pub(super) fn read_ferment_rules(reading: &mut Reading<'_>) -> Vec<FermentRule> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "product",
        "topic",
        "verdict",
        "from",
        "to",
        "unit",
        "temp_F",
        "say",
        "words",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::FermentRules, COLUMNS, |row| FermentRule {
        id: row.id("rule_id"),
        product: row.text("product").into(),
        topic: row.word("topic"),
        verdict: row.word("verdict"),
        from: row.maybe_number("from"),
        to: row.maybe_number("to"),
        unit: row.maybe_word("unit"),
        at: row.free_text("temp_F"),
        say: row.text("say").into(),
        phrases: Phrases::read(row.cell("words")),
        citation: row.citation(),
    })
}

/// Reads `ferment_names.csv`.
pub(super) fn read_ferment_names(
    reading: &mut Reading<'_>,
    knows_product: impl Fn(&str) -> bool,
) -> Vec<FermentName> {
    const COLUMNS: &[&str] = &["product", "words", "process_product", "source_id", "locator", "basis"];
    reading.rows(Table::FermentNames, COLUMNS, |row| {
        let product = row.text("product").into();
        let phrases = Phrases::read(row.text("words"));
        let process = row.cell("process_product");
        if !process.is_empty() && !knows_product(process) {
            let (text, table) = (process.to_owned(), "a process table");
            row.spoil(DataProblem::UnknownKey { column: "process_product", text, table });
        }
        // Our own list of names; its paper trail is checked and not kept.
        let _ = row.citation();
        let process = Some(process).filter(|id| !id.is_empty()).map(ProductId::from);
        FermentName { product, process, phrases }
    })
}

impl Almanac {
    /// The rules for one ferment that are for one thing, those for any ferment with them.
    pub fn ferment_rules_for<'a>(
        &'a self,
        product: &'a str,
        topic: FermentTopic,
    ) -> impl Iterator<Item = &'a FermentRule> {
        self.ferment_rules().iter().filter(move |row| row.topic == topic && row.is_for(product))
    }

    /// The signs of a ferment that can be asked about, in words that are understood.
    #[must_use]
    pub fn askable_ferment_signs(&self) -> Vec<String> {
        askable(self.ferment_rules().iter().map(|row| &row.phrases))
    }
}
