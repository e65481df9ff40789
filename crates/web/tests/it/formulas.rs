//! Formulas: found, read, fitted.

use axum::http::StatusCode;

use crate::app::TestApp;

#[test]
fn three_letters_find_a_formula() {
    let app = TestApp::new();
    let found = app.ask("/formulas", &[("find", "jal")]);
    assert!(found.text.contains("/formulas/pickled_jalapeno_rings"));
    let none = app.ask("/formulas", &[("find", "qzx")]);
    assert!(none.text.contains("No formula on file has"));
    assert!(none.text.contains("Show all of them"));
}

#[test]
fn every_formula_has_a_sheet_with_its_source() {
    let app = TestApp::new();
    let almanac = almanac::Almanac::load().expect("the tables built in have no fault");
    for formula in almanac.formulas() {
        let answer = app.get(&format!("/formulas/{}", formula.id));
        assert_eq!(answer.status, StatusCode::OK, "{}", formula.id);
        let title = &almanac.source(&formula.citation.source).expect("a listed source").title;
        let words: Vec<&str> = title.split([',', '&', '\'', '"']).collect();
        assert!(answer.text.contains(words[0].trim()), "{}: {title}", formula.id);
    }
    assert_eq!(app.get("/formulas/no_such_thing").status, StatusCode::NOT_FOUND);
}

#[test]
fn a_weight_turns_the_printed_amounts_into_measured_ones() {
    let app = TestApp::new();
    let fitted = app.ask("/formulas/pickled_jalapeno_rings", &[("have", "1 lb 8 oz")]);
    assert_eq!(fitted.status, StatusCode::OK);
    assert!(fitted.text.contains("It fits"), "{}", fitted.text);
    assert!(fitted.text.contains("of the printed formula"));
    let wrong = app.ask("/formulas/pickled_jalapeno_rings", &[("have", "some")]);
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.text.contains("value=\"some\"") && wrong.text.contains("id=\"why\""));
}
