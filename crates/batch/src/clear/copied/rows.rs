//! Each process that was typed, against the rows that are printed for the same food, pack and jar.

use std::collections::BTreeSet;

use almanac::{Almanac, CannerKind, JarSize, NoProcess, ProcessQuestion, ProductId};
use measure::{Altitude, Minutes, Pressure};

use super::{CopiedDraft, CopiedFault, CopiedPlace, CopiedProblem, DraftProcess};

/// Longer than any printed time: ten hours.
const LONGEST: Minutes = Minutes(600);
/// No home canner is run above it (USDA, Complete Guide to Home Canning, 2015, tables: 15 psi at most).
const HIGHEST: Pressure = Pressure::psi(15.0);

pub(super) fn check_rows(
    almanac: &Almanac,
    draft: &CopiedDraft,
    floor: Option<&ProductId>,
    faults: &mut Vec<CopiedFault>,
) {
    if draft.processes.is_empty() {
        faults.push(CopiedFault::at(CopiedPlace::Whole, CopiedProblem::NoProcess));
    }
    for (at, process) in draft.processes.iter().enumerate() {
        let place = CopiedPlace::Process(at);
        check_sense(almanac, process, place, faults);
        check_overlap(&draft.processes[..at], process, place, faults);
        check_jar(almanac, floor, process, place, faults);
        check_against_print(almanac, floor, process, place, faults);
    }
}

/// A row to confirm must stand in a table, however it got there.
pub(super) fn check_on_file(almanac: &Almanac, draft: &CopiedDraft, faults: &mut Vec<CopiedFault>) {
    for (at, process) in draft.processes.iter().enumerate() {
        let table = table_of(process.canner);
        let on_file = draft.food.as_ref().is_some_and(|food| {
            almanac.printed_lines(food).any(|line| {
                line.pack() == process.pack && line.jar() == process.jar && line.canner() == table
            })
        });
        if !on_file {
            faults.push(CopiedFault::at(CopiedPlace::Process(at), CopiedProblem::NothingToConfirm));
        }
    }
}

fn table_of(canner: CannerKind) -> CannerKind {
    if canner == CannerKind::Steam { CannerKind::BoilingWater } else { canner }
}

fn check_sense(almanac: &Almanac, process: &DraftProcess, place: CopiedPlace, faults: &mut Vec<CopiedFault>) {
    let DraftProcess { canner, minutes, pressure, band, .. } = *process;
    let mut refuse = |problem| faults.push(CopiedFault::at(place, problem));
    if minutes == Minutes(0) || minutes > LONGEST {
        refuse(CopiedProblem::MinutesUnlikely { minutes });
    }
    match pressure {
        None if canner.is_pressure() => refuse(CopiedProblem::NoPressure { canner }),
        Some(_) if !canner.is_pressure() => refuse(CopiedProblem::PressureWithoutPressure { canner }),
        Some(pressure) if !(pressure > Pressure::ZERO && pressure <= HIGHEST) => {
            refuse(CopiedProblem::PressureUnlikely { pressure });
        }
        _ => {}
    }
    if let Some(to) = band.max.filter(|to| *to < band.min) {
        refuse(CopiedProblem::BandBackwards { from: band.min, to });
    }
    let rule = almanac.rule("steam-max");
    let limit = rule.and_then(|rule| rule.value?.as_minutes()).map(|(_, longest)| longest);
    if let Some(limit) = limit.filter(|limit| canner == CannerKind::Steam && minutes > *limit) {
        let problem = CopiedProblem::SteamTooLong { minutes, limit };
        faults.push(CopiedFault::cited(place, problem, rule.map(|rule| &rule.citation)));
    }
}

fn check_overlap(
    before: &[DraftProcess],
    process: &DraftProcess,
    place: CopiedPlace,
    faults: &mut Vec<CopiedFault>,
) {
    let same = |other: &&DraftProcess| {
        (other.pack, other.jar, other.canner) == (process.pack, process.jar, process.canner)
    };
    for other in before.iter().filter(same) {
        let at = other.band.min.max(process.band.min);
        if other.band.holds(at) && process.band.holds(at) {
            faults.push(CopiedFault::at(place, CopiedProblem::BandsOverlap { at }));
        }
    }
}

/// Nothing above a quart, unless a table lists the jar for this very food.
fn check_jar(
    almanac: &Almanac,
    floor: Option<&ProductId>,
    process: &DraftProcess,
    place: CopiedPlace,
    faults: &mut Vec<CopiedFault>,
) {
    let jar = process.jar;
    let listed = floor.is_some_and(|food| almanac.printed_lines(food).any(|line| line.jar() == jar));
    if jar > JarSize::Quart && !listed {
        let refusal = almanac.refusal("oversize-jars").map(|refusal| &refusal.citation);
        faults.push(CopiedFault::cited(place, CopiedProblem::JarTooLarge { jar }, refusal));
    }
}

/// At every height where a printed row begins or the typed band does, the typed process is no less than any
/// alternative that is printed.
fn check_against_print(
    almanac: &Almanac,
    floor: Option<&ProductId>,
    process: &DraftProcess,
    place: CopiedPlace,
    faults: &mut Vec<CopiedFault>,
) {
    let Some(food) = floor else { return };
    let edges = almanac.printed_lines(food).map(|line| line.band().min);
    let heights: BTreeSet<Altitude> =
        edges.filter(|edge| process.band.holds(*edge)).chain([process.band.min]).collect();
    for at in heights {
        if let Some(fault) = less_than_print(almanac, food, process, place, at) {
            // One height is enough to show it.
            return faults.push(fault);
        }
    }
}

/// The first thing in which a typed process falls short of print at one height.
pub(super) fn less_than_print(
    almanac: &Almanac,
    food: &ProductId,
    process: &DraftProcess,
    place: CopiedPlace,
    at: Altitude,
) -> Option<CopiedFault> {
    let DraftProcess { pack, jar, canner, minutes, pressure, .. } = *process;
    let product = food.clone();
    let printed = match almanac.find_processes(&ProcessQuestion { product, pack, jar, canner, altitude: at })
    {
        Ok(printed) => printed,
        Err(NoProcess::NoRowForCanner { barred_by: Some((id, citation)), .. }) => {
            let refusal = almanac.refusal(id.as_str())?;
            let (item, reason) = (refusal.item.to_string(), refusal.reason.to_string());
            let problem = CopiedProblem::FoodBarred { item, reason };
            return Some(CopiedFault::cited(place, problem, Some(&citation)));
        }
        Err(NoProcess::JarTooLarge { barred_by, .. }) => {
            let problem = CopiedProblem::JarTooLarge { jar };
            return Some(CopiedFault::cited(place, problem, barred_by.as_ref()));
        }
        Err(NoProcess::AcidNotPrinted { citation }) => {
            let problem = CopiedProblem::AcidNotPrinted { jar };
            return Some(CopiedFault::cited(place, problem, Some(&citation)));
        }
        Err(_) => return None,
    };
    let longest = printed.iter().max_by_key(|line| line.minutes())?;
    if minutes < longest.minutes() {
        let problem = CopiedProblem::Shorter { minutes, printed: longest.minutes(), at };
        return Some(CopiedFault::cited(place, problem, Some(longest.citation())));
    }
    printed.iter().find_map(|line| {
        let (typed, printed) = (pressure?, line.pressure()?);
        let problem = CopiedProblem::LowerPressure { pressure: typed, printed, at };
        (typed < printed).then(|| CopiedFault::cited(place, problem, Some(line.citation())))
    })
}
