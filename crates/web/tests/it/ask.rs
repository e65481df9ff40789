//! Is there a tested process for it?

use axum::http::StatusCode;
use proptest::prelude::*;

use crate::app::{Answer, TestApp};

fn question<'a>(changed: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let mut words = vec![
        ("food", "tomatoes-crushed"),
        ("pack", "hot"),
        ("jar", "pint"),
        ("canner", "boiling-water"),
        ("altitude", "1,200 ft"),
    ];
    for (field, value) in changed {
        words.retain(|(other, _)| other != field);
        words.push((field, value));
    }
    words
}

fn ask(changed: &[(&str, &str)]) -> Answer {
    TestApp::new().ask("/ask/process", &question(changed))
}

/// Source: USDA Complete Guide to Home Canning, 2015, Guide 3, p. 3-8: crushed tomatoes, hot pack, pints, 1,001 to
/// 3,000 ft, 40 minutes, 1/2 inch of headspace.
#[test]
fn a_tested_process_is_shown_with_its_row_and_its_source() {
    let answer = ask(&[]);
    assert_eq!(answer.status, StatusCode::OK);
    for words in ["Tested", "40 min", "½ in", "1,001 ft to 3,000 ft", "bottled lemon juice", "Guide 3 p. 3-8"]
    {
        assert!(answer.text.contains(words), "{words}");
    }
}

#[test]
fn what_is_not_tested_shows_no_minutes_and_what_to_do_instead() {
    let cases: [&[(&str, &str)]; 3] = [
        &[("jar", "half-gallon")],
        &[("canner", "dial"), ("gauge_tested", "this-year"), ("altitude", "9,000 ft")],
        &[("change", "add corn")],
    ];
    for changed in cases {
        let answer = ask(changed);
        assert_eq!(answer.status, StatusCode::OK, "{changed:?}");
        assert!(answer.text.contains("Not tested") || answer.text.contains("Do not"), "{changed:?}");
        assert!(answer.text.contains("Instead"), "{changed:?}");
        assert!(!answer.text.contains(" min</span>"), "{changed:?}");
    }
}

#[test]
fn a_food_that_must_not_be_canned_is_refused_by_its_name_alone() {
    let answer = TestApp::new().ask("/ask/process", &[("food", "pumpkin puree")]);
    assert_eq!(answer.status, StatusCode::OK);
    assert!(answer.text.contains("Do not") || answer.text.contains("Not tested"));
    assert!(answer.text.contains("Instead"));
    assert!(!answer.text.contains(" min</span>"));
}

#[test]
fn what_is_wrong_is_said_under_its_field_and_everything_typed_stays() {
    let cases = [
        ("food", "tomatos crusht"),
        ("food", "tomatoes"),
        ("pack", "warm"),
        ("jar", "bucket"),
        ("canner", "oven"),
        ("altitude", "high"),
        ("altitude", ""),
        ("with", "no such formula"),
        ("change", "frobnicate"),
        ("gauge_error", "lots"),
        ("gauge_tested", "perhaps"),
    ];
    for (field, value) in cases {
        let answer = ask(&[(field, value)]);
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{field} {value}");
        let wrong = answer.text.find("id=\"why\"").unwrap_or_else(|| panic!("{field}: nothing said"));
        let before = &answer.text[..wrong];
        let under = before.rfind("<label for=\"").expect("a field above");
        assert!(before[under..].starts_with(&format!("<label for=\"{field}\"")), "{field} {value}");
        if matches!(field, "food" | "altitude" | "with" | "change" | "gauge_error") {
            assert!(answer.text.contains(&format!("value=\"{value}\"")), "{field} {value}");
        }
        assert!(
            !answer.text.contains("hint:") && !answer.text.contains("stillroom almanac"),
            "{field} {value}"
        );
    }
}

#[test]
fn several_foods_are_offered_by_name_and_none_is_chosen() {
    let answer = ask(&[("food", "tomatoes")]);
    assert!(answer.text.contains("food=tomatoes-crushed&#38;pack=hot"), "{}", answer.text);
    assert!(!answer.text.contains("Tested"));
}

#[test]
fn nobody_is_told_that_a_jar_is_safe() {
    let app = TestApp::new();
    for address in ["/ask", "/ask/process", "/ask/altitude", "/formulas"] {
        let text = app.get(address).text.to_lowercase();
        assert!(!text.contains(" safe"), "{address}");
    }
    assert!(!ask(&[]).text.to_lowercase().contains(" safe "));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_typed_is_shown_as_typed_and_runs_nothing(
        field in prop::sample::select(vec!["food", "altitude", "with", "change", "gauge_error", "pack"]),
        value in prop_oneof![
            "\\PC{0,60}",
            Just("<script>alert(1)</script>".to_owned()),
            Just("\"><img src=x onerror=alert(1)>".to_owned()),
            Just("\u{202e}סלק כבוש\u{202c} 🫙".to_owned()),
            Just("x".repeat(10_000)),
            Just("'; DROP TABLE entry; --".to_owned()),
        ],
    ) {
        let answer = ask(&[(field, &value)]);
        prop_assert!(answer.status == StatusCode::OK || answer.status == StatusCode::UNPROCESSABLE_ENTITY);
        prop_assert!(!answer.text.contains("<script") && !answer.text.contains("<img"));
    }
}

#[test]
fn a_reason_stands_with_its_source() {
    let words = [("with", "bread_butter_cucumber"), ("change", "honey instead of sugar")];
    let answer = TestApp::new().ask("/ask/process", &words);
    let (_, from) = answer.text.split_once("role=\"status\"").expect("an answer");
    let (inside, _) = from.split_once("</div>").expect("the answer ends");
    assert!(inside.contains("class=\"src\"") && inside.contains("Guide 1 p. 1-28"), "{inside}");
}
