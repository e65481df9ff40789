//! A thousand kitchens, and the band in which nine in ten of their jars lie.

use foodsci::band::{draw_inputs, find_band};
use foodsci::jar::{HistoryPoint, Stage, add_up_history, trace_history};
use measure::{Span, Temp};
use serde::Serialize;

use super::WhyError;
use super::kitchen::{Drawn, Kitchen};

/// The jar at one minute, counted from the moment at which the printed minutes begin; below zero while the canner heats.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HistoryLine {
    /// The minute.
    pub minute: i32,
    /// What the jar stands in, °C; the likeliest.
    pub around_celsius: f64,
    /// Its slowest point, °C: the low end of the band.
    pub centre_low: f64,
    /// The likeliest.
    pub centre: f64,
    /// The high end.
    pub centre_high: f64,
    /// How much of all that kills in this history has come by now, percent: the low end of the band.
    pub counted_low: f64,
    /// The likeliest.
    pub counted: f64,
    /// The high end.
    pub counted_high: f64,
}

/// Kitchens drawn for a band.
const DRAWS: usize = 1000;
/// Fixed, so that the same question has the same picture.
const SEED: u64 = 0x5717_1200;
/// Points of one history; a quarter to one minute each.
const POINTS: usize = 160;
/// Minutes drawn before the printed ones begin, at most.
const BEFORE_MIN: i32 = 15;

/// One history on the minutes of the clock.
pub(super) struct Traced {
    points: Vec<HistoryPoint>,
    counted: Vec<Span>,
    /// When the printed minutes begin, from the start of the history.
    pub(super) begins: Span,
    /// When they end.
    pub(super) ends: Span,
}

impl Traced {
    /// The history of a jar over the stages before, the printed minutes and what comes after.
    pub(super) fn of(
        kitchen: &Kitchen,
        drawn: &Drawn,
        hold: &[Stage],
        points: usize,
    ) -> Result<Self, WhyError> {
        let before = kitchen.stages_before(drawn);
        let begins: Span = before.iter().map(|stage| stage.lasts).sum();
        let ends = begins + hold.iter().map(|stage| stage.lasts).sum();
        let stages: Vec<Stage> =
            before.into_iter().chain(hold.iter().copied()).chain(kitchen.stages_after(drawn)).collect();
        let points = trace_history(&kitchen.jar(drawn), &stages, points)?;
        let counted = add_up_history(&points, &kitchen.lethal())?;
        Ok(Self { points, counted, begins, ends })
    }

    /// The slowest point at a time of the history, between two points of it.
    pub(super) fn centre(&self, at: Span) -> Temp {
        self.between(at, |index| self.points[index].centre.as_celsius(), Temp::celsius)
    }

    /// What has been counted by then.
    pub(super) fn counted(&self, at: Span) -> Span {
        self.between(at, |index| self.counted[index].as_seconds(), Span::seconds)
    }

    /// What has been counted in all.
    pub(super) fn counted_in_all(&self) -> Span {
        self.counted.last().copied().unwrap_or(Span::ZERO)
    }

    fn around(&self, at: Span) -> f64 {
        let after = self.points.iter().find(|point| point.at >= at).or(self.points.last());
        after.map_or(f64::NAN, |point| point.around.as_celsius())
    }

    fn between<Q>(&self, at: Span, read: impl Fn(usize) -> f64, make: impl Fn(f64) -> Q) -> Q {
        let after = self.points.partition_point(|point| point.at < at).min(self.points.len() - 1);
        let Some(before) = after.checked_sub(1) else { return make(read(0)) };
        let (from, to) = (self.points[before].at, self.points[after].at);
        let share = if to > from { (at - from).ratio_to(to - from).clamp(0.0, 1.0) } else { 1.0 };
        make(read(before) + share * (read(after) - read(before)))
    }
}

/// The jar through the minutes, with its band.
pub(super) fn trace_band(kitchen: &Kitchen) -> Result<Vec<HistoryLine>, WhyError> {
    let likeliest = kitchen.likeliest();
    let shown = Traced::of(kitchen, &likeliest, &[kitchen.hold(&likeliest)], POINTS)?;
    let whole = (shown.points.last().map_or(Span::ZERO, |point| point.at) - shown.begins).as_minutes();
    // Never truncates beyond a day: a process, its rest and an hour on the counter.
    let last = libm::floor(whole) as i32;
    let step = (last / 60).max(1);
    let first = -(BEFORE_MIN.min(libm::floor(shown.begins.as_minutes()) as i32) / step * step);
    let minutes: Vec<i32> = (first..=last).step_by(usize::try_from(step).unwrap_or(1)).collect();
    let draws = draw_inputs(&kitchen.unknown, DRAWS, SEED);
    let mut centres = vec![Vec::with_capacity(DRAWS); minutes.len()];
    let mut counts = vec![Vec::with_capacity(DRAWS); minutes.len()];
    for draw in &draws {
        let drawn = Drawn::of(draw);
        let traced = Traced::of(kitchen, &drawn, &[kitchen.hold(&drawn)], POINTS)?;
        for (at, minute) in minutes.iter().enumerate() {
            let time = traced.begins + Span::minutes(f64::from(*minute));
            centres[at].push(traced.centre(time).as_celsius());
            counts[at].push(share(&traced, time));
        }
    }
    let lines = minutes.iter().zip(centres.into_iter().zip(counts)).map(|(minute, (centres, counts))| {
        let time = shown.begins + Span::minutes(f64::from(*minute));
        let (centre, counted) = (shown.centre(time).as_celsius(), share(&shown, time));
        let ends = |answers, likely: f64| {
            find_band(answers).map_or((likely, likely), |band| (band.low.min(likely), band.high.max(likely)))
        };
        let (centre_low, centre_high) = ends(centres, centre);
        let (counted_low, counted_high) = ends(counts, counted);
        HistoryLine {
            minute: *minute,
            around_celsius: shown.around(time),
            centre_low,
            centre,
            centre_high,
            counted_low,
            counted,
            counted_high,
        }
    });
    Ok(lines.collect())
}

/// How much of everything counted has come by a time, percent.
fn share(traced: &Traced, at: Span) -> f64 {
    let all = traced.counted_in_all();
    if all == Span::ZERO { 0.0 } else { 100.0 * traced.counted(at).ratio_to(all) }
}
