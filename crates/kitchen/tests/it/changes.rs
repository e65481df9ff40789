//! One thing about a day is changed, and the answer moves the right way.

use kitchen::answer::{DayAnswer, Make};

use crate::days::{COOK, CUCUMBERS, KETTLE, LOW, PEACHES, PINTS, Planned, lids, plan};

fn jars(answer: &DayAnswer) -> u32 {
    answer
        .makes
        .iter()
        .filter(|make| make.process.is_some())
        .filter_map(|make| make.containers)
        .map(|c| c[1])
        .sum()
}

/// The small day with some lines more.
fn with(more: &str) -> Planned {
    plan(&[LOW, COOK, KETTLE, PEACHES, CUCUMBERS, PINTS, &lids(16), more])
}

fn made<'a>(answer: &'a DayAnswer, formula: &str) -> Option<&'a Make> {
    answer.makes.iter().find(|make| make.formula.as_deref() == Some(formula))
}

/// A formula that the small day makes of its own accord.
fn first_choice() -> (Planned, String) {
    let plain = with("");
    let formula = plain.answer.makes.iter().find_map(|make| make.formula.clone());
    (plain, formula.expect("something is made of peaches and cucumbers"))
}

#[test]
fn more_lids_never_mean_fewer_jars() {
    let with_lids = |count| plan(&[LOW, COOK, KETTLE, PEACHES, CUCUMBERS, PINTS, &lids(count)]);
    let counts: Vec<u32> = [0, 4, 9, 16].map(|count| jars(&with_lids(count).answer)).to_vec();
    assert_eq!(counts[0], 0, "no lid, no jar");
    assert!(counts.is_sorted(), "{counts:?}");
    assert!(counts[3] > 0);
}

#[test]
fn what_is_not_wanted_today_is_not_made_today() {
    let (_, formula) = first_choice();
    let without = with(&format!("[[wish]]\nnot_today = \"{formula}\""));
    assert!(made(&without.answer, &formula).is_none());
}

#[test]
fn a_must_is_in_the_plan_whatever_else_is_worth_more() {
    let (plain, _) = first_choice();
    let others = ["peach_jam", "peaches_halved", "quick_sweet_cucumber", "bread_butter_cucumber"];
    let other = others.iter().find(|id| made(&plain.answer, id).is_none()).expect("not all fit one day");
    let must = with(&format!("[[wish]]\nmust = \"{other}\""));
    assert!(made(&must.answer, other).is_some(), "{other}: {:?}", must.answer.clash);
}

#[test]
fn what_nobody_eats_is_not_made() {
    let (_, formula) = first_choice();
    let disliked = with(&format!("[likes]\n{formula} = \"not eaten\""));
    assert!(made(&disliked.answer, &formula).is_none());
}

#[test]
fn liking_and_targets_move_the_worth_by_a_named_part() {
    let (plain, formula) = first_choice();
    let worth = |planned: &Planned| made(&planned.answer, &formula).map_or(0.0, |make| make.worth);
    let liked = with(&format!("[likes]\n{formula} = \"much\""));
    assert!(worth(&liked) > worth(&plain));
    let part = |planned: &Planned, name: &str| {
        let make = made(&planned.answer, &formula).expect("it is worth even more");
        make.worth_parts.iter().find(|part| part.part == name).map(|part| part.servings)
    };
    assert!(part(&liked, "liking").is_some_and(|servings| servings > 0.0));
    assert_eq!(part(&plain, "liking"), None);
    let target = |on_shelf: u32| {
        with(&format!(
            "[[wish]]\ntarget = \"{formula}\"\ncontainers = 40\non_shelf = {on_shelf}\nsize = \"pint\""
        ))
    };
    let wanted = target(0);
    assert!(part(&wanted, "target").is_some_and(|servings| servings > 0.0));
    assert!(worth(&wanted) > worth(&plain));
    assert!(worth(&target(40)) < worth(&plain), "a full shelf wants no more");
}
