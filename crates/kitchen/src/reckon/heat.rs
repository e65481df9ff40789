//! Heat: how long a canner takes to boil, what boils off, whether a pot boils over.

use almanac::{Almanac, JarInside, PlanningRange, RangeOf};
use foodsci::atmosphere::find_boiling_point;
use foodsci::canner::{
    Burner, ENAMELLED_STEEL, GLASS, Heated, MOST_UNDER_PRESSURE_CANNER, WATER, add_up_capacity, find_heat,
    find_heating_time, find_specific_heat, learn_share,
};
use foodsci::pot::{
    Boils, WALLS_LOSE, find_boil_down_time, find_boil_room, find_evaporation, find_water_off,
};
use measure::{Density, HeatLoss, Mass, Percent, Temp};

use super::answer::Answer;
use super::asked::{Asked, say};
use super::error::ReckonError;
use super::spread::{Range, known, numbers, spread_over};
use super::sum::{Kind, Sum, may, must};
use crate::ask::read_jar;

pub(super) const SUMS: &[&Sum] = &[&CANNER_HEAT_UP, &LEARN_BURNER, &BOIL_DOWN, &BOIL_OVER];

const BURNERS: &[&str] = &["gas", "electric", "induction"];
const LIDS: &[&str] = &["yes", "no"];
const HOW_HIGH: &str = "a topographic map, a phone outdoors, or the county extension office";
const RATED: &str = "the plate or the manual prints it; 9000 Btu/h and 2.4 kW are common";
const WATER_DENSITY: Density = Density::kilograms_per_cubic_metre(990.0);
/// What a kitchen is taken to be.
const ROOM: Temp = Temp::celsius(22.0);

static CANNER_HEAT_UP: Sum = Sum {
    name: "canner-heat-up",
    what: "about how long a canner takes to the boil, for N jars, litres of water and a burner",
    inputs: &[
        must("jars", Kind::Count, "how many jars", "count them; 0 to heat water alone"),
        must("jar", Kind::Name, "their size", "read it off the glass"),
        must("water", Kind::Volume, "the water in the canner", "measure what goes in, 10 to 14 L in most"),
        must(
            "water-at",
            Kind::Temp,
            "the water when the jars go in",
            "a thermometer; warm tap water is 50 C",
        ),
        must("food-at", Kind::Temp, "the food in the jars", "a thermometer; hot pack is 80 to 90 C"),
        must("power", Kind::Power, "what the burner is rated at", RATED),
        must("burner", Kind::Word(BURNERS), "its kind", "look at it"),
        must("altitude", Kind::Altitude, "the height of the kitchen", HOW_HIGH),
        may(
            "share",
            Kind::Percent,
            "the share that arrives, if you have learned it",
            "`stillroom reckon learn-burner`",
        ),
        may("lid", Kind::Word(LIDS), "whether the lid is on", "put it on"),
    ],
    equation: "t = C / (hA) ln((share P - hA (T1 - Ta)) / (share P - hA (T2 - Ta)))",
    source: "heat balance of one lump; a share within 10 % once learned, within 35 % before",
    example: &[
        "jars=7",
        "jar=quart",
        "water=12L",
        "water-at=60C",
        "food-at=80C",
        "power=2.4kW",
        "burner=electric",
        "altitude=\"1,200 ft\"",
    ],
    answer: canner_heat_up,
};

fn burner_range<'a>(almanac: &'a Almanac, kind: &str) -> &'a PlanningRange {
    almanac.planning_range(match kind {
        "gas" => RangeOf::BurnerShareGas,
        "induction" => RangeOf::BurnerShareInduction,
        _ => RangeOf::BurnerShareElectric,
    })
}

