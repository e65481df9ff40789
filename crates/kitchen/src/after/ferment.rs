//! Ferments: salt, temperature, time, surface growth, a pH that may only close, and where the finished ferment goes.

use std::cmp::Reverse;

use almanac::{Almanac, FermentName, FermentRule, FermentTopic, FermentVerdict};
use measure::{Minutes, read_percent, read_temp};
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past_day};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct FermentWords {
    /// What ferments.
    pub product: String,
    /// Its salt, as a share of the weight: `2.25 %`.
    pub salt: Option<String>,
    /// How warm it stands.
    pub temp: Option<String>,
    /// The day it was begun.
    pub started: Option<String>,
    /// What is seen, each in the person's own words.
    pub seen: Vec<String>,
    /// A pH that somebody measured.
    pub ph: Option<String>,
}

/// One thing about a ferment, and what it comes to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FermentPart {
    /// `salt`, `temperature`, `time`, `sign`, `ph`, `keep`, `shelf`, `gap`.
    pub part: &'static str,
    /// What it comes to: `discard`, `do-not`, `not-tested`, `care`, `tested`.
    pub verdict: &'static str,
    /// In one sentence, where the rows do not say it.
    pub text: Option<String>,
    /// The rows.
    pub told: Vec<Told>,
    #[serde(skip)]
    weight: FermentVerdict,
}

/// What is to be said of a ferment.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FermentAnswer {
    /// `ferment/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: FermentWords,
    /// Now.
    pub now: Moment,
    /// The ferment.
    pub product: String,
    /// The strictest of its parts.
    pub verdict: &'static str,
    /// Its parts, the strictest first.
    pub parts: Vec<FermentPart>,
    /// The first moment it may be done.
    pub done_from: Option<Moment>,
    /// The moment by which it should be done.
    pub done_by: Option<Moment>,
    /// The food under which a shelf process is printed; none where none is.
    pub shelf_process: Option<String>,
    /// Words that no row understood.
    pub not_understood: Vec<String>,
}

impl FermentAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        let strictest = self.parts.iter().map(|part| part.weight).min();
        strictest.is_some_and(|weight| weight <= FermentVerdict::NotTested)
    }
}

/// Says what is to be said of a ferment.
///
/// # Errors
///
/// When the ferment or everything that is seen on it is not understood, when several ferments are meant, or when a
/// figure or the day cannot be read.
pub fn look_at_ferment(
    almanac: &Almanac,
    words: &FermentWords,
    now: &Moment,
) -> Result<FermentAnswer, AfterError> {
    let name = require_ferment(almanac, &words.product)?;
    let asked = Asked { almanac, name };
    let started =
        words.started.as_deref().map(|typed| read_past_day("day it was begun", typed, now)).transpose()?;
    let temp = words.temp.as_deref().map(read_temp).transpose();
    let temp = temp.map_err(|problem| AfterError::unreadable("temperature", problem))?;
    let salt = words.salt.as_deref().map(read_percent).transpose();
    let salt = salt.map_err(|problem| AfterError::unreadable("share of salt", problem))?;
    let ph = words.ph.as_deref().map(read_ph).transpose()?;
    let mut parts = vec![asked.salt(salt.map(|salt| salt.as_percent()))];
    parts.extend(temp.map(|temp| asked.temperature(temp.as_fahrenheit())));
    let (time, days) = asked.time(temp.map(|temp| temp.as_fahrenheit()));
    parts.extend(time);
    let mut not_understood = Vec::new();
    for typed in words.seen.iter().filter(|typed| !typed.trim().is_empty()) {
        let (part, unknown) = asked.sign(typed)?;
        parts.push(part);
        not_understood.extend(unknown);
    }
    parts.extend(ph.map(|ph| asked.acid(ph)));
    parts.extend(asked.gap());
    parts.push(asked.keep());
    parts.push(asked.shelf());
    let mut parts: Vec<FermentPart> = parts.into_iter().filter(FermentPart::says_something).collect();
    // What bars it comes first; the rest stays in its order.
    parts.sort_by_key(|part| part.weight.min(FermentVerdict::Care));
    let strictest = parts.iter().map(|part| part.weight).min().unwrap_or(FermentVerdict::NotTested);
    let day = |days: u32| Minutes(days * 24 * 60);
    let done = started.as_ref().zip(days);
    Ok(FermentAnswer {
        format: "ferment/1",
        question: words.clone(),
        now: now.clone(),
        product: name.product.to_string(),
        verdict: strictest.as_str(),
        parts,
        done_from: done.map(|(begun, (from, _))| begun.plus(day(from))),
        done_by: done.map(|(begun, (_, by))| begun.plus(day(by))),
        shelf_process: asked.process(),
        not_understood,
    })
}

