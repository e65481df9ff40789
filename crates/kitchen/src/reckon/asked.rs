//! Inputs as they were typed, read one by one as the sum asks for them.

use std::collections::BTreeMap;

use foodsci::Figure;
use measure::{
    AirPressure, Altitude, Amount, Length, Mass, Percent, Power, Pressure, ReadError, Span, Temp, Volume,
    read_air_pressure, read_altitude, read_amount, read_count, read_length, read_mass, read_minutes,
    read_percent, read_power, read_pressure, read_temp, read_volume,
};

use super::error::ReckonError;
use super::sum::{Input, Kind, Sum};

/// The inputs of one asking.
#[derive(Debug)]
pub struct Asked<'s> {
    sum: &'s Sum,
    typed: BTreeMap<&'static str, String>,
}

impl<'s> Asked<'s> {
    /// Takes `KEY=VALUE` apart.
    pub(super) fn read(sum: &'s Sum, typed: &[String]) -> Result<Self, ReckonError> {
        let mut found = BTreeMap::new();
        for part in typed {
            let Some((key, value)) = part.split_once('=') else {
                let example = sum
                    .inputs
                    .first()
                    .map_or_else(String::new, |input| format!("{}={}", input.key, sum.example_of(input)));
                return Err(ReckonError::NotAnInput { typed: part.clone(), example });
            };
            let wanted = key.trim().to_lowercase().replace('_', "-");
            let Some(input) = sum.inputs.iter().find(|input| input.key == wanted) else {
                let known = sum.inputs.iter().map(|input| input.key).collect();
                return Err(ReckonError::NoSuchInput { sum: sum.name, typed: key.to_owned(), known });
            };
            if found.insert(input.key, value.trim().to_owned()).is_some() {
                return Err(ReckonError::GivenTwice { key: input.key });
            }
        }
        Ok(Self { sum, typed: found })
    }

    /// What was typed, in the order of the sum.
    pub(super) fn echo(&self) -> impl Iterator<Item = (&'static str, &str)> {
        self.sum.inputs.iter().filter_map(|input| Some((input.key, self.typed.get(input.key)?.as_str())))
    }

    /// Whether an input was given.
    pub(super) fn has(&self, key: &'static str) -> bool {
        self.typed.contains_key(key)
    }

    fn input(&self, key: &'static str) -> &Input {
        let found = self.sum.inputs.iter().find(|input| input.key == key);
        found.expect("a sum reads only inputs that it lists")
    }

    /// The fault of an input that this asking cannot do without.
    pub(super) fn missing(&self, key: &'static str) -> ReckonError {
        let input = self.input(key);
        ReckonError::Missing {
            sum: self.sum.name,
            key,
            what: input.what,
            how: input.how,
            example: self.sum.example_of(input),
        }
    }

    fn maybe<T>(
        &self,
        key: &'static str,
        read: impl Fn(&str) -> Result<T, ReadError>,
    ) -> Result<Option<T>, ReckonError> {
        let Some(typed) = self.typed.get(key) else { return Ok(None) };
        read(typed).map(Some).map_err(|problem| self.explain(key, typed, problem))
    }

    /// A figure of another kind is said to be one; anything else is unreadable.
    fn explain(&self, key: &'static str, typed: &str, problem: ReadError) -> ReckonError {
        let input = self.input(key);
        match name_kind(typed) {
            Some(kind) if kind != input.kind => ReckonError::OtherKind {
                key,
                typed: typed.to_owned(),
                is: kind.noun(),
                what: input.what,
                wanted: input.kind.noun(),
                example: self.sum.example_of(input),
            },
            _ => ReckonError::Unreadable { key, problem: Box::new(problem) },
        }
    }

    /// A weight that may be left out.
    pub(super) fn maybe_mass(&self, key: &'static str) -> Result<Option<Mass>, ReckonError> {
        self.maybe(key, read_mass)
    }

    /// A weight.
    pub(super) fn mass(&self, key: &'static str) -> Result<Mass, ReckonError> {
        self.maybe_mass(key)?.ok_or_else(|| self.missing(key))
    }

    /// A volume that may be left out.
    pub(super) fn maybe_volume(&self, key: &'static str) -> Result<Option<Volume>, ReckonError> {
        self.maybe(key, read_volume)
    }

    /// A volume.
    pub(super) fn volume(&self, key: &'static str) -> Result<Volume, ReckonError> {
        self.maybe_volume(key)?.ok_or_else(|| self.missing(key))
    }

    /// Whatever it is measured in.
    pub(super) fn amount(&self, key: &'static str) -> Result<Amount, ReckonError> {
        self.maybe(key, read_amount)?.ok_or_else(|| self.missing(key))
    }

    /// A share that may be left out; a bare number is one in percent.
    pub(super) fn maybe_percent(&self, key: &'static str) -> Result<Option<Percent>, ReckonError> {
        self.maybe(key, |typed| {
            let bare = typed.chars().all(|c| c.is_ascii_digit() || c == '.');
            if bare { read_percent(&format!("{typed} %")) } else { read_percent(typed) }
        })
    }

    /// A share.
    pub(super) fn percent(&self, key: &'static str) -> Result<Percent, ReckonError> {
        self.maybe_percent(key)?.ok_or_else(|| self.missing(key))
    }

    /// A temperature that may be left out.
    pub(super) fn maybe_temp(&self, key: &'static str) -> Result<Option<Temp>, ReckonError> {
        self.maybe(key, read_temp)
    }

    /// A temperature.
    pub(super) fn temp(&self, key: &'static str) -> Result<Temp, ReckonError> {
        self.maybe_temp(key)?.ok_or_else(|| self.missing(key))
    }

