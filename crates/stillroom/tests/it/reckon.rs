//! `stillroom reckon`.

use crate::program::run;

#[test]
fn a_sum_is_answered_with_equation_and_caution() {
    insta::assert_snapshot!(
        run(&["reckon", "ferment-salt", "gross=3410g", "bowl=610g", "percent=2.25"]).whole()
    );
}

#[test]
fn the_json_has_the_documented_keys() {
    let ran = run(&["reckon", "ferment-salt", "gross=3410 g", "bowl=610 g", "percent=2.25", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "reckoning/1");
    assert_eq!(json["name"], "ferment-salt");
    assert_eq!(json["inputs"]["percent"], 2.25);
    assert_eq!(json["outputs"][0]["value"], 63.0);
    assert!(json["outputs"][0]["low"].is_null());
    assert_eq!(json["in_range"], true);
    for key in ["equation", "notes", "sources", "vetoes"] {
        assert!(!json[key].is_null(), "{key}");
    }
}

#[test]
fn what_speaks_against_it_ends_with_three_and_still_prints() {
    let ran = run(&["reckon", "boil-over", "volume=6L", "pot=8L", "boils=jam"]);
    assert_eq!(ran.code, 3, "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
    let ran = run(&["reckon", "vinegar", "vinegar=1 cup", "strength=4", "--json"]);
    assert_eq!(ran.code, 3);
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert!(json["vetoes"][0]["text"].as_str().unwrap().contains("cannot be mended"));
}

#[test]
fn a_wrong_asking_ends_with_two_and_says_what_to_do() {
    for (words, part) in [
        (&["reckon", "boiling-point"][..], "needs altitude"),
        (&["reckon", "boiling-point", "altitude=4 kg"], "is a weight"),
        (&["reckon", "boiling-point", "altitude=1200"], "altitude"),
        (&["reckon", "salometer", "degrees=140"], "outside 0° to 100°"),
        (&["reckon", "ferment-salt", "gross=1kg", "bowl=1g", "percent=2", "moon=full"], "asks for no"),
        (
            &[
                "reckon",
                "why",
                "--food",
                "tomatoes-crushed",
                "--pack",
                "hot",
                "--jar",
                "pint",
                "--canner",
                "boiling-water",
            ],
            "altitude is missing",
        ),
    ] {
        run(words).expect_wrong_question(part);
    }
}

#[test]
fn the_list_names_every_sum_with_what_it_asks_for() {
    let ran = run(&["reckon"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    for name in
        ["net-weight", "gel-point", "canner-heat-up", "freezer-takes", "height-by-barometer", "ferment-gas"]
    {
        assert!(ran.out.contains(name), "{name}");
    }
}

#[test]
fn heat_is_drawn_only_for_what_is_printed_and_under_its_sentence() {
    let tomatoes =
        ["reckon", "why", "--food", "tomatoes-crushed", "--pack", "hot", "--canner", "boiling-water"];
    let ran = run(&[&tomatoes[..], &["--jar", "pint", "--altitude", "1,200 ft"]].concat());
    assert_eq!(ran.code, 0, "{}", ran.whole());
    let first = ran.out.replace('\n', " ");
    assert!(first.contains("This explains a printed process and can never make one"), "{first}");
    assert!(ran.out.contains("Printed: 40 minutes."));
    insta::assert_snapshot!(ran.whole());
    let ran = run(&[&tomatoes[..], &["--jar", "half-gallon", "--altitude", "1,200 ft"]].concat());
    assert_eq!(ran.code, 3, "{}", ran.whole());
    assert!(ran.out.contains("stillroom clear"), "{}", ran.out);
}
