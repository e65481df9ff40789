//! What could be made of the baskets: formula by formula, in the sizes, jars and canners of this kitchen.
//!
//! A formula is a candidate when a basket holds its main produce, the rest of its produce is there or is little
//! enough to fetch, the produce is in a state that the formula allows, there is enough of jars, lids, bags and trays,
//! and, for what is canned, a canner of the house and a jar on the counter have a tested process at this height. Each
//! candidate carries its fit, its clearance, its work and its worth; what fails says why.

use std::collections::BTreeMap;

use almanac::{Formula, Method};
use batch::clear::Clearance;
use batch::fit::{self, Fit, FitQuestion, FitVerdict, Have, IngredientRef};
use measure::Mass;

use super::consumed::{containers_of, take_from_stock, trays_for};
use super::keeping::{self, KeepingWay};
use super::lots::lots_of;
use super::setting::Setting;
use super::worth::{self, Serving, Worth, WorthInputs};
use super::{likes, limits, produce};
use crate::day::Day;
use crate::tell::words;
use crate::work::{self, CannerUse, MultiDay, Work};

/// Batches of one formula in one day, at the most (ours: more is a factory).
const MOST_BATCHES: u32 = 3;
/// A make of fewer servings than this is a saucer, not a make (ours).
const LEAST_SERVINGS: f64 = 5.0;
/// Ways to make one formula that the planner is shown, at the most.
const MOST_OPTIONS: usize = 6;

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
    /// Servings before likes, targets and urgency.
    pub(crate) plain_servings: f64,
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
    /// A way worth more than all of these that the jars, lids, bags or trays do not allow.
    pub(crate) missed: Option<Missed>,
}

/// A way to make a formula that there is too little of something for.
#[derive(Debug, Clone)]
pub(crate) struct Missed {
    /// The way in words: "in quarts".
    pub(crate) way: String,
    /// What is short.
    pub(crate) why: String,
    value: u32,
}

/// The ways to make a formula that can be done, and the best that cannot for want of something.
#[derive(Default)]
struct Ways {
    options: Vec<Candidate>,
    missed: Option<Missed>,
}

impl Ways {
    fn miss(&mut self, missed: Missed) {
        if self.missed.as_ref().is_none_or(|other| other.value < missed.value) {
            self.missed = Some(missed);
        }
    }
}

/// A formula that cannot be made today.
#[derive(Debug, Clone)]
pub(crate) struct SetAside {
    pub(crate) name: String,
    pub(crate) formula: String,
    /// The baskets that hold its main produce.
    pub(crate) baskets: Vec<usize>,
    pub(crate) why: String,
}

/// Goes through every formula on file.
pub(crate) fn consider_all<'a>(setting: &Setting<'a>) -> (Vec<Considered<'a>>, Vec<SetAside>) {
    let mut considered = Vec::new();
    let mut aside = Vec::new();
    for formula in setting.almanac.formulas() {
        let Some(main) = produce::main_ingredient(setting.almanac, formula) else { continue };
        let baskets = produce::baskets_of(setting.day, formula, main);
        if baskets.is_empty() {
            continue;
        }
        let must = likes::is_must(setting.day, formula);
        match (Considering { setting, formula, main }).options(&baskets) {
            Ok(Ways { options, missed }) => {
                let best = options.iter().map(|option| option.worth.value()).max().unwrap_or(0);
                let missed = missed.filter(|missed| missed.value > best);
                considered.push(Considered { formula, must, options, missed });
            }
            Err(why) => aside.push(SetAside {
                name: words::name_of(formula),
                formula: formula.id.as_str().to_owned(),
                baskets,
                why,
            }),
        }
    }
    (considered, aside)
}

/// A formula under consideration.
struct Considering<'s, 'a> {
    setting: &'s Setting<'a>,
    formula: &'a Formula,
    /// The ingredient it is about.
    main: usize,
}

impl Considering<'_, '_> {
    /// All the ways to make it today, or why there is none.
    fn options(&self, baskets: &[usize]) -> Result<Ways, String> {
        if likes::is_not_today(self.setting.day, self.formula) {
            return Err("not today, as you asked".to_owned());
        }
        let ways = keeping::ways_to_keep(self.setting, self.formula)?;
        let mut found = Ways::default();
        let mut first_reason = None;
        for &basket in baskets {
            let stated = &self.setting.day.baskets[basket];
            if let Some(why) = produce::unfit_state(self.setting.almanac, self.formula, stated) {
                first_reason.get_or_insert(why);
                continue;
            }
            for (at, way) in ways.iter().enumerate() {
                if let Err(why) = self.sizes(basket, way, at == 0, &mut found) {
                    first_reason.get_or_insert(why);
                }
            }
        }
        found.options.truncate(MOST_OPTIONS);
        if found.options.is_empty() {
            let short = found.missed.map(|missed| missed.why);
            return Err(short.or(first_reason).unwrap_or_else(|| "nothing here fits it".to_owned()));
        }
        Ok(found)
    }

