//! What the whole crate promises: readers that never panic, printing that reads back, roundings that keep
//! their direction, and units that agree with the published tables.

mod printing;
mod reading;
mod rounding;

#[path = "../published/nist.rs"]
mod nist;
