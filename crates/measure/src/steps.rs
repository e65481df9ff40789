//! What a cook can measure: the spoons, cups and jugs a kitchen has, and the steps its scale shows.
//!
//! A volume or mass worked out by arithmetic is hardly ever one that can be measured. The functions here give
//! the two nearest that can, one at or below and one at or above; which of them to take is the caller's
//! decision and depends on what the ingredient is.
//!
//! # US measures
//!
//! Volumes are counted in eighths of a teaspoon, in which every measure below is a whole number, so that the
//! steps are exact:
//!
//! | from | measurable |
//! | --- | --- |
//! | 0 | 1/8, 1/4, 1/2, 3/4 tsp |
//! | 1 tsp | quarter teaspoons |
//! | 1 tbsp | half tablespoons and whole teaspoons |
//! | 1/4 cup | tablespoons, eighths and thirds of a cup |
//! | 1/2 cup | eighths and thirds of a cup |
//! | 1 gal | quarter cups |
//!
//! An eighth of a cup is two tablespoons; with the spoons, every step can be measured without a scale.
//!
//! # Metric measures
//!
//! Half millilitres below 10 ml (spoons of 2.5 ml), 1 ml below 50 ml, 5 ml below 250 ml, 10 ml below 1 litre
//! and 25 ml above (a marked jug). A scale shows 1 g below 100 g, 5 g below 1 kg and 10 g above, or quarter
//! ounces below 5 lb and whole ounces above.
//!
//! These steps are our own estimate of a household's spoons, jugs and scale.

use crate::fraction::Fraction;
use crate::quantity::{Mass, Volume};
use crate::round::FORGIVEN;
use crate::unit::{MassUnit, Measured, VolumeUnit, Weighed};

/// The set of measures a kitchen works with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum KitchenSteps {
    /// Spoons, cups, quarts and gallons; pounds and ounces.
    Us,
    /// Millilitres and litres; grams and kilograms.
    Metric,
}

/// The nearest measurable volumes at or below, and at or above, a volume.
///
/// Below the smallest spoon the lower one is zero. A volume within a billionth of a step counts as standing
/// on it. `None` when the volume is below zero, not finite, or above 10,000 litres.
///
/// # Examples
///
/// ```
/// use measure::{KitchenSteps, Volume, kitchen_measures_around};
///
/// let (below, above) = kitchen_measures_around(Volume::cups(3.7), KitchenSteps::Us).unwrap();
/// assert_eq!((below.to_string().as_str(), above.to_string().as_str()), ("3 2/3 cups", "3 3/4 cups"));
/// ```
#[must_use]
pub fn kitchen_measures_around(volume: Volume, steps: KitchenSteps) -> Option<(Measured, Measured)> {
    /// The largest volume anyone measures, as in reading.
    const LARGEST: Volume = Volume::litres(10_000.0);
    if !(volume >= Volume::ZERO && volume <= LARGEST) {
        return None;
    }
    match steps {
        KitchenSteps::Us => around(volume.as_teaspoons() * 8.0, is_us_measure, name_us_measure),
        KitchenSteps::Metric => around(volume.as_millilitres() * 2.0, is_metric_measure, name_metric_measure),
    }
}

/// The nearest masses a kitchen scale shows at or below, and at or above, a mass.
///
/// `None` when the mass is below zero, not finite, or above ten tonnes.
///
/// # Examples
///
/// ```
/// use measure::{KitchenSteps, Mass, scale_steps_around};
///
/// let (below, above) = scale_steps_around(Mass::grams(847.0), KitchenSteps::Metric).unwrap();
/// assert_eq!((below.to_string().as_str(), above.to_string().as_str()), ("845 g", "850 g"));
/// ```
#[must_use]
pub fn scale_steps_around(mass: Mass, steps: KitchenSteps) -> Option<(Weighed, Weighed)> {
    /// The largest mass anyone weighs, as in reading.
    const LARGEST: Mass = Mass::kilograms(10_000.0);
    if !(mass >= Mass::ZERO && mass <= LARGEST) {
        return None;
    }
    match steps {
        KitchenSteps::Us => around(mass.as_ounces() * 4.0, is_us_scale_step, name_us_weight),
        KitchenSteps::Metric => around(mass.as_grams(), is_metric_scale_step, name_metric_weight),
    }
}

