//! Sugar: syrups by name and by weight, what stays dissolved, where jelly is done, what a pan yields.

use almanac::{Almanac, SyrupUse};
use foodsci::atmosphere::{find_gel_point, find_gel_point_by_thermometer};
use foodsci::sugar::{PanPart, blend, find_jam_yield, find_syrup_strength};
use foodsci::syrup::{
    Crystals, find_boiling_rise, find_printed_boiling_rise, find_saturation, find_supersaturation,
    find_syrup_density,
};
use foodsci::veto::veto_crystals;
use foodsci::water_activity::find_jam_activity;
use measure::{Density, Fraction, Mass, Percent, VolumeUnit};

use super::answer::Answer;
use super::asked::{Asked, say};
use super::error::ReckonError;
use super::spread::Range;
use super::sum::{Kind, Sum, may, must};

pub(super) const SUMS: &[&Sum] =
    &[&SYRUP, &SYRUP_BY_NAME, &SYRUP_KEEPS, &SYRUP_BOILS, &GEL_POINT, &JAM_YIELD, &JAM_WATER, &BLEND];

const WATER: Density = Density::kilograms_per_cubic_metre(998.2);
const HOT: &str =
    "hot syrup sticks and burns deeper than water: long sleeves, a long spoon, no children at the stove";

static SYRUP: Sum = Sum {
    name: "syrup",
    what: "sugar for a syrup of a strength, or the strength of sugar and water",
    inputs: &[
        must("water", Kind::Volume, "the water", "measure it"),
        may("percent", Kind::Percent, "the share of sugar by weight wanted", "the formula prints it"),
        may("sugar", Kind::Mass, "the sugar, when the strength is asked for", "weigh it"),
    ],
    equation: "percent = 100 x sugar / (sugar + water)",
    source: "by weight; density of syrup from the tables of the CRC Handbook",
    example: &["water=1L", "percent=30"],
    answer: |asked, _| {
        let water = WATER.mass_of(asked.volume("water")?);
        let (sugar, percent) = match (asked.maybe_percent("percent")?, asked.maybe_mass("sugar")?) {
            (_, Some(sugar)) => (sugar, find_syrup_strength(sugar, water)?),
            (Some(percent), None) => {
                // Refuses a share of a hundred before dividing by what is left of it.
                find_syrup_density(percent)?;
                (water * (percent.as_fraction() / (1.0 - percent.as_fraction())), percent)
            }
            (None, None) => return Err(asked.missing("percent")),
        };
        let makes = find_syrup_density(percent)?.volume_of(sugar + water);
        Ok(Answer::new()
            .out("sugar", sugar.as_grams(), "g")
            .out("strength", percent.as_percent(), "%")
            .out("makes", makes.as_litres(), "L")
            .caution(HOT))
    },
};

static SYRUP_BY_NAME: Sum = Sum {
    name: "syrup-by-name",
    what: "a printed syrup, with its named percent and the real one side by side",
    inputs: &[
        must("strength", Kind::Name, "its name", "very light, light, medium, heavy, very heavy"),
        must(
            "for",
            Kind::Word(&["canning", "freezing"]),
            "what it is for",
            "canning and freezing syrups differ",
        ),
    ],
    equation: "real percent = 100 x sugar / (sugar + water), from the printed cups",
    source: "the printed rows; weight of a cup as printed",
    example: &["strength=medium", "for=canning"],
    answer: syrup_by_name,
};

fn syrup_by_name(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let used_for = match asked.word("for")? {
        "canning" => SyrupUse::Canning,
        _ => SyrupUse::Freezing,
    };
    let strength = asked.name("strength")?.trim().to_lowercase();
    let rows: Vec<_> = almanac.find_syrups(used_for, &strength).collect();
    if rows.is_empty() {
        let mut known: Vec<String> = almanac
            .syrups()
            .iter()
            .filter(|row| row.used_for == used_for)
            .map(|row| row.strength.to_string())
            .collect();
        known.dedup();
        return Err(asked.unknown("strength", known));
    }
    let cup = VolumeUnit::Cup.volume_of(Fraction::ONE);
    let mut answer = Answer::new();
    for row in rows {
        let sugar = almanac.weigh_volume("sugar", None, cup).map(|(mass, density)| (mass, &density.citation));
        // A cup of granulated sugar weighs 200 g where no row says otherwise.
        let each = sugar.map_or(Mass::grams(200.0), |(mass, _)| mass);
        let sugar_mass = each * row.sugar_cups.to_f64();
        let real = find_syrup_strength(sugar_mass, WATER.mass_of(cup * row.water_cups.to_f64()))?;
        answer = answer
            .printed(format!(
                "{}: {} cups of water, {} cups of sugar",
                row.batch, row.water_cups, row.sugar_cups
            ))
            .out(format!("real strength, {}", row.batch), real.as_percent(), "%")
            .from(&row.citation);
        if let Some(named) = row.sugar_percent {
            answer = answer.out(format!("named strength, {}", row.batch), named.as_percent(), "%");
        }
        if let Some((_, citation)) = sugar {
            answer = answer.from(citation);
        }
    }
    Ok(answer.caution(HOT))
}

