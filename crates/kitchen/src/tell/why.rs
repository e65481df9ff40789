//! Where the figures of the answer come from.

use super::{Planned, words};
use crate::answer::{ClockLine, Why};
use crate::plan::project_id;

/// An explanation for each make, each basket, the finish and the proof.
pub(super) fn whys(planned: &Planned<'_>, clock: &[ClockLine]) -> Vec<Why> {
    let mut whys = Vec::new();
    for (considered, candidate) in planned.chosen_makes() {
        let mut lines = vec![format!("worth {:.1} servings, made of:", candidate.worth.servings)];
        lines.extend(
            candidate
                .worth
                .parts
                .iter()
                .map(|part| format!("  {:+.1} {}: {}", part.servings, part.part, part.how)),
        );
        lines.push(format!(
            "formula {}: {}, {}",
            considered.formula.id, considered.formula.citation.source, considered.formula.citation.locator
        ));
        lines.extend(candidate.clearance.iter().flat_map(|clearance| &clearance.processes).map(|line| {
            let process = line.process();
            format!(
                "process {} min: {}, {}",
                process.minutes().0,
                process.citation().source,
                process.citation().locator
            )
        }));
        lines.extend(candidate.fit.notes.iter().map(|note| match &note.source {
            Some(source) => format!("{} ({source})", note.text),
            None => note.text.clone(),
        }));
        lines.push(format!(
            "{} of hand work, planned at the 80th percentile of first guesses",
            words::length(candidate.hand_minutes())
        ));
        lines.extend(
            clock
                .iter()
                .filter(|line| line.project == project_id(considered))
                .flat_map(|line| &line.detail)
                .map(|detail| format!("  {detail}")),
        );
        whys.push(Why { about: words::name_of(considered.formula), lines });
    }
    for basket in &planned.day.baskets {
        let mut lines = vec![basket.weighed.clone()];
        let whose =
            if basket.waits_is_ours { "ours, from the storage table and its state" } else { "as you said" };
        lines.push(format!("it will wait {} ({whose})", crate::plan::worth::waits_words(basket.waits)));
        whys.push(Why { about: basket.entered.clone(), lines });
    }
    whys.push(Why {
        about: "finish".to_owned(),
        lines: vec![super::proof_words(&planned.plan).to_owned(), bound_words(planned)],
    });
    whys
}

fn bound_words(planned: &Planned<'_>) -> String {
    let value = planned.plan.value.map_or_else(|| "none".to_owned(), |value| value.to_string());
    let bound =
        planned.plan.bound.as_ref().map_or_else(|| "none".to_owned(), |bound| bound.value.to_string());
    format!("worth of the plan in tenths of a serving: {value}; nothing above {bound} is possible")
}
