//! Dried food: pasteurizing what insects may have reached, conditioning, and the signs in a jar.

use almanac::{Almanac, DriedFood, DriedRule, DriedTopic};
use measure::Minutes;
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past_day};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct DriedWords {
    /// What is seen, each in the person's own words.
    pub seen: Vec<String>,
    /// `fruit`, `vegetable` or `herb`; none when nobody says.
    pub kind: Option<String>,
    /// Whether it was dried in the sun or the air.
    pub outdoors: bool,
    /// The day it went into the jar to be conditioned.
    pub jarred: Option<String>,
}

/// What becomes of dried food, the strictest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum DriedVerdict {
    /// Throw it away.
    Discard,
    /// Part of what was said was not understood: keep it apart, and ask.
    Ask,
    /// Back into the dryer, and condition it again.
    DryAgain,
    /// Go on conditioning.
    Condition,
    /// Conditioned as long as printed, and nothing seen: store it.
    Store,
}

/// What is to be done with dried food.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DriedAnswer {
    /// `dried/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: DriedWords,
    /// Now.
    pub now: Moment,
    /// The kind: `fruit`, `vegetable`, `herb` or `all`.
    pub kind: &'static str,
    /// What becomes of it.
    pub verdict: DriedVerdict,
    /// The rows that decide, the strictest first.
    pub because: Vec<Told>,
    /// How it is pasteurized; only for food dried in the sun or the air, or that insects reached.
    pub pasteurize: Vec<Told>,
    /// How it is conditioned, the longest first; the first is used.
    pub condition: Vec<Told>,
    /// The jar is looked at every day until this moment.
    pub conditioned: Option<Moment>,
    /// How one knows that it is dry.
    pub dryness: Vec<Told>,
    /// How it is kept, and for how long it is at its best.
    pub store: Vec<Told>,
    /// Words that no row understood.
    pub not_understood: Vec<String>,
}

impl DriedAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        matches!(self.verdict, DriedVerdict::Discard | DriedVerdict::Ask)
    }
}

/// Says what is to be done with dried food.
///
/// # Errors
///
/// When a word is not understood or the day cannot be read or is still to come.
pub fn look_at_dried(almanac: &Almanac, words: &DriedWords, now: &Moment) -> Result<DriedAnswer, AfterError> {
    let kind = words.kind.as_deref().map(read_kind).transpose()?.unwrap_or(DriedFood::All);
    let jarred = words.jarred.as_deref().map(|typed| read_past_day("day it went into the jar", typed, now));
    let jarred = jarred.transpose()?;
    let (seen, not_understood) = find_signs(almanac, &words.seen)?;
    let condition = longest_first(almanac, kind);
    let longest = condition.first().and_then(|row| length_of(row));
    let has = |topic: DriedTopic| seen.iter().any(|row| row.topic == topic);
    let again = has(DriedTopic::Condensation);
    // Back from the dryer the days begin anew.
    let conditioned = jarred.zip(longest).filter(|_| !again).map(|(jarred, days)| jarred.plus(days));
    let verdict = if has(DriedTopic::Mould) || has(DriedTopic::Insects) {
        DriedVerdict::Discard
    } else if !not_understood.is_empty() {
        DriedVerdict::Ask
    } else if again || has(DriedTopic::Harden) {
        DriedVerdict::DryAgain
    } else if conditioned.as_ref().is_some_and(|until| now >= until) {
        DriedVerdict::Store
    } else {
        DriedVerdict::Condition
    };
    let told = |topics: &[DriedTopic]| {
        let rows = topics.iter().flat_map(|topic| almanac.dried_rules_for(kind, *topic));
        rows.map(Told::from).collect::<Vec<_>>()
    };
    let pasteurize = words.outdoors || has(DriedTopic::Insects);
    let pasteurizing = [DriedTopic::PasteurizeFreezer, DriedTopic::PasteurizeOven];
    Ok(DriedAnswer {
        format: "dried/1",
        question: words.clone(),
        now: now.clone(),
        kind: kind.as_str(),
        verdict,
        because: seen.into_iter().map(Told::from).collect(),
        pasteurize: if pasteurize { told(&pasteurizing) } else { Vec::new() },
        condition: condition.into_iter().map(Told::from).collect(),
        conditioned,
        dryness: told(&[DriedTopic::Dryness, DriedTopic::Cool]),
        store: told(&[DriedTopic::Store]),
        not_understood,
    })
}

fn read_kind(typed: &str) -> Result<DriedFood, AfterError> {
    let word = typed.trim().to_lowercase();
    let kinds = [DriedFood::Fruit, DriedFood::Vegetable, DriedFood::Herb];
    let found =
        kinds.into_iter().find(|kind| kind.as_str() == word || word.strip_suffix('s') == Some(kind.as_str()));
    found.ok_or_else(|| AfterError::UnknownWord {
        what: "kind of dried food",
        typed: typed.to_owned(),
        known: kinds.iter().map(|kind| kind.as_str().to_owned()).collect(),
    })
}

