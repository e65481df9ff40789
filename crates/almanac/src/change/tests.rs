//! Judging changes: which rule decides, and that a struck row changes the answer.

use measure::Fraction;

use crate::{
    Almanac, Change, ChangeQuestion, FormulaClass, FormulaId, IngredientClass, Table, Tables, Verdict, What,
};

fn almanac() -> Almanac {
    Almanac::load().expect("the built-in tables hold no fault")
}

fn without(rule: &str) -> Almanac {
    let tables =
        Tables::embedded().without_lines(Table::ChangeRules, |line| line.starts_with(&format!("{rule},")));
    Almanac::from_tables(&tables).expect("the other rows hold no fault")
}

/// The rule that decides, and what may be told.
fn judge(
    almanac: &Almanac,
    formula: &str,
    change: Change,
    ingredient: IngredientClass,
    what: Option<What>,
    amount: Option<&str>,
) -> Option<(String, Verdict)> {
    let formula = almanac.formula(&FormulaId::from(formula)).expect("a formula");
    let classes: Vec<FormulaClass> = formula.class.into_iter().collect();
    let question = ChangeQuestion {
        formula: Some(&formula.id),
        product: formula.product.as_ref(),
        classes: &classes,
        change,
        ingredient,
        what,
        amount: amount.map(|amount| amount.parse::<Fraction>().expect("a number")),
    };
    almanac.judge_change(&question).map(|rule| (rule.id.to_string(), rule.served_verdict()))
}

#[test]
fn less_acid_in_a_salsa_is_barred_by_its_row() {
    let lower =
        |almanac: &Almanac| judge(almanac, "chile_salsa", Change::Lower, IngredientClass::Acid, None, None);
    assert_eq!(lower(&almanac()), Some(("cr-s01".to_owned(), Verdict::DoNot)));
    assert_eq!(lower(&without("cr-s01")), None);
}

#[test]
fn kraut_salt_is_judged_by_its_percent() {
    let almanac = almanac();
    let cases = [
        (Change::Lower, "1.9", "cr-f02", Verdict::DoNot),
        (Change::Lower, "2.0", "cr-f18", Verdict::NotTested),
        (Change::Lower, "2.25", "cr-f19", Verdict::Tested),
        (Change::Lower, "2.5", "cr-f19", Verdict::Tested),
        (Change::Raise, "2.6", "cr-f20", Verdict::NotTested),
    ];
    for (change, percent, rule, verdict) in cases {
        assert_eq!(
            judge(&almanac, "sauerkraut", change, IngredientClass::Salt, None, Some(percent)),
            Some((rule.to_owned(), verdict)),
            "{percent} %"
        );
    }
}

#[test]
fn a_rule_of_the_formula_comes_before_the_rule_of_its_family() {
    let almanac = almanac();
    let own = judge(&almanac, "golden_pepper_jelly", Change::Raise, IngredientClass::HotPepper, None, None);
    assert_eq!(own, Some(("cr-j25".to_owned(), Verdict::DoNot)));
}

#[test]
fn a_recalled_permission_permits_nothing() {
    let almanac = almanac();
    let rule = almanac.change_rule("cr-p18").expect("on file");
    assert_eq!((rule.verdict, rule.served_verdict()), (Verdict::Tested, Verdict::NotTested));
}

#[test]
fn a_case_no_rule_speaks_of_gets_no_answer() {
    let honey =
        judge(&almanac(), "lemon_curd", Change::Replace, IngredientClass::Sugar, Some(What::Honey), None);
    assert_eq!(honey, None);
}
