//! Loads in trouble: when the clock of a process starts and ends, and what is to be done when something went wrong.
//!
//! The answer rests on a row of `data/loads/load_rules.csv` and on the canner rule it follows. Where there is none
//! the answer says so. Clock times are computed from what happened; where the clock itself is in doubt, always to
//! the side of caution. Nothing here ever says that a jar is good.

mod answer;
mod begin_again;
mod clock;
mod draft;
mod error;
mod gap;
mod interrupted;
mod judge;
mod question;
mod start;
mod when;

use almanac::Almanac;
use jiff::ZonedDateTime;

pub use answer::{Act, ClockMark, LoadAnswer, LoadClockLine, Outcome, Said, WHOM_TO_ASK, word_trouble};
pub use clock::{Moment, Report};
pub use error::LoadError;
pub use gap::{LoadGap, list_load_gaps};
pub use judge::answer_load;
pub use question::{LoadQuestion, LoadWords, Stop, read_load_question};

/// Answers a question about a load in a person's words, as asked at `now` on the clock of the house.
///
/// # Errors
///
/// As for [`read_load_question`].
pub fn ask_load(almanac: &Almanac, words: &LoadWords, now: &ZonedDateTime) -> Result<LoadAnswer, LoadError> {
    Ok(answer_load(almanac, &read_load_question(almanac, words, now)?))
}
