//! How long the steps of a day may really take, as a document beside the problem: `ranges/1`.
//!
//! The problem knows one length for each step: hand work at its 80th percentile, timed processes exactly. This says how
//! far the truth may lie from it, where the length is a guess. A step that is not named takes what is planned.

use serde::{Deserialize, Serialize};

/// The name of the format.
pub const RANGES_FORMAT: &str = "ranges/1";

/// How long the steps may really take.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RangesDocument {
    /// [`RANGES_FORMAT`].
    pub format: String,
    /// The steps whose length is a guess.
    pub steps: Vec<RangeLine>,
}

/// How long one step may really take, in minutes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RangeLine {
    /// The project.
    pub project: String,
    /// The step.
    pub step: String,
    /// At the quickest.
    pub low: u32,
    /// Most often.
    pub typical: u32,
    /// At the slowest.
    pub high: u32,
}
