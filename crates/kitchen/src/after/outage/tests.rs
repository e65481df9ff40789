//! The clocks and the foods of a cut of power.

use almanac::Table;
use proptest::prelude::*;

use super::*;
use crate::after::tests::{almanac, almanac_without, at};

fn now() -> Moment {
    at("2026-09-13 07:10")
}

fn judge(words: &OutageWords) -> OutageAnswer {
    judge_outage(almanac(), words, &now()).unwrap()
}

fn about(food: &str, place: &str) -> OutageWords {
    OutageWords { about: vec![food.into()], place: Some(place.into()), ..OutageWords::default() }
}

fn verdict(food: &str, place: &str, temp: &str, warm_for: Option<&str>) -> FoodVerdict {
    let words =
        OutageWords { temp: Some(temp.into()), warm_for: warm_for.map(str::to_owned), ..about(food, place) };
    judge(&words).foods[0].verdict
}

/// Source: Oklahoma State University Extension, Food Safety During Power Outage: refrigerator 4 hours, full freezer 48,
/// half-full 24; an older chart of a standards organisation: 2 hours.
#[test]
fn doors_hold_as_printed_and_the_strictest_comes_first() {
    let words = OutageWords { lost: Some("yesterday 21:30".into()), ..OutageWords::default() };
    let answer = judge(&words);
    let clocks: Vec<(String, String, String, bool)> = answer
        .doors
        .iter()
        .map(|door| (door.what.clone(), door.until.in_words(), door.at_the_most.in_words(), door.passed))
        .collect();
    let clock =
        |what: &str, until: &str, most: &str, passed| (what.into(), until.into(), most.into(), passed);
    assert_eq!(
        clocks,
        [
            clock("refrigerator", "Sat 12 Sep, 23:30", "Sun 13 Sep, 01:30", true),
            clock("half-full freezer", "Sun 13 Sep, 21:30", "Sun 13 Sep, 21:30", false),
            clock("full freezer", "Mon 14 Sep, 21:30", "Mon 14 Sep, 21:30", false),
        ]
    );
    let opened = judge(&OutageWords { opened: true, ..words.clone() });
    assert!(opened.doors.is_empty());
    let half = judge(&OutageWords { freezer: Some("half full".into()), ..words });
    assert_eq!(half.doors.len(), 2);
}

/// Source: the federal chart on frozen food and power outages, reviewed 28 January 2021.
#[test]
fn frozen_food_goes_by_its_line() {
    for (food, temp, warm, want) in [
        ("ground beef", "38 F", None, FoodVerdict::Refreeze),
        ("ground beef", "48 F", Some("3 h"), FoodVerdict::Discard),
        ("ground beef", "48 F", Some("1 h"), FoodVerdict::CoolNow),
        ("ice cream", "33 F", None, FoodVerdict::Discard),
        ("cheddar", "50 F", Some("9 h"), FoodVerdict::Refreeze),
        ("green beans", "50 F", Some("5 h"), FoodVerdict::CoolNow),
        ("green beans", "50 F", Some("7 h"), FoodVerdict::Discard),
        ("blueberries", "55 F", Some("12 h"), FoodVerdict::Refreeze),
        ("bread dough", "60 F", Some("5 h"), FoodVerdict::Refreeze),
        ("custard pie", "45 F", None, FoodVerdict::Discard),
    ] {
        assert_eq!(verdict(food, "freezer", temp, warm), want, "{food} at {temp} for {warm:?}");
    }
}

#[test]
fn a_food_that_is_named_in_part_is_kept_by_nothing() {
    for (food, place) in
        [("apple pie", "freezer"), ("butter chicken surprise", "refrigerator"), ("beans", "refrigerator")]
    {
        let words =
            OutageWords { temp: Some("50 F".into()), warm_for: Some("3 h".into()), ..about(food, place) };
        assert!(judge(&words).foods[0].verdict >= FoodVerdict::Ask, "{food}");
    }
    assert_eq!(verdict("raw carrots", "refrigerator", "50 F", Some("3 h")), FoodVerdict::Keep);
    assert_eq!(verdict("cooked carrots", "refrigerator", "50 F", Some("3 h")), FoodVerdict::Discard);
    assert_eq!(verdict("carrots", "refrigerator", "50 F", Some("3 h")), FoodVerdict::Discard);
}

