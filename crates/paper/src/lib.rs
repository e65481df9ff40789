//! What is printed or opened on a phone, drawn from view structs of its own.
//!
//! A view struct arrives finished: every figure is rounded, every time is worded, every sentence is whole. This
//! crate sets it on the leaf and returns the text; it computes nothing and decides nothing.

mod base64;
pub mod day;
mod kitchen_text;
mod letter;

pub use day::{DaySheet, render_day_sheet};
pub use kitchen_text::mark_fractions;
pub use letter::{BOLD, REGULAR};
