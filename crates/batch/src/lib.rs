//! One formula and one lot of produce: whether it may be processed so ([`clear`]).

pub mod clear;
