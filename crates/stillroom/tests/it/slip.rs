//! `stillroom day slip` and `stillroom day explain`: a kept day is gone on with.

use crate::program::{Ran, program, read, run, scratch, word};

/// A small day of two people, planned and kept.
fn kept(name: &str) -> std::path::PathBuf {
    let day = b"date = 2026-08-29\naltitude = \"1,200 ft\"\n\n[[person]]\nname = \"Ada\"\nhours = \"8:00-15:00\"\nbreaks = []\n
[[person]]\nname = \"Bo\"\nhours = \"8:00-15:00\"\nbreaks = []\n\n[[basket]]\nproduce = \"peaches\"\nnet = \"9 lb\"\n";
    let file = scratch(&format!("{name}/day.toml"), day);
    let planned = run(&["day", word(&file), "--json"]);
    assert_eq!(planned.code, 0, "{}", planned.whole());
    scratch(&format!("{name}/today.json"), planned.out.as_bytes())
}

fn fits_the_leaf(ran: &Ran) {
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
}

#[test]
fn a_calm_day_is_told_to_go_on_as_planned() {
    let today = kept("slip-calm");
    let ran = run(&["day", "slip", word(&today), "--now", "8:30"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    assert!(ran.out.contains("Planned again at 8:30."), "{}", ran.out);
    assert!(ran.out.contains("Nothing. Go on as planned."), "{}", ran.out);
    fits_the_leaf(&ran);
}

#[test]
fn a_slipped_day_can_slip_again() {
    let today = kept("slip-again");
    let first = run(&["day", "slip", word(&today), "--now", "8:05", "--longer", "8:00=20 min", "--json"]);
    assert!(matches!(first.code, 0 | 3), "{}", first.whole());
    let then =
        program(&["day", "slip", "-", "--now", "8:40", "--gone", "Bo"]).write_stdin(first.out).output();
    let then = read(then.expect("the program starts"));
    assert!(matches!(then.code, 0 | 3), "{}", then.whole());
    assert!(then.out.contains("Bo does not come back today."), "{}", then.out);
    fits_the_leaf(&then);
}

#[test]
fn words_and_files_that_name_nothing_are_wrong_questions() {
    let today = kept("slip-wrong");
    run(&["day", "slip", word(&today), "--now", "8:30", "--gone", "Zed"]).expect_wrong_question("Ada, Bo");
    run(&["day", "slip", word(&today), "--now", "whenever"]).expect_wrong_question("13:40");
    let junk = scratch("slip-wrong/junk.json", b"{\"format\":\"day-plan/1\"}");
    run(&["day", "slip", word(&junk), "--now", "8:30"]).expect_wrong_question("day-answer/1");
}

#[test]
fn a_kept_day_explains_itself() {
    let today = kept("explained");
    let ran = run(&["day", "explain", word(&today)]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    assert!(ran.out.contains("What would help, the most first"), "{}", ran.out);
    fits_the_leaf(&ran);
    assert_eq!(run(&["day", "explain", word(&today)]).out, ran.out, "the same day has the same answers");
}

#[test]
fn a_kept_day_is_tried_on_a_thousand_days() {
    let today = kept("sturdy");
    let ran = run(&["day", "sturdy", word(&today)]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    assert!(ran.out.contains("Tried on 1000 days"), "{}", ran.out);
    fits_the_leaf(&ran);
    let json = run(&["day", "sturdy", word(&today), "--json"]);
    let json: serde_json::Value = serde_json::from_str(&json.out).expect("it is JSON");
    let finish: Vec<u64> =
        json["finish"].as_array().expect("a list").iter().filter_map(|n| n.as_u64()).collect();
    assert!(finish.windows(2).all(|pair| pair[0] <= pair[1]) && finish[0] < finish[2], "{finish:?}");
    assert_eq!(run(&["day", "sturdy", word(&today)]).out, ran.out);
}
