//! The rules of the tree that no compiler knows.
//!
//! Each rule is a pure function from the tracked files to the faults it finds, so that it can be tried on a tree made
//! of strings. All faults are told at once, with file and line.

use std::fmt;

use anyhow::{Result, bail};

use crate::workspace::Workspace;
use tree::Tree;

mod facts;
mod licences;
mod rooms;
mod rulebook;
mod source;
mod tracked;
mod tree;

/// One thing that is wrong, and where.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Fault {
    /// The file, from the root of the tree.
    path: String,
    /// The line, counted from 1, where one line is at fault.
    line: Option<usize>,
    /// What is wrong, in one sentence.
    text: String,
}

impl Fault {
    /// A fault of a whole file.
    fn of(path: &str, text: impl Into<String>) -> Fault {
        Fault { path: path.to_owned(), line: None, text: text.into() }
    }

    /// A fault of one line, counted from 1.
    fn at(path: &str, line: usize, text: impl Into<String>) -> Fault {
        Fault { path: path.to_owned(), line: Some(line), text: text.into() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            Some(line) => write!(f, "{}:{line}: {}", self.path, self.text),
            None => write!(f, "{}: {}", self.path, self.text),
        }
    }
}

/// Applies every rule to the tree.
///
/// # Errors
///
/// All faults found, a line each.
pub(crate) fn run() -> Result<()> {
    let workspace = Workspace::read()?;
    let tree = Tree::read(&workspace.root)?;
    let mut faults = find_faults(&tree);
    faults.extend(rooms::find_arrows_out_of_place(&workspace));
    faults.extend(licences::find_faults(&workspace));
    faults.sort();
    if faults.is_empty() {
        println!("tidy: {} files, {} packages", tree.len(), workspace.packages.len());
        return Ok(());
    }
    for fault in &faults {
        eprintln!("{fault}");
    }
    match faults.len() {
        1 => bail!("tidy found one fault"),
        count => bail!("tidy found {count} faults"),
    }
}

/// Every rule that needs the tracked files alone.
fn find_faults(tree: &Tree) -> Vec<Fault> {
    [source::find_faults, rooms::find_faults, facts::find_faults, tracked::find_faults, rulebook::find_faults]
        .iter()
        .flat_map(|rule| rule(tree))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_reads_as_file_line_and_sentence() {
        assert_eq!(Fault::at("a/b.rs", 3, "is wrong").to_string(), "a/b.rs:3: is wrong");
        assert_eq!(Fault::of("a/b.rs", "is wrong").to_string(), "a/b.rs: is wrong");
    }

    #[test]
    fn every_family_of_rules_is_asked() {
        let tree = Tree::of(&[
            ("crates/measure/src/lib.rs", "fn main() {}\n"),
            ("crates/measure/Cargo.toml", "[package]\nname = \"measure\"\n"),
            ("data/produce/yields.csv", "produce\nbeans\n"),
            ("notes.md", concat!("see /", "root/notes\n")),
        ]);
        let paths: Vec<String> = find_faults(&tree).into_iter().map(|fault| fault.path).collect();
        for path in
            ["crates/measure/src/lib.rs", "crates/measure/Cargo.toml", "data/produce/yields.csv", "notes.md"]
        {
            assert!(paths.iter().any(|found| found == path), "no fault of {path} in {paths:?}");
        }
    }
}
