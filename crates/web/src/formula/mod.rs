//! The formulas on file: a list, and a sheet each, fitted to what there is.

pub(crate) mod list;
pub(crate) mod sheet;
