//! `stillroom draw`.

use anyhow::Result;
use clap::Args;
use kitchen::keep::{DrawWords, WentWords};

use super::Place;
use super::lay::lay_one;
use crate::ending::Answered;

const EXAMPLES: &str = "\
Examples:
  stillroom draw \"damson jam\"                   took one, of the oldest
  stillroom draw 26-031 --count 2 --given Otto
  stillroom draw 26-031 --given Otto --later    where the last one went";

/// Took one: a container leaves a shelf. Where it went can be said now, later or never.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct DrawCommand {
    /// The lot: its number or its name; of several with one name, the one to eat first
    lot: String,
    /// How many
    #[arg(long, default_value_t = 1, allow_negative_numbers = true)]
    count: i64,
    /// From which shelf
    #[arg(long)]
    shelf: Option<String>,
    /// Of which size
    #[arg(long)]
    size: Option<String>,
    /// One that had not sealed
    #[arg(long)]
    unsealed: bool,
    /// It was said before that it was taken; this says where it went
    #[arg(long, conflicts_with_all = ["count", "shelf", "size", "unsealed"], requires = "end")]
    later: bool,
    #[command(flatten)]
    went: WentArgs,
    #[command(flatten)]
    place: Place,
}

/// Where it went.
#[derive(Debug, Args)]
#[group(id = "end", multiple = false)]
struct WentArgs {
    /// Eaten at home
    #[arg(long)]
    eaten: bool,
    /// Given to someone
    #[arg(long, value_name = "WHOM")]
    given: Option<String>,
    /// Swapped with someone
    #[arg(long, value_name = "WHOM")]
    swapped: Option<String>,
    /// Sold to someone, or at a market
    #[arg(long, value_name = "WHOM")]
    sold: Option<String>,
    /// Shown at a fair
    #[arg(long, value_name = "WHERE")]
    shown: Option<String>,
    /// Thrown away, and why
    #[arg(long, value_name = "WHY")]
    thrown: Option<String>,
}

impl WentArgs {
    fn words(&self) -> Option<WentWords> {
        let named = [
            self.given.clone().map(WentWords::Given),
            self.swapped.clone().map(WentWords::Swapped),
            self.sold.clone().map(WentWords::Sold),
            self.shown.clone().map(WentWords::Shown),
            self.thrown.clone().map(WentWords::Thrown),
            self.eaten.then_some(WentWords::Eaten),
        ];
        named.into_iter().flatten().next()
    }
}

impl DrawCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let went = self.went.words();
        let lot = self.place.write(|kept, now| match &went {
            Some(went) if self.later => kept.tell_draw(now, &self.lot, went),
            _ => {
                let words = DrawWords {
                    lot: self.lot.clone(),
                    count: self.count,
                    shelf: self.shelf.clone(),
                    size: self.size.clone(),
                    unsealed: self.unsealed,
                    went: went.clone(),
                };
                kept.draw(now, &words)
            }
        })?;
        Ok(Answered::with(lay_one("Written down. What is left:", &lot)))
    }
}
