//! What does not belong to the day itself: the evening before it, and what goes on after it.

use almanac::{Action, Attention};

use super::fold::Act;
use super::piece::Piece;

/// A rest from this length on does not fit between two acts of one day.
pub(crate) const OVERNIGHT: u32 = 300;

/// A rest shorter than this is one of the acts that follow a longer one: cool, then pack.
const SHORT_REST: u32 = 60;

/// Something that goes on after the day.
#[derive(Debug, Clone)]
pub(crate) struct LaterWork {
    /// The step it follows.
    pub(crate) after: String,
    /// What goes on, and what is done then.
    pub(crate) what: String,
    /// When it is over, in minutes after that step, from to: printed, or our guess.
    pub(crate) minutes: (u32, u32),
}

/// The rests after the step `after`, each with what is done at its end and before the next.
pub(crate) fn later_work(after: &str, pieces: &[Piece]) -> Vec<LaterWork> {
    let mut works: Vec<LaterWork> = Vec::new();
    let mut passed = (0, 0);
    let mut has_acts = false;
    for piece in pieces {
        let said = piece.said();
        let is_rest = piece.attention == Attention::None && piece.minutes >= SHORT_REST;
        passed = (passed.0 + piece.minutes, passed.1 + piece.minutes + piece.slack);
        match works.last_mut() {
            Some(work) if !is_rest => {
                work.what.push_str(if has_acts { "; " } else { "; then " });
                work.what.push_str(&said);
                has_acts = true;
            }
            // Two stretches of one rest (warmer, then cooler) are one rest to whoever looks at it.
            Some(work) if !has_acts => {
                work.what = format!("{}, {said}", work.what);
                work.minutes = passed;
            }
            _ => {
                // What a ferment wants while it works stands beside it.
                let what = match piece.action {
                    Action::Ferment if !piece.note.is_empty() => format!("{said}: {}", piece.note),
                    _ => said,
                };
                works.push(LaterWork { after: after.to_owned(), what, minutes: passed });
                has_acts = false;
            }
        }
    }
    works
}

/// An act of the evening before, with its length.
pub(crate) fn evening_line(act: &Act, title: &str) -> String {
    let length = match act.attention {
        Attention::None if act.minutes >= OVERNIGHT => format!("{} h, overnight", act.minutes.div_ceil(60)),
        _ => format!("about {} min", act.minutes),
    };
    format!("{title}: {length}")
}
