//! What could be made of the baskets: formula by formula, in the sizes, jars and canners of this kitchen.
//!
//! A formula is a candidate when a basket holds its main produce, the rest of its produce is there or is little
//! enough to fetch, the produce is in a state that the formula allows, and, for what is canned, a canner of the
//! house and a jar on the counter have a tested process at this height. Each candidate carries its fit, its
//! clearance, its work and its worth; what fails says why.

use std::collections::BTreeMap;

use almanac::{Almanac, Formula, JarSize, Method, Mouth, Pack, Part, Verdict, YieldUnit};
use batch::clear::{self, ClearQuestion, Clearance};
use batch::fit::{self, CannerLoad, Fit, FitQuestion, FitVerdict, FittedBatch, Have, IngredientRef};
use measure::{Altitude, Mass, Volume};

use super::likes;
use super::limits;
use super::worth::{self, Serving, Worth, WorthInputs};
use crate::day::{Basket, Condition, Day};
use crate::gauge;
use crate::tell::words;
use crate::work::{self, CannerUse, Lot, LotProduce, MultiDay, Way, Work};

/// The largest share of a formula's produce that is fetched rather than found in a basket (ours).
const FETCHED_SHARE: f64 = 0.35;
/// Batches of one formula in one day, at the most (ours: more is a factory).
const MOST_BATCHES: u32 = 3;
/// Ways to make one formula that the planner is shown, at the most.
const MOST_OPTIONS: usize = 8;

/// One way to make one formula.
#[derive(Debug, Clone)]
pub(crate) struct Candidate {
    /// Its option id.
    pub(crate) id: String,
    pub(crate) fit: Fit,
    /// What it takes from which basket.
    pub(crate) uses: Vec<(usize, Mass)>,
    /// Produce that no basket holds enough of.
    pub(crate) fetched_produce: Vec<(String, Mass)>,
    pub(crate) consumes: BTreeMap<String, u32>,
    pub(crate) clearance: Option<Clearance>,
    pub(crate) work: Work,
    pub(crate) worth: Worth,
}

impl Candidate {
    /// Minutes of hand work in it.
    pub(crate) fn hand_minutes(&self) -> u32 {
        let hands = |step: &&work::WorkStep| step.needs.contains_key("hands");
        self.work.steps.iter().filter(hands).map(|step| step.minutes).sum()
    }
}

/// A formula with the ways to make it today.
#[derive(Debug, Clone)]
pub(crate) struct Considered<'a> {
    pub(crate) formula: &'a Formula,
    pub(crate) must: bool,
    pub(crate) options: Vec<Candidate>,
}

/// A formula that cannot be made today.
#[derive(Debug, Clone)]
pub(crate) struct SetAside {
    pub(crate) name: String,
    pub(crate) formula: String,
    pub(crate) why: String,
}

/// Goes through every formula on file.
pub(crate) fn consider_all<'a>(almanac: &'a Almanac, day: &Day) -> (Vec<Considered<'a>>, Vec<SetAside>) {
    let mut considered = Vec::new();
    let mut aside = Vec::new();
    for formula in almanac.formulas() {
        let baskets = baskets_for(almanac, day, formula);
        if baskets.is_empty() {
            continue;
        }
        let must = likes::is_must(day, formula);
        match consider(almanac, day, formula, &baskets) {
            Ok(options) => considered.push(Considered { formula, must, options }),
            Err(why) => aside.push(SetAside {
                name: formula.name.to_string(),
                formula: formula.id.as_str().to_owned(),
                why,
            }),
        }
    }
    (considered, aside)
}

/// The index of the ingredient that the formula is about: the produce that weighs most in a printed batch.
fn main_ingredient(almanac: &Almanac, formula: &Formula) -> Option<usize> {
    /// More than any printed batch takes.
    const PLENTY: Mass = Mass::kilograms(500.0);
    let produce: Vec<usize> =
        (0..formula.ingredients.len()).filter(|&at| !formula.ingredients[at].accepts.is_empty()).collect();
    let printed = produce.iter().find_map(|&at| {
        let question = FitQuestion {
            formula: formula.id.clone(),
            have: vec![Have { ingredient: IngredientRef::Index(at), mass: PLENTY }],
            jars: vec![],
            canner: None,
            altitude: None,
            most_batches: Some(1),
        };
        let fit = fit::fit(almanac, &question).ok()?;
        fit.batches.into_iter().next()
    })?;
    let weight = |at: usize| {
        let line = printed.ingredients.iter().find(|line| line.index == at);
        line.and_then(|line| line.takes.or(line.weight)).map_or(0.0, Mass::as_grams)
    };
    // The first of equals: formulas name their main produce first.
    produce.into_iter().min_by(|&a, &b| weight(b).total_cmp(&weight(a)).then(a.cmp(&b)))
}

