//! The register of canners: what to hold, what to test, what to replace.

use almanac::{Almanac, Table, Tables, Verdict};
use jiff::civil::{Date, date};
use kitchen::ask::{ClearAnswer, ClearWords, clear};
use kitchen::house::{House, Register, fill_in_house, list_canners};
use kitchen::read_house_on;

const HOUSE: &str = r#"
format = "house/1"
altitude = "1,200 ft"

[[canner]]
name = "old dial"
kind = "dial"
gauge_error = "+0.5 psi"
gauge_tested = 2026-05-02
holds = { quart = 6, pint = 8 }

[[canner]]
name = "aunt's dial"
kind = "dial"
gauge_error = "+1 psi"
gauge_tested = 2026-05-02

[[canner]]
name = "rocker"
kind = "weighted"

[[canner]]
name = "low dial"
kind = "dial"
gauge_error = "-0.5 psi"
gauge_tested = 2025-05-02
"#;

fn almanac() -> Almanac {
    Almanac::load().expect("the tables built in have no fault")
}

fn today() -> Date {
    date(2026, 9, 12)
}

fn house(text: &str) -> House {
    read_house_on(today(), text.as_bytes(), &almanac()).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn beans() -> ClearWords {
    ClearWords {
        food: "beans-snap".into(),
        pack: Some("raw".into()),
        jar: Some("pint".into()),
        ..ClearWords::default()
    }
}

fn register(almanac: &Almanac) -> Register {
    list_canners(almanac, &house(HOUSE), today(), Some(&beans())).expect("a food on file")
}

fn held(register: &Register, name: &str) -> Vec<Option<f64>> {
    let sheet = register.canners.iter().find(|sheet| sheet.name == name).expect("in the register");
    match &sheet.process {
        Some(ClearAnswer::Judged(clearance)) => {
            clearance.processes.iter().map(|line| line.hold().map(|psi| psi.as_psi())).collect()
        }
        other => panic!("{other:?}"),
    }
}

/// Source: Ohio State University Extension, Pressure Canner Dial Gauge Testing: a gauge that reads high is corrected
/// for. Published 11 psi (USDA Complete Guide to Home Canning, 2015, Guide 4, snap beans, to 2,000 ft), half a
/// pound high, up to the next whole pound: hold 12.
#[test]
fn a_dial_half_a_pound_high_is_held_at_twelve_for_eleven() {
    let register = register(&almanac());
    assert_eq!(held(&register, "old dial"), [Some(12.0)]);
    assert_eq!(held(&register, "rocker"), [None], "a weight is never corrected");
}

#[test]
fn a_pound_off_is_replaced_by_the_stricter_threshold_and_the_looser_is_shown() {
    let register = register(&almanac());
    let sheet = &register.canners[1];
    assert!(sheet.gauge.as_ref().unwrap().is_to_replace);
    assert!(held(&register, "aunt's dial").is_empty());
    let said: Vec<&str> = sheet.says.iter().map(|said| said.text.as_str()).collect();
    assert!(said.iter().any(|text| text.contains("At 1 psi or more it is replaced")), "{said:?}");
    assert!(said.iter().any(|text| text.contains("2024") && text.contains("2 psi")), "{said:?}");
}

#[test]
fn an_overdue_test_gives_no_process_and_its_last_day_is_shown() {
    let register = register(&almanac());
    let sheet = &register.canners[3];
    let gauge = sheet.gauge.as_ref().unwrap();
    assert!(gauge.is_overdue && !gauge.is_to_replace);
    assert_eq!(gauge.due, Some(date(2026, 5, 2)));
    assert!(sheet.says.iter().any(|said| said.text.starts_with("Overdue")));
    assert!(held(&register, "low dial").is_empty());
    assert!(!register.canners[0].gauge.as_ref().unwrap().is_overdue);
}

#[test]
fn capacity_is_as_the_owner_found_it_and_else_as_printed() {
    let register = register(&almanac());
    let found = |at: usize, jar: almanac::JarSize| {
        let holds = register.canners[at].holds.iter().find(|holds| holds.jar == jar).expect("listed");
        (holds.found, holds.printed)
    };
    assert_eq!(found(0, almanac::JarSize::Quart), (Some(6), Some(7)));
    assert_eq!(found(2, almanac::JarSize::Quart), (None, Some(7)));
}

#[test]
fn without_the_threshold_no_error_is_small_enough() {
    let tables = Tables::embedded()
        .without_lines(Table::CannerRules, |line| line.starts_with("gauge-threshold-used,"));
    let struck = Almanac::from_tables(&tables).expect("a struck row is no fault");
    let register = register(&struck);
    assert!(register.canners[0].gauge.as_ref().unwrap().is_to_replace);
    assert!(held(&register, "old dial").is_empty());
}

#[test]
fn a_canner_of_the_house_is_asked_for_by_its_name() {
    let almanac = almanac();
    let house = house(HOUSE);
    let asked = |canner: &str| {
        let words = ClearWords { canner: Some(canner.into()), ..beans() };
        clear(&almanac, &fill_in_house(words, &house, today())).expect("a question that can be read")
    };
    assert_eq!(asked("Old Dial").verdict(), Verdict::Tested);
    assert_eq!(asked("low dial").verdict(), Verdict::NotTested);
    assert_eq!(asked("weighted").verdict(), Verdict::Tested, "the only one of its kind");
    let words = ClearWords {
        canner: Some("old dial".into()),
        gauge_tested: Some("never".into()),
        altitude: Some("3,000 ft".into()),
        ..beans()
    };
    let filled = fill_in_house(words, &house, today());
    assert_eq!(
        (filled.gauge_tested.as_deref(), filled.altitude.as_deref()),
        (Some("never"), Some("3,000 ft"))
    );
}

#[test]
fn a_format_of_a_later_year_and_a_test_still_to_come_are_faults() {
    let almanac = almanac();
    let told = |text: &str| {
        let faults = read_house_on(today(), text.as_bytes(), &almanac).expect_err("a fault");
        faults.faults.iter().map(|fault| fault.to_string()).collect::<Vec<_>>().join("\n")
    };
    assert!(told("format = \"house/9\"").contains("house/9"));
    assert!(told(&HOUSE.replace("2025-05-02", "2026-12-01")).contains("tested on 2026-12-01"));
    assert!(told("date = 2026-09-12").contains("belongs to one day"));
    assert!(told("canner = 3").contains("canner"));
    assert!(told("= broken").contains("house"));
}
