//! Acid: vinegar and what thins it, acid for each jar, the pH of a mix as a range.

use almanac::{AcidPlace, Almanac, RangeOf};
use foodsci::acid::{Acid, AcidGiven, Buffer, PhSays, Pickle, Vegetable, find_ph_range};
use foodsci::veto::veto_ph;
use foodsci::vinegar::{
    Normality, PickleMix, TitratedAcid, Titration, VinegarForPickles, compare_with_pickling,
    find_mixed_strength, find_resting_acid, find_titrated_acid,
};
use measure::{Density, Mass, Percent};

use super::answer::Answer;
use super::asked::{Asked, say};
use super::error::ReckonError;
use super::spread::Range;
use super::sum::{Kind, Sum, may, must};
use crate::ask::{NameKind, read_jar, require_one};

pub(super) const SUMS: &[&Sum] = &[&VINEGAR, &ACID_PER_JAR, &ACID_AT_REST, &PICKLE_PH, &TITRATION];

/// Vinegar of 5 %, close to water.
const VINEGAR_DENSITY: Density = Density::kilograms_per_cubic_metre(1006.0);
const WATER: Density = Density::kilograms_per_cubic_metre(998.2);

static VINEGAR: Sum = Sum {
    name: "vinegar",
    what: "what is left of a vinegar's strength with water in it; never a way to a pickle",
    inputs: &[
        must("vinegar", Kind::Volume, "the vinegar", "measure it"),
        must("strength", Kind::Percent, "its strength", "the label prints it; home-made vinegar has none"),
        may("water", Kind::Volume, "water beside it", "measure it; none is taken when left out"),
    ],
    equation: "percent = strength x vinegar / (vinegar + water)",
    source: "mass balance; pickling vinegar 5 %, USDA Complete Guide to Home Canning, 2015, guide 6, p. 6-5",
    example: &["vinegar=\"1 cup\"", "strength=5", "water=\"1 cup\""],
    answer: |asked, _| {
        let strength = asked.percent("strength")?;
        let vinegar = VINEGAR_DENSITY.mass_of(asked.volume("vinegar")?);
        let water = asked.maybe_volume("water")?;
        let mixed =
            find_mixed_strength(vinegar, strength, water.map_or(Mass::ZERO, |water| WATER.mass_of(water)))?;
        let mut answer = Answer::new()
            .out("strength", mixed.as_percent(), "%")
            .caution("for cleaning or a dressing eaten at once; a pickle takes vinegar and water as its tested formula prints them");
        if water.is_none() {
            answer = answer.taken("no water was taken");
        }
        if let VinegarForPickles::TooWeak { short_by } = compare_with_pickling(strength)? {
            answer = answer.against(
                format!(
                    "a vinegar of {} is {} short of the 5 % that pickles are printed for and cannot be mended",
                    say(strength.as_percent(), "%"),
                    say(short_by.as_percent(), "%")
                ),
                "buy vinegar whose label says 5 %; keep this one for salad",
            );
        }
        Ok(answer)
    },
};

static ACID_PER_JAR: Sum = Sum {
    name: "acid-per-jar",
    what: "the printed acid for each jar of a food, times the jars",
    inputs: &[
        must("food", Kind::Name, "the food", "`stillroom almanac processes` lists them"),
        must("jar", Kind::Name, "the size of the jars", "read it off the glass"),
        must("jars", Kind::Count, "how many jars", "count them"),
    ],
    equation: "acid = jars x printed acid of one jar",
    source: "the printed row",
    example: &["food=tomatoes-crushed", "jar=pint", "jars=7"],
    answer: acid_per_jar,
};

