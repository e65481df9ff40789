//! The peer: a general exact solver behind a script that makes days and solves them.
//!
//! The script is asked as `python3 SCRIPT make --seed N ...` and `python3 SCRIPT reference FILE --seconds S --workers 1`;
//! it answers with a plan document that may carry the notes `seconds`, `stages` and `trace`.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, anyhow, ensure};
use dayplan::{Plan, Problem, check};
use serde_json::Value;

use super::ours::{Mark, Proof, Run, proof_of};

/// A script, and a folder for the days it is given.
#[derive(Debug)]
pub(super) struct Peer {
    script: PathBuf,
    folder: PathBuf,
}

impl Peer {
    /// # Errors
    ///
    /// If the folder for days cannot be made.
    pub(super) fn new(script: &Path) -> Result<Peer> {
        ensure!(script.is_file(), "{} is not there; hint: name the peer's script", script.display());
        let folder = std::env::temp_dir().join(format!("stillroom-bench-{}", std::process::id()));
        std::fs::create_dir_all(&folder).with_context(|| format!("{} cannot be made", folder.display()))?;
        Ok(Peer { script: script.to_owned(), folder })
    }

    /// A day as the script makes it.
    pub(super) fn make(&self, arguments: &[String]) -> Result<Problem> {
        let text = self.ask("make", arguments)?;
        Problem::from_json(&text).map_err(|faults| anyhow!("the script made a faulty day: {faults:?}"))
    }

    /// A day as the script solves it on one thread.
    pub(super) fn solve(&self, problem: &Problem, seconds: f64) -> Result<Run> {
        let path = self.folder.join("day.json");
        std::fs::write(&path, problem.to_json())
            .with_context(|| format!("{} cannot be written", path.display()))?;
        let arguments = [
            path.display().to_string(),
            "--seconds".into(),
            seconds.to_string(),
            "--workers".into(),
            "1".into(),
        ];
        let text = self.ask("reference", &arguments)?;
        read_answer(problem, &text)
    }

    fn ask(&self, word: &str, arguments: &[String]) -> Result<String> {
        let output = Command::new("python3")
            .arg(&self.script)
            .arg(word)
            .args(arguments)
            .output()
            .context("python3 could not be started")?;
        let said = String::from_utf8_lossy(&output.stderr);
        ensure!(output.status.success(), "the peer's script failed: {}", said.trim());
        Ok(String::from_utf8_lossy(&output.stdout).into_owned())
    }
}

impl Drop for Peer {
    fn drop(&mut self) {
        // What is left behind in the folder for passing files harms nobody.
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

/// The last stage moves starts to the left when everything else is decided; its time is not the proof's.
const STAGE_AFTER: &str = "starts";

fn read_answer(problem: &Problem, text: &str) -> Result<Run> {
    let plan = Plan::from_json(text).map_err(|faults| anyhow!("the peer's plan is faulty: {faults:?}"))?;
    let notes: Value = serde_json::from_str(text).context("the peer's plan is no JSON")?;
    let mut run = Run {
        value: plan.value,
        finish: plan.finish,
        bound: plan.bound.map(|b| b.value),
        proof: proof_of(plan.proved),
        breaches: check(problem, &plan).iter().map(ToString::to_string).collect(),
        seconds: notes["seconds"].as_f64().unwrap_or(0.0),
        ..Run::default()
    };
    let stages = notes["stages"].as_array().into_iter().flatten();
    let proving: f64 = stages.filter(|s| s[0] != STAGE_AFTER).filter_map(|s| s[2].as_f64()).sum();
    if run.is_decided() {
        run.decided = Some(if run.proof == Proof::Infeasible { run.seconds } else { proving });
    }
    for mark in notes["trace"].as_array().into_iter().flatten() {
        let whole = |k: usize| mark[k].as_u64().and_then(|n| u32::try_from(n).ok());
        if let (Some(seconds), Some(value), Some(finish)) = (mark[0].as_f64(), whole(1), whole(2)) {
            run.marks.push(Mark { seconds, value, finish });
        }
    }
    if let (true, Some(value), Some(finish)) = (run.marks.is_empty(), run.value, run.finish) {
        run.marks.push(Mark { seconds: proving, value, finish });
    }
    Ok(run)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_is_read_with_the_notes_of_its_run() {
        let text = r#"{"format":"day-plan/1","value":0,"finish":0,"proved":"optimal","bound":{"value":0,"finish":0},
            "chosen":[],"seconds":2.5,"stages":[["first","OPTIMAL",0.25],["finish","OPTIMAL",0.5],["starts","OPTIMAL",1.7]],
            "trace":[[0.1,0,0]]}"#;
        let run = read_answer(&Problem::default(), text).unwrap();
        assert_eq!(run.decided, Some(0.75));
        assert_eq!(run.marks, vec![Mark { seconds: 0.1, value: 0, finish: 0 }]);
        assert_eq!((run.seconds, run.breaches.len()), (2.5, 0));
    }
}
