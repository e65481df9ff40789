//! `stillroom take-back` and `stillroom history`.

use anyhow::Result;
use clap::Args;
use kitchen::wording::as_sentence;

use super::{Place, as_json};
use crate::ending::Answered;
use crate::leaf::Leaf;

/// Take back the last act, or the one named by its id. Nothing is erased: it is struck by a further entry.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom take-back\n  stillroom take-back --why \"it stood behind the honey\""
)]
pub(crate) struct TakeBackCommand {
    /// The id of an entry, as `stillroom history` shows it; without it, your last act
    entry: Option<String>,
    /// Why
    #[arg(long)]
    why: Option<String>,
    #[command(flatten)]
    place: Place,
}

impl TakeBackCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let taken =
            self.place.write(|kept, now| kept.take_back(now, self.entry.as_deref(), self.why.as_deref()))?;
        let mut leaf = Leaf::head("Taken back.", &[]);
        leaf.section("No longer counts");
        leaf.each(&taken.acts.iter().map(|act| as_sentence(act)).collect::<Vec<_>>());
        Ok(Answered::with(leaf.finish()))
    }
}

/// Everything that was ever said about a lot or an entry, struck or not.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom history 26-031\n  stillroom history \"damson jam\"")]
pub(crate) struct HistoryCommand {
    /// The lot: its number or its name; or the id of an entry
    which: String,
    /// Print the answer as JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

impl HistoryCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let lines = self.place.read(|kept, now| kept.tell_history(now, &self.which))?;
        if self.json {
            return Ok(Answered::with(as_json(&lines)?));
        }
        let mut leaf = Leaf::head(&format!("Everything said about {}", self.which), &[]);
        leaf.section("As it was written down");
        for line in &lines {
            let (date, clock) = line.happened.split_once(' ').unwrap_or((&line.happened, ""));
            let mark =
                if line.stands || line.says.starts_with("took back") { "" } else { " (no longer counts)" };
            leaf.line(date, &format!("{clock} {}: {}{mark}", line.who, line.says));
            if let Some(why) = &line.why {
                leaf.under(&format!("because: {why}"));
            }
            leaf.under(&line.id);
        }
        Ok(Answered::with(leaf.finish()))
    }
}
