//! Foods: may I can this?

use almanac::Verdict::{DoNot, NotTested};
use batch::clear::Because;

use crate::question::{Answer, BLANK, Question, boiled, on_dial, put};

const fn may_i(
    asked: &'static str,
    food: &'static str,
    id: &'static str,
    cites: &'static str,
    rests_on: &'static str,
    source: &'static str,
) -> Question {
    Question { asked, food, answer: Answer::Refused(id, DoNot), cites, rests_on, source, ..BLANK }
}

pub const ALL: &[Question] = &[
    may_i(
        "May I can pumpkin puree?",
        "pumpkin puree",
        "pumpkin-squash-puree",
        "ksu-pumpkin-2016",
        "The mash is dense and low in acid, heat may not reach its middle; only cubes are printed, not \
         mashed (read again in the guide of 1994)",
        "Kansas State University Extension, Preserving pumpkin safely, August 2016; USDA, Complete Guide, \
         AIB 539, 1994, guide 4, pumpkins",
    ),
    Question {
        asked: "And pumpkin in cubes, in quarts?",
        answer: Answer::Tested(&[(90, Some(11))]),
        cites: "usda-aib539-1994-text",
        rests_on: "Cubes in quarts take 90 minutes at 11 pounds on a dial up to 2,000 feet (read again)",
        source: "USDA, Complete Guide, AIB 539, 1994, guide 4, pumpkins and winter squash, table 1",
        ..on_dial("pumpkin-winter-squash-cubed", "hot", "quart")
    },
    may_i(
        "May I can milk?",
        "milk",
        "dairy",
        "psu-what-not-to-can-2020",
        "Milk, butter and cheese are low in acid and fat shields spores; no process was tested",
        "Penn State Extension, What not to can, September 2020, dairy products",
    ),
    may_i(
        "May I put butter up in jars?",
        "canned butter",
        "dairy",
        "psu-what-not-to-can-2020",
        "Butter is one of the dairy foods for which no process was tested",
        "Penn State Extension, What not to can, September 2020, dairy products",
    ),
    may_i(
        "May I keep garlic in oil on the shelf?",
        "garlic in oil",
        "garlic-in-oil",
        "nchfp-web",
        "Garlic in oil is low in acid and shut off from air; it is kept cold for four days at most, or frozen",
        "National Center for Home Food Preservation, Freezing, Garlic-in-Oil, reviewed 16 February 2015",
    ),
    may_i(
        "May I can pesto?",
        "pesto",
        "herbs-vegetables-in-oil",
        "psu-what-not-to-can-2020",
        "Herbs under oil have no air and little acid; they are frozen, or kept cold for days",
        "Penn State Extension, What not to can, September 2020, oil",
    ),
    may_i(
        "May I can plain zucchini?",
        "zucchini",
        "summer-squash-alone",
        "nchfp-web",
        "The old directions for summer squash were withdrawn, because their times cannot be shown to be enough",
        "National Center for Home Food Preservation, web pages of 2006 to 2018, FAQ Canning, summer squash \
         question",
    ),
    may_i(
        "May I can plain cabbage?",
        "cabbage",
        "cabbage-plain",
        "wi-mfp-notes",
        "Cabbage has no tested plain process; it is fermented first, or pickled",
        "Notes of a Wisconsin gardening programme quoting a Master Food Preserver, no year, vegetables not \
         to can",
    ),
    may_i(
        "May I can white peaches like yellow ones?",
        "white peaches",
        "white-peaches",
        "uwex-white-peaches-2020",
        "Some white peaches are above pH 4.6, and no amount of acid or pressure process exists for them",
        "University of Wisconsin Extension, Caution against canning white-fleshed peaches, 11 June 2020",
    ),
    may_i(
        "May I can elderberries?",
        "elderberries",
        "elderberries",
        "umn-elderberry-2020",
        "American elderberries were found at pH 4.8 on average, above the limit for boiling water",
        "University of Minnesota Extension, answer on elderberries, October 2020",
    ),
    may_i(
        "May I can the mushrooms I picked?",
        "wild mushrooms",
        "wild-mushrooms",
        "usda-aib539-1994-text",
        "The mushroom process is for cultivated mushrooms; wild ones are not canned (read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 4, mushrooms; Michigan State University Extension, file \
         01600287, 1997",
    ),
    may_i(
        "May pickled eggs stand on the shelf?",
        "pickled eggs",
        "eggs",
        "psu-what-not-to-can-2020",
        "No home process for eggs was tested; pickled eggs belong in the refrigerator",
        "Penn State Extension, What not to can, September 2020, eggs",
    ),
    may_i(
        "May pickled garlic stand on the shelf?",
        "pickled garlic",
        "pickled-garlic-shelf",
        "ksu-you-asked-it",
        "No times were developed for canning pickled garlic",
        "Kansas State University, You Asked It, Preserving Garlic, 6 August 2019",
    ),
    may_i(
        "May I can snow peas?",
        "snow peas",
        "edible-pod-peas",
        "msu-preserving-food-safely-1997",
        "Sugar snap and Chinese edible pods are better frozen; no process is printed",
        "Michigan State University Extension, Preserving Food Safely, 1997, Peas, green or English",
    ),
    may_i(
        "May I bake bread in a jar and seal it?",
        "bread in a jar",
        "bread-cake-in-jar",
        "wi-mfp-notes",
        "Quick breads stand on the list of what is not canned: moist, low in acid, and never processed",
        "Notes of a Wisconsin gardening programme quoting a Master Food Preserver, no year, foods not to can",
    ),
    may_i(
        "May I can chicken noodle soup?",
        "chicken noodle soup",
        "soup-with-thickener",
        "mu-seasonal-simple",
        "Noodles, rice, flour, cream and milk stay out of canned soup; they are added when it is served",
        "University of Missouri Extension, Seasonal and Simple, canned soup, after So Easy to Preserve, 2020",
    ),
    may_i(
        "May I can my grandmother's salsa?",
        "grandma's salsa",
        "untested-salsa",
        "pnw-salsa",
        "A salsa mixes acid and low-acid food, so only tested formulas are canned; others are kept cold or \
         frozen (read again)",
        "Pacific Northwest Extension, Salsa Recipes for Canning, no year, caution; Rutgers Cooperative \
         Extension, Laws of Food Preservation, Salsa, page read in 2026",
    ),
    may_i(
        "May I can tomatoes from vines the frost killed?",
        "frost-killed tomatoes",
        "tomatoes-dead-vines",
        "usda-aib539-1994-guide3",
        "Tomatoes from dead or frost-killed vines are not canned (read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 3, general, caution; University of Missouri Extension, \
         GH1456",
    ),
    Question {
        asked: "May I can candied jalapenos?",
        food: "candied jalapenos",
        answer: Answer::Refused("candied-pepper-rings", NotTested),
        cites: "derived",
        rests_on: "No federal or extension formula was found for pepper rings in heavy syrup",
        source: "Our own search of extension and federal pages, 2026: an absence, not a printed sentence",
        ..BLANK
    },
    Question {
        asked: "May I can creamed corn in quarts?",
        answer: Answer::Not(DoNot, Because::JarTooLarge),
        cites: "msu-preserving-food-safely-1997",
        rests_on: "Cream-style corn is printed in pints only (read again in the guide of 1994)",
        source: "Michigan State University Extension, Preserving Food Safely, 1997, Corn, cream style; \
                 USDA, AIB 539, 1994, guide 4",
        ..on_dial("corn-cream-style", "hot", "quart")
    },
    Question {
        asked: "I want to can salsa. How long?",
        answer: Answer::Asks("may be more than one food"),
        rests_on: "Each tested salsa has a line of its own; there is no time for salsa as such",
        source: "USDA, Complete Guide, AIB 539, 2015, guide 3, salsa recipes",
        ..boiled("salsa", "hot", "pint")
    },
];

#[test]
fn foods_get_the_answer_an_educator_would_sign() {
    put(ALL);
}
