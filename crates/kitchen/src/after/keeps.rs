//! How long food that is put up stays at its best: a reminder, and a matter of quality.

use almanac::{Almanac, BestBy, BestByScope, KeepingUnit, PutUpAs};
use jiff::Span;
use measure::{Temp, read_temp};
use serde::Serialize;

use super::error::AfterError;
use super::told::Told;
use super::when::{Moment, read_past_day};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct KeepsWords {
    /// The food.
    pub food: String,
    /// How it is put up: `canned`, `frozen`, `dried` and the rest.
    pub kind: String,
    /// The day it was put up.
    pub put_up: Option<String>,
    /// How warm the store is.
    pub store: Option<String>,
}

/// How long food stays at its best.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct KeepsAnswer {
    /// `keeps/1`.
    pub format: &'static str,
    /// The question as it was asked.
    pub question: KeepsWords,
    /// Now.
    pub now: Moment,
    /// How it is put up.
    pub kind: &'static str,
    /// When it was put up.
    pub put_up: Option<Moment>,
    /// Best eaten before this: the shortest that is printed.
    pub best_before: Option<Moment>,
    /// The longest that is printed in a source of full rank.
    pub at_the_longest: Option<Moment>,
    /// The rows, the shortest first.
    pub told: Vec<Told>,
    /// What limits them.
    pub limits: Vec<Told>,
    /// Words that no row understood.
    pub not_understood: Vec<String>,
}

impl KeepsAnswer {
    /// Whether the answer is a refusal: nothing is printed for this food so warm.
    #[must_use]
    pub fn is_refusal(&self) -> bool {
        self.told.is_empty()
    }
}

/// Says how long food stays at its best.
///
/// # Errors
///
/// When the food or how it is put up is not understood, or when a temperature or the day cannot be read.
pub fn tell_keeping(almanac: &Almanac, words: &KeepsWords, now: &Moment) -> Result<KeepsAnswer, AfterError> {
    let kind = read_kind(&words.kind)?;
    let store = words.store.as_deref().map(read_temp).transpose();
    let store = store.map_err(|problem| AfterError::unreadable("temperature of the store", problem))?;
    let put_up =
        words.put_up.as_deref().map(|typed| read_past_day("day it was put up", typed, now)).transpose()?;
    let found = almanac.find_best_by(&words.food);
    let mut rows: Vec<&BestBy> = found.rows.into_iter().filter(|row| row.kind == kind).collect();
    rows.extend(almanac.best_by().iter().filter(|row| row.kind == kind && row.scope == BestByScope::All));
    if rows.is_empty() || words.food.trim().is_empty() {
        return Err(AfterError::NotUnderstood {
            typed: words.food.clone(),
            known: almanac.askable_best_by(kind),
        });
    }
    // A line printed for a warmer store holds in a cooler one; none is stretched to a warmer.
    rows.retain(|row| store.is_none_or(|store| holds_at(row, store)));
    rows.sort_by_key(|row| span_of(row, End::Low));
    let shortest = rows.iter().filter_map(|row| span_of(row, End::Low)).min();
    let trusted = rows.iter().filter(|row| row.citation.may_be_called_tested());
    let longest = trusted.filter_map(|row| span_of(row, End::High)).max();
    let date = |span: Option<PrintedSpan>| {
        put_up.as_ref().zip(span).map(|(from, span)| from.plus_span(span.as_span()))
    };
    let limits = almanac.best_by().iter().filter(|row| row.kind == kind && row.scope == BestByScope::Limit);
    Ok(KeepsAnswer {
        format: "keeps/1",
        question: words.clone(),
        now: now.clone(),
        kind: kind.as_str(),
        best_before: date(shortest),
        at_the_longest: date(longest),
        put_up,
        told: rows.into_iter().map(Told::from).collect(),
        limits: limits.map(Told::from).collect(),
        not_understood: found.not_understood,
    })
}

fn read_kind(typed: &str) -> Result<PutUpAs, AfterError> {
    let word = typed.trim().to_lowercase().replace([' ', '_'], "-");
    PutUpAs::find(&word).ok_or_else(|| AfterError::UnknownWord {
        what: "way of putting food up",
        typed: typed.to_owned(),
        known: PutUpAs::ALL.iter().map(|kind| kind.as_str().to_owned()).collect(),
    })
}

fn holds_at(row: &BestBy, store: Temp) -> bool {
    row.warmest.is_none_or(|warmest| store <= warmest)
}

/// An end of a printed figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum End {
    Low,
    High,
}

/// Whole months and weeks, as printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct PrintedSpan {
    /// To compare: months of four weeks are shorter than any of the calendar.
    weeks: u32,
    months: u32,
}

