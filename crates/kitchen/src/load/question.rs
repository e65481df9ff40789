//! What is asked about a load: in a person's words, and typed.

use almanac::{Almanac, CannerKind, JarSize, LoadTrouble, Noticed, Pack, Process, ProductId, Verdict};
use jiff::ZonedDateTime;
use measure::{Minutes, read_minutes};
use serde::Serialize;

use super::clock::{Moment, Report};
use super::error::LoadError;
use super::when::Placing;
use crate::ask::{AskError, ClearAnswer, ClearWords, NameKind, clear, read_canner, read_jar, require_one};

/// The question in a person's words.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LoadWords {
    /// The trouble: a word of the list.
    pub trouble: String,
    /// The canner.
    pub canner: Option<String>,
    /// The whole printed time.
    pub minutes: Option<String>,
    /// When it was noticed: before, during, after.
    pub noticed: Option<String>,
    /// Since when a full stream of steam comes from the open vent.
    pub steam: Option<String>,
    /// When the full boil or the pressure was reached.
    pub begun: Option<String>,
    /// When boil, pressure or power was lost; again for each time.
    pub lost: Vec<String>,
    /// When boil or pressure was back; again for each time.
    pub back: Vec<String>,
    /// When the heat went off.
    pub heat_off: Option<String>,
    /// The food.
    pub food: Option<String>,
    /// How it went into the jar.
    pub pack: Option<String>,
    /// The jar.
    pub jar: Option<String>,
    /// The height above the sea.
    pub altitude: Option<String>,
}

/// One time that the boil or the pressure was lost.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Stop {
    /// When it was lost; `None` where nobody saw it.
    pub lost: Option<Report>,
    /// When it was back; `None` while it is not.
    pub back: Option<Report>,
}

/// The question, typed.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadQuestion {
    /// What is asked or went wrong.
    pub trouble: LoadTrouble,
    /// The canner; `None` where it does not matter or was not said.
    pub canner: Option<CannerKind>,
    /// The whole printed time as the person gives it.
    pub said: Option<Minutes>,
    /// When the trouble was noticed.
    pub noticed: Option<Noticed>,
    /// Since when steam streams from the open vent.
    pub steam: Option<Report>,
    /// When the full boil or the pressure was reached.
    pub begun: Option<Report>,
    /// Each time it was lost, in the order of the clock.
    pub stops: Vec<Stop>,
    /// When the heat went off.
    pub heat_off: Option<Report>,
    /// The food.
    pub food: Option<ProductId>,
    /// The jar.
    pub jar: Option<JarSize>,
    /// Printed lines for that food, pack, jar, canner and altitude; empty where they were not all given.
    pub printed: Vec<Process>,
    /// When the question is asked.
    pub now: Moment,
}

impl LoadQuestion {
    /// The whole time: what the person says or what is printed, whichever is longer.
    #[must_use]
    pub fn whole_time(&self) -> Option<Minutes> {
        self.printed.iter().map(Process::minutes).max().max(self.said)
    }

    /// Whether the load is in a pressure canner.
    #[must_use]
    pub fn is_under_pressure(&self) -> bool {
        self.canner.is_some_and(CannerKind::is_pressure)
    }
}

/// Reads a question about a load, as asked at `now` on the clock of the house.
///
/// # Errors
///
/// When a word, a time or an amount cannot be read, when times do not follow one another, or when something is
/// missing.
pub fn read_load_question(
    almanac: &Almanac,
    words: &LoadWords,
    now: &ZonedDateTime,
) -> Result<LoadQuestion, LoadError> {
    let trouble = read_trouble(&words.trouble)?;
    let canner = words.canner.as_deref().map(|typed| read_canner(Some(typed))).transpose()?;
    let canner = check_canner(trouble, canner)?;
    check_what_is_said(trouble, words)?;
    let placing = Placing { zone: now.time_zone().clone(), now: Moment::of_now(now) };
    let times = read_times(words, &placing)?;
    let food = words.food.as_deref().map(|typed| {
        let found = almanac.find_product(typed);
        require_one(found, NameKind::Food, typed, |product| product.id.to_string())
    });
    let food = food.transpose()?.map(|product| product.id.clone());
    let jar = words.jar.as_deref().map(|typed| read_jar(Some(typed))).transpose()?;
    Ok(LoadQuestion {
        trouble,
        canner,
        said: read_whole_time(words)?,
        noticed: read_noticed(trouble, words)?,
        steam: times.steam,
        begun: times.begun,
        stops: times.stops,
        heat_off: times.heat_off,
        printed: read_printed(almanac, words, trouble)?,
        food,
        jar,
        now: placing.now,
    })
}

fn read_trouble(typed: &str) -> Result<LoadTrouble, LoadError> {
    let parts = typed.split(|mark: char| mark.is_whitespace() || matches!(mark, '-' | '_'));
    let word = parts.filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-").to_lowercase();
    LoadTrouble::find(&word).ok_or_else(|| LoadError::UnknownTrouble { typed: typed.to_owned() })
}

