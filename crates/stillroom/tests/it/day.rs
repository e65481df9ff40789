//! `stillroom day` and the day that is planned when nothing is asked.

use crate::program::{no_file, program, read, run, scratch, word};

const PROBLEM: &str = r#"{ "format": "day-problem/1", "horizon": 60, "resources": [ {"id": "hands", "capacity": 1} ],
  "stock": {"jar": 2},
  "projects": [ { "id": "beans", "must": false, "options": [ { "id": "two", "value": 8, "consumes": {"jar": 2},
    "steps": [ {"id": "trim", "minutes": 20, "needs": {"hands": 1}} ], "lags": [], "holds": [] } ] } ] }"#;

#[test]
fn a_problem_is_solved_and_its_plan_checked() {
    let problem = scratch("day/problem.json", PROBLEM.as_bytes());
    let solved = run(&["day", "solve", word(&problem)]);
    assert_eq!((solved.code, solved.err.as_str()), (0, ""), "{}", solved.whole());
    let plan = scratch("day/plan.json", solved.out.as_bytes());
    let checked = run(&["day", "check", word(&problem), word(&plan)]);
    assert_eq!((checked.code, checked.out.as_str()), (0, "the plan keeps every rule: value 8, finish 20\n"));
    let piped = program(&["day", "check", word(&problem), "-"]).write_stdin(solved.out).output();
    assert_eq!(read(piped.expect("the program starts")).code, 0);
}

#[test]
fn a_plan_that_breaks_rules_is_told_every_one() {
    let problem = scratch("day/problem-2.json", PROBLEM.as_bytes());
    let plan = scratch(
        "day/late-plan.json",
        br#"{ "format": "day-plan/1", "value": 9, "finish": 70, "proved": "no", "bound": {"value": 9, "finish": null},
            "chosen": [ {"project": "beans", "option": "two", "starts": {"trim": 50}} ] }"#,
    );
    let ran = run(&["day", "check", word(&problem), word(&plan)]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    assert!(ran.out.lines().count() >= 2, "the late end and the false value: {}", ran.out);
}

#[test]
fn a_problem_that_cannot_be_met_ends_with_three_and_a_document() {
    let problem = scratch(
        "day/impossible.json",
        PROBLEM
            .replace("\"must\": false", "\"must\": true")
            .replace("\"jar\": 2}", "\"jar\": 1}")
            .replacen("\"consumes\": {\"jar\": 1}", "\"consumes\": {\"jar\": 2}", 1)
            .as_bytes(),
    );
    let ran = run(&["day", "solve", word(&problem)]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.whole());
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["proved"], "infeasible");
}

#[test]
fn documents_that_are_none_are_wrong_questions() {
    let junk = scratch("day/junk.json", b"\xff\xfe\x00junk");
    run(&["day", "solve", word(&junk)]).expect_wrong_question("not UTF-8");
    let misspelt = scratch("day/misspelt.json", PROBLEM.replace("horizon", "horizont").as_bytes());
    let ran = run(&["day", "solve", word(&misspelt)]);
    ran.expect_wrong_question("horizont");
    assert!(ran.err.contains("misspelt.json"), "{}", ran.err);
    run(&["day", "solve", word(&no_file("day/nowhere.json"))]).expect_world_failed("cannot be read");
}

#[test]
fn a_new_day_file_is_written_once_and_plans() {
    let printed = run(&["day", "new"]);
    assert_eq!((printed.code, printed.err.as_str()), (0, ""));
    scratch("new/folder", b"");
    let file = no_file("new/day.toml");
    let written = run(&["day", "new", word(&file)]);
    assert_eq!(written.code, 0, "{}", written.whole());
    assert_eq!(std::fs::read_to_string(&file).unwrap(), printed.out);
    std::fs::write(&file, "mine").unwrap();
    run(&["day", "new", word(&file)]).expect_world_failed("--force");
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "mine", "what stands there is not lost");
    assert_eq!(run(&["day", "new", word(&file), "--force"]).code, 0);
    let planned = run(&["day", word(&file)]);
    assert_eq!(planned.code, 0, "{}", planned.whole());
}

#[test]
fn nothing_asked_plans_the_invented_day() {
    let ran = run(&[]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
    for part in ["To make", "The day", "Not made, and why", "Left over", "Refused"] {
        assert!(ran.out.contains(part), "{part} in {}", ran.out);
    }
    assert_eq!(run(&[]).out, ran.out, "the same day twice is the same sheet");
}

#[test]
fn the_invented_day_has_no_path_of_its_own() {
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/day.toml");
    assert_eq!(run(&["day", demo]).out, run(&[]).out);
}

#[test]
fn a_day_is_json_or_a_page_on_request() {
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/day.toml");
    let ran = run(&["day", demo, "--json"]);
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "day-answer/1");
    assert_eq!(json["problem"]["format"], "day-problem/1");
    assert_eq!(json["plan"]["format"], "day-plan/1");
    let page = no_file("day.html");
    let ran = run(&["day", demo, "--html", word(&page)]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    let html = std::fs::read_to_string(&page).unwrap();
    assert!(html.starts_with("<!doctype html>"));
    assert!(!html.contains("<script"));
    run(&["day", demo, "--html", "/no/such/folder/day.html"]).expect_world_failed("is not written");
}

#[test]
fn a_figure_explains_itself_or_says_what_may_be_asked() {
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/day.toml");
    let ran = run(&["day", demo, "--why", "finish"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    assert!(ran.out.contains("finish"), "{}", ran.out);
    run(&["day", demo, "--why", "frobnicate"]).expect_wrong_question("ask about");
}

#[test]
fn every_fault_of_a_day_file_is_told_with_its_place() {
    let file = scratch("faulty/day.toml", b"date = 2026-08-29\naltitude = \"high\"\nfrobs = 3\n");
    let ran = run(&["day", word(&file)]);
    ran.expect_wrong_question("day.toml:2:");
    assert!(ran.err.contains("day.toml:3:1"), "{}", ran.err);
}

#[test]
fn bytes_that_are_no_day_are_told_and_never_panic() {
    for (name, bytes) in [
        ("junk.toml", b"\x00\xff\xfe\x01".to_vec()),
        ("long.toml", b"# a long line\n".repeat(800_000)),
        ("bom.toml", b"\xef\xbb\xbfdate = nonsense\r\n".to_vec()),
    ] {
        let file = scratch(&format!("bytes/{name}"), &bytes);
        let ran = run(&["day", word(&file)]);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{name}: {}", ran.whole());
        assert!(ran.err.contains("hint:") && !ran.err.contains("panicked"), "{name}: {}", ran.err);
    }
    run(&["day", word(&no_file("bytes/nowhere.toml"))]).expect_world_failed("cannot be read");
}
