//! Practices: may I do it this way?

use almanac::Verdict::DoNot;

use crate::question::{Answer, BLANK, Question, put};

const fn may_i(
    asked: &'static str,
    practice: &'static str,
    id: &'static str,
    cites: &'static str,
    rests_on: &'static str,
    source: &'static str,
) -> Question {
    let answer = Answer::Refused(id, DoNot);
    Question { asked, food: practice, answer, cites, rests_on, source, ..BLANK }
}

pub const ALL: &[Question] = &[
    may_i(
        "May I use last year's lids again?",
        "last year's lids",
        "used-lids",
        "usda-aib539-2015-text",
        "A flat lid is used once, its compound has taken the mark of a rim; bands may be used again (the \
         second half read again)",
        "USDA, Complete Guide, AIB 539, 2015, guide 1 p. 1-13; University of Missouri Extension, Get ready \
         for home canning season, page read in 2026",
    ),
    may_i(
        "May I fill hot jam into hot jars and let them seal by themselves?",
        "open-kettle canning",
        "open-kettle",
        "msu-unsafe-methods",
        "Food filled hot and closed without a process is not made shelf-stable, and its seal deceives (read \
         again in the bulletin of 2020)",
        "Michigan State University Extension, HNI 343, Unsafe Food Preservation Methods, September 2020",
    ),
    may_i(
        "May I turn the jars upside down instead?",
        "turning jars upside down",
        "open-kettle",
        "msu-unsafe-methods",
        "Inverting hot jars is one of the methods named as unsafe (read again in the bulletin of 2020)",
        "Michigan State University Extension, HNI 343, Unsafe Food Preservation Methods, September 2020",
    ),
    may_i(
        "May I can in the oven?",
        "canning in the oven",
        "oven-canning",
        "msu-unsafe-methods",
        "Dry air heats unevenly and jars may burst; only water or steam heats a jar as it was tested (read \
         again in the bulletin of 2020)",
        "Michigan State University Extension, HNI 343, Unsafe Food Preservation Methods, September 2020",
    ),
    may_i(
        "May I can in the dishwasher?",
        "dishwasher canning",
        "dishwasher-canning",
        "msu-unsafe-methods",
        "Ovens, microwave ovens and dishwashers do not prevent all risks of spoilage (read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 1, equipment and methods not recommended",
    ),
    may_i(
        "May I can in the microwave?",
        "microwave canning",
        "microwave-canning",
        "psu-laborde-2016",
        "Ovens, microwave ovens and dishwashers do not prevent all risks of spoilage (read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 1, equipment and methods not recommended; Penn State \
         Extension, 2016",
    ),
    may_i(
        "May my electric multi-cooker be the pressure canner?",
        "electric multi-cooker",
        "electric-multicooker",
        "uwex-multicooker-2016",
        "The processes were worked out for stove-top canners; what happens in a jar in these cookers was \
         not followed",
        "National Center text on a University of Wisconsin county page, Canning in Electric Multi-Cookers, \
         25 July 2016",
    ),
    may_i(
        "May I can in a small pressure cooker?",
        "small pressure cooker",
        "pressure-saucepan",
        "usda-aib539-1994-text",
        "A canner holds at least four quart jars; smaller pans heat and cool too quickly",
        "USDA, Complete Guide, AIB 539, 1994, recommended canners, part 1",
    ),
    may_i(
        "May I reuse mayonnaise jars?",
        "mayonnaise jars",
        "one-trip-jars",
        "usda-aib539-2015-text",
        "Such jars break and fail to seal more often, above all under pressure",
        "USDA, Complete Guide, AIB 539, 2015, guide 1 p. 1-13",
    ),
    may_i(
        "May I use half-gallon jars?",
        "half-gallon jars",
        "oversize-jars",
        "nmsu-e316",
        "Quarts are the largest jars of the tables; half-gallons are printed for apple and grape juice only",
        "New Mexico State University Extension, Guide E-316, no year, general canning procedures; USDA, AIB \
         539, 1994, guide 2, apple juice and grape juice",
    ),
    may_i(
        "May I seal jelly with wax?",
        "paraffin",
        "paraffin-seal",
        "usda-aib539-2015-text",
        "Wax seals poorly and lets mould in; jelly gets a lid and a short process",
        "USDA, Complete Guide, AIB 539, 2015, guide 1 p. 1-30",
    ),
    may_i(
        "Will an aspirin in each jar do?",
        "aspirin in tomatoes",
        "aspirin-or-chemical-canning",
        "nchfp-web",
        "Canning powders preserve nothing and take the place of no heat (the powders read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 1; National Center, web pages of 2006 to 2018, FAQ \
         Canning, aspirin question",
    ),
    may_i(
        "May I add vinegar to green beans and leave out the pressure?",
        "green beans with vinegar",
        "vinegar-does-not-replace-pressure",
        "nchfp-web",
        "Some vinegar does not make beans a pickle; only the tested dilled beans go into boiling water",
        "National Center for Home Food Preservation, web pages of 2006 to 2018, FAQ Canning, green beans \
         question",
    ),
    may_i(
        "May I shorten the time with 20 pounds of pressure?",
        "20 pounds of pressure",
        "pressure-over-15",
        "usda-aib539-2015-text",
        "Pressures above 15 pounds are not recommended with new canners (read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 1, and 2015, guide 1 p. 1-10",
    ),
    may_i(
        "May I use the sea-level time in the mountains?",
        "sea-level times",
        "canning-without-altitude",
        "uwyo-unsafe",
        "Sea-level times may let food spoil from 1,000 feet up, because water boils cooler there (read again)",
        "USDA, Complete Guide, AIB 539, 1994, guide 1, process adjustments at high altitudes; University of \
         Wyoming, Unsafe home canning practices",
    ),
];

#[test]
fn practices_get_the_answer_an_educator_would_sign() {
    put(ALL);
}