    /// A height above the sea, as a length.
    pub(super) fn height(&self, key: &'static str) -> Result<Length, ReckonError> {
        let found = self.maybe(key, read_altitude)?.ok_or_else(|| self.missing(key))?;
        Ok(Length::feet(f64::from(found.as_feet())))
    }

    /// A height above the sea.
    pub(super) fn altitude(&self, key: &'static str) -> Result<Altitude, ReckonError> {
        self.maybe(key, read_altitude)?.ok_or_else(|| self.missing(key))
    }

    /// A length that may be left out.
    pub(super) fn maybe_length(&self, key: &'static str) -> Result<Option<Length>, ReckonError> {
        self.maybe(key, read_length)
    }

    /// A length.
    pub(super) fn length(&self, key: &'static str) -> Result<Length, ReckonError> {
        self.maybe_length(key)?.ok_or_else(|| self.missing(key))
    }

    /// A span of time that may be left out.
    pub(super) fn maybe_span(&self, key: &'static str) -> Result<Option<Span>, ReckonError> {
        Ok(self.maybe(key, read_minutes)?.map(Span::from))
    }

    /// A span of time.
    pub(super) fn span(&self, key: &'static str) -> Result<Span, ReckonError> {
        self.maybe_span(key)?.ok_or_else(|| self.missing(key))
    }

    /// A power that may be left out.
    pub(super) fn maybe_power(&self, key: &'static str) -> Result<Option<Power>, ReckonError> {
        self.maybe(key, read_power)
    }

    /// A power.
    pub(super) fn power(&self, key: &'static str) -> Result<Power, ReckonError> {
        self.maybe_power(key)?.ok_or_else(|| self.missing(key))
    }

    /// The pressure of the air.
    pub(super) fn air(&self, key: &'static str) -> Result<AirPressure, ReckonError> {
        self.maybe(key, read_air_pressure)?.ok_or_else(|| self.missing(key))
    }

    /// A gauge pressure.
    pub(super) fn gauge(&self, key: &'static str) -> Result<Pressure, ReckonError> {
        self.maybe(key, read_pressure)?.ok_or_else(|| self.missing(key))
    }

    /// A number of pieces that may be left out.
    pub(super) fn maybe_count(&self, key: &'static str) -> Result<Option<f64>, ReckonError> {
        Ok(self.maybe(key, read_count)?.map(measure::Fraction::to_f64))
    }

    /// A number of pieces.
    pub(super) fn count(&self, key: &'static str) -> Result<f64, ReckonError> {
        self.maybe_count(key)?.ok_or_else(|| self.missing(key))
    }

    /// A plain number.
    pub(super) fn number(&self, key: &'static str) -> Result<f64, ReckonError> {
        let typed = self.typed.get(key).ok_or_else(|| self.missing(key))?;
        typed.replace(',', ".").parse::<f64>().ok().filter(|number| number.is_finite()).ok_or_else(|| {
            ReckonError::NoNumber { key, typed: typed.clone(), example: self.sum.example_of(self.input(key)) }
        })
    }

    /// A word of the input's list that may be left out.
    pub(super) fn maybe_word(&self, key: &'static str) -> Result<Option<&'static str>, ReckonError> {
        let Some(typed) = self.typed.get(key) else { return Ok(None) };
        let Kind::Word(words) = self.input(key).kind else {
            unreachable!("only inputs with a list are read as words");
        };
        let wanted = typed.to_lowercase().replace([' ', '_'], "-");
        match words.iter().find(|word| **word == wanted) {
            Some(word) => Ok(Some(word)),
            None => Err(self.unknown(key, words.iter().map(|word| (*word).to_owned()).collect())),
        }
    }

    /// A word of the input's list.
    pub(super) fn word(&self, key: &'static str) -> Result<&'static str, ReckonError> {
        self.maybe_word(key)?.ok_or_else(|| self.missing(key))
    }

    /// A name as it was typed, that may be left out.
    pub(super) fn maybe_name(&self, key: &'static str) -> Option<&str> {
        self.typed.get(key).map(String::as_str)
    }

    /// A name as it was typed.
    pub(super) fn name(&self, key: &'static str) -> Result<&str, ReckonError> {
        self.maybe_name(key).ok_or_else(|| self.missing(key))
    }

    /// The fault of a word or name that is not known.
    pub(super) fn unknown(&self, key: &'static str, known: Vec<String>) -> ReckonError {
        ReckonError::Unknown { key, typed: self.typed.get(key).cloned().unwrap_or_default(), known }
    }
}

/// What kind of figure a text is, if it is one.
fn name_kind(typed: &str) -> Option<Kind> {
    if read_mass(typed).is_ok() {
        Some(Kind::Mass)
    } else if read_volume(typed).is_ok() {
        Some(Kind::Volume)
    } else if read_temp(typed).is_ok() {
        Some(Kind::Temp)
    } else if read_length(typed).is_ok() {
        Some(Kind::Length)
    } else if read_minutes(typed).is_ok() {
        Some(Kind::Span)
    } else if read_power(typed).is_ok() {
        Some(Kind::Power)
    } else if read_percent(typed).is_ok() {
        Some(Kind::Percent)
    } else if read_pressure(typed).is_ok() {
        Some(Kind::Gauge)
    } else if read_air_pressure(typed).is_ok() {
        Some(Kind::Air)
    } else {
        None
    }
}

/// A figure with its unit, in a note.
pub(super) fn say(value: f64, unit: &str) -> String {
    format!("{} {unit}", Figure(value))
}
