//! `stillroom load`.

use anyhow::Result;
use book::act::LoadMark;
use clap::{Args, Subcommand, ValueEnum};
use kitchen::keep::{LoadLine, LoadWords};

use super::{Place, as_json};
use crate::ending::Answered;
use crate::leaf::Leaf;

/// Loads: what went into a canner, and when, by the clock on the wall.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  stillroom load begin \"7 quarts\" --canner \"big canner\"\n  stillroom load mark pressure --reading \"11 psi\"\n  stillroom load end --whole"
)]
pub(crate) struct LoadCommand {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// A load goes in, now
    #[command(after_help = "Examples:\n  stillroom load begin \"7 quarts\" --canner \"big canner\"")]
    Begin {
        /// What goes in: "7 quarts"
        containers: String,
        /// The canner
        #[arg(long)]
        canner: Option<String>,
        /// The gauge
        #[arg(long)]
        gauge: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// Something is seen at the load, now
    #[command(
        after_help = "Examples:\n  stillroom load mark boil\n  stillroom load mark pressure --reading \"11 psi\""
    )]
    Mark {
        /// What
        seen: Seen,
        /// What the gauge shows: "11 psi"
        #[arg(long)]
        reading: Option<String>,
        /// Which load, where several are in
        #[arg(long, value_name = "ID")]
        load: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// The load is done, now
    #[command(after_help = "Examples:\n  stillroom load end --whole\n  stillroom load end --not-whole")]
    End {
        /// It got its whole process
        #[arg(long, conflicts_with = "not_whole")]
        whole: bool,
        /// It did not
        #[arg(long)]
        not_whole: bool,
        /// Which load, where several are in
        #[arg(long, value_name = "ID")]
        load: Option<String>,
        #[command(flatten)]
        place: Place,
    },
    /// What is in, and what was in today
    #[command(after_help = "Examples:\n  stillroom load list")]
    List {
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        place: Place,
    },
}

/// What is seen at a load.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Seen {
    /// The water boils over the jars
    Boil,
    /// Steam streams out
    Venting,
    /// The process begins
    Pressure,
    /// The gauge was read
    Gauge,
    /// The water was looked at
    Water,
    /// It fell below
    FellBelow,
    /// The process is over
    HeatOff,
    /// The pressure is down by itself
    PressureDown,
    /// The jars are out
    TakenOut,
}

impl From<Seen> for LoadMark {
    fn from(seen: Seen) -> Self {
        match seen {
            Seen::Boil => Self::CameToTheBoil,
            Seen::Venting => Self::Venting,
            Seen::Pressure => Self::AtPressure,
            Seen::Gauge => Self::GaugeRead,
            Seen::Water => Self::WaterChecked,
            Seen::FellBelow => Self::FellBelow,
            Seen::HeatOff => Self::HeatOff,
            Seen::PressureDown => Self::PressureDown,
            Seen::TakenOut => Self::TakenOut,
        }
    }
}

/// What to do when the pressure or the boil was lost: the book does not know the process, so it sends on.
const FELL_BELOW: &str = "It fell below. The book does not reckon what the load still needs: look it up where the \
                          process is printed, and until then count it as not processed. `stillroom clear` shows where \
                          it is printed; the county extension office knows what to do with the food.";

impl LoadCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let (load, aside) = match &self.what {
            What::Begin { containers, canner, gauge, place } => {
                let words = LoadWords {
                    containers: containers.clone(),
                    canner: canner.clone(),
                    gauge: gauge.clone(),
                };
                (place.write(|kept, now| kept.begin_load(now, &words))?, None)
            }
            What::Mark { seen, reading, load, place } => {
                let mark = LoadMark::from(*seen);
                let line = place
                    .write(|kept, now| kept.mark_load(now, load.as_deref(), mark, reading.as_deref()))?;
                (line, (mark == LoadMark::FellBelow).then_some(FELL_BELOW))
            }
            What::End { whole, not_whole, load, place } => {
                let whole = (*whole || *not_whole).then_some(*whole);
                (place.write(|kept, now| kept.end_load(now, load.as_deref(), whole))?, None)
            }
            What::List { json, place } => {
                let loads = place.read(|kept, now| Ok(kept.list_loads(now.date())))?;
                let text = if *json { as_json(&loads)? } else { lay_loads("Loads", &loads, None) };
                return Ok(Answered::with(text));
            }
        };
        Ok(Answered::with(lay_loads("Written down.", &[load], aside)))
    }
}

fn lay_loads(title: &str, loads: &[LoadLine], aside: Option<&str>) -> String {
    let aside: Vec<String> = aside.into_iter().map(str::to_owned).collect();
    let mut leaf = Leaf::head(title, &aside);
    leaf.section(if loads.is_empty() { "No load is in" } else { "By the clock on the wall" });
    for load in loads {
        let canner = load.canner.as_deref().map(|canner| format!(" in {canner}")).unwrap_or_default();
        leaf.named("", &format!("{}{canner}", load.holds));
        for (time, says) in &load.clock {
            leaf.line(time, says);
        }
        leaf.under(&load.id);
    }
    leaf.finish()
}