/// The baskets that hold the main produce of a formula.
fn baskets_for(almanac: &Almanac, day: &Day, formula: &Formula) -> Vec<usize> {
    let Some(main) = main_ingredient(almanac, formula) else { return vec![] };
    baskets_of(day, formula, main)
}

/// The baskets that serve an ingredient.
fn baskets_of(day: &Day, formula: &Formula, ingredient: usize) -> Vec<usize> {
    let accepted = &formula.ingredients[ingredient].accepts;
    (0..day.baskets.len()).filter(|&at| accepted.contains(&day.baskets[at].produce)).collect()
}

/// All the ways to make a formula today, or why there is none.
fn consider(
    almanac: &Almanac,
    day: &Day,
    formula: &Formula,
    baskets: &[usize],
) -> Result<Vec<Candidate>, String> {
    if likes::is_not_today(day, formula) {
        return Err("not today, as you asked".to_owned());
    }
    let ways = ways_to_keep(almanac, day, formula)?;
    let mut options: Vec<Candidate> = Vec::new();
    let mut first_reason = None;
    for &basket in baskets {
        if let Some(why) = unfit_state(almanac, formula, &day.baskets[basket]) {
            first_reason.get_or_insert(why);
            continue;
        }
        for (at, way) in ways.iter().enumerate() {
            match options_of(almanac, day, formula, basket, way, at == 0) {
                Ok(found) => options.extend(found),
                Err(why) => {
                    first_reason.get_or_insert(why);
                }
            }
        }
    }
    options.truncate(MOST_OPTIONS);
    if options.is_empty() {
        return Err(first_reason.unwrap_or_else(|| "nothing here fits it".to_owned()));
    }
    Ok(options)
}

/// One way to keep a make: jar and canner, or neither.
#[derive(Debug, Clone)]
struct KeepingWay {
    jar: Option<(JarSize, Mouth)>,
    canner: Option<usize>,
    pack: Option<Pack>,
    clearance: Option<Clearance>,
}