/// Source: the federal chart on refrigerated food and power outages, copies of 2016 and 2024.
#[test]
fn refrigerated_food_goes_by_its_line() {
    for (food, temp, warm, want) in [
        ("milk", "40 F", Some("9 h"), FoodVerdict::Keep),
        ("milk", "41 F", Some("2 h 1 min"), FoodVerdict::Discard),
        ("milk", "41 F", Some("2 h"), FoodVerdict::CoolNow),
        ("milk", "44 F", None, FoodVerdict::Discard),
        ("butter", "60 F", Some("9 h"), FoodVerdict::Keep),
        ("cooked vegetables", "44 F", Some("3 h"), FoodVerdict::Discard),
        ("mayonnaise", "52 F", Some("9 h"), FoodVerdict::Discard),
        ("mayonnaise", "48 F", Some("9 h"), FoodVerdict::CoolNow),
        ("garlic in oil", "44 F", Some("3 h"), FoodVerdict::Discard),
        ("sauerkraut crock", "60 F", Some("1 h"), FoodVerdict::Ask),
    ] {
        assert_eq!(verdict(food, "refrigerator", temp, warm), want, "{food} at {temp} for {warm:?}");
    }
}

#[test]
fn an_unmeasured_refrigerator_goes_by_its_door() {
    let after = |lost: &str| {
        let words = OutageWords { lost: Some(lost.into()), ..about("milk", "refrigerator") };
        judge(&words).foods[0].verdict
    };
    assert_eq!(after("05:30"), FoodVerdict::Keep);
    assert_eq!(after("04:00"), FoodVerdict::Measure);
    assert_eq!(after("03:00"), FoodVerdict::Discard);
    assert_eq!(judge(&about("milk", "refrigerator")).foods[0].verdict, FoodVerdict::Measure);
}

#[test]
fn the_strictest_food_comes_first_and_foods_not_understood_are_said() {
    let words = OutageWords {
        about: vec!["butter".into(), "milk".into()],
        temp: Some("50 F".into()),
        place: Some("fridge".into()),
        ..OutageWords::default()
    };
    let answer = judge(&words);
    assert_eq!(answer.foods[0].verdict, FoodVerdict::Discard);
    assert!(answer.is_refusal());
    let unknown = OutageWords { about: vec!["frobnicate".into()], ..OutageWords::default() };
    let said = judge_outage(almanac(), &unknown, &now()).unwrap_err().to_string();
    assert!(said.contains("milk") && said.contains("dry ice"), "{said}");
    let empty = judge_outage(almanac(), &OutageWords::default(), &now());
    assert!(matches!(empty, Err(AfterError::NothingAsked { .. })));
}

#[test]
fn power_that_came_back_before_it_was_lost_is_no_question() {
    let words =
        OutageWords { lost: Some("06:00".into()), back: Some("05:00".into()), ..OutageWords::default() };
    assert!(matches!(judge_outage(almanac(), &words, &now()), Err(AfterError::WrongOrder { .. })));
}

/// A question that asks for each row: its door, its food in its place, or its own words.
fn question_for(row: &OutageRule) -> Option<OutageWords> {
    if row.state == OutageState::Clock {
        return Some(OutageWords { lost: Some("06:00".into()), ..OutageWords::default() });
    }
    let place = match row.place {
        OutagePlace::Freezer | OutagePlace::Refrigerator => Some(row.place.as_str().to_owned()),
        _ => None,
    };
    let typed = almanac()
        .askable_outage()
        .into_iter()
        .find(|typed| almanac().find_outage_rules(typed).rows.iter().any(|found| found.id == row.id))?;
    Some(OutageWords { about: vec![typed], place, ..OutageWords::default() })
}

