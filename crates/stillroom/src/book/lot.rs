//! `stillroom lot`.

use anyhow::Result;
use book::RoughDate;
use book::act::LossReason;
use clap::{Args, Subcommand, ValueEnum};
use kitchen::keep::{LossWords, TopUpAnswer, TopUpWords};
use kitchen::wording::as_sentence;

use super::lay::{lay_one, lay_sheet};
use super::{Place, as_json};
use crate::ending::Answered;
use crate::leaf::Leaf;

/// One lot: everything about it, its sisters and who has them; seals, losses, trouble, topping up.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom lot show 26-031\n  stillroom lot seals \"damson jam\" --failed 1\n  stillroom lot trouble 26-031 \"bulging lid\""
)]
pub(crate) struct LotCommand {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Where it came from, what happened to it, its sisters and who has them
    #[command(after_help = "Examples:\n  stillroom lot show 26-031\n  stillroom lot show \"damson jam\"")]
    Show {
        /// The lot: its number or its name
        lot: String,
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
    /// A recall sheet: what to pull and whom to tell
    #[command(after_help = "Examples:\n  stillroom lot recall 26-031")]
    Recall {
        /// The lot: its number or its name
        lot: String,
        #[command(flatten)]
        place: Place,
    },
    /// Something is wrong with a container: write it down and get the recall sheet
    #[command(after_help = "Examples:\n  stillroom lot trouble 26-031 \"bulging lid\"")]
    Trouble {
        /// The lot: its number or its name
        lot: String,
        /// What was seen: "bulging lid"; may be given again
        #[arg(required = true)]
        signs: Vec<String>,
        /// In how many containers
        #[arg(long, default_value_t = 1)]
        count: i64,
        #[command(flatten)]
        place: Place,
    },
    /// Someone who has a container of it was told
    #[command(after_help = "Examples:\n  stillroom lot warned 26-031 Otto")]
    Warned {
        /// The lot: its number or its name
        lot: String,
        /// Who
        whom: String,
        #[command(flatten)]
        place: Place,
    },
    /// Seals were looked at: so many failed, the others hold
    #[command(
        after_help = "Examples:\n  stillroom lot seals 26-031\n  stillroom lot seals 26-031 --failed 1"
    )]
    Seals {
        /// The lot: its number or its name
        lot: String,
        /// How many failed
        #[arg(long, default_value_t = 0)]
        failed: i64,
        #[command(flatten)]
        place: Place,
    },
    /// Containers were lost
    #[command(
        after_help = "Examples:\n  stillroom lot lost 26-031 broken\n  stillroom lot lost 26-031 spoiled --unsealed"
    )]
    Lost {
        /// The lot: its number or its name
        lot: String,
        /// Why
        reason: Reason,
        /// How many
        #[arg(long, default_value_t = 1)]
        count: i64,
        /// From which shelf
        #[arg(long)]
        shelf: Option<String>,
        /// Of which size
        #[arg(long)]
        size: Option<String>,
        /// Some that had not sealed
        #[arg(long)]
        unsealed: bool,
        #[command(flatten)]
        place: Place,
    },
    /// Say its line anew: name, counts, place, date
    #[command(
        after_help = "Examples:\n  stillroom lot correct 26-031 \"damson jam, 8 half-pints\" --why \"miscounted\""
    )]
    Correct {
        /// The lot: its number or its name
        lot: String,
        /// The line as it should have been: "damson jam, 8 half-pints"
        line: String,
        /// Why
        #[arg(long)]
        why: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// Add to an open container; it keeps the date of its oldest part
    #[command(
        after_help = "Examples:\n  stillroom lot top-up raspberries \"1/2 lb\"\n  stillroom lot top-up raspberries --basket raspberries"
    )]
    TopUp {
        /// The lot: its number or its name
        lot: String,
        /// How much
        amount: Option<String>,
        /// From which basket
        #[arg(long)]
        basket: Option<String>,
        /// How old it is, if older than today
        #[arg(long, value_name = "DATE")]
        from: Option<RoughDate>,
        /// It is low in acid, oiled or cooked
        #[arg(long)]
        low_acid_oiled_or_cooked: bool,
        #[command(flatten)]
        place: Place,
    },
    /// Close an open container: nothing more is added
    #[command(after_help = "Examples:\n  stillroom lot close raspberries")]
    Close {
        /// The lot: its number or its name
        lot: String,
        #[command(flatten)]
        place: Place,
    },
}

/// Why containers were lost.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Reason {
    /// The glass broke
    Broken,
    /// It went bad
    Spoiled,
    /// It ran out
    Spilt,
    /// It was done again as another lot
    DoneAgain,
    /// Called back because a sister was bad
    CalledBack,
    /// It is not to be found
    Missing,
}

impl From<Reason> for LossReason {
    fn from(reason: Reason) -> Self {
        match reason {
            Reason::Broken => Self::Broken,
            Reason::Spoiled => Self::Spoiled,
            Reason::Spilt => Self::Spilt,
            Reason::DoneAgain => Self::DoneAgain,
            Reason::CalledBack => Self::CalledBack,
            Reason::Missing => Self::Missing,
        }
    }
}

impl LotCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let text = match &self.what {
            What::Show { lot, json, place } => {
                let sheet = place.read(|kept, now| kept.trace(now, lot))?;
                if *json { as_json(&sheet)? } else { lay_sheet(&sheet, false) }
            }
            What::Recall { lot, place } => lay_sheet(&place.read(|kept, now| kept.trace(now, lot))?, true),
            What::Trouble { lot, signs, count, place } => {
                lay_sheet(&place.write(|kept, now| kept.find_trouble(now, lot, signs, *count))?, true)
            }
            What::Warned { lot, whom, place } => {
                lay_one("Written down.", &place.write(|kept, now| kept.warn(now, lot, whom))?)
            }
            What::Seals { lot, failed, place } => {
                lay_one("Written down.", &place.write(|kept, now| kept.check_seals(now, lot, *failed))?)
            }
            What::Lost { lot, reason, count, shelf, size, unsealed, place } => {
                let words = LossWords {
                    lot: lot.clone(),
                    count: *count,
                    reason: (*reason).into(),
                    shelf: shelf.clone(),
                    size: size.clone(),
                    unsealed: *unsealed,
                };
                lay_one("Written down. What is left:", &place.write(|kept, now| kept.lose(now, &words))?)
            }
            What::Correct { lot, line, why, place } => {
                let lot = place.write(|kept, now| kept.correct_lot(now, lot, line, why.as_deref()))?;
                lay_one("Written down.", &lot)
            }
            What::TopUp { lot, amount, basket, from, low_acid_oiled_or_cooked, place } => {
                let words = TopUpWords {
                    lot: lot.clone(),
                    amount: amount.clone(),
                    basket: basket.clone(),
                    from: *from,
                    low_acid_oiled_or_cooked: *low_acid_oiled_or_cooked,
                };
                match place.write(|kept, now| kept.top_up(now, &words))? {
                    TopUpAnswer::Added(lot) => lay_one("Written down.", &lot),
                    TopUpAnswer::Refused { says, instead } => {
                        return Ok(Answered::refusing(lay_refusal(&says, &instead)));
                    }
                }
            }
            What::Close { lot, place } => {
                lay_one("Closed.", &place.write(|kept, now| kept.close_lot(now, lot))?)
            }
        };
        Ok(Answered::with(text))
    }
}

fn lay_refusal(says: &str, instead: &str) -> String {
    let mut leaf = Leaf::head("Do not.", &[as_sentence(says)]);
    leaf.section("Instead");
    leaf.each(&[as_sentence(instead)]);
    leaf.finish()
}
