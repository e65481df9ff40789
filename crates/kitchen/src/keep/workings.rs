//! Workings: begun, looked at, moved into the cold, ended.

use book::act::{
    Act, Surface, WorkingBegun, WorkingEnded, WorkingKind, WorkingLooked, WorkingMoved, WorkingOutcome,
};
use book::view::{Views, Working};
use book::{HundredthsPh, Id, MilliCelsius, Milligrams, Moment, Store};
use jiff::ToSpan as _;
use jiff::civil::Date;
use measure::{read_mass, read_temp, write_mass_us, write_temp_fahrenheit};

use super::answer::WorkingLine;
use super::error::KeepError;
use super::find::{plain, shelf_id};
use super::put_up::new_shelf;
use super::{IdMaker, Keeper};

/// What is begun.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorkingWords {
    /// What it is called.
    pub name: String,
    /// What kind.
    pub what: WorkingKind,
    /// Where it stands.
    pub shelf: Option<String>,
    /// In how many days to look at it.
    pub look_in_days: Option<i64>,
}

/// What was seen.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LookWords {
    /// The working.
    pub working: String,
    /// How warm: `65 F`.
    pub temp: Option<String>,
    /// pH in hundredths.
    pub ph_hundredths: Option<i64>,
    /// What it weighs.
    pub weight: Option<String>,
    /// How it tastes.
    pub taste: Option<String>,
    /// What grows on it.
    pub surface: Option<Surface>,
    /// In how many days to look at it again.
    pub look_in_days: Option<i64>,
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// Begins a working.
    ///
    /// # Errors
    ///
    /// If the book cannot be written.
    pub fn begin_working(&mut self, now: &Moment, words: &WorkingWords) -> Result<WorkingLine, KeepError> {
        let next_look = look_on(now.date(), words.look_in_days)?;
        let (ids, ()) = self.say(now, |views, _| {
            let begun = WorkingBegun {
                name: words.name.trim().into(),
                what: words.what,
                batch: None,
                lot: None,
                vessel: None,
                shelf: words.shelf.as_deref().map(shelf_id),
                amount: None,
                next_look,
            };
            let shelf = words.shelf.as_deref().and_then(|name| new_shelf(views, name));
            Ok(([Some(begun.into()), shelf].into_iter().flatten().collect(), ()))
        })?;
        self.working_line(ids[0])
    }

    /// Writes down a look.
    ///
    /// # Errors
    ///
    /// If there is no such working or a reading cannot be read.
    pub fn look(&mut self, now: &Moment, words: &LookWords) -> Result<WorkingLine, KeepError> {
        let unreadable = KeepError::unreadable;
        let temp =
            words.temp.as_deref().map(read_temp).transpose().map_err(|p| unreadable("temperature", p))?;
        let mass = words.weight.as_deref().map(read_mass).transpose().map_err(|p| unreadable("weight", p))?;
        let next_look = look_on(now.date(), words.look_in_days)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_working(views, &words.working)?;
            let looked = WorkingLooked {
                working: id,
                temp_mc: temp.and_then(MilliCelsius::from_temp),
                ph_hundredths: words.ph_hundredths.map(HundredthsPh),
                weight_mg: mass.and_then(Milligrams::from_mass),
                taste: words.taste.as_deref().map(Into::into),
                surface: words.surface,
                topped_up: None,
                next_look,
            };
            Ok((vec![looked.into()], id))
        })?;
        self.working_line(id)
    }

    /// Moves a working: into the cold, off the rack.
    ///
    /// # Errors
    ///
    /// If there is no such working.
    pub fn move_working(
        &mut self,
        now: &Moment,
        typed: &str,
        to: &str,
        look_in_days: Option<i64>,
    ) -> Result<WorkingLine, KeepError> {
        let next_look = look_on(now.date(), look_in_days)?;
        let (_, id) = self.say(now, |views, _| {
            let id = require_working(views, typed)?;
            let moved = WorkingMoved { working: id, to: shelf_id(to), next_look };
            Ok(([Some(moved.into()), new_shelf(views, to)].into_iter().flatten().collect(), id))
        })?;
        self.working_line(id)
    }

    /// Ends a working.
    ///
    /// # Errors
    ///
    /// If there is no such working.
    pub fn end_working(
        &mut self,
        now: &Moment,
        typed: &str,
        outcome: WorkingOutcome,
    ) -> Result<WorkingLine, KeepError> {
        let (_, id) = self.say(now, |views, _| {
            let id = require_working(views, typed)?;
            Ok((vec![WorkingEnded { working: id, outcome, lot: None }.into()], id))
        })?;
        self.working_line(id)
    }

    /// Workings that go on, those to look at first at the head.
    #[must_use]
    pub fn list_workings(&self) -> Vec<WorkingLine> {
        let due = self.views().workings.due(Date::MAX);
        due.into_iter().filter_map(|(id, working)| say_working(id, working)).collect()
    }

    fn working_line(&self, id: Id) -> Result<WorkingLine, KeepError> {
        let found = self.views().workings.find(id).and_then(|working| say_working(id, working));
        found.ok_or_else(|| no_working(&id.to_string()))
    }
}

