//! Weights and measures: tares, units, what a bushel comes to, what goes over jars.

use almanac::Almanac;
use foodsci::salt::weigh_net;
use measure::{Amount, Fraction, Mass, MassUnit, Volume, VolumeUnit};

use super::answer::Answer;
use super::asked::Asked;
use super::error::ReckonError;
use super::spread::Range;
use super::sum::{Kind, Sum, may, must};
use crate::ask::read_jar;

pub(super) const SUMS: &[&Sum] = &[&NET, &CONVERT, &BUSHELS, &COVER_LIQUID];

static NET: Sum = Sum {
    name: "net-weight",
    what: "what is in a bowl, from the weight of both",
    inputs: &[
        must("gross", Kind::Mass, "the weight with the bowl", "put bowl and all on the scale"),
        must("bowl", Kind::Mass, "the weight of the empty bowl", "weigh the bowl before or after"),
    ],
    equation: "net = gross - bowl",
    source: "arithmetic",
    example: &["gross=3410g", "bowl=610g"],
    answer: |asked, _| {
        let net = weigh_net(asked.mass("gross")?, asked.mass("bowl")?)?;
        Ok(Answer::new().out("net", net.as_grams(), "g").out("net in pounds", net.as_pounds(), "lb"))
    },
};

const UNITS: &[&str] = &["g", "kg", "oz", "lb", "ml", "L", "tsp", "tbsp", "fl-oz", "cup", "pt", "qt", "gal"];

static CONVERT: Sum = Sum {
    name: "convert",
    what: "an amount in another unit, from measure to weight as well",
    inputs: &[
        must("amount", Kind::Amount, "the amount", "read it off the recipe or the scale"),
        must(
            "to",
            Kind::Name,
            "the unit wanted",
            "name a unit: g, kg, oz, lb, ml, L, tsp, tbsp, cup, pt, qt, gal",
        ),
        may("of", Kind::Name, "the ingredient", "needed only between a weight and a measure"),
        may("form", Kind::Name, "its form, such as chopped", "as the table of weights prints it"),
    ],
    equation: "weight = measure x printed weight of one measure",
    source: "NIST Handbook 44, appendix C; weights of measures as printed",
    example: &["amount=\"2 cups\"", "to=g", "of=\"sugar, granulated\""],
    answer: convert,
};