/// A trouble that only some canners can have, and what to say of the others.
fn check_canner(trouble: LoadTrouble, canner: Option<CannerKind>) -> Result<Option<CannerKind>, LoadError> {
    use LoadTrouble as T;
    let Some(kind) = canner else {
        let needed = matches!(trouble, T::Start | T::BoilLost | T::PowerCut | T::BoiledDry | T::JarBroke);
        let hint = "say --canner boiling-water, steam, dial or weighted";
        return if needed { Err(LoadError::Missing { what: "the canner", hint }) } else { Ok(None) };
    };
    let hint = match (trouble, kind) {
        (T::PressureLost, CannerKind::BoilingWater | CannerKind::Steam) => {
            "where water or steam stopped boiling, say boil-lost"
        }
        (T::BoilLost, CannerKind::Dial | CannerKind::Weighted) => {
            "where the pressure fell below the line, say pressure-lost"
        }
        (T::ForcedCooling | T::WrongVent, CannerKind::BoilingWater | CannerKind::Steam) => {
            "only a pressure canner is vented and cools closed; say wrong-time where the time was short"
        }
        (T::WaterLow | T::WaterBelowLids, CannerKind::Dial | CannerKind::Weighted | CannerKind::Steam) => {
            "only in boiling water the jars stand under water; say boiled-dry where no water was left"
        }
        _ => return Ok(Some(kind)),
    };
    Err(LoadError::NotOfThisCanner { trouble, canner: kind, hint })
}

/// Nothing that a person says is passed over in silence.
fn check_what_is_said(trouble: LoadTrouble, words: &LoadWords) -> Result<(), LoadError> {
    use LoadTrouble as T;
    let interrupted = matches!(trouble, T::BoilLost | T::PressureLost | T::PowerCut);
    let begins = interrupted || trouble == T::Start;
    let said = [
        ("a time since when it steams", words.steam.is_some(), trouble == T::Start),
        ("a time of the full boil or pressure", words.begun.is_some(), begins),
        ("a time when it was lost", !words.lost.is_empty(), interrupted),
        ("a time when it was back", !words.back.is_empty(), interrupted),
        ("the printed time", words.minutes.is_some(), begins),
        ("a time when the heat went off", words.heat_off.is_some(), !begins && trouble != T::WaterLow),
    ];
    match said.into_iter().find(|(_, given, asked)| *given && !asked) {
        Some((what, ..)) => Err(LoadError::NotAsked { what, trouble }),
        None => Ok(()),
    }
}

fn read_whole_time(words: &LoadWords) -> Result<Option<Minutes>, LoadError> {
    let Some(typed) = &words.minutes else { return Ok(None) };
    let bare = typed.trim().bytes().all(|byte| byte.is_ascii_digit()) && !typed.trim().is_empty();
    let text = if bare { format!("{} min", typed.trim()) } else { typed.clone() };
    match read_minutes(&text) {
        Ok(Minutes(0)) => Err(LoadError::NoProcessSoLong { minutes: 0 }),
        Ok(minutes) => Ok(Some(minutes)),
        Err(problem) => Err(LoadError::Unreadable { what: "the process", problem: Box::new(problem) }),
    }
}

fn read_noticed(trouble: LoadTrouble, words: &LoadWords) -> Result<Option<Noticed>, LoadError> {
    let Some(typed) = &words.noticed else {
        let hint = "say --noticed before, during or after the process";
        let needed = trouble == LoadTrouble::AcidForgotten;
        return if needed { Err(LoadError::Missing { what: "when it was noticed", hint }) } else { Ok(None) };
    };
    let found = Noticed::find(typed.trim().to_lowercase().as_str());
    found.map(Some).ok_or_else(|| {
        let known = Noticed::ALL.iter().map(|noticed| noticed.as_str().to_owned()).collect();
        AskError::UnknownWord { what: "word for when it was noticed", typed: typed.clone(), known }.into()
    })
}

struct Times {
    steam: Option<Report>,
    begun: Option<Report>,
    stops: Vec<Stop>,
    heat_off: Option<Report>,
}

/// The times in the order in which they came.
fn read_times(words: &LoadWords, placing: &Placing) -> Result<Times, LoadError> {
    let mut before: Option<(&'static str, Report)> = None;
    let mut place = |what: &'static str, typed: Option<&String>| {
        let Some(typed) = typed else { return Ok(None) };
        let report = placing.place(what, typed, before.as_ref().map(|(what, report)| (*what, report)))?;
        before = Some((what, report.clone()));
        Ok::<_, LoadError>(Some(report))
    };
    let steam = place("the first steam", words.steam.as_ref())?;
    let begun = place("the full boil or pressure", words.begun.as_ref())?;
    let mut stops = Vec::new();
    for at in 0..words.lost.len().max(words.back.len()) {
        let lost = place("the loss", words.lost.get(at))?;
        let back = place("the return", words.back.get(at))?;
        if back.is_none() && at + 1 < words.lost.len() {
            let hint = "give --back for each --lost but the last";
            return Err(LoadError::Missing { what: "the time of the return", hint });
        }
        stops.push(Stop { lost, back });
    }
    let heat_off = place("heat off", words.heat_off.as_ref())?;
    Ok(Times { steam, begun, stops, heat_off })
}

/// The printed lines, where everything that a line depends on was said. An unsealed jar is begun again hot.
fn read_printed(
    almanac: &Almanac,
    words: &LoadWords,
    trouble: LoadTrouble,
) -> Result<Vec<Process>, LoadError> {
    let pack = match trouble {
        LoadTrouble::Unsealed => Some(Pack::Hot.as_str().to_owned()),
        _ => words.pack.clone(),
    };
    let (Some(food), Some(_), Some(_), Some(_), Some(_)) =
        (&words.food, &pack, &words.jar, &words.canner, &words.altitude)
    else {
        return Ok(Vec::new());
    };
    let asked = ClearWords {
        food: food.clone(),
        pack,
        jar: words.jar.clone(),
        canner: words.canner.clone(),
        altitude: words.altitude.clone(),
        ..ClearWords::default()
    };
    Ok(match clear(almanac, &asked)? {
        ClearAnswer::Judged(clearance) if clearance.verdict == Verdict::Tested => {
            clearance.processes.iter().map(|line| line.process().clone()).collect()
        }
        ClearAnswer::Judged(_) | ClearAnswer::Refused(_) | ClearAnswer::Changes(_) => Vec::new(),
    })
}