/// The farthest that a look is put off.
const FARTHEST_DAYS: i64 = 366;

fn look_on(today: Date, days: Option<i64>) -> Result<Option<Date>, KeepError> {
    let Some(days) = days else { return Ok(None) };
    let date = (0..=FARTHEST_DAYS).contains(&days).then(|| today.checked_add(days.days()).ok()).flatten();
    date.map(Some).ok_or_else(|| KeepError::UnreadableLine {
        typed: days.to_string(),
        what: "a number of days up to a year",
        example: "3",
    })
}

fn no_working(typed: &str) -> KeepError {
    KeepError::NoSuchThing {
        what: "working",
        typed: typed.to_owned(),
        hint: "`stillroom working list` shows what goes on",
    }
}

fn require_working(views: &Views, typed: &str) -> Result<Id, KeepError> {
    if let Some(id) = typed.parse().ok().filter(|id| views.workings.find(*id).is_some()) {
        return Ok(id);
    }
    let sought = plain(typed);
    let named: Vec<Id> = views
        .workings
        .open()
        .filter(|(_, working)| working.begun().is_some_and(|begun| plain(&begun.name).contains(&sought)))
        .map(|(id, _)| id)
        .collect();
    match named.as_slice() {
        [] => Err(no_working(typed)),
        [one] => Ok(*one),
        several => Err(KeepError::SeveralThings {
            what: "working",
            typed: typed.to_owned(),
            choices: several.iter().map(ToString::to_string).collect(),
        }),
    }
}

fn say_working(id: Id, working: &Working) -> Option<WorkingLine> {
    let (begun, act) = (working.begun()?, working.act()?);
    let what = match begun.what {
        WorkingKind::Ferment => "ferment",
        WorkingKind::Drying => "drying",
        WorkingKind::Conditioning => "conditioning",
        WorkingKind::Cooling => "cooling",
        WorkingKind::Steeping => "steeping",
    };
    let last = working.looks().last();
    let mut notes = Vec::new();
    if let Some(Act::WorkingLooked(looked)) = last.map(|act| &act.entry.act) {
        if looked.surface == Some(Surface::Mould) {
            notes.push(
                "mould was seen: a note in this book permits nothing; do not taste it; ask the county extension office \
                 what becomes of it, and throw it away when in doubt"
                    .to_owned(),
            );
        }
        if looked.ph_hundredths.is_some() {
            notes.push("a pH reading opens nothing: it can only say stop".to_owned());
        }
    }
    Some(WorkingLine {
        id: id.to_string(),
        name: begun.name.to_string(),
        what: what.to_owned(),
        shelf: working.shelf().map(ToString::to_string),
        begun: act.entry.happened_at.date().to_string(),
        next_look: if working.ended().is_some() {
            None
        } else {
            working.next_look().map(|date| date.to_string())
        },
        last_look: last.map(|act| format!("{}: {}", act.entry.happened_at.date(), say_look(&act.entry.act))),
        notes,
    })
}

fn say_look(act: &Act) -> String {
    let looked = match act {
        Act::WorkingLooked(looked) => looked,
        Act::WorkingMoved(moved) => return format!("moved to {}", moved.to),
        _ => return String::new(),
    };
    let surface = looked.surface.map(|surface| match surface {
        Surface::Clear => "clear on top".to_owned(),
        Surface::Film => "a white film on top".to_owned(),
        Surface::Mould => "mould on top".to_owned(),
    });
    let parts = [
        looked.taste.as_ref().map(ToString::to_string),
        looked.temp_mc.map(|temp| write_temp_fahrenheit(temp.to_temp())),
        looked.ph_hundredths.map(|ph| format!("pH {}.{:02}", ph.0.div_euclid(100), ph.0.rem_euclid(100))),
        looked.weight_mg.map(|mass| write_mass_us(mass.to_mass())),
        surface,
    ];
    let said: Vec<String> = parts.into_iter().flatten().collect();
    if said.is_empty() { "looked at".to_owned() } else { said.join(", ") }
}