#[test]
fn every_row_is_reached_by_a_question_and_its_loss_is_felt() {
    for row in almanac().outage_rules() {
        let words = question_for(row).unwrap_or_else(|| panic!("nothing asks for {}", row.id));
        let shown = |almanac: &Almanac| {
            judge_outage(almanac, &words, &now()).map(|answer| serde_json::to_string(&answer).unwrap()).ok()
        };
        let before = shown(almanac()).unwrap();
        assert!(before.contains(&format!("\"{}\"", row.id)), "{words:?} does not show {}", row.id);
        let without = almanac_without(Table::Outage, row.id.as_str());
        assert_ne!(shown(&without), Some(before), "{} decides nothing", row.id);
    }
}

#[test]
fn without_its_row_nothing_is_kept() {
    for (id, food, place, temp) in [
        ("FRG-08", "butter", "refrigerator", "50 F"),
        ("FRZ-07b", "cheddar", "freezer", "50 F"),
        ("OUT-11", "milk", "refrigerator", "38 F"),
        ("FRZ-01a", "beef", "freezer", "38 F"),
    ] {
        let without = almanac_without(Table::Outage, id);
        let words = OutageWords { temp: Some(temp.into()), ..about(food, place) };
        match judge_outage(&without, &words, &now()) {
            Ok(answer) => assert!(answer.foods[0].verdict >= FoodVerdict::Ask, "{id}: {:?}", answer.foods[0]),
            Err(error) => assert!(matches!(error, AfterError::NotUnderstood { .. }), "{id}: {error}"),
        }
    }
}

fn foods() -> Vec<(String, &'static str)> {
    let charts = almanac().outage_rules().iter().filter(|row| row.state == OutageState::Warm);
    charts.map(|row| (row.item.to_string(), row.place.as_str())).collect()
}

/// The verdicts on the rows of one food.
fn verdicts(food: &(String, &'static str), words: &OutageWords, now: &Moment) -> Option<FoodVerdict> {
    let rows: Vec<&OutageRule> = almanac()
        .outage_rules()
        .iter()
        .filter(|row| *row.item == *food.0 && row.place.as_str() == food.1)
        .collect();
    let known = Known {
        place: None,
        temp: words.temp.as_deref().map(|text| read_temp(text).unwrap()),
        warm_for: words.warm_for.as_deref().map(|text| read_minutes(text).unwrap()),
        crystals: words.crystals,
        shut_for: None,
    };
    food::judge_foods(almanac(), &rows, &known, now).first().map(|food| food.verdict)
}

proptest! {
    #[test]
    fn warmer_or_longer_is_never_kinder(
        which in 0_usize..60, temp in 30_u32..90, hotter in 0_u32..30, warm in 0_u32..900, longer in 0_u32..900,
    ) {
        let foods = foods();
        let food = &foods[which % foods.len()];
        let words = |temp: u32, warm: u32| OutageWords {
            temp: Some(format!("{temp} F")),
            warm_for: Some(format!("{warm} min")),
            ..OutageWords::default()
        };
        let mild = verdicts(food, &words(temp, warm), &now());
        prop_assert!(verdicts(food, &words(temp + hotter, warm), &now()) >= mild, "{food:?} hotter");
        prop_assert!(verdicts(food, &words(temp, warm + longer), &now()) >= mild, "{food:?} longer");
        let unknown = OutageWords { warm_for: None, ..words(temp, warm) };
        prop_assert!(verdicts(food, &unknown, &now()) >= mild, "{food:?} unknown");
    }

    #[test]
    fn a_longer_cut_is_never_kinder(minutes in 0_u32..6000, more in 0_u32..6000) {
        let lost = at("2026-09-10 07:10");
        let words = OutageWords {
            lost: Some("2026-09-10 07:10".into()),
            about: vec!["milk".into(), "butter".into(), "beef".into()],
            ..OutageWords::default()
        };
        let after = |minutes: u32| judge_outage(almanac(), &words, &lost.plus(Minutes(minutes))).unwrap();
        let (short, long) = (after(minutes), after(minutes + more));
        for (before, after) in short.doors.iter().zip(&long.doors) {
            prop_assert!(after.passed >= before.passed);
        }
        for food in &short.foods {
            let same = long.foods.iter().find(|other| other.food == food.food && other.place == food.place);
            prop_assert!(same.is_some_and(|other| other.verdict >= food.verdict), "{food:?}");
        }
    }
}
