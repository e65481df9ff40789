//! Up never falls below, down never rises above, and neither moves by a whole step.

use measure::{
    KitchenSteps, Mass, Minutes, Stepwise, Volume, kitchen_measures_around, round_down_to, round_nearest_to,
    round_up_to, scale_steps_around,
};
use proptest::prelude::*;

/// What may be forgiven of an amount that stands on a step but for its last binary digits.
const FORGIVEN: f64 = 2e-9;

proptest! {
    #![proptest_config(ProptestConfig { cases: 1024, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn rounding_keeps_its_direction(grams in -1e6..1e6_f64, step in 0.01..1e3_f64) {
        let (amount, size) = (Mass::grams(grams), Mass::grams(step));
        let [down, nearest, up] = [round_down_to(amount, size), round_nearest_to(amount, size), round_up_to(amount, size)]
            .map(Mass::as_grams);
        let slack = FORGIVEN * grams.abs();
        prop_assert!(down <= grams + slack && up >= grams - slack, "{down} {grams} {up}");
        prop_assert!(up - grams < step + slack && grams - down < step + slack, "{down} {grams} {up}");
        prop_assert!((nearest - grams).abs() <= step * 0.5 + slack, "{nearest} {grams}");
        for rounded in [down, nearest, up] {
            let steps = Mass::grams(rounded).steps_of(size);
            prop_assert!((steps - steps.round()).abs() < 1e-6, "{rounded} is no whole number of {step}");
        }
    }

    #[test]
    fn rounding_what_is_rounded_changes_nothing(grams in 0.0..1e6_f64, step in 0.01..1e3_f64) {
        let size = Mass::grams(step);
        for round in [round_up_to::<Mass>, round_down_to::<Mass>, round_nearest_to::<Mass>] {
            let once = round(Mass::grams(grams), size);
            prop_assert_eq!(round(once, size), once);
        }
    }

    #[test]
    fn minutes_round_in_whole_minutes(minutes in 0_u32..1_000_000, step in 1_u32..1_000) {
        let (down, up) = (round_down_to(Minutes(minutes), Minutes(step)).0, round_up_to(Minutes(minutes), Minutes(step)).0);
        prop_assert!(down <= minutes && minutes <= up && minutes - down < step && up - minutes < step);
        prop_assert_eq!((down % step, up % step), (0, 0));
    }

    #[test]
    fn an_amount_lies_between_the_two_measures_around_it(
        teaspoons in prop_oneof![0.0..3.0_f64, 0.0..60.0, 0.0..2_000.0, 0.0..2_000_000.0],
    ) {
        for steps in [KitchenSteps::Us, KitchenSteps::Metric] {
            let volume = Volume::teaspoons(teaspoons);
            let (below, above) = kitchen_measures_around(volume, steps).unwrap();
            let [low, exact, high] = [below.volume(), volume, above.volume()].map(Volume::as_millilitres);
            let slack = FORGIVEN * exact;
            prop_assert!(low <= exact + slack && high >= exact - slack, "{below} {exact} {above}");
            // Nothing can be measured between them: each stands on itself and names the other's neighbour.
            for measured in [below, above] {
                prop_assert_eq!(kitchen_measures_around(measured.volume(), steps), Some((measured, measured)));
            }
            if low < high {
                let between = Volume::millilitres((low + high) / 2.0);
                prop_assert_eq!(kitchen_measures_around(between, steps), Some((below, above)));
            }
        }
    }

    #[test]
    fn a_mass_lies_between_the_two_scale_readings_around_it(
        grams in prop_oneof![0.0..10.0_f64, 0.0..500.0, 0.0..10_000.0, 0.0..10_000_000.0],
    ) {
        for steps in [KitchenSteps::Us, KitchenSteps::Metric] {
            let (below, above) = scale_steps_around(Mass::grams(grams), steps).unwrap();
            let (low, high) = (below.mass().as_grams(), above.mass().as_grams());
            let slack = FORGIVEN * grams;
            prop_assert!(low <= grams + slack && high >= grams - slack, "{below} {grams} {above}");
            for weighed in [below, above] {
                prop_assert_eq!(scale_steps_around(weighed.mass(), steps), Some((weighed, weighed)));
            }
        }
    }

    #[test]
    fn the_parts_of_a_mass_add_up_to_the_whole(parts in prop::collection::vec(0.0..10_000.0_f64, 0..30)) {
        let whole: Mass = parts.iter().copied().map(Mass::grams).sum();
        let want: f64 = parts.iter().sum();
        prop_assert!((whole.as_grams() - want).abs() <= 1e-9 * want);
        let pounds: f64 = parts.iter().map(|grams| Mass::grams(*grams).as_pounds()).sum();
        prop_assert!((whole.as_pounds() - pounds).abs() <= 1e-9 * pounds);
    }
}

#[test]
fn from_a_quarter_cup_on_no_two_measures_are_far_apart() {
    // A bigger gap would make a recipe's amounts jump; a third of a cup is the widest known step.
    let mut volume = Volume::cups(0.25);
    while volume < Volume::gallons(4.0) {
        let (_, next) = kitchen_measures_around(volume + Volume::teaspoons(0.01), KitchenSteps::Us).unwrap();
        let gap = next.volume().as_cups() - volume.as_cups();
        assert!(gap > 0.0 && gap <= 0.25 * volume.as_cups() + 1e-9, "{gap} cups after {volume:?}");
        volume = next.volume();
    }
}
