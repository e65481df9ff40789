//! Cold: a pot through the danger band, bags in a freezer, a freezer without power, jars that burst.

use almanac::{Almanac, FoodHeat, Match, RangeOf};
use foodsci::canner::{Heated, WATER, add_up_capacity};
use foodsci::cooling::{
    CoolingTimes, RULE, ThickLayer, count_pans, find_loss, find_stirred_cooling_time,
    find_thick_cooling_time, time_stages,
};
use foodsci::freezing::{
    Freezes, FrozenShape, Outage, Package, find_freezer_takes, find_freezing_load, find_outage_time,
    find_pham_time,
};
use foodsci::headspace::find_frozen_fill;
use foodsci::veto::veto_bursting;
use measure::{
    Area, Conductivity, Density, Diffusivity, Film, HeatLoss, Length, Mass, Percent, Power, Span, Temp,
};

use super::answer::Answer;
use super::asked::{Asked, say};
use super::error::ReckonError;
use super::spread::{Range, numbers, spread_over};
use super::sum::{Kind, Sum, may, must};

pub(super) const SUMS: &[&Sum] =
    &[&COOL_POT, &COOL_PANS, &FREEZE_TIME, &FREEZER_TAKES, &OUTAGE, &FREEZER_JAR];

const WAYS: &[&str] = &["room", "refrigerator", "ice-bath"];

static COOL_POT: Sum = Sum {
    name: "cool-pot",
    what: "how long a pot takes through the temperatures in which microbes grow fastest",
    inputs: &[
        must("volume", Kind::Volume, "what is in the pot", "litres poured in"),
        must("diameter", Kind::Length, "the pot across", "measure it"),
        must(
            "way",
            Kind::Word(WAYS),
            "where it cools",
            "ice-bath: the sink with ice water to the level of the food",
        ),
        must("stirred", Kind::Word(&["yes", "no"]), "whether someone stirs every ten minutes", "say who"),
    ],
    equation: "stirred: t = C / (hA) ln((T1 - Ta) / (T2 - Ta)); not stirred: series of a cylinder's half-width as a slab",
    source: "Newton's law; C. J. Geankoplis, 1993, section 5.3; rule: FDA Food Code 3-501.14",
    example: &["volume=8L", "diameter=28cm", "way=ice-bath", "stirred=yes"],
    answer: cool_pot,
};

fn cool_pot(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let volume = asked.volume("volume")?;
    let diameter = asked.length("diameter")?;
    let way = asked.word("way")?;
    let stirred = asked.word("stirred")? == "yes";
    let (around, of) = match (way, stirred) {
        ("room", _) => (Temp::celsius(21.0), RangeOf::FilmPotInAir),
        ("refrigerator", _) => (Temp::celsius(4.0), RangeOf::FilmPotInAir),
        (_, true) => (Temp::celsius(0.5), RangeOf::FilmIceBathStirred),
        (_, false) => (Temp::celsius(0.5), RangeOf::FilmIceBathStill),
    };
    let films = almanac.planning_range(of);
    let film = films.as_film().expect("the row is a film");
    // Litres over square metres are millimetres.
    let radius = diameter.as_metres() / 2.0;
    let bottom = std::f64::consts::PI * radius * radius;
    let depth = Length::millimetres(volume.as_litres() / bottom);
    let wall =
        Area::square_metres(2.0 * bottom + std::f64::consts::PI * diameter.as_metres() * depth.as_metres());
    let capacity = add_up_capacity(&[Heated {
        mass: Density::kilograms_per_cubic_metre(1000.0).mass_of(volume),
        specific: WATER,
    }])?;
    let stages = |film: Film| -> Result<CoolingTimes, ReckonError> {
        Ok(time_stages(&RULE, |from, to| {
            if stirred {
                find_stirred_cooling_time(capacity, find_loss(film, wall), (from, to), around)
            } else {
                let half = if depth < diameter { depth * 0.5 } else { diameter * 0.5 };
                let layer = ThickLayer {
                    half_depth: half,
                    diffusivity: Diffusivity::square_metres_per_second(1.45e-7),
                    conducts: Conductivity::watts_per_metre_kelvin(0.58),
                    film,
                };
                find_thick_cooling_time(&layer, (from, to), around)
            }
        })?)
    };
    let (slow, likely, fast) = (stages(film.low)?, stages(film.likely)?, stages(film.high)?);
    let mut answer = Answer::new()
        .range(
            "from 135 to 70 F",
            Range::around(fast.first.as_hours(), likely.first.as_hours(), slow.first.as_hours()),
            "h",
        )
        .out("depth", depth.as_millimetres() / 10.0, "cm")
        .know("the rule: 135 to 70 F within 2 h, to 41 F within 6 h in all")
        .know("an unstirred pot of thick food is right within a factor of two")
        .from(&films.citation);
    if let (Some(fast), Some(likely), Some(slow)) = (fast.both, likely.both, slow.both) {
        answer = answer.range(
            "from 135 to 41 F",
            Range::around(fast.as_hours(), likely.as_hours(), slow.as_hours()),
            "h",
        );
    }
    if likely.keeps(&RULE) {
        answer = answer.caution("a thermometer in the middle decides, not this");
    } else {
        let text = match likely.both {
            None => format!("a {way} is not cold enough to bring it to 41 F"),
            Some(_) => {
                format!("about {} from 135 to 70 F is outside the rule", say(likely.first.as_hours(), "h"))
            }
        };
        answer = answer.against(
            text,
            "split it into pans two inches deep, or stir it in ice water to the level of the food",
        );
    }
    Ok(answer)
}

