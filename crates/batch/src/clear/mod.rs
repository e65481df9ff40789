//! The answer to "may this be processed so?": tested, not tested, do not, with reasons and what to do instead.
//!
//! [`clear`] takes a question and gives the strictest of three things: whether a row of the process tables is
//! printed for exactly this food, pack, jar, canner and altitude; what the change rules say of each change the
//! cook asks for; and what is refused. A process is served only as a whole printed line, and only when all three
//! agree. Nothing here makes a figure: every minute, pressure, headspace and acid comes from a row on file, and
//! every refusal goes away with the row that makes it.
//!
//! A change is read strictly. Every word of it must be understood, or the question is handed back; a change that
//! is understood but that no rule covers is *not tested*.

mod alone;
mod answer;
mod change;
mod copied;
mod findings;
mod gauge;
mod judge;
mod near;
mod question;
mod refusal;
mod riders;

pub use alone::clear_changes;
pub use answer::{
    AcidDose, Because, ChangesCleared, Cited, Clearance, ClearedChange, ClearedLine, Instead, Reason, Rider,
};
pub use copied::{
    CopiedCleared, CopiedDraft, CopiedFault, CopiedFormula, CopiedPlace, CopiedProblem, CopiedQuestion,
    DraftFormula, DraftProcess, Entered, EnteredBand, FIRST_YEAR, Issuer, OwnCopy, clear_copied,
};
pub use judge::{clear, find_doubt};
pub use near::{HomeIngredient, Nearest, Shares, find_nearest, shares_of_mix};
pub use question::{ChangesQuestion, ClearError, ClearQuestion, Gauge, Misread, Tested};
pub use refusal::{RefusedWords, refuse_formula, refuse_words};