    /// Adds the sizes from one basket, kept one way: batch by batch, or all and half where the amount is free.
    fn sizes(
        &self,
        basket: usize,
        way: &KeepingWay,
        first_way: bool,
        found: &mut Ways,
    ) -> Result<(), String> {
        let all = self.enough_room(basket, self.fit(basket, way, MOST_BATCHES, 1.0)?);
        let most = u32::try_from(all.batches.len()).unwrap_or(MOST_BATCHES).min(MOST_BATCHES);
        let mut fits = if first_way {
            (1..=most).map(|size| self.fit(basket, way, size, 1.0)).collect::<Result<Vec<_>, _>>()?
        } else {
            vec![self.fit(basket, way, most, 1.0)?]
        };
        if way.jar.is_none() && most == 1 {
            fits = vec![all];
            fits.extend(self.fit(basket, way, 1, 0.5).ok());
        }
        fits.retain(|fit| !ends_in_a_scrap(fit));
        for (number, fit) in fits.into_iter().enumerate() {
            let candidate = self.candidate(basket, way, fit, number)?;
            if candidate.plain_servings < LEAST_SERVINGS {
                let produce = &self.setting.day.baskets[basket].entered;
                return Err(format!("there is too little of the {produce} to be worth a pot"));
            }
            match self.setting.first_short(&candidate.consumes) {
                None => found.options.push(candidate),
                Some((line, needs, there)) => found.miss(Missed {
                    way: way.jar.map_or_else(String::new, |(size, _)| format!("in {}", words::jars(size, 2))),
                    why: limits::short_words(self.setting.day, &line, needs, there),
                    value: candidate.worth.value(),
                }),
            }
        }
        Ok(())
    }

    /// The same fit, or a smaller one that the dryer has trays for.
    fn enough_room(&self, basket: usize, fit: Fit) -> Fit {
        let trays = f64::from(self.setting.day.equipment.dryer_trays);
        let needs = f64::from(trays_for(self.setting.day.baskets[basket].net));
        let dried = self.formula.methods.contains(&Method::Dry);
        if !dried || needs <= trays || trays == 0.0 {
            return fit;
        }
        let way = KeepingWay { jar: None, canner: None, pack: None, clearance: None };
        // One tray less than there is, since rounding up must not cost a tray that is not there.
        self.fit(basket, &way, MOST_BATCHES, (trays - 1.0) / needs).unwrap_or(fit)
    }

    /// Fits the formula to a share of a basket; the reason in words when it does not fit.
    fn fit(&self, basket: usize, way: &KeepingWay, most_batches: u32, share: f64) -> Result<Fit, String> {
        let stated = &self.setting.day.baskets[basket];
        let question = FitQuestion {
            formula: self.formula.id.clone(),
            have: vec![Have {
                ingredient: IngredientRef::Index(self.main),
                mass: stated.net * (self.setting.sound_share(stated) * share),
            }],
            jars: way.jar.iter().map(|(size, _)| *size).collect(),
            canner: way.canner.map(|at| self.setting.canner_load(at)),
            altitude: self.setting.day.altitude,
            most_batches: Some(most_batches),
        };
        let fit = fit::fit(self.setting.almanac, &question).map_err(|error| error.to_string())?;
        match fit.verdict {
            FitVerdict::Fits => Ok(fit),
            FitVerdict::DoesNotFit => {
                Err(fit.because.first().map_or_else(|| "it does not fit".to_owned(), |why| why.text.clone()))
            }
        }
    }

    /// A fitted formula with everything the planner and the teller need.
    fn candidate(
        &self,
        basket: usize,
        way: &KeepingWay,
        fit: Fit,
        number: usize,
    ) -> Result<Candidate, String> {
        let (setting, day, formula) = (self.setting, self.setting.day, self.formula);
        let (uses, fetched_produce) = produce::produce_of_fit(setting, formula, self.main, basket, &fit)?;
        let lots = lots_of(day, formula, &uses, &fit);
        let canner = way
            .canner
            .map(|at| CannerUse { resource: limits::canner_resource(day, at), kind: day.canners[at].kind });
        let process = keeping::process_way(setting, way);
        let work = work::lay_out_work(setting.almanac, formula, &lots, &process, canner.as_ref()).map_err(
            |MultiDay { rest_hours }| format!("it rests for {rest_hours} hours over several days"),
        )?;
        let saves = uses
            .iter()
            .map(|(at, mass)| (day.baskets[*at].entered.clone(), *mass, day.baskets[*at].waits))
            .collect();
        let servings = servings_of(setting, formula, way, &fit);
        let worth = worth::weigh_worth(&WorthInputs {
            servings,
            liking: likes::liking_of(day, formula),
            wanted: likes::wanted_of(day, formula),
            evening_minutes: work.evening_minutes,
            saves,
        });
        Ok(Candidate {
            id: option_id(day, basket, way, &fit, number),
            consumes: take_from_stock(formula, &uses, way, &fit),
            clearance: way.clearance.clone(),
            uses,
            fetched_produce,
            fit,
            work,
            plain_servings: servings.count(),
            worth,
        })
    }
}

/// Whether the last of several batches is less than half of the first: nobody lights the stove for a single jar.
fn ends_in_a_scrap(fit: &Fit) -> bool {
    match fit.batches.as_slice() {
        [first, .., last] => last.factor.to_f64() < first.factor.to_f64() / 2.0,
        _ => false,
    }
}

/// Plain servings of a make: by the room in its jars, or by the weight of the produce where there are none.
fn servings_of(setting: &Setting<'_>, formula: &Formula, way: &KeepingWay, fit: &Fit) -> Serving {
    let size = setting.almanac.serving_of(formula);
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

/// An id that says what the option is: `2-batches-basket-1-pint-wide-kettle`.
fn option_id(day: &Day, basket: usize, way: &KeepingWay, fit: &Fit, number: usize) -> String {
    let mut id = format!("{}-batch-basket-{}", fit.batches.len(), basket + 1);
    if way.jar.is_none() && number > 0 {
        id.push_str("-half");
    }
    if let Some((size, mouth)) = way.jar {
        id = format!("{id}-{}-{}", size.as_str(), mouth.as_str());
    }
    if let Some(at) = way.canner {
        id = format!("{id}-{}", day.canners[at].id);
    }
    id
}
