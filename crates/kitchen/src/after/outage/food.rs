//! What to do with one food: keep, refreeze, measure, cool now, ask, throw away.

use almanac::{Almanac, OutageAct, OutagePlace, OutageRule, OutageState};
use measure::{Minutes, Temp};
use serde::Serialize;

use super::Known;
use super::door::holding_rows;
use crate::after::saying::on_both_scales;
use crate::after::told::Told;
use crate::after::when::Moment;

/// What to do with a food, the kindest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FoodVerdict {
    /// Keep it.
    Keep,
    /// Freeze it again, or cook it.
    Refreeze,
    /// Nothing is known of it: look for ice and measure.
    Measure,
    /// Make it cold or cook it before the moment named; the chart prints nothing kinder.
    CoolNow,
    /// Nothing is printed for it.
    Ask,
    /// Throw it away.
    Discard,
}

/// What to do with one food.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FoodAnswer {
    /// `freezer` or `refrigerator`.
    pub place: &'static str,
    /// The food, as the chart names it.
    pub food: String,
    /// What to do.
    pub verdict: FoodVerdict,
    /// Before this moment, for [`FoodVerdict::CoolNow`].
    pub before: Option<Moment>,
    /// What the chart prints for it, each line in words.
    pub chart: Vec<String>,
    /// The rows.
    pub told: Vec<Told>,
}

/// Judges every food that some rows of the charts are about.
pub(super) fn judge_foods(
    almanac: &Almanac,
    rows: &[&OutageRule],
    known: &Known,
    now: &Moment,
) -> Vec<FoodAnswer> {
    let mut foods: Vec<Vec<&OutageRule>> = Vec::new();
    for row in rows {
        match foods.iter_mut().find(|food| food[0].place == row.place && food[0].item == row.item) {
            Some(food) => food.push(row),
            None => foods.push(vec![row]),
        }
    }
    foods.iter().map(|food| judge_food(almanac, food, known, now)).collect()
}

fn judge_food(almanac: &Almanac, rows: &[&OutageRule], known: &Known, now: &Moment) -> FoodAnswer {
    let warm = rows.iter().copied().find(|row| row.state == OutageState::Warm);
    let is_unprinted = warm.is_some_and(|row| row.act == OutageAct::Ask);
    let of_chart = rows.iter().copied().find(|row| row.state == OutageState::Cold);
    let cold = of_chart.or_else(|| keeps_cold(almanac, rows)).filter(|_| !is_unprinted);
    let limit = warm.or(cold).and_then(|row| row.limit);
    let place = rows[0].place;
    let (verdict, before) = match (known.temp, limit) {
        _ if is_unprinted => (FoodVerdict::Ask, None),
        (Some(temp), Some(limit)) if temp <= cold_limit(cold, limit) => (act_of(cold), None),
        (Some(temp), Some(limit)) => judge_warm(warm, temp, limit, known.warm_for, now),
        (None, _) if known.crystals && place == OutagePlace::Freezer => (act_of(cold), None),
        (None, _) => (judge_unmeasured(almanac, place, warm, known), None),
        (Some(_), None) => (FoodVerdict::Ask, None),
    };
    let mut told: Vec<&OutageRule> = rows.to_vec();
    told.extend(cold.filter(|row| !told.iter().any(|other| other.id == row.id)));
    FoodAnswer {
        place: place.as_str(),
        food: rows[0].item.to_string(),
        verdict,
        before,
        chart: told.iter().map(|row| word_row(row)).collect(),
        told: told.into_iter().map(Told::from).collect(),
    }
}

/// The row that lets cold food of a refrigerator stay. The charts of refrigerators print warm food only.
fn keeps_cold<'a>(almanac: &'a Almanac, rows: &[&OutageRule]) -> Option<&'a OutageRule> {
    let is_refrigerator = rows.iter().all(|row| row.place == OutagePlace::Refrigerator);
    let meant = |row: &&OutageRule| row.state == OutageState::Cold && row.place == OutagePlace::Any;
    almanac.outage_rules().iter().find(meant).filter(|_| is_refrigerator)
}

