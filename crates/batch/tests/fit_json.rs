//! The shape of `fit/1`: every key is there, unknown figures are null, amounts are a value and a unit.

use almanac::{Almanac, FormulaId};
use batch::fit::{FitQuestion, Have, IngredientRef, fit};
use measure::Mass;
use serde_json::{Value, json};

fn answer(formula: &str, mass: Mass) -> Value {
    let almanac = Almanac::load().expect("the built-in tables have no fault");
    let question = FitQuestion {
        formula: FormulaId::from(formula),
        have: vec![Have { ingredient: IngredientRef::MainProduce, mass }],
        jars: Vec::new(),
        canner: None,
        altitude: None,
        most_batches: None,
    };
    let fit = fit(&almanac, &question).expect("the formula is on file");
    serde_json::to_value(fit).expect("every key is text")
}

#[test]
fn an_answer_has_every_key_of_the_format() {
    let fit = answer("dilled_beans", Mass::pounds(3.0));
    for key in
        ["format", "verdict", "question", "batches", "keeps", "left_over", "because", "notes", "sources"]
    {
        assert!(!fit[key].is_null(), "{key} is missing");
    }
    assert_eq!(fit["format"], "fit/1");
    assert_eq!(fit["verdict"], "fits");
    assert_eq!(fit["keeps"], "shelf-if-cleared");
    assert_eq!(fit["question"]["formula"], "dilled_beans");
    assert_eq!(fit["question"]["have"][0]["grams"], 1360.8);
    assert_eq!(fit["question"]["jars"], json!(["pint"]));
    assert_eq!(fit["question"]["canner"], Value::Null);
    assert_eq!(fit["batches"][0]["factor"], "3/4");
    assert_eq!(fit["batches"][0]["jars"][0], json!({"size": "pint", "low": 5, "likely": 6, "high": 6}));
    assert_eq!(fit["batches"][0]["loads"][0]["jars"], 6);
    for key in ["id", "locator", "basis", "rank"] {
        assert!(fit["sources"][0][key].is_string(), "{key} of a source");
    }
}

/// Source: USDA, National Nutrient Database, SR28, NDB 02053: a cup of distilled vinegar weighs 238 g; 3 cups 714 g.
#[test]
fn an_ingredient_has_its_exact_and_measured_amount_and_its_weight() {
    let fit = answer("dilled_beans", Mass::pounds(3.0));
    let vinegar = &fit["batches"][0]["ingredients"][4];
    assert_eq!(vinegar["ingredient"], "white vinegar 5%");
    assert_eq!(vinegar["part"], "acid");
    assert_eq!(vinegar["exact"], json!({"value": "3", "unit": "cup"}));
    assert_eq!(vinegar["measured"], json!({"value": "3", "unit": "cup"}));
    assert_eq!(vinegar["grams"], 714.0);
    assert_eq!(vinegar["moved_percent"], 0.0);
}

#[test]
fn an_unknown_weight_is_null_and_a_note_says_so() {
    let fit = answer("pickled_beets", Mass::pounds(7.0));
    let lines = fit["batches"][0]["ingredients"].as_array().expect("a list");
    let cloves =
        lines.iter().find(|line| line["ingredient"] == "whole cloves").expect("the beets have cloves");
    assert_eq!(cloves.get("grams"), Some(&Value::Null));
    let notes = fit["notes"].as_array().expect("a list");
    let told = notes.iter().any(|note| {
        note["code"] == "no-weight-on-file"
            && note["text"].as_str().is_some_and(|text| text.contains("whole cloves"))
    });
    assert!(told, "{notes:?}");
}

#[test]
fn a_refusal_says_why_and_has_no_batches() {
    let fit = answer("apple_jelly", Mass::pounds(2.0));
    assert_eq!(fit["verdict"], "does-not-fit");
    assert_eq!(fit["batches"], json!([]));
    assert_eq!(fit["because"][0]["code"], "whole-batch-only");
    assert_eq!(fit["left_over"][0]["what"], "apples");
}
