//! What a day's plan could not make, and what would have helped, held against planning the changed day.

use kitchen::explain::explain_day;
use kitchen::saved::SavedDay;

use crate::days::{BEANS, COOK, KETTLE, LOW, PEACHES, plan};

const FEW_JARS: &str = "[[jars]]\nsize = \"pint\"\ncount = 4\n[lids]\nregular = 4";

#[test]
fn what_helps_is_told_in_order_and_what_does_not_is_named_apart() {
    let answer = plan(&[LOW, COOK, KETTLE, PEACHES, BEANS, FEW_JARS]).answer;
    let saved = SavedDay::of(&answer).expect("the day has a plan");
    let told = explain_day(&saved);
    assert!(told.helps.windows(2).all(|pair| pair[0].gain >= pair[1].gain));
    assert!(told.helps.iter().all(|help| help.gain > 0.0));
    let jars = told.helps.iter().find(|help| help.what == "a dozen regular-mouth pint jars with lids");
    assert!(jars.is_some(), "four jars are too few: {:?}", told.helps);
    let named = told.helps.len() + told.no_help.len();
    assert!(told.no_help.iter().any(|what| what == "one more oven"), "{:?}", told.no_help);
    assert!(named > 8, "a person, an hour, machines, jars and lids are all asked about");
}

#[test]
fn each_make_left_out_has_a_cost_or_a_reason() {
    let answer = plan(&[LOW, COOK, KETTLE, PEACHES, BEANS, FEW_JARS]).answer;
    let saved = SavedDay::of(&answer).expect("the day has a plan");
    let told = explain_day(&saved);
    assert!(!told.left_out.is_empty());
    for left in &told.left_out {
        assert_eq!(
            left.costs.is_some(),
            !left.words.contains("cannot") && !left.words.contains("not settled")
        );
        assert!(!answer.makes.iter().any(|make| make.name == left.name), "{} is made", left.name);
    }
    let again = explain_day(&saved);
    let words = |told: &kitchen::explain::DayExplained| serde_json::to_string(told).expect("it is JSON");
    assert_eq!(words(&told), words(&again));
}
