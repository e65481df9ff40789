//! Every command explains itself, and the guide shows it.

use std::path::Path;

use crate::program::run;

/// Every command with the words that lead to it, as the help lists them.
fn commands() -> Vec<Vec<String>> {
    let mut found = vec![vec![]];
    let mut at = 0;
    while at < found.len() {
        let path: Vec<String> = found[at].clone();
        for name in subcommands(&help_of(&path)) {
            found.push(path.iter().cloned().chain([name]).collect());
        }
        at += 1;
    }
    found
}

fn help_of(path: &[String]) -> String {
    let words: Vec<&str> = path.iter().map(String::as_str).chain(["--help"]).collect();
    let ran = run(&words);
    assert_eq!(ran.code, 0, "{path:?}: {}", ran.whole());
    ran.out
}

fn subcommands(help: &str) -> Vec<String> {
    help.lines()
        .skip_while(|line| *line != "Commands:")
        .skip(1)
        .take_while(|line| line.starts_with("  "))
        .filter(|line| !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| *name != "help")
        .map(str::to_owned)
        .collect()
}

#[test]
fn every_command_has_an_example_of_itself() {
    for path in commands() {
        let help = help_of(&path);
        let (_, examples) =
            help.split_once("Examples:\n").unwrap_or_else(|| panic!("{path:?} has no examples"));
        let called = format!("  {}", [&["stillroom".to_owned()], path.as_slice()].concat().join(" "));
        assert!(examples.lines().any(|line| line.starts_with(&called)), "{path:?} shows no {called}");
    }
}

/// The examples of a help text, each a whole command line.
fn examples(help: &str) -> Vec<String> {
    let (_, examples) = help.split_once("Examples:\n").unwrap_or_default();
    let joined = examples.replace("\\\n", " ");
    let lines = joined.lines().take_while(|line| line.starts_with("  stillroom"));
    lines.map(|line| line.trim().to_owned()).collect()
}

/// The words of a command line, as a shell parts them: `altitude="1,200 ft"` is one.
fn part_words(line: &str) -> Vec<String> {
    let mut words = Vec::new();
    let mut word: Option<String> = None;
    let mut quoted = false;
    for letter in line.chars() {
        match letter {
            '"' => {
                quoted = !quoted;
                word.get_or_insert_default();
            }
            letter if letter.is_whitespace() && !quoted => words.extend(word.take()),
            letter => word.get_or_insert_default().push(letter),
        }
    }
    words.extend(word);
    words
}

#[test]
fn the_examples_of_every_question_answer_it() {
    let mut ran_lines = 0;
    for path in commands() {
        let asks = path.first().is_some_and(|name| {
            matches!(
                name.as_str(),
                "clear"
                    | "fit"
                    | "almanac"
                    | "sign"
                    | "seals"
                    | "outage"
                    | "cool"
                    | "oil"
                    | "keeps"
                    | "ferment"
                    | "dried"
                    | "reckon"
                    | "trouble"
                    | "abroad"
            )
        });
        for line in examples(&help_of(&path)).iter().filter(|_| asks) {
            let words = part_words(line);
            let words: Vec<&str> = words.iter().skip(1).map(String::as_str).collect();
            let ran = run(&words);
            assert!(matches!(ran.code, 0 | 3), "{line}: {}", ran.whole());
            ran_lines += 1;
        }
    }
    assert!(ran_lines > 10, "only {ran_lines} examples were found");
}

#[test]
fn every_command_is_shown_in_the_guide() {
    let guide = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/guide");
    let mut text = String::new();
    for entry in std::fs::read_dir(guide).expect("the guide is in the tree") {
        text += &std::fs::read_to_string(entry.expect("the guide can be listed").path())
            .expect("a page can be read");
    }
    let commands = commands();
    assert!(commands.len() > 10, "the commands are found: {commands:?}");
    for path in commands {
        let called = [&["stillroom".to_owned()], path.as_slice()].concat().join(" ");
        assert!(text.contains(&called), "no page of the guide shows `{called}`");
    }
}
