//! One formula and one lot of produce: how much of it to make of what is there ([`fit`]).

pub mod fit;
