//! What the demo days show: a day of choices, and the same day twice.

use kitchen::answer::{ClockLine, LineAttention};
use kitchen::plan_day;

use crate::days::{ALMANAC, DEMO, METRIC};

#[test]
fn the_demo_day_shows_a_refusal_with_what_to_do_instead() {
    let refusal = DEMO.answer.refusals.iter().find(|refusal| refusal.wish.contains("pumpkin"));
    let refusal = refusal.expect("pumpkin puree has no process");
    assert_eq!(refusal.verdict, "do not");
    assert!(!refusal.because.is_empty() && !refusal.instead.is_empty() && refusal.source.is_some());
}

#[test]
fn the_demo_day_shows_a_shortage_of_one_size_of_lid() {
    let short = DEMO.answer.not_made.iter().find(|not_made| not_made.why.contains("wide-mouth lids"));
    assert!(short.is_some(), "{:?}", DEMO.answer.not_made);
}

#[test]
fn the_demo_day_shows_a_choice_with_its_reason() {
    let chosen_over = |not_made: &&kitchen::answer::NotMade| {
        ["goes into", "the day is full"].iter().any(|why| not_made.why.contains(why))
    };
    assert!(DEMO.answer.not_made.iter().filter(chosen_over).count() >= 2, "{:?}", DEMO.answer.not_made);
    assert!(DEMO.answer.not_made.iter().all(|not_made| !not_made.why.is_empty()));
    let makes = DEMO.answer.makes.iter().filter(|make| !make.is_errand).count();
    assert!(makes >= 4, "only {makes} things are made of eleven baskets");
}

#[test]
fn the_demo_day_shows_a_leftover_with_a_place_to_go() {
    let basket = DEMO.answer.left_over.iter().find(|left| left.what.contains("blackberries"));
    assert!(basket.is_some(), "7 oz of blackberries are too few for a batch");
    assert!(DEMO.answer.left_over.iter().all(|left| !left.goes_to.is_empty()));
}

#[test]
fn the_demo_day_does_other_work_while_the_dough_rises() {
    let errand = |line: &&ClockLine| line.make == "bread";
    let rises = DEMO.answer.clock.iter().filter(errand).filter(|line| line.act.contains("rise"));
    let used = rises.flat_map(|rise| {
        DEMO.answer.clock.iter().filter(move |line| {
            line.make != "bread"
                && line.attention == LineAttention::Hands
                && line.from < rise.to
                && rise.from < line.to
        })
    });
    assert!(used.count() >= 2, "the waits of the errand are used");
}

#[test]
fn the_must_of_the_demo_day_is_made() {
    let tomatoes = |make: &&kitchen::answer::Make| make.from.iter().any(|from| from.contains("tomatoes"));
    assert!(DEMO.answer.makes.iter().any(|make| tomatoes(&make)));
    assert!(DEMO.answer.clash.is_empty());
}

#[test]
fn a_day_planned_twice_gives_the_same_bytes() {
    for planned in [&*DEMO, &*METRIC] {
        let again = plan_day(&ALMANAC, &planned.day);
        let bytes = |answer| serde_json::to_vec(answer).expect("an answer is plain data");
        assert!(bytes(&planned.answer) == bytes(&again), "{}", planned.answer.date);
    }
}

#[test]
fn the_metric_day_speaks_grams_and_makes_its_kraut() {
    let answer = &METRIC.answer;
    assert!(answer.makes.iter().any(|make| make.formula.as_deref() == Some("sauerkraut")));
    assert!(answer.later.iter().any(|line| line.what.contains("ferment")), "{:?}", answer.later);
    let weights = answer.makes.iter().flat_map(|make| &make.from);
    assert!(weights.clone().count() > 0);
    assert!(weights.clone().all(|from| !from.contains(" lb ") && !from.contains(" oz ")), "{weights:?}");
}
