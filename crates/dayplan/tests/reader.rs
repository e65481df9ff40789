//! Documents as they should not be: each ends in faults with their places, none in a panic or a hang.

#![expect(clippy::unwrap_used, reason = "a test reads data that is in the tree")]

use dayplan::{Budget, Fault, Plan, Problem, check, solve};

const DAY: &str = r#"{"format":"day-problem/1","horizon":90,"stock":{"jar":4},
    "resources":[{"id":"hands","capacity":1,"closed":[[20,30],[25,35]]},{"id":"pot","capacity":1}],
    "projects":[{"id":"jam","must":true,"options":[{"id":"o","value":7,"consumes":{"jar":3},
      "steps":[{"id":"a","minutes":10,"needs":{"hands":1},"earliest":2,"latest_end":60},{"id":"b","minutes":5}],
      "lags":[{"from":"a","to":"b","min":-3,"max":9}],
      "holds":[{"resource":"pot","amount":1,"from":"a","to":"b"}]}]},
      {"id":"beans","options":[{"id":"o","value":3,"steps":[{"id":"s","minutes":12,"needs":{"hands":1}}]}]}]}"#;

fn faults_of(text: &str) -> Vec<String> {
    Problem::from_json(text).unwrap_err().iter().map(Fault::to_string).collect()
}

fn says(text: &str, path: &str, words: &str) {
    let faults = faults_of(text);
    let found = faults.iter().any(|f| f.starts_with(path) && f.contains(words) && f.contains("hint: "));
    assert!(found, "no fault at {path:?} with {words:?} in {faults:?}");
}

#[test]
fn what_is_beyond_the_limits_is_told_with_its_place() {
    says(&DAY.replace("\"horizon\":90", "\"horizon\":18446744073709551616"), "horizon", "whole number");
    says(&DAY.replace("\"horizon\":90", "\"horizon\":1e400"), "", "out of range");
    says(&DAY.replace("\"value\":7", "\"value\":4294967297"), "projects[0].options[0].value", "4294967297");
    says(
        &DAY.replace("\"min\":-3", "\"min\":-9223372036854775809"),
        "projects[0].options[0].lags[0].min",
        "whole",
    );
    says(&DAY.replace("\"amount\":1,", "\"amount\":-1,"), "projects[0].options[0].holds[0].amount", "-1");
    says(
        &DAY.replace("\"to\":\"b\",\"min\"", "\"to\":\"s\",\"min\""),
        "projects[0].options[0].lags[0].to",
        "steps",
    );
    says(&DAY.replace("[20,30]", "[30,20]"), "resources[0].closed[0]", "earlier");
    says(&DAY.replace("\"minutes\":5", "\"minutes\":5,\"minutes\":6"), "", "\"minutes\" stands twice");
}

