//! What goes with a tested answer: hazards and conditions, each from a rule on file, shown where the act is.

use almanac::{Almanac, CannerKind, CannerRule, FoodGroup, Pack, Process};
use measure::{Altitude, Minutes, write_altitude, write_length_in};

use super::answer::{ClearedLine, in_inches, jar_name};
use super::findings::Findings;
use super::question::{ClearQuestion, Tested};

/// Writes down everything that goes with the lines served.
pub(crate) fn add_riders(
    almanac: &Almanac,
    question: &ClearQuestion,
    lines: &[ClearedLine],
    findings: &mut Findings,
) {
    let rules = Rules { almanac, findings };
    match question.canner {
        CannerKind::BoilingWater => boiling_water(rules, question, lines),
        CannerKind::Steam => steam(rules, question),
        CannerKind::Dial | CannerKind::Weighted => pressure(rules, question),
    }
    let mut rules = Rules { almanac, findings };
    if !question.canner.is_pressure() {
        sterile_jars(&mut rules, question.altitude, lines);
    }
    formula_only(&mut rules, question, lines);
    filling(&mut rules, question, lines);
    alternatives(&mut rules, question, lines);
    afterwards(&mut rules);
}

/// Rules on file, each turned into a rider when it is there.
struct Rules<'a> {
    almanac: &'a Almanac,
    findings: &'a mut Findings,
}

impl Rules<'_> {
    fn add(&mut self, code: &'static str, text: impl FnOnce(&CannerRule) -> String) {
        if let Some(rule) = self.almanac.rule(code) {
            let text = text(rule);
            self.findings.remind(code, text, Some(&rule.citation));
        }
    }
}

fn boiling_water(mut rules: Rules<'_>, question: &ClearQuestion, lines: &[ClearedLine]) {
    let longest = lines.iter().map(|line| line.process().minutes()).max().unwrap_or_default();
    let preheat = match question.pack {
        Pack::Hot => "bw-preheat-hot",
        Pack::Raw => "bw-preheat-raw",
    };
    rules.add(preheat, |rule| match rule.value.and_then(|value| value.as_temp()) {
        Some((_, warm)) => format!("the water is at {} F when the jars go in", warm.as_fahrenheit()),
        None => "the water is hot when the jars go in".to_owned(),
    });
    // The longer process asks for more water over the lids.
    let depth = if longest > DEEP_WATER_ABOVE { "bw-water-depth-long" } else { "bw-water-depth" };
    rules.add(depth, |rule| format!("keep {} of water over the lids the whole time", inches(rule)));
    rules.add("bw-start-time", |_| "start the clock when the water is at a full rolling boil".to_owned());
    rules.add("bw-restart", |_| "if the boil stops, bring it back and give the whole time again".to_owned());
    rules.add("bw-rest", |rule| match minutes(rule) {
        Some(rest) => format!("heat off, lid off, then let the jars stand {rest} min before lifting them"),
        None => "let the jars stand before lifting them".to_owned(),
    });
}

/// Above this the water stands deeper over the lids (USDA, Complete Guide to Home Canning, 2015, p. 1-18: more
/// than 30 minutes; the same words stand in the rule's own row).
const DEEP_WATER_ABOVE: Minutes = Minutes(30);

fn steam(mut rules: Rules<'_>, question: &ClearQuestion) {
    rules.add("steam-vent", |rule| {
        format!(
            "start the clock when the air is out and a steady plume of {} stands, at boiling-water temperature",
            inches(rule)
        )
    });
    rules.add("steam-max", |rule| match minutes(rule) {
        Some(limit) => format!("a steam canner runs {limit} min at most, the altitude step included"),
        None => "a steam canner runs only short processes".to_owned(),
    });
    rules.add("steam-no-open", |_| "the lid stays on and no water is added until the time is up".to_owned());
    if question.pack == Pack::Hot {
        rules.add("steam-hot-jars", |_| "hot jars, filled hot, into the canner without cooling".to_owned());
    }
    rules.add("steam-cool", |_| "let the jars cool in still air".to_owned());
}

