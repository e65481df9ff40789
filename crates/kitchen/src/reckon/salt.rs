//! Salt: for a ferment, for a brine, for a brine at rest.

use almanac::{Almanac, FermentRecord};
use foodsci::ferment::{SaltSays, compare_with_band};
use foodsci::salt::{
    SalometerDegrees, find_brine_strength, find_brine_to_rest_at, find_ferment_salt, find_resting_salt,
    find_resting_salt_in_water, find_salt_for_brine, find_salting_time, mix_brine, read_salometer, weigh_net,
};
use measure::{Density, Diffusivity, Length, Percent};

use super::answer::Answer;
use super::asked::{Asked, say};
use super::error::ReckonError;
use super::spread::Range;
use super::sum::{Kind, Sum, may, must};

pub(super) const SUMS: &[&Sum] =
    &[&FERMENT_SALT, &BRINE, &TOP_UP, &BRINE_AT_REST, &BRINE_FOR_REST, &SALOMETER, &SALTING_TIME];

/// Water at 20 °C (IAPWS-95).
const WATER: Density = Density::kilograms_per_cubic_metre(998.2);

static FERMENT_SALT: Sum = Sum {
    name: "ferment-salt",
    what: "salt for produce that is salted dry, by its weight without the bowl",
    inputs: &[
        must("gross", Kind::Mass, "the weight of the trimmed produce, bowl and all", "put both on the scale"),
        must(
            "bowl",
            Kind::Mass,
            "the weight of the empty bowl",
            "weigh the bowl; 0g if the scale was set to nothing",
        ),
        must(
            "percent",
            Kind::Percent,
            "salt as a share of the produce",
            "the formula prints it: 2.25 % for sauerkraut",
        ),
        may("ferment", Kind::Name, "the ferment, to compare with its printed band", "sauerkraut or kimchi"),
    ],
    equation: "salt = (gross - bowl) x percent / 100",
    source: "arithmetic; percent of the produce's own weight, as ferment formulas print it",
    example: &["gross=3410g", "bowl=610g", "percent=2.25"],
    answer: ferment_salt,
};

fn ferment_salt(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let produce = weigh_net(asked.mass("gross")?, asked.mass("bowl")?)?;
    let percent = asked.percent("percent")?;
    let salt = find_ferment_salt(produce, percent)?;
    let whole = salt.ratio_to(produce + salt) * 100.0;
    let mut answer = Answer::new()
        .out("salt", salt.as_grams(), "g")
        .out("produce", produce.as_grams(), "g")
        .out("salt in everything", whole, "%")
        .caution("never less salt than the formula prints: it keeps the wrong microbes out")
        .know("weigh salt; a spoon of flakes holds half of what a spoon of fine salt holds");
    let Some(ferment) = asked.maybe_name("ferment") else { return Ok(answer) };
    let served = almanac
        .find_ferment(ferment, FermentRecord::Salt)
        .filter(|fact| &*fact.unit == "percent w/w")
        .find(|fact| fact.parameter.contains("band served") || fact.parameter.contains("final salt"));
    let Some((fact, (low, high))) = served.and_then(|fact| Some((fact, fact.figures()?))) else {
        return Err(asked.unknown("ferment", vec!["sauerkraut".to_owned(), "kimchi".to_owned()]));
    };
    let band = (Percent::of_hundred(low), Percent::of_hundred(high));
    answer = answer.printed(format!("{}: {low} to {high} %", fact.parameter)).from(&fact.citation);
    let (by, side) = match compare_with_band(percent, band)? {
        SaltSays::Inside => return Ok(answer),
        SaltSays::TooLittle { by } => (by, "below"),
        SaltSays::TooMuch { by } => (by, "above"),
    };
    Ok(answer.against(
        format!(
            "{} of salt is {side} the printed band of {low} to {high} % by {}",
            say(percent.as_percent(), "%"),
            say(by.as_percent(), "%")
        ),
        "take the salt that the formula prints",
    ))
}

static BRINE: Sum = Sum {
    name: "brine",
    what: "salt for a brine of a strength, or the strength of salt and water",
    inputs: &[
        must("water", Kind::Volume, "the water", "measure it"),
        may("percent", Kind::Percent, "the strength by weight wanted", "the formula prints it"),
        may("salt", Kind::Mass, "the salt, when the strength is asked for", "weigh it"),
    ],
    equation: "percent = 100 x salt / (salt + water)",
    source: "arithmetic, by weight",
    example: &["water=2L", "percent=5"],
    answer: |asked, _| {
        let water = WATER.mass_of(asked.volume("water")?);
        let answer = Answer::new();
        match (asked.maybe_percent("percent")?, asked.maybe_mass("salt")?) {
            (Some(percent), None) => {
                Ok(answer.out("salt", find_salt_for_brine(water, percent)?.as_grams(), "g"))
            }
            (_, Some(salt)) => {
                let strength = find_brine_strength(salt, water)?;
                Ok(answer.out("strength", strength.as_percent(), "%"))
            }
            (None, None) => Err(asked.missing("percent")),
        }
    },
};

