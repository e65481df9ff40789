//! `stillroom almanac`.

use crate::program::run;

#[test]
fn a_formula_is_printed_at_its_printed_size_with_source_and_basis() {
    let ran = run(&["almanac", "formula", "pickled_jalapeno_rings"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_process_is_printed_line_by_line() {
    let ran = run(&["almanac", "process", "tomatoes-crushed"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn a_source_tells_how_far_it_is_trusted() {
    let ran = run(&["almanac", "source", "USDA539_15"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    assert!(ran.out.contains("full"), "{}", ran.out);
}

#[test]
fn lists_are_narrowed_by_words() {
    for list in ["produce", "formulas", "processes", "sources"] {
        let all = run(&["almanac", list]);
        assert_eq!((all.code, all.err.as_str()), (0, ""), "{list}");
        assert!(all.out.lines().count() > 10, "{list}");
    }
    let narrowed = run(&["almanac", "formulas", "jalapeno"]);
    assert!(
        narrowed.out.lines().all(|line| line.contains("jalapeno") || line.starts_with(' ')),
        "{}",
        narrowed.out
    );
    let none = run(&["almanac", "formulas", "frobnicate"]);
    assert_eq!(none.code, 3);
    assert!(none.whole().contains("Nothing in this list holds \"frobnicate\""), "{}", none.whole());
}

#[test]
fn every_list_and_sheet_is_json_on_request() {
    for words in [
        ["almanac", "produce", "--json"].as_slice(),
        &["almanac", "formulas", "--json"],
        &["almanac", "processes", "--json"],
        &["almanac", "sources", "--json"],
        &["almanac", "formula", "pickled_jalapeno_rings", "--json"],
        &["almanac", "process", "tomatoes-crushed", "--json"],
        &["almanac", "source", "USDA539_15", "--json"],
    ] {
        let ran = run(words);
        assert_eq!(ran.code, 0, "{words:?}");
        serde_json::from_str::<serde_json::Value>(&ran.out)
            .unwrap_or_else(|error| panic!("{words:?}: {error}"));
    }
}

#[test]
fn unknown_names_get_the_nearest() {
    run(&["almanac", "formula", "pickled_jalapeno_ringz"]).expect_wrong_question("pickled_jalapeno_rings");
    run(&["almanac", "process", "tomatoes"]).expect_wrong_question("may be more than one food");
    run(&["almanac", "source", "no such book"]).expect_wrong_question("no source is called");
}

#[test]
fn what_may_not_be_called_tested_says_so_and_shows_no_recalled_figure() {
    let lower = run(&["almanac", "formula", "strawberry_jam_pectin"]).whole();
    assert!(lower.contains("in a source of lower rank; never called tested"), "{lower}");
    assert!(!lower.contains("stillroom clear"), "{lower}");
    let part = run(&["almanac", "formula", "golden_pepper_jelly"]).whole();
    let line = part.lines().find(|line| line.contains("serrano chile")).expect("the part stands there");
    assert!(line.contains("not seen in print") && !line.contains("cup"), "{line}");
    let recalled = run(&["almanac", "formula", "frozen_peas"]).whole();
    assert!(recalled.contains("Blanch: shelled peas, on file, not verified"), "{recalled}");
    assert!(!recalled.contains("1/2 min"), "{recalled}");
}
