//! A day of an invented household, written out by hand as a planner would hand it over.

use paper::day::{
    Act, Amount, Attention, BatchAmounts, Cleared, DaySheet, Fetch, Finish, Firmness, Later, MadeToday,
    PersonList, Publication, Reason, Refused,
};

fn words(lines: &[&str]) -> Vec<String> {
    lines.iter().map(|line| (*line).to_owned()).collect()
}

fn amount(what: &str, prep: &str, measure: &str, weight: &str) -> Amount {
    Amount {
        what: what.into(),
        prep: prep.into(),
        measure: measure.into(),
        weight: (!weight.is_empty()).then(|| weight.into()),
        moved: None,
    }
}

fn act(from: &str, to: &str, who: &str, attention: Attention, what: &str, make: &str) -> Act {
    Act {
        from: from.into(),
        to: to.into(),
        who: (!who.is_empty()).then(|| who.into()),
        attention,
        what: what.into(),
        make: make.into(),
        ..Act::default()
    }
}

fn tomatoes() -> MadeToday {
    MadeToday {
        count: Some("7".into()),
        range: Some("6 to 8".into()),
        name: "Crushed tomatoes".into(),
        from: "21 lb of tomatoes, the split ones first".into(),
        yields: "6 to 8 quarts, likely 7".into(),
        keeps: "on the shelf, a year".into(),
        clearance: Some(Cleared {
            verdict: "Tested".into(),
            process: "Boiling water, 50 minutes at a full boil, then 5 minutes with the lid off".into(),
            headspace: "1/2 inch".into(),
            band: "1,001 to 3,000 ft".into(),
            acid: Some("2 tbsp bottled lemon juice, or 1/2 tsp citric acid, into each quart".into()),
            source: "Guide 3, page 3-8 [1]".into(),
        }),
        source: None,
        batches: vec![BatchAmounts {
            heading: "one canner load".into(),
            amounts: vec![
                amount("Tomatoes", "washed, peeled, cored", "21 lb", "9,530 g"),
                amount("Bottled lemon juice", "2 tbsp a jar", "14 tbsp", "213 g"),
                amount("Canning salt", "1 tsp a jar if you like", "2 1/3 tbsp", ""),
            ],
        }],
    }
}

fn pickles() -> MadeToday {
    MadeToday {
        count: Some("6".into()),
        range: Some("5 to 6".into()),
        name: "Bread-and-butter pickles".into(),
        from: "4 lb 8 oz of cucumbers, 1 lb 8 oz of onions".into(),
        yields: "5 to 6 pints, likely 6".into(),
        keeps: "on the shelf, a year".into(),
        clearance: Some(Cleared {
            verdict: "Tested".into(),
            process: "Boiling water, 15 minutes at a full boil".into(),
            headspace: "1/2 inch".into(),
            band: "1,001 to 6,000 ft".into(),
            acid: None,
            source: "Guide 6 [1]".into(),
        }),
        source: Some("Guide 6 [1]".into()),
        batches: vec![BatchAmounts {
            heading: "3/4 of the printed formula".into(),
            amounts: vec![
                amount("Cucumbers", "4 to 5 inch, sliced 3/16 inch", "4 1/2 lb", "2,040 g"),
                amount("Vinegar, 5 percent", "", "3 cups", "717 g"),
                Amount {
                    moved: Some("2.4 % less than the sum".into()),
                    ..amount("Mustard seed", "", "1 1/2 tbsp", "16 g")
                },
            ],
        }],
    }
}

