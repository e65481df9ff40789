//! `stillroom fit`.

use crate::program::run;

#[test]
fn a_formula_is_fitted_to_what_there_is() {
    let ran = run(&["fit", "pickled_jalapeno_rings", "--have", "2 lb 4 oz"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    insta::assert_snapshot!(ran.whole());
}

#[test]
fn the_json_has_the_documented_keys() {
    let ran = run(&["fit", "pickled_jalapeno_rings", "--have", "2 lb 4 oz", "--jar", "pint", "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "fit/1");
    assert_eq!(json["verdict"], "fits");
    assert_eq!(json["question"]["jars"], serde_json::json!(["pint"]));
    for key in ["factor", "ingredients", "jars", "bags", "loads"] {
        assert!(json["batches"][0].get(key).is_some(), "{key}");
    }
}

#[test]
fn too_little_does_not_fit_and_ends_with_three() {
    let ran = run(&["fit", "pickled_jalapeno_rings", "--have", "1 oz"]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    assert!(ran.out.contains("It does not fit"), "{}", ran.out);
}

#[test]
fn wrong_words_are_told_with_the_right_ones() {
    run(&["fit", "pickled_jalapeno_ringz", "--have", "1 kg"]).expect_wrong_question("pickled_jalapeno_rings");
    run(&["fit", "pickled_jalapeno_rings", "--have", "a lot"])
        .expect_wrong_question("the weight of what there is");
    run(&["fit", "pickled_jalapeno_rings", "--have", "gravel=1 kg"]).expect_wrong_question("gravel");
    run(&["fit", "pickled_jalapeno_rings", "--have", "1 kg", "--canner", "oven"])
        .expect_wrong_question("weighted");
}