fn pressure(mut rules: Rules<'_>, question: &ClearQuestion) {
    rules.add("pc-water", |rule| format!("{} of water in the bottom before loading", inches(rule)));
    rules.add("pc-vent", |rule| match minutes(rule) {
        Some(vent) => format!("vent a strong steady stream of steam for {vent} min before closing the vent"),
        None => "vent before closing".to_owned(),
    });
    rules.add("pc-start-time", |_| {
        "start the clock when the pressure is reached, or the weight moves as its maker says".to_owned()
    });
    rules.add("pc-restart", |_| {
        "if the pressure falls below the line, bring it back and give the whole time again".to_owned()
    });
    if question.canner == CannerKind::Dial {
        rules.add("pc-gauge-check", |_| "yearly test: a dial gauge is tested every year".to_owned());
        if question.gauge.is_none_or(|gauge| gauge.tested == Tested::NotSaid) {
            rules.add("gauge-test-when", |_| {
                "you have not said when the gauge was tested; a new, dropped, wetted or damaged gauge is tested \
                 before its next use"
                    .to_owned()
            });
        }
    } else {
        rules.add("gauge-weighted", |_| {
            "a weight needs no test and no correction; the altitude step still counts".to_owned()
        });
    }
    rules.add("pc-cool-natural", |_| {
        "let the canner cool and lose its pressure by itself; never with water or by opening the vent"
            .to_owned()
    });
    rules.add("pc-wait-open", |rule| match minutes(rule) {
        Some(wait) => {
            format!("pressure at zero, weight off, then wait {wait} min before opening away from you")
        }
        None => "wait before opening".to_owned(),
    });
}

/// Jars are boiled empty when the process is too short to do it. Both figures stand in rules.
fn sterile_jars(rules: &mut Rules<'_>, altitude: Altitude, lines: &[ClearedLine]) {
    let Some(limit) = rules.almanac.rule("sterile-jars-under-10") else { return };
    let Some(limit_minutes) = limit.value.and_then(|value| value.as_minutes()).map(|(low, _)| low) else {
        return;
    };
    let shortest = lines.iter().map(|line| line.process().minutes()).min().unwrap_or_default();
    if shortest >= limit_minutes {
        return;
    }
    let how = rules.almanac.rule("sterilize-how");
    let text = match how.and_then(|rule| rule.value?.as_minutes()) {
        Some((boil, _)) => format!(
            "the process is under {} min: boil the empty jars {} min first (at {}) and fill them hot",
            limit_minutes.0,
            boil.0 + extra_minutes(altitude),
            write_altitude(altitude)
        ),
        None => format!("the process is under {} min: use sterilized jars", limit_minutes.0),
    };
    let citation = how.unwrap_or(limit).citation.clone();
    rules.findings.cite(&limit.citation);
    rules.findings.remind("sterilize-jars", text, Some(&citation));
}

/// One minute more for each further thousand feet, or part of it, above the first thousand.
fn extra_minutes(altitude: Altitude) -> u32 {
    altitude.as_feet().saturating_sub(1000).div_ceil(1000)
}

/// Where the acid, the sugar or the salt of a formula does the keeping, the minutes are for that formula only.
fn formula_only(rules: &mut Rules<'_>, question: &ClearQuestion, lines: &[ClearedLine]) {
    let Some(product) = rules.almanac.product(&question.product) else { return };
    let by_formula =
        matches!(
            product.group,
            FoodGroup::Salsa | FoodGroup::Pickle | FoodGroup::Fermented | FoodGroup::JamJelly
        ) || product.names.iter().any(|name| name.contains("formula") || name.contains("filling"));
    let (true, Some(line)) = (by_formula, lines.first()) else { return };
    let text = match &question.formula {
        Some(formula) => {
            let named = rules.almanac.formula(formula).map_or(formula.as_str(), |formula| &*formula.name);
            format!("these minutes are for the formula {named}, made as printed")
        }
        None => {
            "these minutes are for the printed formula only, made as printed; no other mix has any".to_owned()
        }
    };
    rules.findings.remind("formula-only", text, Some(line.process().citation()));
}

