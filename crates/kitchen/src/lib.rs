//! The use cases: one function for each thing a person does.
//!
//! The command line and the page are thin ways to say the same sentences; the rules are here and below. Pure: the
//! date, the day file and the tables are handed in, and the same day gives the same answer.

pub mod after;
pub mod answer;
pub mod ask;
pub mod copied;
pub mod day;
mod day_file;
pub mod elsewhere;
pub mod explain;
mod gauge;
pub mod house;
pub mod keep;
pub mod load;
mod plan;
pub mod ranges;
pub mod reckon;
pub mod saved;
pub mod slip;
pub mod staff;
pub mod sturdy;
mod supplies;
mod tell;
pub mod wording;
mod work;

pub use day_file::{
    DayFault, DayFaults, Encoding, FaultKind, WhichFile, new_day_file, read_day, read_day_on, read_house_on,
};
pub use plan::plan_day;