fn acid_per_jar(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    let typed = asked.name("food")?;
    let product =
        require_one(almanac.find_product(typed), NameKind::Food, typed, |product| product.id.to_string())?;
    let jar = read_jar(Some(asked.name("jar")?))?;
    let jars = asked.count("jars")?;
    let row = almanac
        .acid_rules()
        .iter()
        .filter(|rule| rule.product == product.id && rule.place == AcidPlace::EachJar)
        .filter(|rule| rule.citation.may_be_called_tested())
        .filter(|rule| rule.jar == jar)
        // Where publications differ, the most acid.
        .max_by(|one, other| {
            let acid = |rule: &almanac::AcidRule| rule.lemon.map_or(0.0, measure::Volume::as_teaspoons);
            acid(one).total_cmp(&acid(other))
        });
    let Some(rule) = row else {
        return Ok(Answer::new().against(
            format!("no acid is printed for {} in a {jar} jar", product.id),
            "ask `stillroom clear` whether that jar may be used at all",
        ));
    };
    let mut answer = Answer::new().from(&rule.citation);
    if let Some(lemon) = rule.lemon {
        answer = answer.out("bottled lemon juice", jars * lemon.as_tablespoons(), "tbsp");
    }
    if let Some(citric) = rule.citric {
        answer = answer.out("or citric acid", jars * citric.as_teaspoons(), "tsp");
    }
    if let Some(vinegar) = rule.vinegar {
        answer = answer.out("or vinegar of 5 %", jars * vinegar.as_tablespoons(), "tbsp");
    }
    Ok(answer
        .caution("one of them, into each jar and never into the pot, and never less; bottled lemon juice, not fresh")
        .know("each alone is enough"))
}

static ACID_AT_REST: Sum = Sum {
    name: "acid-at-rest",
    what: "acetic acid in the water of vinegar and vegetables once they are at rest",
    inputs: &[
        must("vinegar", Kind::Volume, "the vinegar", "measure it"),
        must("strength", Kind::Percent, "its strength", "the label prints it"),
        must("vegetables", Kind::Mass, "the vegetables", "weigh them"),
        may("water", Kind::Volume, "water beside the vinegar", "measure it; none is taken when left out"),
    ],
    equation: "percent = 100 x acid / (water of vinegar + added water + water of vegetables)",
    source: "mass balance, solids left out",
    example: &["vinegar=1L", "strength=5", "water=1L", "vegetables=2kg"],
    answer: |asked, almanac| {
        let range = almanac.planning_range(RangeOf::VegetableWater);
        let shares = range.as_percent().expect("the row is a share");
        let of = |share: Percent| -> Result<f64, ReckonError> {
            Ok(find_resting_acid(&read_mix(asked, share)?)?.as_percent())
        };
        let acid = Range::around(of(shares.low)?, of(shares.likely)?, of(shares.high)?);
        Ok(Answer::new()
            .range("acetic acid", acid, "g in 100 g of water")
            .know(
                "cut vegetables are at rest after days; whole peppers, onions and garlic after up to 30 days",
            )
            .caution("only a tested formula says how much is enough")
            .from(&range.citation))
    },
};

fn read_mix(asked: &Asked<'_>, vegetable_water: Percent) -> Result<PickleMix, ReckonError> {
    Ok(PickleMix {
        vinegar: VINEGAR_DENSITY.mass_of(asked.volume("vinegar")?),
        strength: asked.percent("strength")?,
        water: asked.maybe_volume("water")?.map_or(Mass::ZERO, |water| WATER.mass_of(water)),
        vegetables: asked.mass("vegetables")?,
        vegetable_water,
    })
}

const VEGETABLES: &[&str] =
    &["cucumber", "cabbage", "sweet-pepper", "onion", "carrot", "green-bean", "garlic"];

static PICKLE_PH: Sum = Sum {
    name: "pickle-ph",
    what: "the pH a mix may come to, as a range that can only speak against it",
    inputs: &[
        must("vinegar", Kind::Volume, "the vinegar", "measure it"),
        must(
            "strength",
            Kind::Percent,
            "its strength",
            "the label prints it; without a label there is no answer",
        ),
        must("vegetables", Kind::Mass, "the vegetables", "weigh them"),
        must(
            "kind",
            Kind::Word(VEGETABLES),
            "which vegetable most of it is",
            "take the one that buffers most",
        ),
        may("water", Kind::Volume, "water beside the vinegar", "measure it; none is taken when left out"),
        may("salt", Kind::Mass, "salt", "weigh it; none is taken when left out"),
    ],
    equation: "charges balance: [H] + base = dissociated acid + [OH], in all of the water",
    source: "F. Breidt, USDA ARS, Buffer Capacity Model; pKa from memory; buffers are planning ranges of ours",
    example: &["vinegar=1L", "strength=5", "water=1L", "vegetables=2kg", "kind=cucumber"],
    answer: pickle_ph,
};

