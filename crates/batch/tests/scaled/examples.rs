//! Printed formulas scaled by hand; the arithmetic stands above each.

use batch::fit::{BecauseCode, FitVerdict, Keeps};

use crate::support::{answer, line, measured, taken};

/// The factors of the batches, as written.
fn factors(fit: &batch::fit::Fit) -> Vec<String> {
    fit.batches.iter().map(|batch| batch.factor.to_string()).collect()
}

/// The likely jars of the batches.
fn likely(fit: &batch::fit::Fit) -> Vec<u32> {
    fit.batches.iter().map(|batch| batch.jars.iter().map(|count| count.likely).sum()).collect()
}

/// What is left of the main produce, in grams.
fn left_grams(fit: &batch::fit::Fit) -> f64 {
    fit.left_over
        .iter()
        .filter(|left| left.what == fit.question.have[0].ingredient)
        .filter_map(|left| left.mass)
        .map(|mass| mass.as_grams())
        .sum()
}

fn check(fit: &batch::fit::Fit, amounts: &[(&str, &str)]) {
    for (name, want) in amounts {
        assert_eq!(measured(fit, 0, name), *want, "{name} of {}", fit.question.formula);
    }
}

/// Source: USDA, Complete Guide to Home Canning, 2015, guide 6, p. 6-14, pickled dilled beans: 4 lb of beans, 4 cups
/// each of vinegar and water, 1/2 cup of salt, 8 cloves of garlic, 1 tsp of pepper flakes; about 8 pints.
///
/// 3 lb are 3/4 of 4 lb: 3 cups each, 3/8 cup of salt, 6 cloves, 3/4 tsp, 6 pints.
#[test]
fn three_pounds_of_beans_make_three_quarters_of_dilled_beans() {
    let fit = answer("dilled_beans", &["3 lb"]);
    assert_eq!(factors(&fit), ["3/4"]);
    check(
        &fit,
        &[
            ("vinegar", "3 cup"),
            ("water", "3 cup"),
            ("salt", "3/8 cup"),
            ("garlic", "6 clove"),
            ("flakes", "3/4 tsp"),
        ],
    );
    assert_eq!(likely(&fit), [6]);
    assert!(line(&fit, 0, "vinegar").moved_percent.abs() < 1e-9);
    assert!((taken(&fit, 0).as_pounds() - 3.0).abs() < 1e-9);
}

/// Source: USDA, Complete Guide to Home Canning, 2009, pickled jalapeno rings (2015, guide 6, p. 6-23): 3 lb of
/// jalapenos, 7 1/2 cups of cider vinegar, 2 1/2 tbsp of salt, 3 tbsp of celery seed, 6 tbsp of mustard seed; 6 pints.
///
/// Half of it: 3 3/4 cups; 1 1/4 tbsp = 3.75 tsp, closest whole teaspoon 4; 1 1/2 tbsp; 3 tbsp; 3 pints.
#[test]
fn a_pound_and_a_half_of_jalapenos_makes_half_the_rings() {
    let fit = answer("pickled_jalapeno_rings", &["1.5 lb"]);
    assert_eq!(factors(&fit), ["1/2"]);
    check(
        &fit,
        &[
            ("cider vinegar", "3 3/4 cup"),
            ("salt", "4 tsp"),
            ("celery seed", "1 1/2 tbsp"),
            ("mustard seed", "3 tbsp"),
        ],
    );
    assert_eq!(likely(&fit), [3]);
}

/// Source: National Center for Home Food Preservation, pickled yellow pepper rings (USDA 2015, guide 6, p. 6-24): 2 1/2
/// to 3 lb of peppers, 5 cups of vinegar, 1 1/4 cups of water, 5 tsp of salt; about 4 pints.
///
/// 2 lb are 4/5 of 2 1/2 lb, the least that is printed: 4 cups, 1 cup, 4 tsp; 3.2 pints.
#[test]
fn two_pounds_of_yellow_peppers_make_four_fifths_of_the_rings() {
    let fit = answer("pickled_yellow_pepper_rings", &["2 lb"]);
    assert_eq!(factors(&fit), ["4/5"]);
    check(&fit, &[("peppers", "2 lb"), ("vinegar", "4 cup"), ("water", "1 cup"), ("salt", "4 tsp")]);
    assert_eq!(likely(&fit), [3]);
}

