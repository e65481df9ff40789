//! What the week, the month, the season came to: figures, and a paragraph.

use std::collections::BTreeMap;
use std::ops::RangeInclusive;

use book::view::Figure;
use book::{Id, Store};
use jiff::ToSpan as _;
use jiff::civil::Date;
use measure::write_mass_us;
use serde::Serialize;

use super::error::KeepError;
use super::find::name_of;
use super::{IdMaker, Keeper, say_containers};
use crate::wording::{as_sentence, join_names};

/// What was done, in the order in which it is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verb {
    /// Came in.
    TookIn,
    /// Was put up.
    PutUp,
    /// Was written down as standing here before.
    StoodBefore,
    /// Did not seal.
    DidNotSeal,
    /// Was lost.
    Lost,
    /// Was wrong with it.
    Trouble,
    /// Was taken off a shelf.
    Took,
}

impl Verb {
    /// In words.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::TookIn => "took in",
            Self::PutUp => "put up",
            Self::StoodBefore => "stood before",
            Self::DidNotSeal => "did not seal",
            Self::Lost => "lost",
            Self::Trouble => "trouble",
            Self::Took => "took",
        }
    }
}

/// One figure.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct TellRow {
    /// What was done.
    pub verb: Verb,
    /// With what.
    pub name: String,
    /// The size of the containers; empty where it is no container.
    pub size: String,
    /// Where it went or why, where that is told.
    pub how: String,
    /// How many; for what came in by weight, grams.
    pub number: i64,
}

/// A stretch of time in figures and in a paragraph.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Told {
    /// The first day.
    pub from: String,
    /// The last day.
    pub to: String,
    /// The figures.
    pub rows: Vec<TellRow>,
    /// In a paragraph.
    pub paragraph: String,
}

/// The days of a period that a day is in: `week` (Monday to Sunday), `month`, `season` (the year's putting up, from the
/// first of April), `year`, or `2026-09-01..2026-09-30`.
///
/// # Errors
///
/// If it is none of these.
pub fn find_period(typed: &str, today: Date) -> Result<RangeInclusive<Date>, KeepError> {
    let unreadable = || KeepError::UnreadableLine {
        typed: typed.to_owned(),
        what: "a stretch of days",
        example: "week, month, season, year, or 2026-09-01..2026-09-30",
    };
    /// The month in which a year's putting up is taken to begin. Ours, not a publication's.
    const SEASON_BEGINS: i8 = 4;
    let found = match typed {
        "week" => {
            let monday = today.checked_sub(i64::from(today.weekday().to_monday_zero_offset()).days());
            monday.ok().and_then(|monday| Some(monday..=monday.checked_add(6.days()).ok()?))
        }
        "month" => Some(today.first_of_month()..=today.last_of_month()),
        "year" => Some(today.first_of_year()..=today.last_of_year()),
        "season" => {
            let year = if today.month() < SEASON_BEGINS { today.year() - 1 } else { today.year() };
            let begin = Date::new(year, SEASON_BEGINS, 1).ok();
            begin.and_then(|begin| Some(begin..=begin.checked_add(1.year()).ok()?.yesterday().ok()?))
        }
        _ => typed.split_once("..").and_then(|(from, to)| Some(from.parse().ok()?..=to.parse().ok()?)),
    };
    found.filter(|days| days.start() <= days.end()).ok_or_else(unreadable)
}

impl<S: Store, I: IdMaker> Keeper<S, I> {
    /// What a stretch of days came to.
    #[must_use]
    pub fn tell(&self, days: RangeInclusive<Date>) -> Told {
        let mut sums: BTreeMap<(Verb, String, String, String), i64> = BTreeMap::new();
        for (figure, number) in self.views().tallies.sum(days.clone()) {
            let (key, number) = self.name_figure(figure, number);
            *sums.entry(key).or_default() += number;
        }
        let rows: Vec<TellRow> = sums
            .into_iter()
            .filter(|(_, number)| *number != 0)
            .map(|((verb, name, size, how), number)| TellRow { verb, name, size, how, number })
            .collect();
        let paragraph = say_paragraph(&rows);
        Told { from: days.start().to_string(), to: days.end().to_string(), rows, paragraph }
    }

