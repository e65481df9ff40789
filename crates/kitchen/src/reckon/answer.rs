//! What a sum answers, and the same as `reckoning/1`.

use std::borrow::Cow;

use almanac::Citation;
use foodsci::Figure;
use foodsci::veto::Veto;
use serde::Serialize;
use serde::ser::{SerializeMap, SerializeStruct, Serializer};

use super::asked::Asked;
use super::spread::Range;
use super::sum::Sum;

/// One figure of an answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Output {
    /// What it is.
    pub name: Cow<'static, str>,
    /// The figure, or the likeliest of a range; none where only the ends mean anything.
    pub value: Option<f64>,
    /// Its unit.
    pub unit: &'static str,
    /// The least, where the world is a range.
    pub low: Option<f64>,
    /// The most.
    pub high: Option<f64>,
}

/// What must be known beside a figure.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Note {
    /// `caution`, `taken`, `to-know`, `printed`.
    pub code: &'static str,
    /// What it says.
    pub text: String,
}

/// What speaks against what was asked.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Vetoed {
    /// What it says, with number, limit, margin and source.
    pub text: String,
    /// What may be done instead.
    pub instead: &'static str,
}

/// Where a figure of the answer was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SourceLine {
    /// The publication.
    pub id: String,
    /// The place in it.
    pub locator: String,
    /// How the figure got here.
    pub basis: String,
    /// How far the publication is trusted.
    pub rank: String,
}

impl SourceLine {
    pub(super) fn of(citation: &Citation) -> Self {
        Self {
            id: citation.source.to_string(),
            locator: citation.locator.to_string(),
            basis: citation.basis.to_string(),
            rank: citation.rank.to_string(),
        }
    }
}

/// What a sum works out; its name and equation are added by [`Reckoning::new`].
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    outputs: Vec<Output>,
    notes: Vec<Note>,
    vetoes: Vec<Vetoed>,
    sources: Vec<SourceLine>,
}

impl Answer {
    /// Nothing yet.
    pub(super) fn new() -> Self {
        Self::default()
    }

    /// One figure.
    pub(super) fn out(mut self, name: impl Into<Cow<'static, str>>, value: f64, unit: &'static str) -> Self {
        self.outputs.push(Output { name: name.into(), value: Some(value), unit, low: None, high: None });
        self
    }

    /// A figure with the ends of what it may be.
    pub(super) fn range(
        mut self,
        name: impl Into<Cow<'static, str>>,
        range: Range,
        unit: &'static str,
    ) -> Self {
        let Range { low, likely, high } = range;
        self.outputs.push(Output {
            name: name.into(),
            value: likely,
            unit,
            low: Some(low),
            high: Some(high),
        });
        self
    }

    /// The caution that belongs to the act.
    pub(super) fn caution(self, text: impl Into<String>) -> Self {
        self.note("caution", text)
    }

    /// What was filled in by us.
    pub(super) fn taken(self, text: impl Into<String>) -> Self {
        self.note("taken", text)
    }

    /// What is good to know.
    pub(super) fn know(self, text: impl Into<String>) -> Self {
        self.note("to-know", text)
    }

    /// What is printed elsewhere about the same.
    pub(super) fn printed(self, text: impl Into<String>) -> Self {
        self.note("printed", text)
    }

    fn note(mut self, code: &'static str, text: impl Into<String>) -> Self {
        self.notes.push(Note { code, text: text.into() });
        self
    }

    /// A veto of a model.
    pub(super) fn veto(self, veto: Option<Veto>, instead: &'static str) -> Self {
        match veto {
            Some(veto) => self.against(veto.to_string(), instead),
            None => self,
        }
    }

    /// What speaks against it in words.
    pub(super) fn against(mut self, text: impl Into<String>, instead: &'static str) -> Self {
        self.vetoes.push(Vetoed { text: text.into(), instead });
        self
    }

    /// A row that a figure was taken from.
    pub(super) fn from(mut self, citation: &Citation) -> Self {
        let line = SourceLine::of(citation);
        if !self.sources.contains(&line) {
            self.sources.push(line);
        }
        self
    }
}

/// A sum with its answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Reckoning {
    /// The sum.
    pub name: &'static str,
    /// The inputs as they were typed.
    pub inputs: Vec<(&'static str, String)>,
    /// The figures.
    pub outputs: Vec<Output>,
    /// How they were worked out.
    pub equation: &'static str,
    /// Whose equation it is.
    pub equation_source: &'static str,
    /// What must be known beside them.
    pub notes: Vec<Note>,
    /// What speaks against what was asked.
    pub vetoes: Vec<Vetoed>,
    /// Where figures on file were found.
    pub sources: Vec<SourceLine>,
}

