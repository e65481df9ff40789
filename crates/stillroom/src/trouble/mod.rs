//! `stillroom trouble`: a load that starts, or is in trouble.

mod sheet;

use anyhow::{Context, Result};
use clap::Args;
use jiff::ZonedDateTime;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use kitchen::load::{LoadWords, ask_load};

use crate::almanac::load_almanac;
use crate::ending::{Answered, wrong_question};

const EXAMPLES: &str = "\
Examples:
  stillroom trouble power-cut --canner dial --minutes 25 \\
      --begun \"2026-09-12 13:42\" --lost 13:55 --back 14:20 --now \"2026-09-12 14:25\"
  stillroom trouble start --canner weighted --minutes 25 --steam 13:00 --begun 13:17
  stillroom trouble wrong-acid --heat-off 13:55
  stillroom trouble unsealed --heat-off 13:55 --food beans-snap --jar pint \\
      --canner dial --altitude \"800 ft\"

Troubles: start, boil-lost, pressure-lost, power-cut, boiled-dry, jar-broke,
water-low, water-below-lids, forced-cooling, acid-forgotten, wrong-acid,
wrong-time, wrong-pack, wrong-jar, wrong-vent, wrong-canner, wrong-altitude,
wrong-formula, left-alone, unsealed.

A time is 13:42, 1:42 pm or, with its date, \"2026-09-12 13:42\".
Exit code 0 when there is something to go on with, 3 when the load is thrown
away, treated as not processed, or may not start, 2 when the question is wrong.";

/// Ask when the clock of a load starts and ends, and what to do when something went wrong.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct TroubleCommand {
    /// What went wrong, a word of the list below; `start` when nothing did
    trouble: String,
    /// The canner: boiling-water, steam, dial, weighted
    #[arg(long)]
    canner: Option<String>,
    /// The whole printed time of the process: 25, "25 min", "1 h 30 min"
    #[arg(long)]
    minutes: Option<String>,
    /// When you noticed it: before, during, after the process
    #[arg(long)]
    noticed: Option<String>,
    /// Since when a full stream of steam comes from the open vent
    #[arg(long, value_name = "TIME")]
    steam: Option<String>,
    /// When the full boil or the pressure was reached
    #[arg(long, value_name = "TIME")]
    begun: Option<String>,
    /// When boil, pressure or power was lost; again for each time
    #[arg(long, value_name = "TIME")]
    lost: Vec<String>,
    /// When the full boil or the pressure was back; again for each time
    #[arg(long, value_name = "TIME")]
    back: Vec<String>,
    /// When the heat went off
    #[arg(long, value_name = "TIME")]
    heat_off: Option<String>,
    /// The food: an id of the almanac or a name
    #[arg(long)]
    food: Option<String>,
    /// How it went into the jar: hot, raw
    #[arg(long)]
    pack: Option<String>,
    /// The jar: half-pint, pint, quart ...
    #[arg(long)]
    jar: Option<String>,
    /// The height of the kitchen above the sea: "1,200 ft", 410m
    #[arg(long, allow_hyphen_values = true)]
    altitude: Option<String>,
    /// Answer as if it were this time, with its date; else the clock of this machine
    #[arg(long, value_name = "TIME")]
    now: Option<String>,
    /// Print load-trouble/1 as JSON
    #[arg(long)]
    json: bool,
}

impl TroubleCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let now = read_now(self.now.as_deref())?;
        let answer = ask_load(&almanac, &self.words(), &now).map_err(wrong_question)?;
        let text = if self.json {
            serde_json::to_string_pretty(&answer).context("the answer cannot be written as JSON")? + "\n"
        } else {
            sheet::lay_out_load(&almanac, &answer)
        };
        Ok(Answered { text, refused: answer.outcome.is_refusal() })
    }

    fn words(&self) -> LoadWords {
        LoadWords {
            trouble: self.trouble.clone(),
            canner: self.canner.clone(),
            minutes: self.minutes.clone(),
            noticed: self.noticed.clone(),
            steam: self.steam.clone(),
            begun: self.begun.clone(),
            lost: self.lost.clone(),
            back: self.back.clone(),
            heat_off: self.heat_off.clone(),
            food: self.food.clone(),
            pack: self.pack.clone(),
            jar: self.jar.clone(),
            altitude: self.altitude.clone(),
        }
    }
}

/// The clock of this machine, or what is said in its place.
fn read_now(typed: Option<&str>) -> Result<ZonedDateTime> {
    let Some(typed) = typed else { return Ok(ZonedDateTime::now()) };
    let wrong = || {
        wrong_question(format!("--now {typed:?} is no date and time; hint: write it as \"2026-09-12 14:25\""))
    };
    let shown: DateTime = typed.trim().parse().map_err(|_| wrong())?;
    shown.to_zoned_datetime(TimeZone::system()).map_err(|_| wrong())
}
