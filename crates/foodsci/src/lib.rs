//! Heat, cold, drying, acid, salt, sugar and ferments, as equations with a range and a source.
//!
//! A model may **explain** (why, how long about) and may **veto** (this cannot be right, this cannot fit). It never permits,
//! and it never makes or shortens a thermal process: there is no function from a wanted lethality to a time.
//!
//! Every function checks its range first; outside it the answer is an error that names quantity, value, limits and whose they
//! are. What is part of an equation (coefficients, the density of a syrup) stands here as a constant with its source. What
//! differs from food to food and kitchen to kitchen (when peas freeze, what a burner passes on) is handed in by the caller,
//! who reads it from rows that say where they come from.

pub mod acid;
pub mod air;
pub mod atmosphere;
pub mod band;
pub mod brine;
pub mod canner;
pub mod conduction;
pub mod cooling;
mod curve;
pub mod drying;
pub mod ferment;
pub mod freezing;
pub mod headspace;
pub mod jar;
pub mod lethality;
mod limits;
pub mod pot;
mod root;
pub mod salt;
pub mod steam;
pub mod sugar;
pub mod syrup;
pub mod veto;
pub mod vinegar;
pub mod water_activity;

pub use limits::{Figure, Limits, ModelError};
