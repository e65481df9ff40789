//! The look at the seals, the last minute to begin again, and the ways out for a jar that did not seal.

use almanac::{Almanac, SignRule, SignTopic};
use measure::{Length, Minutes, write_length_in};
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct SealsWords {
    /// When the heat went off; none when nobody wrote it down.
    pub heat_off: Option<String>,
    /// Whether something was wrong with the process.
    pub process_was_wrong: bool,
}

/// Where a load stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SealsState {
    /// The jars are still cooling: hands off.
    Cooling,
    /// The seals may be looked at, and an unsealed jar has ways out.
    Look,
    /// Too late for an unsealed jar, or nobody knows when the heat went off.
    TooLate,
}

/// A way out for a jar that did not seal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WayOut {
    /// `begin-again`, `refrigerate` or `freeze`.
    pub way: &'static str,
    /// What to do, in one sentence.
    pub text: String,
    /// What is printed about it; where several are, the strictest first.
    pub told: Vec<Told>,
}

/// When the seals are looked at, and what becomes of a jar that did not seal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SealsAnswer {
    /// `seals/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: SealsWords,
    /// Now.
    pub now: Moment,
    /// When the heat went off.
    pub heat_off: Option<Moment>,
    /// Where the load stands.
    pub state: SealsState,
    /// When the seals may first be looked at.
    pub look_at: Option<Moment>,
    /// An unsealed jar must be in a way out before this.
    pub before: Option<Moment>,
    /// How long to wait, as printed.
    pub wait: Vec<Told>,
    /// How a seal is looked at.
    pub tests: Vec<Told>,
    /// The rows that set the last minute.
    pub clock: Vec<Told>,
    /// The ways out for an unsealed jar; none when it is too late.
    pub ways: Vec<WayOut>,
    /// What is thrown away.
    pub discard: Vec<Told>,
}

impl SealsAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        self.state == SealsState::TooLate
    }
}

/// Plans the look at the seals.
///
/// # Errors
///
/// When the moment the heat went off cannot be read or is still to come.
pub fn plan_seals(almanac: &Almanac, words: &SealsWords, now: &Moment) -> Result<SealsAnswer, AfterError> {
    let heat_off = words.heat_off.as_deref().map(|typed| read_past("moment the heat went off", typed, now));
    let heat_off = heat_off.transpose()?;
    let clock = if words.process_was_wrong { SignTopic::WrongProcess } else { SignTopic::BeginAgain };
    let wait = earliest(almanac, SignTopic::SealWait);
    let again = earliest(almanac, clock);
    let look_at = heat_off.as_ref().zip(wait).map(|(off, wait)| off.plus(wait));
    let before = heat_off.as_ref().zip(again).map(|(off, again)| off.plus(again));
    let state = match &before {
        Some(before) if now < before => {
            let cooling = look_at.as_ref().is_some_and(|look| now < look) && !words.process_was_wrong;
            if cooling { SealsState::Cooling } else { SealsState::Look }
        }
        // No row, no recorded time: it counts as late.
        _ => SealsState::TooLate,
    };
    let told = |topic: SignTopic| almanac.signs_for(topic).map(Told::from).collect::<Vec<_>>();
    let late = [told(SignTopic::TooLate), told(SignTopic::NoRecipe)].concat();
    let ways = match before.as_ref().filter(|_| state != SealsState::TooLate) {
        Some(before) => ways_out(almanac, before),
        None => Vec::new(),
    };
    Ok(SealsAnswer {
        format: "seals/1",
        question: words.clone(),
        now: now.clone(),
        heat_off,
        state,
        look_at,
        before,
        wait: told(SignTopic::SealWait),
        tests: told(SignTopic::SealTest),
        clock: told(clock),
        ways,
        discard: late,
    })
}

/// The shortest time that the rows of a topic print.
fn earliest(almanac: &Almanac, topic: SignTopic) -> Option<Minutes> {
    let lows = almanac.signs_for(topic).filter_map(|row| Some(row.figure?.as_minutes()?.0));
    lows.min()
}

fn ways_out(almanac: &Almanac, before: &Moment) -> Vec<WayOut> {
    let told = |topic: SignTopic| almanac.signs_for(topic).map(Told::from).collect::<Vec<_>>();
    let limit = before.in_words();
    let mut ways = vec![WayOut {
        way: "begin-again",
        text: format!("Begin again before {limit}: new lid, hot pack, the full time."),
        told: [told(SignTopic::AgainHow), told(SignTopic::AgainNot)].concat(),
    }];
    let cold = told(SignTopic::Refrigerate);
    if !cold.is_empty() {
        ways.push(WayOut {
            way: "refrigerate",
            text: format!(
                "Or into the refrigerator before {limit}, first in the line to eat. The sources differ on how long; \
                 this is what each prints."
            ),
            told: cold,
        });
    }
    if let Some(room) = freezing_room(almanac) {
        ways.push(WayOut {
            way: "freeze",
            text: format!(
                "Or into the freezer before {limit}. Pour down first, until {} is left under the lid: a full jar \
                 cracks.",
                write_length_in(room)
            ),
            told: widest_first(almanac).into_iter().map(Told::from).collect(),
        });
    }
    ways
}

