//! `stillroom shelf`.

use anyhow::Result;
use book::act::Settled;
use clap::{Args, Subcommand};
use kitchen::keep::{CountWords, MoveWords, say_containers};

use super::lay::{lay_lot, lay_lots, lay_one};
use super::{Place, as_json, now};
use crate::ending::Answered;
use crate::leaf::Leaf;

/// Shelves: what stands where, what to eat first, what is low; moving and counting.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom shelf list\n  stillroom shelf first --most 5\n  stillroom shelf move corn \"kitchen freezer\" --count 2"
)]
pub(crate) struct ShelfCommand {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// What stands where
    #[command(after_help = "Examples:\n  stillroom shelf list\n  stillroom shelf list --book demo.book")]
    List {
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
    /// What to eat first: what has not sealed, what is past its date, then the oldest
    #[command(after_help = "Examples:\n  stillroom shelf first\n  stillroom shelf first --most 5")]
    First {
        /// How many lots
        #[arg(long, default_value_t = 10)]
        most: usize,
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
    /// What is low against what the winter wants
    #[command(after_help = "Examples:\n  stillroom shelf low")]
    Low {
        #[command(flatten)]
        place: Place,
    },
    /// What the winter wants of a food
    #[command(after_help = "Examples:\n  stillroom shelf want \"damson jam, 12 half-pints\"")]
    Want {
        /// Food, counts with sizes: "damson jam, 12 half-pints"
        line: String,
        #[command(flatten)]
        place: Place,
    },
    /// Move containers to another shelf
    #[command(after_help = "Examples:\n  stillroom shelf move corn \"kitchen freezer\" --count 2")]
    Move {
        /// The lot: its number or its name
        lot: String,
        /// To which shelf
        to: String,
        /// How many; without it, all that stand there
        #[arg(long)]
        count: Option<i64>,
        /// From which shelf
        #[arg(long)]
        shelf: Option<String>,
        /// Of which size
        #[arg(long)]
        size: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// Count what stands there; a difference is shown and then settled
    #[command(after_help = "Examples:\n  stillroom shelf count \"damson jam\" 7 --shelf cellar")]
    Count {
        /// The lot: its number or its name
        lot: String,
        /// How many there are
        count: i64,
        /// On which shelf
        #[arg(long)]
        shelf: Option<String>,
        /// Of which size
        #[arg(long)]
        size: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// Settle the difference of a count: the count was right, or the book was
    #[command(
        after_help = "Examples:\n  stillroom shelf settle \"damson jam\"\n  stillroom shelf settle 26-031 --book-was-right"
    )]
    Settle {
        /// The lot: its number or its name
        lot: String,
        /// Keep what the book says
        #[arg(long)]
        book_was_right: bool,
        #[command(flatten)]
        place: Place,
    },
}

impl ShelfCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let text = match &self.what {
            What::List { json, place } => {
                let shelves = place.read(|kept, _| Ok(kept.list_shelves()))?;
                if *json { as_json(&shelves)? } else { lay_shelves(&shelves) }
            }
            What::First { most, json, place } => {
                let lots = place.read(|kept, now| Ok(kept.eat_first(now.date(), *most)))?;
                if *json { as_json(&lots)? } else { lay_lots("Eat these first.", &lots) }
            }
            What::Low { place } => lay_low(&place.read(|kept, _| Ok(kept.find_low()))?),
            What::Want { line, place } => {
                let low = place.write(|kept, now| {
                    kept.want(now, line)?;
                    Ok(kept.find_low())
                })?;
                lay_low(&low)
            }
            What::Move { lot, to, count, shelf, size, place } => {
                let words = MoveWords {
                    lot: lot.clone(),
                    to: to.clone(),
                    count: *count,
                    shelf: shelf.clone(),
                    size: size.clone(),
                };
                lay_one("Written down.", &place.write(|kept, now| kept.move_containers(now, &words))?)
            }
            What::Count { lot, count, shelf, size, place } => {
                let words =
                    CountWords { lot: lot.clone(), count: *count, shelf: shelf.clone(), size: size.clone() };
                let answer = place.write(|kept, now| kept.count_shelf(now, &words))?;
                let head = match answer.counted - answer.expected {
                    0 => "Written down. The book has as many.".to_owned(),
                    missing @ ..0 => format!("Written down. The book has {} more.", -missing),
                    more => format!("Written down. The book has {more} fewer."),
                };
                lay_one(&head, &answer.lot)
            }
            What::Settle { lot, book_was_right, place } => {
                let how = if *book_was_right { Settled::BookWasRight } else { Settled::Accepted };
                lay_one("Settled.", &place.write(|kept, now| kept.settle_counts(now, lot, how))?)
            }
        };
        Ok(Answered::with(text))
    }
}

fn lay_shelves(shelves: &[(String, Vec<kitchen::keep::LotLine>)]) -> String {
    let mut leaf = Leaf::head(&format!("What stands where, {}", now().date()), &[]);
    for (name, lots) in shelves {
        let count: i64 = lots.iter().flat_map(|lot| &lot.stands).map(|standing| standing.count).sum();
        leaf.section(&format!("{name}: {}", say_containers(count, "container")));
        for lot in lots {
            lay_lot(&mut leaf, lot);
        }
    }
    if shelves.is_empty() {
        leaf.section("Nothing stands anywhere");
    }
    leaf.finish()
}

fn lay_low(low: &[String]) -> String {
    let mut leaf = Leaf::head("Low against what the winter wants", &[]);
    leaf.section(if low.is_empty() { "Nothing is low" } else { "Low" });
    leaf.each(low);
    leaf.finish()
}
