//! How the day stands up to work that takes longer than planned: a thousand such days, tried.

use dayplan::{Spread, Spreads, try_days};
use serde::Serialize;

use crate::saved::SavedDay;

/// Days tried.
const DAYS: u32 = 1_000;
/// The seed of the days; any fixed number does.
const SEED: u64 = 1;
/// Waits and steps that are told.
const MOST_TOLD: usize = 3;

/// How the day stands up.
#[derive(Debug, Clone, Serialize)]
pub struct DayTried {
    /// `day-tried/1`.
    pub format: &'static str,
    /// The date in words.
    pub date_in_words: String,
    /// Days tried.
    pub days: u32,
    /// Days on which the work was over before the people leave.
    pub in_time: u32,
    /// When the last of them leaves, in minutes from midnight.
    pub ends: u32,
    /// The finish on a quick, a middling and a slow day: 10, 50 and 90 of a hundred were over by then.
    pub finish: [u32; 3],
    /// Days on which something waited longer than it should.
    pub broken_days: u32,
    /// The waits that were kept least often.
    pub waits: Vec<WaitTold>,
    /// The acts that decided when the day ended.
    pub deciding: Vec<ActTold>,
}

/// A wait that was not always kept.
#[derive(Debug, Clone, Serialize)]
pub struct WaitTold {
    /// The make.
    pub make: String,
    /// What ended.
    pub from: String,
    /// What began too late.
    pub to: String,
    /// The longest it should wait, in minutes.
    pub most_min: i32,
    /// Days on which it waited longer.
    pub days: u32,
}

/// An act that decided.
#[derive(Debug, Clone, Serialize)]
pub struct ActTold {
    /// The make.
    pub make: String,
    /// What is done.
    pub act: String,
    /// Days on which the end waited for it.
    pub days: u32,
}

/// Tries a kept day on a thousand days; `None` where nothing is planned.
#[must_use]
pub fn try_day(saved: &SavedDay) -> Option<DayTried> {
    let spreads: Spreads = saved
        .ranges
        .steps
        .iter()
        .map(|line| {
            let spread = Spread { low: line.low, typical: line.typical, high: line.high };
            ((line.project.clone(), line.step.clone()), spread)
        })
        .collect();
    let in_time = saved.ends.saturating_sub(saved.starts);
    let tried = try_days(&saved.problem, &saved.plan, &spreads, in_time, DAYS, SEED)?;
    let waits = tried.broken.iter().take(MOST_TOLD).map(|wait| WaitTold {
        make: saved.name_of(&wait.project),
        from: saved.act_of(&wait.project, &wait.from),
        to: saved.act_of(&wait.project, &wait.to),
        most_min: wait.max,
        days: wait.days,
    });
    let deciding = tried.deciding.iter().take(MOST_TOLD).map(|deciding| ActTold {
        make: saved.name_of(&deciding.project),
        act: saved.act_of(&deciding.project, &deciding.step),
        days: deciding.days,
    });
    Some(DayTried {
        format: "day-tried/1",
        date_in_words: saved.date_in_words.clone(),
        days: tried.days,
        in_time: tried.in_time,
        ends: saved.ends,
        finish: tried.finish.map(|minute| saved.starts + minute),
        broken_days: tried.broken_days,
        waits: waits.collect(),
        deciding: deciding.collect(),
    })
}
