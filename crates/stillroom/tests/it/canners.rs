//! `stillroom canners`, and the house file beside a question.

use crate::program::{no_file, run, scratch, word};

const HOUSE: &[u8] = br#"format = "house/1"
altitude = "1,200 ft"

[[canner]]
name = "old dial"
kind = "dial"
gauge_error = "+0.5 psi"
gauge_tested = 2026-05-02
holds = { quart = 6 }

[[canner]]
name = "rocker"
kind = "weighted"
"#;

#[test]
fn the_canners_are_listed_with_what_to_hold() {
    let file = scratch("canners/house.toml", HOUSE);
    let words = [
        "canners",
        word(&file),
        "--today",
        "2026-09-12",
        "--food",
        "beans-snap",
        "--pack",
        "raw",
        "--jar",
        "pint",
    ];
    let ran = run(&words);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    assert!(ran.out.contains("Hold the dial at 12 psi; 11 psi is printed."), "{}", ran.whole());
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
    let json = run(&[&words[..], &["--json"]].concat());
    let json: serde_json::Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(json["format"], "canners/1");
    assert_eq!(json["canners"][0]["gauge"]["error_psi"], 0.5);
    assert_eq!(json["canners"][0]["process"]["processes"][0]["hold_psi"], 12);
    assert!(json["canners"][1]["gauge"].is_null());
}

#[test]
fn a_question_may_name_a_canner_of_the_house() {
    let file = scratch("canners/asked.toml", HOUSE);
    let words = [
        "clear",
        "--food",
        "beans-snap",
        "--pack",
        "raw",
        "--jar",
        "pint",
        "--canner",
        "rocker",
        "--house",
        word(&file),
        "--json",
    ];
    let ran = run(&words);
    let json: serde_json::Value =
        serde_json::from_str(&ran.out).unwrap_or_else(|_| panic!("{}", ran.whole()));
    assert_eq!(json["question"]["canner"], "weighted");
    assert_eq!(json["question"]["altitude_ft"], 1200);
}

#[test]
fn a_house_file_with_faults_is_told_by_its_lines() {
    let file = scratch("canners/wrong.toml", b"altitude = 3\n[[canner]]\nname = \"x\"\n");
    run(&["canners", word(&file)]).expect_wrong_question("wrong.toml:2:1");
    run(&["canners", word(&no_file("canners/none.toml"))]).expect_world_failed("cannot be read");
}

#[test]
fn what_other_authorities_say_is_shown() {
    let ran = run(&["abroad", "canada", "--jar", "500 ml", "--altitude", "410m"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
    assert_eq!(run(&["abroad", "norway"]).code, 3);
    run(&["abroad", "--jar", "large"]).expect_wrong_question("the jar: ");
}