fn filling(rules: &mut Rules<'_>, question: &ClearQuestion, lines: &[ClearedLine]) {
    if let Some(process) = lines.first().map(ClearedLine::process) {
        let text = format!("leave {} of headspace", write_length_in(process.headspace()));
        rules.findings.remind("headspace", text, Some(process.citation()));
        smaller_jar(rules, question, process);
    }
    if question.pack == Pack::Hot {
        rules.add("hot-pack-at-once", |_| {
            "hot food into hot jars, lids on and into the canner at once; hot food and syrup burn".to_owned()
        });
    }
}

fn smaller_jar(rules: &mut Rules<'_>, question: &ClearQuestion, process: &Process) {
    for rule in process.jar_rules().iter().filter_map(|rule| rules.almanac.rule(rule.as_str())) {
        let text = format!(
            "a {} takes the minutes printed for the {}; the food may come out softer",
            jar_name(question.jar),
            jar_name(process.jar_row())
        );
        rules.findings.remind("smaller-jar", text, Some(&rule.citation));
    }
}

fn alternatives(rules: &mut Rules<'_>, question: &ClearQuestion, lines: &[ClearedLine]) {
    if lines.len() > 1 {
        rules.add("options-are-alternatives", |_| {
            "each line is whole and enough by itself: keep to one, and never take the time of one with the \
             pressure of another"
                .to_owned()
        });
    }
    if lines.iter().any(|line| line.process().acid_in_each_jar()) {
        let mut text = format!(
            "acid goes into every {} before the food, in this canner as in any other",
            jar_name(question.jar)
        );
        let acid = rules.almanac.acid_for(&question.product, question.jar);
        if let Some(larger) = acid.as_ref().map(|acid| acid.jar).filter(|jar| *jar != question.jar) {
            let larger = jar_name(larger);
            text =
                format!("{text}; no amount is printed for it, so it gets the whole amount of the {larger}");
        }
        rules.findings.remind("acid-in-each-jar", text, acid.as_ref().map(|acid| &acid.citation));
    }
}

fn afterwards(rules: &mut Rules<'_>) {
    rules.add("cool-time", |rule| match rule.value.map(|value| value.as_count()) {
        Some((low, high)) => {
            format!("let the jars stand {low} to {high} h, bands untouched, then check the seals")
        }
        None => "let the jars stand, bands untouched, then check the seals".to_owned(),
    });
    rules.add("discard-signs", |_| {
        "never taste from a jar that leaks, bulges, spurts, smells wrong or has mould: throw it away"
            .to_owned()
    });
    rules.findings.remind(
        "local-extension",
        "where your local extension service says something stricter, do that; what is sold or shared meets local law",
        None,
    );
}

fn minutes(rule: &CannerRule) -> Option<u32> {
    rule.value?.as_minutes().map(|(_, longest)| longest.0)
}

fn inches(rule: &CannerRule) -> String {
    match rule.value.and_then(|value| value.as_length()) {
        Some((low, high)) if in_inches(low) == in_inches(high) => format!("{} in", in_inches(low)),
        Some((low, high)) => format!("{} to {} in", in_inches(low), in_inches(high)),
        None => "enough".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: Michigan State University Extension, Preserving Food Safely, file 01600323, 1997: boil 10 minutes
    /// at less than 1,000 ft, 1 additional minute for each additional 1,000 ft.
    #[test]
    fn empty_jars_boil_longer_with_each_thousand_feet() {
        for (feet, extra) in [(0, 0), (1000, 0), (1001, 1), (2000, 1), (2001, 2), (6500, 6)] {
            assert_eq!(extra_minutes(Altitude::feet(feet)), extra, "{feet} ft");
        }
    }
}