/// The signs seen, the strictest first, and the words not understood.
fn find_signs<'a>(
    almanac: &'a Almanac,
    seen: &[String],
) -> Result<(Vec<&'a DriedRule>, Vec<String>), AfterError> {
    let typed = seen.join(", ");
    if typed.trim().is_empty() {
        return Ok((Vec::new(), Vec::new()));
    }
    let found = almanac.find_dried_signs(&typed);
    if found.rows.is_empty() {
        return Err(AfterError::NotUnderstood { typed, known: almanac.askable_dried_signs() });
    }
    let mut rows = found.rows;
    rows.sort_by_key(|row| match row.topic {
        DriedTopic::Mould => 0,
        DriedTopic::Insects => 1,
        DriedTopic::Condensation => 2,
        _ => 3,
    });
    Ok((rows, found.not_understood))
}

/// How long a row conditions. A row that was only recalled, or stands in a source of lower rank, sets no time.
fn length_of(row: &DriedRule) -> Option<Minutes> {
    let ends = row.figure?.as_minutes()?;
    row.citation.may_be_called_tested().then_some(ends.1)
}

fn longest_first(almanac: &Almanac, kind: DriedFood) -> Vec<&DriedRule> {
    let ends = |row: &DriedRule| {
        let low = row.figure.and_then(|figure| figure.as_minutes()).map(|ends| ends.0);
        (length_of(row), low)
    };
    let mut rows: Vec<&DriedRule> = almanac.dried_rules_for(kind, DriedTopic::Condition).collect();
    rows.sort_by_key(|row| std::cmp::Reverse(ends(row)));
    rows
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

    fn ask(words: &DriedWords) -> DriedAnswer {
        look_at_dried(almanac(), words, &now()).unwrap()
    }

    fn fruit(seen: &[&str], jarred: &str) -> DriedAnswer {
        ask(&DriedWords {
            seen: seen.iter().map(|text| (*text).to_owned()).collect(),
            kind: Some("fruit".into()),
            jarred: Some(jarred.into()),
            outdoors: false,
        })
    }

    /// Source: Iowa State University Extension, Conditioning Dried Foods, 2023: 10 to 14 days; Michigan State 1997: 4 to
    /// 10 days, moisture on the lid sends it back.
    #[test]
    fn fruit_is_conditioned_for_the_longest_printed_time() {
        assert_eq!(fruit(&[], "2026-08-30").verdict, DriedVerdict::Condition);
        assert_eq!(fruit(&[], "2026-08-29").verdict, DriedVerdict::Store);
        let wet = fruit(&["condensation on the lid"], "2026-08-01");
        assert_eq!((wet.verdict, wet.conditioned), (DriedVerdict::DryAgain, None));
        assert_eq!(fruit(&["moldy"], "2026-08-01").verdict, DriedVerdict::Discard);
        assert_eq!(fruit(&["drops, and a blue glow"], "2026-08-01").verdict, DriedVerdict::Ask);
    }

    /// Source: Michigan State University Extension, file 01600520: freezer, 48 hours at the least; oven, 160 °F for 30
    /// minutes or 175 °F for 15.
    #[test]
    fn food_dried_outdoors_is_pasteurized() {
        let answer = ask(&DriedWords { outdoors: true, ..DriedWords::default() });
        let figures: Vec<_> = answer.pasteurize.iter().filter_map(|told| told.figure.as_deref()).collect();
        assert!(figures.contains(&"48 h, 0 °F") && figures.contains(&"30 min, 160 °F"), "{figures:?}");
        assert!(ask(&DriedWords::default()).pasteurize.is_empty());
    }

    #[test]
    fn every_rule_is_reached_and_its_loss_is_felt() {
        let words = |seen: Vec<String>| DriedWords { seen, outdoors: true, ..DriedWords::default() };
        let questions = [words(almanac().askable_dried_signs()), words(Vec::new())];
        let shown = |almanac: &Almanac, words: &DriedWords| {
            look_at_dried(almanac, words, &now()).map(|answer| serde_json::to_string(&answer).unwrap()).ok()
        };
        for row in almanac().dried_rules() {
            let quoted = format!("\"{}\"", row.id);
            let asked = questions
                .iter()
                .find(|words| shown(almanac(), words).is_some_and(|text| text.contains(&quoted)));
            let asked = asked.unwrap_or_else(|| panic!("nothing shows {}", row.id));
            let without = almanac_without(Table::Dried, row.id.as_str());
            assert_ne!(shown(&without, asked), shown(almanac(), asked), "{}", row.id);
        }
    }

    proptest! {
        #[test]
        fn a_sign_is_never_kinder_than_none(days in 0_u32..40, at in 0_usize..40) {
            let signs = almanac().askable_dried_signs();
            let jarred = format!("2026-{:02}-{:02}", 8 + days / 20, 1 + days % 12);
            let seen = signs[at % signs.len()].as_str();
            prop_assert!(fruit(&[seen], &jarred).verdict <= fruit(&[], &jarred).verdict);
        }
    }
}
