//! One formula and one lot of produce: how much of it to make of what is there ([`fit`]), and whether it may be
//! processed so ([`clear`]).

pub mod clear;
pub mod fit;