/// The most room that is printed.
fn freezing_room(almanac: &Almanac) -> Option<Length> {
    widest_first(almanac).first().and_then(|row| Some(row.figure?.as_length()?.1))
}

fn widest_first(almanac: &Almanac) -> Vec<&SignRule> {
    let inches = |row: &SignRule| {
        row.figure.and_then(|figure| figure.as_length()).map_or(0.0, |ends| ends.1.as_inches())
    };
    let mut rows: Vec<&SignRule> = almanac.signs_for(SignTopic::FreezeRoom).collect();
    rows.sort_by(|a, b| inches(b).total_cmp(&inches(a)));
    rows
}

#[cfg(test)]
mod tests {
    use almanac::Table;
    use proptest::prelude::*;

    use super::*;
    use crate::after::tests::{almanac, almanac_without, at as moment};

    fn off() -> Moment {
        moment("2026-09-12 15:40")
    }

    fn at(almanac: &Almanac, minutes: u32, wrong: bool) -> SealsAnswer {
        let words = SealsWords { heat_off: Some("2026-09-12 15:40".into()), process_was_wrong: wrong };
        plan_seals(almanac, &words, &off().plus(Minutes(minutes))).unwrap()
    }

    /// Source: USDA Complete Guide, 1994, Cooling Jars: 12 to 24 hours; Nebraska Extension, jars that did not seal:
    /// within 24 hours; the larger of the two printed headspaces for the freezer, 1 1/2 in (Nebraska).
    #[test]
    fn the_look_is_at_twelve_hours_and_the_last_minute_at_twenty_four() {
        let answer = at(almanac(), 13 * 60, false);
        assert_eq!(answer.state, SealsState::Look);
        assert_eq!(answer.look_at.map(|moment| moment.in_words()).as_deref(), Some("Sun 13 Sep, 03:40"));
        assert_eq!(answer.before.map(|moment| moment.in_words()).as_deref(), Some("Sun 13 Sep, 15:40"));
        let ways: Vec<&str> = answer.ways.iter().map(|way| way.way).collect();
        assert_eq!(ways, ["begin-again", "refrigerate", "freeze"]);
        assert!(answer.ways[2].text.contains("1 1/2 in"), "{}", answer.ways[2].text);
        assert_eq!(answer.ways[1].told.len(), 2, "the sources stand side by side");
    }

    #[test]
    fn at_the_last_minute_it_is_late_and_nothing_is_offered() {
        let almanac = almanac();
        assert_eq!(at(almanac, 24 * 60 - 1, false).state, SealsState::Look);
        let late = at(almanac, 24 * 60, false);
        assert!(late.is_refusal() && late.ways.is_empty() && !late.discard.is_empty());
        assert_eq!(at(almanac, 119, true).state, SealsState::Look);
        assert!(at(almanac, 120, true).is_refusal());
    }

    #[test]
    fn without_a_recorded_time_there_is_no_clock() {
        let answer = plan_seals(almanac(), &SealsWords::default(), &off()).unwrap();
        assert!(answer.is_refusal() && answer.before.is_none() && answer.ways.is_empty());
    }

    #[test]
    fn without_its_row_nothing_is_begun_again() {
        for id in ["REPRO-01", "REPRO-02"] {
            let without = almanac_without(Table::Signs, id);
            assert!(at(&without, 60, id == "REPRO-02").is_refusal(), "{id}");
        }
        let without = almanac_without(Table::Signs, "REPRO-05");
        assert!(at(&without, 13 * 60, false).ways[2].text.contains("until 1 in"), "the other figure is left");
    }

    proptest! {
        #[test]
        fn later_is_never_kinder(minutes in 0_u32..4000, more in 0_u32..4000, wrong: bool) {
            let almanac = almanac();
            let (early, late) = (at(almanac, minutes, wrong), at(almanac, minutes + more, wrong));
            prop_assert!(late.state >= early.state);
            prop_assert!(late.ways.len() <= early.ways.len());
        }

        #[test]
        fn a_wrong_process_is_never_kinder_than_a_right_one(minutes in 0_u32..4000) {
            let almanac = almanac();
            let (right, wrong) = (at(almanac, minutes, false), at(almanac, minutes, true));
            prop_assert!(wrong.before <= right.before);
            prop_assert!(wrong.ways.len() <= right.ways.len());
        }
    }
}
