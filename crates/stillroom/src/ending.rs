//! How every command ends: what is printed where, and with which exit code.

use std::io::{self, Write};
use std::process::ExitCode;

/// What a command has to say when nothing is wrong with the question or the world.
#[derive(Debug)]
pub(crate) struct Answered {
    /// The text for standard output.
    pub(crate) text: String,
    /// Whether it is a refusal.
    pub(crate) refused: bool,
}

impl Answered {
    /// An answer.
    pub(crate) fn with(text: String) -> Self {
        Self { text, refused: false }
    }

    /// A refusal, which is printed like an answer.
    pub(crate) fn refusing(text: String) -> Self {
        Self { text, refused: true }
    }
}

/// A question that is wrong, as opposed to a world that failed.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub(crate) struct WrongQuestion(pub(crate) String);

/// Says of an error that the question is wrong.
pub(crate) fn wrong_question(said: impl ToString) -> anyhow::Error {
    WrongQuestion(said.to_string()).into()
}

const REFUSED: u8 = 3;
const WRONG_QUESTION: u8 = 2;
const WORLD_FAILED: u8 = 1;

/// Prints what there is to print and gives the exit code.
pub(crate) fn finish(end: anyhow::Result<Answered>) -> ExitCode {
    let answered = match end {
        Ok(answered) => answered,
        Err(error) => return complain(&error),
    };
    let mut out = anstream::stdout();
    match out.write_all(answered.text.as_bytes()).and_then(|()| out.flush()) {
        // Whoever read has read enough: no fault.
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            complain(&anyhow::Error::from(error).context("standard output cannot be written"))
        }
        _ if answered.refused => ExitCode::from(REFUSED),
        _ => ExitCode::SUCCESS,
    }
}

fn complain(error: &anyhow::Error) -> ExitCode {
    let mut err = anstream::stderr();
    // Nobody is left to tell when standard error is closed as well; the exit code still says it.
    let _ = writeln!(err, "{}", hint_on_its_own_line(&format!("{error:#}")));
    let wrong = error.downcast_ref::<WrongQuestion>().is_some();
    ExitCode::from(if wrong { WRONG_QUESTION } else { WORLD_FAILED })
}

/// Errors carry their hint inside the sentence; people read it more easily on a line of its own.
fn hint_on_its_own_line(said: &str) -> String {
    said.replace("; hint: ", "\nhint: ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hint_gets_a_line_of_its_own() {
        assert_eq!(hint_on_its_own_line("no x; hint: say y"), "no x\nhint: say y");
        assert_eq!(hint_on_its_own_line("no x\nhint: say y"), "no x\nhint: say y");
    }
}
