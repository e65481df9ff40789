//! The figures of the keeping tables, with their units.

use measure::{Length, Minutes, Temp};

use crate::closed_list::closed_list;
use crate::row::Row;

closed_list!(
    /// What a figure of the keeping tables counts.
    KeepingUnit {
        /// Minutes.
        Minutes = "min",
        /// Hours.
        Hours = "h",
        /// Hours from the moment the heat went off.
        HoursFromHeatOff = "h from heat off",
        /// Days.
        Days = "days",
        /// Weeks.
        Weeks = "weeks",
        /// Months.
        Months = "months",
        /// Inches.
        Inches = "in",
        /// Degrees Fahrenheit.
        Fahrenheit = "F",
        /// Percent.
        Percent = "percent",
        /// Percent of the printed time.
        PercentOfTime = "percent of time",
        /// Percent of the liquid of a jar.
        PercentOfLiquid = "percent of liquid",
        /// pH.
        Ph = "pH",
        /// Tablespoons to a gallon.
        TablespoonsPerGallon = "tbsp per gallon",
        /// Times as much.
        Times = "times",
        /// Gallons.
        Gallons = "gallons",
        /// People who fell ill.
        Cases = "cases",
    }
);

/// A printed figure, from a lower to an upper end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KeepingFigure {
    low: f64,
    high: f64,
    /// What it counts.
    pub unit: KeepingUnit,
}

impl KeepingFigure {
    /// Reads the two ends and the unit of a row; none when all three are empty.
    pub(super) fn read(row: &mut Row<'_>) -> Option<Self> {
        let low = row.maybe_number("value_min");
        let high = row.maybe_number("value_max");
        let unit = row.maybe_word("unit");
        match (low, high, unit) {
            (Some(low), Some(high), Some(unit)) if low <= high => Some(Self { low, high, unit }),
            (None, None, None) => None,
            _ => {
                row.contradict("a figure needs both its ends, the lower first, and its unit".to_owned());
                None
            }
        }
    }

    /// Both ends as spans of time, when it is one of minutes, hours or days.
    #[must_use]
    pub fn as_minutes(&self) -> Option<(Minutes, Minutes)> {
        let each = match self.unit {
            KeepingUnit::Minutes => 1.0,
            KeepingUnit::Hours | KeepingUnit::HoursFromHeatOff => 60.0,
            KeepingUnit::Days => 24.0 * 60.0,
            _ => return None,
        };
        // Never truncates: printed times are whole or half hours and small.
        let whole = |value: f64| Minutes((value * each) as u32);
        Some((whole(self.low), whole(self.high)))
    }

    /// Both ends as lengths, when it is a room or a depth.
    #[must_use]
    pub fn as_length(&self) -> Option<(Length, Length)> {
        (self.unit == KeepingUnit::Inches).then(|| (Length::inches(self.low), Length::inches(self.high)))
    }

    /// Both ends as temperatures, when it is one.
    #[must_use]
    pub fn as_temp(&self) -> Option<(Temp, Temp)> {
        (self.unit == KeepingUnit::Fahrenheit)
            .then(|| (Temp::fahrenheit(self.low), Temp::fahrenheit(self.high)))
    }

    /// Both ends as a plain count of its unit.
    #[must_use]
    pub fn as_count(&self) -> (f64, f64) {
        (self.low, self.high)
    }

    /// The figure as people write it: `24 h`, `2 to 3 days`.
    #[must_use]
    pub fn words(&self) -> String {
        let unit = match self.unit {
            KeepingUnit::Fahrenheit => "°F",
            KeepingUnit::Percent => "%",
            KeepingUnit::PercentOfTime => "% of the time",
            KeepingUnit::PercentOfLiquid => "% of the liquid",
            KeepingUnit::TablespoonsPerGallon => "tbsp to a gallon",
            KeepingUnit::Ph => "",
            other => other.as_str(),
        };
        let ends = if self.low < self.high {
            format!("{} to {}", self.low, self.high)
        } else {
            self.low.to_string()
        };
        format!("{ends} {unit}").trim_end().to_owned()
    }
}