static SYRUP_KEEPS: Sum = Sum {
    name: "syrup-keeps",
    what: "whether a syrup forms crystals where it is kept",
    inputs: &[
        must("percent", Kind::Percent, "its share of sugar", "sugar over sugar and water, by weight"),
        must("kept-at", Kind::Temp, "where it is kept", "read the thermometer of the cellar or refrigerator"),
    ],
    equation: "S = (sugar / water) / solubility",
    source: "solubility of sucrose (F. A. Mohos, 2010, table A2.2); crystals likely above 1.15, a planning figure of ours",
    example: &["percent=70", "kept-at=15C"],
    answer: |asked, _| {
        let (sugar, kept_at) = (asked.percent("percent")?, asked.temp("kept-at")?);
        let over = find_supersaturation(sugar, kept_at)?;
        let answer = Answer::new()
            .out("sugar over what stays dissolved", over.0, "times")
            .out("saturated at", find_saturation(kept_at)?.as_percent(), "%")
            .veto(
                veto_crystals(sugar, kept_at)?,
                "thin it, keep it warmer, or replace a part of the sugar by glucose syrup",
            );
        Ok(match over.crystals() {
            Crystals::None => answer.know("everything stays dissolved"),
            Crystals::Slowly => answer.know("grains form slowly, at the rim and on dust"),
            Crystals::Likely => answer,
        })
    },
};

static SYRUP_BOILS: Sum = Sum {
    name: "syrup-boils",
    what: "where a syrup boils at a height, by the model and as printed",
    inputs: &[
        must("percent", Kind::Percent, "its share of sugar", "sugar over sugar and water, by weight"),
        must(
            "altitude",
            Kind::Altitude,
            "the height of the kitchen",
            "a topographic map, a phone outdoors, or the county",
        ),
    ],
    equation: "water activity x saturation pressure = pressure of the air",
    source: "Norrish's equation and IAPWS-IF97; C. A. Browne, 1912, beside it",
    example: &["percent=65", "altitude=\"1,200 ft\""],
    answer: |asked, _| {
        let (sugar, height) = (asked.percent("percent")?, asked.height("altitude")?);
        let water = foodsci::atmosphere::find_boiling_point(height)?;
        let boils = water + find_boiling_rise(sugar, height)?;
        let answer = Answer::new()
            .out("boils at", boils.as_fahrenheit(), "F")
            .out("boils at (Celsius)", boils.as_celsius(), "C")
            .out("water boils at", water.as_fahrenheit(), "F")
            .caution(HOT);
        Ok(match find_printed_boiling_rise(sugar) {
            Ok(printed) => answer.printed(format!(
                "the table of 1912 has it {} above water at sea level; between 68 and 80 % it lies up to 1.3 C above the model",
                say(printed.as_fahrenheit_degrees(), "F")
            )),
            Err(_) => answer,
        })
    },
};

static GEL_POINT: Sum = Sum {
    name: "gel-point",
    what: "the temperature at which a jelly without added pectin is done",
    inputs: &[
        must(
            "altitude",
            Kind::Altitude,
            "the height of the kitchen",
            "a topographic map, a phone outdoors, or the county",
        ),
        may(
            "water-boils",
            Kind::Temp,
            "what your thermometer reads in boiling water today",
            "boil water in the same pan first",
        ),
    ],
    equation: "gel point = boiling point of water here + 8 F",
    source: "USDA Complete Guide to Home Canning, 2015, guide 7, p. 7-6; standard atmosphere and IAPWS-IF97",
    example: &["altitude=\"1,200 ft\""],
    answer: |asked, almanac| {
        let altitude = asked.altitude("altitude")?;
        let gel = find_gel_point(asked.height("altitude")?)?;
        let mut answer = Answer::new().out("gel point by the model", gel.as_fahrenheit(), "F").out(
            "gel point by the model (Celsius)",
            gel.as_celsius(),
            "C",
        );
        if let Some((printed, citation)) = almanac.find_gel_point(altitude) {
            answer = answer
                .out("gel point as printed", printed.as_fahrenheit(), "F")
                .printed("the printed steps are 1,000 ft apart; the step at or above your height is given")
                .from(citation);
        }
        if let Some(reads) = asked.maybe_temp("water-boils")? {
            let today = find_gel_point_by_thermometer(reads)?;
            answer = answer
                .out("gel point on your thermometer today", today.as_fahrenheit(), "F")
                .know("your own boiling water is the best of the three: it holds the weather and the thermometer's error");
        }
        Ok(answer.know("the cold plate or the spoon decides").caution(HOT))
    },
};

