//! The printed pages, whole.

mod day_sheet;
mod sample;
mod well_formed;
