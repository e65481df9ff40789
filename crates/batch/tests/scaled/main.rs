//! Printed formulas scaled by hand, jar estimates held against a second publication, and what must hold of every fit.

mod examples;
mod holds;
mod support;