static JAM_YIELD: Sum = Sum {
    name: "jam-yield",
    what: "what a pan of fruit and sugar weighs when it is boiled down",
    inputs: &[
        must("fruit", Kind::Mass, "the fruit", "weigh it prepared"),
        must(
            "fruit-solids",
            Kind::Percent,
            "its soluble solids",
            "8 to 15 %; a refractometer reads it, the label of juice prints it",
        ),
        must("sugar", Kind::Mass, "the sugar", "weigh it"),
        must("end-solids", Kind::Percent, "soluble solids at the end", "about 65 % for jam"),
    ],
    equation: "yield = (fruit x solids + sugar) / solids at the end",
    source: "balance of solids",
    example: &["fruit=1kg", "fruit-solids=10", "sugar=800g", "end-solids=65"],
    answer: |asked, _| {
        let (fruit, sugar) = (asked.mass("fruit")?, asked.mass("sugar")?);
        let pan = [
            PanPart { mass: fruit, solids: asked.percent("fruit-solids")? },
            PanPart { mass: sugar, solids: Percent::of_hundred(100.0) },
        ];
        let end = asked.percent("end-solids")?;
        let yields = find_jam_yield(&pan, end)?;
        Ok(Answer::new()
            .out("weighs at the end", yields.as_grams(), "g")
            .out("boils off", (fruit + sugar - yields).as_grams(), "g")
            .know("weigh pan and all before and after: the weight tells you when")
            .caution(HOT))
    },
};

static JAM_WATER: Sum = Sum {
    name: "jam-water",
    what: "the water activity of a jam, as a range: why one with little sugar moulds sooner",
    inputs: &[
        must("fruit", Kind::Mass, "the fruit", "weigh it prepared"),
        must("fruit-solids", Kind::Percent, "its soluble solids", "8 to 15 %"),
        must("sugar", Kind::Mass, "the sugar", "weigh it"),
        must("end", Kind::Mass, "the jam at the end", "weigh pan and all, less the pan"),
    ],
    equation: "Norrish for each sugar, multiplied (Ross); with none and with half of the sugar inverted",
    source: "R. S. Norrish, 1966; K. D. Ross, 1975; within 0.02 for jam",
    example: &["fruit=1kg", "fruit-solids=10", "sugar=800g", "end=1385g"],
    answer: |asked, _| {
        let activity = find_jam_activity(
            asked.mass("fruit")?,
            asked.percent("fruit-solids")?,
            asked.mass("sugar")?,
            asked.mass("end")?,
        )?;
        let answer = Answer::new()
            .range("water activity", Range::ends(activity.low.0, activity.high.0), "")
            .know("most moulds stop at 0.80; jam on a shelf is kept by its seal, its acid and its process, not by sugar alone")
            .caution("it clears nothing: a home kitchen cannot measure it");
        Ok(if activity.high.0 > 0.85 {
            answer.against(
                format!(
                    "water activity may be {}, above 0.85: sugar alone does not keep it",
                    say(activity.high.0, "").trim()
                ),
                "process it by a tested formula, freeze it, or keep it cold",
            )
        } else {
            answer
        })
    },
};

static BLEND: Sum = Sum {
    name: "blend",
    what: "how much of a weaker and a stronger syrup, juice or brine make one between",
    inputs: &[
        must("low", Kind::Percent, "the weaker", "its label or a hydrometer"),
        must("high", Kind::Percent, "the stronger", "its label or a hydrometer"),
        must("target", Kind::Percent, "what is wanted", "the formula prints it"),
        must("total", Kind::Mass, "how much of it", "weigh or plan it"),
    ],
    equation: "weaker : stronger = (high - target) : (target - low)",
    source: "Pearson's square",
    example: &["low=10", "high=62", "target=45", "total=2kg"],
    answer: |asked, _| {
        let parts = blend(
            asked.percent("low")?,
            asked.percent("high")?,
            asked.percent("target")?,
            asked.mass("total")?,
        )?;
        Ok(Answer::new()
            .out("of the weaker", parts.weaker.as_grams(), "g")
            .out("of the stronger", parts.stronger.as_grams(), "g")
            .caution("not for vinegar in a pickle: that is never thinned or mixed"))
    },
};
