//! What is printed reads back as what was printed, within half the printed step.

use measure::{
    Altitude, KitchenSteps, Length, Mass, Minutes, Percent, Pressure, Temp, Volume, kitchen_measures_around,
    read_altitude, read_clock, read_length, read_mass, read_minutes, read_percent, read_pressure, read_temp,
    read_volume, scale_steps_around, write_altitude, write_clock, write_length_in, write_length_mm,
    write_mass_metric, write_mass_us, write_minutes, write_percent, write_pressure, write_temp_celsius,
    write_temp_fahrenheit, write_volume_metric, write_volume_us,
};
use proptest::prelude::*;

/// A little more than half, for the last binary digits.
const HALF: f64 = 0.5 + 1e-6;

proptest! {
    #![proptest_config(ProptestConfig { cases: 1024, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_mass_in_pounds_reads_back_within_its_step(ounces in prop_oneof![0.0..2.0_f64, 2.0..100.0, 100.0..10_000.0]) {
        let step = if ounces < 0.5 { 0.01 } else if ounces < 80.0 { 0.25 } else { 1.0 };
        let back = read_mass(&write_mass_us(Mass::ounces(ounces))).unwrap();
        prop_assert!((back.as_ounces() - ounces).abs() <= HALF * step, "{ounces} oz as {back:?}");
    }

    #[test]
    fn a_mass_in_grams_reads_back_within_its_step(grams in prop_oneof![0.0..20.0_f64, 5.0..1_500.0, 900.0..100_000.0]) {
        let step = if grams < 9.95 { 0.1 } else if grams < 999.5 { 1.0 } else { 10.0 };
        let back = read_mass(&write_mass_metric(Mass::grams(grams))).unwrap();
        prop_assert!((back.as_grams() - grams).abs() <= HALF * step, "{grams} g as {back:?}");
    }

    #[test]
    fn a_volume_in_millilitres_reads_back_within_its_step(ml in prop_oneof![0.0..20.0_f64, 5.0..1_500.0, 900.0..100_000.0]) {
        let step = if ml < 9.95 { 0.1 } else if ml < 999.5 { 1.0 } else { 10.0 };
        let back = read_volume(&write_volume_metric(Volume::millilitres(ml))).unwrap();
        prop_assert!((back.as_millilitres() - ml).abs() <= HALF * step, "{ml} ml as {back:?}");
    }

    #[test]
    fn a_volume_in_cups_reads_back_as_the_nearest_measure(cups in prop_oneof![0.0..0.1_f64, 0.0..2.0, 1.0..50.0]) {
        let volume = Volume::cups(cups);
        let (below, above) = kitchen_measures_around(volume, KitchenSteps::Us).unwrap();
        let gap = above.volume().as_cups() - below.volume().as_cups();
        let back = read_volume(&write_volume_us(volume)).unwrap().as_cups();
        prop_assert!((back - cups).abs() <= HALF * gap + 1e-9, "{cups} cups as {back}");
    }

    #[test]
    fn every_measure_and_scale_reading_is_printed_so_that_it_reads_back(size in prop_oneof![0.0..1.0_f64, 0.0..100.0, 0.0..5_000.0]) {
        for steps in [KitchenSteps::Us, KitchenSteps::Metric] {
            let (below, above) = kitchen_measures_around(Volume::teaspoons(size), steps).unwrap();
            for measured in [below, above] {
                let back = read_volume(&measured.to_string()).unwrap();
                let difference = back.as_millilitres() - measured.volume().as_millilitres();
                prop_assert!(difference.abs() <= 1e-9 * back.as_millilitres(), "{measured}");
            }
            let (below, above) = scale_steps_around(Mass::grams(size), steps).unwrap();
            for weighed in [below, above] {
                let back = read_mass(&weighed.to_string()).unwrap();
                prop_assert!((back.as_grams() - weighed.mass().as_grams()).abs() <= 1e-9 * back.as_grams(), "{weighed}");
            }
        }
    }

    #[test]
    fn heights_and_times_read_back_exactly(feet in 0_u32..=30_000, minutes in 0_u32..500_000) {
        prop_assert_eq!(read_altitude(&write_altitude(Altitude::feet(feet))), Ok(Altitude::feet(feet)));
        prop_assert_eq!(read_minutes(&write_minutes(Minutes(minutes))), Ok(Minutes(minutes)));
        let clock = Minutes(minutes % 1440);
        prop_assert_eq!(read_clock(&write_clock(clock)), Ok(clock));
    }

    #[test]
    fn lengths_read_back_within_their_step(mm in 0.0..1_000.0_f64) {
        let inches = read_length(&write_length_in(Length::millimetres(mm))).unwrap().as_inches();
        prop_assert!((inches - mm / 25.4).abs() <= HALF / 16.0);
        let millimetres = read_length(&write_length_mm(Length::millimetres(mm))).unwrap().as_millimetres();
        prop_assert!((millimetres - mm).abs() <= HALF);
    }

    #[test]
    fn temperatures_pressures_and_shares_read_back_within_their_step(
        degrees in -40.0..500.0_f64, psi in -20.0..20.0_f64, share in 0.0..100.0_f64,
    ) {
        let temp = Temp::fahrenheit(degrees);
        let fahrenheit = read_temp(&write_temp_fahrenheit(temp)).unwrap().as_fahrenheit();
        prop_assert!((fahrenheit - degrees).abs() <= HALF);
        let celsius = read_temp(&write_temp_celsius(temp)).unwrap().as_celsius();
        prop_assert!((celsius - temp.as_celsius()).abs() <= HALF);
        let pressure = read_pressure(&write_pressure(Pressure::psi(psi))).unwrap().as_psi();
        prop_assert!((pressure - psi).abs() <= HALF * 0.1);
        let percent = read_percent(&write_percent(Percent::of_hundred(share))).unwrap().as_percent();
        prop_assert!((percent - share).abs() <= HALF * 0.1);
    }
}
