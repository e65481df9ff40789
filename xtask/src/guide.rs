//! The guide against the program: every command is shown in `docs/guide/`, and the guide shows no command that is
//! not there.
//!
//! The program is asked with `--help`, so that what is compared is what a person can type.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail, ensure};

/// How deep commands nest: `stillroom almanac formula` is two.
const DEPTH: usize = 2;

/// Compares the commands of `program` with the pages of `docs/guide/` under `root`.
///
/// # Errors
///
/// Every command without a page, and every page's command that the program lacks.
pub(crate) fn compare(program: &Path, root: &Path) -> Result<()> {
    let commands = list_commands(program)?;
    let pages = read_pages(&root.join("docs/guide"))?;
    let faults = find_differences(&commands, &pages);
    if !faults.is_empty() {
        bail!("{}", faults.join("\n"));
    }
    println!("guide: {} commands, each shown", commands.len());
    Ok(())
}

/// Every command, with the words that lead to it: `day`, `day check`.
fn list_commands(program: &Path) -> Result<BTreeSet<String>> {
    let mut found = BTreeSet::new();
    let mut waiting = vec![Vec::new()];
    while let Some(words) = waiting.pop() {
        if words.len() == DEPTH {
            continue;
        }
        for name in read_help(&ask_help(program, &words)?) {
            let mut longer = words.clone();
            longer.push(name);
            found.insert(longer.join(" "));
            waiting.push(longer);
        }
    }
    Ok(found)
}

/// What `program WORDS --help` prints.
fn ask_help(program: &Path, words: &[String]) -> Result<String> {
    let output = Command::new(program)
        .args(words)
        .arg("--help")
        .output()
        .with_context(|| format!("{} could not be started", program.display()))?;
    ensure!(output.status.success(), "{} {} --help failed", program.display(), words.join(" "));
    String::from_utf8(output.stdout).context("the help is not UTF-8")
}

/// The names under the heading of the commands, the built-in `help` left out.
fn read_help(help: &str) -> Vec<String> {
    help.lines()
        .skip_while(|line| line.trim_end() != "Commands:")
        .skip(1)
        .take_while(|line| line.starts_with("  ") || line.trim().is_empty())
        // A deeper indent is the continuation of a description.
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| *name != "help")
        .map(str::to_owned)
        .collect()
}

/// The text of every page of the guide, one after the other; empty while there is no guide.
fn read_pages(folder: &Path) -> Result<String> {
    if !folder.exists() {
        return Ok(String::new());
    }
    let mut text = String::new();
    for entry in std::fs::read_dir(folder).with_context(|| format!("{} cannot be read", folder.display()))? {
        let path = entry?.path();
        if path.extension().is_some_and(|ending| ending == "md") {
            text += &std::fs::read_to_string(&path)
                .with_context(|| format!("{} cannot be read", path.display()))?;
            text.push('\n');
        }
    }
    Ok(text)
}

/// What is in one and not in the other, a sentence each.
fn find_differences(commands: &BTreeSet<String>, pages: &str) -> Vec<String> {
    let missing = commands
        .iter()
        .filter(|command| !shows(pages, command))
        .map(|command| format!("no page of docs/guide/ shows `stillroom {command}`"));
    let top: BTreeSet<&str> = commands.iter().filter_map(|command| command.split(' ').next()).collect();
    let unknown: BTreeSet<&str> = shown_words(pages).filter(|word| !top.contains(word)).collect();
    let unknown = unknown.into_iter().map(|word| {
        format!("docs/guide/ shows `stillroom {word}`, a command that the program does not have")
    });
    missing.chain(unknown).collect()
}

/// Whether the pages show the command, and not only a longer word that begins like it.
fn shows(pages: &str, command: &str) -> bool {
    let sought = format!("stillroom {command}");
    pages.match_indices(&sought).any(|(at, _)| {
        let after = pages[at + sought.len()..].chars().next();
        !after.is_some_and(|letter| letter.is_alphanumeric() || letter == '-')
    })
}

/// The word after each `stillroom` that stands where a command is typed: after a back-quote, a prompt or at the
/// start of a line.
fn shown_words(pages: &str) -> impl Iterator<Item = &str> {
    pages.lines().flat_map(|line| {
        let typed = |before: &str| {
            before.trim_start().is_empty() || before.ends_with(['`', '$']) || before.ends_with("$ ")
        };
        line.match_indices("stillroom ").filter(move |(at, _)| typed(&line[..*at])).filter_map(
            |(at, name)| {
                let word = line[at + name.len()..].split([' ', '`']).next()?;
                let named = !word.is_empty()
                    && word.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-');
                (named && !word.starts_with('-')).then_some(word)
            },
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const HELP: &str = "Plans a kitchen day.\n\nUsage: stillroom [COMMAND]\n\nCommands:\n  day      Plan a day\n  \
                        almanac  Look at what is published,\n           and at its sources\n  help     Print this \
                        message\n\nOptions:\n  -h, --help  Print help\n";

    fn set(commands: &[&str]) -> BTreeSet<String> {
        commands.iter().map(|command| (*command).to_owned()).collect()
    }

    #[test]
    fn commands_are_read_off_the_help_and_options_are_not() {
        assert_eq!(read_help(HELP), ["day", "almanac"]);
    }

    #[test]
    fn a_command_without_a_page_is_named() {
        let faults = find_differences(&set(&["day", "day check"]), "Type `stillroom day plan.toml`.");
        assert_eq!(faults, ["no page of docs/guide/ shows `stillroom day check`"]);
    }

    #[test]
    fn a_longer_word_does_not_stand_for_a_command() {
        assert!(!shows("`stillroom daybreak`", "day"));
        assert!(shows("`stillroom day`", "day"));
    }

    #[test]
    fn a_page_may_not_show_a_command_that_is_not_there() {
        let faults = find_differences(&set(&["day"]), "    stillroom day x.toml\n    stillroom weigh\n");
        assert_eq!(faults, ["docs/guide/ shows `stillroom weigh`, a command that the program does not have"]);
    }

    #[test]
    fn prose_about_the_program_is_no_command() {
        assert!(find_differences(&set(&["day"]), "A stillroom was a room. `stillroom day`").is_empty());
    }
}