/// The ways to keep what a formula makes: tested canner and jar pairs, or freezer, dryer, crock, refrigerator.
fn ways_to_keep(almanac: &Almanac, day: &Day, formula: &Formula) -> Result<Vec<KeepingWay>, String> {
    let canned =
        formula.methods.iter().any(|method| matches!(method, Method::BoilingWater | Method::Pressure));
    if !canned {
        return Ok(vec![KeepingWay { jar: None, canner: None, pack: None, clearance: None }]);
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

/// Why a basket's state rules a formula out.
fn unfit_state(almanac: &Almanac, formula: &Formula, basket: &Basket) -> Option<String> {
    let whole = formula.name.contains("whole") || formula.name.contains("halved");
    let canned = formula.product.is_some();
    basket.condition.iter().find_map(|condition| {
        let row = almanac.find_condition(condition_word(*condition))?;
        if canned && row.not_canned {
            return Some(format!("the {} are {}: {}", basket.entered, row.condition, row.note));
        }
        (whole && row.not_whole)
            .then(|| format!("the {} are {} and will not stay whole", basket.entered, row.condition))
    })
}

/// The word of a condition in the tables and in day files.
pub(crate) fn condition_word(condition: Condition) -> &'static str {
    match condition {
        Condition::Sound => "sound",
        Condition::Split => "split",
        Condition::Bruised => "bruised",
        Condition::Overgrown => "overgrown",
        Condition::Unripe => "unripe",
        Condition::Ripe => "ripe",
        Condition::Soft => "soft",
        Condition::Fallen => "fallen",
        Condition::Limp => "limp",
        Condition::Cut => "cut",
        Condition::Frozen => "frozen",
        Condition::Frosted => "frosted",
        Condition::Bought => "bought",
    }
}

/// The share of a basket that is left when bad parts are cut away.
fn sound_share(almanac: &Almanac, basket: &Basket) -> f64 {
    basket
        .condition
        .iter()
        .filter_map(|condition| almanac.find_condition(condition_word(*condition)))
        .map(|row| 1.0 - row.loss.as_fraction())
        .product()
}

/// The sizes of one formula from one basket, kept one way.
fn options_of(
    almanac: &Almanac,
    day: &Day,
    formula: &Formula,
    basket: usize,
    way: &KeepingWay,
    first_way: bool,
) -> Result<Vec<Candidate>, String> {
    let all = fit_basket(almanac, day, formula, basket, way, MOST_BATCHES)?;
    let most = u32::try_from(all.batches.len()).unwrap_or(MOST_BATCHES).min(MOST_BATCHES);
    let mut sizes: Vec<u32> = if first_way { (1..=most).collect() } else { vec![most, 1] };
    sizes.dedup();
    let mut options = Vec::new();
    for size in sizes {
        let fit = fit_basket(almanac, day, formula, basket, way, size)?;
        options.push(candidate_of(almanac, day, formula, basket, way, fit)?);
    }
    Ok(options)
}

/// Fits a formula to a basket; the reason in words when it does not fit.
fn fit_basket(
    almanac: &Almanac,
    day: &Day,
    formula: &Formula,
    basket: usize,
    way: &KeepingWay,
    most_batches: u32,
) -> Result<Fit, String> {
    let main = main_ingredient(almanac, formula).ok_or_else(|| "it names no produce".to_owned())?;
    let stated = &day.baskets[basket];
    let question = FitQuestion {
        formula: formula.id.clone(),
        have: vec![Have {
            ingredient: IngredientRef::Index(main),
            mass: stated.net * sound_share(almanac, stated),
        }],
        jars: way.jar.iter().map(|(size, _)| *size).collect(),
        canner: way.canner.map(|at| canner_load(almanac, day, at)),
        altitude: day.altitude,
        most_batches: Some(most_batches),
    };
    let fit = fit::fit(almanac, &question).map_err(|error| error.to_string())?;
    match fit.verdict {
        FitVerdict::Fits => Ok(fit),
        FitVerdict::DoesNotFit => {
            Err(fit.because.first().map_or_else(|| "it does not fit".to_owned(), |why| why.text.clone()))
        }
    }
}

/// What a canner of the house holds: as the owner found it, else the lower printed load.
pub(crate) fn canner_load(almanac: &Almanac, day: &Day, at: usize) -> CannerLoad {
    let canner = &day.canners[at];
    let mut holds: BTreeMap<JarSize, u32> = BTreeMap::new();
    for jar in almanac.jars() {
        let printed = if canner.kind.is_pressure() { jar.pressure_load } else { jar.boiling_water_load };
        if let Some(load) = printed {
            holds.insert(jar.size, load.low);
        }
    }
    holds.extend(canner.holds.iter().copied());
    CannerLoad { id: canner.id.clone(), kind: canner.kind, holds }
}

/// A fitted formula with everything the planner and the teller need.
fn candidate_of(
    almanac: &Almanac,
    day: &Day,
    formula: &Formula,
    basket: usize,
    way: &KeepingWay,
    fit: Fit,
) -> Result<Candidate, String> {
    let main = main_ingredient(almanac, formula).unwrap_or_default();
    let (uses, fetched_produce) = produce_of_fit(almanac, day, formula, main, basket, &fit)?;
    let containers = containers_of(&fit);
    let lots: Vec<Lot> = lots_of(day, formula, &uses, &fit);
    let process_way = process_way(almanac, day, way);
    let canner = way
        .canner
        .map(|at| CannerUse { resource: limits::canner_resource(day, at), kind: day.canners[at].kind });
    let work = work::lay_out_work(almanac, formula, &lots, &process_way, canner.as_ref())
        .map_err(|MultiDay { rest_hours }| format!("it rests for {rest_hours} hours over several days"))?;
    let saves = uses
        .iter()
        .map(|(at, mass)| (day.baskets[*at].entered.clone(), *mass, day.baskets[*at].waits))
        .collect();
    let worth = worth::weigh_worth(&WorthInputs {
        servings: servings_of(almanac, formula, way, &fit),
        liking: likes::liking_of(day, formula),
        wanted: likes::wanted_of(day, formula),
        saves,
    });
    Ok(Candidate {
        id: option_id(day, basket, way, &fit),
        consumes: consumed(formula, &uses, way, &fit, containers),
        clearance: way.clearance.clone(),
        uses,
        fetched_produce,
        fit,
        work,
        worth,
    })
}

/// Likely jars or bags of a fit.
fn containers_of(fit: &Fit) -> u32 {
    let jars: u32 = fit.batches.iter().flat_map(|batch| &batch.jars).map(|jars| jars.likely).sum();
    let bags: u32 = fit.batches.iter().filter_map(|batch| batch.bags.as_ref()).map(|bags| bags.likely).sum();
    jars + bags
}

/// The batches as far as their work is concerned.
fn lots_of(day: &Day, formula: &Formula, uses: &[(usize, Mass)], fit: &Fit) -> Vec<Lot> {
    fit.batches
        .iter()
        .map(|batch| Lot {
            produce: batch
                .ingredients
                .iter()
                .filter(|line| !formula.ingredients[line.index].accepts.is_empty())
                .filter_map(|line| {
                    Some(LotProduce {
                        printed: line.ingredient.clone(),
                        called: called(day, formula, uses, line.index),
                        mass: line.takes.or(line.weight)?,
                    })
                })
                .collect(),
            containers: batch.jars.iter().map(|jars| jars.likely).sum::<u32>()
                + batch.bags.as_ref().map_or(0, |bags| bags.likely),
            vessels: vessels_of(batch),
            units: day.units,
            processor: day.equipment.processors > 0,
        })
        .collect()
}

/// What the household calls the produce of an ingredient: the basket it comes from, else the printed name.
fn called(day: &Day, formula: &Formula, uses: &[(usize, Mass)], ingredient: usize) -> String {
    let line = &formula.ingredients[ingredient];
    uses.iter()
        .map(|(at, _)| &day.baskets[*at])
        .find(|basket| line.accepts.contains(&basket.produce))
        .map_or_else(|| line.name.to_string(), |basket| basket.entered.clone())
}

/// The jars or bags of a batch in words.
fn vessels_of(batch: &FittedBatch) -> String {
    let jars =
        batch.jars.iter().map(|jars| format!("{} {}", jars.likely, words::jars(jars.size, jars.likely)));
    let bags = batch.bags.iter().map(|bags| format!("{} bags", bags.likely));
    words::and_list(&jars.chain(bags).collect::<Vec<_>>())
}

/// The process as far as the work is concerned.
fn process_way(almanac: &Almanac, day: &Day, way: &KeepingWay) -> Way {
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

/// Plain servings of a make: by the room in its jars, or by the weight of the produce where there are none.
fn servings_of(almanac: &Almanac, formula: &Formula, way: &KeepingWay, fit: &Fit) -> Serving {
    let size = almanac.serving_of(formula);
    match (way.jar, size) {
        (Some((jar, _)), Some(size)) => {
            Serving::OfJars { containers: containers_of(fit), each: jar.volume(), serving: size.volume }
        }
        (None, Some(size)) => Serving::OfProduce { produce: edible_mass(formula, fit), serving: size.fresh },
        (_, None) => Serving::None,
    }
}

/// The weight of all produce in a fit, as it is prepared.
fn edible_mass(formula: &Formula, fit: &Fit) -> Mass {
    fit.batches
        .iter()
        .flat_map(|batch| &batch.ingredients)
        .filter(|line| !formula.ingredients[line.index].accepts.is_empty() && !line.optional)
        .filter_map(|line| line.weight.or(line.takes))
        .sum()
}

/// What the produce lines of a fit take from baskets, and what must be fetched.
type ProduceUse = (Vec<(usize, Mass)>, Vec<(String, Mass)>);

/// Finds the produce of a fit in the baskets.
fn produce_of_fit(
    almanac: &Almanac,
    day: &Day,
    formula: &Formula,
    main: usize,
    main_basket: usize,
    fit: &Fit,
) -> Result<ProduceUse, String> {
    let mut needed: BTreeMap<usize, Mass> = BTreeMap::new();
    for line in fit.batches.iter().flat_map(|batch| &batch.ingredients) {
        let is_produce = !formula.ingredients[line.index].accepts.is_empty();
        if let (true, false, Some(takes)) = (is_produce, line.optional, line.takes.or(line.weight)) {
            *needed.entry(line.index).or_insert(Mass::ZERO) =
                needed.get(&line.index).copied().unwrap_or_default() + takes;
        }
    }
    let total: Mass = needed.values().copied().sum();
    let mut left: Vec<Mass> =
        day.baskets.iter().map(|basket| basket.net * sound_share(almanac, basket)).collect();
    let mut uses: BTreeMap<usize, Mass> = BTreeMap::new();
    let mut fetched = Vec::new();
    let mut fetched_total = Mass::ZERO;
    for (&index, &takes) in &needed {
        let mut missing = takes;
        let mut sources = baskets_of(day, formula, index);
        if index == main {
            sources.retain(|&at| at == main_basket);
        }
        for at in sources {
            let share = sound_share(almanac, &day.baskets[at]).max(0.01);
            let taken = missing.min(left[at]);
            left[at] = left[at] - taken;
            missing = missing - taken;
            let gross = uses.entry(at).or_insert(Mass::ZERO);
            *gross = *gross + taken * (1.0 / share);
        }
        // A few grams short of the printed weight is within the printed measure.
        if missing > Mass::grams(5.0) {
            let small_part = formula.ingredients[index].part != Part::Produce || index != main;
            if !small_part {
                return Err(format!("there is too little of {}", formula.ingredients[index].name));
            }
            fetched_total = fetched_total + missing;
            fetched.push((formula.ingredients[index].name.to_string(), missing));
        }
    }
    if fetched_total > total * FETCHED_SHARE {
        let what: Vec<&str> = fetched.iter().map(|(name, _)| name.as_str()).collect();
        return Err(format!("too much of it would have to be bought: {}", what.join(", ")));
    }
    Ok((uses.into_iter().filter(|(_, mass)| *mass > Mass::ZERO).collect(), fetched))
}

/// What an option takes from the stock.
fn consumed(
    formula: &Formula,
    uses: &[(usize, Mass)],
    way: &KeepingWay,
    fit: &Fit,
    containers: u32,
) -> BTreeMap<String, u32> {
    let mut consumes = BTreeMap::new();
    for (at, mass) in uses {
        consumes.insert(limits::basket_stock(*at), limits::whole_grams(*mass));
    }
    if let Some((size, mouth)) = way.jar {
        // Jars are set out for the most that may come of it.
        let high: u32 = fit.batches.iter().flat_map(|batch| &batch.jars).map(|jars| jars.high).sum();
        consumes.insert(limits::jar_stock(size, mouth), high);
        consumes.insert(limits::lid_stock(mouth), high);
    } else if formula.methods.contains(&Method::Freeze) {
        consumes.insert(limits::BAGS.to_owned(), containers);
        let room = Volume::quarts(f64::from(containers));
        // Never overflows: a day's bags hold a few hundred litres at the most.
        consumes
            .insert(limits::FREEZER.to_owned(), libm::ceil(room.as_millilitres().min(1_000_000.0)) as u32);
    } else if formula.methods.contains(&Method::Dry) {
        let mass: Mass = uses.iter().map(|(_, mass)| *mass).sum();
        consumes.insert(limits::TRAYS.to_owned(), trays_for(mass));
    } else if formula.methods.contains(&Method::Ferment) {
        consumes.insert(limits::CROCKS.to_owned(), u32::try_from(fit.batches.len()).unwrap_or(1));
    }
    consumes
}

/// Dehydrator trays for a weight of fresh produce: about a pound and a half a tray (common practice, no source).
fn trays_for(mass: Mass) -> u32 {
    const POUNDS_A_TRAY: f64 = 1.5;
    // Never overflows: a basket weighs at most a ton.
    libm::ceil((mass.as_pounds() / POUNDS_A_TRAY).clamp(1.0, 10_000.0)) as u32
}

/// An id that says what the option is: `2-batches-basket-1-pint-wide-kettle`.
fn option_id(day: &Day, basket: usize, way: &KeepingWay, fit: &Fit) -> String {
    let mut id = format!("{}-batch-basket-{}", fit.batches.len(), basket + 1);
    if let Some((size, mouth)) = way.jar {
        id = format!("{id}-{}-{}", size.as_str(), mouth.as_str());
    }
    if let Some(at) = way.canner {
        id = format!("{id}-{}", day.canners[at].id);
    }
    id
}
