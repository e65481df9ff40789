//! Rules for source text: a header on each module, no unfinished work, no silenced lint, no overlong module, and in
//! the pure rooms no clock, no file and no arithmetic that differs between machines.

use super::Fault;
use super::rooms::{ROOMS, Room, STORES};
use super::tree::{Tree, ends_in};

/// Above this many lines of source, tests not counted, the header says why the module stays whole.
const LONG: usize = 800;

/// The words by which a long module's header says so.
const LONG_EXCUSE: &str = "stays whole";

/// What no Rust file may hold. Written in two halves, so that this file does not hold it either.
const BARRED: [(&str, &str); 4] = [
    (concat!("#[all", "ow("), "silences a lint; use #[expect(lint, reason = \"...\")]"),
    (concat!("#![all", "ow("), "silences a lint; use #[expect(lint, reason = \"...\")]"),
    (concat!("#[ign", "ore"), "is a test that does not run"),
    (concat!("#[should_", "panic"), "is a test that any panic passes; assert on the error"),
];

/// Marks of unfinished work.
const UNFINISHED: [&str; 3] = [concat!("TO", "DO"), concat!("FIX", "ME"), concat!("XX", "X")];

/// What a pure room may not hold outside its tests, and why.
const IMPURE: [(&str, &str); 26] = [
    ("std::fs", "is the world's; a pure crate is handed text"),
    ("std::net", "is the world's; a pure crate is handed text"),
    ("std::env", "is the world's; a pure crate is handed its settings"),
    ("std::process", "is the world's; a pure crate starts nothing"),
    ("std::thread", "makes the order of work depend on the machine"),
    ("Instant::now", "is a clock; a pure crate is handed the time"),
    ("SystemTime", "is a clock; a pure crate is handed the time"),
    ("Timestamp::now", "is a clock; a pure crate is handed the time"),
    ("ZonedDateTime::now", "is a clock; a pure crate is handed the time"),
    ("HashMap", "has an order of its own in each run; use BTreeMap"),
    ("HashSet", "has an order of its own in each run; use BTreeSet"),
    ("print!(", "prints; a pure crate returns what is to be said"),
    ("println!(", "prints; a pure crate returns what is to be said"),
    ("eprint!(", "prints; a pure crate returns what is to be said"),
    ("eprintln!(", "prints; a pure crate returns what is to be said"),
    (".exp()", "differs between machines; use libm"),
    (".exp_m1()", "differs between machines; use libm"),
    (".ln()", "differs between machines; use libm"),
    (".ln_1p()", "differs between machines; use libm"),
    (".log2()", "differs between machines; use libm"),
    (".log10()", "differs between machines; use libm"),
    (".powf(", "differs between machines; use libm"),
    (".powi(", "differs between machines; use libm"),
    (".sin()", "differs between machines; use libm"),
    (".cos()", "differs between machines; use libm"),
    (".tan()", "differs between machines; use libm"),
];

/// The checker of plans, and what it may not know: the engine whose plans it judges.
const CHECKER: &str = "crates/dayplan/src/check";
const ENGINE: [&str; 3] = ["crate::solve", "super::solve", "pumpkin_solver"];

/// Every fault of the source text.
pub(super) fn find_faults(tree: &Tree) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (path, text) in tree.texts() {
        if ends_in(path, "rs") {
            faults.extend(find_header_fault(path, text));
            faults.extend(find_length_fault(path, text));
            faults.extend(find_barred(path, text));
            faults.extend(find_impure(path, text));
            faults.extend(find_engine_in_checker(path, text));
        }
        // A Markdown page may speak of the words; nothing else may carry them.
        if !ends_in(path, "md") {
            faults.extend(find_unfinished(path, text));
        }
    }
    faults
}

/// A module with code in it says in words what it is; an empty one may keep its header short.
fn find_header_fault(path: &str, text: &str) -> Option<Fault> {
    let header = read_header(text);
    let has_code = text.lines().any(|line| !line.trim().is_empty() && !line.starts_with("//"));
    let says_enough = if has_code { header.contains(char::is_alphabetic) } else { !header.trim().is_empty() };
    (!says_enough).then(|| Fault::at(path, 1, "opens without a `//!` header that says what the module is"))
}

