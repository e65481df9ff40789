//! Loads: what went into a canner, and when, by the clock on the wall.

use book::act::{Act, Contents, LoadBegun, LoadEnded, LoadMark, LoadMarked};
use book::view::{Load, Views};
use book::{Id, Moment, Pascals, Standing, Store};
use jiff::civil::Date;
use measure::{read_pressure, write_pressure};
use serde::Serialize;

use super::error::KeepError;
use super::find::shelf_id;
use super::line::read_line;
use super::{IdMaker, Keeper, say_containers};

/// What goes in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LoadWords {
    /// Containers: `7 quarts`.
    pub containers: String,
    /// The canner, by its name in the house.
    pub canner: Option<String>,
    /// The gauge, by its name in the house.
    pub gauge: Option<String>,
}

/// A load in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LoadLine {
    /// Its id.
    pub id: String,
    /// What went in.
    pub holds: String,
    /// The canner.
    pub canner: Option<String>,
    /// Clock times, each with what was seen then.
    pub clock: Vec<(String, String)>,
    /// Whether it is done.
    pub ended: bool,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// A load went in, now.
    ///
    /// # Errors
    ///
    /// If the containers cannot be read.
    pub fn begin_load(&mut self, now: &Moment, words: &LoadWords) -> Result<LoadLine, KeepError> {
        let contents: Vec<Contents> = read_line(&format!("a load, {}", words.containers))?.contents;
        let (ids, ()) = self.say(now, |_, _| {
            let begun = LoadBegun {
                batch: None,
                appliance: words.canner.as_deref().map(shelf_id),
                gauge: words.gauge.as_deref().map(shelf_id),
                containers: contents.clone(),
                process: None,
            };
            Ok((vec![begun.into()], ()))
        })?;
        self.load_line(ids[0])
    }

    /// Something was seen at the load that is in, now.
    ///
    /// # Errors
    ///
    /// If no load is in, or several are and none is named, or the reading cannot be read.
    pub fn mark_load(
        &mut self,
        now: &Moment,
        which: Option<&str>,
        mark: LoadMark,
        reading: Option<&str>,
    ) -> Result<LoadLine, KeepError> {
        let reading = reading.map(read_pressure).transpose();
        let reading = reading.map_err(|problem| KeepError::unreadable("reading", problem))?;
        let (_, id) = self.say(now, |views, _| {
            let load = require_open_load(views, which)?;
            let marked = LoadMarked { load, mark, reading_pa: reading.and_then(Pascals::from_pressure) };
            Ok((vec![marked.into()], load))
        })?;
        self.load_line(id)
    }

    /// The load that is in is done, now.
    ///
    /// # Errors
    ///
    /// If no load is in, or several are and none is named.
    pub fn end_load(
        &mut self,
        now: &Moment,
        which: Option<&str>,
        whole: Option<bool>,
    ) -> Result<LoadLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let load = require_open_load(views, which)?;
            Ok((vec![LoadEnded { load, whole }.into()], load))
        })?;
        self.load_line(id)
    }

    /// Loads that are in, and those of a day, the last first.
    #[must_use]
    pub fn list_loads(&self, today: Date) -> Vec<LoadLine> {
        let loads = self.views().batches.loads();
        let of_today = |load: &Load| load.act().is_some_and(|act| act.entry.happened_at.date() == today);
        let shown = loads.into_iter().rev().filter(|(_, load)| load.ended().is_none() || of_today(load));
        shown.filter_map(|(id, load)| say_load(id, load)).collect()
    }

    fn load_line(&self, id: Id) -> Result<LoadLine, KeepError> {
        let found = self.views().batches.find_load(id).and_then(|load| say_load(id, load));
        found.ok_or_else(|| no_load(&id.to_string()))
    }
}

fn no_load(typed: &str) -> KeepError {
    KeepError::NoSuchThing {
        what: "load that is in",
        typed: typed.to_owned(),
        hint: "`stillroom load begin \"7 quarts\"` when it goes in; `stillroom load list` shows what is in",
    }
}

/// The load that is in; where several are, the one that is named.
fn require_open_load(views: &Views, which: Option<&str>) -> Result<Id, KeepError> {
    let open: Vec<Id> = views
        .batches
        .loads()
        .into_iter()
        .filter(|(_, load)| load.ended().is_none())
        .map(|(id, _)| id)
        .collect();
    match (which, open.as_slice()) {
        (Some(typed), open) => {
            typed.parse().ok().filter(|id| open.contains(id)).ok_or_else(|| no_load(typed))
        }
        (None, [one]) => Ok(*one),
        (None, []) => Err(no_load("")),
        (None, several) => Err(KeepError::SeveralThings {
            what: "load",
            typed: "the load".to_owned(),
            choices: several.iter().map(ToString::to_string).collect(),
        }),
    }
}

/// The load that went in last, for the lot that came out of it.
pub(super) fn require_last_load(views: &Views) -> Result<Id, KeepError> {
    views.batches.loads().last().map(|(id, _)| *id).ok_or_else(|| no_load("the last"))
}

fn say_load(id: Id, load: &Load) -> Option<LoadLine> {
    let (begun, act) = (load.begun()?, load.act()?);
    let holds: Vec<String> =
        begun.containers.iter().map(|contents| say_containers(contents.count, &contents.size)).collect();
    let clock = |act: &Standing| act.entry.happened_at.wall().strftime("%H:%M").to_string();
    let mut times = vec![(clock(act), "in".to_owned())];
    for mark in load.marks() {
        if let Act::LoadMarked(marked) = &mark.entry.act {
            let reading = marked.reading_pa.map(|reading| write_pressure(reading.to_pressure()));
            let reading = reading.map(|reading| format!(", {reading}")).unwrap_or_default();
            times.push((clock(mark), format!("{}{reading}", say_mark(marked.mark))));
        }
    }
    if let Some(ended) = load.ended() {
        let whole = match &ended.entry.act {
            Act::LoadEnded(LoadEnded { whole: Some(true), .. }) => "out, the whole process",
            Act::LoadEnded(LoadEnded { whole: Some(false), .. }) => "out, not the whole process",
            _ => "out",
        };
        times.push((clock(ended), whole.to_owned()));
    }
    Some(LoadLine {
        id: id.to_string(),
        holds: holds.join(", "),
        canner: begun.appliance.as_ref().map(ToString::to_string),
        clock: times,
        ended: load.ended().is_some(),
    })
}

fn say_mark(mark: LoadMark) -> &'static str {
    match mark {
        LoadMark::CameToTheBoil => "came to the boil",
        LoadMark::Venting => "venting",
        LoadMark::AtPressure => "at pressure",
        LoadMark::GaugeRead => "gauge read",
        LoadMark::WaterChecked => "water checked",
        LoadMark::FellBelow => "fell below",
        LoadMark::HeatOff => "heat off",
        LoadMark::PressureDown => "pressure down",
        LoadMark::TakenOut => "taken out",
    }
}