static TOP_UP: Sum = Sum {
    name: "brine-top-up",
    what: "a volume of brine of the same strength, for a crock that has dried",
    inputs: &[
        must("volume", Kind::Volume, "the brine wanted", "see how far the crock has sunk"),
        must("percent", Kind::Percent, "its strength", "the strength the ferment was made with"),
    ],
    equation: "brine = volume x density; salt = brine x percent / 100",
    source: "density of brine after A. Melinder, 2010",
    example: &["volume=500ml", "percent=2.5"],
    answer: |asked, _| {
        let mix = mix_brine(asked.volume("volume")?, asked.percent("percent")?)?;
        Ok(Answer::new()
            .out("salt", mix.salt.as_grams(), "g")
            .out("water", mix.water.as_grams(), "g")
            .caution("boil and cool it first, and keep everything under it"))
    },
};

static BRINE_AT_REST: Sum = Sum {
    name: "brine-at-rest",
    what: "what a brine over produce comes to once both are at rest",
    inputs: &[
        must("brine", Kind::Mass, "the brine", "weigh it, or litres x 1.03 kg"),
        must("percent", Kind::Percent, "its strength", "the formula prints it"),
        must("produce", Kind::Mass, "the produce under it", "weigh it"),
        may(
            "water-in-produce",
            Kind::Percent,
            "the share of water in it",
            "92 to 96 % for cucumbers and cabbage",
        ),
    ],
    equation: "percent at rest = brine x percent / (brine + produce)",
    source: "mass balance, on the total weight",
    example: &["brine=1kg", "percent=5", "produce=1kg"],
    answer: |asked, almanac| {
        let (brine, percent) = (asked.mass("brine")?, asked.percent("percent")?);
        let produce = asked.mass("produce")?;
        let total = find_resting_salt(brine, percent, produce)?;
        let answer = Answer::new().out("salt at rest", total.as_percent(), "% of everything");
        let (shares, answer) = match asked.maybe_percent("water-in-produce")? {
            Some(share) => (vec![share, share], answer),
            None => {
                let range = almanac.planning_range(almanac::RangeOf::VegetableWater);
                let spread = range.as_percent().expect("the row is a share");
                let taken = "88 to 96 % of water in the produce was taken";
                (vec![spread.low, spread.high], answer.taken(taken).from(&range.citation))
            }
        };
        let in_water: Result<Vec<f64>, _> = shares
            .iter()
            .map(|share| find_resting_salt_in_water(brine, percent, produce, *share).map(Percent::as_percent))
            .collect();
        let in_water = in_water?;
        Ok(answer
            .range("salt in the water", Range::ends(in_water[0], in_water[1]), "%")
            .know("cut produce is at rest after days, whole cucumbers after two to three weeks"))
    },
};

static BRINE_FOR_REST: Sum = Sum {
    name: "brine-for-rest",
    what: "the strength a brine must have to come to rest at a share",
    inputs: &[
        must("percent", Kind::Percent, "salt wanted at rest, of everything", "the formula prints it"),
        must("brine", Kind::Mass, "the brine", "weigh it, or litres x 1.03 kg"),
        must("produce", Kind::Mass, "the produce under it", "weigh it"),
    ],
    equation: "percent = percent at rest x (brine + produce) / brine",
    source: "mass balance, on the total weight",
    example: &["percent=3.5", "brine=1kg", "produce=1.2kg"],
    answer: |asked, _| {
        let strength =
            find_brine_to_rest_at(asked.percent("percent")?, asked.mass("brine")?, asked.mass("produce")?)?;
        Ok(Answer::new()
            .out("strength of the brine", strength.as_percent(), "%")
            .caution("a tested formula prints its own brine; this explains it and changes none"))
    },
};

static SALOMETER: Sum = Sum {
    name: "salometer",
    what: "the strength of a brine from the degrees of a salometer",
    inputs: &[must("degrees", Kind::Number, "the reading", "let it float in the brine at room temperature")],
    equation: "percent = degrees x 26.5 / 100",
    source: "E. LeFevre, Making Fermented Pickles, USDA Farmers' Bulletin 1438, 1924, table 1",
    example: &["degrees=40"],
    answer: |asked, _| {
        let strength = read_salometer(SalometerDegrees(asked.number("degrees")?))?;
        Ok(Answer::new().out("strength", strength.as_percent(), "%"))
    },
};

static SALTING_TIME: Sum = Sum {
    name: "salting-time",
    what: "about how long salt takes into the middle of peeled or cut pieces",
    inputs: &[must("thickness", Kind::Length, "the thickness of a piece", "measure the thickest")],
    equation: "diffusion into a sphere until nine tenths of the way",
    source: "J. Crank, The Mathematics of Diffusion; salt in vegetables 6.0e-10 to 1.3e-9 m2/s (2025, abstract)",
    example: &["thickness=2.5cm"],
    answer: |asked, _| {
        let half = Length::millimetres(asked.length("thickness")?.as_millimetres() / 2.0);
        let of = |spreads: f64| {
            let spreads = Diffusivity::square_metres_per_second(spreads);
            find_salting_time(spreads, half, Percent::of_hundred(90.0))
        };
        let (slow, fast) = (of(6.0e-10)?, of(1.3e-9)?);
        Ok(Answer::new()
            .range("time", Range::ends(fast.as_hours(), slow.as_hours()), "h")
            .know("for peeled or cut pieces; a whole cucumber lets salt in only at its pores and takes one to three weeks"))
    },
};
