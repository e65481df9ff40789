//! The day has moved: a step ran long, a burner died, someone left. The rest is planned again.
//!
//! What a person says in passing ([`SlipWords`]) becomes facts for the planner: everything is taken to have gone as
//! planned but for what they say and what must follow from it. The planner answers with a shifted plan at once and a
//! better one after it; the people are dealt out again, and the differences are told in words.

mod facts;
mod tell;
mod words;

use dayplan::{Budget, Plan, Problem, Replanned, SlipFault};
use serde::Serialize;

pub use self::words::{SlipWords, WordFault};

use crate::answer::ClockLine;
use crate::day::{ClockTime, Span};
use crate::plan::roster;
use crate::ranges::RangesDocument;
use crate::saved::SavedDay;
use crate::staff::{self, PeopleDocument};

/// The work that planning the rest again may cost, in the planner's counted steps.
const SLIP_WORK: u64 = 3_000_000;

/// The rest of the day after a slip.
#[derive(Debug, Clone, Serialize)]
pub struct SlipAnswer {
    /// `slip-answer/1`.
    pub format: &'static str,
    /// The date in words.
    pub date_in_words: String,
    /// The minute it is, from midnight.
    pub now: u32,
    /// The clock time of the horizon's first minute.
    pub starts: u32,
    /// The last minute anybody is there.
    pub ends: u32,
    /// When the last step ends.
    pub finish: Option<u32>,
    /// What is otherwise than planned, a sentence each; empty when nothing is.
    pub changes: Vec<String>,
    /// Whether anything of the old plan stays where it was.
    pub rest_stays: bool,
    /// What cannot be kept, a sentence each, with what to do.
    pub troubles: Vec<String>,
    /// What was taken for granted.
    pub taken: Vec<String>,
    /// Every act, those that are over as well.
    pub clock: Vec<ClockLine>,
    /// What each project is called.
    pub names: std::collections::BTreeMap<String, String>,
    /// Who is there and who does what from now on.
    pub staff: PeopleDocument,
    /// How long the steps may really take.
    pub ranges: RangesDocument,
    /// The rest of the day as a problem.
    pub problem: Problem,
    /// Its plan.
    pub plan: Plan,
}

/// Why a slip cannot be answered.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SlipError {
    /// Words that name nothing of the day.
    #[error("{0}")]
    Words(#[from] WordFault),
    /// The facts do not go with the day.
    #[error("{0}")]
    Facts(SlipFault),
}

/// Plans the rest of a day again. `see` is shown the answer that is there at once, and then the better one is returned.
///
/// # Errors
/// The first word that names nothing of the day, or the first fact that does not go with it.
pub fn slip_day(
    saved: &SavedDay,
    words: &SlipWords,
    see: &mut dyn FnMut(SlipAnswer),
) -> Result<SlipAnswer, SlipError> {
    let said = words::read_words(saved, words)?;
    let facts = facts::state_facts(saved, &said);
    let mut first = |told: &Replanned| see(answer(saved, &said, &facts, told.clone()));
    let told = dayplan::replan(&saved.problem, &saved.plan, &facts.slip, Budget::work(SLIP_WORK), &mut first)
        .map_err(|faults| {
            SlipError::Facts(faults.into_iter().next().expect("an error holds at least one fault"))
        })?;
    Ok(answer(saved, &said, &facts, told))
}

/// Deals the people out and puts the answer in words.
fn answer(saved: &SavedDay, said: &words::Said, facts: &facts::Facts, mut told: Replanned) -> SlipAnswer {
    let horizon = told.problem.horizon;
    let span = Span { from: ClockTime(saved.starts), to: ClockTime(saved.starts + horizon) };
    let mut known = saved.known_turns();
    let has_begun = |(project, step): &(String, String)| {
        facts.slip.begun.iter().any(|begun| begun.project == *project && begun.step == *step)
    };
    known.retain(|step, _| has_begun(step));
    let (plan, roster) = roster::settle(&facts.people, span, &told.problem, told.plan.clone(), &known);
    if dayplan::check(&told.problem, &plan).is_empty() {
        told.changes = tell::moved_again(&told, &saved.plan, &plan, &facts.slip);
        told.plan = plan;
    }
    let clock = tell::clock_lines(saved, &facts.people, &told, &roster);
    let finish = clock.iter().map(|line| line.to).max();
    SlipAnswer {
        format: "slip-answer/1",
        date_in_words: saved.date_in_words.clone(),
        now: said.now,
        starts: saved.starts,
        ends: saved.ends,
        finish,
        changes: tell::word_changes(saved, &told),
        rest_stays: tell::something_stays(saved, &told, &facts.slip),
        troubles: tell::word_troubles(saved, &told, &roster),
        taken: facts.taken.clone(),
        clock,
        names: saved.names.clone(),
        staff: staff::write_staff(&facts.people, span, &roster),
        ranges: saved.ranges.clone(),
        problem: told.problem,
        plan: told.plan,
    }
}