/// The same formula: 5 lb are two batches of the printed 2 1/2 lb, and both may be whole.
#[test]
fn a_printed_range_is_shared_out_between_batches() {
    let fit = answer("pickled_yellow_pepper_rings", &["5 lb"]);
    assert_eq!(factors(&fit), ["1", "1"]);
    for batch in 0..2 {
        assert_eq!(measured(&fit, batch, "peppers"), "2 1/2 lb");
    }
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600047 (USDA 1994, guide 6, p. 11), pickled
/// beets: 7 lb of beets, 4 cups of vinegar, 2 cups each of sugar and water, 1 1/2 tsp of salt, 4 to 6 onions; 8 pints.
///
/// Half: 2 cups, 1 cup each, 3/4 tsp, 2 onions (half of the 4 that are the least printed), 4 pints.
#[test]
fn three_and_a_half_pounds_of_beets_make_half_the_pickle() {
    let fit = answer("pickled_beets", &["3.5 lb"]);
    assert_eq!(factors(&fit), ["1/2"]);
    check(
        &fit,
        &[
            ("vinegar", "2 cup"),
            ("sugar", "1 cup"),
            ("water", "1 cup"),
            ("salt", "3/4 tsp"),
            ("onions", "2 each"),
        ],
    );
    assert_eq!(likely(&fit), [4]);
}

/// Source: USDA, Complete Guide to Home Canning, 1994, bread-and-butter pickles (MSU 01600131): 6 lb of cucumbers, 8 cups
/// of onions, about 3 lb, 1/2 cup of salt, 4 cups of vinegar, 4 1/2 cups of sugar, 2 tbsp of mustard seed, 1 1/2 tbsp of
/// celery seed, 1 tbsp of turmeric; 8 pints.
///
/// 4 lb of cucumbers are 2/3, 3 lb of onions would be a whole batch: 5 1/3 cups of onions (2 lb), 1/3 cup, 2 2/3 cups, 3
/// cups, 4 tsp, 1 tbsp, 2 tsp. One pound of onions is left.
#[test]
fn the_scarcer_of_two_ingredients_sets_the_size() {
    let fit = answer("bread_butter_cucumber", &["cucumbers=4 lb", "onions=3 lb"]);
    assert_eq!(factors(&fit), ["2/3"]);
    check(
        &fit,
        &[
            ("onions", "5 1/3 cup"),
            ("salt", "1/3 cup"),
            ("vinegar", "2 2/3 cup"),
            ("sugar", "3 cup"),
            ("mustard", "4 tsp"),
            ("celery", "1 tbsp"),
            ("turmeric", "2 tsp"),
        ],
    );
    let onions = fit.left_over.iter().find(|left| left.what == "onions").and_then(|left| left.mass);
    assert!(onions.is_some_and(|mass| (mass.as_pounds() - 1.0).abs() < 1e-6), "{onions:?}");
}

/// Source: USDA, Complete Guide to Home Canning, 1994, quick fresh-pack dill pickles: 8 lb of cucumbers, 1 1/2 quarts of
/// vinegar, 1/4 cup of sugar, 1 1/4 cups of salt; 7 to 9 pints.
///
/// 6 lb are 3/4: 1 1/8 quarts = 4 1/2 cups; 3 tbsp; 15/16 cup = 15 tbsp; 5.25 to 6.75, likely 6 pints.
#[test]
fn six_pounds_of_cucumbers_make_three_quarters_of_the_dills() {
    let fit = answer("quick_dill_cucumber", &["6 lb"]);
    assert_eq!(factors(&fit), ["3/4"]);
    check(&fit, &[("vinegar", "4 1/2 cup"), ("sugar", "3 tbsp"), ("salt", "15 tbsp")]);
    assert_eq!(likely(&fit), [6]);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600869 (USDA 1994, guide 6), green tomato
/// relish: 10 lb of tomatoes, 1 1/2 lb each of red and green peppers, 2 lb of onions, 4 cups of sugar, 1 quart of
/// vinegar, 1/3 cup of mustard, 2 tbsp of cornstarch; 7 to 9 pints.
///
/// 7 1/2 lb are 3/4: 1 1/8 lb each, 1 1/2 lb, 3 cups, 3 cups, 1/4 cup, 1 1/2 tbsp.
#[test]
fn seven_and_a_half_pounds_of_green_tomatoes_make_three_quarters_of_the_relish() {
    let fit = answer("green_tomato_relish", &["7.5 lb"]);
    assert_eq!(factors(&fit), ["3/4"]);
    check(
        &fit,
        &[
            ("red bell", "1 1/8 lb"),
            ("green bell", "1 1/8 lb"),
            ("onions", "1 1/2 lb"),
            ("sugar", "3 cup"),
            ("vinegar", "3 cup"),
            ("mustard", "1/4 cup"),
            ("cornstarch", "1 1/2 tbsp"),
        ],
    );
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600882 (USDA 1994, guide 3), chile salsa: 5 lb
/// of tomatoes, 2 lb of chiles, 1 lb of onions, 1 cup of vinegar; 6 to 8 pints.
///
/// 12 lb are two whole batches and 2/5 of one. 2/5 of a cup is 19.2 tsp, to the next mark up 20 (4 % more); 3/8 of a
/// batch has 3/8 cup of vinegar, 1 7/8 lb of tomatoes, 12 oz and 6 oz, all on a mark, so the factor goes down to it.
/// 2 oz of tomatoes are left.
#[test]
fn a_factor_that_cannot_be_measured_goes_down_to_the_next() {
    let fit = answer("chile_salsa", &["12 lb"]);
    assert_eq!(factors(&fit), ["1", "1", "3/8"]);
    assert_eq!(measured(&fit, 2, "vinegar"), "3/8 cup");
    assert_eq!(measured(&fit, 2, "tomatoes"), "1 7/8 lb");
    assert_eq!(measured(&fit, 2, "chile"), "12 oz");
    assert_eq!(measured(&fit, 2, "onions"), "6 oz");
    assert_eq!(likely(&fit), [7, 7, 3]);
    assert!((left_grams(&fit) - 56.7).abs() < 0.1, "{}", left_grams(&fit));
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600827 (USDA 1994, guide 3, p. 16), tomato
/// ketchup: 24 lb of tomatoes, 3 cups each of onions and vinegar, 1 1/2 cups of sugar, 1/4 cup of salt; 6 to 7 pints.
///
/// 16 lb are 2/3: 2 cups each, 1 cup, 1/6 cup = 8 tsp; 4 to 4.67 pints.
#[test]
fn sixteen_pounds_of_tomatoes_make_two_thirds_of_the_ketchup() {
    let fit = answer("tomato_ketchup", &["16 lb"]);
    assert_eq!(factors(&fit), ["2/3"]);
    check(&fit, &[("onions", "2 cup"), ("vinegar", "2 cup"), ("sugar", "1 cup"), ("salt", "8 tsp")]);
    assert_eq!(likely(&fit), [4]);
}

/// Source: University of Wisconsin-Madison county extension, apple butter recipe card: 8 lb of apples, 2 cups each of
/// cider and vinegar, 2 1/4 cups each of white and brown sugar; 8 to 9 pints.
///
/// 6 lb are 3/4: 1 1/2 cups each; 1 11/16 cups of each sugar, closest mark 1 2/3; 6 to 6.75 pints.
#[test]
fn six_pounds_of_apples_make_three_quarters_of_the_butter() {
    let fit = answer("apple_butter", &["6 lb"]);
    assert_eq!(factors(&fit), ["3/4"]);
    check(
        &fit,
        &[
            ("cider", "1 1/2 cup"),
            ("vinegar", "1 1/2 cup"),
            ("white sugar", "1 2/3 cup"),
            ("brown sugar", "1 2/3 cup"),
        ],
    );
    assert_eq!(likely(&fit), [6]);
}

/// Source: USDA, Complete Guide to Home Canning, 2015, guide 2, p. 2-11, cantaloupe pickles: 5 lb of cubes, 4 1/2 cups of
/// vinegar, 2 cups of water, 1 1/2 cups each of white and brown sugar; 4 pints.
///
/// Half: 2 1/4 cups, 1 cup, 3/4 cup each, 2 pints.
#[test]
fn half_the_cantaloupe_makes_half_the_pickles() {
    let fit = answer("cantaloupe_pickles", &["2.5 lb"]);
    assert_eq!(factors(&fit), ["1/2"]);
    check(
        &fit,
        &[
            ("vinegar", "2 1/4 cup"),
            ("water", "1 cup"),
            ("white sugar", "3/4 cup"),
            ("brown sugar", "3/4 cup"),
        ],
    );
    assert_eq!(likely(&fit), [2]);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600863 (USDA 1994, guide 6, pp. 15-16),
/// marinated peppers: 4 lb, 1 cup of lemon juice, 2 cups of vinegar, 1 cup of oil, 1/2 cup of onions, 1/4 tsp of salt in
/// each half-pint; 9 half-pints.
///
/// 3 lb are 3/4: 3/4 cup, 1 1/2 cups, 3/4 cup, 3/8 cup. 6.75 half-pints are likely 7: 7 x 1/4 = 1 3/4 tsp of salt.
#[test]
fn salt_for_each_jar_goes_with_the_jars_and_not_with_the_batch() {
    let fit = answer("marinated_peppers", &["3 lb"]);
    assert_eq!(factors(&fit), ["3/4"]);
    check(
        &fit,
        &[
            ("lemon", "3/4 cup"),
            ("vinegar", "1 1/2 cup"),
            ("oil", "3/4 cup"),
            ("onions", "3/8 cup"),
            ("salt", "1 3/4 tsp"),
        ],
    );
    assert_eq!(likely(&fit), [7]);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600889 (USDA 1994, guide 7), apple jelly: 1 lb
/// of apples and 1 cup of water for a cup of juice, 3/4 cup of sugar and 1 1/2 tsp of lemon juice a cup; 4 cups of juice
/// give 4 to 5 half-pints.
///
/// 9 lb are two batches of 4 lb: 4 cups of water, 3 cups of sugar, 6 tsp; one pound is left.
#[test]
fn jelly_is_made_in_whole_batches_of_juice() {
    let fit = answer("apple_jelly", &["9 lb"]);
    assert_eq!(factors(&fit), ["1", "1"]);
    check(&fit, &[("apples", "4 lb"), ("water", "4 cup"), ("sugar", "3 cup"), ("lemon", "6 tsp")]);
    assert!((left_grams(&fit) - 453.6).abs() < 0.1, "{}", left_grams(&fit));
}

/// The same formula: 3 lb are no batch, and a part of one is not made.
#[test]
fn too_little_for_a_whole_batch_is_refused_with_what_is_missing() {
    let fit = answer("apple_jelly", &["3 lb"]);
    assert_eq!(fit.verdict, FitVerdict::DoesNotFit);
    assert_eq!(fit.because[0].code, BecauseCode::WholeBatchOnly);
    // 4 lb are 1,814.4 g and 3 lb are 1,360.8 g: 453.6 g are missing.
    assert!(fit.because[0].text.contains("454 g are missing"), "{}", fit.because[0].text);
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600830 (USDA 1994, guide 3), crushed tomatoes:
/// 22 lb for 7 quarts, 2 tbsp of bottled lemon juice a quart.
///
/// 50 lb are 50 / (22 / 7) = 15.9 quarts: two loads of 7 and one of 1; 14 tbsp a load of 7; 6/7 of a quart is left, 2.86
/// lb or 1,296 g and what the last scale mark leaves of the single jar.
#[test]
fn tomatoes_go_load_by_load_with_acid_in_every_jar() {
    let fit = answer("tomatoes_crushed", &["50 lb"]);
    assert_eq!(factors(&fit), ["1", "1", "1/7"]);
    assert_eq!(likely(&fit), [7, 7, 1]);
    assert_eq!(measured(&fit, 0, "lemon"), "14 tbsp");
    assert_eq!(measured(&fit, 2, "lemon"), "2 tbsp");
    assert!((left_grams(&fit) - 1_300.0).abs() < 8.0, "{}", left_grams(&fit));
}

/// Source: Michigan State University Extension, Preserving Food Safely, 01600772 and 01600835 (USDA 1994, guide 2),
/// peaches: 17 1/2 lb for 7 quarts; light syrup for 7 quarts: 9 cups of water, 2 1/4 cups of sugar.
///
/// 30 lb are 12 quarts: 7 and 5. The syrup of 7 quarts comes to 9 + 2.25 / 2 = 10.1 cups, with 15 % to be sure 11.6, to
/// the next half cup 12: enough, and not half as much again (15.2).
#[test]
fn peaches_get_syrup_by_the_load() {
    let fit = answer("peaches_halved", &["30 lb"]);
    assert_eq!(likely(&fit), [7, 5]);
    assert_eq!(measured(&fit, 0, "peaches"), "17 1/2 lb");
    assert_eq!(measured(&fit, 0, "syrup"), "12 cup");
}

/// Source: USDA, Complete Guide to Home Canning, 2015, guide 6, p. 6-8, sauerkraut: 3 tbsp of salt for 5 lb of cabbage
/// (2.4 %); the band served is 2.25 to 2.5 % of the cabbage.
///
/// 10 lb are 4,535.9 g; 2.25 % of that is 102.06 g, never less: 103 g. 2/5 of 25 lb.
#[test]
fn salt_of_a_ferment_is_weighed_against_the_cabbage() {
    let fit = answer("sauerkraut", &["10 lb"]);
    assert_eq!(factors(&fit), ["2/5"]);
    assert_eq!(measured(&fit, 0, "salt"), "103 g");
    assert_eq!(fit.keeps, Keeps::ShelfIfCleared);
}

/// Source: National Center for Home Food Preservation, cayenne pepper sauce: 3 lb of hot peppers, 1/3 cup each of garlic
/// and cilantro, 4 cups of onions, 84 oz of canned tomatoes, 3 cups of vinegar, 2 1/2 cups of water; 5 pints.
///
/// Half: 1/6 cup = 8 tsp each, 2 cups, 42 oz = 2 5/8 lb, 1 1/2 cups, 1 1/4 cups.
#[test]
fn half_the_peppers_make_half_the_sauce() {
    let fit = answer("cayenne_pepper_sauce", &["hot peppers=1.5 lb"]);
    assert_eq!(factors(&fit), ["1/2"]);
    check(
        &fit,
        &[
            ("garlic", "8 tsp"),
            ("cilantro", "8 tsp"),
            ("onions", "2 cup"),
            ("tomatoes", "2 5/8 lb"),
            ("vinegar", "1 1/2 cup"),
            ("water", "1 1/4 cup"),
        ],
    );
}

/// Source: USDA, Complete Guide to Home Canning, 1994, Mexican tomato sauce: 2 1/2 to 3 lb of chiles, 18 lb of tomatoes,
/// 3 cups of onions, 1/2 cup of vinegar; 7 quarts, under pressure.
///
/// 9 lb of tomatoes are half: 1 1/4 lb, 1 1/2 cups, 1/4 cup; 3.5 quarts, one more jar than three made ready.
#[test]
fn half_the_tomatoes_make_half_the_mexican_sauce() {
    let fit = answer("mexican_tomato_sauce", &["tomatoes=9 lb"]);
    assert_eq!(factors(&fit), ["1/2"]);
    check(&fit, &[("chile", "1 1/4 lb"), ("onions", "1 1/2 cup"), ("vinegar", "1/4 cup")]);
    assert_eq!((fit.batches[0].jars[0].low, fit.batches[0].jars[0].likely), (3, 4));
}

/// The cup of serranos of the golden pepper jelly is damaged in every copy seen (USDA, Complete Guide to Home Canning,
/// 2015, guide 7, p. 7-10); the count beside it is read.
#[test]
fn a_recalled_amount_is_not_shown() {
    let fit = answer("golden_pepper_jelly", &["2 kg"]);
    assert!(line(&fit, 0, "serrano").measured.is_none());
    assert!(fit.notes.iter().any(|note| note.text.contains("about 5")), "{:?}", fit.notes);
}
