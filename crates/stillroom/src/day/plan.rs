//! `stillroom day FILE`, and the day of the invented household when nothing is asked.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use almanac::Almanac;
use anyhow::{Context, Result, anyhow};
use clap::Args;
use kitchen::answer::DayAnswer;
use kitchen::{DayFaults, WhichFile, read_day_on};
use paper::render_day_sheet;

use super::sheet;
use super::why::explain;
use super::wording::word_day;
use crate::almanac::load_almanac;
use crate::ending::{Answered, wrong_question};
use crate::reading::read_bytes;

/// The invented household's day, which is planned when nothing is asked.
const DEMO_DAY: &str = include_str!("../../../../demo/day.toml");
/// Its house.
const DEMO_HOUSE: &str = include_str!("../../../../demo/house.toml");
/// The file that is looked for beside a day file.
const HOUSE_FILE: &str = "house.toml";

/// What is wanted of a planned day.
#[derive(Debug, Default, Args)]
pub(crate) struct PlanDay {
    /// The day file; `-` is standard input
    #[arg(required = true)]
    file: Option<PathBuf>,
    /// The house file; without it, house.toml beside the day file when there is one
    #[arg(long, value_name = "FILE")]
    house: Option<PathBuf>,
    /// Print the whole answer as JSON
    #[arg(long, conflicts_with = "why")]
    json: bool,
    /// Explain a figure instead of printing the day: a make, a produce, `finish`
    #[arg(long, value_name = "WHAT")]
    why: Option<String>,
    /// Also write the day as one HTML page, to open on a phone or to print
    #[arg(long, value_name = "FILE")]
    html: Option<PathBuf>,
}

/// The texts a day is planned from, with the names to call them by.
struct DayTexts {
    day: Vec<u8>,
    day_name: String,
    house: Option<Vec<u8>>,
    house_name: String,
}

impl PlanDay {
    pub(crate) fn run(&self) -> Result<Answered> {
        let file = self.file.as_deref().context("clap asks for the file")?;
        let house = self.house.clone().or_else(|| find_house_beside(file));
        let texts = DayTexts {
            day: read_bytes(file)?,
            day_name: file.display().to_string(),
            house: house.as_deref().map(read_bytes).transpose()?,
            house_name: house.as_deref().unwrap_or(Path::new(HOUSE_FILE)).display().to_string(),
        };
        self.plan(&texts)
    }

    fn plan(&self, texts: &DayTexts) -> Result<Answered> {
        let almanac = load_almanac()?;
        let answer = answer_day(&almanac, texts)?;
        if let Some(what) = &self.why {
            return Ok(Answered::with(explain(&answer.why, what)?));
        }
        let day = word_day(&almanac, &answer);
        if let Some(file) = &self.html {
            std::fs::write(file, render_day_sheet(&day)).map_err(|error| {
                let hint = "check that the folder is there and that you may write in it";
                anyhow!("{} is not written: {error}; hint: {hint}", file.display())
            })?;
        }
        let text = if self.json {
            serde_json::to_string_pretty(&answer).context("the answer cannot be written as JSON")? + "\n"
        } else {
            sheet::lay_out_day(&day)
        };
        Ok(Answered { text, refused: !answer.clash.is_empty() })
    }
}

/// Plans the invented household's day, by the same way as any other.
pub(crate) fn plan_demo() -> Result<Answered> {
    PlanDay::default().plan(&DayTexts {
        day: DEMO_DAY.into(),
        day_name: "demo/day.toml".to_owned(),
        house: Some(DEMO_HOUSE.into()),
        house_name: "demo/house.toml".to_owned(),
    })
}

fn answer_day(almanac: &Almanac, texts: &DayTexts) -> Result<DayAnswer> {
    let today = jiff::ZonedDateTime::now().date();
    let day = read_day_on(today, &texts.day, texts.house.as_deref(), almanac)
        .map_err(|faults| wrong_question(list_faults(&faults, texts)))?;
    Ok(kitchen::plan_day(almanac, &day))
}

/// A house file beside the day file. A day from standard input has none.
fn find_house_beside(day_file: &Path) -> Option<PathBuf> {
    let beside = day_file.with_file_name(HOUSE_FILE);
    (day_file != Path::new("-") && day_file != beside && beside.is_file()).then_some(beside)
}

/// Every fault with the name of its file, and what to do about it.
fn list_faults(faults: &DayFaults, texts: &DayTexts) -> String {
    let mut list = String::new();
    for fault in &faults.faults {
        let name = match fault.file {
            WhichFile::Day => &texts.day_name,
            WhichFile::House => &texts.house_name,
        };
        let said = fault.to_string();
        let said = said.strip_prefix(&fault.file.to_string()).unwrap_or(&said);
        let _ = writeln!(list, "{name}{said}");
    }
    if faults.more > 0 {
        let _ = writeln!(list, "and {} more faults", faults.more);
    }
    list.trim_end().to_owned()
}
