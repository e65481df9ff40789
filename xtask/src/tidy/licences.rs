//! Rule for the licences of what we build on: each package offers one that we can take.
//!
//! An expression is read as SPDX writes it (`OR`, `AND`, `WITH`, parentheses), with the old slash of Rust manifests
//! read as `OR`.

use std::iter::Peekable;
use std::vec::IntoIter;

use super::Fault;
use crate::workspace::Workspace;

/// What we can take: licences that ask for their notice to be kept and for nothing else.
const ACCEPTED: [&str; 10] = [
    "0BSD",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "ISC",
    "MIT",
    "Unicode-3.0",
    "Zlib",
];

/// Packages whose licences we cannot take, or which state none.
pub(super) fn find_faults(workspace: &Workspace) -> Vec<Fault> {
    workspace
        .packages
        .iter()
        .filter_map(|package| {
            let text = find_objection(package.license.as_deref())?;
            Some(Fault::of("Cargo.lock", format!("`{}` {} {text}", package.name, package.version)))
        })
        .collect()
}

/// What stands against an expression, if anything does.
fn find_objection(expression: Option<&str>) -> Option<String> {
    let Some(expression) = expression else {
        return Some("states no licence".to_owned());
    };
    let mut words = split_words(expression).into_iter().peekable();
    match read_any(&mut words) {
        Some(true) if words.peek().is_none() => None,
        Some(false) if words.peek().is_none() => {
            Some(format!("offers no licence that we can take: {expression}"))
        }
        _ => Some(format!("states a licence that cannot be read: {expression}")),
    }
}

fn split_words(expression: &str) -> Vec<String> {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    spaced.split_whitespace().map(str::to_owned).collect()
}

type Words = Peekable<IntoIter<String>>;

/// `ALL OR ALL ...`; `None` if it cannot be read.
fn read_any(words: &mut Words) -> Option<bool> {
    let mut accepted = read_all(words)?;
    while words.next_if(|word| word == "OR").is_some() {
        accepted |= read_all(words)?;
    }
    Some(accepted)
}

/// `ONE AND ONE ...`.
fn read_all(words: &mut Words) -> Option<bool> {
    let mut accepted = read_one(words)?;
    while words.next_if(|word| word == "AND").is_some() {
        accepted &= read_one(words)?;
    }
    Some(accepted)
}

/// A licence, with or without an exception, or an expression in parentheses.
fn read_one(words: &mut Words) -> Option<bool> {
    let mut name = words.next()?;
    if name == "(" {
        let accepted = read_any(words)?;
        words.next_if(|word| word == ")")?;
        return Some(accepted);
    }
    if matches!(name.as_str(), ")" | "OR" | "AND" | "WITH") {
        return None;
    }
    if words.next_if(|word| word == "WITH").is_some() {
        name = format!("{name} WITH {}", words.next()?);
    }
    Some(ACCEPTED.contains(&name.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(expression: &str, expected: Option<&str>) {
        let found = find_objection(Some(expression));
        match (&found, expected) {
            (None, None) => {}
            (Some(text), Some(words)) if text.contains(words) => {}
            _ => panic!("{expression}: {found:?}"),
        }
    }

    #[test]
    fn one_acceptable_choice_is_enough() {
        check("MIT", None);
        check("GPL-3.0-only OR MIT", None);
        check("MIT/Apache-2.0", None);
        check("Apache-2.0 WITH LLVM-exception OR GPL-2.0-only", None);
    }

    #[test]
    fn every_part_of_a_sum_must_be_acceptable() {
        check("(MIT OR Apache-2.0) AND Unicode-3.0", None);
        check("MIT AND GPL-3.0-only", Some("can take"));
        check("MIT AND (GPL-3.0-only OR ISC)", None);
    }

    #[test]
    fn what_we_cannot_take_is_named() {
        check("GPL-3.0-only", Some("can take: GPL-3.0-only"));
        check("MPL-2.0", Some("can take"));
        check("GPL-2.0-only WITH Classpath-exception-2.0", Some("can take"));
    }

    #[test]
    fn no_licence_is_no_permission() {
        assert_eq!(find_objection(None).unwrap(), "states no licence");
    }

    #[test]
    fn what_cannot_be_read_is_not_taken() {
        for expression in ["", "MIT OR", "(MIT", "MIT)", "MIT MIT", "OR MIT", "MIT WITH"] {
            check(expression, Some("cannot be read"));
        }
    }
}