#[test]
fn lists_that_are_too_long_are_told_with_their_place() {
    let step = |k: usize| format!(r#"{{"id":"x{k}","minutes":1}}"#);
    let steps = |n: usize| (0..n).map(step).collect::<Vec<_>>().join(",");
    let long =
        DAY.replace(r#"{"id":"b","minutes":5}"#, &format!(r#"{{"id":"b","minutes":5}},{}"#, steps(299)));
    says(&long, "projects[0].options[0].steps", "has 301 steps, more than 300");
    let closed = vec!["[1,2]"; 1001].join(",");
    says(&DAY.replace("[20,30]", &closed), "resources[0].closed", "has 1002 intervals, more than 1000");
    let option = |k: usize| format!(r#"{{"id":"o{k}","value":1,"steps":[{}]}}"#, steps(150));
    let options = (0..150).map(option).collect::<Vec<_>>().join(",");
    let many = format!(
        r#"{{"format":"day-problem/1","horizon":9,"resources":[],"projects":[{{"id":"p","options":[{options}]}}]}}"#
    );
    says(&many, "projects", "has 22500 steps in all, more than 20000");
}

#[test]
fn ten_megabytes_of_nesting_are_one_fault() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let times = 10_000_000 / (open.len() + close.len());
        let text = format!("{}1{}", open.repeat(times), close.repeat(times));
        assert_eq!(faults_of(&text).len(), 1);
        assert!(Plan::from_json(&text).is_err());
    }
    assert_eq!(faults_of(&" ".repeat((16 << 20) + 1)).len(), 1);
    says(&" ".repeat((16 << 20) + 1), "the text has", "more than 16777216");
}

#[test]
fn a_long_list_of_faults_is_read_to_its_end() {
    let wrong = vec!["7"; 200_000].join(",");
    let text = format!(r#"{{"format":"day-problem/1","horizon":9,"resources":[{wrong}],"projects":[]}}"#);
    assert!(faults_of(&text).len() >= 200_000);
}

/// A fixed sequence of numbers that look random.
struct Draws(u64);

impl Draws {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % n
    }
}

/// Pieces that a hand or a faulty program may put where they do not belong.
const PIECES: [&str; 18] = [
    "0",
    "-1",
    "1e9",
    "1000000",
    "1000001",
    "0.5",
    "null",
    "true",
    "\"\"",
    "\"hands\"",
    "[]",
    "{}",
    ",",
    ":",
    "}",
    "]",
    "\\",
    "\u{1f353}",
];

/// The text with one to four pieces cut out, doubled, swapped or put in, at any letter.
fn spoil(text: &str, draws: &mut Draws) -> String {
    let mut letters: Vec<char> = text.chars().collect();
    for _ in 0..=draws.below(4) {
        let from = draws.below(letters.len() + 1);
        let to = (from + draws.below(12)).min(letters.len());
        let piece: Vec<char> = match draws.below(4) {
            0 => Vec::new(),
            1 => [&letters[from..to], &letters[from..to]].concat(),
            2 => PIECES[draws.below(PIECES.len())].chars().collect(),
            _ => {
                let other = draws.below(letters.len() + 1);
                letters[other..(other + 9).min(letters.len())].to_vec()
            }
        };
        letters.splice(from..to, piece);
    }
    letters.into_iter().collect()
}

/// The text with one number in it replaced.
fn renumber(text: &str, draws: &mut Draws) -> String {
    let places: Vec<usize> = text
        .char_indices()
        .filter(|&(k, c)| {
            c.is_ascii_digit() && !text[..k].ends_with(|b: char| b.is_ascii_alphanumeric() || b == '/')
        })
        .map(|(k, _)| k)
        .collect();
    let from = places[draws.below(places.len())];
    let to = from + text[from..].find(|c: char| !c.is_ascii_digit()).unwrap_or(0);
    let number = ["0", "1", "2", "5", "40", "90", "91", "-7", "1000000"][draws.below(9)];
    format!("{}{number}{}", &text[..from], &text[to..])
}

#[test]
fn spoiled_days_are_refused_or_planned_and_never_a_panic() {
    let mut draws = Draws(20);
    let (mut read, mut refused) = (0, 0);
    for k in 0..6_000 {
        let text = if k % 2 == 0 { spoil(DAY, &mut draws) } else { renumber(DAY, &mut draws) };
        let problem = match Problem::from_json(&text) {
            Ok(problem) => problem,
            Err(faults) => {
                refused += 1;
                assert!(!faults.is_empty(), "{text}");
                continue;
            }
        };
        read += 1;
        assert_eq!(Problem::from_json(&problem.to_json()), Ok(problem.clone()), "{text}");
        let plan = solve(&problem, Budget::work(20_000));
        assert_eq!(check(&problem, &plan), vec![], "{text}");
    }
    assert!(read > 1_000 && refused > 1_000, "{read} read, {refused} refused: too one-sided to say much");
}

#[test]
fn spoiled_plans_are_refused_or_judged_and_never_a_panic() {
    let problem = Problem::from_json(DAY).unwrap();
    let plan = solve(&problem, Budget::default()).to_json();
    let mut draws = Draws(21);
    let (mut kept, mut broken) = (0, 0);
    for k in 0..4_000 {
        let text = if k % 2 == 0 { spoil(&plan, &mut draws) } else { renumber(&plan, &mut draws) };
        let Ok(plan) = Plan::from_json(&text) else { continue };
        if check(&problem, &plan).is_empty() {
            kept += 1;
        } else {
            broken += 1;
        }
    }
    assert!(kept > 20 && broken > 200, "{kept} kept, {broken} broken: too one-sided to say much");
}
