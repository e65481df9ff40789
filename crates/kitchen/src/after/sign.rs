//! What a sign on a jar means: quality or danger, what to do now, how to throw it away, which sisters are in question.

use almanac::{Almanac, KeepingUnit, SignRule, SignTopic, SignWeight};
use measure::{Percent, read_percent};
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct SignWords {
    /// What is seen, each in the person's own words.
    pub seen: Vec<String>,
    /// How much of the liquid is gone: `30 %`.
    pub lost: Option<String>,
}

/// What a sign comes to, the strictest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SignVerdict {
    /// Throw it away untasted.
    Discard,
    /// No row decides, or part of what was said was not understood: keep it apart, and ask.
    Ask,
    /// Treat the jar as unsealed.
    AsUnsealed,
    /// Into the refrigerator, and used within days.
    UseSoon,
    /// Kept closed, and used first.
    UseFirst,
    /// A matter of quality, by this sign alone.
    Quality,
    /// No sign of a jar was named: what is printed on the question is told.
    Told,
}

/// What a sign on a jar means.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignAnswer {
    /// `sign/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: SignWords,
    /// What it comes to.
    pub verdict: SignVerdict,
    /// The rows that decide, danger first.
    pub because: Vec<Told>,
    /// What else is printed about it.
    pub beside: Vec<Told>,
    /// How to throw it away.
    pub throw_away: Vec<Told>,
    /// How to clean up after it.
    pub clean_up: Vec<Told>,
    /// Which other jars are in question.
    pub sisters: Vec<Told>,
    /// How food looks proves nothing.
    pub looks: Vec<Told>,
    /// Words that no row understood.
    pub not_understood: Vec<String>,
}

impl SignAnswer {
    /// Whether the answer is a refusal.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        matches!(self.verdict, SignVerdict::Discard | SignVerdict::Ask)
    }
}

/// Says what the signs on a jar mean.
///
/// # Errors
///
/// When nothing is asked, when nothing of it is understood, or when the share of the liquid cannot be read.
pub fn look_at_signs(almanac: &Almanac, words: &SignWords) -> Result<SignAnswer, AfterError> {
    let typed = words.seen.join(", ");
    if typed.trim().is_empty() {
        return Err(AfterError::NothingAsked { known: almanac.askable_signs() });
    }
    let lost = words.lost.as_deref().map(read_percent).transpose();
    let lost = lost.map_err(|problem| AfterError::unreadable("share of the liquid that is gone", problem))?;
    let line = line_of_loss(almanac);
    let found = almanac.find_signs(&typed);
    let mut rows: Vec<&SignRule> =
        found.rows.into_iter().filter(|row| fits_the_loss(row.topic, lost, line)).collect();
    if rows.is_empty() {
        return Err(AfterError::NotUnderstood { typed, known: almanac.askable_signs() });
    }
    rows.sort_by_key(|row| weight_of(row));
    let (deciding, beside): (Vec<&SignRule>, Vec<&SignRule>) =
        rows.into_iter().partition(|row| weight_of(row) != SignWeight::Caution);
    let verdict = judge(&deciding, &beside, &found.not_understood);
    let for_topic = |topic: SignTopic| almanac.signs_for(topic).map(Told::from).collect::<Vec<_>>();
    let is_danger = verdict == SignVerdict::Discard;
    let when_danger = |topic: SignTopic| if is_danger { for_topic(topic) } else { Vec::new() };
    let shown_below = |topic: SignTopic| {
        matches!(topic, SignTopic::Looks)
            || (is_danger && matches!(topic, SignTopic::Disposal | SignTopic::CleanUp | SignTopic::Lot))
    };
    Ok(SignAnswer {
        format: "sign/1",
        question: words.clone(),
        verdict,
        because: deciding.into_iter().map(Told::from).collect(),
        beside: beside.into_iter().filter(|row| !shown_below(row.topic)).map(Told::from).collect(),
        throw_away: when_danger(SignTopic::Disposal),
        clean_up: when_danger(SignTopic::CleanUp),
        sisters: when_danger(SignTopic::Lot),
        looks: for_topic(SignTopic::Looks),
        not_understood: found.not_understood,
    })
}