fn pickle_ph(asked: &Asked<'_>, almanac: &Almanac) -> Result<Answer, ReckonError> {
    /// A guessed buffer is right within this of a pH.
    const GUESSED: f64 = 0.4;
    let kind = asked.word("kind")?;
    let of = match kind {
        "cucumber" => RangeOf::BufferCucumber,
        "cabbage" => RangeOf::BufferCabbage,
        "sweet-pepper" => RangeOf::BufferSweetPepper,
        "onion" => RangeOf::BufferOnion,
        "carrot" => RangeOf::BufferCarrot,
        "green-bean" => RangeOf::BufferGreenBean,
        _ => RangeOf::BufferGarlic,
    };
    let buffers = almanac.planning_range(of);
    let buffer = buffers.as_milliequivalents().expect("the row is a buffer");
    let water = almanac.planning_range(RangeOf::VegetableWater);
    let mix = read_mix(asked, water.as_percent().expect("the row is a share").likely)?;
    let acid = mix.vinegar * mix.strength.as_fraction();
    let pickle = Pickle {
        acids: vec![AcidGiven { acid: Acid::Acetic, mass: acid }],
        water: mix.water + mix.vinegar - acid,
        salt: asked.maybe_mass("salt")?.unwrap_or(Mass::ZERO),
        vegetables: vec![Vegetable {
            mass: mix.vegetables,
            water: mix.vegetable_water,
            buffer: (Buffer(buffer.low), Buffer(buffer.high)),
        }],
    };
    let range = find_ph_range(&pickle)?;
    let mut answer = Answer::new()
        .range("pH at rest", Range::ends(range.low.0, range.high.0), "")
        .caution(
            "it clears nothing: an estimate is right within 0.4, and says nothing of the inside of a piece",
        )
        .know(
            "a tested formula is the only way to a jar on a shelf; else keep it cold and eat it within weeks",
        )
        .from(&buffers.citation)
        .from(&water.citation)
        .veto(veto_ph(range), "use a tested formula, or keep it in the refrigerator");
    if range.says() == PhSays::Flagged || (range.says() == PhSays::NotVetoed && range.high.0 + GUESSED > 4.6)
    {
        answer = answer.caution("too near to 4.6 for an estimate");
    }
    if let VinegarForPickles::TooWeak { .. } = compare_with_pickling(mix.strength)? {
        answer = answer.against(
            format!(
                "a vinegar of {} is weaker than pickles are printed for",
                say(mix.strength.as_percent(), "%")
            ),
            "buy vinegar whose label says 5 %",
        );
    }
    Ok(answer)
}

static TITRATION: Sum = Sum {
    name: "titration",
    what: "acid in a sample from the lye that turns it",
    inputs: &[
        must("lye", Kind::Volume, "the lye used", "read the burette"),
        must(
            "normality",
            Kind::Number,
            "its strength in equivalents a litre",
            "the bottle prints it, often 0.1",
        ),
        must("sample", Kind::Volume, "the sample", "measure it with a pipette"),
        must(
            "as",
            Kind::Word(&["acetic", "lactic", "citric"]),
            "the acid it is counted as",
            "vinegar, ferment, fruit",
        ),
    ],
    equation: "percent = lye x normality x equivalent weight / (10 x sample)",
    source: "titration to pH 8.2",
    example: &["lye=4.55ml", "normality=0.1", "sample=5ml", "as=lactic"],
    answer: |asked, _| {
        let counted_as = match asked.word("as")? {
            "acetic" => TitratedAcid::Acetic,
            "lactic" => TitratedAcid::Lactic,
            _ => TitratedAcid::Citric,
        };
        let acid = find_titrated_acid(&Titration {
            lye: asked.volume("lye")?,
            normality: Normality(asked.number("normality")?),
            sample: asked.volume("sample")?,
            counted_as,
        })?;
        Ok(Answer::new()
            .out("acid", acid.as_percent(), "g in 100 ml")
            .caution("lye burns: glasses and gloves"))
    },
};
