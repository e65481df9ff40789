//! How answers are said, where the command line and the pages say the same.

mod clear;
mod fit;
mod sentence;

pub use clear::{name_canner, say_acid, say_heating, say_question, say_row};
pub use fit::{SaidAmount, say_amount, say_factor, tidy_amount};
pub use sentence::{as_sentence, capitalize, join_names};
