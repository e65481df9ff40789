//! Days that slip: what a person says in passing, and what comes of it.

use dayplan::check;
use kitchen::saved::SavedDay;
use kitchen::slip::{SlipAnswer, SlipWords, slip_day};

use crate::days::{BEANS, COOK, KETTLE, LOW, PEACHES, plan};

const JARS: &str = "[[jars]]\nsize = \"pint\"\ncount = 12\n[lids]\nregular = 12";
const HELP: &str = "[[person]]\nname = \"Bo\"\nhours = \"8:00-15:00\"\nbreaks = []";

fn kept() -> SavedDay {
    let answer = plan(&[LOW, COOK, HELP, KETTLE, PEACHES, BEANS, JARS]).answer;
    let json = serde_json::to_string(&answer).expect("an answer is JSON");
    let saved = SavedDay::from_json(&json).expect("an answer can be gone on with");
    assert_eq!(saved.plan, answer.plan);
    saved
}

fn slip(saved: &SavedDay, words: &SlipWords) -> SlipAnswer {
    let mut first = None;
    let told = slip_day(saved, words, &mut |seen| first = Some(seen)).expect("the words name what is there");
    let first = first.expect("the shifted day is shown first");
    assert_eq!(check(&first.problem, &first.plan), vec![]);
    assert_eq!(check(&told.problem, &told.plan), vec![]);
    assert!(told.plan.value >= first.plan.value || told.problem != first.problem);
    told
}

/// An act that somebody works at and that has a later one in its own make, with its clock times and its words.
fn an_act_under_way(saved: &SavedDay, answer: &SlipAnswer) -> (String, u32, u32) {
    let line = answer
        .clock
        .iter()
        .find(|line| line.who.is_some() && line.from > saved.starts && line.to > line.from + 4)
        .expect("somebody works");
    let clock = |minute: u32| format!("{}:{:02}", minute / 60, minute % 60);
    (format!("{} {}", clock(line.from), line.act), line.from, line.to)
}

fn at(minute: u32) -> String {
    format!("{}:{:02}", minute / 60, minute % 60)
}

#[test]
fn a_day_that_goes_as_planned_is_left_alone() {
    let saved = kept();
    let told = slip(&saved, &SlipWords { now: at(saved.starts + 90), ..SlipWords::default() });
    assert_eq!((told.changes.len(), told.troubles.len()), (0, 0), "{:?} {:?}", told.changes, told.troubles);
    assert_eq!(told.taken, ["up to now everything went as planned"]);
}

#[test]
fn what_runs_long_keeps_its_start_and_moves_what_waits_for_it() {
    let saved = kept();
    let calm = slip(&saved, &SlipWords { now: at(saved.starts), ..SlipWords::default() });
    let (act, from, to) = an_act_under_way(&saved, &calm);
    let words = SlipWords { now: at(to - 1), longer: vec![format!("{act}=25 min")], ..SlipWords::default() };
    let told = slip(&saved, &words);
    let line = told.clock.iter().find(|line| line.from == from && line.to == to + 25);
    assert!(line.is_some(), "{act} runs on from {from} to {}", to + 25);
    assert!(!told.changes.is_empty());
    // Its answer is itself a day that can slip again.
    let json = serde_json::to_string(&told).expect("an answer is JSON");
    let again = SavedDay::from_json(&json).expect("a slipped day can be gone on with");
    let later = slip(&again, &SlipWords { now: at(to), ..SlipWords::default() });
    assert!(later.clock.iter().any(|line| line.from == from && line.to == to + 25));
}

#[test]
fn who_is_gone_is_given_nothing_more() {
    let saved = kept();
    let now = saved.starts + 60;
    let told = slip(&saved, &SlipWords { now: at(now), gone: vec!["bo".into()], ..SlipWords::default() });
    let theirs = |line: &&kitchen::answer::ClockLine| line.who.as_deref() == Some("Bo") && line.from >= now;
    assert_eq!(told.clock.iter().filter(theirs).count(), 0);
    assert!(told.taken.iter().any(|line| line == "Bo does not come back today"));
}

#[test]
fn a_make_that_is_given_up_is_gone_and_the_rest_goes_on() {
    let saved = kept();
    let name = saved.names[&saved.plan.chosen[0].project].clone();
    let told = slip(
        &saved,
        &SlipWords { now: at(saved.starts + 30), give_up: vec![name.clone()], ..SlipWords::default() },
    );
    assert!(told.clock.iter().all(|line| line.make != name));
    assert!(told.changes[0].starts_with(&name), "{:?}", told.changes);
}

#[test]
fn words_that_name_nothing_say_what_may_be_named() {
    let saved = kept();
    let said = |words: SlipWords| slip_day(&saved, &words, &mut |_| ()).unwrap_err().to_string();
    let now = at(saved.starts + 30);
    assert!(said(SlipWords { now: "late".into(), ..SlipWords::default() }).contains("no time of day"));
    assert!(
        said(SlipWords { now: "3:00".into(), ..SlipWords::default() }).contains("outside the planned day")
    );
    let longer =
        |words: &str| SlipWords { now: now.clone(), longer: vec![words.into()], ..SlipWords::default() };
    assert!(said(longer("wash")).contains("by how much"));
    assert!(said(longer("juggle=5 min")).contains("hint: name one of \""));
    let gone = SlipWords { now: now.clone(), gone: vec!["Zed".into()], ..SlipWords::default() };
    assert!(said(gone).contains("Ada, Bo"));
    let broken = SlipWords { now, broken: vec!["anvil".into()], ..SlipWords::default() };
    assert!(said(broken).contains("burner"));
}
