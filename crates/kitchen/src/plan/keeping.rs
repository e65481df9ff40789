//! How a make could be kept: a tested jar and canner, or the freezer, the dryer, the crock, the refrigerator.

use almanac::{Almanac, Formula, JarSize, Method, Mouth, Pack, Verdict, YieldUnit};
use batch::clear::{self, ClearQuestion, Clearance};
use measure::Altitude;

use super::setting::Setting;
use crate::day::Day;
use crate::gauge;
use crate::tell::words;
use crate::work::Way;

/// One way to keep a make: jar and canner, or neither.
#[derive(Debug, Clone)]
pub(crate) struct KeepingWay {
    pub(crate) jar: Option<(JarSize, Mouth)>,
    pub(crate) canner: Option<usize>,
    pub(crate) pack: Option<Pack>,
    pub(crate) clearance: Option<Clearance>,
}

/// The ways to keep what a formula makes: tested canner and jar pairs, or freezer, dryer, crock, refrigerator.
pub(crate) fn ways_to_keep(setting: &Setting<'_>, formula: &Formula) -> Result<Vec<KeepingWay>, String> {
    let canned =
        formula.methods.iter().any(|method| matches!(method, Method::BoilingWater | Method::Pressure));
    if !canned {
        return Ok(vec![KeepingWay { jar: None, canner: None, pack: None, clearance: None }]);
    }
    let (almanac, day) = (setting.almanac, setting.day);
    if !formula.citation.may_be_called_tested() {
        return Err("its formula is on file, but not seen in a publication of full rank".to_owned());
    }
    let Some(altitude) = day.altitude else {
        return Err("no altitude is given, so nothing is canned".to_owned());
    };
    let Some(product) = &formula.product else {
        return Err("no tested process is on file for it".to_owned());
    };
    let mut ways = Vec::new();
    let mut why_not = None;
    for (canner_at, canner) in day.canners.iter().enumerate() {
        let mut served = 0;
        for jars in jars_by_use(day, formula) {
            if served == MOST_JARS {
                break;
            }
            for &pack in &formula.packs {
                let question = ClearQuestion {
                    product: product.clone(),
                    pack,
                    jar: jars.0,
                    canner: canner.kind,
                    altitude,
                    gauge: gauge::of_canner(canner, day.date),
                    formula: Some(formula.id.clone()),
                    changes: vec![],
                };
                match clear::clear(almanac, &question) {
                    Ok(answer) if answer.verdict == Verdict::Tested => {
                        ways.push(KeepingWay {
                            jar: Some(jars),
                            canner: Some(canner_at),
                            pack: Some(pack),
                            clearance: Some(answer),
                        });
                        served += 1;
                        break;
                    }
                    Ok(answer) => {
                        why_not.get_or_insert_with(|| {
                            answer.because.first().map_or_else(String::new, |because| because.text.clone())
                        });
                    }
                    Err(error) => {
                        why_not.get_or_insert_with(|| error.to_string());
                    }
                }
            }
        }
    }
    if ways.is_empty() {
        return Err(
            why_not.unwrap_or_else(|| "no canner of yours and no jar on the counter serve it".to_owned())
        );
    }
    Ok(ways)
}

/// Ways of jar and mouth that the planner is shown for one formula and canner, at the most.
const MOST_JARS: usize = 2;

/// Jar sizes and mouths on the counter: the size that the printed yield counts in first, then others the formula
/// names, then by how many there are.
fn jars_by_use(day: &Day, formula: &Formula) -> Vec<(JarSize, Mouth)> {
    let counted = formula.yield_.as_ref().and_then(|printed| match printed.unit {
        YieldUnit::Jar(size) => Some(size),
        _ => None,
    });
    let mut jars: Vec<_> = day.jars.iter().filter(|jars| jars.count > 0).collect();
    jars.sort_by_key(|jars| {
        let named = formula.jars.contains(&jars.size);
        (counted != Some(jars.size), !named, std::cmp::Reverse(jars.count), jars.size, jars.mouth)
    });
    jars.into_iter().map(|jars| (jars.size, jars.mouth)).collect()
}

/// The process as far as the work is concerned.
pub(crate) fn process_way(setting: &Setting<'_>, way: &KeepingWay) -> Way {
    let (almanac, day) = (setting.almanac, setting.day);
    let line = way.clearance.as_ref().and_then(|answer| answer.processes.first());
    let kind = way.canner.map(|at| day.canners[at].kind);
    let process = kind.zip(line.map(|line| line.process().minutes().0));
    let told = line.map(|line| words::process_line(day.units, line, None));
    Way {
        pack: way.pack,
        process,
        held_at: line.map_or_else(String::new, words::held_at),
        headspace: told.map(|told| told.headspace),
        sterilize_min: process
            .filter(|(kind, _)| !kind.is_pressure())
            .and_then(|(_, minutes)| sterilize_minutes(almanac, minutes, day.altitude?)),
    }
}

/// How long empty jars are boiled before a process shorter than the printed limit: the printed minutes and one more
/// for each started thousand feet above the first. `None` where no sterilizing is asked for.
/// Source: rules `sterile-jars-under-10` and `sterilize-how`.
fn sterilize_minutes(almanac: &Almanac, process_min: u32, altitude: Altitude) -> Option<u32> {
    const STEP_FT: u32 = 1_000;
    let (limit, _) = almanac.rule("sterile-jars-under-10")?.value?.as_minutes()?;
    let (least, _) = almanac.rule("sterilize-how")?.value?.as_minutes()?;
    let steps = altitude.as_feet().saturating_sub(STEP_FT).div_ceil(STEP_FT);
    (process_min < limit.0).then_some(least.0 + steps)
}
