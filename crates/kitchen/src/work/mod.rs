//! From the lines of a formula to the pieces of work of one day: how long, who is needed, what it occupies.
//!
//! A formula prints its work as a cook would read it, line by line. [`piece`] gives each line a length,
//! [`fold`] joins lines that one person does in one go, [`chain`] strings the joined pieces of all batches
//! together with what may wait and what is held, and parts off what belongs to the evening before and to
//! the days after.

pub(crate) mod chain;
mod duration;
mod fold;
mod later;
mod piece;
mod title;
#[cfg(test)]
mod trials;
mod wording;

pub(crate) use chain::{CannerUse, MultiDay, Work, WorkStep, lay_out_work};
pub(crate) use duration::{Lot, LotProduce};
pub(crate) use piece::Way;
