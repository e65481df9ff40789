//! Cooling a large pot in time: two marks on the clock, and what helps.

use almanac::{Almanac, CoolingRule, CoolingTopic};
use measure::{Minutes, Temp, read_temp};
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct CoolingWords {
    /// When the pot came off the heat.
    pub off: String,
    /// What a thermometer in the middle of the food reads now.
    pub temp: Option<String>,
}

/// Where a pot stands, the kindest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum CoolingState {
    /// It is cold enough.
    Cold,
    /// It is on its way, and no mark is passed.
    OnTheWay,
    /// A mark is passed and nobody measured.
    Measure,
    /// It missed a mark: throw it away.
    TooLate,
}

/// One mark on the clock of a cooling pot.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Mark {
    /// At or below this many degrees Fahrenheit.
    pub at_most_f: i64,
    /// By this moment.
    pub by: Moment,
    /// The row.
    pub told: Told,
}

/// When a hot pot must be how cold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CoolingAnswer {
    /// `cooling/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: CoolingWords,
    /// Now.
    pub now: Moment,
    /// When it came off the heat; the clock begins here, which is the stricter reading.
    pub off: Moment,
    /// Where it stands.
    pub state: CoolingState,
    /// The marks, in their order.
    pub marks: Vec<Mark>,
    /// What helps.
    pub helps: Vec<Told>,
    /// What was tried and did not cool in time.
    pub fails: Vec<Told>,
    /// Why.
    pub why: Vec<Told>,
}

impl CoolingAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        self.state == CoolingState::TooLate
    }
}

/// Says by when a hot pot must be how cold.
///
/// The printed stages begin at 135 °F. They are counted from the moment the pot came off the heat: nobody stands beside
/// it with a thermometer, and an earlier beginning is never too kind.
///
/// # Errors
///
/// When the moment or the temperature cannot be read, or the moment is still to come.
pub fn plan_cooling(
    almanac: &Almanac,
    words: &CoolingWords,
    now: &Moment,
) -> Result<CoolingAnswer, AfterError> {
    let off = read_past("moment the pot came off the heat", &words.off, now)?;
    let temp = words.temp.as_deref().map(read_temp).transpose();
    let temp = temp.map_err(|problem| AfterError::unreadable("temperature", problem))?;
    let marks = marks_of(almanac);
    let state = judge(&marks, &off, temp, now);
    let told = |topics: &[CoolingTopic]| {
        topics.iter().flat_map(|topic| almanac.cooling_for(*topic)).map(Told::from).collect::<Vec<_>>()
    };
    let marks: Vec<Mark> = marks
        .iter()
        .map(|(row, to, within)| Mark {
            // Never truncates: the marks are whole degrees.
            at_most_f: to.as_fahrenheit() as i64,
            by: off.plus(*within),
            told: Told::from(*row),
        })
        .collect();
    Ok(CoolingAnswer {
        format: "cooling/1",
        question: words.clone(),
        now: now.clone(),
        off,
        state,
        marks,
        helps: told(&[CoolingTopic::Stir, CoolingTopic::Depth, CoolingTopic::Works]),
        fails: told(&[CoolingTopic::Fails, CoolingTopic::Measured]),
        why: told(&[CoolingTopic::Growth, CoolingTopic::Exposure]),
    })
}

/// The marks that are printed: how cold, within how long. The strictest of each, in the order of the clock.
fn marks_of(almanac: &Almanac) -> Vec<(&CoolingRule, Temp, Minutes)> {
    let of = |topic: CoolingTopic| {
        let rows = almanac.cooling_for(topic);
        let marks = rows.filter_map(|row| Some((row, row.to?, row.figure?.as_minutes()?.0)));
        marks.min_by_key(|(_, _, within)| *within)
    };
    [CoolingTopic::Stage, CoolingTopic::Whole].into_iter().filter_map(of).collect()
}

fn judge(
    marks: &[(&CoolingRule, Temp, Minutes)],
    off: &Moment,
    temp: Option<Temp>,
    now: &Moment,
) -> CoolingState {
    let Some((_, coldest, _)) = marks.last() else { return CoolingState::TooLate };
    let passed: Vec<Temp> = marks.iter().filter(|mark| *now > off.plus(mark.2)).map(|mark| mark.1).collect();
    match temp {
        Some(temp) if passed.iter().any(|mark| temp > *mark) => CoolingState::TooLate,
        Some(temp) if temp <= *coldest => CoolingState::Cold,
        Some(_) => CoolingState::OnTheWay,
        None if passed.is_empty() => CoolingState::OnTheWay,
        None => CoolingState::Measure,
    }
}

#[cfg(test)]
mod tests {
    use almanac::Table;
    use proptest::prelude::*;

    use super::*;
    use crate::after::tests::{almanac, almanac_without, at as moment};

    fn at(minutes: u32, temp: Option<u32>) -> CoolingAnswer {
        let words =
            CoolingWords { off: "2026-09-12 18:20".into(), temp: temp.map(|temp| format!("{temp} F")) };
        let now = moment("2026-09-12 18:20").plus(Minutes(minutes));
        plan_cooling(almanac(), &words, &now).unwrap()
    }

    /// Source: FDA Food Code, 3-501.14: 135 to 70 °F within 2 hours, 135 to 41 °F within 6 in total.
    #[test]
    fn the_two_marks_are_those_of_the_code() {
        let answer = at(10, None);
        let marks: Vec<(i64, String)> =
            answer.marks.iter().map(|mark| (mark.at_most_f, mark.by.in_words())).collect();
        assert_eq!(marks, [(70, "Sat 12 Sep, 20:20".to_owned()), (41, "Sun 13 Sep, 00:20".to_owned())]);
    }

    #[test]
    fn a_pot_that_missed_its_mark_is_too_late() {
        assert_eq!(at(119, Some(90)).state, CoolingState::OnTheWay);
        assert_eq!(at(121, Some(90)).state, CoolingState::TooLate);
        assert_eq!(at(121, Some(70)).state, CoolingState::OnTheWay);
        assert_eq!(at(121, None).state, CoolingState::Measure);
        assert_eq!(at(361, Some(42)).state, CoolingState::TooLate);
        assert_eq!(at(361, Some(41)).state, CoolingState::Cold);
    }

    #[test]
    fn every_row_about_cooling_is_told_and_its_loss_is_felt() {
        let shown = |almanac: &Almanac| {
            let words = CoolingWords { off: "2026-09-12 18:20".into(), temp: None };
            let answer = plan_cooling(almanac, &words, &moment("2026-09-12 18:30")).unwrap();
            serde_json::to_string(&answer).unwrap()
        };
        let before = shown(almanac());
        for row in almanac().cooling_rules() {
            assert!(before.contains(&format!("\"{}\"", row.id)), "{}", row.id);
            let without = almanac_without(Table::Cooling, row.id.as_str());
            assert_ne!(shown(&without), before, "{}", row.id);
        }
    }

    proptest! {
        #[test]
        fn later_or_warmer_is_never_kinder(
            minutes in 0_u32..600, more in 0_u32..600, temp in 34_u32..150, hotter in 0_u32..60,
        ) {
            let state = at(minutes, Some(temp)).state;
            prop_assert!(at(minutes, Some(temp + hotter)).state >= state);
            prop_assert!(at(minutes + more, Some(temp)).state >= state);
            prop_assert!(at(minutes + more, None).state >= at(minutes, None).state);
        }
    }
}