impl PrintedSpan {
    fn as_span(self) -> Span {
        if self.months > 0 { Span::new().months(self.months) } else { Span::new().weeks(self.weeks) }
    }
}

fn span_of(row: &BestBy, end: End) -> Option<PrintedSpan> {
    let figure = row.figure?;
    let (low, high) = figure.as_count();
    // Never truncates: the rows print whole weeks and months.
    let count = if end == End::Low { low } else { high } as u32;
    match figure.unit {
        KeepingUnit::Months => Some(PrintedSpan { weeks: count * 4, months: count }),
        KeepingUnit::Weeks => Some(PrintedSpan { weeks: count, months: 0 }),
        _ => None,
    }
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

    fn ask(food: &str, kind: &str, store: Option<&str>) -> KeepsAnswer {
        let words = KeepsWords {
            food: food.into(),
            kind: kind.into(),
            put_up: Some("2026-08-31".into()),
            store: store.map(str::to_owned),
        };
        tell_keeping(almanac(), &words, &now()).unwrap()
    }

    fn best_before(food: &str, kind: &str, store: Option<&str>) -> Option<String> {
        ask(food, kind, store).best_before.map(|moment| moment.in_words())
    }

    /// Source: North Carolina State University, 2004: canned food within one year; National Center, freezer table: fruits
    /// and vegetables 8 to 12 months; an appliance booklet: lean fish 6; University of Georgia: dried food 4
    /// months to a year.
    #[test]
    fn the_shortest_printed_time_makes_the_reminder() {
        for (food, kind, store, want) in [
            ("green beans", "canned", None, "Tue 31 Aug, 00:00"),
            ("lean fish", "frozen", Some("0 F"), "Sun 28 Feb, 00:00"),
            ("peppers", "dried", Some("60 F"), "Thu 31 Dec, 00:00"),
            ("kimchi", "fermented", None, "Mon 7 Sep, 00:00"),
        ] {
            assert_eq!(best_before(food, kind, store).as_deref(), Some(want), "{food}, {kind}, {store:?}");
        }
    }

    #[test]
    fn no_line_is_stretched_to_a_warmer_store() {
        assert!(ask("corn", "frozen", Some("10 F")).is_refusal());
        assert!(ask("corn", "frozen", Some("-5 F")).best_before.is_some());
        let words = KeepsWords { food: "frobnicate".into(), kind: "cellar".into(), ..KeepsWords::default() };
        assert!(matches!(tell_keeping(almanac(), &words, &now()), Err(AfterError::NotUnderstood { .. })));
        let words = KeepsWords { food: "corn".into(), kind: "smoked".into(), ..KeepsWords::default() };
        assert!(tell_keeping(almanac(), &words, &now()).unwrap_err().to_string().contains("freezer-jam"));
    }

    #[test]
    fn every_row_about_keeping_is_reached_and_its_loss_is_felt() {
        for row in almanac().best_by() {
            let foods = almanac().askable_best_by(row.kind);
            let all = foods.first().cloned().unwrap_or_else(|| "anything".to_owned());
            let food = foods
                .into_iter()
                .find(|food| almanac().find_best_by(food).rows.iter().any(|found| found.id == row.id));
            let words =
                KeepsWords { food: food.unwrap_or(all), kind: row.kind.to_string(), ..KeepsWords::default() };
            let shown = |almanac: &Almanac| {
                tell_keeping(almanac, &words, &now())
                    .map(|answer| serde_json::to_string(&answer).unwrap())
                    .ok()
            };
            let before = shown(almanac()).unwrap_or_else(|| panic!("{words:?}"));
            assert!(before.contains(&format!("\"{}\"", row.id)), "{words:?} does not show {}", row.id);
            let without = almanac_without(Table::BestBy, row.id.as_str());
            assert_ne!(shown(&without), Some(before), "{}", row.id);
        }
    }

    proptest! {
        #[test]
        fn warmer_is_never_kinder(temp in -10_i32..90, hotter in 0_i32..40, which in 0_usize..5) {
            let (food, kind) = [
                ("peppers", "dried"), ("fruit", "dried"), ("corn", "frozen"), ("potatoes", "cellar"), ("jam", "canned"),
            ][which];
            let at = |temp: i32| ask(food, kind, Some(&format!("{temp} F")));
            let (cool, warm) = (at(temp), at(temp + hotter));
            prop_assert!(warm.told.len() <= cool.told.len());
            prop_assert!(warm.at_the_longest.unwrap_or_else(now) <= cool.at_the_longest.unwrap_or_else(now).max(now()));
        }
    }
}