    fn name_figure(&self, figure: Figure, number: i64) -> ((Verb, String, String, String), i64) {
        let lot = |id: Id| {
            self.views()
                .lots
                .find(id)
                .map(name_of)
                .filter(|name| !name.is_empty())
                .unwrap_or("a lot taken back")
                .to_owned()
        };
        let none = String::new;
        match figure {
            // Grams are sharp enough for a season, and half a gram is half a gram.
            Figure::TakenInMilligrams(name) => {
                ((Verb::TookIn, name.into(), none(), "g".to_owned()), (number + 500).div_euclid(1_000))
            }
            Figure::TakenInMicrolitres(name) => {
                ((Verb::TookIn, name.into(), none(), "ml".to_owned()), (number + 500).div_euclid(1_000))
            }
            Figure::TakenInPieces(name) => ((Verb::TookIn, name.into(), none(), "pieces".to_owned()), number),
            Figure::BasketLeft(went) => {
                let how = match went {
                    book::act::WentWhere::EatenFresh => "eaten fresh",
                    book::act::WentWhere::Composted => "composted",
                    book::act::WentWhere::Given => "given away",
                    book::act::WentWhere::Sold => "sold",
                };
                ((Verb::Lost, "baskets".to_owned(), none(), how.to_owned()), number)
            }
            Figure::PutUp(id, size) => ((Verb::PutUp, lot(id), size.into(), none()), number),
            Figure::StoodBefore(id, size) => ((Verb::StoodBefore, lot(id), size.into(), none()), number),
            Figure::Unsealed(id, size) => ((Verb::DidNotSeal, lot(id), size.into(), none()), number),
            Figure::Lost(id, size, reason) => {
                ((Verb::Lost, lot(id), size.into(), super::lots::say_reason(reason).to_owned()), number)
            }
            Figure::Drawn(id, size, went) => {
                let how = super::lots::say_went(went.as_ref());
                ((Verb::Took, lot(id), size.into(), how.trim_start_matches(", ").to_owned()), number)
            }
            Figure::Trouble(id) => ((Verb::Trouble, lot(id), none(), none()), number),
        }
    }
}

/// The figures as one would say them at the table.
fn say_paragraph(rows: &[TellRow]) -> String {
    let of = |verb: Verb| rows.iter().filter(move |row| row.verb == verb);
    let list = |verb: Verb| {
        let parts: Vec<String> = of(verb)
            .map(|row| format!("{} of {}", say_containers(row.number, &row.size), row.name))
            .collect();
        (!parts.is_empty()).then(|| join_names(&parts))
    };
    let total = |verb: Verb| of(verb).map(|row| row.number).sum::<i64>();
    let mut sentences = Vec::new();
    let came: Vec<String> = of(Verb::TookIn)
        .map(|row| match row.how.as_str() {
            "g" => format!("{} of {}", write_mass_us(measure::Mass::grams(row.number as f64)), row.name),
            "ml" => format!("{} ml of {}", row.number, row.name),
            _ => format!("{} {}", row.number, row.name),
        })
        .collect();
    if !came.is_empty() {
        sentences.push(format!("took in {}", join_names(&came)));
    }
    sentences.extend(list(Verb::PutUp).map(|list| format!("put up {list}")));
    sentences.extend(list(Verb::StoodBefore).map(|list| format!("wrote down {list} that stood here before")));
    match total(Verb::DidNotSeal) {
        0 => {}
        1 => sentences.push("one did not seal".to_owned()),
        many => sentences.push(format!("{many} did not seal")),
    }
    for row in of(Verb::Lost).filter(|row| !row.size.is_empty()) {
        let what = say_containers(row.number, &row.size);
        sentences.push(format!("lost {what} of {} ({})", row.name, row.how));
    }
    if total(Verb::Trouble) > 0 {
        let names: Vec<String> = of(Verb::Trouble).map(|row| row.name.clone()).collect();
        sentences.push(format!("something was wrong with {}", join_names(&names)));
    }
    match total(Verb::Took) {
        0 => {}
        1 => sentences.push("one came off the shelves".to_owned()),
        many => sentences.push(format!("{many} came off the shelves")),
    }
    if sentences.is_empty() {
        return "Nothing was written down.".to_owned();
    }
    sentences.iter().map(|sentence| as_sentence(sentence)).collect::<Vec<_>>().join(" ")
}
