//! What a dial gauge does to an answer, and that each refusal goes away with its row.

use almanac::{Almanac, CannerKind, JarSize, Pack, ProductId, Table, Tables, Verdict};
use batch::clear::{Because, ClearError, ClearQuestion, Clearance, Gauge, Tested, clear};
use measure::{Altitude, Pressure};

fn without(rules: &[&str]) -> Almanac {
    let mut tables = Tables::embedded();
    for rule in rules {
        let start = format!("{rule},");
        tables = tables.without_lines(Table::CannerRules, |line| line.starts_with(&start));
    }
    Almanac::from_tables(&tables).expect("the tables still load")
}

fn beans(canner: CannerKind, gauge: Option<Gauge>) -> ClearQuestion {
    ClearQuestion {
        product: ProductId::from("beans-snap"),
        pack: Pack::Raw,
        jar: JarSize::Pint,
        canner,
        altitude: Altitude::feet(1200),
        gauge,
        formula: None,
        changes: Vec::new(),
    }
}

fn ask(almanac: &Almanac, canner: CannerKind, error: f64, tested: Tested) -> Clearance {
    let error = Some(Pressure::psi(error));
    clear(almanac, &beans(canner, Some(Gauge { error, tested }))).expect("a question that can be judged")
}

fn held(clearance: &Clearance) -> Vec<Option<f64>> {
    clearance.processes.iter().map(|line| line.hold().map(Pressure::as_psi)).collect()
}

#[test]
fn a_high_gauge_is_held_at_the_next_whole_pound() {
    let almanac = without(&[]);
    for (error, hold) in [(0.0, 11.0), (0.1, 12.0), (0.5, 12.0), (0.99, 12.0)] {
        let clearance = ask(&almanac, CannerKind::Dial, error, Tested::WithinTheYear);
        assert_eq!(held(&clearance), [Some(hold)], "{error} psi high");
        assert_eq!(clearance.processes[0].process().pressure(), Some(Pressure::psi(11.0)));
    }
}

#[test]
fn a_low_gauge_takes_nothing_off() {
    let almanac = without(&[]);
    for error in [-0.1, -0.5, -0.99] {
        assert_eq!(
            held(&ask(&almanac, CannerKind::Dial, error, Tested::WithinTheYear)),
            [Some(11.0)],
            "{error}"
        );
    }
}

#[test]
fn a_gauge_off_by_a_pound_is_replaced_and_not_corrected() {
    let almanac = without(&[]);
    for error in [1.0, 1.5, 3.0, -1.0, -2.5] {
        let refused = ask(&almanac, CannerKind::Dial, error, Tested::WithinTheYear);
        assert_eq!(refused.verdict, Verdict::NotTested, "{error}");
        assert_eq!(refused.because[0].code, Because::GaugeOff, "{error}");
        assert!(refused.processes.is_empty() && refused.riders.is_empty());
        assert!(!refused.instead.is_empty());
    }
}

#[test]
fn the_limit_of_a_gauge_is_the_figure_of_its_row() {
    let tables = Tables::embedded();
    let row = tables.text(Table::CannerRules).lines().find(|line| line.starts_with("gauge-threshold-used,"));
    let row = row.expect("the row is there").to_owned();
    let looser = tables.text(Table::CannerRules).replace(&row, &row.replace(",1,1,psi,", ",2,2,psi,"));
    assert_ne!(looser, tables.text(Table::CannerRules));
    let almanac =
        Almanac::from_tables(&tables.with(Table::CannerRules, looser)).expect("the tables still load");
    assert_eq!(held(&ask(&almanac, CannerKind::Dial, 1.5, Tested::WithinTheYear)), [Some(13.0)]);
}

#[test]
fn without_a_rule_for_it_no_error_is_judged() {
    for rule in ["gauge-threshold-used", "gauge-reads-high"] {
        let refused = ask(&without(&[rule]), CannerKind::Dial, 0.5, Tested::WithinTheYear);
        assert_eq!(refused.because[0].code, Because::GaugeOff, "{rule}");
        assert!(refused.processes.is_empty(), "{rule}");
    }
    let refused = ask(&without(&["gauge-reads-low"]), CannerKind::Dial, -0.5, Tested::WithinTheYear);
    assert!(refused.processes.is_empty());
}

#[test]
fn an_untested_or_overdue_gauge_gives_no_process() {
    for tested in [Tested::Never, Tested::Overdue] {
        let refused = ask(&without(&[]), CannerKind::Dial, 0.0, tested);
        assert_eq!(refused.because[0].code, Because::GaugeUntested, "{tested:?}");
        assert!(refused.processes.is_empty(), "{tested:?}");
        let served = ask(&without(&["gauge-untested"]), CannerKind::Dial, 0.0, tested);
        assert_eq!(served.verdict, Verdict::Tested, "the row makes the refusal");
    }
}

#[test]
fn a_gauge_of_which_nothing_is_said_is_reminded_of_its_test() {
    let served = clear(&without(&[]), &beans(CannerKind::Dial, None)).expect("a question that can be judged");
    assert_eq!(held(&served), [Some(11.0)]);
    for code in ["pc-gauge-check", "gauge-test-when"] {
        assert!(served.riders.iter().any(|rider| rider.code == code), "{code}");
    }
}

#[test]
fn a_weight_is_never_corrected_and_never_overdue() {
    let almanac = without(&[]);
    for (error, tested) in [(0.5, Tested::WithinTheYear), (3.0, Tested::Never), (-3.0, Tested::Overdue)] {
        let served = ask(&almanac, CannerKind::Weighted, error, tested);
        assert_eq!(served.verdict, Verdict::Tested);
        assert_eq!(held(&served), [None]);
        assert_eq!(served.processes[0].process().pressure(), Some(Pressure::psi(15.0)));
    }
}

#[test]
fn an_error_no_gauge_has_is_handed_back() {
    for error in [f64::NAN, f64::INFINITY, -500.0] {
        let question = beans(
            CannerKind::Dial,
            Some(Gauge { error: Some(Pressure::psi(error)), tested: Tested::WithinTheYear }),
        );
        let handed_back = clear(&without(&[]), &question);
        assert!(matches!(handed_back, Err(ClearError::GaugeErrorOutOfRange { .. })), "{error}");
    }
}

#[test]
fn a_gauge_that_says_nothing_is_answered_with_the_weight_that_needs_no_test() {
    let almanac = Almanac::load().expect("the built-in tables load");
    for (error, tested, said) in [
        (0.0, Tested::Never, "never tested"),
        (0.0, Tested::Overdue, "overdue"),
        (3.0, Tested::WithinTheYear, "off by 3"),
    ] {
        let answer = ask(&almanac, CannerKind::Dial, error, tested);
        assert!(
            answer.instead.iter().any(|offer| offer.text.contains("weighted gauge")),
            "{error}, {tested:?}"
        );
        assert!(
            answer.because.iter().any(|reason| reason.text.contains(said)),
            "{said}: {:?}",
            answer.because
        );
    }
}
