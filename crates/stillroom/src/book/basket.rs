//! `stillroom basket`.

use anyhow::Result;
use book::act::WentWhere;
use clap::{Args, Subcommand, ValueEnum};
use kitchen::keep::TakeInWords;

use super::lay::lay_baskets;
use super::{Place, as_json, now};
use crate::almanac::load_almanac;
use crate::ending::Answered;

/// Baskets: what came in and still waits.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  stillroom basket in damsons \"5.4 kg\"\n  stillroom basket list")]
pub(crate) struct BasketCommand {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Take a basket in
    #[command(
        after_help = "Examples:\n  stillroom basket in damsons \"5.4 kg\" --bowl \"blue bowl\" --tare \"400 g\"\n  stillroom basket in corn \"24 ears\" --from \"the market\""
    )]
    In(TakeIn),
    /// Use a part of a basket, or all that is left
    #[command(
        after_help = "Examples:\n  stillroom basket use damsons \"3 kg\"\n  stillroom basket use damsons"
    )]
    Use {
        /// The basket: its name or id
        basket: String,
        /// How much; without it, all that is left
        amount: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// A basket, or a part of it, left as it was
    #[command(
        after_help = "Examples:\n  stillroom basket leave damsons composted --amount \"1 lb\"\n  stillroom basket leave corn given --to Otto"
    )]
    Leave {
        /// The basket: its name or id
        basket: String,
        /// Where it went
        went: Gone,
        /// How much; without it, all that is left
        #[arg(long)]
        amount: Option<String>,
        /// To whom
        #[arg(long)]
        to: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// Correct how much a basket held, without its bowl
    #[command(
        after_help = "Examples:\n  stillroom basket correct damsons \"4.9 kg\" --why \"read it wrong\""
    )]
    Correct {
        /// The basket: its name or id
        basket: String,
        /// How much it really was
        amount: String,
        /// Why
        #[arg(long)]
        why: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// List what waits
    #[command(after_help = "Examples:\n  stillroom basket list")]
    List {
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
}

#[derive(Debug, Args)]
struct TakeIn {
    /// What it is: damsons
    name: String,
    /// How much: "5.4 kg", "24 ears"; with --bowl, what the scale shows
    amount: String,
    /// The bowl it is weighed in
    #[arg(long)]
    bowl: Option<String>,
    /// What the bowl weighs; it is remembered
    #[arg(long, value_name = "WEIGHT")]
    tare: Option<String>,
    /// Split, overgrown, fallen, bought to fill up; may be given again
    #[arg(long = "condition", value_name = "WORD")]
    conditions: Vec<String>,
    /// Where it is from
    #[arg(long)]
    from: Option<String>,
    #[command(flatten)]
    place: Place,
}

/// Where a basket went.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Gone {
    /// Eaten fresh
    Eaten,
    /// Composted, or fed to hens
    Composted,
    /// Given away
    Given,
    /// Sold
    Sold,
}

impl From<Gone> for WentWhere {
    fn from(gone: Gone) -> Self {
        match gone {
            Gone::Eaten => Self::EatenFresh,
            Gone::Composted => Self::Composted,
            Gone::Given => Self::Given,
            Gone::Sold => Self::Sold,
        }
    }
}

impl BasketCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let basket = match &self.what {
            What::In(taken) => {
                let almanac = load_almanac()?;
                let words = TakeInWords {
                    name: taken.name.clone(),
                    amount: taken.amount.clone(),
                    bowl: taken.bowl.clone(),
                    tare: taken.tare.clone(),
                    condition: taken.conditions.clone(),
                    origin: taken.from.clone(),
                };
                taken.place.write(|kept, now| kept.take_in(now, &almanac, &words))?
            }
            What::Use { basket, amount, place } => {
                place.write(|kept, now| kept.use_basket(now, basket, amount.as_deref()))?
            }
            What::Leave { basket, went, amount, to, place } => place.write(|kept, now| {
                kept.leave_basket(now, basket, amount.as_deref(), (*went).into(), to.as_deref())
            })?,
            What::Correct { basket, amount, why, place } => {
                place.write(|kept, now| kept.correct_basket(now, basket, amount, why.as_deref()))?
            }
            What::List { json, place } => {
                let baskets = place.read(|kept, _| Ok(kept.list_baskets()))?;
                let title = format!("What waits, {}", now().date());
                return Ok(Answered::with(if *json {
                    as_json(&baskets)?
                } else {
                    lay_baskets(&title, &baskets)
                }));
            }
        };
        Ok(Answered::with(lay_baskets("Written down.", &[basket])))
    }
}
