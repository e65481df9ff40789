//! The kitchen as its user meets it: a day is written down, read, planned and told.

mod changes;
mod days;
mod demo_days;
mod explained;
mod hard_days;
mod house;
mod laws;
mod loads;
mod slips;
