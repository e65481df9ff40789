//! The machine that a measurement was taken on.

use std::fmt;

use anyhow::{Context, Result};

/// What a reader of a record needs to know of the machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Machine {
    /// The processor as it names itself.
    pub(super) processor: String,
    /// How many cores a program may use.
    pub(super) cores: usize,
    /// The kind of system: `linux x86_64`.
    pub(super) system: String,
}

impl Machine {
    /// Asks the system.
    ///
    /// # Errors
    ///
    /// If the number of cores cannot be found.
    pub(super) fn read() -> Result<Machine> {
        let told = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
        Ok(Machine {
            processor: find_processor(&told).unwrap_or("unknown processor").to_owned(),
            cores: std::thread::available_parallelism().context("the number of cores cannot be found")?.get(),
            system: format!("{} {}", std::env::consts::OS, std::env::consts::ARCH),
        })
    }

    /// The processor as part of a file name.
    pub(super) fn short_name(&self) -> String {
        let plain = self.processor.to_lowercase();
        let words =
            plain.split(|letter: char| !letter.is_ascii_alphanumeric()).filter(|word| !word.is_empty());
        words.collect::<Vec<_>>().join("-")
    }
}

impl fmt::Display for Machine {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, {} cores, {}", self.processor, self.cores, self.system)
    }
}

/// The first `model name` of Linux's list of processors.
fn find_processor(told: &str) -> Option<&str> {
    told.lines()
        .find_map(|line| line.strip_prefix("model name")?.trim_start().strip_prefix(':').map(str::trim))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_processor_is_read_by_its_model_name() {
        assert_eq!(
            find_processor("model\t\t: 1\nmodel name\t: Example 9 (R) CPU\n"),
            Some("Example 9 (R) CPU")
        );
        assert_eq!(find_processor("processor: 0\n"), None);
    }

    #[test]
    fn a_file_name_keeps_letters_and_digits() {
        let machine =
            Machine { processor: "Example(R) 9 CPU @ 2.4GHz".into(), cores: 2, system: "linux x".into() };
        assert_eq!(machine.short_name(), "example-r-9-cpu-2-4ghz");
        assert_eq!(machine.to_string(), "Example(R) 9 CPU @ 2.4GHz, 2 cores, linux x");
    }
}
