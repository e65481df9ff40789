//! Changes to a tested formula.

use almanac::Verdict::{DoNot, NotTested};
use batch::clear::Because;

use crate::question::{Answer, Question, boiled, on_dial, put};

const TOMATOES: Question = Question { with: "tomatoes_crushed", ..boiled("tomatoes-crushed", "hot", "pint") };
const SALSA: Question = Question { with: "chile_salsa", ..boiled("salsa-chile", "hot", "pint") };
const JAM: Question =
    Question { with: "blueberry_spice_jam", ..boiled("jam-blueberry-spice", "hot", "half-pint") };
const DILLS: Question =
    Question { with: "quick_dill_cucumber", ..boiled("dill-pickles-fresh-pack", "raw", "pint") };
const KRAUT: Question = Question { with: "sauerkraut", ..boiled("sauerkraut", "raw", "pint") };
const APPLES: Question = Question { with: "apples_sliced", ..boiled("apples-sliced", "hot", "pint") };
const BEANS: Question = Question { with: "snap_beans_canned", ..on_dial("beans-snap", "hot", "pint") };

/// The federal guide as the change rules name it.
const GUIDE: &str = "USDA539_15";

pub const ALL: &[Question] = &[
    Question {
        asked: "May I halve the lemon juice in tomatoes?",
        changes: &["half the lemon juice"],
        answer: Answer::Not(DoNot, Because::AcidWeaker),
        cites: GUIDE,
        rests_on: "Each pint gets a tablespoon and each quart two, whatever the canner (the amounts read \
                   again)",
        source: "USDA, AIB 539, 2015, guide 3 p. 3-5; University of Missouri Extension, GH1456, page read \
                 in 2026",
        ..TOMATOES
    },
    Question {
        asked: "May I leave the lemon juice out if I pressure-can the tomatoes?",
        canner: "dial",
        gauge_tested: "this-year",
        changes: &["no lemon juice"],
        answer: Answer::Not(DoNot, Because::AcidMissing),
        cites: GUIDE,
        rests_on: "Acid is added regardless of the canning method (read again)",
        source: "University of Missouri Extension, GH1456, How to Can Fresh Tomato Products, page read in \
                 2026; USDA 2015 p. 3-5",
        ..TOMATOES
    },
    Question {
        asked: "May I squeeze fresh lemons instead of bottled juice?",
        changes: &["fresh lemon juice for lemon juice"],
        answer: Answer::Not(DoNot, Because::AcidWeaker),
        cites: GUIDE,
        rests_on: "Bottled juice is named because its strength does not vary",
        source: "USDA, AIB 539, 2015, guide 3 pp. 3-5 and 3-19",
        ..TOMATOES
    },
    Question {
        asked: "May I use vinegar instead of lemon juice in tomatoes?",
        changes: &["vinegar for lemon juice"],
        answer: Answer::Tested(&[(35, None)]),
        cites: GUIDE,
        rests_on: "Four tablespoons of 5 percent vinegar to a quart may be used instead, though it tastes \
                   (read again)",
        source: "USDA, AIB 539, 1994 and 2015, guide 3, acidification; University of Missouri Extension, \
                 GH1456, page read in 2026",
        ..TOMATOES
    },
    Question {
        asked: "May I add onions and peppers to crushed tomatoes?",
        changes: &["add onions and peppers"],
        answer: Answer::Not(DoNot, Because::IngredientAdded),
        cites: GUIDE,
        rests_on: "The times for tomatoes are for tomatoes alone",
        source: "USDA, AIB 539, 2015, guide 3 pp. 3-6, 3-12, 3-13",
        ..TOMATOES
    },
    Question {
        asked: "May I use less vinegar in salsa?",
        changes: &["less vinegar"],
        answer: Answer::Not(DoNot, Because::AcidWeaker),
        cites: GUIDE,
        rests_on: "The acid of a salsa is never reduced; sugar may offset the sourness",
        source: "USDA, AIB 539, 2015, guide 3 p. 3-19, acids",
        ..SALSA
    },
    Question {
        asked: "May I use jalapenos where the salsa says chiles?",
        changes: &["another pepper"],
        answer: Answer::Tested(&[(15, None)]),
        cites: GUIDE,
        rests_on: "One kind of pepper may stand for another if there are no more of them in all (read again)",
        source: "USDA, AIB 539, 2015, guide 3 p. 3-20, peppers; University of California, Safe ingredient \
                 swaps for home-canned salsa, page read in 2026",
        ..SALSA
    },
    Question {
        asked: "May I put more garlic in the salsa?",
        changes: &["more garlic"],
        answer: Answer::Not(DoNot, Because::RatioChanged),
        cites: GUIDE,
        rests_on: "No more vegetables than printed go into a salsa; only dried seasonings may change (read \
                   again)",
        source: "USDA, AIB 539, 2015, guide 3 p. 3-21; Rutgers Cooperative Extension, Laws of Food \
                 Preservation, Salsa, page read in 2026",
        ..SALSA
    },
    Question {
        asked: "May I add corn and black beans to the salsa?",
        changes: &["add corn and beans"],
        answer: Answer::Not(DoNot, Because::IngredientAdded),
        cites: "UCANR_SALSA",
        rests_on: "Corn, beans and other low-acid food are not added or put in the place of peppers (read \
                   again)",
        source: "University of California Master Food Preservers, Preserve It, personalized salsa, page \
                 read in 2026",
        ..SALSA
    },
    Question {
        asked: "May I thicken the salsa with flour?",
        changes: &["add flour"],
        answer: Answer::Not(DoNot, Because::Thickened),
        cites: GUIDE,
        rests_on: "No thickener goes into a salsa for canning (read again)",
        source: "USDA, AIB 539, 2015, guide 3 p. 3-21; Rutgers Cooperative Extension, Laws of Food \
                 Preservation, Salsa, page read in 2026",
        ..SALSA
    },
    Question {
        asked: "May I use dried oregano for fresh?",
        changes: &["dried oregano for fresh oregano"],
        answer: Answer::Tested(&[(15, None)]),
        cites: GUIDE,
        rests_on: "Dried spices, oregano among them, may be added or left out, and fresh herbs may be left \
                   out (the first read again)",
        source: "USDA, AIB 539, 2015, guide 3 pp. 3-20 and 3-21; Rutgers Cooperative Extension, Laws of \
                 Food Preservation, Salsa, page read in 2026",
        ..SALSA
    },
    Question {
        asked: "May I leave the salt out of salsa?",
        changes: &["no salt"],
        answer: Answer::Tested(&[(15, None)]),
        cites: GUIDE,
        rests_on: "Salt in a salsa may be changed like a dried spice (read again)",
        source: "USDA, AIB 539, 2015, guide 3 p. 3-20; Rutgers Cooperative Extension, Laws of Food \
                 Preservation, Salsa, page read in 2026",
        ..SALSA
    },
    Question {
        asked: "May I use less sugar in jam with pectin?",
        changes: &["less sugar"],
        answer: Answer::Not(DoNot, Because::RatioChanged),
        cites: GUIDE,
        rests_on: "With less sugar no gel forms, and yeasts and moulds may grow (read again)",
        source: "University of Missouri Extension, GH1461, on sweet spreads, page read in 2026; USDA 2015, \
                 guide 1 p. 1-30",
        ..JAM
    },
    Question {
        asked: "May I use honey for the sugar in jam?",
        changes: &["honey instead of sugar"],
        answer: Answer::Not(NotTested, Because::IngredientReplaced),
        cites: GUIDE,
        rests_on: "Honey may replace part of the sugar, by formulas tested for it (read again)",
        source: "University of Missouri Extension, GH1461, on sweet spreads, page read in 2026; USDA 2015, \
                 guide 1 p. 1-30",
        ..JAM
    },
    Question {
        asked: "May I sweeten the jam with stevia?",
        changes: &["stevia for sugar"],
        answer: Answer::Not(DoNot, Because::IngredientReplaced),
        cites: GUIDE,
        rests_on: "Sweeteners cannot stand for sugar in ordinary jam, because the gel needs it (read again)",
        source: "University of Missouri Extension, GH1461, on sweet spreads, page read in 2026; USDA 2015, \
                 guide 1 p. 1-30",
        ..JAM
    },
    Question {
        asked: "May I put half a teaspoon of butter in the jam against foam?",
        changes: &["add 1/2 tsp butter"],
        answer: Answer::Tested(&[(5, None)]),
        cites: GUIDE,
        rests_on: "Half a teaspoon of butter with juice and pectin reduces foam; in long storage it may \
                   taste off (read again)",
        source: "USDA, AIB 539, 1994, jams and jellies with added pectin, and 2015, guide 7 p. 7-7",
        ..JAM
    },
    Question {
        asked: "May I double the batch of jam?",
        changes: &["double batch"],
        answer: Answer::Not(DoNot, Because::BatchChanged),
        cites: GUIDE,
        rests_on: "One batch at a time; larger ones often set soft (read again)",
        source: "USDA, AIB 539, 1994, preparing butters, jams, jellies, part 2, and 2015, guide 1 p. 1-30",
        ..JAM
    },
    Question {
        asked: "May I use 4 % vinegar for pickles?",
        changes: &["4 % vinegar"],
        answer: Answer::Not(DoNot, Because::AcidWeaker),
        cites: GUIDE,
        rests_on: "Vinegar for pickles has 5 percent, and its share is never lowered (read again)",
        source: "Michigan State University Extension, files 01600556 and 01600559, 1997; USDA 2015 p. 1-28",
        ..DILLS
    },
    Question {
        asked: "May I use my own homemade vinegar?",
        changes: &["homemade vinegar instead of vinegar"],
        answer: Answer::Not(DoNot, Because::AcidWeaker),
        cites: GUIDE,
        rests_on: "Vinegar of unknown acidity is not used",
        source: "USDA, AIB 539, 2015, guide 1 p. 1-28",
        ..DILLS
    },
    Question {
        asked: "May I leave the salt out of vinegar pickles?",
        changes: &["no salt"],
        answer: Answer::Tested(&[(10, None)]),
        cites: GUIDE,
        rests_on: "In fresh-pack pickles the vinegar preserves; their salt may go down, with some loss of \
                   quality",
        source: "USDA, AIB 539, 2015, guide 1 p. 1-28, pickles with reduced salt",
        ..DILLS
    },
    Question {
        asked: "May I measure flaked kosher salt like canning salt?",
        changes: &["kosher salt for canning salt"],
        answer: Answer::Not(DoNot, Because::IngredientReplaced),
        cites: GUIDE,
        rests_on: "Flake salt varies in density and is not recommended for pickles (read again)",
        source: "Michigan State University Extension, file 01600556, 1997; USDA 2015, guide 6 p. 6-7",
        ..DILLS
    },
    Question {
        asked: "May I pickle zucchini by the cucumber formula?",
        changes: &["zucchini for cucumbers"],
        answer: Answer::Not(NotTested, Because::IngredientReplaced),
        cites: GUIDE,
        rests_on: "The proportion of food and vinegar belongs to the food it was tested with",
        source: "USDA, AIB 539, 2015, guide 1 p. 1-28",
        ..DILLS
    },
    Question {
        asked: "May I make sauerkraut without salt?",
        changes: &["no salt"],
        answer: Answer::Not(DoNot, Because::RatioChanged),
        cites: GUIDE,
        rests_on: "In a ferment the salt chooses the bacteria; it is not lowered",
        source: "USDA, AIB 539, 2015, guide 1 p. 1-28, caution, and guide 6 p. 6-8",
        ..KRAUT
    },
    Question {
        asked: "May I can apples without sugar?",
        changes: &["no sugar"],
        answer: Answer::Tested(&[(20, None)]),
        cites: GUIDE,
        rests_on: "Fruit may be canned in water or juice; sugar preserves colour and shape, not the food \
                   (read again)",
        source: "New Mexico State University Extension, E-319, Home Canning of Fruits, copy of 2018; USDA \
                 2015, guide 2 p. 2-5",
        ..APPLES
    },
    Question {
        asked: "May I leave the salt out of canned beans?",
        changes: &["no salt"],
        answer: Answer::Tested(&[(20, Some(11))]),
        cites: GUIDE,
        rests_on: "Salt is added to beans if desired; the process does not rest on it (read again)",
        source: "USDA, AIB 539, 1994, guide 4, snap beans; 2015, guide 1 p. 1-31",
        ..BEANS
    },
    Question {
        asked: "May I put bacon in the green beans?",
        changes: &["add bacon fat"],
        answer: Answer::Not(DoNot, Because::IngredientAdded),
        cites: "psu-what-not-to-can-2020",
        rests_on: "Fat shields spores and was not in the test",
        source: "Penn State Extension, What not to can, September 2020; Wisconsin Extension on \
                 substitutions, 2020",
        ..BEANS
    },
    Question {
        asked: "May I put more mushrooms in the spaghetti sauce?",
        with: "spaghetti_sauce_no_meat",
        changes: &["more mushrooms"],
        answer: Answer::Not(DoNot, Because::RatioChanged),
        cites: GUIDE,
        rests_on: "The share of onions, peppers and mushrooms is not increased (read again)",
        source: "Michigan State University Extension, file 01600877, Spaghetti sauce without meat, 1997",
        ..on_dial("spaghetti-sauce-no-meat", "hot", "pint")
    },
];

#[test]
fn changes_get_the_answer_an_educator_would_sign() {
    put(ALL);
}
