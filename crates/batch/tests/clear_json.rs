//! The JSON face of an answer: exactly the keys of `clearance/1`, unknown figures null and never left out.

use almanac::{Almanac, CannerKind, FormulaId, JarSize, Pack, ProductId};
use batch::clear::{ClearError, ClearQuestion, Gauge, Tested, clear};
use measure::{Altitude, Pressure};
use serde_json::{Value, json};

fn question(food: &str, canner: CannerKind, feet: u32) -> ClearQuestion {
    ClearQuestion {
        product: ProductId::from(food),
        pack: Pack::Hot,
        jar: JarSize::Pint,
        canner,
        altitude: Altitude::feet(feet),
        gauge: None,
        formula: None,
        changes: Vec::new(),
    }
}

fn answer(question: &ClearQuestion) -> Value {
    let almanac = Almanac::load().expect("the built-in tables load");
    let clearance = clear(&almanac, question).expect("a question that can be judged");
    serde_json::to_value(&clearance).expect("an answer can be written")
}

fn keys(value: &Value) -> Vec<&str> {
    let mut keys: Vec<&str> = value.as_object().expect("an object").keys().map(String::as_str).collect();
    keys.sort_unstable();
    keys
}

#[test]
fn the_answer_of_the_format_page_comes_out_as_written_there() {
    let said = answer(&question("tomatoes-crushed", CannerKind::BoilingWater, 1200));
    assert_eq!(said["format"], "clearance/1");
    assert_eq!(said["verdict"], "tested");
    assert_eq!(
        said["question"],
        json!({"food": "tomatoes-crushed", "pack": "hot", "jar": "pint", "canner": "boiling-water",
               "altitude_ft": 1200, "gauge_error_psi": null, "with": null, "changes": []})
    );
    let line = &said["processes"][0];
    assert_eq!(said["processes"].as_array().map(Vec::len), Some(1));
    for (key, value) in [
        ("minutes", json!(40)),
        ("pressure_psi", Value::Null),
        ("hold_psi", Value::Null),
        ("headspace_in", json!(0.5)),
        ("jar_row", json!("pint")),
        ("band_ft", json!([1001, 3000])),
        ("rest_min", json!(5)),
    ] {
        assert_eq!(line[key], value, "{key}");
    }
    assert_eq!(
        said["acid"],
        json!({"bottled_lemon_tbsp": 1, "citric_acid_tsp": 0.25, "vinegar_5pct_tbsp": 2,
               "each_is_enough": true, "per": "pint"})
    );
    assert_eq!(said["because"], json!([]));
    assert_eq!(said["instead"], json!([]));
    assert_eq!(said["entered"], Value::Null);
    assert_eq!(said["sources"][0]["basis"], "read");
    assert_eq!(said["sources"][0]["rank"], "full");
}

#[test]
fn no_key_is_left_out_or_added() {
    let served = answer(&question("tomatoes-crushed", CannerKind::BoilingWater, 1200));
    let refused = answer(&question("beans-snap", CannerKind::BoilingWater, 1200));
    for said in [&served, &refused] {
        assert_eq!(
            keys(said),
            [
                "acid",
                "because",
                "changes",
                "entered",
                "format",
                "instead",
                "judged",
                "processes",
                "question",
                "riders",
                "sources",
                "verdict"
            ]
        );
    }
    assert_eq!(
        keys(&served["processes"][0]),
        ["band_ft", "headspace_in", "hold_psi", "jar_row", "minutes", "pressure_psi", "rest_min", "source"]
    );
    assert_eq!(keys(&served["riders"][0]), ["code", "source", "text"]);
    assert_eq!(keys(&served["sources"][0]), ["basis", "id", "locator", "rank", "year"]);
    assert_eq!(keys(&refused["because"][0]), ["code", "source", "text"]);
    assert_eq!(keys(&refused["instead"][0]), ["source", "text", "what"]);
    assert_eq!(refused["verdict"], "do-not");
    assert_eq!(refused["processes"], json!([]));
    assert_eq!(refused["acid"], Value::Null);
    assert_eq!(refused["because"][0]["code"], "low-acid");
}

#[test]
fn a_dial_line_says_what_is_printed_and_what_to_hold() {
    let mut asked = question("carrots", CannerKind::Dial, 2500);
    asked.gauge = Some(Gauge { error: Some(Pressure::psi(0.5)), tested: Tested::WithinTheYear });
    let said = answer(&asked);
    assert_eq!(said["question"]["gauge_error_psi"], json!(0.5));
    assert_eq!(said["processes"][0]["pressure_psi"], json!(12));
    assert_eq!(said["processes"][0]["hold_psi"], json!(13));
    assert_eq!(said["processes"][0]["band_ft"], json!([2001, 4000]));
}

#[test]
fn an_open_band_has_no_upper_end() {
    let said = answer(&question("applesauce", CannerKind::BoilingWater, 7000));
    assert_eq!(said["processes"][0]["band_ft"], json!([6001, null]));
}

#[test]
fn nothing_is_ever_called_safe() {
    let almanac = Almanac::load().expect("the built-in tables load");
    for product in almanac.products() {
        for canner in CannerKind::ALL {
            for pack in Pack::ALL {
                let mut asked = question(product.id.as_str(), *canner, 1200);
                asked.pack = *pack;
                let said = answer_with(&almanac, &asked);
                for text in said["riders"].as_array().into_iter().flatten().map(|rider| &rider["text"]) {
                    let words = text.as_str().expect("a text").to_lowercase();
                    assert!(
                        !words.split(|mark: char| !mark.is_alphabetic()).any(|word| word == "safe"),
                        "{words}"
                    );
                }
            }
        }
    }
}

fn answer_with(almanac: &Almanac, question: &ClearQuestion) -> Value {
    serde_json::to_value(clear(almanac, question).expect("a question that can be judged"))
        .expect("it can be written")
}

#[test]
fn a_short_process_asks_for_sterile_jars_with_the_minutes_of_the_altitude() {
    let said = answer(&question("apple-juice", CannerKind::BoilingWater, 900));
    let rider = said["riders"]
        .as_array()
        .and_then(|riders| riders.iter().find(|rider| rider["code"] == "sterilize-jars"));
    let text = rider.and_then(|rider| rider["text"].as_str()).expect("a rider about sterile jars");
    assert!(text.contains("10 min first"), "{text}");
    let longer = answer(&question("apple-juice", CannerKind::BoilingWater, 1200));
    assert!(!longer["riders"].to_string().contains("sterilize-jars"), "10 min need no sterile jars");
}

#[test]
fn an_unknown_food_or_formula_is_handed_back() {
    let almanac = Almanac::load().expect("the built-in tables load");
    let asked = question("moonfruit", CannerKind::BoilingWater, 0);
    assert!(matches!(clear(&almanac, &asked), Err(ClearError::UnknownFood { .. })));
    let mut asked = question("salsa-chile", CannerKind::BoilingWater, 0);
    asked.formula = Some(FormulaId::from("moon_salsa"));
    assert!(matches!(clear(&almanac, &asked), Err(ClearError::UnknownFormula { .. })));
    asked.formula = Some(FormulaId::from("applesauce"));
    let handed_back = clear(&almanac, &asked).expect_err("another food's formula");
    assert!(handed_back.to_string().contains("makes applesauce, not salsa-chile\nhint: "), "{handed_back}");
}
