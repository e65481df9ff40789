//! What must hold of every fit of every formula.

use std::collections::BTreeMap;

use almanac::{CannerKind, JarSize, Part, ScaleRule};
use batch::fit::{CannerLoad, Fit, FitError, FitQuestion, FitVerdict, Have, IngredientRef, NoteCode, fit};
use measure::{Fraction, Mass};
use proptest::prelude::*;

use crate::support::{almanac, question, taken};

/// A question about any formula, a weight of its main produce, and perhaps a canner.
fn any_question() -> impl Strategy<Value = FitQuestion> {
    let formulas: Vec<String> = almanac().formulas().map(|formula| formula.id.to_string()).collect();
    let canner = prop::option::of((1_u32..20, 1_u32..20, prop::sample::select(CannerKind::ALL.to_vec())));
    (prop::sample::select(formulas), 0.05_f64..60.0, canner, prop::option::of(0_u32..9_000)).prop_map(
        |(formula, kilograms, canner, feet)| FitQuestion {
            have: vec![Have { ingredient: IngredientRef::MainProduce, mass: Mass::kilograms(kilograms) }],
            canner: canner.map(|(pints, quarts, kind)| CannerLoad {
                id: "ours".to_owned(),
                kind,
                holds: BTreeMap::from([(JarSize::Pint, pints), (JarSize::Quart, quarts)]),
            }),
            altitude: feet.map(measure::Altitude::feet),
            ..question(&formula, &[])
        },
    )
}

/// The fit of a question; none where the question is one that is refused as wrong.
fn fitted(question: &FitQuestion) -> Option<Fit> {
    match fit(almanac(), question) {
        Ok(fit) => Some(fit),
        Err(
            FitError::NoProduce { .. } | FitError::NotWeighable { .. } | FitError::CannerHoldsNone { .. },
        ) => None,
        Err(error) => panic!("{error}"),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    /// What is used and what is left make what was there, and no more is used than there was.
    #[test]
    fn used_and_left_make_what_was_there(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        let had = fit.question.have[0].mass;
        let used = taken(&fit, fit.question.have[0].index);
        prop_assert!(used <= had + Mass::grams(1e-6), "{} used of {}", used.as_grams(), had.as_grams());
        let name = &fit.question.have[0].ingredient;
        let left: Mass = fit.left_over.iter().filter(|left| left.what == *name).filter_map(|left| left.mass).sum();
        let apart = (used + left - had).as_grams().abs();
        prop_assert!(apart <= 5.0 + 1e-6, "{} used, {} left of {}", used.as_grams(), left.as_grams(), had.as_grams());
    }

    /// Acid, pectin and the sugar of a jam are never less than the exact amount.
    #[test]
    fn acid_never_rounds_down(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        for line in fit.batches.iter().flat_map(|batch| &batch.ingredients) {
            if matches!(line.part, Part::Acid | Part::Pectin) {
                prop_assert!(line.moved_percent >= -1e-9, "{}: {}", line.ingredient, line.moved_percent);
            }
        }
    }

    /// Low-acid food, oil and water that goes with the batch are never more than the exact amount.
    #[test]
    fn low_acid_never_rounds_up(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        let formula = almanac().formula(&question.formula).expect("the question was answered");
        for line in fit.batches.iter().flat_map(|batch| &batch.ingredients) {
            let is_poured_over = formula.ingredients[line.index].amount.is_none()
                || formula.ingredients[line.index].unit == almanac::IngredientUnit::CannerLoad;
            if matches!(line.part, Part::LowAcid | Part::Oil) || (line.part == Part::Liquid && !is_poured_over) {
                prop_assert!(line.moved_percent <= 1e-9, "{}: {}", line.ingredient, line.moved_percent);
            }
        }
    }

    /// The salt of a ferment is never less than the exact amount.
    #[test]
    fn ferment_salt_never_rounds_down(grams in 100.0_f64..40_000.0) {
        for formula in ["sauerkraut", "fermented_dill_cucumber", "kimchi_napa"] {
            let have = Have { ingredient: IngredientRef::MainProduce, mass: Mass::grams(grams) };
            let Some(fit) = fitted(&FitQuestion { have: vec![have], ..question(formula, &[]) }) else { continue };
            for line in fit.batches.iter().flat_map(|batch| &batch.ingredients).filter(|line| line.part == Part::Salt) {
                prop_assert!(line.moved_percent >= -1e-9, "{formula}: {}", line.moved_percent);
            }
        }
    }

    /// A jam or jelly is made whole or not at all.
    #[test]
    fn a_jam_is_never_made_in_part(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        let formula = almanac().formula(&question.formula).expect("the question was answered");
        if formula.scale == ScaleRule::SingleBatch {
            prop_assert!(fit.batches.iter().all(|batch| batch.factor == Fraction::ONE));
        }
    }

    /// No batch is larger than the printed one, and none is more than one canner load.
    #[test]
    fn no_batch_is_larger_than_printed_or_than_a_canner_load(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        let formula = almanac().formula(&question.formula).expect("the question was answered");
        for batch in &fit.batches {
            if formula.scale != ScaleRule::Free {
                prop_assert!(batch.factor <= Fraction::ONE, "{}", batch.factor);
            }
            prop_assert!(batch.loads.len() <= 1, "{:?}", batch.loads);
            for load in &batch.loads {
                prop_assert!(load.jars <= load.holds, "{load:?}");
                prop_assert!(batch.jars.iter().all(|count| count.high <= load.holds), "{:?}", batch.jars);
            }
        }
    }

    /// More produce never makes fewer jars or batches.
    #[test]
    fn more_produce_never_makes_fewer_jars(question in any_question(), more in 1.0_f64..1.6) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        let mut larger = question.clone();
        larger.have[0].mass = larger.have[0].mass * more;
        let Some(larger) = fitted(&larger) else { return Ok(()) };
        let jars = |fit: &Fit| -> u32 { fit.batches.iter().flat_map(|batch| &batch.jars).map(|count| count.likely).sum() };
        prop_assert!(jars(&fit) <= jars(&larger), "{} then {}", jars(&fit), jars(&larger));
        prop_assert!(fit.batches.len() <= larger.batches.len());
        prop_assert!(fit.verdict == FitVerdict::DoesNotFit || larger.verdict == FitVerdict::Fits);
    }

    /// Jars come in order, and a batch that fits fills at least one where jars are counted.
    #[test]
    fn jars_come_in_order(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        prop_assert_eq!(fit.verdict == FitVerdict::Fits, !fit.batches.is_empty());
        prop_assert_eq!(fit.verdict == FitVerdict::DoesNotFit, !fit.because.is_empty());
        for batch in &fit.batches {
            prop_assert!(batch.jars.iter().all(|count| count.low <= count.likely && count.likely <= count.high));
            prop_assert!(batch.jars.is_empty() || batch.jars.iter().any(|count| count.likely > 0), "{:?}", batch.jars);
        }
    }

    /// An amount that moved more than 2 % is told.
    #[test]
    fn a_move_of_more_than_two_percent_is_told(question in any_question()) {
        let Some(fit) = fitted(&question) else { return Ok(()) };
        for line in fit.batches.iter().flat_map(|batch| &batch.ingredients) {
            if line.moved_percent.abs() > 2.0 {
                let told = fit
                    .notes
                    .iter()
                    .any(|note| note.code == NoteCode::Moved && note.text.contains(&line.ingredient));
                prop_assert!(told, "{} moved by {}", line.ingredient, line.moved_percent);
            }
        }
    }
}
