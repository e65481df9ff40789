//! The files of the tree as git sees them: tracked, or about to be.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};

/// Every file that a commit would hold, by its path from the root.
#[derive(Debug, Default)]
pub(super) struct Tree {
    files: BTreeMap<String, File>,
}

/// One file.
#[derive(Debug)]
pub(super) struct File {
    /// Its size in bytes.
    pub(super) size: u64,
    /// Its text; `None` for what is not UTF-8, such as a font.
    pub(super) text: Option<String>,
}

impl Tree {
    /// Reads the tracked files under `root`, and the new ones that are not ignored.
    ///
    /// # Errors
    ///
    /// If git cannot list them or one cannot be read.
    pub(super) fn read(root: &Path) -> Result<Tree> {
        let listed = Command::new("git")
            .current_dir(root)
            .args(["ls-files", "-z", "--cached", "--others", "--exclude-standard"])
            .output()
            .context("git could not be started")?;
        ensure!(listed.status.success(), "git ls-files failed: {}", String::from_utf8_lossy(&listed.stderr));
        let names = String::from_utf8(listed.stdout).context("a tracked path is not UTF-8")?;
        let mut tree = Tree::default();
        for name in names.split('\0').filter(|name| !name.is_empty()) {
            let path = root.join(name);
            // A file that was deleted and not yet committed is still listed.
            if !path.is_file() {
                continue;
            }
            let bytes = std::fs::read(&path).with_context(|| format!("{name} cannot be read"))?;
            tree.insert(name, bytes);
        }
        Ok(tree)
    }

    /// A tree made of strings, for the tests of the rules.
    #[cfg(test)]
    pub(super) fn of(files: &[(&str, &str)]) -> Tree {
        let mut tree = Tree::default();
        for (path, text) in files {
            tree.insert(path, text.as_bytes().to_vec());
        }
        tree
    }

    /// Adds one file.
    pub(super) fn insert(&mut self, path: &str, bytes: Vec<u8>) {
        // Never fails: a count of bytes in memory fits 64 bits.
        let size = bytes.len() as u64;
        self.files.insert(path.to_owned(), File { size, text: String::from_utf8(bytes).ok() });
    }

    /// How many files there are.
    pub(super) fn len(&self) -> usize {
        self.files.len()
    }

    /// Every file, in the order of the paths.
    pub(super) fn files(&self) -> impl Iterator<Item = (&str, &File)> {
        self.files.iter().map(|(path, file)| (path.as_str(), file))
    }

    /// Every text, in the order of the paths.
    pub(super) fn texts(&self) -> impl Iterator<Item = (&str, &str)> {
        self.files().filter_map(|(path, file)| Some((path, file.text.as_deref()?)))
    }

    /// The text of one file.
    pub(super) fn find_text(&self, path: &str) -> Option<&str> {
        self.files.get(path)?.text.as_deref()
    }
}

/// Whether the name of the path ends in `.ENDING`.
pub(super) fn ends_in(path: &str, ending: &str) -> bool {
    Path::new(path).extension().is_some_and(|found| found == ending)
}
