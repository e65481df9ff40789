//! `stillroom canners`.

use std::path::PathBuf;

use almanac::{Almanac, Verdict};
use anyhow::{Context, Result};
use clap::Args;
use jiff::civil::Date;
use kitchen::ask::{ClearAnswer, ClearWords};
use kitchen::house::{CannerSheet, House, Register, list_canners};
use kitchen::{DayFaults, read_house_on};
use measure::write_pressure;

use crate::almanac::load_almanac;
use crate::cited::{Cited, lay_out_sources};
use crate::ending::{Answered, wrong_question};
use crate::leaf::Leaf;
use crate::reading::read_bytes;
use kitchen::wording::as_sentence;

const EXAMPLES: &str = "\
Examples:
  stillroom canners house.toml
  stillroom canners house.toml --food beans-snap --pack raw --jar pint
  stillroom canners house.toml --json

The file is described in docs/formats/house.md.";

/// List the canners of the house: gauges to test or replace, what to hold, how many jars go in.
#[derive(Debug, Args)]
#[command(after_help = EXAMPLES)]
pub(crate) struct CannersCommand {
    /// The house file; `-` is standard input
    house: PathBuf,
    /// A food, to see what each canner must hold for it
    #[arg(long, requires = "pack", requires = "jar")]
    food: Option<String>,
    /// How it goes into the jar: hot, raw
    #[arg(long, requires = "food")]
    pack: Option<String>,
    /// The jar: half-pint, pint, quart ...
    #[arg(long, requires = "food")]
    jar: Option<String>,
    /// The height of the kitchen above the sea, where the house file has none
    #[arg(long, requires = "food", allow_hyphen_values = true)]
    altitude: Option<String>,
    /// The date to count tests by, else today: 2026-09-12
    #[arg(long, value_name = "DATE")]
    today: Option<Date>,
    /// Print canners/1 as JSON
    #[arg(long)]
    json: bool,
}

impl CannersCommand {
    pub(crate) fn run(&self) -> Result<Answered> {
        let almanac = load_almanac()?;
        let today = self.today.unwrap_or_else(|| jiff::ZonedDateTime::now().date());
        let house = read_house_file(&self.house, today, &almanac)?;
        let food = self.food.as_ref().map(|food| ClearWords {
            food: food.clone(),
            pack: self.pack.clone(),
            jar: self.jar.clone(),
            altitude: self.altitude.clone(),
            ..ClearWords::default()
        });
        let register = list_canners(&almanac, &house, today, food.as_ref()).map_err(wrong_question)?;
        let text = if self.json {
            serde_json::to_string_pretty(&register).context("the answer cannot be written as JSON")? + "\n"
        } else {
            lay_out_register(&almanac, &register)
        };
        Ok(Answered::with(text))
    }
}

/// The house file at a path, with every fault told under its name.
pub(crate) fn read_house_file(path: &std::path::Path, today: Date, almanac: &Almanac) -> Result<House> {
    let bytes = read_bytes(path)?;
    read_house_on(today, &bytes, almanac).map_err(|faults| wrong_question(list_faults(&faults, path)))
}

fn list_faults(faults: &DayFaults, path: &std::path::Path) -> String {
    let lines = faults.faults.iter().map(|fault| {
        let said = fault.to_string();
        let rest = said.strip_prefix(&fault.file.to_string()).unwrap_or(&said).to_owned();
        format!("{}{rest}", path.display())
    });
    lines.collect::<Vec<_>>().join("\n")
}

fn lay_out_register(almanac: &Almanac, register: &Register) -> String {
    let mut leaf = Leaf::head("The canners of the house", &[format!("On {}.", register.today)]);
    let mut cited = Cited::new(almanac);
    if register.canners.is_empty() {
        leaf.section("None");
        leaf.line("", "The house file names no canner. Write one as [[canner]].");
    }
    for canner in &register.canners {
        leaf.section(&format!("{} ({})", canner.name, canner.kind));
        for said in &canner.says {
            leaf.line("", &as_sentence(&said.text));
            if let Some(citation) = &said.citation {
                leaf.under(&cited.mark(citation));
            }
        }
        lay_out_holds(&mut leaf, canner);
        if let Some(answer) = &canner.process {
            leaf.gap();
            lay_out_process(&mut leaf, &mut cited, answer);
        }
    }
    leaf.section("Whom to ask");
    leaf.line("", kitchen::load::WHOM_TO_ASK);
    lay_out_sources(&mut leaf, &cited.list());
    leaf.finish()
}

fn lay_out_holds(leaf: &mut Leaf, canner: &CannerSheet) {
    for holds in &canner.holds {
        let text = match (holds.found, holds.printed) {
            (Some(_), _) => format!("{} jars at once, as you found it.", holds.jar),
            (None, _) => {
                format!("{} jars at once are printed for a usual one; yours was not tried.", holds.jar)
            }
        };
        let count = holds.found.or(holds.printed).unwrap_or_default();
        leaf.line(&count.to_string(), &text);
    }
}

fn lay_out_process(leaf: &mut Leaf, cited: &mut Cited<'_>, answer: &ClearAnswer) {
    let clearance = match answer {
        ClearAnswer::Judged(clearance) if clearance.verdict == Verdict::Tested => clearance,
        ClearAnswer::Judged(clearance) => {
            leaf.named("", "No process on this canner");
            for reason in &clearance.because {
                leaf.line("", &as_sentence(&reason.text));
            }
            return;
        }
        ClearAnswer::Refused(food) => {
            leaf.named("", "No process for this food");
            for reason in &food.refused.because {
                leaf.line("", &as_sentence(&reason.text));
            }
            return;
        }
        // The register asks for no change, so nothing but a process is ever judged here.
        ClearAnswer::Changes(_) => return,
    };
    for line in &clearance.processes {
        let process = line.process();
        let how = match (line.hold(), process.pressure()) {
            (Some(hold), Some(printed)) => {
                format!("Hold the dial at {}; {} is printed.", write_pressure(hold), write_pressure(printed))
            }
            (None, Some(printed)) => format!("Under the weight for {}.", write_pressure(printed)),
            (_, None) => "Without pressure.".to_owned(),
        };
        leaf.line(&format!("{} min", process.minutes().0), &how);
        leaf.under(&cited.mark(process.citation()));
    }
}
