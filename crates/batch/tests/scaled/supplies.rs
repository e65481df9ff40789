//! What a fit needs, what is missing of it, and how it is bought.

use std::collections::BTreeMap;

use almanac::JarSize;
use batch::fit::{FitQuestion, Stock, Supply, SupplyAmount, SupplyNeed, fit, missing, needs, shop_units};
use measure::{Mass, Volume};

use crate::support::{almanac, answer, question};

fn need<'a>(needs: &'a [SupplyNeed], what: &Supply) -> &'a SupplyNeed {
    needs.iter().find(|need| need.what == *what).unwrap_or_else(|| panic!("no {what:?} in {needs:?}"))
}

/// Source: USDA, Complete Guide to Home Canning, 2015, guide 6, p. 6-14: 4 cups of vinegar for 4 lb of beans, 8 pints.
///
/// 8 lb are two batches: 8 cups of vinegar, half a gallon. 16 jars and two spare lids.
#[test]
fn the_needs_of_several_batches_are_added_up() {
    let needs = needs(&answer("dilled_beans", &["8 lb"]));
    let vinegar = need(&needs, &Supply::WhiteVinegar);
    assert!(vinegar.amount.volume.is_some_and(|volume| (volume.as_cups() - 8.0).abs() < 1e-9), "{vinegar:?}");
    let line = shop_units(vinegar).expect("vinegar is sold");
    assert_eq!((line.packages, line.package), (1, "bottle of half a gallon"));
    let lids = need(&needs, &Supply::Lids("pint".to_owned()));
    assert_eq!(lids.amount.count, Some(18.0));
    assert!(needs.iter().all(|need| !matches!(&need.what, Supply::Produce(name) if name.contains("beans"))));
}

#[test]
fn what_is_there_is_not_fetched() {
    let needs = needs(&answer("dilled_beans", &["8 lb"]));
    let held = BTreeMap::from([
        (Supply::WhiteVinegar, SupplyAmount { volume: Some(Volume::cups(5.0)), ..SupplyAmount::default() }),
        (Supply::CanningSalt, SupplyAmount { mass: Some(Mass::pounds(3.0)), ..SupplyAmount::default() }),
    ]);
    let missing = missing(&needs, &Stock { held });
    let vinegar = need(&missing, &Supply::WhiteVinegar);
    assert!(vinegar.amount.volume.is_some_and(|volume| (volume.as_cups() - 3.0).abs() < 1e-9), "{vinegar:?}");
    assert!(missing.iter().all(|need| need.what != Supply::CanningSalt));
}

#[test]
fn pectin_is_counted_in_pouches_and_boxes() {
    let pouches = needs(&answer("pear_apple_jam", &["pears=4.2 lb"]));
    assert_eq!(need(&pouches, &Supply::LiquidPectin).amount.count, Some(4.0));
    let boxes = needs(&answer("peach_jam_pectin", &["6.1 lb"]));
    assert_eq!(need(&boxes, &Supply::PowderedPectin).amount.count, Some(2.0));
}

#[test]
fn spices_are_bought_under_their_own_names_and_optional_ones_say_so() {
    let needs = needs(&answer("dilled_beans", &["4 lb"]));
    assert!(need(&needs, &Supply::Other("hot red pepper flakes".to_owned())).optional);
    assert!(!need(&needs, &Supply::CanningSalt).optional);
}

/// A rest that fills no pint goes into a half-pint, where one process is printed for both.
#[test]
fn two_sizes_go_together_where_their_process_is_one() {
    let wanted =
        FitQuestion { jars: vec![JarSize::Pint, JarSize::HalfPint], ..question("pickle_relish", &[]) };
    let have = question("pickle_relish", &["cucumbers=1 kg"]).have;
    let fit = fit(almanac(), &FitQuestion { have, ..wanted }).expect("the relish is on file");
    let sizes: Vec<JarSize> = fit.batches[0].jars.iter().map(|count| count.size).collect();
    assert_eq!(sizes, [JarSize::Pint, JarSize::HalfPint]);
}
