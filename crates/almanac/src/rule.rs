//! Rules printed for canners, jars, gauges, and for what comes after the process.

use measure::{Length, Minutes, Percent, Pressure, Temp};

use crate::RuleId;
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

closed_list!(
    /// What a rule's figure counts.
    RuleUnit {
        /// Pounds per square inch.
        Psi = "psi",
        /// Pounds to hold for each pound a gauge reads high.
        PsiPerPsiHigh = "psi per psi high",
        /// Minutes.
        Minutes = "min",
        /// Minutes for each thousand feet.
        MinutesPerThousandFeet = "min per 1000 ft",
        /// Feet above the sea.
        Feet = "ft",
        /// Inches.
        Inches = "in",
        /// Degrees Fahrenheit.
        Fahrenheit = "F",
        /// Times a year.
        PerYear = "per year",
        /// Jars.
        Jars = "jars",
        /// Quart jars.
        QuartJars = "quart jars",
        /// pH.
        Ph = "pH",
        /// Hours.
        Hours = "h",
        /// Hours from the moment the heat went off.
        HoursFromHeatOff = "h from heat off",
        /// Months.
        Months = "month",
        /// Percent.
        Percent = "percent",
    }
);

/// The figure of a rule, from a lower to an upper end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RuleValue {
    low: f64,
    high: f64,
    /// What it counts.
    pub unit: RuleUnit,
}

impl RuleValue {
    /// Both ends in minutes, when it is a time of hours or minutes.
    #[must_use]
    pub fn as_minutes(&self) -> Option<(Minutes, Minutes)> {
        let each = match self.unit {
            RuleUnit::Minutes => 1.0,
            RuleUnit::Hours | RuleUnit::HoursFromHeatOff => 60.0,
            _ => return None,
        };
        // Never truncates: times are small and written in whole or half hours.
        let whole = |value: f64| Minutes((value * each) as u32);
        Some((whole(self.low), whole(self.high)))
    }

    /// Both ends as pressures, when it is one.
    #[must_use]
    pub fn as_pressure(&self) -> Option<(Pressure, Pressure)> {
        (self.unit == RuleUnit::Psi).then(|| (Pressure::psi(self.low), Pressure::psi(self.high)))
    }

    /// Both ends as lengths, when it is a headspace, a depth or a height.
    #[must_use]
    pub fn as_length(&self) -> Option<(Length, Length)> {
        match self.unit {
            RuleUnit::Inches => Some((Length::inches(self.low), Length::inches(self.high))),
            RuleUnit::Feet => Some((Length::feet(self.low), Length::feet(self.high))),
            _ => None,
        }
    }

    /// Both ends as temperatures, when it is one.
    #[must_use]
    pub fn as_temp(&self) -> Option<(Temp, Temp)> {
        (self.unit == RuleUnit::Fahrenheit).then(|| (Temp::fahrenheit(self.low), Temp::fahrenheit(self.high)))
    }

    /// Both ends as shares, when it is one.
    #[must_use]
    pub fn as_percent(&self) -> Option<(Percent, Percent)> {
        (self.unit == RuleUnit::Percent)
            .then(|| (Percent::of_hundred(self.low), Percent::of_hundred(self.high)))
    }

    /// Both ends as a plain count of its unit: jars, months, times a year, pH.
    #[must_use]
    pub fn as_count(&self) -> (f64, f64) {
        (self.low, self.high)
    }
}

/// A rule of the canner tables.
#[derive(Debug, Clone, PartialEq)]
pub struct CannerRule {
    /// Its name.
    pub id: RuleId,
    /// What it is about.
    pub topic: Box<str>,
    /// Which foods, packs or canners it is for.
    pub applies_to: Box<str>,
    /// The rule.
    pub rule: Box<str>,
    /// Its figure, if it has one.
    pub value: Option<RuleValue>,
    /// Where it stands.
    pub citation: Citation,
}

/// A rule that is needed and not on file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("no rule {rule} is on file\nhint: put its row back into data/processes/canner_rules.csv")]
pub struct RuleMissing {
    /// The rule.
    pub rule: RuleId,
}

/// Reads `canner_rules.csv`.
pub(crate) fn read_canner_rules(reading: &mut Reading<'_>) -> Vec<(u64, CannerRule)> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "topic",
        "applies_to",
        "rule",
        "value_min",
        "value_max",
        "unit",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::CannerRules, COLUMNS, |row| {
        let id = row.id("rule_id");
        let topic = row.text("topic").into();
        let applies_to = row.text("applies_to").into();
        let rule = row.text("rule").into();
        let low = row.maybe_number("value_min");
        let high = row.maybe_number("value_max");
        let unit = row.maybe_word("unit");
        let value = match (low, high, unit) {
            (Some(low), Some(high), Some(unit)) => Some(RuleValue { low, high, unit }),
            (None, None, None) => None,
            _ => {
                let what = "a figure needs both its ends and its unit".to_owned();
                row.contradict(what);
                None
            }
        };
        (row.line(), CannerRule { id, topic, applies_to, rule, value, citation: row.citation() })
    })
}