/// The measures on either side of an amount counted in the smallest unit all measures are whole numbers of.
fn around<M>(
    amount: f64,
    can_be_measured: impl Fn(i64) -> bool,
    name: impl Fn(i64) -> Option<M>,
) -> Option<(M, M)> {
    let forgiven = FORGIVEN * amount;
    // Never overflows: at most 1.7e7, the eighth teaspoons in 10,000 litres.
    let below = libm::floor(amount + forgiven) as i64;
    let above = libm::ceil(amount - forgiven) as i64;
    // Both end: zero can be measured, and so can some step within the next quarter cup.
    let below = (0..=below).rev().find(|n| can_be_measured(*n))?;
    let above = (above..).find(|n| can_be_measured(*n))?;
    Some((name(below)?, name(above)?))
}

/// Eighth teaspoons in the US measures.
const TSP: i64 = 8;
const TBSP: i64 = 3 * TSP;
const QUARTER_CUP: i64 = 4 * TBSP;
const HALF_CUP: i64 = 8 * TBSP;
const CUP: i64 = 16 * TBSP;
const QUART: i64 = 4 * CUP;
const GALLON: i64 = 4 * QUART;

fn is_us_measure(eighth_teaspoons: i64) -> bool {
    let is_whole = |step: i64| eighth_teaspoons % step == 0;
    let is_cup_mark = is_whole(CUP / 8) || is_whole(CUP / 3);
    match eighth_teaspoons {
        ..TSP => matches!(eighth_teaspoons, 0 | 1 | 2 | 4 | 6),
        TSP..TBSP => is_whole(TSP / 4),
        TBSP..QUARTER_CUP => is_whole(TBSP / 2) || is_whole(TSP),
        QUARTER_CUP..HALF_CUP => is_whole(TBSP) || is_cup_mark,
        HALF_CUP..GALLON => is_cup_mark,
        GALLON.. => is_whole(CUP / 4),
    }
}

/// The largest unit in which a measure is said simply.
fn name_us_measure(eighth_teaspoons: i64) -> Option<Measured> {
    let is_whole = |step: i64| eighth_teaspoons % step == 0;
    let (unit, size) = match eighth_teaspoons {
        GALLON.. if is_whole(GALLON) => (VolumeUnit::Gallon, GALLON),
        QUART.. if is_whole(QUART) => (VolumeUnit::Quart, QUART),
        QUARTER_CUP.. if is_whole(CUP / 8) || is_whole(CUP / 3) => (VolumeUnit::Cup, CUP),
        TBSP.. if is_whole(TBSP / 2) => (VolumeUnit::Tbsp, TBSP),
        _ => (VolumeUnit::Tsp, TSP),
    };
    Some(Measured { value: Fraction::new(eighth_teaspoons, size)?, unit })
}

fn is_metric_measure(half_millilitres: i64) -> bool {
    let step = match half_millilitres {
        ..20 => 1,
        20..100 => 2,
        100..500 => 10,
        500..2000 => 20,
        2000.. => 50,
    };
    half_millilitres % step == 0
}

fn name_metric_measure(half_millilitres: i64) -> Option<Measured> {
    let (unit, size) = if half_millilitres < 2000 { (VolumeUnit::Ml, 2) } else { (VolumeUnit::L, 2000) };
    Some(Measured { value: Fraction::new(half_millilitres, size)?, unit })
}

fn is_us_scale_step(quarter_ounces: i64) -> bool {
    /// Five pounds.
    const FINE_BELOW: i64 = 5 * 16 * 4;
    quarter_ounces < FINE_BELOW || quarter_ounces % 4 == 0
}

fn name_us_weight(quarter_ounces: i64) -> Option<Weighed> {
    let pounds = quarter_ounces > 0 && quarter_ounces % 64 == 0;
    let (unit, size) = if pounds { (MassUnit::Lb, 64) } else { (MassUnit::Oz, 4) };
    Some(Weighed { value: Fraction::new(quarter_ounces, size)?, unit })
}

fn is_metric_scale_step(grams: i64) -> bool {
    let step = match grams {
        ..100 => 1,
        100..1000 => 5,
        1000.. => 10,
    };
    grams % step == 0
}

