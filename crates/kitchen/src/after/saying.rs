//! What an answer comes to, in the one sentence that is read first: on the command line and on a page.

use measure::{Temp, write_temp_celsius, write_temp_fahrenheit};

use super::cooling::{CoolingAnswer, CoolingState, Mark};
use super::dried::{DriedAnswer, DriedVerdict};
use super::ferment::FermentAnswer;
use super::keeps::KeepsAnswer;
use super::oil::{OilAnswer, OilVerdict};
use super::outage::{FoodVerdict, OutageAnswer};
use super::seals::{SealsAnswer, SealsState};
use super::sign::{SignAnswer, SignVerdict};
use super::when::Moment;
use crate::wording::capitalize;

/// Food that goes.
const DISCARD: &str = "Throw it away. Do not taste it.";
/// Food of which nothing printed speaks.
const ASK: &str = "Nothing printed decides this. Keep it apart, do not taste it, and ask.";

/// What a sign comes to.
#[must_use]
pub fn say_sign(answer: &SignAnswer) -> &'static str {
    match answer.verdict {
        SignVerdict::Discard => DISCARD,
        SignVerdict::Ask => ASK,
        SignVerdict::AsUnsealed => "Treat the jar as unsealed.",
        SignVerdict::UseSoon => "Into the refrigerator now, and use it within the days printed.",
        SignVerdict::UseFirst => "Keep it closed, and use it first.",
        SignVerdict::Quality => "By this sign alone a matter of quality.",
        SignVerdict::Told => "What is printed about it. It says nothing for any jar.",
    }
}

/// Where a load stands after its process.
#[must_use]
pub fn say_seals(answer: &SealsAnswer) -> String {
    let before = answer.before.as_ref().map(Moment::in_words).unwrap_or_default();
    let was_wrong = answer.question.process_was_wrong;
    match (answer.state, &answer.look_at) {
        (SealsState::Cooling, Some(look)) => format!("Hands off. Look at the seals {}.", look.in_words()),
        (SealsState::Cooling | SealsState::Look, _) if was_wrong => {
            format!("Do it before {before}: process again, refrigerate or freeze.")
        }
        (SealsState::Cooling | SealsState::Look, _) => {
            format!("Look at the seals now. An unsealed jar has a way out before {before}.")
        }
        (SealsState::TooLate, _) if was_wrong => {
            "Too late. Throw all these jars away untasted, sealed or not.".to_owned()
        }
        (SealsState::TooLate, _) => {
            "Too late for a jar that did not seal. Throw it away untasted.".to_owned()
        }
    }
}

/// What becomes of a food after a cut of power.
#[must_use]
pub fn say_food(verdict: FoodVerdict) -> &'static str {
    match verdict {
        FoodVerdict::Keep => "keep it.",
        FoodVerdict::Refreeze => "freeze it again, or cook it.",
        FoodVerdict::Measure => "measure it, and look for ice.",
        FoodVerdict::CoolNow => "make it cold or cook it now.",
        FoodVerdict::Ask => "nothing is printed for it. Keep it cold and apart, and ask.",
        FoodVerdict::Discard => "throw it away. Do not taste it.",
    }
}

/// What a cut of power comes to.
#[must_use]
pub fn say_outage(answer: &OutageAnswer) -> String {
    match (answer.foods.as_slice(), &answer.lost, &answer.back) {
        ([food], _, _) => format!("{}: {}", capitalize(&food.food), say_food(food.verdict)),
        ([_, ..], _, _) => "Food by food, the strictest first.".to_owned(),
        ([], Some(_), None) => "Keep the doors shut.".to_owned(),
        ([], Some(_), Some(_)) => "The power is back. Measure before you keep anything.".to_owned(),
        ([], None, _) => "What is printed.".to_owned(),
    }
}

/// Where a cooling pot stands.
#[must_use]
pub fn say_cooling(answer: &CoolingAnswer) -> String {
    match answer.state {
        CoolingState::Cold => "Cold enough. Cover it and put it away.".to_owned(),
        CoolingState::OnTheWay => match answer.marks.iter().find(|mark| mark.by >= answer.now) {
            Some(mark) => say_mark(mark),
            None => "On its way.".to_owned(),
        },
        CoolingState::Measure => "A mark is past. Measure the middle of the pot now.".to_owned(),
        CoolingState::TooLate => "Too late. Throw it away; do not taste it.".to_owned(),
    }
}

/// How cold a pot must be by when.
#[must_use]
pub fn say_mark(mark: &Mark) -> String {
    // Never rounds: the marks are small whole degrees.
    let at_most = Temp::fahrenheit(mark.at_most_f as f64);
    format!("{} or below by {}.", on_both_scales(at_most), mark.by.in_words())
}

/// A temperature as the tables print it, and for a thermometer in Celsius.
pub(super) fn on_both_scales(temp: Temp) -> String {
    format!("{} ({})", write_temp_fahrenheit(temp), write_temp_celsius(temp))
}

/// What becomes of food in oil.
#[must_use]
pub fn say_oil(answer: &OilAnswer) -> String {
    match (answer.verdict, &answer.until) {
        (OilVerdict::Refrigerate, Some(until)) => {
            let last = if until.is_midnight() { until.last_day_in_words() } else { until.in_words() };
            format!("In the refrigerator, {last} at the latest. Or frozen.")
        }
        _ => DISCARD.to_owned(),
    }
}

/// What a ferment comes to.
#[must_use]
pub fn say_ferment(answer: &FermentAnswer) -> &'static str {
    match answer.verdict {
        "discard" => DISCARD,
        "do-not" => "Do not.",
        "not-tested" => "Not tested.",
        _ => "Nothing printed bars it. Mind what follows.",
    }
}

/// What becomes of dried food.
#[must_use]
pub fn say_dried(answer: &DriedAnswer) -> String {
    match (answer.verdict, &answer.conditioned) {
        (DriedVerdict::Discard, _) => DISCARD.to_owned(),
        (DriedVerdict::Ask, _) => ASK.to_owned(),
        (DriedVerdict::DryAgain, _) => {
            "Back into the dryer now; then condition it from the first day.".to_owned()
        }
        (DriedVerdict::Condition, Some(until)) => {
            format!("Shake and look every day, {} the last.", until.last_day_in_words())
        }
        (DriedVerdict::Condition, None) => "Condition it: shake and look every day.".to_owned(),
        (DriedVerdict::Store, _) => "Conditioned as long as printed. Into the dark, airtight.".to_owned(),
    }
}

/// How long food stays at its best.
#[must_use]
pub fn say_keeping(answer: &KeepsAnswer) -> String {
    match (&answer.best_before, answer.told.is_empty()) {
        (_, true) => "Nothing is printed for so warm a store.".to_owned(),
        (Some(before), false) if *before <= answer.now => {
            format!("Past its best since {}. Look at it before you eat from it.", before.date_in_words())
        }
        (Some(before), false) => format!("Best eaten before {}.", before.date_in_words()),
        (None, false) => "How long it stays at its best, as printed.".to_owned(),
    }
}
