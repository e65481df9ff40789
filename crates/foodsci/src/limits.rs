//! The first statement of every model: is the input a number, and inside the range its source covers?

use std::fmt;

/// Why a model gives no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ModelError {
    /// The input is no number at all.
    #[error("the {quantity} is not a number; hint: give one figure with its unit")]
    NotANumber {
        /// What it should be.
        quantity: &'static str,
    },
    /// The input lies outside what the model covers.
    #[error(
        "the {quantity} is {}{unit}, outside {}{unit} to {}{unit}, the range of {range_of}; hint: check the figure and \
         its unit, nothing is worked out beyond the range",
        Figure(*.value), Figure(*.low), Figure(*.high)
    )]
    OutOfRange {
        /// What it is.
        quantity: &'static str,
        /// Its value in `unit`.
        value: f64,
        /// The unit, with a blank before it, or nothing for a plain number.
        unit: &'static str,
        /// The least value covered.
        low: f64,
        /// The greatest value covered.
        high: f64,
        /// Whose range it is.
        range_of: &'static str,
    },
    /// The two inputs stand the wrong way round, or one is not what the other allows.
    #[error(
        "the {quantity} is {}{unit} and must be {relation} the {other}, {}{unit}; hint: check whether the two were \
         exchanged",
        Figure(*.value), Figure(*.bound)
    )]
    Disagrees {
        /// What is wrong.
        quantity: &'static str,
        /// Its value in `unit`.
        value: f64,
        /// The unit, with a blank before it.
        unit: &'static str,
        /// How it must stand to the other: `above`, `below`.
        relation: &'static str,
        /// The other input.
        other: &'static str,
        /// The other's value in `unit`.
        bound: f64,
    },
    /// It never comes to pass, however long one waits.
    #[error("{what} never happens: {because}; hint: {hint}")]
    Never {
        /// What was asked for.
        what: &'static str,
        /// Why it does not come.
        because: &'static str,
        /// What to do.
        hint: &'static str,
    },
}

/// A number as it is written in a sentence: four figures at most, no trailing zeros.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure(pub f64);

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.abs();
        if !size.is_finite() {
            return write!(f, "{}", self.0);
        }
        if size != 0.0 && size < 1e-3 {
            return write!(f, "{:.2e}", self.0);
        }
        let places = match size {
            _ if size >= 1000.0 => 0,
            _ if size >= 100.0 => 1,
            _ if size >= 10.0 => 2,
            _ => 3,
        };
        let written = format!("{:.places$}", self.0);
        let trimmed = if written.contains('.') {
            written.trim_end_matches('0').trim_end_matches('.')
        } else {
            &written
        };
        f.write_str(if trimmed == "-0" { "0" } else { trimmed })
    }
}

/// What a model covers of one input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// What the input is.
    pub quantity: &'static str,
    /// Its unit, with a blank before it; empty for a plain number.
    pub unit: &'static str,
    /// The least value covered.
    pub low: f64,
    /// The greatest value covered.
    pub high: f64,
    /// Whose range it is: a publication, or what a kitchen can have.
    pub range_of: &'static str,
}

impl Limits {
    /// The value itself when it is a number inside the range.
    pub(crate) fn check(&self, value: f64) -> Result<f64, ModelError> {
        if value.is_nan() {
            return Err(ModelError::NotANumber { quantity: self.quantity });
        }
        if value < self.low || value > self.high {
            return Err(ModelError::OutOfRange {
                quantity: self.quantity,
                value,
                unit: self.unit,
                low: self.low,
                high: self.high,
                range_of: self.range_of,
            });
        }
        Ok(value)
    }
}

/// Declares the limits of one input.
pub(crate) const fn limits(
    quantity: &'static str,
    unit: &'static str,
    low: f64,
    high: f64,
    range_of: &'static str,
) -> Limits {
    Limits { quantity, unit, low, high, range_of }
}

/// The value when it is above `bound`.
pub(crate) fn require_above(
    (quantity, value): (&'static str, f64),
    (other, bound): (&'static str, f64),
    unit: &'static str,
) -> Result<f64, ModelError> {
    for (quantity, number) in [(quantity, value), (other, bound)] {
        if number.is_nan() {
            return Err(ModelError::NotANumber { quantity });
        }
    }
    if value > bound {
        Ok(value)
    } else {
        Err(ModelError::Disagrees { quantity, value, unit, relation: "above", other, bound })
    }
}

/// The value when it is below `bound`.
pub(crate) fn require_below(
    (quantity, value): (&'static str, f64),
    (other, bound): (&'static str, f64),
    unit: &'static str,
) -> Result<f64, ModelError> {
    match require_above((other, bound), (quantity, value), unit) {
        Ok(_) => Ok(value),
        Err(ModelError::Disagrees { .. }) => {
            Err(ModelError::Disagrees { quantity, value, unit, relation: "below", other, bound })
        }
        Err(other) => Err(other),
    }
}

/// What any kitchen can have: the ranges of inputs that no publication bounds.
pub(crate) mod kitchen {
    use super::{Limits, limits};

    /// Said of a range that only keeps slips of the pen out.
    pub(crate) const IN_A_KITCHEN: &str = "what a kitchen can hold";

    pub(crate) const MASS_KG: Limits = limits("mass", " kg", 0.0, 1e5, IN_A_KITCHEN);
    pub(crate) const VOLUME_L: Limits = limits("volume", " L", 0.0, 1e4, IN_A_KITCHEN);
    pub(crate) const SHARE: Limits = limits("share", "", 0.0, 1.0, "a share of a whole");
    pub(crate) const POWER_W: Limits = limits("power", " W", 0.0, 2e4, "what a household burner gives");
    pub(crate) const HALF_SIZE_M: Limits = limits("size", " m", 5e-4, 0.5, IN_A_KITCHEN);
    pub(crate) const TEMP_C: Limits = limits("temperature", " °C", -60.0, 260.0, "kitchen and freezer");
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMP: Limits = limits("temperature", " °C", 0.0, 100.0, "a test");

    #[test]
    fn nothing_that_is_no_number_passes() {
        assert_eq!(TEMP.check(f64::NAN), Err(ModelError::NotANumber { quantity: "temperature" }));
        assert!(TEMP.check(f64::INFINITY).is_err());
        assert!(require_above(("a", f64::NAN), ("b", 1.0), "").is_err());
        assert!(require_below(("a", 1.0), ("b", f64::NAN), "").is_err());
        assert_eq!(TEMP.check(50.0), Ok(50.0));
    }

    #[test]
    fn a_refusal_names_value_limits_and_whose_they_are() {
        let said = TEMP.check(120.5).unwrap_err().to_string();
        assert!(
            said.starts_with(
                "the temperature is 120.5 °C, outside 0 °C to 100 °C, the range of a test; hint: "
            ),
            "{said}"
        );
        let said = require_below(("end", 5.0), ("start", 2.0), " °C").unwrap_err().to_string();
        assert!(said.starts_with("the end is 5 °C and must be below the start, 2 °C"), "{said}");
    }

    #[test]
    fn figures_are_written_short() {
        for (value, want) in
            [(0.5, "0.5"), (1234.6, "1235"), (99.974, "99.97"), (2.0, "2"), (-0.0001, "-1.00e-4"), (0.0, "0")]
        {
            assert_eq!(Figure(value).to_string(), want);
        }
    }
}
