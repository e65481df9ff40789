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

/// The invented household's day file, as it stands in the tree.
const DEMO: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/day.toml");

#[test]
fn nothing_asked_plans_the_invented_day_by_the_way_of_any_other() {
    let ran = run(&[]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
    for part in
        ["Done by about", "To make", "The day", "Not made, and why", "Left over", "Refused", "Sources"]
    {
        assert!(ran.out.contains(part), "{part} in {}", ran.out);
    }
    let page = no_file("day.html");
    let by_file = run(&["day", DEMO, "--html", word(&page)]);
    assert_eq!(by_file.out, ran.out, "the same day by its file is the same sheet");
    let html = std::fs::read_to_string(&page).unwrap();
    assert!(html.starts_with("<!doctype html>"));
    for forbidden in ["<script", "http://", "https://"] {
        assert!(!html.contains(forbidden), "{forbidden}");
    }
}

#[test]
fn a_day_is_one_json_document_on_request() {
    let ran = run(&["day", DEMO, "--json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let json: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["format"], "day-answer/1");
    assert_eq!(json["problem"]["format"], "day-problem/1");
    assert_eq!(json["plan"]["format"], "day-plan/1");
    assert!(!json["clearances"].as_array().unwrap().is_empty());
    // The plan inside keeps the rules of the problem inside, by the checker anyone may run.
    let problem = scratch("json/problem.json", json["problem"].to_string().as_bytes());
    let plan = scratch("json/plan.json", json["plan"].to_string().as_bytes());
    let checked = run(&["day", "check", word(&problem), word(&plan)]);
    assert_eq!(checked.code, 0, "{}", checked.whole());
}

/// A kitchen with almost nothing in it, which is planned in no time.
const SMALL_DAY: &[u8] =
    b"date = 2026-08-29\naltitude = \"1,200 ft\"\n\n[[basket]]\nproduce = \"peaches\"\nnet = \"3 lb\"\n";

#[test]
fn a_figure_explains_itself_or_says_what_may_be_asked() {
    let file = scratch("small/day.toml", SMALL_DAY);
    let ran = run(&["day", word(&file), "--why", "finish"]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    assert!(ran.out.contains("finish"), "{}", ran.out);
    run(&["day", word(&file), "--why", "frobnicate"]).expect_wrong_question("ask about");
}

#[test]
fn a_page_that_cannot_be_written_is_told() {
    let file = scratch("small-2/day.toml", SMALL_DAY);
    run(&["day", word(&file), "--html", "/no/such/folder/day.html"]).expect_world_failed("is not written");
}

#[test]
fn a_house_file_is_read_beside_the_day_file_or_by_name() {
    let day = scratch("house/day.toml", SMALL_DAY);
    let house = scratch("house/house.toml", b"frobs = 1\n");
    run(&["day", word(&day)]).expect_wrong_question("house.toml:1:1");
    let other = scratch("house/other.toml", b"");
    assert_eq!(run(&["day", word(&day), "--house", word(&other)]).code, 0);
    run(&["day", word(&day), "--house", word(&no_file("house/none.toml"))]).expect_world_failed("none.toml");
    std::fs::remove_file(house).unwrap();
    assert_eq!(run(&["day", word(&day)]).code, 0, "without a house file the day stands alone");
}

#[test]
fn a_day_may_come_through_a_pipe() {
    let ran = read(program(&["day", "-"]).write_stdin(SMALL_DAY).output().expect("the program starts"));
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{}", ran.whole());
    assert!(ran.out.contains("Saturday 29 August 2026"), "{}", ran.out);
}

#[test]
fn a_day_without_an_altitude_cans_nothing_and_says_so() {
    let bare = std::str::from_utf8(SMALL_DAY).unwrap().replace("altitude = \"1,200 ft\"\n", "");
    let file = scratch("bare/day.toml", bare.as_bytes());
    let ran = run(&["day", word(&file)]);
    assert_eq!(ran.code, 0, "{}", ran.whole());
    assert!(ran.out.contains("nothing is canned"), "{}", ran.out);
    assert!(!ran.out.contains("Tested."), "{}", ran.out);
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