static COOL_PANS: Sum = Sum {
    name: "cool-pans",
    what: "how many shallow pans a pot takes to cool",
    inputs: &[
        must("volume", Kind::Volume, "what is in the pot", "litres poured in"),
        must("length", Kind::Length, "a pan, along", "measure it"),
        must("width", Kind::Length, "a pan, across", "measure it"),
        may("depth", Kind::Length, "how deep", "5 cm (2 in) is taken, as printed for thick food"),
    ],
    equation: "pans = volume / (length x width x depth), rounded up",
    source: "Southern Nevada Health District cooling sheet: 2 in for thick food",
    example: &["volume=8L", "length=33cm", "width=23cm"],
    answer: |asked, _| {
        let depth = asked.maybe_length("depth")?;
        let pan = Area::rectangle(asked.length("length")?, asked.length("width")?);
        let pans = count_pans(asked.volume("volume")?, pan, depth.unwrap_or(Length::inches(2.0)))?;
        let answer = Answer::new()
            .out("pans", f64::from(pans), "")
            .know("set them apart and uncovered until cold; doubling the depth makes it four times as long");
        Ok(if depth.is_none() { answer.taken("two inches were taken") } else { answer })
    },
};

fn read_food<'a>(asked: &Asked<'_>, almanac: &'a Almanac) -> Result<&'a FoodHeat, ReckonError> {
    let typed = asked.name("food")?;
    let names = |rows: Vec<&FoodHeat>| rows.iter().map(|row| row.food.to_string()).collect();
    match almanac.find_food_heat(typed) {
        Match::One(food) => Ok(food),
        Match::Several(rows) => Err(asked.unknown("food", names(rows))),
        Match::Nearest(rows) if rows.is_empty() => {
            Err(asked.unknown("food", names(almanac.food_heats().iter().collect())))
        }
        Match::Nearest(rows) => Err(asked.unknown("food", names(rows))),
    }
}

/// What a food does; where no freezing point is printed, -1 °C is taken and said.
fn freezes(food: &FoodHeat) -> Freezes {
    Freezes {
        at: food.freezes_at.unwrap_or(Temp::celsius(-1.0)),
        above: food.above,
        below: food.below,
        latent: food.latent,
    }
}

static FREEZE_TIME: Sum = Sum {
    name: "freeze-time",
    what: "about how long a bag or box takes until it is hard, by its thickness",
    inputs: &[
        must("food", Kind::Name, "the food", "the vegetables and fruits of the handbook table"),
        must("thickness", Kind::Length, "the whole thickness", "lay it flat and measure"),
        must("freezer-at", Kind::Temp, "the freezer", "its thermometer; 0 F or colder"),
        must("food-at", Kind::Temp, "the food when it goes in", "chill it first"),
        may("fan", Kind::Word(&["yes", "no"]), "whether a fan blows in it", "frost-free freezers have one"),
    ],
    equation: "t = d / h (dH1 / dT1 + dH2 / dT2) (1 + Bi / 2)",
    source: "Q. T. Pham, 1986, for a slab; within 40 % in a household freezer",
    example: &["food=\"beans, snap\"", "thickness=4cm", "freezer-at=-20C", "food-at=10C"],
    answer: freeze_time,
};

