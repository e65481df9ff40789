//! What is wrong with a text that should have been an amount: where, and what could be written instead.

use std::fmt;

/// What a reader was asked to find; printed with examples, so that a message can end in one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Expected {
    /// A number or fraction.
    Fraction,
    /// A mass.
    Mass,
    /// A volume.
    Volume,
    /// A length.
    Length,
    /// A height above the sea.
    Altitude,
    /// A pressure or a gauge error.
    Pressure,
    /// An absolute pressure of the air.
    AirPressure,
    /// The power of a burner.
    Power,
    /// A temperature.
    Temp,
    /// A span of time.
    Minutes,
    /// A time of day.
    Clock,
    /// A share.
    Percent,
    /// A number of pieces.
    Count,
    /// Any amount of produce.
    Amount,
}

impl fmt::Display for Expected {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Fraction => r#"a number such as "1 1/2", "3/4" or "2.5""#,
            Self::Mass => r#"a weight such as "2 lb 3 oz" or "2.3 kg""#,
            Self::Volume => r#"a volume such as "1 1/2 cups", "2 qt" or "500 ml""#,
            Self::Length => r#"a length such as "1/2 in" or "12 mm""#,
            Self::Altitude => r#"a height such as "3,200 ft" or "1000 m""#,
            Self::Pressure => r#"a pressure such as "+0.5 psi" or "69 kPa""#,
            Self::AirPressure => r#"a station pressure such as "845 hPa" or "24.9 inHg""#,
            Self::Power => r#"a power such as "1800 W", "2.4 kW" or "9000 Btu/h""#,
            Self::Temp => r#"a temperature such as "180 F" or "82 C""#,
            Self::Minutes => r#"a time such as "35 min", "1 h 20 min" or "2 days""#,
            Self::Clock => r#"a time of day such as "13:30" or "1:30 pm""#,
            Self::Percent => r#"a share such as "5 %""#,
            Self::Count => r#"a number of pieces such as "14" or "2 dozen""#,
            Self::Amount => r#"an amount such as "2 lb 3 oz", "2 qt", "14" or "half a bushel""#,
        })
    }
}

/// Why a text could not be read. Columns count characters from 1.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// Nothing, or only blanks, was written.
    #[error("nothing is written; hint: write {expected}")]
    Empty {
        /// What should stand there.
        expected: Expected,
    },
    /// The text is longer than any amount.
    #[error(
        "the text beginning {text:?} is {length} characters long, more than {limit}; hint: write {expected}"
    )]
    TooLong {
        /// The beginning of the text.
        text: String,
        /// Its length in characters.
        length: usize,
        /// The greatest length that is read.
        limit: usize,
        /// What should stand there.
        expected: Expected,
    },
    /// From this column on the text makes no sense.
    #[error("cannot read {text:?} from column {column} on; hint: write {expected}")]
    Unreadable {
        /// The whole text.
        text: String,
        /// Where reading stopped.
        column: usize,
        /// What should stand there.
        expected: Expected,
    },
    /// A number stands without its unit.
    #[error("{text:?} lacks a unit at column {column}; hint: write {expected}")]
    NoUnit {
        /// The whole text.
        text: String,
        /// Where the unit should stand.
        column: usize,
        /// What should stand there.
        expected: Expected,
    },
    /// A word stands where a unit should, and it is none that fits.
    #[error("{unit:?} at column {column} of {text:?} is not a unit that fits here; hint: write {expected}")]
    UnknownUnit {
        /// The whole text.
        text: String,
        /// Where the word begins.
        column: usize,
        /// The word.
        unit: String,
        /// What should stand there.
        expected: Expected,
    },
    /// The comma or point of a number can be taken for a thousands mark or a decimal mark.
    #[error(
        "{number:?} at column {column} of {text:?} can mean {thousands} or {decimal}; hint: write the one you mean, {thousands} or {decimal}"
    )]
    Ambiguous {
        /// The whole text.
        text: String,
        /// Where the number begins.
        column: usize,
        /// The number as written.
        number: String,
        /// The number if the mark sets off thousands, written so that it reads one way only.
        thousands: String,
        /// The number if the mark is a decimal mark, written so that it reads one way only.
        decimal: String,
        /// What was being read.
        expected: Expected,
    },
    /// The amount is larger than anything a household has.
    #[error("{text:?} is more than {limit} at column {column}; hint: check the figure and its unit")]
    TooLarge {
        /// The whole text.
        text: String,
        /// Where the amount begins.
        column: usize,
        /// The greatest amount that is read.
        limit: &'static str,
        /// What was being read.
        expected: Expected,
    },
    /// The number has more decimal places, or a larger denominator, than any scale or spoon.
    #[error(
        "the number at column {column} of {text:?} is finer than one part in a million; hint: write at most 6 decimal places"
    )]
    TooFine {
        /// The whole text.
        text: String,
        /// Where the number begins.
        column: usize,
        /// What was being read.
        expected: Expected,
    },
    /// The amount is below zero where nothing can be.
    #[error("{text:?} is below zero at column {column}; hint: write {expected}")]
    Negative {
        /// The whole text.
        text: String,
        /// Where the sign stands.
        column: usize,
        /// What should stand there.
        expected: Expected,
    },
    /// The value is not one that can occur: an hour 25, a share above 100 %.
    #[error("{text:?} is out of range at column {column}: {limit}; hint: write {expected}")]
    OutOfRange {
        /// The whole text.
        text: String,
        /// Where the value begins.
        column: usize,
        /// The limit, in words.
        limit: &'static str,
        /// What should stand there.
        expected: Expected,
    },
}

impl ReadError {
    /// The text that was read; empty when nothing was written.
    #[must_use]
    pub fn text(&self) -> &str {
        match self {
            Self::Empty { .. } => "",
            Self::TooLong { text, .. }
            | Self::Unreadable { text, .. }
            | Self::NoUnit { text, .. }
            | Self::UnknownUnit { text, .. }
            | Self::Ambiguous { text, .. }
            | Self::TooLarge { text, .. }
            | Self::TooFine { text, .. }
            | Self::Negative { text, .. }
            | Self::OutOfRange { text, .. } => text,
        }
    }

    /// Where the fault stands, in characters from 1.
    #[must_use]
    pub fn column(&self) -> usize {
        match self {
            Self::Empty { .. } => 1,
            Self::TooLong { limit, .. } => limit + 1,
            Self::Unreadable { column, .. }
            | Self::NoUnit { column, .. }
            | Self::UnknownUnit { column, .. }
            | Self::Ambiguous { column, .. }
            | Self::TooLarge { column, .. }
            | Self::TooFine { column, .. }
            | Self::Negative { column, .. }
            | Self::OutOfRange { column, .. } => *column,
        }
    }

    /// What would have been read.
    #[must_use]
    pub fn expected(&self) -> Expected {
        match self {
            Self::Empty { expected }
            | Self::TooLong { expected, .. }
            | Self::Unreadable { expected, .. }
            | Self::NoUnit { expected, .. }
            | Self::UnknownUnit { expected, .. }
            | Self::Ambiguous { expected, .. }
            | Self::TooLarge { expected, .. }
            | Self::TooFine { expected, .. }
            | Self::Negative { expected, .. }
            | Self::OutOfRange { expected, .. } => *expected,
        }
    }
}