fn canner_heat_up(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let jars = asked.count("jars")?;
    let jar = read_jar(Some(asked.name("jar")?))?;
    let water = WATER_DENSITY.mass_of(asked.volume("water")?);
    let (water_at, food_at) = (asked.temp("water-at")?, asked.temp("food-at")?);
    let power = asked.power("power")?;
    let boils = find_boiling_point(asked.height("altitude")?)?;
    let glass =
        almanac.jar_inside(jar).map_or(Mass::grams(0.5) * jar.volume().as_millilitres(), middle_glass);
    // Nine tenths of a jar are food of nine tenths water.
    let food = Heated {
        mass: Density::kilograms_per_cubic_metre(1020.0).mass_of(jar.volume() * (0.9 * jars)),
        specific: find_specific_heat(Percent::of_hundred(90.0))?,
    };
    let pot = Heated { mass: Mass::kilograms(2.5), specific: ENAMELLED_STEEL };
    let bath = Heated { mass: water, specific: WATER };
    let glass = Heated { mass: glass * jars, specific: GLASS };
    let all = add_up_capacity(&[bath, food, glass, pot])?;
    // Water and pot, jars and food meet at the temperature that holds their heat.
    let filled = add_up_capacity(&[food, glass]).map_or(0.0, |filled| filled.ratio_to(all));
    let starts = water_at + (food_at - water_at) * filled;
    let shares = burner_range(almanac, asked.word("burner")?);
    let lid = asked.maybe_word("lid")?;
    let losses =
        almanac.planning_range(if lid == Some("no") { RangeOf::PotLossOpen } else { RangeOf::PotLossLid });
    let share = match asked.maybe_percent("share")? {
        Some(share) => known(share.as_fraction()),
        None => numbers(shares.as_percent().expect("the row is a share"), Percent::as_fraction),
    };
    let loss = numbers(losses.as_heat_loss().expect("the row is a loss"), HeatLoss::as_watts_per_kelvin);
    let minutes = spread_over(&[share, loss], |draw| {
        let burner = Burner {
            power,
            passed_on: Percent::fraction(draw[0]),
            loss: HeatLoss::watts_per_kelvin(draw[1]),
            room: ROOM,
        };
        Ok(find_heating_time(all, &burner, starts, boils)?.as_minutes())
    })?;
    let mut answer = Answer::new()
        .range("time to the boil", minutes, "min")
        .out("heat it takes", find_heat(all, starts, boils).as_kilowatt_hours(), "kWh")
        .out("boils at", boils.as_celsius(), "C")
        .know("time one boil of known water and ask `stillroom reckon learn-burner`: the range then narrows to a tenth")
        .caution("the printed minutes are counted from the full boil, never from the time worked out here")
        .taken("a kitchen of 22 C and a canner of 2.5 kg were taken")
        .from(&losses.citation);
    if asked.has("share") {
        answer = answer.know("your own share was used");
    } else {
        answer = answer.from(&shares.citation);
    }
    if lid.is_none() {
        answer = answer.taken("a lid was taken to be on");
    }
    if power > MOST_UNDER_PRESSURE_CANNER {
        answer = answer.caution(
            "a burner above 12,000 Btu/h (3.5 kW) can damage a pressure canner: Kansas State University, 2024",
        );
    }
    Ok(answer)
}

fn middle_glass(inside: &JarInside) -> Mass {
    (inside.glass.0 + inside.glass.1) * 0.5
}

static LEARN_BURNER: Sum = Sum {
    name: "learn-burner",
    what: "the share of a burner's heat that arrives, from one timed heating of known water",
    inputs: &[
        must("water", Kind::Volume, "the water", "measure 4 L or more into the canner"),
        must("from", Kind::Temp, "its temperature at the start", "a thermometer, stirred"),
        must(
            "to",
            Kind::Temp,
            "its temperature at the end",
            "a thermometer, stirred; stop short of the boil",
        ),
        must("time", Kind::Span, "how long it took", "a clock"),
        must("power", Kind::Power, "what the burner is rated at", RATED),
        may("pot", Kind::Mass, "the empty pot", "weigh it; 2.5 kg is taken"),
    ],
    equation: "the share for which the heating time is the one you took",
    source: "heat balance of one lump",
    example: &["water=6L", "from=15C", "to=85C", "time=\"21 min\"", "power=2.4kW"],
    answer: |asked, almanac| {
        let water = Density::kilograms_per_cubic_metre(998.2).mass_of(asked.volume("water")?);
        let pot = asked.maybe_mass("pot")?;
        let all = add_up_capacity(&[
            Heated { mass: water, specific: WATER },
            Heated { mass: pot.unwrap_or(Mass::kilograms(2.5)), specific: ENAMELLED_STEEL },
        ])?;
        let losses = almanac.planning_range(RangeOf::PotLossLid);
        let loss = losses.as_heat_loss().expect("the row is a loss");
        let (power, from, to) = (asked.power("power")?, asked.temp("from")?, asked.temp("to")?);
        let time = asked.span("time")?;
        let share = |loss| learn_share(all, (power, loss, ROOM), from, to, time).map(Percent::as_percent);
        let mut answer = Answer::new()
            .range(
                "share that arrives",
                Range::around(share(loss.low)?, share(loss.likely)?, share(loss.high)?),
                "%",
            )
            .taken("a lid on and a kitchen of 22 C were taken")
            .from(&losses.citation);
        if pot.is_none() {
            answer = answer.taken("a pot of 2.5 kg was taken");
        }
        Ok(answer)
    },
};