fn name_metric_weight(grams: i64) -> Option<Weighed> {
    let (unit, size) = if grams < 1000 { (MassUnit::G, 1) } else { (MassUnit::Kg, 1000) };
    Some(Weighed { value: Fraction::new(grams, size)?, unit })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(volume: Volume, steps: KitchenSteps, below: &str, above: &str) {
        let (low, high) = kitchen_measures_around(volume, steps).unwrap();
        assert_eq!((low.to_string().as_str(), high.to_string().as_str()), (below, above), "{volume:?}");
    }

    #[test]
    fn us_volumes_fall_on_spoons_cups_and_quarts() {
        for (volume, below, above) in [
            (Volume::ZERO, "0 tsp", "0 tsp"),
            (Volume::teaspoons(0.05), "0 tsp", "1/8 tsp"),
            (Volume::teaspoons(0.3), "1/4 tsp", "1/2 tsp"),
            (Volume::teaspoons(0.75), "3/4 tsp", "3/4 tsp"),
            (Volume::teaspoons(1.3), "1 1/4 tsp", "1 1/2 tsp"),
            (Volume::teaspoons(2.9), "2 3/4 tsp", "1 tbsp"),
            (Volume::tablespoons(1.1), "1 tbsp", "4 tsp"),
            (Volume::tablespoons(1.4), "4 tsp", "1 1/2 tbsp"),
            (Volume::tablespoons(3.9), "3 tbsp 2 tsp", "1/4 cup"),
            (Volume::cups(0.3), "1/4 cup", "5 tbsp"),
            (Volume::cups(0.34), "1/3 cup", "3/8 cup"),
            (Volume::cups(0.45), "7 tbsp", "1/2 cup"),
            (Volume::cups(0.7), "2/3 cup", "3/4 cup"),
            (Volume::cups(3.76), "3 3/4 cups", "3 7/8 cups"),
            (Volume::cups(3.9), "3 7/8 cups", "1 qt"),
            (Volume::cups(8.0), "2 qt", "2 qt"),
            (Volume::cups(8.1), "2 qt", "8 1/8 cups"),
            (Volume::gallons(2.0), "2 gal", "2 gal"),
            (Volume::cups(17.1), "17 cups", "17 1/4 cups"),
        ] {
            check(volume, KitchenSteps::Us, below, above);
        }
    }

    #[test]
    fn metric_volumes_fall_on_the_marks_of_a_jug() {
        for (volume, below, above) in [
            (Volume::millilitres(0.2), "0 ml", "0.5 ml"),
            (Volume::millilitres(2.6), "2.5 ml", "3 ml"),
            (Volume::millilitres(12.3), "12 ml", "13 ml"),
            (Volume::millilitres(52.0), "50 ml", "55 ml"),
            (Volume::millilitres(333.0), "330 ml", "340 ml"),
            (Volume::millilitres(995.0), "990 ml", "1 L"),
            (Volume::millilitres(1010.0), "1 L", "1.025 L"),
            (Volume::litres(2.5), "2.5 L", "2.5 L"),
        ] {
            check(volume, KitchenSteps::Metric, below, above);
        }
    }

    #[test]
    fn masses_fall_on_the_steps_of_a_scale() {
        for (mass, steps, below, above) in [
            (Mass::grams(2.3), KitchenSteps::Metric, "2 g", "3 g"),
            (Mass::grams(101.0), KitchenSteps::Metric, "100 g", "105 g"),
            (Mass::grams(998.0), KitchenSteps::Metric, "995 g", "1 kg"),
            (Mass::grams(2344.0), KitchenSteps::Metric, "2.34 kg", "2.35 kg"),
            (Mass::ounces(3.3), KitchenSteps::Us, "3 1/4 oz", "3 1/2 oz"),
            (Mass::ounces(35.1), KitchenSteps::Us, "2 lb 3 oz", "2 lb 3 1/4 oz"),
            (Mass::pounds(6.1), KitchenSteps::Us, "6 lb 1 oz", "6 lb 2 oz"),
            (Mass::pounds(2.0), KitchenSteps::Us, "2 lb", "2 lb"),
        ] {
            let (low, high) = scale_steps_around(mass, steps).unwrap();
            assert_eq!((low.to_string().as_str(), high.to_string().as_str()), (below, above), "{mass:?}");
        }
    }

    #[test]
    fn what_no_kitchen_holds_has_no_measure() {
        for volume in [
            Volume::cups(-1.0),
            Volume::cups(f64::NAN),
            Volume::litres(10_001.0),
            Volume::litres(f64::INFINITY),
        ] {
            assert_eq!(kitchen_measures_around(volume, KitchenSteps::Us), None, "{volume:?}");
        }
        assert_eq!(scale_steps_around(Mass::grams(f64::NAN), KitchenSteps::Metric), None);
        assert_eq!(scale_steps_around(Mass::grams(-1.0), KitchenSteps::Us), None);
    }
}
