//! The workspace as cargo describes it: its members, everything they lean on, and where it is built.

use std::ffi::OsString;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, ensure};
use serde::Deserialize;

/// What `cargo metadata` says, as far as the developer commands ask.
#[derive(Debug, Deserialize)]
pub(crate) struct Workspace {
    /// The folder of the root manifest.
    #[serde(rename = "workspace_root")]
    pub(crate) root: PathBuf,
    /// Where cargo builds to.
    #[serde(rename = "target_directory")]
    pub(crate) target: PathBuf,
    /// The ids of our own packages.
    pub(crate) workspace_members: Vec<String>,
    /// Every package of the lock file, ours and others'.
    pub(crate) packages: Vec<Package>,
}

/// One package of the lock file.
#[derive(Debug, Deserialize)]
pub(crate) struct Package {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) version: String,
    /// The SPDX expression of its manifest.
    pub(crate) license: Option<String>,
    pub(crate) dependencies: Vec<Dependency>,
}

/// One dependency as a manifest states it, whatever its kind.
#[derive(Debug, Deserialize)]
pub(crate) struct Dependency {
    pub(crate) name: String,
    /// The folder, for a dependency inside the workspace.
    pub(crate) path: Option<PathBuf>,
}

impl Workspace {
    /// Asks cargo.
    ///
    /// # Errors
    ///
    /// If cargo cannot be run, finds the lock file out of date, or answers what cannot be read.
    pub(crate) fn read() -> Result<Workspace> {
        let output = cargo()
            .args(["metadata", "--format-version", "1", "--locked"])
            .output()
            .context("cargo metadata could not be started")?;
        ensure!(
            output.status.success(),
            "cargo metadata failed: {}",
            String::from_utf8_lossy(&output.stderr)
        );
        serde_json::from_slice(&output.stdout).context("the answer of cargo metadata could not be read")
    }

    /// Our own packages, in the order of their names.
    pub(crate) fn members(&self) -> Vec<&Package> {
        let mut members: Vec<&Package> =
            self.packages.iter().filter(|package| self.workspace_members.contains(&package.id)).collect();
        members.sort_by(|a, b| a.name.cmp(&b.name));
        members
    }

    /// The release program, whether built yet or not.
    pub(crate) fn release_program(&self) -> PathBuf {
        self.target.join("release").join(format!("stillroom{}", std::env::consts::EXE_SUFFIX))
    }
}

/// The cargo that runs us, or the one on the path.
pub(crate) fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo")))
}