fn freeze_time(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let food = read_food(asked, almanac)?;
    let thickness = asked.length("thickness")?;
    let (air, from) = (asked.temp("freezer-at")?, asked.temp("food-at")?);
    let fan = asked.maybe_word("fan")?;
    let films = almanac.planning_range(if fan == Some("yes") {
        RangeOf::FilmFreezerFan
    } else {
        RangeOf::FilmFreezerStill
    });
    let film = numbers(films.as_film().expect("the row is a film"), Film::as_watts_per_square_metre_kelvin);
    let densities = almanac.planning_range(RangeOf::BagDensity);
    let density =
        numbers(densities.as_density().expect("the row is a density"), Density::as_kilograms_per_cubic_metre);
    let conductivities = almanac.planning_range(RangeOf::FrozenConductivity);
    let conducts = numbers(
        conductivities.as_conductivity().expect("the row is a conductivity"),
        Conductivity::as_watts_per_metre_kelvin,
    );
    // Hard enough to stack, where the freezer is not much colder.
    let hard = Temp::celsius((air.as_celsius() + 2.0).clamp(-18.0, -5.0));
    let hours = spread_over(&[film, density, conducts], |draw| {
        let package = Package {
            shape: FrozenShape::Slab,
            thickness,
            density: Density::kilograms_per_cubic_metre(draw[1]),
            conducts: Conductivity::watts_per_metre_kelvin(draw[2]),
            film: Film::watts_per_square_metre_kelvin(draw[0]),
            air,
        };
        Ok(find_pham_time(&package, &freezes(food), from, hard)?.as_hours())
    })?;
    let mut answer = Answer::new()
        .range("time until hard", hours, "h")
        .out("hard means a middle at", hard.as_celsius(), "C")
        .know("bags lie flat and apart until hard; half as thick is less than half as long")
        .from(&food.citation)
        .from(&films.citation)
        .from(&densities.citation);
    if fan.is_none() {
        answer = answer.taken("a freezer without a fan was taken");
    }
    if food.freezes_at.is_none() {
        answer = answer.taken("a freezing point of -1 C was taken; none is printed for this food");
    }
    Ok(answer)
}

static FREEZER_TAKES: Sum = Sum {
    name: "freezer-takes",
    what: "how many kilograms a freezer takes overnight",
    inputs: &[
        must("size", Kind::Volume, "the freezer", "the plate inside prints litres; a cubic foot is 28 L"),
        must("food", Kind::Name, "the food", "the vegetables and fruits of the handbook table"),
        must("food-at", Kind::Temp, "the food when it goes in", "chill it first"),
        may("hours", Kind::Span, "how long it has", "12 hours are taken"),
        may("load", Kind::Mass, "what is to go in, to compare", "weigh it"),
    ],
    equation: "kg = cooling power x time / (c1 (T - Tf) + L + c2 (Tf + 18 C)); printed loads beside it",
    source: "heat balance; ASHRAE Refrigeration, table 3; Regulation (EC) 643/2009; a freezer's manual",
    example: &["size=200L", "food=strawberries", "food-at=5C"],
    answer: freezer_takes,
};

fn freezer_takes(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    const HARD: Temp = Temp::celsius(-18.0);
    let food = read_food(asked, almanac)?;
    let from = asked.temp("food-at")?;
    let size = asked.volume("size")?;
    let hours = asked.maybe_span("hours")?;
    let time = hours.unwrap_or(Span::hours(12.0));
    let powers = almanac.planning_range(RangeOf::FreezerPower);
    let power = powers.as_power().expect("the row is a power");
    let takes =
        |power: Power| find_freezer_takes(power, time, &freezes(food), from, HARD).map(Mass::as_kilograms);
    let range = Range::around(takes(power.low)?, takes(power.likely)?, takes(power.high)?);
    let rating = almanac.planning_range(RangeOf::FreezerFourStar);
    let manual = almanac.planning_range(RangeOf::FreezerManual);
    let day_share = time.as_hours() / 24.0;
    let rated = rating.as_density().expect("the row is a load").likely.mass_of(size) * day_share;
    let printed = manual.as_density().expect("the row is a load");
    let each = find_freezing_load(&freezes(food), Mass::kilograms(1.0), from, HARD)?;
    let mut answer = Answer::new()
        .range("takes in that time", range, "kg")
        .out("by the four-star rating", rated.as_kilograms(), "kg")
        .range(
            "printed for one day in a manual",
            Range::ends(printed.low.mass_of(size).as_kilograms(), printed.high.mass_of(size).as_kilograms()),
            "kg",
        )
        .out("heat of each kilogram", each.as_kilojoules(), "kJ")
        .know("more than it takes warms what is frozen already; put it in over several nights")
        .from(&food.citation)
        .from(&powers.citation)
        .from(&rating.citation)
        .from(&manual.citation);
    if hours.is_none() {
        answer = answer.taken("12 hours were taken");
    }
    if let Some(load) = asked.maybe_mass("load")?
        && load.as_kilograms() > range.high.max(rated.as_kilograms())
    {
        answer = answer.against(
            format!(
                "{} is more than the {} that any of these allows",
                say(load.as_kilograms(), "kg"),
                say(range.high.max(rated.as_kilograms()), "kg")
            ),
            "freeze a part tonight and keep the rest in the refrigerator",
        );
    }
    Ok(answer)
}

