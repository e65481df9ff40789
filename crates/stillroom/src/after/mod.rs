//! What comes after: signs and seals, cuts of power, a hot pot, food in oil, ferments, dried food.
//!
//! Each command turns words into a question for `kitchen` and the answer into text for a worried person: the verdict
//! first, then what to do now, then why, then whom to ask.

mod cool;
mod dried;
mod ferment;
mod keeps;
mod oil;
mod outage;
mod seals;
mod sign;

use anyhow::{Context, Result};
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use kitchen::after::{EATEN_ALREADY, Moment, Told, WHOM_TO_ASK};
use kitchen::wording::as_sentence;
use serde::Serialize;

use crate::cited::{Cited, lay_out_sources};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;

pub(crate) use cool::CoolCommand;
pub(crate) use dried::DriedCommand;
pub(crate) use ferment::FermentCommand;
pub(crate) use keeps::KeepsCommand;
pub(crate) use oil::OilCommand;
pub(crate) use outage::OutageCommand;
pub(crate) use seals::SealsCommand;
pub(crate) use sign::SignCommand;

/// The moment to reckon from: the one that was typed, or that of the clock on the wall.
fn read_now(typed: Option<&str>) -> Result<Moment> {
    let Some(typed) = typed else { return Ok(Moment::of_now(&jiff::ZonedDateTime::now())) };
    let shown = typed.trim().parse::<DateTime>().ok();
    let now = shown.and_then(|shown| shown.to_zoned_datetime(TimeZone::system()).ok());
    now.map(|now| Moment::of_now(&now)).ok_or_else(|| {
        wrong_question(format!(
            "the moment to reckon from is {typed:?}; hint: write the day and the time, such as \"2026-09-12 23:10\""
        ))
    })
}

/// A moment that is known to the day, or to the minute.
fn word_day_or_moment(moment: &Moment) -> String {
    if moment.is_midnight() { moment.day_in_words() } else { moment.in_words() }
}

/// The answer as JSON, or as the text laid out for it.
fn finish<T: Serialize>(
    answer: &T,
    refused: bool,
    json: bool,
    lay_out: impl FnOnce() -> String,
) -> Result<Answered> {
    let text = if json {
        serde_json::to_string_pretty(answer).context("the answer cannot be written as JSON")? + "\n"
    } else {
        lay_out()
    };
    Ok(Answered { text, refused })
}

/// Rows below one another: the figure in the margin, the sentence, the place it comes from.
fn lay_out_told(leaf: &mut Leaf, cited: &mut Cited<'_>, told: &[Told]) {
    for one in told {
        leaf.line(one.figure.as_deref().unwrap_or_default(), &as_sentence(&one.text));
        leaf.under(&place_of(cited, one));
    }
}

/// A section of rows; none where there are none.
fn lay_out_section(leaf: &mut Leaf, cited: &mut Cited<'_>, title: &str, told: &[Told]) {
    if !told.is_empty() {
        leaf.section(title);
        lay_out_told(leaf, cited, told);
    }
}

/// Where a row stands; one that nobody saw in print says so.
fn place_of(cited: &mut Cited<'_>, told: &Told) -> String {
    let place = cited.mark_written(&told.source);
    match told.basis.as_str() {
        "memory" => format!("{place} (recalled, not seen in print)"),
        "derived" => format!("{place} (our reading)"),
        _ => place,
    }
}

/// What was said and not understood.
fn lay_out_not_understood(leaf: &mut Leaf, words: &[String]) {
    if !words.is_empty() {
        leaf.section("Not understood");
        leaf.line("", &format!("{}. Nothing here speaks of it: ask.", words.join(", ")));
    }
}

/// Whom to ask, and the publications.
fn lay_out_end(mut leaf: Leaf, cited: &Cited<'_>, somebody_may_have_eaten: bool) -> String {
    leaf.section("Whom to ask");
    if somebody_may_have_eaten {
        leaf.line("", EATEN_ALREADY);
    }
    leaf.line("", WHOM_TO_ASK);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}
