//! Drying: what it should weigh, how wet it is now, about how long.

use almanac::{Almanac, RangeOf};
use foodsci::drying::{
    DRYER_SHARE, DryBasis, find_dried_mass, find_dryer_bound, find_moisture_now, find_slice_time,
    find_water_to_dry,
};
use measure::{Diffusivity, Percent};

use super::answer::Answer;
use super::asked::{Asked, say};
use super::error::ReckonError;
use super::spread::{Range, numbers, spread_over};
use super::sum::{Kind, Sum, may, must};

pub(super) const SUMS: &[&Sum] = &[&DRY_WEIGHT, &DRY_NOW, &DRY_TIME];

const MOISTURE: &str = "the food table prints it: tomatoes 94, apples 84, beans 90, herbs 80 to 90 %";

static DRY_WEIGHT: Sum = Sum {
    name: "dry-weight",
    what: "what a load weighs when it is dry enough",
    inputs: &[
        must("load", Kind::Mass, "the prepared load", "weigh it cut and drained, without the tray"),
        must("moisture", Kind::Percent, "its moisture now", MOISTURE),
        must("wanted", Kind::Percent, "the moisture wanted", "vegetables 10 %, fruit 20 %, as printed"),
    ],
    equation: "m2 = m1 (1 - w1) / (1 - w2)",
    source: "balance of dry matter, exact; the printed moisture is right within 2 % of the fresh weight",
    example: &["load=1500g", "moisture=94", "wanted=10"],
    answer: |asked, _| {
        let (load, moisture) = (asked.mass("load")?, asked.percent("moisture")?);
        let wanted = asked.percent("wanted")?;
        let weighs = find_dried_mass(load, moisture, wanted)?;
        // The moisture of the fresh food differs by two in a hundred of its weight either way.
        let end = |by: f64| {
            let moved = Percent::of_hundred((moisture.as_percent() + by).clamp(wanted.as_percent(), 98.9));
            find_dried_mass(load, moved, wanted).map(measure::Mass::as_grams)
        };
        Ok(Answer::new()
            .range("weighs when dry", Range::around(end(2.0)?, weighs.as_grams(), end(-2.0)?), "g")
            .out("water to drive off", (load - weighs).as_grams(), "g")
            .know("condition it: a loosely filled closed jar for a week, shaken daily; drops on the glass mean back to the dryer"))
    },
};

static DRY_NOW: Sum = Sum {
    name: "dry-now",
    what: "how wet a load is now, from what it weighs now",
    inputs: &[
        must("load", Kind::Mass, "the prepared load at the start", "as you wrote it down"),
        must("moisture", Kind::Percent, "its moisture then", MOISTURE),
        must("weighs", Kind::Mass, "what it weighs now", "weigh it without the tray"),
        may(
            "kind",
            Kind::Word(&["fruit", "other"]),
            "what it is",
            "for fruit a guess of its water activity is printed",
        ),
    ],
    equation: "w = 1 - m1 (1 - w1) / m",
    source: "balance of dry matter, exact",
    example: &["load=1500g", "moisture=94", "weighs=240g"],
    answer: |asked, _| {
        let moisture =
            find_moisture_now(asked.mass("load")?, asked.percent("moisture")?, asked.mass("weighs")?)?;
        let answer = Answer::new().out("moisture now", moisture.as_percent(), "%");
        let is_fruit = asked.maybe_word("kind")? == Some("fruit");
        Ok(if is_fruit && (15.0..=20.0).contains(&moisture.as_percent()) {
            answer
                .range("water activity", Range::ends(0.60, 0.75), "")
                .know("dried fruit of 15 to 20 % lies there in a printed table; most moulds stop at 0.70 to 0.80")
                .caution("a guess: it clears nothing")
        } else if is_fruit {
            answer.know("a water activity is printed only for dried fruit of 15 to 20 %")
        } else {
            answer
        })
    },
};

const FOODS: &[&str] = &["tomato", "mango", "basil"];

static DRY_TIME: Sum = Sum {
    name: "dry-time",
    what: "about how many hours slices take in a dryer, and the least its heater allows",
    inputs: &[
        must(
            "food",
            Kind::Word(FOODS),
            "the food; these have published drying studies",
            "others: go by weight",
        ),
        must("thickness", Kind::Length, "a slice", "measure one"),
        must("load", Kind::Mass, "the prepared load", "weigh it"),
        must("moisture", Kind::Percent, "its moisture now", MOISTURE),
        must("wanted", Kind::Percent, "the moisture wanted", "vegetables 10 %, fruit 20 %, as printed"),
        must("heater", Kind::Power, "the dryer's heater", "its plate prints it"),
    ],
    equation: "diffusion out of a slab from both faces; and water off x heat of evaporation / heater",
    source: "published diffusivities by food at 55 to 80 C; a third to a half of the heater drives off water, a planning range of ours",
    example: &["food=tomato", "thickness=6mm", "load=1500g", "moisture=94", "wanted=10", "heater=500W"],
    answer: dry_time,
};

fn dry_time(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    /// A slice of vegetables at rest in warm dry air.
    const REST: DryBasis = DryBasis(0.03);
    let of = match asked.word("food")? {
        "tomato" => RangeOf::DryingDiffusivityTomato,
        "mango" => RangeOf::DryingDiffusivityMango,
        _ => RangeOf::DryingDiffusivityBasil,
    };
    let thickness = asked.length("thickness")?;
    let (load, moisture) = (asked.mass("load")?, asked.percent("moisture")?);
    let wanted = asked.percent("wanted")?;
    let (from, to) = (DryBasis::of_wet(moisture)?, DryBasis::of_wet(wanted)?);
    let published = almanac.planning_range(of);
    let spreads = numbers(
        published.as_diffusivity().expect("the row is a diffusivity"),
        Diffusivity::as_square_metres_per_second,
    );
    let hours = spread_over(&[spreads], |draw| {
        let spreads = Diffusivity::square_metres_per_second(draw[0]);
        Ok(find_slice_time(spreads, thickness, (from, to), REST)?.as_hours())
    })?;
    let off = find_water_to_dry(load, moisture, wanted)?;
    let bound = find_dryer_bound(asked.power("heater")?)?.as_kilograms_per_hour();
    let least = off.as_kilograms() / bound;
    let usual = |share: Percent| least / share.as_fraction();
    let (quick, slow) = (usual(DRYER_SHARE.1), usual(DRYER_SHARE.0));
    let answer = Answer::new()
        .range("by the slice", hours, "h")
        .range("by the heater", Range::ends(quick, slow), "h")
        .out("no dryer of this power is faster than", least, "h")
        .know("the longer of the two counts; case-hardened slices, dried too hot at first, take longer still")
        .caution("meat for jerky: no time from here; heat it as printed")
        .from(&published.citation);
    Ok(if least > 24.0 {
        answer.against(
            format!("the heater alone would need more than {}", say(least, "h")),
            "dry a smaller load at a time",
        )
    } else {
        answer
    })
}