/// The share of the liquid at which the printed answers part; none when no row prints it.
fn line_of_loss(almanac: &Almanac) -> Option<Percent> {
    let rows = almanac.signs_for(SignTopic::LiquidLess);
    let shares =
        rows.filter_map(|row| row.figure.filter(|figure| figure.unit == KeepingUnit::PercentOfLiquid));
    shares.map(|figure| figure.as_count().0).reduce(f64::min).map(Percent::of_hundred)
}

/// Whether a row is meant when this much liquid is gone; both are when nobody said how much. The line itself counts as
/// too much.
fn fits_the_loss(topic: SignTopic, lost: Option<Percent>, line: Option<Percent>) -> bool {
    let Some(lost) = lost else { return true };
    let is_less = line.is_some_and(|line| lost < line);
    match topic {
        SignTopic::LiquidLess => is_less,
        SignTopic::LiquidMore => !is_less,
        _ => true,
    }
}

/// How much a row weighs. One that keeps food counts only when it was read in a source of full rank.
fn weight_of(row: &SignRule) -> SignWeight {
    let keeps = matches!(row.weight, SignWeight::UseSoon | SignWeight::UseFirst | SignWeight::Quality);
    if keeps && !row.citation.may_be_called_tested() { SignWeight::Caution } else { row.weight }
}

/// The strictest of the rows; nothing is kept on words that were understood in part.
fn judge(deciding: &[&SignRule], beside: &[&SignRule], not_understood: &[String]) -> SignVerdict {
    let strictest = deciding.iter().map(|row| match row.weight {
        SignWeight::Danger => SignVerdict::Discard,
        SignWeight::Unsealed => SignVerdict::AsUnsealed,
        SignWeight::UseSoon => SignVerdict::UseSoon,
        SignWeight::UseFirst => SignVerdict::UseFirst,
        SignWeight::Quality => SignVerdict::Quality,
        SignWeight::Caution => SignVerdict::Ask,
    });
    let without_sign =
        if beside.iter().all(|row| tells_only(row)) { SignVerdict::Told } else { SignVerdict::Ask };
    let strictest = strictest.min().unwrap_or(without_sign);
    if not_understood.is_empty() { strictest } else { strictest.min(SignVerdict::Ask) }
}

/// Whether a row answers how something is done, and speaks of no jar that somebody may want to eat from.
fn tells_only(row: &SignRule) -> bool {
    row.weight == SignWeight::Caution
        && matches!(
            row.topic,
            SignTopic::Disposal
                | SignTopic::CleanUp
                | SignTopic::SealWait
                | SignTopic::SealTest
                | SignTopic::Band
                | SignTopic::Lid
        )
}

#[cfg(test)]
mod tests {
    use almanac::Table;

    use super::*;
    use crate::after::tests::{almanac, almanac_without};

    fn ask(seen: &[&str]) -> SignAnswer {
        let seen = seen.iter().map(|text| (*text).to_owned()).collect();
        look_at_signs(almanac(), &SignWords { seen, lost: None }).unwrap()
    }

    fn lost(share: &str) -> SignVerdict {
        let words = SignWords { seen: vec!["lost liquid".into()], lost: Some(share.into()) };
        look_at_signs(almanac(), &words).unwrap().verdict
    }

    /// Source: USDA Complete Guide to Home Canning, 2015, Guide 1 pp. 1-26 and 1-27: signs of spoilage, throwing away,
    /// 30 minutes of boiling, bleach 1 to 5.
    #[test]
    fn signs_of_danger_say_throw_away_and_how() {
        for seen in [
            "bulging lid",
            "the lid is bulging",
            "leaking jar",
            "it spurted when I opened it",
            "smells off",
            "mold on top",
            "cloudy liquid",
            "bubbles rising",
            "smells like rotten eggs",
            "the lid is loose",
            "it exploded in the pantry",
            "tastes funny",
            "my beans turned grey",
            "white spots on top of the jam",
            "mouldy jam",
            "foam",
            "lid popped up",
            "strange color",
            "slimy beans",
        ] {
            let answer = ask(&[seen]);
            assert_eq!(answer.verdict, SignVerdict::Discard, "{seen}");
            assert!(answer.throw_away.iter().any(|told| told.figure.as_deref() == Some("30 min")), "{seen}");
            assert!(
                answer.clean_up.iter().any(|told| told.text.contains("1 part household bleach to 5")),
                "{seen}"
            );
            assert!(!answer.sisters.is_empty() && !answer.looks.is_empty(), "{seen}");
        }
    }