fn clock() -> Vec<Act> {
    use Attention::{Alone, Eyes, Hands};
    vec![
        act(
            "8:30",
            "9:10",
            "Tove",
            Hands,
            "Wash and slice cucumbers and onions.",
            "Bread-and-butter pickles",
        ),
        act("9:10", "12:10", "", Alone, "Cucumbers stand in salt and ice.", "Bread-and-butter pickles"),
        Act {
            detail: words(&[
                "Dip in boiling water 30 to 60 seconds, then in cold.",
                "Slip the skins off, cut out the core.",
            ]),
            ..act("9:15", "10:50", "Tove", Hands, "Peel and core 21 lb of tomatoes.", "Crushed tomatoes")
        },
        act("10:00", "10:40", "Ansel", Eyes, "Dough is rising; turn it once.", "Bread"),
        Act {
            caution: Some(
                "Hot glass. Jars stand in hot water until they are filled; a cold jar cracks.".into(),
            ),
            ..act(
                "11:20",
                "11:45",
                "Tove",
                Hands,
                "Fill 7 quarts to 1/2 inch, acid first.",
                "Crushed tomatoes",
            )
        },
        Act {
            must_not_be_left: true,
            caution: Some("If the boil stops, bring it back and give the full 50 minutes again.".into()),
            ..act("12:05", "12:55", "Ansel", Eyes, "Load 1 at a full boil.", "Crushed tomatoes")
        },
        act(
            "13:00",
            "13:10",
            "Ansel",
            Hands,
            "Lift load 1: 7 quarts on the towel, an inch apart.",
            "Crushed tomatoes",
        ),
    ]
}

/// The whole day.
pub fn sample_day() -> DaySheet {
    let clock = clock();
    let list = |name: &str| PersonList {
        name: name.into(),
        acts: clock.iter().filter(|act| act.who.as_deref() == Some(name)).cloned().collect(),
    };
    DaySheet {
        title: "Saturday 29 August 2026".into(),
        place: "1,340 ft above the sea".into(),
        people: "Tove, 8:30 to 17:00. Ansel, 10:00 to 15:30.".into(),
        finish: Finish {
            time: Some("16:20".into()),
            words: words(&[
                "40 minutes before the day ends.",
                "No better plan exists for what was written down.",
            ]),
        },
        clash: Vec::new(),
        fetch: vec![Fetch {
            what: "White vinegar, 5 percent".into(),
            short: "2 cups".into(),
            shop: "one bottle of 32 fl oz".into(),
            for_what: "Bread-and-butter pickles".into(),
        }],
        evening_before: words(&["Set the ice in trays: about 4 lb for the cucumbers."]),
        makes: vec![tomatoes(), pickles()],
        errands: words(&["two loaves of bread"]),
        lists: vec![list("Tove"), list("Ansel")],
        clock,
        not_made: vec![Reason {
            what: "Peach halves".into(),
            why: "Seven quart lids are short, and the peaches wait two more days.".into(),
        }],
        left_over: vec![Reason { what: "2 lb of tomatoes".into(), why: "Into tonight's soup.".into() }],
        later: vec![Later {
            when: "Sunday".into(),
            what: "Press each lid. One that springs back goes into the refrigerator.".into(),
            make: "Crushed tomatoes".into(),
        }],
        refused: vec![
            Refused {
                wish: "pumpkin purée in pints".into(),
                verdict: "Do not".into(),
                firmness: Firmness::DoNot,
                because: words(&[
                    "No process is known for mashed pumpkin: heat does not reach the middle evenly.",
                ]),
                instead: words(&[
                    "Can it in cubes in a pressure canner, and mash when you open the jar.",
                    "Freeze it mashed.",
                ]),
                source: Some("Guide 4, page 4-20 [1]".into()),
            },
            Refused {
                wish: "rice vinegar in the pickles".into(),
                verdict: "Not tested".into(),
                firmness: Firmness::NotTested,
                because: words(&["It stands in no formula on file."]),
                instead: words(&["White vinegar of 5 percent, cup for cup."]),
                source: None,
            },
        ],
        cautions: words(&["Hot syrup and hot glass: nobody runs through the kitchen while jars are filled."]),
        filled_in: words(&["The peaches wait two to four days."]),
        sources: vec![Publication {
            mark: "[1]".into(),
            title: "USDA Complete Guide to Home Canning, Agriculture Information Bulletin 539, 2015".into(),
        }],
    }
}