impl Reckoning {
    pub(super) fn new(sum: &Sum, asked: &Asked<'_>, answer: Answer) -> Self {
        Self {
            name: sum.name,
            inputs: asked.echo().map(|(key, typed)| (key, typed.to_owned())).collect(),
            outputs: answer.outputs,
            equation: sum.equation,
            equation_source: sum.source,
            notes: answer.notes,
            vetoes: answer.vetoes,
            sources: answer.sources,
        }
    }

    /// Whether something speaks against what was asked.
    #[must_use]
    pub fn is_vetoed(&self) -> bool {
        !self.vetoes.is_empty()
    }

    /// The figure of a name, for those who go on with it.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<&Output> {
        self.outputs.iter().find(|output| output.name == name)
    }
}

impl Output {
    /// Whether every figure of it is one.
    pub(super) fn is_number(&self) -> bool {
        [self.value, self.low, self.high].into_iter().flatten().all(f64::is_finite)
    }

    /// The figure with its unit as one reads it: `63 g`, `about 27 to 45 min, likely 34`.
    #[must_use]
    pub fn say(&self) -> String {
        let unit = if self.unit.is_empty() { String::new() } else { format!(" {}", self.unit) };
        match (self.value, self.low, self.high) {
            (Some(value), Some(low), Some(high)) => {
                format!("about {} to {}{unit}, likely {}", about(low), about(high), about(value))
            }
            (None, Some(low), Some(high)) => format!("about {} to {}{unit}", about(low), about(high)),
            (Some(value), ..) => format!("{}{unit}", Figure(value)),
            (None, ..) => "not known".to_owned(),
        }
    }
}

/// The end of a range in two digits or three: more would promise what nobody knows.
fn about(value: f64) -> String {
    let places = match value.abs() {
        size if size >= 20.0 => 0,
        size if size >= 2.0 => 1,
        _ => 2,
    };
    let written = format!("{value:.places$}");
    let trimmed =
        if written.contains('.') { written.trim_end_matches('0').trim_end_matches('.') } else { &written };
    trimmed.to_owned()
}

/// To six digits, so that sixty-three grams are written as 63 and not as 62.99999999999999.
fn round_to_six_digits(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let places = 5.0 - libm::floor(libm::log10(value.abs()));
    // A power of ten with a whole exponent; dividing by it keeps short decimals short.
    let scale = libm::exp10(places.abs());
    if places >= 0.0 { libm::round(value * scale) / scale } else { libm::round(value / scale) * scale }
}

impl Serialize for Output {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Output", 5)?;
        keys.serialize_field("name", &self.name)?;
        keys.serialize_field("value", &self.value.map(round_to_six_digits))?;
        keys.serialize_field("unit", self.unit)?;
        keys.serialize_field("low", &self.low.map(round_to_six_digits))?;
        keys.serialize_field("high", &self.high.map(round_to_six_digits))?;
        keys.end()
    }
}

/// Inputs as they were typed; a plain number stays one.
struct Echo<'a>(&'a [(&'static str, String)]);

impl Serialize for Echo<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut map = to.serialize_map(Some(self.0.len()))?;
        for (key, typed) in self.0 {
            match typed.parse::<f64>() {
                Ok(number) if number.is_finite() => map.serialize_entry(key, &number)?,
                _ => map.serialize_entry(key, typed)?,
            }
        }
        map.end()
    }
}

impl Serialize for Reckoning {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut keys = to.serialize_struct("Reckoning", 10)?;
        keys.serialize_field("format", "reckoning/1")?;
        keys.serialize_field("name", self.name)?;
        keys.serialize_field("inputs", &Echo(&self.inputs))?;
        keys.serialize_field("outputs", &self.outputs)?;
        keys.serialize_field("equation", self.equation)?;
        keys.serialize_field("equation_source", self.equation_source)?;
        // Outside the range there is no answer but an error.
        keys.serialize_field("in_range", &true)?;
        keys.serialize_field("notes", &self.notes)?;
        keys.serialize_field("vetoes", &self.vetoes)?;
        keys.serialize_field("sources", &self.sources)?;
        keys.end()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_digits_are_enough_and_short_decimals_stay_short() {
        for (value, want) in [
            (62.999_999_999_999_99, 63.0),
            (0.1 + 0.2, 0.3),
            (123_456_789.0, 123_457_000.0),
            (1.234_567_89e-7, 1.234_57e-7),
            (0.0, 0.0),
        ] {
            assert_eq!(round_to_six_digits(value), want);
        }
    }

    #[test]
    fn a_range_is_said_with_its_ends_first() {
        let output =
            Output { name: "time".into(), value: Some(34.0), unit: "min", low: Some(27.0), high: Some(45.0) };
        assert_eq!(output.say(), "about 27 to 45 min, likely 34");
        assert_eq!(Output { value: None, low: Some(1.234), ..output.clone() }.say(), "about 1.23 to 45 min");
    }
}
