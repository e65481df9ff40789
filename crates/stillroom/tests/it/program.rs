//! The program, run with words.

use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;

/// What came of running the program.
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// The program with these words; not run yet.
pub fn program(words: &[&str]) -> Command {
    let mut command = Command::cargo_bin("stillroom").expect("the binary is built for its own tests");
    command.args(words).env_remove("NO_COLOR").env_remove("CLICOLOR_FORCE");
    command
}

/// Runs the program.
pub fn run(words: &[&str]) -> Ran {
    read(program(words).output().expect("the program starts"))
}

/// What the program said.
pub fn read(output: Output) -> Ran {
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("the program prints UTF-8");
    Ran { code: output.status.code().unwrap_or(-1), out: text(output.stdout), err: text(output.stderr) }
}

impl Ran {
    /// Exit code, then both streams, for a snapshot.
    pub fn whole(&self) -> String {
        format!("exit code {}\n--- stdout\n{}--- stderr\n{}", self.code, self.out, self.err)
    }

    /// Asserts that the question was wrong: nothing printed, one thing to do.
    pub fn expect_wrong_question(&self, part: &str) {
        assert_eq!(self.code, 2, "{}", self.whole());
        self.expect_told(part);
    }

    /// Asserts that the world failed: nothing printed, one thing to do.
    pub fn expect_world_failed(&self, part: &str) {
        assert_eq!(self.code, 1, "{}", self.whole());
        self.expect_told(part);
    }

    fn expect_told(&self, part: &str) {
        assert_eq!(self.out, "", "nothing goes to standard output");
        assert!(self.err.contains(part), "{}", self.whole());
        assert!(self.err.contains("hint:"), "{}", self.whole());
        assert!(!self.err.contains("panicked"), "{}", self.whole());
    }
}

/// A file of this test, written anew.
pub fn scratch(name: &str, bytes: &[u8]) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(path.parent().expect("a file has a folder"))
        .expect("the test folder can be made");
    std::fs::write(&path, bytes).expect("the test folder can be written");
    path
}

/// A path that is not there.
pub fn no_file(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_file(&path);
    path
}

/// A path as a word.
pub fn word(path: &Path) -> &str {
    path.to_str().expect("the test folder has a plain name")
}