/// The unit that a word names.
enum Unit {
    Mass(&'static str, MassUnit),
    Volume(&'static str, VolumeUnit),
}

fn read_unit(asked: &Asked<'_>) -> Result<Unit, ReckonError> {
    let typed = asked.name("to")?;
    let spelled = typed.trim().replace('-', " ");
    let small = spelled.to_lowercase();
    if let Some(unit) = MassUnit::find(&small) {
        return Ok(Unit::Mass(unit.name(), unit));
    }
    match VolumeUnit::find(&spelled).or_else(|| VolumeUnit::find(&small)) {
        Some(unit) => Ok(Unit::Volume(unit.name(), unit)),
        None => Err(asked.unknown("to", UNITS.iter().map(|unit| (*unit).to_owned()).collect())),
    }
}

fn convert(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let unit = read_unit(asked)?;
    let amount = asked.amount("amount")?;
    let in_mass = |mass: Mass, unit: MassUnit| mass.ratio_to(unit.mass_of(Fraction::ONE));
    let in_volume = |volume: Volume, unit: VolumeUnit| volume.ratio_to(unit.volume_of(Fraction::ONE));
    let answer = Answer::new();
    Ok(match (amount, unit) {
        (Amount::Mass(mass), Unit::Mass(name, unit)) => answer.out("amount", in_mass(mass, unit), name),
        (Amount::Volume(volume), Unit::Volume(name, unit)) => {
            answer.out("amount", in_volume(volume, unit), name)
        }
        (Amount::Volume(volume), Unit::Mass(name, unit)) => {
            let (mass, citation) = weigh(asked, almanac, volume)?;
            answer
                .out("amount", in_mass(mass, unit), name)
                .know("a cup of something cut is whatever the knife made of it: the scale decides")
                .from(&citation)
        }
        (Amount::Mass(mass), Unit::Volume(name, unit)) => {
            let one = unit.volume_of(Fraction::ONE);
            let (weighs, citation) = weigh(asked, almanac, one)?;
            answer.out("amount", mass.ratio_to(weighs), name).from(&citation)
        }
        (Amount::Count(_) | Amount::Container { .. }, _) => {
            return Err(asked.unknown("amount", vec!["a weight".to_owned(), "a measure".to_owned()]));
        }
    })
}

fn weigh(
    asked: &Asked<'_>,
    almanac: &Almanac,
    volume: Volume,
) -> Result<(Mass, almanac::Citation), ReckonError> {
    let of = asked.name("of")?;
    let (mass, row) = almanac.weigh_volume(of, asked.maybe_name("form"), volume).ok_or_else(|| {
        let wanted = of.to_lowercase();
        let mut known: Vec<String> = almanac
            .densities()
            .iter()
            .filter(|density| wanted.split_whitespace().any(|word| density.ingredient.contains(word)))
            .map(|density| density.ingredient.to_string())
            .collect();
        known.dedup();
        known.truncate(12);
        if known.is_empty() {
            known.push(
                "an ingredient whose measure is on file: `stillroom almanac produce` shows some".to_owned(),
            );
        }
        asked.unknown("of", known)
    })?;
    Ok((mass, row.citation.clone()))
}

static BUSHELS: Sum = Sum {
    name: "bushels",
    what: "what bushels, crates or lugs of a crop weigh, and the quarts they give",
    inputs: &[
        must(
            "crop",
            Kind::Name,
            "the crop or the food it becomes",
            "`stillroom almanac processes` lists them",
        ),
        must("containers", Kind::Count, "how many containers", "count them; halves may be written 1/2"),
    ],
    equation: "weight = number x printed weight of one container",
    source: "rows of the almanac",
    example: &["crop=tomatoes", "containers=2"],
    answer: |asked, almanac| {
        let crop = asked.name("crop")?.to_lowercase();
        let number = asked.count("containers")?;
        let rows: Vec<_> = almanac
            .procurement()
            .iter()
            .filter(|row| row.container.is_some())
            .filter(|row| {
                row.product.as_str() == crop
                    || crop.split_whitespace().all(|word| row.produce.to_lowercase().contains(word))
            })
            .collect();
        if rows.is_empty() {
            let known = almanac.procurement().iter().filter(|row| row.container.is_some());
            return Err(asked.unknown("crop", known.map(|row| row.product.to_string()).collect()));
        }
        let mut answer = Answer::new();
        let mut weighed = Vec::new();
        for row in rows {
            let Some((container, weighs)) = row.container else { continue };
            if !weighed.contains(&(container, weighs.as_grams())) {
                weighed.push((container, weighs.as_grams()));
                answer =
                    answer.out(format!("weight, by the {container}"), number * weighs.as_pounds(), "lb").out(
                        format!("weight in kilograms, by the {container}"),
                        number * weighs.as_kilograms(),
                        "kg",
                    );
            }
            if let Some((low, high)) = row.quarts {
                let quarts = Range::ends(number * f64::from(low), number * f64::from(high));
                answer = answer.range(format!("gives, as {}", row.product), quarts, "qt");
            }
            answer = answer.from(&row.citation);
        }
        Ok(answer)
    },
};

static COVER_LIQUID: Sum = Sum {
    name: "cover-liquid",
    what: "brine or syrup over the produce in a number of jars",
    inputs: &[
        must("jars", Kind::Count, "how many jars", "count them"),
        must("jar", Kind::Name, "their size", "read it off the glass: half-pint, pint, quart"),
        must("produce", Kind::Mass, "the produce that goes into all of them", "weigh it trimmed and cut"),
        may(
            "headspace",
            Kind::Length,
            "the room left under the lid",
            "the formula prints it; half an inch is taken",
        ),
    ],
    equation: "liquid = jars x (jar - headspace) - produce / density",
    source: "volumes; density of packed produce 0.93 to 1.04, a planning range of ours",
    example: &["jars=7", "jar=pint", "produce=2.2kg"],
    answer: cover_liquid,
};

fn cover_liquid(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let jars = asked.count("jars")?;
    if jars <= 0.0 {
        return Err(asked.unknown("jars", vec!["1 jar or more".to_owned()]));
    }
    let jar = read_jar(Some(asked.name("jar")?))?;
    let produce = asked.mass("produce")?;
    let headspace = asked.maybe_length("headspace")?;
    let inside = almanac.jar_inside(jar);
    let height = inside.map_or(jar.volume().as_millilitres() / 45.0, |inside| inside.height.as_millimetres());
    let room = headspace.unwrap_or(measure::Length::inches(0.5)).as_millimetres() / height;
    let hold = jar.volume() * (jars * (1.0 - room).max(0.0));
    let range = almanac.planning_range(almanac::RangeOf::ProduceDensity);
    let density = range.as_density().expect("the row is a density");
    let liquid = |density: measure::Density| hold.as_litres() - density.volume_of(produce).as_litres();
    let all = Range::around(liquid(density.low), liquid(density.likely), liquid(density.high));
    let mut answer = Answer::new().from(&range.citation);
    if all.high <= 0.0 {
        return Ok(answer.against(
            format!(
                "{} of produce do not go into {} {jar} jars",
                super::asked::say(produce.as_kilograms(), "kg"),
                foodsci::Figure(jars)
            ),
            "take more jars, or fit the formula to what there is: stillroom fit",
        ));
    }
    let all = Range { low: all.low.max(0.0), ..all };
    let each =
        Range { low: all.low / jars, likely: all.likely.map(|likely| likely / jars), high: all.high / jars };
    answer = answer
        .range("liquid", all, "L")
        .range("for each jar", Range { low: each.low * 1000.0, likely: each.likely.map(|l| l * 1000.0), high: each.high * 1000.0 }, "ml")
        .know("make the high figure; what is left over keeps cold, and a jar short of liquid cannot wait")
        .caution("liquid is made by the formula's own parts of vinegar, water, salt and sugar; never stretch it with water");
    if let Some(inside) = inside {
        answer = answer.from(&inside.citation);
    }
    if headspace.is_none() {
        answer = answer.taken("half an inch of headspace was taken; the formula's own counts");
    }
    Ok(answer)
}