fn require_ferment<'a>(almanac: &'a Almanac, typed: &str) -> Result<&'a FermentName, AfterError> {
    let known = || almanac.ferment_names().iter().map(|name| name.product.to_string()).collect();
    if typed.trim().is_empty() {
        return Err(AfterError::NothingAsked { known: known() });
    }
    let exact = almanac.ferment_names().iter().find(|name| name.product.eq_ignore_ascii_case(typed.trim()));
    let found = almanac.find_ferment_names(typed).rows;
    match (exact, found.as_slice()) {
        (Some(name), _) => Ok(name),
        (None, [name]) => Ok(name),
        (None, []) => Err(AfterError::NotUnderstood { typed: typed.to_owned(), known: known() }),
        (None, several) => Err(AfterError::UnknownWord {
            what: "single ferment",
            typed: typed.to_owned(),
            known: several.iter().map(|name| name.product.to_string()).collect(),
        }),
    }
}

/// Reads a pH: `3.6`, `pH 3.6`.
fn read_ph(typed: &str) -> Result<f64, AfterError> {
    let text = typed.trim().trim_start_matches(['p', 'P', 'h', 'H', ' ']).replace(',', ".");
    let ph = text.parse::<f64>().ok().filter(|ph| (0.0..=14.0).contains(ph));
    ph.ok_or_else(|| AfterError::NoPh { typed: typed.to_owned() })
}

/// A ferment that is asked about.
struct Asked<'a> {
    almanac: &'a Almanac,
    name: &'a FermentName,
}

impl<'a> Asked<'a> {
    fn rows(&self, topic: FermentTopic) -> Vec<&'a FermentRule> {
        let (almanac, name) = (self.almanac, self.name);
        almanac.ferment_rules_for(&name.product, topic).collect()
    }

    /// The band of salt. What salt never is stands under every answer.
    fn salt(&self, percent: Option<f64>) -> FermentPart {
        let bands = self.rows(FermentTopic::Salt);
        let others = [self.rows(FermentTopic::Brine), self.rows(FermentTopic::SaltNever)].concat();
        match percent {
            Some(percent) if !bands.is_empty() => {
                let mut part = part_of("salt", bands_holding(&bands, percent));
                if part.told.is_empty() {
                    part = FermentPart::without_row(
                        "salt",
                        format!("No line is printed for {percent} % of salt."),
                    );
                }
                part.told.extend(others.into_iter().map(Told::from));
                part
            }
            Some(percent) => FermentPart {
                told: others.into_iter().map(Told::from).collect(),
                ..FermentPart::without_row(
                    "salt",
                    format!("No band of salt is printed for this ferment; {percent} % cannot be judged."),
                )
            },
            None => {
                let printed: Vec<&FermentRule> = bands
                    .into_iter()
                    .filter(|row| row.verdict == FermentVerdict::Tested)
                    .chain(others)
                    .collect();
                part_of("salt", printed).weighing(FermentVerdict::Care)
            }
        }
    }

    fn temperature(&self, fahrenheit: f64) -> FermentPart {
        let bands = self.rows(FermentTopic::Temperature);
        let held = bands_holding(&bands, fahrenheit);
        if held.is_empty() {
            let text = format!(
                "No line is printed for {fahrenheit:.0} °F; where one stands beside it, take the longer time."
            );
            return FermentPart {
                told: bands.into_iter().map(Told::from).collect(),
                ..FermentPart::without_row("temperature", text)
            };
        }
        part_of("temperature", held)
    }

    /// The days until it is done: those of the band that holds the temperature, else the longest printed.
    fn time(&self, fahrenheit: Option<f64>) -> (Option<FermentPart>, Option<(u32, u32)>) {
        let rows = self.rows(FermentTopic::Time);
        let holds = |row: &&FermentRule| {
            let band = row.at.split_once('-').and_then(|(low, high)| low.parse().ok().zip(high.parse().ok()));
            band.zip(fahrenheit)
                .is_some_and(|((low, high), now): ((f64, f64), f64)| (low..=high).contains(&now))
        };
        let mut meant: Vec<&FermentRule> = rows.iter().copied().filter(holds).collect();
        if meant.is_empty() {
            meant = rows;
        }
        let days = |row: &&FermentRule| {
            let (from, to) = row.band();
            // Never truncates: days are small whole numbers.
            from.zip(to).map(|(from, to)| (from as u32, to as u32))
        };
        let longest = meant.iter().filter_map(days).max();
        let mut part = part_of("time", meant);
        part.weigh(FermentVerdict::Care);
        (Some(part), longest)
    }

    fn sign(&self, typed: &str) -> Result<(FermentPart, Vec<String>), AfterError> {
        let found = self.almanac.find_ferment_signs(typed);
        let rows: Vec<&FermentRule> =
            found.rows.into_iter().filter(|row| row.is_for(&self.name.product)).collect();
        if rows.is_empty() {
            let known = self.almanac.askable_ferment_signs();
            return Err(AfterError::NotUnderstood { typed: typed.to_owned(), known });
        }
        let mut part = part_of("sign", rows);
        if !found.not_understood.is_empty() {
            part.weigh(FermentVerdict::NotTested);
        }
        Ok((part, found.not_understood))
    }

    /// A reading closes above the printed line. Below it, it says nothing: a strip is no proof, and no row opens on it.
    fn acid(&self, ph: f64) -> FermentPart {
        let closing: Vec<&FermentRule> = self
            .rows(FermentTopic::Ph)
            .into_iter()
            .filter(|row| row.band().0.is_none_or(|limit| ph > limit))
            .collect();
        if closing.is_empty() {
            let text =
                "A reading opens nothing. Time at temperature, the signs and the cold decide.".to_owned();
            return FermentPart {
                text: Some(text),
                told: self.rows(FermentTopic::Ph).into_iter().map(Told::from).collect(),
                ..FermentPart::without_row("ph", String::new()).weighing(FermentVerdict::Care)
            };
        }
        part_of("ph", closing)
    }

    fn gap(&self) -> Option<FermentPart> {
        let rows = self.rows(FermentTopic::Gap);
        (!rows.is_empty()).then(|| part_of("gap", rows))
    }

    fn keep(&self) -> FermentPart {
        let rows = self.rows(FermentTopic::Keep);
        if rows.is_empty() {
            let text =
                "Nothing is printed on how long it keeps: in the refrigerator, looked at, and eaten soon.";
            return FermentPart::without_row("keep", text.to_owned()).weighing(FermentVerdict::Care);
        }
        part_of("keep", rows)
    }

    fn process(&self) -> Option<String> {
        let process = self.name.process.as_ref()?;
        self.almanac.product(process).map(|product| product.id.to_string())
    }

    fn shelf(&self) -> FermentPart {
        let text = match self.process() {
            Some(product) => format!(
                "For the shelf a process is printed, for the finished ferment made by its formula: \
                 `stillroom clear --food {product}` says which."
            ),
            None => {
                "No shelf process is printed for this ferment, and there is none of ours: it stays in the \
                     refrigerator."
                    .to_owned()
            }
        };
        FermentPart::without_row("shelf", text).weighing(FermentVerdict::Care)
    }
}

