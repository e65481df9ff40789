//! Jar estimates held against the yields of a bushel, lug or crate that a second publication prints.

use crate::support::answer;

/// Likely quarts of so many pounds, all batches together.
fn quarts(formula: &str, pounds: f64) -> u32 {
    let fit = answer(formula, &[&format!("{pounds} lb")]);
    fit.batches.iter().flat_map(|batch| &batch.jars).map(|count| count.likely).sum()
}

fn check(formula: &str, pounds: f64, printed: std::ops::RangeInclusive<u32>) {
    let likely = quarts(formula, pounds);
    assert!(printed.contains(&likely), "{formula}: {likely} quarts of {pounds} lb, printed {printed:?}");
}

/// Source: USDA, Complete Guide to Home Canning, 1994 (text edition), quantity paragraphs; the formulas are those of
/// Michigan State University Extension.
#[test]
fn fruit_fills_the_quarts_that_the_guide_prints_for_a_bushel() {
    check("apples_sliced", 48.0, 16..=19);
    check("applesauce", 48.0, 14..=19);
    check("peaches_halved", 48.0, 16..=24);
    check("pears_halved", 50.0, 16..=25);
    check("cherries_whole", 25.0, 8..=12);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 1997, quantity paragraphs; the formulas are those
/// of USDA, Complete Guide to Home Canning, 2015, guide 4.
#[test]
fn vegetables_fill_the_quarts_that_michigan_prints_for_a_bushel() {
    check("snap_beans_canned", 30.0, 12..=20);
    check("beets_canned", 52.0, 15..=20);
    check("carrots_canned", 50.0, 17..=25);
    check("corn_canned", 35.0, 6..=11);
}

/// Source: National Center for Home Food Preservation, Standard Tomato Sauce, and USDA, Complete Guide to Home Canning,
/// 1994, guide 3, tomato juice; the formulas are those of Michigan and Florida.
#[test]
fn tomato_juice_and_sauces_fill_the_quarts_printed_for_a_bushel() {
    check("tomato_juice", 53.0, 15..=18);
    check("tomato_sauce_thin", 53.0, 10..=12);
    check("tomato_sauce_thick", 53.0, 7..=9);
    check("tomatoes_whole_water", 53.0, 15..=21);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 1997, plums.
#[test]
fn plums_fill_the_quarts_printed_for_a_bushel() {
    check("plums_whole", 56.0, 22..=36);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 1997: a bushel of 53 lb gives 17 to 20 quarts of
/// crushed tomatoes; 22 lb for a load of 7 quarts, which is the heavier of two printed weights of a jar.
///
/// Tolerance: one quart fewer. By the heavier weight 53 lb are 16.9 quarts, and a jar is not counted before it is full.
#[test]
fn crushed_tomatoes_come_within_one_quart_of_the_printed_yield() {
    assert_eq!(quarts("tomatoes_crushed", 53.0), 16);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 1997: 8 lb of cucumbers make 7 to 9 pints; USDA,
/// Complete Guide to Home Canning, 2015, guide 6, p. 6-5: a bushel of 48 lb gives 16 to 24 quarts.
#[test]
fn fresh_dills_fill_the_pints_printed_for_a_bushel() {
    let pints = |pounds| quarts("quick_dill_cucumber", pounds);
    assert!((7..=9).contains(&pints(8.0)), "{}", pints(8.0));
    assert!((32..=48).contains(&pints(48.0)), "{}", pints(48.0));
}

/// Source: USDA, Complete Guide to Home Canning, 1994 (text edition): 7 lb of beets make about 8 pints, 8 lb of apples 8
/// to 9 pints of butter (National Center page), 5 lb of tomatoes 6 to 8 pints of chile salsa.
#[test]
fn pickles_butter_and_salsa_fill_what_a_second_page_prints() {
    check("pickled_beets", 7.0, 8..=8);
    check("apple_butter", 8.0, 8..=9);
    check("chile_salsa", 5.0, 6..=8);
}
