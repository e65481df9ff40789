//! Our verdict on plans beside another checker's.
//!
//! `data/agreement.jsonl` holds 200 pairs of problem and plan with the verdict of an independent program written
//! from the same format page, recorded on 25 November 2026. Half of the plans are left as they were made, half are
//! spoiled, each in its own way. When the environment variable `DAY_PROBLEM_CHECK` holds a command, that command
//! is asked too, with `check PROBLEM PLAN` after it; it answers by its exit code.

#![expect(clippy::unwrap_used, reason = "a test reads data that is in the tree")]

use std::path::Path;
use std::process::Command;

use dayplan::{Plan, Problem, check};
use serde_json::Value;

struct Pair {
    what: String,
    keeps: bool,
    problem: String,
    plan: String,
}

fn recorded() -> Vec<Pair> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/agreement.jsonl");
    let text = std::fs::read_to_string(path).unwrap();
    let mut pairs = Vec::new();
    for line in text.lines() {
        let group: Value = serde_json::from_str(line).unwrap();
        for pair in group["pairs"].as_array().unwrap() {
            pairs.push(Pair {
                what: pair["what"].as_str().unwrap().to_owned(),
                keeps: pair["keeps"].as_bool().unwrap(),
                problem: pair.get("problem").unwrap_or(&group["problem"]).to_string(),
                plan: pair["plan"].to_string(),
            });
        }
    }
    pairs
}

fn keeps_every_rule(pair: &Pair) -> bool {
    match (Problem::from_json(&pair.problem), Plan::from_json(&pair.plan)) {
        (Ok(problem), Ok(plan)) => check(&problem, &plan).is_empty(),
        _ => false,
    }
}

#[test]
fn verdicts_agree_with_the_recorded_ones() {
    let pairs = recorded();
    assert_eq!(pairs.len(), 200);
    let kept = pairs.iter().filter(|p| p.keeps).count();
    assert!(
        (80..=130).contains(&kept),
        "{kept} of the recorded plans keep every rule: too one-sided to say much"
    );
    for (k, pair) in pairs.iter().enumerate() {
        assert_eq!(keeps_every_rule(pair), pair.keeps, "pair {k} ({}): {}", pair.what, pair.plan);
    }
    println!("{} recorded pairs agree", pairs.len());
}

#[test]
fn verdicts_agree_with_the_program_named_in_the_environment() {
    let Ok(command) = std::env::var("DAY_PROBLEM_CHECK") else {
        println!("0 pairs asked live: DAY_PROBLEM_CHECK names no program");
        return;
    };
    let mut words = command.split_whitespace();
    let program = words.next().expect("DAY_PROBLEM_CHECK names a program");
    let words: Vec<&str> = words.collect();
    let folder = std::env::temp_dir().join(format!("dayplan-agreement-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let (problem, plan) = (folder.join("problem.json"), folder.join("plan.json"));
    let pairs = recorded();
    for (k, pair) in pairs.iter().enumerate() {
        std::fs::write(&problem, &pair.problem).unwrap();
        std::fs::write(&plan, &pair.plan).unwrap();
        let asked = Command::new(program).args(&words).arg("check").args([&problem, &plan]).output().unwrap();
        assert_eq!(asked.status.success(), keeps_every_rule(pair), "pair {k} ({})", pair.what);
    }
    std::fs::remove_dir_all(&folder).unwrap();
    println!("{} pairs asked live agree", pairs.len());
}
