//! House files as households write them.

use almanac::{Almanac, Verdict};

use super::*;

const HOUSE: &str = r#"format = "house/1"

[[copied]]
name = "porch relish"
issuer = "extension-or-university"
title = "Relishes for the Shelf"
year = 2009
page = "14"
ingredients = [
  { what = "onions", amount = "6 cups", part = "low-acid" },
  { what = "sweet red peppers", amount = "3 cups", part = "low-acid" },
  { what = "green peppers", amount = "3 cups", part = "low-acid" },
  { what = "white vinegar 5 %", amount = "7 cups", part = "acid" },
  { what = "sugar", amount = "1 1/2 cups", part = "sugar" },
]
steps = [ "chop", "boil all of it 30 minutes", "fill hot jars" ]

[[copied.process]]
pack = "hot"
jar = "pint"
canner = "boiling-water"
from = "0 ft"
to = "1,000 ft"
minutes = 10

[[copied.process]]
pack = "hot"
jar = "pint"
canner = "boiling-water"
from = "1,001 ft"
to = "6,000 ft"
minutes = 15

[[confirmed]]
name = "sauce from the blue book"
issuer = "national-authority"
title = "Guide to Canning"
year = 2015
page = "2-7"
food = "applesauce"
process = [ { pack = "hot", jar = "pint", canner = "boiling-water", from = "0 ft", to = "1,000 ft", minutes = 15 } ]

[[own]]
name = "corn and pepper jam"
keep = "chilled"
ingredients = [
  { what = "corn", amount = "4 cups", part = "low-acid" },
  { what = "onions", amount = "1 cup", part = "low-acid" },
  { what = "moonfruit", amount = "1 cup", part = "produce" },
  { what = "vinegar", amount = "1 cup", part = "acid" },
]
"#;

const YEAR: u16 = 2026;

fn load() -> Almanac {
    Almanac::load().expect("the tables built in have no fault")
}

fn words(altitude: &str) -> ClearWords {
    ClearWords {
        pack: Some("hot".into()),
        jar: Some("pint".into()),
        canner: Some("boiling water".into()),
        altitude: Some(altitude.into()),
        ..ClearWords::default()
    }
}

#[test]
fn a_house_file_is_read_and_what_was_copied_is_answered_as_entered() {
    let almanac = load();
    let formulas = read_house_formulas(&almanac, HOUSE.as_bytes(), YEAR).unwrap();
    assert_eq!((formulas.copied.len(), formulas.own.len()), (2, 1));
    assert!(formulas.copied[1].is_row && formulas.copied[1].checked.is_ok());
    let answer = clear_copied(&almanac, &formulas, "Porch Relish", &words("1,001 ft")).unwrap();
    let CopiedAnswer::Cleared(answer) = answer else { panic!("it meets every rule: {answer:?}") };
    assert_eq!(answer.verdict, Verdict::NotTested);
    assert_eq!(answer.entered.map(|entered| entered.band().minutes().0), Some(15));
    // 305 m is 1,000.66 ft, and counts as 1,001.
    let metric = clear_copied(&almanac, &formulas, "porch relish", &words("305 m")).unwrap();
    let CopiedAnswer::Cleared(metric) = metric else { panic!("it meets every rule") };
    assert_eq!(metric.entered.map(|entered| entered.band().minutes().0), Some(15));
}

#[test]
fn a_missing_altitude_and_an_unknown_name_are_wrong_questions() {
    let almanac = load();
    let formulas = read_house_formulas(&almanac, HOUSE.as_bytes(), YEAR).unwrap();
    let asked = ClearWords { altitude: None, ..words("") };
    assert_eq!(clear_copied(&almanac, &formulas, "porch relish", &asked), Err(AskError::AltitudeMissing));
    let unknown = clear_copied(&almanac, &formulas, "attic relish", &words("0 ft")).unwrap_err().to_string();
    assert!(unknown.contains("porch relish"), "{unknown}");
}

#[test]
fn every_rule_that_refuses_says_its_line() {
    let almanac = load();
    let spoiled = HOUSE
        .replace("year = 2009", "year = 1988")
        .replace("\"7 cups\"", "\"1 cup\"")
        .replace("\"chop\"", "\"invert the jars\"")
        .replace("minutes = 15 }", "minutes = 9 }");
    let formulas = read_house_formulas(&almanac, spoiled.as_bytes(), YEAR).unwrap();
    let lines = |at: usize| -> Vec<usize> {
        let faults = formulas.copied[at].checked.as_ref().unwrap_err();
        faults.iter().map(|placed| placed.line).collect()
    };
    assert_eq!(lines(0), [3, 3, 7, 16], "{:?}", formulas.copied[0].checked);
    assert_eq!(lines(1).len(), 1);
    let answer = clear_copied(&almanac, &formulas, "porch relish", &words("0 ft")).unwrap();
    assert!(matches!(answer, CopiedAnswer::Refused(_)));
}

#[test]
fn what_cannot_be_read_is_told_at_once_with_its_line() {
    let almanac = load();
    let spoiled = HOUSE
        .replace("issuer = \"extension-or-university\"", "issuer = \"a neighbour\"")
        .replace("part = \"sugar\"", "part = \"sweet\"")
        .replace("keep = \"chilled\"", "keep = \"canned\"")
        .replace("food = \"applesauce\"", "food = \"moonsauce\"")
        .replace("house/1", "house/9");
    let faults = read_house_formulas(&almanac, spoiled.as_bytes(), YEAR).unwrap_err();
    let lines: Vec<usize> = faults.faults.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [1, 5, 14, 40, 45], "{faults}");
    assert!(faults.faults.iter().all(|fault| !fault.kind.hint().is_empty()));
}

#[test]
fn an_own_formula_is_laid_beside_the_nearest_tested_one_and_gets_no_process() {
    let almanac = load();
    let formulas = read_house_formulas(&almanac, HOUSE.as_bytes(), YEAR).unwrap();
    let beside = lay_beside(&almanac, &formulas.own[0]);
    assert_eq!(beside.nearest.as_deref(), Some("corn_relish"), "{beside:?}");
    let own_only = beside.lines.iter().find(|line| line.yours.contains("moonfruit")).unwrap();
    assert!(own_only.printed.is_empty() && own_only.change.starts_with("leave it out"), "{own_only:?}");
    assert!(beside.lines.iter().any(|line| line.yours.is_empty() && line.printed.contains("celery")));
    let json = serde_json::to_string(&beside).unwrap();
    assert!(!json.contains("minutes") && !json.contains(" min "), "{json}");
}

#[test]
fn bytes_that_are_no_house_file_never_panic() {
    let almanac = load();
    for bytes in [&b"\x00\xff"[..], b"[[copied]]", b"copied = 3", b"[copied]\nname = 1", b"own = [1, 2]"] {
        assert!(read_house_formulas(&almanac, bytes, YEAR).is_err(), "{bytes:?}");
    }
    assert_eq!(read_house_formulas(&almanac, b"", YEAR).unwrap(), HouseFormulas::default());
}
