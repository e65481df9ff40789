//! The almanac that is built into the program.

use almanac::Almanac;
use anyhow::{Result, anyhow};

/// The almanac, or every fault of its tables.
pub(crate) fn load_almanac() -> Result<Almanac> {
    Almanac::load().map_err(|faults| {
        let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
        anyhow!("the tables built into this program are at fault:\n{}", lines.join("\n"))
    })
}
