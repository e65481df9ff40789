//! Printed formulas scaled by hand, jar estimates held against a second publication, and what must hold of every fit.

mod agrees;
mod examples;
mod holds;
mod second_publication;
mod supplies;
mod support;