static BOIL_DOWN: Sum = Sum {
    name: "boil-down",
    what: "about how long a boiling pot takes down to a volume",
    inputs: &[
        must("from", Kind::Volume, "what is in the pot", "a stick with marks, or litres poured in"),
        must("to", Kind::Volume, "what is wanted", "the formula prints it"),
        must("power", Kind::Power, "what the burner is rated at, as it is set", RATED),
        must("burner", Kind::Word(BURNERS), "its kind", "look at it"),
        must("altitude", Kind::Altitude, "the height of the kitchen", HOW_HIGH),
        may(
            "share",
            Kind::Percent,
            "the share that arrives, if you have learned it",
            "`stillroom reckon learn-burner`",
        ),
    ],
    equation: "time = water off x heat of evaporation / (share x power - losses)",
    source: "IAPWS SR1-86(1992) at the local boiling point; losses of walls 5 to 15 %, a planning range of ours",
    example: &["from=6L", "to=3.5L", "power=1.8kW", "burner=electric", "altitude=\"1,200 ft\""],
    answer: |asked, almanac| {
        let off = find_water_off(asked.volume("from")?, asked.volume("to")?)?;
        let (power, height) = (asked.power("power")?, asked.height("altitude")?);
        let shares = burner_range(almanac, asked.word("burner")?);
        let share = match asked.maybe_percent("share")? {
            Some(share) => known(share.as_fraction()),
            None => numbers(shares.as_percent().expect("the row is a share"), Percent::as_fraction),
        };
        let walls = foodsci::band::Spread::between(WALLS_LOSE.0.as_fraction(), WALLS_LOSE.1.as_fraction());
        let minutes = spread_over(&[share, walls], |draw| {
            Ok(find_boil_down_time(off, power * (draw[0] * (1.0 - draw[1])), height)?.as_minutes())
        })?;
        let hourly = find_evaporation(power * (share.likely * (1.0 - walls.likely)), height)?;
        Ok(Answer::new()
            .range("time", minutes, "min")
            .out("water off", off.as_kilograms(), "kg")
            .out("goes off in an hour", hourly.as_kilograms_per_hour(), "kg")
            .know("the last third is slower: what thickens must be turned down and stirred")
            .caution("thick sauce spits: long sleeves, a lid held as a shield")
            .from(&shares.citation))
    },
};

static BOIL_OVER: Sum = Sum {
    name: "boil-over",
    what: "whether a pot is large enough for what boils in it",
    inputs: &[
        must("volume", Kind::Volume, "what is in the pot, quiet", "a stick with marks, or litres poured in"),
        must("pot", Kind::Volume, "the pot", "fill it with water once and measure"),
        must(
            "boils",
            Kind::Word(&["fruit", "jam", "milk"]),
            "what it is",
            "jam: fruit with all its sugar, or jelly",
        ),
    ],
    equation: "swollen = volume x swell; swell 1.5 to 2 for fruit, 2 to 4 for jam, 1.5 to 3 for milk and starch",
    source: "planning ranges of ours; no published law was found",
    example: &["volume=3L", "pot=8L", "boils=jam"],
    answer: |asked, _| {
        let boils = match asked.word("boils")? {
            "jam" => Boils::FullSugar,
            "milk" => Boils::Milky,
            _ => Boils::PlainFruit,
        };
        let room = find_boil_room(asked.volume("volume")?, asked.volume("pot")?, boils)?;
        let answer = Answer::new()
            .range("swells to", Range::ends(room.swollen_least.as_litres(), room.swollen.as_litres()), "L")
            .out("quiet volume that this pot holds at the worst", room.quiet_at_most.as_litres(), "L")
            .caution("it rises when the sugar goes in and when you turn round: stay");
        Ok(if room.boils_over() {
            answer.against(
                format!(
                    "it swells to {} at the least, more than the pot of {}",
                    say(room.swollen_least.as_litres(), "L"),
                    say(room.pot.as_litres(), "L")
                ),
                "take a larger pot or a smaller batch",
            )
        } else if room.may_boil_over() {
            answer.caution("it may boil over in this pot: turn it down early, skim, and do not stir it up")
        } else {
            answer
        })
    },
};