static OUTAGE: Sum = Sum {
    name: "freezer-outage",
    what: "about how long a closed freezer stays hard without power",
    inputs: &[
        must("load", Kind::Mass, "what is in it", "about 35 lb in a full cubic foot"),
        must("food", Kind::Name, "what most of it is", "the vegetables and fruits of the handbook table"),
        must("freezer-at", Kind::Temp, "the freezer when the power went", "its thermometer"),
        must("room", Kind::Temp, "the room", "a thermometer"),
    ],
    equation: "heat leaking in = enthalpy of the load, its ice melting as Tf / T",
    source: "heat balance of one lump; within a factor of two",
    example: &["load=40kg", "food=\"beans, snap\"", "freezer-at=-18C", "room=22C"],
    answer: |asked, almanac| {
        let food = read_food(asked, almanac)?;
        let (load, from, room) = (asked.mass("load")?, asked.temp("freezer-at")?, asked.temp("room")?);
        let leaks = almanac.planning_range(RangeOf::FreezerLeak);
        let leak = numbers(leaks.as_heat_loss().expect("the row is a loss"), HeatLoss::as_watts_per_kelvin);
        let until = |end: Temp| {
            spread_over(&[leak], |draw| {
                let leak = HeatLoss::watts_per_kelvin(draw[0]);
                let outage = Outage { load, food: freezes(food), leak, room };
                Ok(find_outage_time(&outage, from, end)?.as_hours())
            })
        };
        let softens = until(Temp::celsius(-5.0))?;
        let mut answer = Answer::new()
            .range("until it softens (23 F)", softens, "h")
            .know("keep the door shut; a blanket over it helps, the vents free")
            .know("no figure is given beyond the softening: what lies at the wall and on top thaws long before the rest")
            .caution(
                "a thermometer decides, not this; what to keep and what to throw away is printed food by food: ask the county \
                 extension office before you eat or freeze any of it again",
            )
            .from(&food.citation)
            .from(&leaks.citation);
        let printed = almanac.freezing().iter().filter(|row| row.food.contains("power failure"));
        for row in printed.filter(|row| row.citation.may_be_called_tested()) {
            answer =
                answer.printed(format!("{}: {}, {}", row.food, row.amount, row.note)).from(&row.citation);
        }
        Ok(answer)
    },
};

static FREEZER_JAR: Sum = Sum {
    name: "freezer-jar",
    what: "whether a jar has room for its ice",
    inputs: &[
        must("jar", Kind::Volume, "the jar to the brim", "read it off the glass"),
        must("contents", Kind::Volume, "what is in it", "pour it in with a measure"),
        may(
            "water",
            Kind::Percent,
            "the share of water in the food",
            "95 % is taken, the worst of most foods",
        ),
    ],
    equation: "growth = contents x water x (density of water / density of ice - 1)",
    source: "density of ice 916.7 kg/m3 (handbook value from memory)",
    example: &["jar=\"1 pt\"", "contents=\"14 fl oz\""],
    answer: |asked, _| {
        let (jar, contents) = (asked.volume("jar")?, asked.volume("contents")?);
        let share = asked.maybe_percent("water")?;
        let water = share.unwrap_or(Percent::of_hundred(95.0));
        let fill = find_frozen_fill(jar, contents, water)?;
        let answer = Answer::new()
            .out("grows by", fill.grows.as_millilitres(), "ml")
            .out("room", fill.room.as_millilitres(), "ml")
            .caution("the printed headspace for freezing is larger and is the one to keep; jars with shoulders need more")
            .veto(veto_bursting(jar, contents, water)?, "fill it lower, to the printed headspace");
        Ok(if share.is_none() { answer.taken("95 % of water was taken") } else { answer })
    },
};
