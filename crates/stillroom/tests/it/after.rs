//! `stillroom sign`, `seals`, `outage`, `cool`, `oil`, `ferment` and `dried`.

use unicode_width::UnicodeWidthStr;

use crate::program::{Ran, run};

/// A Saturday evening at ten past eleven.
const NOW: &[&str] = &["--now", "2026-09-12 23:10"];

fn ask(words: &[&str]) -> Ran {
    fits(run(&[words, NOW].concat()))
}

/// The same, when no line for people is wider than a page.
fn fits(ran: Ran) -> Ran {
    let is_for_people = !ran.out.starts_with('{');
    for line in ran.out.lines().filter(|_| is_for_people) {
        assert!(line.width() <= 80, "{line}");
    }
    ran
}

fn sign(words: &[&str]) -> Ran {
    fits(run(&[&["sign"], words].concat()))
}

/// Whether a text calls food or a jar safe; publications keep their titles.
fn calls_it_safe(text: &str) -> bool {
    let before_sources = text.split("│ Sources").next().unwrap_or(text);
    before_sources
        .to_lowercase()
        .split(|mark: char| !mark.is_alphabetic())
        .any(|word| word == "safe" || word == "safely")
}

#[test]
fn a_bulging_lid_is_danger_first_and_then_what_to_do() {
    let ran = sign(&["bulging lid"]);
    assert_eq!(ran.code, 3);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn rust_and_floating_fruit_are_quality() {
    let ran = sign(&["rusty lid", "fruit floats"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn lost_liquid_goes_by_how_much_is_gone() {
    let ran = sign(&["lost liquid", "--lost", "60 %"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_sign_that_is_not_understood_is_said_with_what_can_be_asked() {
    sign(&["frobnicated"]).expect_wrong_question("bulging lid");
    sign(&[]).expect_wrong_question("nothing is asked");
    sign(&["lost liquid", "--lost", "much"]).expect_wrong_question("share of the liquid");
}

#[test]
fn the_seals_are_planned_and_the_last_minute_is_a_clock_time() {
    let ran = ask(&["seals", "--heat-off", "2026-09-12 09:40"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn jars_still_cooling_are_left_alone() {
    let ran = ask(&["seals", "--heat-off", "20:00"]);
    assert!(ran.out.contains("Hands off. Look at the seals Sun 13 Sep, 08:00."), "{}", ran.out);
}

#[test]
fn seals_found_late_or_without_a_time_have_no_way_out() {
    for words in [
        &["seals"][..],
        &["seals", "--heat-off", "yesterday 23:10"],
        &["seals", "--heat-off", "21:10", "--wrong-process"],
    ] {
        let ran = ask(words);
        assert_eq!(ran.code, 3, "{}", ran.whole());
        assert!(ran.out.contains("Too late"), "{}", ran.out);
        assert!(!ran.out.contains("Begin again before"), "{}", ran.out);
    }
}

#[test]
fn the_power_is_out_and_every_door_has_its_clock() {
    let ran = ask(&["outage", "--lost", "21:30"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn food_by_food_the_strictest_comes_first() {
    let ran = ask(&["outage", "butter", "milk", "--in", "refrigerator", "--temp", "46 F", "--warm", "3 h"]);
    assert_eq!(ran.code, 3);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn dry_ice_snow_and_floods_are_answered() {
    for (words, said) in [
        (&["outage", "dry ice"][..], "50 lb"),
        (&["outage", "snow"], "Do not put food out into the snow"),
        (&["outage", "jars in flood water"], "thrown away, even when they seem sealed"),
    ] {
        let ran = ask(words);
        assert!(ran.out.replace("\n            │ ", " ").contains(said), "{}", ran.out);
    }
}

#[test]
fn a_pot_has_two_marks() {
    let ran = ask(&["cool", "--off", "22:20"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
    assert_eq!(ask(&["cool", "--off", "20:20", "--temp", "95 F"]).code, 3);
}

#[test]
fn garlic_in_oil_is_dated() {
    let ran = ask(&["oil", "garlic", "--made", "yesterday"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
    assert_eq!(ask(&["oil", "garlic"]).code, 3);
}

#[test]
fn a_ferment_with_scum_is_told_whole() {
    let ran = ask(&[
        "ferment",
        "kraut",
        "--salt",
        "2.25 %",
        "--temp",
        "72 F",
        "--started",
        "2026-09-01",
        "--sign",
        "white scum",
        "--ph",
        "3.4",
    ]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn too_little_salt_a_high_ph_or_mould_closes_a_ferment() {
    for words in [
        &["ferment", "kraut", "--salt", "1.5 %"][..],
        &["ferment", "kimchi", "--ph", "4.8"],
        &["ferment", "kraut", "--sign", "blue mould", "--ph", "3.2"],
        &["ferment", "pepper mash"],
    ] {
        assert_eq!(ask(words).code, 3, "{words:?}");
    }
}

#[test]
fn drops_in_the_jar_send_dried_fruit_back() {
    let ran = ask(&["dried", "drops on the lid", "--kind", "fruit", "--outdoors"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn keeping_is_a_reminder_and_a_matter_of_quality() {
    let ran = ask(&["keeps", "peppers", "--as", "dried", "--put-up", "2026-09-01", "--store", "65 F"]);
    assert_eq!(ran.code, 0);
    insta::assert_snapshot!(ran.whole());
    assert_eq!(ask(&["keeps", "corn", "--as", "frozen", "--store", "20 F"]).code, 3);
}

#[test]
fn each_answer_has_its_json_and_names_its_format() {
    let asked: &[(&[&str], &str)] = &[
        (&["seals", "--heat-off", "09:40"], "seals/1"),
        (&["outage", "milk", "--lost", "21:30"], "outage/1"),
        (&["cool", "--off", "22:20"], "cooling/1"),
        (&["oil", "pesto", "--made", "today"], "oil/1"),
        (&["ferment", "kimchi"], "ferment/1"),
        (&["dried", "--kind", "herb"], "dried/1"),
        (&["keeps", "corn", "--as", "frozen"], "keeps/1"),
    ];
    for (words, format) in asked {
        let ran = ask(&[*words, &["--json"]].concat());
        let json: serde_json::Value =
            serde_json::from_str(&ran.out).unwrap_or_else(|_| panic!("{}", ran.whole()));
        assert_eq!((json["format"].as_str(), ran.err.as_str()), (Some(*format), ""));
        assert_eq!(json["now"], "2026-09-12T23:10");
    }
    let json: serde_json::Value = serde_json::from_str(&sign(&["leaking", "--json"]).out).unwrap();
    assert_eq!((json["format"].as_str(), json["verdict"].as_str()), (Some("sign/1"), Some("discard")));
    assert!(json["throw_away"].as_array().is_some_and(|rows| !rows.is_empty()));
}

#[test]
fn nothing_is_called_safe_and_every_answer_ends_with_whom_to_ask() {
    let asked: &[&[&str]] = &[
        &["seals", "--heat-off", "09:40"],
        &["outage", "milk", "kraut", "beef", "cheese", "jars in flood water", "dry ice", "--lost", "21:30"],
        &["cool", "--off", "22:20"],
        &["oil", "garlic and herbs and peppers", "--made", "today"],
        &["ferment", "kraut", "--sign", "pink", "--ph", "3"],
        &["dried", "--kind", "fruit", "--outdoors"],
        &["keeps", "corn", "--as", "frozen"],
    ];
    for words in asked {
        let ran = ask(words);
        assert!(!calls_it_safe(&ran.out), "{}", ran.out);
        assert!(ran.out.contains("Whom to ask") && ran.out.contains("Sources"), "{}", ran.out);
    }
    let ran = sign(&["looks fine", "rusty lid", "boil before eating", "lost liquid"]);
    assert!(!calls_it_safe(&ran.out) && ran.out.contains("Whom to ask"), "{}", ran.out);
}

#[test]
fn wrong_times_and_words_are_told_with_what_to_do() {
    ask(&["seals", "--heat-off", "later"]).expect_wrong_question("names no day and time");
    ask(&["outage", "--lost", "2026-09-14 21:30"]).expect_wrong_question("later than now");
    ask(&["outage", "milk", "--in", "cellar"]).expect_wrong_question("freezer, refrigerator");
    ask(&["outage", "milk", "--temp", "46"]).expect_wrong_question("the temperature");
    ask(&["ferment", "frobnicate"]).expect_wrong_question("sauerkraut");
    ask(&["ferment", "kraut", "--ph", "sour"]).expect_wrong_question("no pH");
    ask(&["dried", "--kind", "meat"]).expect_wrong_question("fruit, vegetable, herb");
    ask(&["oil", "plums"]).expect_wrong_question("garlic");
    run(&["seals", "--now", "soon"]).expect_wrong_question("moment to reckon from");
}
