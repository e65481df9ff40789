//! A fit permits exactly the jars that a clearance serves.

use std::collections::BTreeMap;

use almanac::{CannerKind, Formula, JarSize, Pack, Verdict};
use batch::clear::{Because, ClearQuestion, Gauge, Tested, clear};
use batch::fit::{BecauseCode, CannerLoad, FitError, FitQuestion, Keeps, NoteCode, fit};
use measure::{Altitude, Pressure};

use crate::support::{almanac, question};

/// A height in each band of the boiling-water tables, and one above the last dial band.
const HEIGHTS_FT: [u32; 4] = [500, 1_500, 5_000, 9_500];

fn is_cleared(formula: &Formula, jar: JarSize, canner: CannerKind, altitude: Altitude) -> bool {
    let Some(product) = &formula.product else { return false };
    formula.packs.iter().any(|&pack| {
        let question = ClearQuestion {
            product: product.clone(),
            pack,
            jar,
            canner,
            altitude,
            gauge: Some(Gauge { error: Some(Pressure::psi(0.0)), tested: Tested::WithinTheYear }),
            formula: Some(formula.id.clone()),
            changes: Vec::new(),
        };
        clear(almanac(), &question).is_ok_and(|clearance| clearance.verdict == Verdict::Tested)
    })
}

/// Whether the fit gets past its jars; no batch is wanted, so nothing else is worked out.
fn is_fitted(formula: &Formula, jar: JarSize, canner: CannerKind, altitude: Altitude) -> bool {
    let holds = BTreeMap::from([(JarSize::HalfGallon, 4)]);
    let wanted = FitQuestion {
        jars: vec![jar],
        canner: Some(CannerLoad { id: "ours".to_owned(), kind: canner, holds }),
        altitude: Some(altitude),
        most_batches: Some(0),
        ..question(formula.id.as_str(), &[&format!("{}=1 kg", formula.ingredients[0].name)])
    };
    match fit(almanac(), &wanted) {
        Ok(fit) => fit.because.iter().all(|because| because.code == BecauseCode::NoBatchWanted),
        Err(error) => panic!("{}: {error}", formula.id),
    }
}

/// Whether every row that a formula rests on was read in a source of full rank.
fn is_trusted(formula: &Formula) -> bool {
    let parts = formula.ingredients.iter().filter(|part| part.safety_critical);
    formula.citation.may_be_called_tested()
        && parts.into_iter().all(|part| part.citation.may_be_called_tested())
}

#[test]
fn a_formula_of_lower_rank_or_with_a_recalled_part_is_never_tested_and_kept_cold() {
    let doubtful: Vec<&Formula> =
        almanac().formulas().filter(|formula| formula.product.is_some() && !is_trusted(formula)).collect();
    let ids: Vec<&str> = doubtful.iter().map(|formula| formula.id.as_str()).collect();
    assert_eq!(ids, ["citrus_marmalade", "golden_pepper_jelly", "peach_jam_pectin", "strawberry_jam_pectin"]);
    for formula in doubtful {
        for &jar in JarSize::ALL {
            for &canner in CannerKind::ALL {
                assert!(!is_cleared(formula, jar, canner, Altitude::feet(500)), "{}", formula.id);
            }
        }
        let fit = fit(almanac(), &question(formula.id.as_str(), &["2 kg"])).expect("a fit is an answer");
        assert_eq!(fit.keeps, Keeps::Cold, "{}", formula.id);
        assert!(fit.notes.iter().any(|note| note.code == NoteCode::NotTested), "{}", formula.id);
        assert!(fit.batches.iter().all(|batch| batch.loads.is_empty()), "{}", formula.id);
    }
}

#[test]
fn a_formula_of_lower_rank_is_refused_with_another_of_the_same_food() {
    let asked = ClearQuestion {
        product: "jam-added-pectin".into(),
        pack: Pack::Hot,
        jar: JarSize::HalfPint,
        canner: CannerKind::BoilingWater,
        altitude: Altitude::feet(500),
        gauge: None,
        formula: Some("strawberry_jam_pectin".into()),
        changes: Vec::new(),
    };
    let clearance = clear(almanac(), &asked).expect("the question is whole");
    assert_eq!(clearance.verdict, Verdict::NotTested);
    assert_eq!(clearance.because[0].code, Because::OnFileLowerRank);
    assert!(clearance.processes.is_empty() && !clearance.instead.is_empty());
}

#[test]
fn fit_permits_exactly_the_jars_that_clear_serves() {
    let mut asked = 0;
    for formula in almanac().formulas().filter(|formula| formula.product.is_some() && is_trusted(formula)) {
        for &jar in JarSize::ALL {
            for &canner in CannerKind::ALL {
                // One height for each, in turn, so that every formula meets every band.
                let altitude = Altitude::feet(HEIGHTS_FT[asked % HEIGHTS_FT.len()]);
                let cleared = is_cleared(formula, jar, canner, altitude);
                let fitted = is_fitted(formula, jar, canner, altitude);
                assert_eq!(cleared, fitted, "{} in {jar}, {canner}, {altitude:?}", formula.id);
                asked += 1;
            }
            // Four canners and four heights: one more step keeps them from always meeting the same.
            asked += 1;
        }
    }
    assert!(asked > 3_000, "{asked}");
}

#[test]
fn a_jar_that_no_line_serves_is_refused_with_the_way_to_ask() {
    let wanted = FitQuestion { jars: vec![JarSize::Quart], ..question("chile_salsa", &["5 lb"]) };
    let refused = fit(almanac(), &wanted).expect("a refusal is an answer");
    assert_eq!(refused.because[0].code, BecauseCode::JarNotPermitted);
    assert!(refused.because[0].text.contains("clear"), "{}", refused.because[0].text);
    assert!(refused.batches.is_empty());
}

#[test]
fn a_canner_that_holds_none_of_the_jars_is_a_wrong_question() {
    let canner = CannerLoad {
        id: "little one".to_owned(),
        kind: CannerKind::BoilingWater,
        holds: BTreeMap::from([(JarSize::HalfPint, 4)]),
    };
    let wanted = FitQuestion { canner: Some(canner), ..question("chile_salsa", &["5 lb"]) };
    assert!(matches!(fit(almanac(), &wanted), Err(FitError::CannerHoldsNone { .. })));
}
