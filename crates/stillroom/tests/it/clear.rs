//! `stillroom clear`.

use crate::program::run;

const TOMATOES: &[&str] =
    &["clear", "--food", "tomatoes-crushed", "--pack", "hot", "--jar", "pint", "--canner", "boiling-water"];

fn clear(more: &[&str]) -> crate::program::Ran {
    run(&[TOMATOES, more].concat())
}

#[test]
fn a_tested_food_is_told_whole() {
    insta::assert_snapshot!(clear(&["--altitude", "1,200 ft"]).whole());
}

/// Source: USDA Complete Guide to Home Canning, 2015, Guide 3, crushed tomatoes, pints, hot pack: 40 minutes at 1,001
/// to 3,000 ft; acid: 1 tbsp bottled lemon juice or 1/4 tsp citric acid per pint.
#[test]
fn the_json_has_the_documented_keys() {
    let ran = clear(&["--altitude", "1,200 ft", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "clearance/1");
    assert_eq!(json["verdict"], "tested");
    assert_eq!(json["question"]["altitude_ft"], 1200);
    assert_eq!(json["processes"][0]["minutes"], 40);
    assert_eq!(json["processes"][0]["band_ft"], serde_json::json!([1001, 3000]));
    assert_eq!(json["acid"]["bottled_lemon_tbsp"], 1);
    assert_eq!(json["acid"]["citric_acid_tsp"], 0.25);
    assert!(json["entered"].is_null());
}

#[test]
fn a_food_refused_by_name_is_told_with_what_to_do_instead() {
    let ran = run(&["clear", "--food", "pumpkin puree"]);
    assert_eq!(ran.code, 3);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_refusal_prints_its_json_and_ends_with_three() {
    let ran = run(&["clear", "--food", "garlic in oil", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""));
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "clearance/1");
    assert_eq!(json["processes"], serde_json::json!([]));
}

#[test]
fn a_half_gallon_of_tomatoes_is_refused() {
    let ran = run(&[
        "clear",
        "--food",
        "tomatoes-crushed",
        "--pack",
        "hot",
        "--jar",
        "half-gallon",
        "--canner",
        "boiling-water",
        "--altitude",
        "1,200 ft",
    ]);
    assert_eq!(ran.code, 3, "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_missing_altitude_names_three_ways_to_find_it() {
    let ran = clear(&[]);
    ran.expect_wrong_question("the altitude is missing");
    for way in ["topographic map", "phone", "extension office"] {
        assert!(ran.err.contains(way), "{}", ran.err);
    }
}

#[test]
fn wrong_words_are_told_with_the_right_ones() {
    let with = |food: &str, jar: &str, altitude: &str| {
        run(&[
            "clear",
            "--food",
            food,
            "--pack",
            "hot",
            "--jar",
            jar,
            "--canner",
            "boiling-water",
            "--altitude",
            altitude,
        ])
    };
    with("tomatoes-crushed", "bucket", "1000 ft").expect_wrong_question("half-pint");
    with("tomatoes-crushed", "pint", "high").expect_wrong_question("the altitude: ");
    with("tomatoes-crushed", "pint", "1000").expect_wrong_question("lacks a unit");
    with("tomatos crusht", "pint", "1000 ft").expect_wrong_question("tomatoes-crushed");
    with("tomatoes", "pint", "1000 ft").expect_wrong_question("may be more than one food");
}

#[test]
fn a_change_that_is_not_understood_is_not_judged() {
    clear(&["--altitude", "1,200 ft", "--change", "frobnicate it"]).expect_wrong_question("not understood");
}

#[test]
fn changes_alone_are_told_one_by_one() {
    let ran = run(&[
        "clear",
        "--with",
        "chile_salsa",
        "--change",
        "no salt",
        "--change",
        "less vinegar",
        "--change",
        "quarts",
    ]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_change_alone_that_is_printed_ends_with_zero_and_gives_no_minutes() {
    let ran = run(&["clear", "--with", "chile_salsa", "--change", "half-pints", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!((&json["judged"], &json["verdict"]), (&"changes".into(), &"tested".into()));
    assert_eq!(json["processes"], serde_json::json!([]));
    assert_eq!(json["changes"][0]["said"], "half-pints");
}

#[test]
fn a_change_that_is_not_understood_and_a_missing_formula_are_wrong_questions() {
    run(&["clear", "--with", "chile_salsa", "--change", "make it nicer"])
        .expect_wrong_question("not understood");
    run(&["clear", "--with", "chile_salza", "--change", "no salt"]).expect_wrong_question("chile_salsa");
    run(&["clear", "--with", "tomatoes_crushed", "--change", "half-pints"]).expect_wrong_question("canner");
}