impl FermentPart {
    /// A part that no row decides.
    fn without_row(part: &'static str, text: String) -> Self {
        let weight = FermentVerdict::NotTested;
        Self { part, verdict: weight.as_str(), text: Some(text), told: Vec::new(), weight }
    }

    fn weighing(mut self, weight: FermentVerdict) -> Self {
        (self.weight, self.verdict) = (weight, weight.as_str());
        self
    }

    /// Makes a part at least as strict as this.
    fn weigh(&mut self, at_least: FermentVerdict) {
        let weight = self.weight.min(at_least);
        (self.weight, self.verdict) = (weight, weight.as_str());
    }

    fn says_something(&self) -> bool {
        !self.told.is_empty() || self.text.is_some()
    }
}

/// A part that rows decide, the strictest first. A row that lets something be counts only when it was read in a source
/// of full rank.
fn part_of(part: &'static str, mut rows: Vec<&FermentRule>) -> FermentPart {
    let weight_of = |row: &FermentRule| match row.verdict {
        FermentVerdict::Tested if !row.citation.may_be_called_tested() => FermentVerdict::NotTested,
        other => other,
    };
    rows.sort_by_key(|row| weight_of(row));
    let weight = rows.first().map_or(FermentVerdict::Care, |row| weight_of(row));
    let told = rows.into_iter().map(Told::from).collect();
    FermentPart { part, verdict: weight.as_str(), text: None, told, weight }
}

/// The bands that hold a value. A band that is printed holds both its ends and comes first where two meet.
fn bands_holding<'a>(bands: &[&'a FermentRule], value: f64) -> Vec<&'a FermentRule> {
    let holds = |row: &&&FermentRule| {
        let (from, to) = row.band();
        let is_printed = row.verdict == FermentVerdict::Tested;
        let above = from.is_none_or(|from| value > from || (is_printed || to.is_some()) && value >= from);
        above && to.is_none_or(|to| value < to || is_printed && value <= to)
    };
    let mut held: Vec<&FermentRule> = bands.iter().filter(holds).copied().collect();
    held.sort_by_key(|row| Reverse(row.verdict));
    held.truncate(1);
    held
}

#[cfg(test)]
mod tests;
