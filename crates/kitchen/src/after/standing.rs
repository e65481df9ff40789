//! The standing questions of the season, in the words people ask them, with the row each answer must rest on.
//!
//! The row names its publication; that the row says what is printed there is held by the pins of its table.

use almanac::Almanac;
use serde_json::Value;

use super::tests::{almanac, almanac_without, at};
use super::*;

/// A question, the verdict it must get, and the row that must stand under it.
struct Standing {
    asked: Asked,
    verdict: &'static str,
    rule: &'static str,
}

enum Asked {
    Sign(&'static str),
    /// The food, where it is, what a thermometer reads, for how long.
    Food(&'static str, &'static str, &'static str, &'static str),
    /// The food, and the day it was made.
    Oil(&'static str, &'static str),
    /// The ferment and its salt, warmth, sign, pH: each may be empty.
    Ferment(&'static str, [&'static str; 4]),
    Dried(&'static str),
    /// How long ago the heat went off, in hours; whether the process was wrong.
    Seals(u32, bool),
    /// How long ago the pot came off the heat, in hours; what it reads.
    Pot(u32, &'static str),
}

use Asked::{Dried, Ferment, Food, Oil, Pot, Seals, Sign};

const STANDING: &[Standing] = &[
    Standing { asked: Sign("the lid is bulging"), verdict: "discard", rule: "SPO-01" },
    Standing { asked: Sign("dried streaks down the side"), verdict: "discard", rule: "SPO-02" },
    Standing { asked: Sign("tiny bubbles keep rising"), verdict: "discard", rule: "SPO-03" },
    Standing { asked: Sign("it spurted when I opened it"), verdict: "discard", rule: "SPO-04" },
    Standing { asked: Sign("there is a bit of mold on the jam"), verdict: "discard", rule: "SPO-04" },
    Standing { asked: Sign("my beans are cloudy"), verdict: "discard", rule: "SPO-06" },
    Standing { asked: Sign("I did the beans in a water bath"), verdict: "discard", rule: "SPO-07" },
    Standing { asked: Sign("it looks fine, can I taste it"), verdict: "ask", rule: "SPO-08" },
    Standing { asked: Sign("the lid did not seal"), verdict: "as-unsealed", rule: "REPRO-01" },
    Standing { asked: Sign("more than half the liquid is gone"), verdict: "use-soon", rule: "LIQ-02" },
    Standing { asked: Sign("can I open it and add liquid"), verdict: "ask", rule: "LIQ-03" },
    Standing { asked: Sign("the fruit floats"), verdict: "quality", rule: "LOOK-01" },
    Standing { asked: Sign("rust on the lid"), verdict: "quality", rule: "LOOK-06" },
    Standing { asked: Sign("the jar froze in the garage"), verdict: "quality", rule: "LOOK-10" },
    Standing { asked: Sign("how do I throw it away"), verdict: "told", rule: "SPO-09" },
    Standing { asked: Seals(13, false), verdict: "look", rule: "REPRO-01" },
    Standing { asked: Seals(25, false), verdict: "too-late", rule: "REPRO-09" },
    Standing { asked: Seals(3, true), verdict: "too-late", rule: "REPRO-02" },
    Standing { asked: Food("chicken", "freezer", "38 F", ""), verdict: "refreeze", rule: "FRZ-01a" },
    Standing { asked: Food("chicken", "freezer", "50 F", "3 h"), verdict: "discard", rule: "FRZ-01b" },
    Standing { asked: Food("ice cream", "freezer", "35 F", ""), verdict: "discard", rule: "FRZ-05a" },
    Standing { asked: Food("strawberries", "freezer", "55 F", "9 h"), verdict: "refreeze", rule: "FRZ-11b" },
    Standing { asked: Food("milk", "refrigerator", "45 F", "3 h"), verdict: "discard", rule: "FRG-07" },
    Standing { asked: Food("butter", "refrigerator", "60 F", "9 h"), verdict: "keep", rule: "FRG-08" },
    Standing { asked: Food("eggs", "refrigerator", "45 F", ""), verdict: "discard", rule: "FRG-09" },
    Standing { asked: Food("kraut", "refrigerator", "60 F", "9 h"), verdict: "ask", rule: "FRG-28" },
    Standing { asked: Oil("garlic", "2026-09-10"), verdict: "refrigerate", rule: "OIL-01" },
    Standing { asked: Oil("garlic", "2026-09-01"), verdict: "discard", rule: "OIL-01" },
    Standing { asked: Oil("hot peppers", "2026-09-09"), verdict: "discard", rule: "OIL-04" },
    Standing { asked: Ferment("sauerkraut", ["2.25 %", "", "", ""]), verdict: "care", rule: "FSALT-03" },
    Standing { asked: Ferment("sauerkraut", ["1.5 %", "", "", ""]), verdict: "do-not", rule: "FSALT-01" },
    Standing { asked: Ferment("sauerkraut", ["", "80 F", "", ""]), verdict: "do-not", rule: "FTEMP-04" },
    Standing { asked: Ferment("kraut", ["", "", "white scum", ""]), verdict: "care", rule: "FSIGN-04" },
    Standing {
        asked: Ferment("kraut", ["", "", "pink and slimy", "3.3"]),
        verdict: "discard",
        rule: "FSIGN-07",
    },
    Standing { asked: Ferment("kimchi", ["", "", "", "4.9"]), verdict: "do-not", rule: "FPH-01" },
    Standing { asked: Ferment("pepper mash", ["", "", "", "3.2"]), verdict: "not-tested", rule: "FGAP-01" },
    Standing { asked: Dried("drops on the lid"), verdict: "dry-again", rule: "DRY-11" },
    Standing { asked: Dried("mold on one piece"), verdict: "discard", rule: "DRY-13" },
    Standing { asked: Pot(1, "110 F"), verdict: "on-the-way", rule: "COOL-01" },
    Standing { asked: Pot(3, "110 F"), verdict: "too-late", rule: "COOL-01" },
];

/// The answer as JSON, and what it comes to.
fn answer(almanac: &Almanac, asked: &Asked) -> Option<(Value, Value)> {
    let now = at("2026-09-12 23:10");
    let some = |text: &str| Some(text.to_owned()).filter(|text| !text.is_empty());
    let hours_ago = |hours: u32| format!("2026-09-{:02} {:02}:10", 12 - hours / 24, 23 - hours % 24);
    let json = match asked {
        Sign(seen) => {
            let words = SignWords { seen: vec![(*seen).to_owned()], lost: None };
            serde_json::to_value(look_at_signs(almanac, &words).ok()?)
        }
        Food(food, place, temp, warm) => {
            let words = OutageWords {
                about: vec![(*food).to_owned()],
                place: some(place),
                temp: some(temp),
                warm_for: some(warm),
                ..OutageWords::default()
            };
            serde_json::to_value(judge_outage(almanac, &words, &now).ok()?)
        }
        Oil(food, made) => {
            let words = OilWords { food: (*food).to_owned(), made: some(made), stood_warm: false };
            serde_json::to_value(date_oil(almanac, &words, &now).ok()?)
        }
        Ferment(product, [salt, temp, seen, ph]) => {
            let words = FermentWords {
                product: (*product).to_owned(),
                salt: some(salt),
                temp: some(temp),
                started: None,
                seen: some(seen).into_iter().collect(),
                ph: some(ph),
            };
            serde_json::to_value(look_at_ferment(almanac, &words, &now).ok()?)
        }
        Dried(seen) => {
            let words = DriedWords { seen: vec![(*seen).to_owned()], ..DriedWords::default() };
            serde_json::to_value(look_at_dried(almanac, &words, &now).ok()?)
        }
        Seals(hours, wrong) => {
            let words = SealsWords { heat_off: Some(hours_ago(*hours)), process_was_wrong: *wrong };
            serde_json::to_value(plan_seals(almanac, &words, &now).ok()?)
        }
        Pot(hours, temp) => {
            let words = CoolingWords { off: hours_ago(*hours), temp: some(temp) };
            serde_json::to_value(plan_cooling(almanac, &words, &now).ok()?)
        }
    };
    let json = json.expect("an answer is written as JSON");
    let verdict = [&json["verdict"], &json["state"], &json["foods"][0]["verdict"]];
    let verdict = verdict.into_iter().find(|found| found.is_string()).cloned().unwrap_or_default();
    Some((json, verdict))
}

#[test]
fn the_standing_questions_get_their_answers() {
    for standing in STANDING {
        let (json, verdict) = answer(almanac(), &standing.asked).expect("a standing question is understood");
        assert_eq!(verdict, standing.verdict, "{}: {json:#}", standing.rule);
        assert!(json.to_string().contains(&format!("\"{}\"", standing.rule)), "{}: {json:#}", standing.rule);
    }
}

#[test]
fn without_its_row_no_standing_question_keeps_its_answer() {
    for standing in STANDING {
        let table = match standing.asked {
            Sign(_) | Seals(..) => almanac::Table::Signs,
            Food(..) => almanac::Table::Outage,
            Oil(..) => almanac::Table::Oil,
            Ferment(..) => almanac::Table::FermentRules,
            Dried(_) => almanac::Table::Dried,
            Pot(..) => almanac::Table::Cooling,
        };
        let without = almanac_without(table, standing.rule);
        let whole = answer(almanac(), &standing.asked);
        assert_ne!(answer(&without, &standing.asked), whole, "{}", standing.rule);
    }
}
