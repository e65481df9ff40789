//! What was wished and is refused, and the cautions that stand where the act is.

use almanac::CannerKind;
use batch::clear::{Because, ClearQuestion, Rider, clear, refuse_words};

use super::{Planned, words};
use crate::answer::Refusal;
use crate::day::{Wish, WishFor};
use crate::gauge;

/// Wishes that no publication stands behind, each with what may be done instead.
pub(super) fn refusals(planned: &Planned<'_>) -> Vec<Refusal> {
    let mut refusals = Vec::new();
    if planned.day.altitude.is_none() {
        refusals.push(no_altitude());
    }
    for wish in &planned.day.wishes {
        let (Wish::Must(what) | Wish::Target { what, .. } | Wish::Like { what, .. }) = wish else { continue };
        match what {
            WishFor::Unknown(words) => refusals.push(refuse(planned, words)),
            WishFor::Formula(id) => {
                let aside = planned.aside.iter().find(|aside| aside.formula == id.as_str());
                if let (Some(aside), Wish::Must(_)) = (aside, wish) {
                    refusals.push(Refusal {
                        wish: aside.name.clone(),
                        verdict: "not today".to_owned(),
                        because: vec![aside.why.clone()],
                        instead: vec![],
                        source: None,
                    });
                }
            }
            WishFor::Product(id) => refusals.extend(without_formula(planned, id)),
            WishFor::Produce(_) => {}
        }
    }
    refusals.extend(weak_vinegar(planned));
    refusals.extend(gauges_to_mend(planned));
    refusals
}

/// Without a height nothing is canned.
fn no_altitude() -> Refusal {
    Refusal {
        wish: "canning".to_owned(),
        verdict: "not tested".to_owned(),
        because: vec!["the day names no altitude, and every process depends on it".to_owned()],
        instead: vec![
            "read the height off a topographic map of the place".to_owned(),
            "ask the local extension office or the town hall".to_owned(),
            "look up the survey benchmark or airfield nearest to you".to_owned(),
            "freezing, drying and ferments go on without it".to_owned(),
        ],
        source: None,
    }
}

/// A wish in words that name nothing tested.
fn refuse(planned: &Planned<'_>, words: &str) -> Refusal {
    match refuse_words(planned.almanac, words) {
        Some(refused) => Refusal {
            wish: words.to_owned(),
            verdict: words::verdict(refused.verdict).to_owned(),
            because: refused.because.into_iter().map(|reason| reason.text).collect(),
            instead: refused.instead.into_iter().map(|instead| instead.text).collect(),
            source: refused.sources.first().map(|cited| words::cited(cited.citation())),
        },
        None => Refusal {
            wish: words.to_owned(),
            verdict: "not tested".to_owned(),
            because: vec!["no formula and no process on file has that name".to_owned()],
            instead: vec![
                "chill, freeze or dry it, or ask the local extension service for a tested formula".to_owned(),
            ],
            source: None,
        },
    }
}

/// A wish for a food that has printed processes and no formula on file.
fn without_formula(planned: &Planned<'_>, product: &almanac::ProductId) -> Option<Refusal> {
    let has_formula = planned.almanac.formulas().any(|formula| formula.product.as_ref() == Some(product));
    (!has_formula).then(|| Refusal {
        wish: product.to_string(),
        verdict: "not planned".to_owned(),
        because: vec![
            "a process is printed for it, but no formula on file says how it is prepared".to_owned(),
        ],
        instead: vec!["ask for its clearance, and follow the publication that it names".to_owned()],
        source: None,
    })
}

/// Dial canners whose gauge gives no process today, asked with the first food that prints a dial line.
fn gauges_to_mend(planned: &Planned<'_>) -> Vec<Refusal> {
    let Some(altitude) = planned.day.altitude else { return vec![] };
    let line = planned.almanac.products().find_map(|product| {
        let mut lines = planned.almanac.printed_lines(&product.id);
        let line = lines.find(|line| line.canner() == CannerKind::Dial && line.band().holds(altitude))?;
        Some((product.id.clone(), line.pack(), line.jar()))
    });
    let Some((product, pack, jar)) = line else { return vec![] };
    let dials = planned.day.canners.iter().filter(|canner| canner.kind == CannerKind::Dial);
    dials
        .filter_map(|canner| {
            let question = ClearQuestion {
                product: product.clone(),
                pack,
                jar,
                canner: CannerKind::Dial,
                altitude,
                gauge: gauge::of_canner(canner, planned.day.date),
                formula: None,
                changes: vec![],
            };
            let answer = clear(planned.almanac, &question).ok()?;
            let of_gauge: Vec<String> = answer
                .because
                .iter()
                .filter(|reason| matches!(reason.code, Because::GaugeUntested | Because::GaugeOff))
                .map(|reason| reason.text.clone())
                .collect();
            (!of_gauge.is_empty()).then(|| Refusal {
                wish: format!("anything in the {}", canner.id),
                verdict: words::verdict(answer.verdict).to_owned(),
                because: of_gauge,
                instead: answer.instead.into_iter().map(|instead| instead.text).collect(),
                source: answer.sources.first().map(|cited| words::cited(cited.citation())),
            })
        })
        .collect()
}

/// Vinegar that is too weak to pickle with.
fn weak_vinegar(planned: &Planned<'_>) -> Option<Refusal> {
    let rule = planned.almanac.rule("vinegar-strength")?;
    let least = rule.value?.as_percent()?.0;
    let weak = planned
        .day
        .supplies
        .vinegar
        .iter()
        .find(|vinegar| vinegar.strength.is_some_and(|strength| strength < least))?;
    let strength = weak.strength?.as_percent();
    Some(Refusal {
        wish: format!("{} vinegar of {strength} %", weak.kind),
        verdict: "do not".to_owned(),
        because: vec![format!(
            "pickles and relishes need vinegar of {} %, and a weaker one cannot be mended by using more",
            least.as_percent()
        )],
        instead: vec!["use it on salad or for cleaning; it is not counted as vinegar today".to_owned()],
        source: Some(words::cited(&rule.citation)),
    })
}

/// The cautions of the day's processes, each once, and the deference to those who test.
pub(super) fn cautions(planned: &Planned<'_>) -> Vec<String> {
    let riders: Vec<&Rider> = planned
        .chosen()
        .filter_map(|candidate| candidate.clearance.as_ref())
        .flat_map(|clearance| &clearance.riders)
        .filter(|rider| !told_with_the_make(rider.code))
        .collect();
    // Where a long process asks for deeper water, that depth does for all.
    let deep = riders.iter().any(|rider| rider.code == "bw-water-depth-long");
    let mut cautions: Vec<String> = Vec::new();
    for rider in riders.iter().filter(|rider| !(deep && rider.code == "bw-water-depth")) {
        if !cautions.contains(&rider.text) {
            cautions.push(rider.text.clone());
        }
    }
    cautions.push(
        "where this sheet and the publication it names differ, the publication is right; your local extension \
         service answers questions; food that is sold or shared is under local law"
            .to_owned(),
    );
    cautions
}

/// Whether a rider is told in the make's own process line rather than once for the day.
fn told_with_the_make(code: &str) -> bool {
    matches!(code, "headspace" | "acid-in-each-jar")
}
