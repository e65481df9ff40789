//! `stillroom working`.

use anyhow::Result;
use book::act::{Surface, WorkingKind, WorkingOutcome};
use clap::{Args, Subcommand, ValueEnum};
use kitchen::keep::{LookWords, WorkingWords};

use super::lay::lay_workings;
use super::{Place, as_json};
use crate::ending::{Answered, wrong_question};

/// Workings: ferments, drying, conditioning, cooling jars, and when to look at them next.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom working begin kraut ferment --shelf cellar --look-in 3\n  stillroom working list"
)]
pub(crate) struct WorkingCommand {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Begin one
    #[command(after_help = "Examples:\n  stillroom working begin kraut ferment --shelf cellar --look-in 3")]
    Begin {
        /// What it is called
        name: String,
        /// What kind
        kind: Kind,
        /// Where it stands
        #[arg(long)]
        shelf: Option<String>,
        /// In how many days to look at it
        #[arg(long, value_name = "DAYS")]
        look_in: Option<i64>,
        #[command(flatten)]
        place: Place,
    },
    /// Look at one
    #[command(
        after_help = "Examples:\n  stillroom working look kraut --taste \"not sour enough\" --temp \"66 F\" --look-in 4"
    )]
    Look(Look),
    /// Move one: into the cold, off the rack
    #[command(after_help = "Examples:\n  stillroom working move kraut refrigerator --look-in 14")]
    Move {
        /// The working: its name or id
        working: String,
        /// To where
        to: String,
        /// In how many days to look at it
        #[arg(long, value_name = "DAYS")]
        look_in: Option<i64>,
        #[command(flatten)]
        place: Place,
    },
    /// End one
    #[command(after_help = "Examples:\n  stillroom working end kraut done")]
    End {
        /// The working: its name or id
        working: String,
        /// How
        outcome: Outcome,
        #[command(flatten)]
        place: Place,
    },
    /// List what goes on, what to look at first at the head
    #[command(after_help = "Examples:\n  stillroom working list")]
    List {
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
}

#[derive(Debug, Args)]
struct Look {
    /// The working: its name or id
    working: String,
    /// How it tastes: "not sour enough"
    #[arg(long)]
    taste: Option<String>,
    /// How warm it is: "65 F"
    #[arg(long, allow_hyphen_values = true)]
    temp: Option<String>,
    /// What the meter or strip shows: 3.85
    #[arg(long, value_name = "PH")]
    ph: Option<String>,
    /// What it weighs
    #[arg(long)]
    weight: Option<String>,
    /// What grows on it
    #[arg(long)]
    surface: Option<Growth>,
    /// In how many days to look again
    #[arg(long, value_name = "DAYS")]
    look_in: Option<i64>,
    #[command(flatten)]
    place: Place,
}

/// What kind of working.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Kind {
    /// A ferment
    Ferment,
    /// Drying
    Drying,
    /// Dried pieces evening out in a jar
    Conditioning,
    /// Jars cooling before the seals are looked at
    Cooling,
    /// What wants weeks: a pickle, a liqueur
    Steeping,
}

impl From<Kind> for WorkingKind {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Ferment => Self::Ferment,
            Kind::Drying => Self::Drying,
            Kind::Conditioning => Self::Conditioning,
            Kind::Cooling => Self::Cooling,
            Kind::Steeping => Self::Steeping,
        }
    }
}

/// What grows on a surface.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Growth {
    /// Nothing
    Clear,
    /// A thin white film
    Film,
    /// Mould
    Mould,
}

impl From<Growth> for Surface {
    fn from(growth: Growth) -> Self {
        match growth {
            Growth::Clear => Self::Clear,
            Growth::Film => Self::Film,
            Growth::Mould => Self::Mould,
        }
    }
}

/// How a working ended.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Outcome {
    /// Done and put up
    Done,
    /// Eaten from the crock
    Eaten,
    /// Thrown away
    Thrown,
}

impl From<Outcome> for WorkingOutcome {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Done => Self::Done,
            Outcome::Eaten => Self::Eaten,
            Outcome::Thrown => Self::Thrown,
        }
    }
}

impl WorkingCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let working = match &self.what {
            What::Begin { name, kind, shelf, look_in, place } => {
                let words = WorkingWords {
                    name: name.clone(),
                    what: (*kind).into(),
                    shelf: shelf.clone(),
                    look_in_days: *look_in,
                };
                place.write(|kept, now| kept.begin_working(now, &words))?
            }
            What::Look(look) => {
                let words = LookWords {
                    working: look.working.clone(),
                    temp: look.temp.clone(),
                    ph_hundredths: look.ph.as_deref().map(read_ph).transpose()?,
                    weight: look.weight.clone(),
                    taste: look.taste.clone(),
                    surface: look.surface.map(Surface::from),
                    look_in_days: look.look_in,
                };
                look.place.write(|kept, now| kept.look(now, &words))?
            }
            What::Move { working, to, look_in, place } => {
                place.write(|kept, now| kept.move_working(now, working, to, *look_in))?
            }
            What::End { working, outcome, place } => {
                place.write(|kept, now| kept.end_working(now, working, (*outcome).into()))?
            }
            What::List { json, place } => {
                let workings = place.read(|kept, _| Ok(kept.list_workings()))?;
                let text = if *json {
                    as_json(&workings)?
                } else {
                    lay_workings("What goes on by itself", &workings)
                };
                return Ok(Answered::with(text));
            }
        };
        Ok(Answered::with(lay_workings("Written down.", &[working])))
    }
}

/// `3.85` in hundredths.
fn read_ph(typed: &str) -> Result<i64> {
    let fault =
        || wrong_question(format!("{typed:?} is no pH; hint: write it like 3.8 or 3.85, from 0 to 14"));
    let (whole, rest) = typed.split_once(['.', ',']).unwrap_or((typed, "0"));
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || !digits(rest) || rest.len() > 2 {
        return Err(fault());
    }
    let whole: i64 = whole.parse().map_err(|_| fault())?;
    let hundredths: i64 = format!("{rest:0<2}").parse().map_err(|_| fault())?;
    if whole > 14 { Err(fault()) } else { Ok(whole * 100 + hundredths) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ph_is_read_to_the_hundredth() {
        for (typed, hundredths) in [("3.85", 385), ("4", 400), ("3,8", 380), ("3.05", 305)] {
            assert_eq!(read_ph(typed).unwrap(), hundredths, "{typed}");
        }
        for typed in ["", "3.", "-1", "15", "3.855", "sour", "99999999999999999999"] {
            assert!(read_ph(typed).is_err(), "{typed}");
        }
    }
}
