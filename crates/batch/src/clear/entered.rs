//! A process the household copied from a publication: shown as entered, and never called tested.

use almanac::{Almanac, Verdict};

use super::answer::{Because, Clearance, Entered, EnteredBand, Reason};
use super::judge::clear;
use super::question::{ClearError, ClearQuestion};

/// The first year whose publications are taken: the federal bulletin was revised in it, and what is older prints
/// times that were found too short since.
const FIRST_YEAR: u16 = 1994;

/// Answers with the process the household entered from its own copy of a publication. The verdict is *not tested*,
/// or what else is barred; a process shorter than a printed line of the same food, pack, jar, canner and altitude
/// is not shown.
///
/// # Errors
/// [`ClearError`] as for [`clear`].
pub fn clear_entered(
    almanac: &Almanac,
    question: &ClearQuestion,
    entered: Entered,
) -> Result<Clearance, ClearError> {
    let mut clearance = clear(almanac, question)?;
    let printed = clearance.processes.iter().map(|line| line.process().minutes()).max();
    let in_band = entered.bands.iter().find(|one| one.band.holds(question.altitude));
    let refused = match (in_band, printed) {
        _ if entered.year < FIRST_YEAR => {
            Some(format!("{} is of {}; nothing before {FIRST_YEAR} is taken", entered.title, entered.year))
        }
        (None, _) => Some(format!("no band entered holds {} ft", question.altitude.as_feet())),
        (Some(EnteredBand { minutes, .. }), Some(printed)) if *minutes < printed => Some(format!(
            "the {} min entered are fewer than the {} min printed for the same jar and altitude",
            minutes.0, printed.0
        )),
        _ => None,
    };
    let barred = clearance.verdict == Verdict::DoNot;
    clearance.verdict = clearance.verdict.max(Verdict::NotTested);
    clearance.processes.clear();
    clearance.acid = None;
    clearance.riders.clear();
    let text =
        format!("printed, as you entered it, in {}, {}, p. {}", entered.title, entered.year, entered.page);
    clearance.because.push(Reason {
        code: Because::EnteredByYou,
        text: refused.clone().unwrap_or(text),
        source: None,
    });
    clearance.entered = (refused.is_none() && !barred).then_some(entered);
    Ok(clearance)
}
