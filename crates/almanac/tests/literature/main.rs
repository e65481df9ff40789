//! Published values, each against the row that should hold it.

mod usda2015;