/// The words of the `//!` lines at the top.
fn read_header(text: &str) -> String {
    text.lines().map_while(|line| line.strip_prefix("//!")).collect::<Vec<_>>().join("\n")
}

fn find_length_fault(path: &str, text: &str) -> Option<Fault> {
    let lines = read_untested(text).count();
    (lines > LONG && !read_header(text).contains(LONG_EXCUSE)).then(|| {
        let says =
            format!("has {lines} lines, more than {LONG}, and its header does not say why it {LONG_EXCUSE}");
        Fault::of(path, says)
    })
}

/// The lines above the module's own tests, counted from 1.
fn read_untested(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let lines: Vec<&str> = text.lines().collect();
    let tests = lines
        .windows(2)
        .position(|pair| pair[0] == "#[cfg(test)]" && pair[1].starts_with("mod "))
        .unwrap_or(lines.len());
    lines.into_iter().take(tests).enumerate().map(|(index, line)| (index + 1, line))
}

fn find_barred(path: &str, text: &str) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (index, line) in text.lines().enumerate() {
        for (mark, why) in BARRED {
            if line.contains(mark) {
                faults.push(Fault::at(path, index + 1, format!("`{mark}` {why}")));
            }
        }
    }
    faults
}

fn find_unfinished(path: &str, text: &str) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (index, line) in text.lines().enumerate() {
        for mark in UNFINISHED {
            if line.split(|letter: char| !letter.is_alphanumeric()).any(|word| word == mark) {
                faults.push(Fault::at(
                    path,
                    index + 1,
                    format!("`{mark}` marks unfinished work; file it or do it"),
                ));
            }
        }
    }
    faults
}

fn find_impure(path: &str, text: &str) -> Vec<Fault> {
    let is_pure = |room: &&Room| room.is_pure && path.starts_with(&format!("{}/src/", room.folder()));
    let is_store = path.strip_prefix(STORES).is_some_and(|rest| rest.starts_with('/') || rest == ".rs");
    if !ROOMS.iter().any(|room| is_pure(&room)) || is_store || is_test(path) {
        return Vec::new();
    }
    find_in_code(path, text, &IMPURE.map(|(mark, why)| (mark, why.to_owned())))
}

/// Whether the whole file is a test module.
fn is_test(path: &str) -> bool {
    path.ends_with("/tests.rs") || path.contains("/tests/")
}

fn find_engine_in_checker(path: &str, text: &str) -> Vec<Fault> {
    let is_checker = path.strip_prefix(CHECKER).is_some_and(|rest| rest.starts_with('/') || rest == ".rs");
    if !is_checker || is_test(path) {
        return Vec::new();
    }
    let why = "is the engine; the checker shares types with it and no code";
    find_in_code(path, text, &ENGINE.map(|mark| (mark, why.to_owned())))
}

/// Finds marks in lines that are code, not comment, above the module's own tests.
fn find_in_code(path: &str, text: &str, marks: &[(&str, String)]) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (number, line) in read_untested(text) {
        if line.trim_start().starts_with("//") {
            continue;
        }
        for (mark, why) in marks {
            if stands_alone(line, mark) {
                faults.push(Fault::at(path, number, format!("`{mark}` {why}")));
            }
        }
    }
    faults
}

