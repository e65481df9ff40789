//! A cut of power: how long closed doors hold, and what to do with each food.

mod door;
mod food;

use almanac::{Almanac, OutageAct, OutagePlace, OutageRule, OutageState};
use measure::{Minutes, Temp, read_minutes, read_temp};
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past, read_past_end};

pub use door::DoorClock;
pub use food::{FoodAnswer, FoodVerdict};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct OutageWords {
    /// Foods and questions, each in the person's own words.
    pub about: Vec<String>,
    /// When the power was lost.
    pub lost: Option<String>,
    /// When it came back; none while it is still out.
    pub back: Option<String>,
    /// How full the freezer is: `full`, `half`.
    pub freezer: Option<String>,
    /// Whether the doors were opened.
    pub opened: bool,
    /// Where the food is: `freezer`, `refrigerator`.
    pub place: Option<String>,
    /// What a thermometer in the food reads.
    pub temp: Option<String>,
    /// How long the food has been warm.
    pub warm_for: Option<String>,
    /// Whether ice crystals are left in it.
    pub crystals: bool,
}

/// What is known of a food, read from a person's words.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Known {
    /// Where it is.
    place: Option<OutagePlace>,
    /// How warm it is.
    temp: Option<Temp>,
    /// How long it has been warm, as somebody said or as the cut lasted.
    warm_for: Option<Minutes>,
    /// Whether ice crystals are left.
    crystals: bool,
    /// How long the power was out, doors shut.
    shut_for: Option<Minutes>,
}

/// What to do in a cut of power.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OutageAnswer {
    /// `outage/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: OutageWords,
    /// Now.
    pub now: Moment,
    /// When the power was lost.
    pub lost: Option<Moment>,
    /// When it came back.
    pub back: Option<Moment>,
    /// How long closed doors hold; none when they were opened or nobody knows since when.
    pub doors: Vec<DoorClock>,
    /// What to do with each food, the strictest first.
    pub foods: Vec<FoodAnswer>,
    /// What is printed about the questions.
    pub told: Vec<Told>,
    /// Whether one of the questions is answered with throwing away.
    #[serde(skip)]
    throws_away: bool,
    /// Words that no row understood.
    pub not_understood: Vec<String>,
}

impl OutageAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        let refused = |food: &FoodAnswer| matches!(food.verdict, FoodVerdict::Discard | FoodVerdict::Ask);
        self.throws_away || self.foods.iter().any(refused)
    }
}

/// Says what to do in a cut of power.
///
/// # Errors
///
/// When nothing is asked or nothing of it is understood, when a moment, a temperature or a time cannot be read, or when
/// the moments stand in the wrong order.
pub fn judge_outage(
    almanac: &Almanac,
    words: &OutageWords,
    now: &Moment,
) -> Result<OutageAnswer, AfterError> {
    let (lost, back) = read_cut(words, now)?;
    let load = words.freezer.as_deref().map(door::read_load).transpose()?;
    let shut_for = lost.as_ref().map(|lost| lost.minutes_until(back.as_ref().unwrap_or(now)));
    let known = Known {
        place: words.place.as_deref().map(read_place).transpose()?,
        temp: words
            .temp
            .as_deref()
            .map(read_temp)
            .transpose()
            .map_err(|fault| AfterError::unreadable("temperature", fault))?,
        warm_for: read_warm_for(words)?.or(shut_for),
        crystals: words.crystals,
        shut_for: shut_for.filter(|_| !words.opened),
    };
    let mut foods = Vec::new();
    let mut told = Vec::new();
    let mut not_understood = Vec::new();
    let mut throws_away = false;
    for typed in words.about.iter().filter(|typed| !typed.trim().is_empty()) {
        let found = almanac.find_outage_rules(typed);
        let (questions, charts): (Vec<&OutageRule>, Vec<&OutageRule>) =
            found.rows.into_iter().partition(|row| is_question(row));
        let charts: Vec<&OutageRule> = charts
            .into_iter()
            .filter(|row| {
                known.place.is_none_or(|place| row.place == place) && row.state != OutageState::Clock
            })
            .collect();
        if questions.is_empty() && charts.is_empty() {
            return Err(AfterError::NotUnderstood { typed: typed.clone(), known: almanac.askable_outage() });
        }
        let mut judged = food::judge_foods(almanac, &charts, &known, now);
        if !found.not_understood.is_empty() {
            // Apple pie is no apple: nothing is kept on words that were understood in part.
            judged.iter_mut().for_each(|food| food.verdict = food.verdict.max(FoodVerdict::Ask));
        }
        foods.extend(judged);
        throws_away |= questions.iter().any(|row| row.act == OutageAct::Discard);
        told.extend(questions.into_iter().map(Told::from));
        not_understood.extend(found.not_understood);
    }
    if lost.is_none() && foods.is_empty() && told.is_empty() {
        return Err(AfterError::NothingAsked { known: almanac.askable_outage() });
    }
    foods.sort_by_key(|food| std::cmp::Reverse(food.verdict));
    let doors = match lost.as_ref().filter(|_| !words.opened) {
        Some(lost) => door::door_clocks(almanac, lost, back.as_ref().unwrap_or(now), load),
        None => Vec::new(),
    };
    Ok(OutageAnswer {
        format: "outage/1",
        question: words.clone(),
        now: now.clone(),
        lost,
        back,
        doors,
        foods,
        told,
        throws_away,
        not_understood,
    })
}

/// Whether a row answers a question of its own, and not for a food.
fn is_question(row: &OutageRule) -> bool {
    row.state == OutageState::Question || (row.state == OutageState::Cold && row.place == OutagePlace::Any)
}

fn read_cut(words: &OutageWords, now: &Moment) -> Result<(Option<Moment>, Option<Moment>), AfterError> {
    const LOST: &str = "moment the power was lost";
    const BACK: &str = "moment the power came back";
    let lost = words.lost.as_deref().map(|typed| read_past(LOST, typed, now)).transpose()?;
    let back = words.back.as_deref().map(|typed| read_past_end(BACK, typed, now)).transpose()?;
    if let (Some(lost), Some(back)) = (&lost, &back)
        && back < lost
    {
        let (first, second) = (lost.in_words(), back.in_words());
        return Err(AfterError::WrongOrder { earlier: LOST, first, later: BACK, second });
    }
    Ok((lost, back))
}

fn read_warm_for(words: &OutageWords) -> Result<Option<Minutes>, AfterError> {
    let read = words.warm_for.as_deref().map(read_minutes).transpose();
    read.map_err(|problem| AfterError::unreadable("time the food was warm", problem))
}

fn read_place(typed: &str) -> Result<OutagePlace, AfterError> {
    match typed.trim().to_lowercase().as_str() {
        "freezer" => Ok(OutagePlace::Freezer),
        "refrigerator" | "fridge" => Ok(OutagePlace::Refrigerator),
        _ => Err(AfterError::UnknownWord {
            what: "place for food",
            typed: typed.to_owned(),
            known: vec!["freezer".to_owned(), "refrigerator".to_owned()],
        }),
    }
}

#[cfg(test)]
mod tests;
