//! `stillroom copied`, `stillroom own` and `stillroom clear --copied`.

use crate::program::{Ran, no_file, run, scratch, word};

const HOUSE: &str = include_str!("../../../../demo/copied/house.toml");

fn house(name: &str, text: &str) -> std::path::PathBuf {
    scratch(&format!("copied-{name}/house.toml"), text.as_bytes())
}

fn clear(house: &std::path::Path, more: &[&str]) -> Ran {
    let words =
        ["clear", "--house", word(house), "--pack", "hot", "--jar", "pint", "--canner", "boiling-water"];
    run(&[&words[..], more].concat())
}

#[test]
fn a_copied_formula_is_answered_as_entered_and_ends_with_three() {
    let file = house("shown", HOUSE);
    let ran = clear(&file, &["--copied", "porch relish", "--altitude", "1,001 ft"]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
    let ran = clear(&file, &["--copied", "porch relish", "--altitude", "1,001 ft", "--json"]);
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!((ran.code, &json["verdict"]), (3, &"not-tested".into()));
    assert_eq!(json["entered"]["bands"][0]["minutes"], 15);
}

#[test]
fn an_unknown_altitude_is_asked_for_and_one_above_the_bands_is_refused() {
    let file = house("heights", HOUSE);
    clear(&file, &["--copied", "porch relish"]).expect_wrong_question("altitude");
    let above = clear(&file, &["--copied", "porch relish", "--altitude", "6,001 ft"]);
    assert_eq!(above.code, 3);
    assert!(
        above.out.contains("no band you entered") || above.out.contains("No band you entered"),
        "{}",
        above.out
    );
    clear(&file, &["--copied", "attic relish", "--altitude", "0 ft"]).expect_wrong_question("porch relish");
}

#[test]
fn every_rule_that_refuses_is_told_with_its_line() {
    let spoiled = HOUSE.replace("\"7 cups\"", "\"2 cups\"").replace("year = 2009", "year = 1989");
    let file = house("refused", &spoiled);
    let ran = run(&["copied", "--house", word(&file)]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    for part in ["line 9", "before 1994", "of it is acid"] {
        assert!(ran.out.contains(part), "{part}: {}", ran.out);
    }
    let answer = clear(&file, &["--copied", "porch relish", "--altitude", "0 ft"]);
    assert!(answer.code == 3 && !answer.out.contains(" min "), "{}", answer.whole());
    let json = clear(&file, &["--copied", "porch relish", "--altitude", "0 ft", "--json"]);
    let json: serde_json::Value = serde_json::from_str(&json.out).unwrap();
    assert!(json["entered"].is_null() && !json["because"].as_array().unwrap().is_empty());
}

#[test]
fn the_demo_house_breaks_no_rule_and_is_listed() {
    let file = house("listed", HOUSE);
    let ran = run(&["copied", "--house", word(&file)]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    let json = run(&["copied", "--house", word(&file), "--json"]);
    let json: serde_json::Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(json["copied"].as_array().map(Vec::len), Some(2));
}

#[test]
fn an_own_formula_stands_beside_the_nearest_tested_one() {
    let file = house("own", HOUSE);
    let ran = run(&["own", "--house", word(&file)]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    let text = ran.whole().replace(word(&file), "house.toml");
    insta::assert_snapshot!(text);
    run(&["own", "moon jam", "--house", word(&file)]).expect_wrong_question("corn and pepper jam");
}

#[test]
fn a_file_that_cannot_be_read_is_told_with_every_line_at_once() {
    let spoiled = HOUSE.replace("part = \"sugar\"", "part = \"sweet\"").replace("\"chilled\"", "\"shelf\"");
    let file = house("faulty", &spoiled);
    let ran = run(&["copied", "--house", word(&file)]);
    ran.expect_wrong_question("does not know the word `sweet`");
    assert!(ran.err.contains("`shelf`"), "{}", ran.err);
    run(&["copied", "--house", word(&no_file("copied-none/house.toml"))])
        .expect_world_failed("cannot be read");
}
