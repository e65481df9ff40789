//! Jars, canners, gauges and heights.

use almanac::Verdict::{DoNot, NotTested};
use batch::clear::Because;

use crate::question::{Answer, Question, boiled, on_dial, put};

pub const ALL: &[Question] = &[
    Question {
        asked: "How long for crushed tomatoes? I do not know how high I live.",
        altitude: "",
        answer: Answer::Asks("the altitude is missing"),
        rests_on: "The time goes by the altitude; who does not know it asks the county extension agent \
                   (read again)",
        source: "USDA, Complete Guide, AIB 539, 1994, guide 1, process adjustments at high altitudes",
        ..boiled("tomatoes-crushed", "hot", "quart")
    },
    Question {
        asked: "May I can salsa in quarts?",
        answer: Answer::Not(DoNot, Because::JarTooLarge),
        cites: "nmsu-e316",
        rests_on: "The table of chile salsa prints pints and no larger jar (read again)",
        source: "Oklahoma State University Extension, Chile Salsa, table 1, page read in 2026",
        ..boiled("salsa-chile", "hot", "quart")
    },
    Question {
        asked: "And salsa in half-pints?",
        answer: Answer::Tested(&[(15, None)]),
        cites: "usda-aib539-1994-text",
        rests_on: "A jar smaller than the printed one takes the time of the printed one",
        source: "USDA, Complete Guide, AIB 539, 1994, guide 3, chile salsa; Kansas State University, \
                 Canning in odd sized jars, 2022",
        ..boiled("salsa-chile", "hot", "half-pint")
    },
    Question {
        asked: "May I can grape juice in half-gallons?",
        answer: Answer::Tested(&[(10, None)]),
        cites: "usda-aib539-1994-text",
        rests_on: "Half-gallons of grape juice take 10 minutes up to 1,000 feet",
        source: "USDA, Complete Guide, AIB 539, 1994, guide 2, grape juice, table 1",
        ..boiled("grape-juice", "hot", "half-gallon")
    },
    Question {
        asked: "May I can fish in quarts by the pint line?",
        answer: Answer::Not(DoNot, Because::JarTooLarge),
        cites: "nmsu-e316",
        rests_on: "The table of 100 minutes is for pints alone (read again)",
        source: "Michigan State University Extension, Preserving Food Safely, file 01600574, 1997",
        ..on_dial("fish-pints", "raw", "quart")
    },
    Question {
        asked: "May I can green beans in boiling water if I boil them for hours?",
        answer: Answer::Not(DoNot, Because::LowAcid),
        cites: "usda-aib539-1994-text",
        rests_on: "Low-acid food goes into a pressure canner; boiling does not kill the spores",
        source: "USDA, Complete Guide, AIB 539, 1994, recommended canners",
        ..boiled("beans-snap", "raw", "pint")
    },
    Question {
        asked: "May I can beans in a steam canner?",
        canner: "steam",
        answer: Answer::Not(DoNot, Because::LowAcid),
        cites: "nchfp-web",
        rests_on: "Atmospheric steam canners are for acid food with a boiling-water process",
        source: "National Center for Home Food Preservation, web pages of 2006 to 2018, Using Atmospheric \
                 Steam Canners",
        ..boiled("beans-snap", "raw", "pint")
    },
    Question {
        asked: "May I can applesauce in a steam canner?",
        canner: "steam",
        answer: Answer::Tested(&[(20, None)]),
        cites: "uw-steam-2015",
        rests_on: "Acid food takes the boiling-water time in steam, up to 45 minutes",
        source: "University of Wisconsin Extension, steam canner guidelines, July 2015",
        ..boiled("applesauce", "hot", "quart")
    },
    Question {
        asked: "May I steam raw tomatoes in juice for 85 minutes?",
        canner: "steam",
        answer: Answer::Not(DoNot, Because::SteamLimit),
        cites: "nchfp-web",
        rests_on: "A steam canner runs 45 minutes at most, or its water boils away",
        source: "National Center for Home Food Preservation, web pages of 2006 to 2018, Using Atmospheric \
                 Steam Canners",
        ..boiled("tomatoes-whole-juice", "raw", "quart")
    },
    Question {
        asked: "May I raw-pack tomato sauce?",
        answer: Answer::Not(NotTested, Because::PackNotPrinted),
        cites: "ufl-fcs8186",
        rests_on: "Standard tomato sauce is printed as a hot pack only (read again in the guide of 1994)",
        source: "USDA, Complete Guide, AIB 539, 1994, guide 3, standard tomato sauce, tables 1 and 2; \
                 University of Florida, FCS8186, table 1",
        ..boiled("tomato-sauce", "raw", "pint")
    },
    Question {
        asked: "My dial was never tested. May I can beans?",
        gauge_tested: "never",
        answer: Answer::Not(NotTested, Because::GaugeUntested),
        cites: "pnw421",
        rests_on: "Dial gauges are inaccurate and are checked each year before use (read again)",
        source: "Pacific Northwest Extension, PNW 421, Using and Caring for Your Pressure Canner, three \
                 serious errors, copy read in 2026",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "My dial reads half a pound high. What do I hold?",
        gauge_error: "+0.5 psi",
        answer: Answer::Tested(&[(20, Some(12))]),
        cites: "gauge-quote-page",
        rests_on: "11 pounds are printed; what the dial reads too high is put on top, and half pounds go up (that \
                   11 becomes 12 read again; the rounding is ours)",
        source: "Private canning page that quotes the federal guide, read in 2026; USDA, AIB 539, 1994, guide 4, snap \
                 beans",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "My dial reads one pound high. What do I hold?",
        gauge_error: "+1 psi",
        answer: Answer::Not(NotTested, Because::GaugeOff),
        cites: "derived",
        rests_on: "One page quotes the federal guide as replacing a gauge that is off by a pound or more, four \
                   extension pages say more than two: the stricter is used (both read again)",
        source: "Private canning page that quotes the federal guide, read in 2026; Iowa State University Extension, 21 \
                 May 2024",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "My dial reads two and a half pounds high. May I reckon with that?",
        gauge_error: "+2.5 psi",
        answer: Answer::Not(NotTested, Because::GaugeOff),
        cites: "osu-deschutes-gauges",
        rests_on: "A gauge off by more than two pounds is replaced (read again)",
        source: "Oregon State University Extension, Deschutes County, Testing Dial Gauges, page read in 2026; Iowa \
                 State University Extension, 21 May 2024",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "Weighted gauge, 1,001 feet: ten pounds or fifteen?",
        canner: "weighted",
        altitude: "1,001 ft",
        gauge_tested: "",
        answer: Answer::Tested(&[(20, Some(15))]),
        cites: "msu-preserving-food-safely-1997",
        rests_on: "Up to 1,000 feet the 10-pound weight, above it the 15-pound weight (read again)",
        source: "Pacific Northwest Extension, PNW 421, altitude list, copy read in 2026; USDA, AIB 539, \
                 1994, guide 4, snap beans, table 2",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "And at 1,000 feet to the foot?",
        canner: "weighted",
        altitude: "1,000 ft",
        gauge_tested: "",
        answer: Answer::Tested(&[(20, Some(10))]),
        cites: "msu-preserving-food-safely-1997",
        rests_on: "Up to 1,000 feet the 10-pound weight, above it the 15-pound weight (read again)",
        source: "Pacific Northwest Extension, PNW 421, altitude list, copy read in 2026; USDA, AIB 539, \
                 1994, guide 4, snap beans, table 2",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "I live at 8,100 feet. What does the dial have to show?",
        altitude: "8,100 ft",
        answer: Answer::Not(NotTested, Because::AltitudeAboveLastBand),
        cites: "msu-preserving-food-safely-1997",
        rests_on: "The dial tables end at 8,000 feet (read again)",
        source: "USDA, Complete Guide, AIB 539, 1994, guide 4, snap beans, table 1",
        ..on_dial("beans-snap", "raw", "pint")
    },
    Question {
        asked: "I live at 305 metres. How long for pints of applesauce?",
        altitude: "305 m",
        answer: Answer::Tested(&[(20, None)]),
        cites: "usda-aib539-1994-text",
        rests_on: "305 metres are 1,000.7 feet, so the line from 1,001 feet holds: 20 minutes",
        source: "Michigan State University Extension, Preserving Food Safely, file 01600353, 1997; metres \
                 by arithmetic",
        ..boiled("applesauce", "hot", "pint")
    },
];

#[test]
fn vessels_and_heights_get_the_answer_an_educator_would_sign() {
    put(ALL);
}