    #[test]
    fn matters_of_looks_are_quality_and_still_say_that_looks_prove_nothing() {
        for seen in
            ["fruit floats", "rusty lid", "dark top", "sediment", "black underside of lid", "pink pears"]
        {
            let answer = ask(&[seen]);
            assert_eq!(answer.verdict, SignVerdict::Quality, "{seen}: {:?}", answer.because);
            assert!(!answer.looks.is_empty());
            assert!(answer.throw_away.is_empty());
        }
    }

    #[test]
    fn how_something_is_done_is_told() {
        for seen in [
            "how do I throw it away",
            "how do I clean up the spill",
            "when to check the seals",
            "reuse a lid",
        ] {
            let answer = ask(&[seen]);
            assert_eq!(answer.verdict, SignVerdict::Told, "{seen}");
            assert!(!answer.beside.is_empty(), "{seen}");
        }
        for seen in ["it looks fine", "boil before eating", "is it botulism", "stored hot", "sister jars"] {
            assert_eq!(ask(&[seen]).verdict, SignVerdict::Ask, "{seen}");
        }
    }

    #[test]
    fn danger_comes_first_when_several_signs_are_seen() {
        let answer = ask(&["fruit floats", "rusty lid", "smells off"]);
        assert_eq!(answer.verdict, SignVerdict::Discard);
        assert_eq!(answer.because[0].rule, "SPO-04");
    }

    #[test]
    fn another_sign_never_makes_an_answer_kinder() {
        let signs = almanac().askable_signs();
        for one in &signs {
            let alone = ask(&[one]);
            for other in signs.iter().step_by(5).filter(|_| !alone.because.is_empty()) {
                let both = ask(&[one, other]).verdict;
                assert!(both <= alone.verdict, "{one} and {other}");
            }
        }
    }

    #[test]
    fn words_that_are_not_understood_keep_nothing() {
        let answer = ask(&["the fruit floats and it glows"]);
        assert_eq!(answer.verdict, SignVerdict::Ask);
        assert_eq!(answer.not_understood, ["glows"]);
        let words = SignWords { seen: vec!["frobnicated".into()], lost: None };
        let said = look_at_signs(almanac(), &words).unwrap_err().to_string();
        assert!(said.contains("do not taste") && said.contains("bulging"), "{said}");
    }

    /// Source: National Center for Home Food Preservation, as the University of Nebraska quotes it: more than half, 2 to
    /// 3 days; Clemson Extension: at least half.
    #[test]
    fn half_of_the_liquid_counts_as_too_much() {
        assert_eq!(lost("30 %"), SignVerdict::UseFirst);
        assert_eq!(lost("50 %"), SignVerdict::UseSoon);
        assert_eq!(lost("80 %"), SignVerdict::UseSoon);
        let mut before = SignVerdict::Quality;
        for share in 0..=100 {
            let now = lost(&format!("{share} %"));
            assert!(now <= before, "{share} % is kinder");
            before = now;
        }
    }

    #[test]
    fn every_row_about_jars_is_reached_and_its_loss_is_felt() {
        let almanac = almanac();
        let shown = |almanac: &Almanac, typed: &str| {
            let words = SignWords { seen: vec![typed.to_owned()], lost: None };
            look_at_signs(almanac, &words).map(|answer| serde_json::to_string(&answer).unwrap())
        };
        for row in almanac.signs() {
            let id = row.id.to_string();
            let asked = almanac
                .askable_signs()
                .into_iter()
                .find(|typed| almanac.find_signs(typed).rows.iter().any(|found| found.id == row.id));
            let asked = asked.unwrap_or_else(|| panic!("nothing asks for {id}"));
            let before = shown(almanac, &asked).unwrap();
            assert!(before.contains(&format!("\"{id}\"")), "{asked} does not show {id}");
            let without = almanac_without(Table::Signs, &id);
            assert_ne!(shown(&without, &asked).ok(), Some(before), "{id} decides nothing");
        }
    }
}
