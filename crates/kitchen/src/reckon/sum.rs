//! What a sum is: a name, what it asks for, and how it is answered.

use almanac::Almanac;

use super::answer::Answer;
use super::asked::Asked;
use super::error::ReckonError;

/// A kind of figure, as people write it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A weight.
    Mass,
    /// A volume.
    Volume,
    /// A weight, a volume, a count or containers.
    Amount,
    /// A share.
    Percent,
    /// A temperature.
    Temp,
    /// A height above the sea.
    Altitude,
    /// A length.
    Length,
    /// A span of time.
    Span,
    /// The power of a burner.
    Power,
    /// The pressure of the air at the place.
    Air,
    /// What a canner's gauge shows.
    Gauge,
    /// A number of pieces.
    Count,
    /// A reading without a unit.
    Number,
    /// One of a list.
    Word(&'static [&'static str]),
    /// A name.
    Name,
}

impl Kind {
    /// How such a figure is written.
    #[must_use]
    pub fn example(self) -> String {
        match self {
            Self::Mass => "2.3kg".to_owned(),
            Self::Volume => "\"2 qt\"".to_owned(),
            Self::Amount => "\"2 cups\"".to_owned(),
            Self::Percent => "5%".to_owned(),
            Self::Temp => "180F".to_owned(),
            Self::Altitude => "\"1,200 ft\"".to_owned(),
            Self::Length => "8cm".to_owned(),
            Self::Span => "\"35 min\"".to_owned(),
            Self::Power => "1800W".to_owned(),
            Self::Air => "845hPa".to_owned(),
            Self::Gauge => "11psi".to_owned(),
            Self::Count => "7".to_owned(),
            Self::Number => "20".to_owned(),
            Self::Word(words) => words.join(", "),
            Self::Name => "\"its name\"".to_owned(),
        }
    }

    /// What such a figure is called.
    pub(super) const fn noun(self) -> &'static str {
        match self {
            Self::Mass => "a weight",
            Self::Volume => "a volume",
            Self::Amount => "an amount",
            Self::Percent => "a share",
            Self::Temp => "a temperature",
            Self::Altitude => "a height above the sea",
            Self::Length => "a length",
            Self::Span => "a span of time",
            Self::Power => "a power",
            Self::Air => "a pressure of the air",
            Self::Gauge => "a gauge pressure",
            Self::Count => "a number of pieces",
            Self::Number => "a plain number",
            Self::Word(_) => "a word of the list",
            Self::Name => "a name",
        }
    }
}

/// Whether an input must be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Need {
    /// It must.
    Must,
    /// It may; the answer then says what was taken, or leaves a part out.
    May,
}

/// What a sum asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Input {
    /// The word before the equals sign.
    pub key: &'static str,
    /// What it is a figure of.
    pub kind: Kind,
    /// What it is.
    pub what: &'static str,
    /// How a kitchen comes by it.
    pub how: &'static str,
    /// Whether it must be given.
    pub need: Need,
}

/// An input that must be given.
pub(super) const fn must(key: &'static str, kind: Kind, what: &'static str, how: &'static str) -> Input {
    Input { key, kind, what, how, need: Need::Must }
}

/// An input that may be left out.
pub(super) const fn may(key: &'static str, kind: Kind, what: &'static str, how: &'static str) -> Input {
    Input { key, kind, what, how, need: Need::May }
}

/// How a sum is answered.
pub(super) type AnswerFn = fn(&Asked<'_>, &Almanac) -> Result<Answer, ReckonError>;

/// A small sum.
#[derive(Debug, Clone, Copy)]
pub struct Sum {
    /// Its name, as it is typed.
    pub name: &'static str,
    /// What it answers, in one line.
    pub what: &'static str,
    /// What it asks for.
    pub inputs: &'static [Input],
    /// How it is worked out.
    pub equation: &'static str,
    /// Whose equation and range it is.
    pub source: &'static str,
    /// Inputs that answer it, as they are typed.
    pub example: &'static [&'static str],
    pub(super) answer: AnswerFn,
}

impl Sum {
    /// How an input of it is written: as in its example, else as any figure of its kind.
    #[must_use]
    pub fn example_of(&self, input: &Input) -> String {
        let typed = self.example.iter().find_map(|typed| typed.strip_prefix(input.key)?.strip_prefix('='));
        typed.map_or_else(|| input.kind.example(), str::to_owned)
    }
}
