//! `stillroom trouble`.

use crate::program::{Ran, program, read, run};

/// Asked on a fixed evening, on a clock that is never set.
fn load(words: &[&str]) -> Ran {
    let words = [&["trouble"], words, &["--now", "2026-09-12 14:30"]].concat();
    read(program(&words).env("TZ", "UTC").output().expect("the program starts"))
}

const POWER_CUT: &[&str] = &[
    "power-cut",
    "--canner",
    "dial",
    "--minutes",
    "25",
    "--begun",
    "13:42",
    "--lost",
    "13:55",
    "--back",
    "14:20",
];

#[test]
fn a_power_cut_is_told_with_the_end_on_the_clock() {
    let ran = load(POWER_CUT);
    assert!(ran.out.contains("14:45") && !ran.out.contains("14:32"), "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_wrong_process_is_told_with_its_last_minute() {
    insta::assert_snapshot!(
        load(&["wrong-acid", "--canner", "boiling-water", "--heat-off", "13:55"]).whole()
    );
}

#[test]
fn a_jar_that_did_not_seal_is_told_with_its_last_minute() {
    insta::assert_snapshot!(load(&["unsealed", "--canner", "weighted", "--heat-off", "10:05"]).whole());
}

#[test]
fn what_nobody_printed_is_told_as_a_gap() {
    let ran = load(&["boiled-dry", "--canner", "dial", "--noticed", "during"]);
    assert_eq!(ran.code, 3);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_load_too_late_is_thrown_away_and_ends_with_three() {
    let ran = load(&["wrong-time", "--heat-off", "12:00"]);
    assert_eq!(ran.code, 3, "{}", ran.whole());
    assert!(ran.out.contains("Too late since 14:00"), "{}", ran.whole());
}

#[test]
fn nothing_is_wider_than_80_columns() {
    for words in [
        POWER_CUT,
        &["jar-broke", "--canner", "dial"],
        &["left-alone"],
        &["wrong-canner", "--heat-off", "13:00"],
    ] {
        let ran = load(words);
        assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.whole());
    }
}

#[test]
fn the_json_is_printed_as_documented() {
    let ran = load(&[POWER_CUT, &["--json"]].concat());
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "load-trouble/1");
    assert_eq!(json["outcome"], "whole-time-again");
    let ends = json["clock"].as_array().unwrap().iter().find(|line| line["mark"] == "ends").unwrap();
    assert_eq!(ends["at"], "2026-09-12T14:45+00:00");
    assert!(json["sources"].as_array().unwrap().iter().all(|source| source["locator"].is_string()));
}

#[test]
fn wrong_words_are_told_with_the_right_ones() {
    load(&["exploded"]).expect_wrong_question("boiled-dry");
    load(&["power-cut", "--lost", "13:55"]).expect_wrong_question("the canner is missing");
    load(&["boil-lost", "--canner", "dial", "--lost", "13:55"]).expect_wrong_question("pressure-lost");
    load(&["wrong-acid", "--heat-off", "9"]).expect_wrong_question("heat off");
    run(&["trouble", "wrong-acid", "--now", "yesterday"]).expect_wrong_question("--now");
}
