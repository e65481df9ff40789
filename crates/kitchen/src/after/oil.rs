//! Garlic, herbs and vegetables in oil: dated days in the refrigerator, or the freezer.

use almanac::{Almanac, OilRule, OilTopic};
use measure::Minutes;
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past_day};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct OilWords {
    /// What is in the oil.
    pub food: String,
    /// The day it was made.
    pub made: Option<String>,
    /// Whether it stood at room temperature.
    pub stood_warm: bool,
}

/// What becomes of food in oil, the kindest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum OilVerdict {
    /// In the refrigerator until the day named, or frozen.
    Refrigerate,
    /// Throw it away.
    Discard,
}

/// How long food in oil may stay in the refrigerator.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OilAnswer {
    /// `oil/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: OilWords,
    /// Now.
    pub now: Moment,
    /// When it was made.
    pub made: Option<Moment>,
    /// What becomes of it.
    pub verdict: OilVerdict,
    /// Thrown away from this moment on.
    pub until: Option<Moment>,
    /// The limits that are printed, the strictest first; the first is used.
    pub limits: Vec<Told>,
    /// Longer times that are printed and never used.
    pub longer: Vec<Told>,
    /// Freezing it.
    pub freeze: Vec<Told>,
    /// What must not be done, and why.
    pub never: Vec<Told>,
    /// What is printed elsewhere.
    pub elsewhere: Vec<Told>,
    /// Words that no row understood.
    pub not_understood: Vec<String>,
}

impl OilAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        self.verdict == OilVerdict::Discard
    }
}

/// Dates food in oil.
///
/// # Errors
///
/// When nothing is asked, when the food is not understood, or the day cannot be read or is still to come.
pub fn date_oil(almanac: &Almanac, words: &OilWords, now: &Moment) -> Result<OilAnswer, AfterError> {
    if words.food.trim().is_empty() {
        return Err(AfterError::NothingAsked { known: almanac.askable_oil() });
    }
    let found = almanac.find_oil_rules(&words.food);
    let limits = strictest_first(&found.rows);
    let Some((_, shortest)) = limits.first() else {
        return Err(AfterError::NotUnderstood { typed: words.food.clone(), known: almanac.askable_oil() });
    };
    let made = words.made.as_deref().map(|typed| read_past_day("day it was made", typed, now)).transpose()?;
    let until = made.as_ref().map(|made| made.plus(*shortest));
    // Made nobody knows when: it counts as too old.
    let is_in_time = until.as_ref().is_some_and(|until| now < until);
    let told = |topic: OilTopic| {
        let rows = found.rows.iter().filter(move |row| row.topic == topic);
        rows.map(|row| Told::from(*row)).collect::<Vec<_>>()
    };
    Ok(OilAnswer {
        format: "oil/1",
        question: words.clone(),
        now: now.clone(),
        made,
        verdict: if is_in_time && !words.stood_warm { OilVerdict::Refrigerate } else { OilVerdict::Discard },
        until,
        limits: limits.into_iter().map(|(row, _)| Told::from(row)).collect(),
        longer: told(OilTopic::Longer),
        freeze: told(OilTopic::Freeze),
        never: [told(OilTopic::NeverWarm), told(OilTopic::Why)].concat(),
        elsewhere: told(OilTopic::Elsewhere),
        not_understood: found.not_understood,
    })
}

/// The rows that limit the days and may be trusted, the shortest limit first.
fn strictest_first<'a>(rows: &[&'a OilRule]) -> Vec<(&'a OilRule, Minutes)> {
    let limits =
        rows.iter().filter(|row| row.topic == OilTopic::Limit && row.citation.may_be_called_tested());
    let mut limits: Vec<_> = limits.filter_map(|row| Some((*row, row.figure?.as_minutes()?.1))).collect();
    limits.sort_by_key(|(_, limit)| *limit);
    limits
}

#[cfg(test)]
mod tests {
    use almanac::Table;
    use proptest::prelude::*;

    use super::*;
    use crate::after::tests::{almanac, almanac_without, at};

    fn now() -> Moment {
        at("2026-09-12 23:10")
    }

    fn ask(food: &str, made: Option<&str>) -> OilAnswer {
        let words = OilWords { food: food.into(), made: made.map(str::to_owned), stood_warm: false };
        date_oil(almanac(), &words, &now()).unwrap()
    }

    /// Source: National Center, Freezing: Garlic-in-Oil, 2015: 4 days; Penn State 2012: flavoured oil, pesto and
    /// marinated vegetables 3 days; National Center, pesto: 3 days.
    #[test]
    fn the_strictest_printed_days_are_dated() {
        for (food, days) in
            [("garlic", 4), ("rosemary", 3), ("hot peppers", 3), ("pesto", 3), ("garlic and basil", 3)]
        {
            let answer = ask(food, Some("2026-09-11"));
            let until = at(&format!("2026-09-{} 00:00", 11 + days));
            assert_eq!(answer.until, Some(until), "{food}");
            assert_eq!(answer.verdict, OilVerdict::Refrigerate, "{food}");
            assert!(!answer.freeze.is_empty() && !answer.never.is_empty(), "{food}");
        }
        let longer = ask("garlic", Some("2026-09-11")).longer;
        let figures: Vec<_> = longer.iter().filter_map(|told| told.figure.as_deref()).collect();
        assert_eq!(figures, ["7 days", "10 days", "21 days"]);
    }

    #[test]
    fn old_undated_or_warm_oil_is_thrown_away() {
        assert!(ask("garlic", None).is_refusal());
        assert!(ask("garlic", Some("2026-09-08")).is_refusal());
        let words = OilWords { food: "garlic".into(), made: Some("today".into()), stood_warm: true };
        assert!(date_oil(almanac(), &words, &now()).unwrap().is_refusal());
    }

    #[test]
    fn every_row_about_oil_is_told_and_its_loss_is_felt() {
        let shown = |almanac: &Almanac, food: &str| {
            let words = OilWords { food: food.into(), made: Some("today".into()), stood_warm: false };
            date_oil(almanac, &words, &now()).map(|answer| serde_json::to_string(&answer).unwrap()).ok()
        };
        for row in almanac().oil_rules() {
            let asked = ["garlic", "rosemary and hot pepper", "pesto", "garlic and pesto and mushrooms"];
            let asked = asked.into_iter().find(|food| {
                shown(almanac(), food).is_some_and(|text| text.contains(&format!("\"{}\"", row.id)))
            });
            let asked = asked.unwrap_or_else(|| panic!("nothing shows {}", row.id));
            let without = almanac_without(Table::Oil, row.id.as_str());
            assert_ne!(shown(&without, asked), shown(almanac(), asked), "{}", row.id);
        }
    }

    proptest! {
        #[test]
        fn older_is_never_kinder_and_more_in_the_oil_is_never_kinder(days in 0_u32..6, more in 0_u32..6) {
            let food = |food: &str, days: u32| ask(food, Some(&format!("2026-09-{:02}", 12_u32.saturating_sub(days).max(1)))).verdict;
            prop_assert!(food("garlic", days + more) >= food("garlic", days));
            prop_assert!(food("garlic and thyme", days) >= food("garlic", days));
        }
    }
}