/// Cold is what the cold row says, also where a warm row turns on another temperature.
fn cold_limit(cold: Option<&OutageRule>, limit: Temp) -> Temp {
    cold.and_then(|row| row.limit).unwrap_or(limit)
}

/// What a row says, when it may say so: a row that keeps food counts only when it was read in a source of full rank.
fn act_of(row: Option<&OutageRule>) -> FoodVerdict {
    let Some(row) = row else { return FoodVerdict::Ask };
    match row.act {
        OutageAct::Discard => FoodVerdict::Discard,
        _ if !row.citation.may_be_called_tested() => FoodVerdict::Ask,
        OutageAct::Refreeze => FoodVerdict::Refreeze,
        OutageAct::Keep | OutageAct::Tell => FoodVerdict::Keep,
        OutageAct::Ask | OutageAct::Hold => FoodVerdict::Ask,
    }
}

/// A food above the temperature of its chart. Where nobody knows for how long, it counts as long.
fn judge_warm(
    warm: Option<&OutageRule>,
    temp: Temp,
    limit: Temp,
    warm_for: Option<Minutes>,
    now: &Moment,
) -> (FoodVerdict, Option<Moment>) {
    let Some(row) = warm else { return (FoodVerdict::Ask, None) };
    let verdict = act_of(Some(row));
    if verdict != FoodVerdict::Discard {
        return (verdict, None);
    }
    let allowed = row.figure.and_then(|figure| figure.as_minutes()).map(|ends| ends.0);
    match (allowed, warm_for) {
        // Warm, and yet below what the row turns on: nothing printed keeps it, nothing throws it away.
        (Some(_), _) if temp <= limit => (FoodVerdict::CoolNow, None),
        (Some(Minutes(allowed)), Some(Minutes(so_far))) if so_far <= allowed => {
            (FoodVerdict::CoolNow, Some(now.plus(Minutes(allowed - so_far))))
        }
        _ => (FoodVerdict::Discard, None),
    }
}

/// A food that nobody measured: the clock of the door speaks.
fn judge_unmeasured(
    almanac: &Almanac,
    place: OutagePlace,
    warm: Option<&OutageRule>,
    known: &Known,
) -> FoodVerdict {
    let holds = holding_rows(almanac, place, None);
    let trusted = holds.iter().filter(|(row, _)| row.citation.may_be_called_tested());
    let most = trusted.map(|(_, holds)| *holds).max();
    let (Some(shut_for), Some((_, strictest)), Some(most)) = (known.shut_for, holds.first(), most) else {
        return FoodVerdict::Measure;
    };
    let when_warm = act_of(warm);
    if shut_for <= *strictest {
        FoodVerdict::Keep
    } else if shut_for > most || when_warm <= FoodVerdict::Refreeze {
        // What may stay warm may stay half warm.
        when_warm
    } else {
        FoodVerdict::Measure
    }
}

/// A line of the chart in words.
fn word_row(row: &OutageRule) -> String {
    let limit = row.limit.map(on_both_scales).unwrap_or_default();
    let act = match row.act {
        OutageAct::Discard => "throw it away",
        OutageAct::Refreeze => "refreeze it",
        OutageAct::Keep | OutageAct::Tell => "keep it",
        OutageAct::Ask | OutageAct::Hold => "ask",
    };
    let when = match (row.state, row.figure.and_then(|figure| figure.as_minutes())) {
        (OutageState::Cold, _) if row.place == OutagePlace::Any => format!("{limit} or below"),
        (OutageState::Cold, _) => {
            format!("ice crystals left, or as cold as a refrigerator, {limit} or below")
        }
        (_, Some((hours, _))) => format!("above {limit} for more than {}", measure::write_minutes(hours)),
        _ => format!("above {limit}"),
    };
    let note = if row.note.is_empty() { String::new() } else { format!(" ({})", row.note) };
    format!("{when}: {act}{note}")
}
