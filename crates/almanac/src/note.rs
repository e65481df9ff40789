//! Two small tables of words: the rules of pickling and preserving, and what is known of metric sizes.

use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

/// A rule that a program applies, in short words; its number never changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KitchenRule {
    /// Its number.
    pub id: RuleId,
    /// What it is about.
    pub topic: Box<str>,
    /// The rule.
    pub rule: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

closed_list!(
    /// What a metric fact is about.
    MetricTopic {
        /// Jars sold in millilitres.
        Jar = "jar",
        /// Pressures in kilopascals.
        Pressure = "pressure",
        /// Band edges in metres.
        Altitude = "altitude",
    }
);

closed_list!(
    /// A metric unit.
    MetricUnit {
        /// Millilitres.
        Millilitre = "ml",
        /// Kilopascals.
        Kilopascal = "kPa",
        /// Metres.
        Metre = "m",
    }
);

/// What is known of a metric size. It gives no process.
#[derive(Debug, Clone, PartialEq)]
pub struct MetricFact {
    /// Its name.
    pub id: RuleId,
    /// What it is about.
    pub topic: MetricTopic,
    /// The US size, pressure or height it stands beside; empty where it stands beside none.
    pub us: Box<str>,
    /// The metric figure and its unit.
    pub metric: Option<(f64, MetricUnit)>,
    /// What is said.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// Reads `pickle_rules.csv`.
pub(crate) fn read_kitchen_rules(reading: &mut Reading<'_>) -> Vec<(u64, KitchenRule)> {
    const COLUMNS: &[&str] = &["rule_id", "topic", "rule", "source_id", "locator", "basis"];
    reading.rows(Table::PickleRules, COLUMNS, |row| {
        let rule = KitchenRule {
            id: row.id("rule_id"),
            topic: row.text("topic").into(),
            rule: row.text("rule").into(),
            citation: row.citation(),
        };
        (row.line(), rule)
    })
}

/// Reads `metric.csv`.
pub(crate) fn read_metric(reading: &mut Reading<'_>) -> Vec<MetricFact> {
    const COLUMNS: &[&str] =
        &["fact_id", "topic", "us", "metric", "metric_unit", "note", "source_id", "locator", "basis"];
    reading.rows(Table::Metric, COLUMNS, |row| MetricFact {
        id: row.id("fact_id"),
        topic: row.word("topic"),
        us: row.free_text("us"),
        metric: row.maybe_number("metric").zip(row.maybe_word("metric_unit")),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// A rule of pickling and preserving by its number, such as `D10`.
    #[must_use]
    pub fn kitchen_rule(&self, id: &str) -> Option<&KitchenRule> {
        self.kitchen_rules.get(id)
    }

    /// Every such rule, in the order of the numbers.
    pub fn kitchen_rules(&self) -> impl Iterator<Item = &KitchenRule> {
        self.kitchen_rules.values()
    }

    /// What is known of metric sizes.
    #[must_use]
    pub fn metric_facts(&self) -> &[MetricFact] {
        &self.metric
    }
}
