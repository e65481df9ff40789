//! The change judged alone: each question a cook asks, the verdict, the rules that decide and the publication they
//! stand in. No pack, jar, canner or altitude is said.

use std::sync::LazyLock;

use almanac::{Almanac, FormulaId, Verdict};
use batch::clear::{ChangesCleared, ChangesQuestion, ClearError, Misread, clear_changes};

fn load() -> &'static Almanac {
    static ALMANAC: LazyLock<Almanac> = LazyLock::new(|| Almanac::load().expect("the built-in tables load"));
    &ALMANAC
}

fn question(formula: &str, changes: &[&str]) -> ChangesQuestion {
    ChangesQuestion {
        formula: FormulaId::from(formula),
        pack: None,
        jar: None,
        canner: None,
        altitude: None,
        changes: changes.iter().map(|change| (*change).to_owned()).collect(),
    }
}

fn ask(formula: &str, changes: &[&str]) -> ChangesCleared {
    clear_changes(load(), &question(formula, changes))
        .unwrap_or_else(|error| panic!("{formula}, {changes:?}: {error}"))
}

const TESTED: Verdict = Verdict::Tested;
const NOT_TESTED: Verdict = Verdict::NotTested;
const DO_NOT: Verdict = Verdict::DoNot;

/// Formula, change, verdict on the change, the rules that decide, where they stand. Where no rule is named and it is
/// not tested, nothing printed speaks of it; where none is named and it is tested, a process line is printed.
/// Verdicts were worked out by hand from the printed rules; the rules named are those of the change table.
#[rustfmt::skip]
const CASES: &[(&str, &str, Verdict, &str, &str)] = &[
    ("chile_salsa", "less vinegar", DO_NOT, "cr-s01", "USDA539_15"),
    ("chile_salsa", "half the vinegar", DO_NOT, "cr-s01", "USDA539_15"),
    ("choice_salsa", "less lemon juice", DO_NOT, "cr-s01", "USDA539_15"),
    ("quick_dill_cucumber", "less vinegar", DO_NOT, "cr-p01", "USDA539_15"),
    ("golden_pepper_jelly", "less vinegar", DO_NOT, "cr-j26", "USDA539_15"),
    ("tomato_ketchup", "less vinegar", DO_NOT, "cr-c09", "USDA539_15"),
    ("pickle_relish", "reduce the vinegar", DO_NOT, "cr-p01", "USDA539_15"),
    ("zucchini_pineapple", "less lemon juice", DO_NOT, "cr-u13", "USDA539_15"),
    ("green_tomato_pie_filling", "less lemon juice", DO_NOT, "cr-e13", "USDA539_15"),
    ("tomatoes_crushed", "no lemon juice", DO_NOT, "cr-t01", "USDA539_15"),
    ("tomatoes_crushed", "leave out the acid", DO_NOT, "cr-t01", "USDA539_15"),
    ("tomato_sauce_thin", "without acid", DO_NOT, "cr-t01", "USDA539_15"),
    ("peach_jam", "no lemon juice", DO_NOT, "cr-j14", "USDA539_15"),
    ("fermented_dill_cucumber", "no vinegar", DO_NOT, "cr-f06", "USDA539_15"),
    ("chile_salsa", "more vinegar", NOT_TESTED, "cr-s02", "USDA539_15"),
    ("quick_dill_cucumber", "more vinegar", NOT_TESTED, "", ""),
    ("quick_dill_cucumber", "more water", DO_NOT, "cr-p02", "USDA539_15"),
    ("quick_dill_cucumber", "4 % vinegar", DO_NOT, "cr-p01 cr-p04", "USDA539_15"),
    ("chile_salsa", "4 percent vinegar", DO_NOT, "cr-s01 cr-s07", "USDA539_15"),
    ("tomato_ketchup", "4 % vinegar", DO_NOT, "cr-c09", "USDA539_15"),
    ("tomatoes_crushed", "4 % vinegar", NOT_TESTED, "", ""),
    ("quick_dill_cucumber", "5 % vinegar", TESTED, "", "msu-dilly-2013"),
    ("quick_dill_cucumber", "7 % vinegar", TESTED, "", "msu-dilly-2013"),
    ("quick_dill_cucumber", "homemade vinegar for vinegar", DO_NOT, "cr-p07", "USDA539_15"),
    ("chile_salsa", "homemade vinegar for vinegar", DO_NOT, "cr-s06", "USDA539_15"),
    ("quick_dill_cucumber", "cider vinegar for white vinegar", TESTED, "cr-p05", "USDA539_15"),
    ("quick_dill_cucumber", "rice vinegar for vinegar", NOT_TESTED, "cr-p06", "USDA539_15"),
    ("quick_dill_cucumber", "wine vinegar instead of vinegar", NOT_TESTED, "cr-p06", "USDA539_15"),
    ("quick_dill_cucumber", "malt vinegar for vinegar", NOT_TESTED, "cr-p06", "USDA539_15"),
    ("chile_salsa", "lemon juice for vinegar", TESTED, "cr-s03", "USDA539_15"),
    ("quick_dill_cucumber", "lemon juice for vinegar", NOT_TESTED, "cr-p08", "USDA539_15"),
    ("choice_salsa", "vinegar for lemon juice", DO_NOT, "cr-s11", "MU_SEASONAL"),
    ("paste_tomato_salsa", "vinegar for lemon juice", DO_NOT, "cr-s04", "USDA539_15"),
    ("tomatoes_crushed", "vinegar for lemon juice", TESTED, "cr-t03", "USDA539_15"),
    ("tomato_sauce_thin", "citric acid for lemon juice", TESTED, "cr-t03", "USDA539_15"),
    ("tomatoes_crushed", "fresh lemon juice for lemon juice", DO_NOT, "cr-t04", "USDA539_15"),
    ("choice_salsa", "fresh lemon juice for lemon juice", DO_NOT, "cr-s05", "USDA539_15"),
    ("paste_tomato_salsa", "lime juice for lemon juice", TESTED, "cr-s08", "USDA539_15"),
    ("tomato_paste_salsa", "lime juice for lemon juice", TESTED, "cr-s09", "USDA539_15"),
    ("choice_salsa", "lime juice for lemon juice", TESTED, "cr-s10", "MU_SEASONAL"),
    ("choice_salsa", "key lime juice for lemon juice", DO_NOT, "cr-s52", "MU_SEASONAL"),
    ("tomatillo_green_salsa", "lime juice for lemon juice", NOT_TESTED, "cr-s12", "USDA539_15"),
    ("chile_salsa", "citric acid for vinegar", NOT_TESTED, "cr-s13", "USDA539_15"),
    ("quick_dill_cucumber", "no salt", TESTED, "cr-p14", "USDA539_15"),
    ("chile_salsa", "no salt", TESTED, "cr-s16", "USDA539_15"),
    ("tomatoes_crushed", "no salt", TESTED, "cr-t06", "USDA539_15"),
    ("snap_beans_canned", "no salt", TESTED, "cr-v01", "USDA539_15"),
    ("sauerkraut", "no salt", DO_NOT, "cr-f02 cr-f01", "USDA539_15"),
    ("sauerkraut", "less salt", DO_NOT, "cr-f01", "USDA539_15"),
    ("fermented_dill_cucumber", "less salt", DO_NOT, "cr-f01", "USDA539_15"),
    ("sauerkraut", "1.9 % salt", DO_NOT, "cr-f02", "USDA539_15"),
    ("sauerkraut", "2 % salt", NOT_TESTED, "cr-f18", "JOHANN2007 USDA539_15"),
    ("sauerkraut", "2.25 % salt", TESTED, "cr-f19", "USDA539_15"),
    ("sauerkraut", "2.5 % salt", TESTED, "cr-f19", "USDA539_15"),
    ("sauerkraut", "3 % salt", NOT_TESTED, "cr-f20", "OSU_LOWSALT USDA539_15"),
    ("quick_dill_cucumber", "kosher salt for salt", DO_NOT, "cr-p16", "USDA539_15"),
    ("quick_dill_cucumber", "table salt for salt", TESTED, "cr-p15", "USDA539_15"),
    ("quick_dill_cucumber", "low sodium salt for salt", TESTED, "cr-p17", "USDA539_15"),
    ("sauerkraut", "low sodium salt for salt", DO_NOT, "cr-f03", "USDA539_15"),
    ("sauerkraut", "table salt for salt", TESTED, "cr-f04", "USDA539_15"),
    ("quick_sweet_cucumber", "less sugar", TESTED, "cr-p10", "UWEX_MODIFY"),
    ("quick_sweet_cucumber", "no sugar", NOT_TESTED, "", ""),
    ("quick_sweet_cucumber", "more sugar", TESTED, "cr-p09", "USDA410"),
    ("quick_sweet_cucumber", "honey instead of sugar", NOT_TESTED, "cr-p12", "USDA539_15"),
    ("quick_sweet_cucumber", "sucralose for sugar", NOT_TESTED, "cr-p11", "USDA539_15"),
    ("quick_sweet_cucumber", "brown sugar for sugar", TESTED, "cr-p13", "USDA539_15"),
    ("chile_salsa", "add sugar", TESTED, "cr-s14", "USDA539_15"),
    ("tomatoes_crushed", "add sugar", TESTED, "cr-t05", "USDA539_15"),
    ("apples_sliced", "no sugar", TESTED, "cr-u01", "USDA539_15"),
    ("apples_sliced", "less sugar", TESTED, "cr-u05", "USDA539_15"),
    ("peaches_halved", "honey for sugar", NOT_TESTED, "", "USDA539_15"),
    ("peaches_halved", "sucralose for sugar", TESTED, "cr-u03", "USDA539_15"),
    ("applesauce", "no sugar", TESTED, "cr-u14", "USDA539_15"),
    ("strawberry_jam_pectin", "less sugar", DO_NOT, "cr-j01", "USDA539_15"),
    ("peach_jam", "less sugar", DO_NOT, "cr-j02", "USDA539_15"),
    ("grape_jelly", "less sugar", DO_NOT, "cr-j03", "USDA539_15"),
    ("strawberry_jam_pectin", "honey instead of sugar", NOT_TESTED, "cr-j04", "USDA539_15"),
    ("apricot_jam", "honey instead of sugar", NOT_TESTED, "", "UWEX_JAM"),
    ("apricot_jam", "honey for half the sugar", TESTED, "cr-j41", "UWEX_JAM"),
    ("strawberry_jam_pectin", "stevia for sugar", DO_NOT, "cr-j05", "USDA539_15"),
    ("green_tomato_pie_filling", "more sugar", TESTED, "cr-e02", "USDA539_15"),
    ("chile_salsa", "thicken with flour", DO_NOT, "cr-s41", "USDA539_15"),
    ("tomato_ketchup", "add cornstarch", DO_NOT, "cr-c11", "ISU_THICKEN"),
    ("barbecue_sauce", "thicken with cornstarch", DO_NOT, "cr-c11", "ISU_THICKEN"),
    ("tomato_juice", "thicken with flour", DO_NOT, "cr-t16", "ISU_THICKEN"),
    ("corn_relish", "thicken with flour", DO_NOT, "cr-p46", "ISU_THICKEN USDA539_15"),
    ("corn_relish", "1/4 cup flour in 1/4 cup water per batch", TESTED, "cr-p43", "USDA539_15"),
    ("quick_dill_cucumber", "add cornstarch", DO_NOT, "cr-p46", "ISU_THICKEN"),
    ("peaches_halved", "thicken with cornstarch", DO_NOT, "cr-k31", "ISU_THICKEN psu-what-not-to-can-2020"),
    ("apple_butter", "add a thickener", DO_NOT, "cr-k31", "ISU_THICKEN"),
    ("chile_salsa", "add corn", DO_NOT, "cr-s36", "UCANR_SALSA"),
    ("chile_salsa", "add beans", DO_NOT, "cr-s36", "UCANR_SALSA"),
    ("choice_salsa", "add corn", DO_NOT, "cr-s34", "MU_SEASONAL"),
    ("choice_salsa", "add black beans", DO_NOT, "cr-s34", "MU_SEASONAL"),
    ("tomatoes_crushed", "add onions", DO_NOT, "cr-t07", "USDA539_15"),
    ("tomatoes_crushed", "add celery", DO_NOT, "cr-t07", "USDA539_15"),
    ("tomatoes_crushed", "add garlic", NOT_TESTED, "cr-t09", "USDA539_15"),
    ("tomatoes_crushed", "add basil", DO_NOT, "cr-t07", "USDA539_15"),
    ("spaghetti_sauce_no_meat", "more onions", DO_NOT, "cr-c01", "USDA539_15"),
    ("spaghetti_sauce_no_meat", "more peppers", DO_NOT, "cr-c02", "USDA539_15"),
    ("spaghetti_sauce_no_meat", "no mushrooms", TESTED, "cr-c03", "USDA539_15"),
    ("spaghetti_sauce_no_meat", "add meat", DO_NOT, "cr-c05", "USDA539_15"),
    ("sauerkraut", "add carrots", NOT_TESTED, "cr-f13", "USDA539_15"),
    ("strawberry_jam_pectin", "add jalapenos", DO_NOT, "cr-j22", "NCHFP_NEWSFLASH"),
    ("strawberry_jam_pectin", "add basil", NOT_TESTED, "", ""),
    ("chile_salsa", "add oil", NOT_TESTED, "", ""),
    ("quick_dill_cucumber", "add oil", NOT_TESTED, "", ""),
    ("snap_beans_canned", "add oil", DO_NOT, "cr-v16", "psu-what-not-to-can-2020"),
    ("marinated_peppers", "more oil", DO_NOT, "cr-p30", "USDA539_15"),
    ("snap_beans_canned", "add butter", DO_NOT, "cr-v16", "psu-what-not-to-can-2020"),
    ("tomatoes_crushed", "add cream", DO_NOT, "cr-t17", "KSU_ASKED"),
    ("tomato_juice", "add milk", DO_NOT, "cr-t17", "KSU_ASKED"),
    ("chile_salsa", "more garlic", DO_NOT, "cr-s35", "USDA539_15"),
    ("chile_salsa", "more onions", DO_NOT, "cr-s30", "USDA539_15"),
    ("choice_salsa", "more onions", DO_NOT, "cr-s34", "MU_SEASONAL"),
    ("chile_salsa", "more peppers", DO_NOT, "cr-s26", "USDA539_15"),
    ("chile_salsa", "fewer peppers", TESTED, "cr-s28", "UWEX_MODIFY"),
    ("chile_salsa", "fewer onions", TESTED, "cr-s29", "UCANR_SALSA"),
    ("chile_salsa", "more cilantro", DO_NOT, "cr-s20", "RUTGERS_SALSA"),
    ("chile_salsa", "more tomatoes", NOT_TESTED, "", ""),
    ("quick_dill_cucumber", "more garlic", NOT_TESTED, "cr-p19", "USDA539_15"),
    ("quick_dill_cucumber", "add garlic", NOT_TESTED, "cr-p19", "USDA539_15"),
    ("dilled_beans", "no garlic", TESTED, "cr-p20", "USDA539_15"),
    ("marinated_peppers", "no garlic", TESTED, "cr-p31", "USDA539_15"),
    ("pickled_beets", "no onions", TESTED, "cr-p26", "USDA539_15"),
    ("snap_beans_canned", "add garlic", NOT_TESTED, "cr-v12", "USDA539_15"),
    ("chile_salsa", "more cumin", TESTED, "cr-s17", "USDA539_15"),
    ("chile_salsa", "no spices", TESTED, "cr-s18", "USDA539_15"),
    ("chile_salsa", "dried oregano for cilantro", TESTED, "cr-s21 cr-s19", "USDA539_15"),
    ("quick_dill_cucumber", "dried dill for fresh dill", NOT_TESTED, "", "USDA539_15"),
    ("quick_dill_cucumber", "dried herb for fresh", NOT_TESTED, "", "USDA539_15"),
    ("chile_salsa", "dried herb for fresh", TESTED, "cr-s21 cr-s19", "USDA539_15"),
    ("quick_dill_cucumber", "more mustard seed", NOT_TESTED, "", ""),
    ("green_tomato_pie_filling", "more cinnamon", TESTED, "cr-e03", "USDA539_15"),
    ("chile_salsa", "another pepper", TESTED, "cr-s22", "USDA539_15"),
    ("chile_salsa", "jalapenos for chile peppers", TESTED, "cr-s22", "USDA539_15"),
    ("chile_salsa", "bell peppers for chile peppers", TESTED, "cr-s22", "USDA539_15"),
    ("choice_salsa", "another pepper", TESTED, "cr-s22", "USDA539_15"),
    ("marinated_peppers", "another pepper", TESTED, "cr-p29", "USDA539_15"),
    ("pickled_hot_peppers", "another pepper", TESTED, "cr-p32", "USDA539_15"),
    ("pickled_jalapeno_rings", "serranos for jalapenos", NOT_TESTED, "cr-p54", "USDA539_15"),
    ("pickled_bell_peppers", "another pepper", NOT_TESTED, "cr-p55", "USDA539_15"),
    ("golden_pepper_jelly", "another pepper", TESTED, "cr-j24", "USDA539_15"),
    ("cayenne_pepper_sauce", "jalapenos for hot peppers", TESTED, "cr-c08", "USDA539_15"),
    ("cayenne_pepper_sauce", "bell peppers for hot peppers", NOT_TESTED, "", ""),
    ("beets_canned", "peppers for beets", NOT_TESTED, "", ""),
    ("choice_salsa", "green peppers for red peppers", TESTED, "cr-s23", "USDA539_15"),
    ("choice_salsa", "green for red peppers", TESTED, "cr-s23", "USDA539_15"),
    ("chile_salsa", "red onion for onion", TESTED, "cr-s31", "USDA539_15"),
    ("chile_salsa", "green tomatoes for tomatoes", TESTED, "cr-s37", "USDA539_15"),
    ("chile_salsa", "green tomatoes for red tomatoes", TESTED, "cr-s37", "USDA539_15"),
    ("tomatoes_crushed", "green tomatoes for tomatoes", TESTED, "cr-t11", "USDA539_15"),
    ("chile_salsa", "tomatillos for tomatoes", TESTED, "cr-s37", "USDA539_15"),
    ("chile_salsa", "slicing tomatoes for tomatoes", TESTED, "cr-s38", "USDA539_15"),
    ("chile_salsa", "overripe tomatoes for tomatoes", DO_NOT, "cr-s40", "USDA539_15"),
    ("chile_salsa", "tomatoes from frosted vines for tomatoes", DO_NOT, "cr-s40", "USDA539_15"),
    ("chile_salsa", "corn for peppers", DO_NOT, "cr-s36", "UCANR_SALSA"),
    ("choice_salsa", "peppers for onions", TESTED, "cr-s33", "MU_SEASONAL"),
    ("chile_salsa", "peppers for onions", DO_NOT, "cr-s32", "USDA539_15"),
    ("quick_dill_cucumber", "zucchini for cucumbers", NOT_TESTED, "cr-p28", "USDA539_15"),
    ("peaches_halved", "white peaches for peaches", DO_NOT, "cr-u07", "UWEX_PEACH"),
    ("peaches_halved", "nectarines for peaches", TESTED, "cr-u09", "USDA539_15"),
    ("strawberry_jam_pectin", "elderberries for strawberries", DO_NOT, "cr-j34", "UMN_ELDER"),
    ("berry_jam", "another berry", TESTED, "cr-j20", "USDA539_15"),
    ("strawberry_jam_pectin", "liquid pectin for pectin", DO_NOT, "cr-j06", "USDA539_15"),
    ("strawberry_jam_pectin", "low sugar pectin for pectin", DO_NOT, "cr-j07", "USDA539_15"),
    ("chile_salsa", "bigger jar", DO_NOT, "cr-s45", "USDA539_15"),
    ("chile_salsa", "smaller jar", TESTED, "cr-s46", "USDA539_15"),
    ("chile_salsa", "quart instead of pint", DO_NOT, "cr-s45", "USDA539_15"),
    ("chile_salsa", "half-pints", TESTED, "", "usda-aib539-1994-text"),
    ("apples_sliced", "quarts instead of pints", TESTED, "", "usda-aib539-1994-text"),
    ("tomatoes_crushed", "half gallon", DO_NOT, "cr-k12", "USDA539_15"),
    ("grape_jelly", "quarts", DO_NOT, "cr-j11", "USDA539_15"),
    ("grape_jelly", "bigger jar", DO_NOT, "cr-j11", "USDA539_15"),
    ("snap_beans_canned", "smaller jar", TESTED, "cr-k13", "USDA539_15"),
    ("peaches_halved", "raw for hot", TESTED, "", "usda-aib539-2009-reprint"),
    ("peaches_halved", "raw pack", TESTED, "", "usda-aib539-2009-reprint"),
    ("applesauce", "raw pack", NOT_TESTED, "", ""),
    ("pickled_beets", "raw for hot", DO_NOT, "cr-p42", "USDA539_15"),
    ("beets_canned", "raw pack", NOT_TESTED, "", ""),
    ("snap_beans_canned", "hot for raw", TESTED, "", "msu-preserving-food-safely-1997"),
    ("strawberry_jam_pectin", "double batch", DO_NOT, "cr-j08", "USDA539_15"),
    ("grape_jelly", "double batch", DO_NOT, "cr-j10", "USDA539_15"),
    ("peach_jam", "double batch", DO_NOT, "cr-j09", "USDA539_15"),
    ("chile_salsa", "double batch", NOT_TESTED, "cr-k28", "NCHFP_DOUBLE"),
    ("quick_dill_cucumber", "double batch", NOT_TESTED, "cr-k28", "NCHFP_DOUBLE"),
    ("chile_salsa", "half batch", TESTED, "cr-k29", "USDA539_15"),
    ("quick_dill_cucumber", "half batch", TESTED, "cr-k29", "USDA539_15"),
    ("strawberry_jam_pectin", "half batch", NOT_TESTED, "", "USDA_HG56"),
    ("apples_sliced", "steam instead of boiling water", TESTED, "", "usda-aib539-1994-text nchfp-web"),
    ("quick_dill_cucumber", "steam for boiling water", TESTED, "", "msu-preserving-food-safely-1997 nchfp-web"),
    ("snap_beans_canned", "steam canner", DO_NOT, "cr-v02", "USDA539_15"),
    ("snap_beans_canned", "boiling water instead of pressure", DO_NOT, "cr-v02", "USDA539_15"),
    ("mexican_tomato_sauce", "boiling water instead of pressure", DO_NOT, "cr-c07", "USDA539_15"),
    ("spaghetti_sauce_no_meat", "water bath", DO_NOT, "cr-c06", "USDA539_15"),
    ("chile_salsa", "pressure canner", NOT_TESTED, "cr-s48", "USDA539_15"),
    ("apples_sliced", "another altitude", NOT_TESTED, "", ""),
    ("apples_sliced", "sea level time", DO_NOT, "cr-k19", "USDA539_15"),
    ("snap_beans_canned", "ignore the altitude", DO_NOT, "cr-k19", "USDA539_15"),
    ("apples_sliced", "in the oven", DO_NOT, "cr-k01", "USDA539_15"),
    ("chile_salsa", "open kettle", DO_NOT, "cr-k02", "USDA539_15"),
    ("strawberry_jam_pectin", "seal with wax", DO_NOT, "cr-j28", "USDA539_15"),
    ("chile_salsa", "in the dishwasher", DO_NOT, "cr-k04", "USDA539_15"),
    ("quick_dill_cucumber", "turn the jars upside down", DO_NOT, "cr-k03", "msu-unsafe-methods"),
    ("snap_beans_canned", "no venting", DO_NOT, "cr-k25", "USDA539_15"),
    ("snap_beans_canned", "in the multicooker", DO_NOT, "cr-k08", "EXT_MULTICOOKER"),
    ("snap_beans_canned", "pressure saucepan", DO_NOT, "cr-k09", "USDA539_15"),
    ("apples_sliced", "less time", DO_NOT, "cr-k18", "USDA539_15"),
    ("quick_dill_cucumber", "no processing", DO_NOT, "cr-p39", "USDA539_15"),
    ("chile_salsa", "family recipe", DO_NOT, "cr-s47", "USDA539_15"),
    ("apples_sliced", "used lids", DO_NOT, "cr-k14", "USDA539_15"),
    ("quick_dill_cucumber", "low temperature pasteurization", NOT_TESTED, "cr-p56", "USDA539_15"),
    ("pickled_beets", "low temperature pasteurization", DO_NOT, "cr-p36", "USDA539_15"),
    ("tomatoes_crushed", "skin on", DO_NOT, "cr-t10", "KSU_ASKED"),
    ("chile_salsa", "drain the tomatoes", DO_NOT, "cr-s39", "USDA539_15"),
    ("snap_beans_canned", "add vinegar", DO_NOT, "cr-v03", "nchfp-web"),
    ("frozen_pesto", "more garlic", NOT_TESTED, "", ""),
    ("quick_dill_cucumber", "less acid", DO_NOT, "cr-p01", "USDA539_15"),
    ("strawberry_jam_pectin", "add stevia", DO_NOT, "cr-j05", "USDA539_15"),
    ("peaches_halved", "add sucralose", TESTED, "cr-u03", "USDA539_15"),
    ("quick_sweet_cucumber", "add honey", NOT_TESTED, "cr-p12", "USDA539_15"),
    ("spaghetti_sauce_no_meat", "fewer mushrooms", TESTED, "cr-c03", "USDA539_15"),
    ("apricot_jam", "add 1 tsp basil", TESTED, "cr-j39", "NCHFP_NEWSFLASH"),
    ("apricot_jam", "add 2 tsp basil", NOT_TESTED, "", "NCHFP_NEWSFLASH"),
    ("green_tomato_pie_filling", "more thyme", TESTED, "cr-e03", "USDA539_15"),
];