/// Whether the mark is in the line as a word of its own, and not as the end of a longer one.
fn stands_alone(line: &str, mark: &str) -> bool {
    let begins_word = mark.starts_with(char::is_alphabetic);
    line.match_indices(mark).any(|(at, _)| {
        !begins_word || !line[..at].ends_with(|letter: char| letter.is_alphanumeric() || letter == '_')
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(path: &str, text: &str, expected: &[(usize, &str)]) {
        let found = find_faults(&Tree::of(&[(path, text)]));
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for (fault, (line, words)) in found.iter().zip(expected) {
            assert_eq!(fault.line.unwrap_or(0), *line, "{fault}");
            assert!(fault.text.contains(words), "{fault}");
        }
    }

    #[test]
    fn a_module_opens_with_its_header() {
        check("crates/a/src/x.rs", "//! Jars by size.\n\nmod y;\n", &[]);
        check("crates/a/src/x.rs", "mod y;\n", &[(1, "`//!` header")]);
        check("crates/a/src/x.rs", "\n//! Too late.\n", &[(1, "`//!` header")]);
    }

    #[test]
    fn an_empty_header_is_none() {
        check("crates/a/src/x.rs", "//! .\nmod y;\n", &[(1, "`//!` header")]);
        check("crates/a/src/x.rs", "//!\n", &[(1, "`//!` header")]);
    }

    #[test]
    fn a_long_module_says_why() {
        let body = "fn f() {}\n".repeat(LONG + 1);
        check("crates/a/src/x.rs", &format!("//! Words.\n{body}"), &[(0, "802 lines")]);
        check("crates/a/src/x.rs", &format!("//! It stays whole because it is one table.\n{body}"), &[]);
    }

    #[test]
    fn tests_do_not_count_towards_the_length() {
        let body = "    fn f() {}\n".repeat(LONG + 1);
        check("crates/a/src/x.rs", &format!("//! Words.\n\n#[cfg(test)]\nmod tests {{\n{body}}}\n"), &[]);
    }

    #[test]
    fn a_silenced_lint_is_found() {
        check(
            "crates/a/src/x.rs",
            concat!("//! W.\n#[all", "ow(dead_code)]\nfn f() {}\n"),
            &[(2, "#[expect")],
        );
        check("crates/a/src/x.rs", concat!("//! W.\n#![all", "ow(dead_code)]\n"), &[(2, "#[expect")]);
    }

    #[test]
    fn a_test_that_does_not_run_is_found() {
        check("crates/a/src/x.rs", concat!("//! W.\n#[ign", "ore = \"slow\"]\n"), &[(2, "does not run")]);
        check("crates/a/src/x.rs", concat!("//! W.\n#[should_", "panic]\n"), &[(2, "any panic")]);
    }

    #[test]
    fn unfinished_work_is_found_outside_pages() {
        let text = concat!("# TO", "DO: more rows\n");
        check("data/sources.toml", text, &[(1, "unfinished")]);
        check("DESIGN.md", text, &[]);
    }

    #[test]
    fn a_word_that_only_contains_the_mark_is_left_alone() {
        check("data/sources.toml", concat!("\"MAS", "TO", "DON\"\n"), &[]);
    }

    #[test]
    fn a_pure_room_has_no_clock_and_no_file() {
        let text =
            "//! W.\nuse std::fs;\nlet now = Instant::now();\nlet m: HashMap<u8, u8>;\nlet y = x.exp();\n";
        let expected = [(2, "std::fs"), (3, "clock"), (4, "BTreeMap"), (5, "libm")];
        check("crates/measure/src/x.rs", text, &expected);
        check("crates/stillroom/src/x.rs", text, &[]);
    }

    #[test]
    fn of_the_book_only_the_stores_touch_the_world() {
        let text = "//! W.\nuse std::fs;\n";
        check("crates/book/src/record.rs", text, &[(2, "std::fs")]);
        check("crates/book/src/store/memory.rs", text, &[(2, "std::fs")]);
        check("crates/book/src/store/sqlite/open.rs", text, &[]);
    }

    #[test]
    fn comments_and_tests_of_a_pure_room_are_free() {
        let text = "//! W.\n// As std::fs would.\n\n#[cfg(test)]\nmod tests {\n    use std::fs;\n}\n";
        check("crates/measure/src/x.rs", text, &[]);
        check("crates/measure/src/x/tests.rs", "//! W.\nuse std::fs;\n", &[]);
    }

    #[test]
    fn the_library_for_exponentials_is_free() {
        check("crates/measure/src/x.rs", "//! W.\nlet y = libm::exp(x) + z.sqrt();\n", &[]);
    }

    #[test]
    fn the_checker_does_not_know_the_engine() {
        let text = "//! W.\nuse crate::solve::Draft;\nuse crate::plan::Plan;\n";
        check("crates/dayplan/src/check.rs", text, &[(2, "no code")]);
        check("crates/dayplan/src/check/lags.rs", text, &[(2, "no code")]);
        check("crates/dayplan/src/solve.rs", text, &[]);
    }
}