#[test]
fn each_change_alone_comes_to_its_verdict_by_its_rule_and_its_source() {
    let mut wrong = Vec::new();
    for (formula, change, verdict, rules, sources) in CASES {
        let answer = ask(formula, &[change]);
        let found = &answer.changes[0];
        let by: Vec<&str> = found.rules.iter().map(|rule| rule.as_str()).collect();
        let mut cited: Vec<String> = Vec::new();
        for source in found.sources.iter().map(|source| source.citation().source.to_string()) {
            if !cited.contains(&source) {
                cited.push(source);
            }
        }
        let (by, cited) = (by.join(" "), cited.join(" "));
        if (found.verdict, by.as_str(), cited.as_str()) != (*verdict, *rules, *sources) {
            wrong.push(format!("{formula}, {change:?}: {} by {by:?} of {cited:?}", found.verdict));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_answer_says_why_and_a_refusal_what_to_do_instead() {
    for (formula, change, verdict, _, _) in CASES {
        let answer = ask(formula, &[change]);
        let found = &answer.changes[0];
        if *verdict == TESTED {
            assert!(found.because.is_empty() && !found.allowed.is_empty(), "{formula}, {change:?}");
            assert!(found.allowed.iter().all(|rider| rider.source.is_some()), "{formula}, {change:?}");
        } else {
            assert!(!found.because.is_empty() && !found.instead.is_empty(), "{formula}, {change:?}");
        }
        let has = |code: &str| answer.riders.iter().any(|rider| rider.code == code);
        assert!(has("local-extension"), "{formula}, {change:?}");
        assert!(answer.verdict != TESTED || has("change-alone"), "{formula}, {change:?}");
    }
}

#[test]
fn a_deciding_rule_that_is_struck_no_longer_decides() {
    let decided = CASES.iter().filter(|(_, _, _, rules, _)| !rules.is_empty() && !rules.contains(' '));
    for (formula, change, _, rule, _) in decided.step_by(5) {
        let tables = almanac::Tables::embedded()
            .without_lines(almanac::Table::ChangeRules, |line| line.starts_with(&format!("{rule},")));
        let struck = Almanac::from_tables(&tables).expect("the tables still load");
        let found = clear_changes(&struck, &question(formula, &[change])).expect("it was understood before");
        assert!(found.changes[0].rules.iter().all(|by| by.as_str() != *rule), "{formula}, {change:?}");
    }
}

#[test]
fn what_hangs_on_something_left_open_is_asked_for() {
    let hangs = |formula: &str, change: &str| match clear_changes(load(), &question(formula, &[change])) {
        Err(ClearError::HangsOn { on }) => on,
        other => panic!("{formula}, {change:?}: {other:?}"),
    };
    assert_eq!(hangs("tomatoes_crushed", "half-pint instead of pint"), ["canner"]);
    let steam = hangs("tomatoes_whole_water", "steam canner");
    assert!(steam.contains(&"altitude") && !steam.contains(&"canner"), "{steam:?}");
    // Said, it is answered.
    let said = ChangesQuestion {
        canner: Some(almanac::CannerKind::BoilingWater),
        ..question("tomatoes_crushed", &["half-pint instead of pint"])
    };
    assert_eq!(clear_changes(load(), &said).map(|answer| answer.verdict), Ok(TESTED));
}

#[test]
fn several_changes_keep_their_own_verdicts_and_the_strictest_stands() {
    let answer = ask("chile_salsa", &["no salt", "double batch", "less vinegar"]);
    let each: Vec<Verdict> = answer.changes.iter().map(|change| change.verdict).collect();
    assert_eq!((answer.verdict, each), (DO_NOT, vec![TESTED, NOT_TESTED, DO_NOT]));
    assert_eq!(ask("chile_salsa", &["no salt", "another pepper"]).verdict, TESTED);
}

#[test]
fn changes_that_speak_against_each_other_are_handed_back() {
    for changes in [["no salt", "more salt"], ["add garlic", "no garlic"]] {
        match clear_changes(load(), &question("marinated_peppers", &changes)) {
            Err(ClearError::ChangeNotUnderstood { because: Misread::Opposite { .. }, .. }) => {}
            other => panic!("{changes:?}: {other:?}"),
        }
    }
}

#[test]
fn a_formula_that_is_itself_in_doubt_is_never_tested_by_a_change() {
    let answer = ask("golden_pepper_jelly", &["another pepper"]);
    assert_eq!((answer.changes[0].verdict, answer.verdict), (TESTED, NOT_TESTED));
}

#[test]
fn no_change_and_no_such_formula_are_wrong_questions() {
    assert!(matches!(clear_changes(load(), &question("chile_salsa", &[])), Err(ClearError::NoChange)));
    let unknown = clear_changes(load(), &question("moon_salsa", &["less salt"]));
    assert!(matches!(unknown, Err(ClearError::UnknownFormula { .. })));
}

#[test]
fn what_is_not_understood_is_said_and_never_waved_through() {
    for change in ["make it nicer", "add moonfruit", "less", "", "no less vinegar", "don't add less vinegar"]
    {
        let handed_back = clear_changes(load(), &question("chile_salsa", &["no salt", change]));
        assert!(matches!(handed_back, Err(ClearError::ChangeNotUnderstood { .. })), "{change:?}");
    }
}

/// Every text of an answer, without the names of publications.
fn texts(value: &serde_json::Value) -> Vec<String> {
    match value {
        serde_json::Value::String(text) => vec![text.clone()],
        serde_json::Value::Array(all) => all.iter().flat_map(texts).collect(),
        serde_json::Value::Object(keys) => {
            let told = keys.iter().filter(|(key, _)| !matches!(key.as_str(), "source" | "sources" | "title"));
            told.flat_map(|(_, value)| texts(value)).collect()
        }
        _ => Vec::new(),
    }
}

#[test]
fn no_answer_about_a_change_calls_anything_safe() {
    for (formula, change, _, _, _) in CASES {
        let json = serde_json::to_value(ask(formula, &[change])).expect("it can be written");
        for text in texts(&json) {
            let words = text.to_lowercase();
            let mut parted = words.split(|mark: char| !mark.is_alphabetic());
            assert!(!parted.any(|word| word == "safe"), "{formula}, {change:?}: {text}");
        }
    }
}

#[test]
fn every_source_of_full_rank_behind_a_change_names_its_year_or_is_known_to_carry_none() {
    /// Pages on which no year was found.
    const UNDATED: &[&str] =
        &["MU_SEASONAL", "UCANR_SALSA", "RUTGERS_SALSA", "NCHFP_DOUBLE", "UNL_RESEAL", "msu-unsafe-methods"];
    for (formula, change, _, _, _) in CASES {
        for source in ask(formula, &[change]).changes[0].sources.iter().map(|source| source.citation()) {
            let undated = UNDATED.contains(&source.source.as_str());
            assert!(source.year.is_some() || undated, "{formula}, {change:?}: {}", source.source);
        }
    }
}
