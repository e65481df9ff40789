//! Every formula on file, laid out in every way that is cleared, and the laws that all of its work keeps.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use almanac::{Action, Almanac, CannerKind, Formula, JarSize, Method, Pack, Verdict};
use batch::clear::{self, ClearQuestion, ClearedLine, Gauge, Tested};
use batch::fit::{self, CannerLoad, Fit, FitQuestion, FitVerdict, Have, IngredientRef};
use measure::{Altitude, Mass, Pressure};

use super::*;
use crate::day::Units;
use crate::tell::words;

pub(super) static ALMANAC: LazyLock<Almanac> =
    LazyLock::new(|| Almanac::load().expect("the tables of the tree load"));

const HEIGHT: Altitude = Altitude::feet(2350);

/// All of it, laid out once for all tests.
static TRIALS: LazyLock<Vec<Trial>> = LazyLock::new(|| ALMANAC.formulas().flat_map(trials_of).collect());

/// One formula laid out one way.
struct Trial {
    formula: &'static Formula,
    /// The canner it was laid out for, with the cleared minutes.
    process: Option<(CannerKind, u32)>,
    lots: usize,
    work: Result<Work, MultiDay>,
}

impl Trial {
    /// What a failed law names.
    fn name(&self) -> String {
        let kind = self.process.map_or("no canner", |(kind, _)| kind.as_str());
        format!("{} ({kind}, {} batches)", self.formula.id, self.lots)
    }
}

/// The ways of one formula: uncanned, or each canner kind, first permitted pack and jar, for a basket of 12 kg.
fn trials_of(formula: &'static Formula) -> Vec<Trial> {
    const BEST_FIRST: [JarSize; 3] = [JarSize::Quart, JarSize::Pint, JarSize::HalfPint];
    const KINDS: [CannerKind; 3] = [CannerKind::BoilingWater, CannerKind::Dial, CannerKind::Weighted];
    let canned = formula.methods.iter().any(|how| matches!(how, Method::BoilingWater | Method::Pressure));
    let product = match &formula.product {
        Some(product) if canned => product,
        _ if canned => return vec![],
        _ => return trial(formula, None, None).into_iter().collect(),
    };
    let mut trials = Vec::new();
    for canner in KINDS {
        for &pack in &formula.packs {
            let cleared = BEST_FIRST.into_iter().find_map(|jar| {
                let question = ClearQuestion {
                    product: product.clone(),
                    pack,
                    jar,
                    canner,
                    altitude: HEIGHT,
                    gauge: Some(Gauge { error: Some(Pressure::psi(0.5)), tested: Tested::WithinTheYear }),
                    formula: Some(formula.id.clone()),
                    changes: vec![],
                };
                let answer = clear::clear(&ALMANAC, &question).expect("the question can be judged");
                (answer.verdict == Verdict::Tested).then(|| (jar, answer.processes[0].clone()))
            });
            if let Some((jar, line)) = cleared {
                trials.extend(trial(formula, Some((canner, pack, jar)), Some(&line)));
            }
        }
    }
    trials
}

fn trial(
    formula: &'static Formula,
    canned: Option<(CannerKind, Pack, JarSize)>,
    line: Option<&ClearedLine>,
) -> Option<Trial> {
    let fit = fit_of(formula, canned)?;
    let process = canned.zip(line).map(|((kind, _, _), line)| (kind, line.process().minutes().0));
    let way = Way {
        pack: canned.map(|(_, pack, _)| pack),
        process,
        held_at: line.map_or_else(String::new, words::held_at),
        headspace: line.map(|line| words::process_line(Units::Us, line, None).headspace),
        sterilize_min: process.filter(|(kind, min)| !kind.is_pressure() && *min < 10).map(|_| 12),
    };
    let canner = process.map(|(kind, _)| CannerUse { resource: "canner-ours".into(), kind });
    let lots: Vec<Lot> = fit.batches.iter().map(|batch| lot_of(formula, batch, canned)).collect();
    let work = lay_out_work(&ALMANAC, formula, &lots, &way, canner.as_ref());
    Some(Trial { formula, process, lots: lots.len(), work })
}

/// The largest produce of the formula, 12 kg of it, in at most three batches.
fn fit_of(formula: &Formula, canned: Option<(CannerKind, Pack, JarSize)>) -> Option<Fit> {
    let produce = (0..formula.ingredients.len()).filter(|&at| !formula.ingredients[at].accepts.is_empty());
    produce
        .filter_map(|at| {
            let question = FitQuestion {
                formula: formula.id.clone(),
                have: vec![Have { ingredient: IngredientRef::Index(at), mass: Mass::kilograms(12.0) }],
                jars: canned.iter().map(|(_, _, jar)| *jar).collect(),
                canner: canned.map(|(kind, _, jar)| CannerLoad {
                    id: "ours".into(),
                    kind,
                    holds: [(jar, 7)].into(),
                }),
                altitude: Some(HEIGHT),
                most_batches: Some(2),
            };
            fit::fit(&ALMANAC, &question).ok().filter(|fit| fit.verdict == FitVerdict::Fits)
        })
        .next()
}

fn lot_of(formula: &Formula, batch: &fit::FittedBatch, canned: Option<(CannerKind, Pack, JarSize)>) -> Lot {
    let jars: u32 = batch.jars.iter().map(|jars| jars.likely).sum();
    let bags = batch.bags.as_ref().map_or(0, |bags| bags.likely);
    Lot {
        produce: batch
            .ingredients
            .iter()
            .filter(|line| !formula.ingredients[line.index].accepts.is_empty())
            .filter_map(|line| {
                Some(LotProduce {
                    printed: line.ingredient.clone(),
                    called: line.ingredient.clone(),
                    mass: line.takes.or(line.weight)?,
                })
            })
            .collect(),
        containers: jars + bags,
        vessels: match canned {
            Some((_, _, jar)) => format!("{jars} {}", words::jars(jar, jars)),
            None if bags > 0 => format!("{bags} bags"),
            None => String::new(),
        },
        units: Units::Us,
        processor: true,
    }
}

/// The verbs of a formula's steps.
fn verbs_of(id: &str) -> BTreeSet<String> {
    let trial = TRIALS.iter().find(|trial| trial.formula.id.as_str() == id).expect("the formula is on file");
    let work = trial.work.as_ref().expect("it fits one day");
    work.steps.iter().filter_map(|step| step.id.rsplit('-').next()).map(str::to_owned).collect()
}

/// Runs a law over every layout.
fn each_layout(law: impl Fn(&Trial, &Work)) {
    let mut seen = 0;
    for trial in TRIALS.iter() {
        if let Ok(work) = &trial.work {
            law(trial, work);
            seen += 1;
        }
    }
    assert!(seen > 150, "only {seen} layouts were looked at");
}

#[test]
fn every_formula_is_laid_out_or_has_no_tested_way() {
    let tried: BTreeSet<&str> = TRIALS.iter().map(|trial| trial.formula.id.as_str()).collect();
    let untried: Vec<&str> = ALMANAC
        .formulas()
        .filter(|formula| formula.steps.iter().any(|line| line.action != Action::Label))
        .map(|formula| formula.id.as_str())
        .filter(|id| !tried.contains(id))
        .collect();
    // Not cleared anywhere, or about an ingredient that is no basket's produce.
    let no_way = [
        "choice_salsa",
        "citrus_marmalade",
        "garlic_jelly",
        "golden_pepper_jelly",
        "lemon_curd",
        "peach_jam_pectin",
        "pepper_jelly_green",
        "strawberry_jam_pectin",
        "summer_squash_relish",
    ];
    assert_eq!(untried, no_way);
    let several_days: BTreeSet<&str> =
        TRIALS.iter().filter(|trial| trial.work.is_err()).map(|trial| trial.formula.id.as_str()).collect();
    assert_eq!(several_days, BTreeSet::from(["pickle_relish", "sweet_gherkins"]));
}

#[test]
fn every_step_takes_time_and_has_a_readable_title() {
    let mut long = 0;
    let mut all = 0;
    each_layout(|trial, work| {
        for step in &work.steps {
            let title = &step.title;
            assert!(step.minutes > 0, "{}: {title}", trial.name());
            // A jam is boiled, skimmed, filled and loaded in one go, and the sheet breaks the line.
            assert!(title.len() <= 155, "{}: {title}", trial.name());
            for blemish in ["heat preheat", "boil bring", "0 bags", "  ", "fill ,", "everything and"] {
                assert!(!title.contains(blemish), "{}: {title}", trial.name());
            }
            assert!(title.matches(" and ").count() < 4, "{}: {title}", trial.name());
        }
    });
    for step in TRIALS.iter().flat_map(|trial| trial.work.iter().flat_map(|work| &work.steps)) {
        all += 1;
        long += usize::from(step.title.len() > 90);
    }
    assert!(long * 20 < all, "{long} of {all} titles are longer than a line");
}

#[test]
fn a_detail_never_repeats_a_title() {
    each_layout(|trial, work| {
        for step in &work.steps {
            let repeats = |line: &String| step.detail.len() == 1 && step.title.contains(line.as_str());
            assert!(!step.detail.iter().any(repeats), "{}: {}", trial.name(), step.title);
        }
    });
}

#[test]
fn work_goes_on_in_the_order_of_the_formula() {
    each_layout(|trial, work| {
        let place = |id: &str| work.steps.iter().position(|step| step.id == id).expect("lags name steps");
        for lag in &work.lags {
            assert!(place(&lag.from) < place(&lag.to), "{}: {lag:?}", trial.name());
        }
        let mut batches = BTreeSet::new();
        for step in &work.steps {
            let batch = step.id.split('-').next().unwrap_or_default().to_owned();
            let begins = batches.insert(batch) || step.id.contains("-part-");
            let follows = work.lags.iter().any(|lag| lag.to == step.id);
            assert!(begins || follows, "{}: nothing comes before {}", trial.name(), step.id);
        }
    });
}

/// Bellman and Ford: start(to) >= start(from) + minutes(from) + min, and the other way round for the longest wait.
#[test]
fn no_waits_contradict_each_other() {
    each_layout(|trial, work| {
        let index = |id: &str| work.steps.iter().position(|step| step.id == id).expect("lags name steps");
        let mut edges = Vec::new();
        for lag in &work.lags {
            let (from, to) = (index(&lag.from), index(&lag.to));
            let minutes = i64::from(work.steps[from].minutes);
            edges.push((from, to, minutes + i64::from(lag.min)));
            edges.extend(lag.max.map(|max| (to, from, -(minutes + i64::from(max)))));
        }
        let mut start = vec![0_i64; work.steps.len()];
        for round in 0..=work.steps.len() {
            let mut moved = false;
            for &(from, to, least) in &edges {
                if start[to] < start[from] + least {
                    start[to] = start[from] + least;
                    moved = true;
                }
            }
            if !moved {
                return;
            }
            assert!(round < work.steps.len(), "{}: the waits go round in a circle", trial.name());
        }
    });
}

/// Long hand work is cut into parts for two people; one person alone must still be able to do it, part after part.
#[test]
fn one_cook_can_do_a_batch_without_waiting_too_long_for_herself() {
    each_layout(|trial, work| {
        let mut at = 0_i64;
        let mut ends: BTreeMap<&str, (i64, i64)> = BTreeMap::new();
        for step in work.steps.iter().filter(|step| step.id.starts_with("b1-")) {
            ends.insert(&step.id, (at, at + i64::from(step.minutes)));
            at += i64::from(step.minutes);
        }
        for lag in &work.lags {
            let (Some(from), Some(to)) = (ends.get(lag.from.as_str()), ends.get(lag.to.as_str())) else {
                continue;
            };
            let wait = to.0 - from.1;
            let most = lag.max.map_or(i64::MAX, i64::from);
            assert!((i64::from(lag.min)..=most).contains(&wait), "{}: {lag:?} waits {wait}", trial.name());
        }
    });
}

#[test]
fn a_process_lasts_exactly_its_cleared_minutes() {
    each_layout(|trial, work| {
        let processed: Vec<u32> =
            work.steps.iter().filter(|step| step.id.ends_with("process")).map(|step| step.minutes).collect();
        let cleared: Vec<u32> =
            trial.process.iter().flat_map(|(_, minutes)| vec![*minutes; trial.lots]).collect();
        assert_eq!(processed, cleared, "{}", trial.name());
    });
}

#[test]
fn the_canner_is_held_once_from_the_tap_to_the_last_lift() {
    each_layout(|trial, work| {
        let held: Vec<_> = work.holds.iter().filter(|hold| hold.resource == "canner-ours").collect();
        let Some(_) = trial.process else {
            assert!(held.is_empty(), "{}", trial.name());
            return;
        };
        let [hold] = held.as_slice() else { panic!("{}: {held:?}", trial.name()) };
        let lifts: Vec<&WorkStep> = work.steps.iter().filter(|step| step.id.ends_with("lift")).collect();
        assert_eq!(hold.from, "canner-on", "{}", trial.name());
        assert_eq!(Some(&hold.to), lifts.last().map(|step| &step.id), "{}", trial.name());
        // The next load goes in after the one before is out.
        for pair in lifts.windows(2) {
            let next = work.lags.iter().find(|lag| lag.from == pair[0].id && lag.to.starts_with('b'));
            assert!(next.is_some_and(|lag| lag.min >= 0), "{}: {}", trial.name(), pair[0].id);
        }
    });
}

#[test]
fn a_pressure_canner_is_vented_and_a_boiling_water_canner_is_not() {
    each_layout(|trial, work| {
        let Some((kind, _)) = trial.process else { return };
        let says = |words: &str| work.steps.iter().filter(|step| step.title.contains(words)).count();
        let loads = |at_work: bool| if at_work { trial.lots } else { 0 };
        assert_eq!(says("vent 10 min"), loads(kind.is_pressure()), "{}", trial.name());
        assert_eq!(says("pressure fall by itself"), loads(kind.is_pressure()), "{}", trial.name());
        assert_eq!(says("canner to a full boil"), loads(!kind.is_pressure()), "{}", trial.name());
        let unattended = work.steps.iter().find(|step| {
            (step.title.contains("vent ") || step.id.ends_with("process"))
                && !(step.must_not_be_left && step.needs.contains_key("eyes"))
        });
        assert!(unattended.is_none(), "{}: {unattended:?}", trial.name());
    });
}

#[test]
fn hand_work_comes_in_stretches_of_an_hour_unless_a_pot_drives_it() {
    each_layout(|trial, work| {
        for step in work.steps.iter().filter(|step| step.needs.contains_key("hands")) {
            let driven = step.needs.contains_key("burner") || step.needs.contains_key("blender");
            assert!(step.minutes <= 60 || driven, "{}: {} {}", trial.name(), step.minutes, step.title);
        }
    });
}

#[test]
fn work_asks_for_nothing_that_no_kitchen_has() {
    const KNOWN: [&str; 13] = [
        "hands",
        "careful-hands",
        "eyes",
        "careful-eyes",
        "burner",
        "strong-burner",
        "kettle",
        "oven",
        "processor",
        "blender",
        "sink",
        "jelly-bag",
        "canner-ours",
    ];
    each_layout(|trial, work| {
        let needed = work.steps.iter().flat_map(|step| step.needs.keys());
        for resource in needed.chain(work.holds.iter().map(|hold| &hold.resource)) {
            assert!(KNOWN.contains(&resource.as_str()), "{}: {resource}", trial.name());
        }
        let steps: BTreeSet<&str> = work.steps.iter().map(|step| step.id.as_str()).collect();
        assert_eq!(steps.len(), work.steps.len(), "{}: step ids are unique", trial.name());
        for hold in &work.holds {
            assert!(steps.contains(hold.from.as_str()) && steps.contains(hold.to.as_str()), "{hold:?}");
        }
    });
}

#[test]
fn canned_frozen_dried_and_fermented_food_is_different_work() {
    let sets = ["peaches_halved", "frozen_peaches_sugar", "dried_tomatoes", "sauerkraut"].map(verbs_of);
    for (at, set) in sets.iter().enumerate() {
        assert!(sets[at + 1..].iter().all(|other| set != other), "{set:?}");
    }
    assert!(sets[0].contains("process") && sets[1..].iter().all(|set| !set.contains("process")));
}

#[test]
fn what_takes_days_is_told_for_later() {
    for (id, word) in [
        ("dried_apples", "dry slices"),
        ("dried_onions", "dry slices"),
        ("sauerkraut", "ferment cabbage: look"),
        ("kimchi_napa", "refrigerate when sour enough"),
        ("frozen_corn", "freeze"),
        ("peaches_halved", "check seals"),
    ] {
        let trial = TRIALS.iter().find(|trial| trial.formula.id.as_str() == id).expect("it is on file");
        let work = trial.work.as_ref().expect("it fits one day");
        assert!(work.later.iter().any(|later| later.what.contains(word)), "{id}: {:?}", work.later);
        assert!(work.later.iter().all(|later| later.minutes.0 >= 60 && later.minutes.0 <= later.minutes.1));
    }
}

#[test]
fn juice_drips_for_hours_and_is_not_timed_by_hands() {
    each_layout(|trial, work| {
        for step in work.steps.iter().filter(|step| step.title.starts_with("drip through a jelly bag")) {
            assert!(step.minutes >= 120 && !step.needs.contains_key("hands"), "{}", trial.name());
        }
    });
}

/// A night's soak is the evening's work, and what is short of a night is not called one.
#[test]
fn only_long_rests_are_overnight() {
    each_layout(|trial, work| {
        for line in &work.evening {
            let hours = line.strip_suffix(" h, overnight").and_then(|line| line.rsplit(' ').next());
            let long_enough = hours.is_none_or(|hours| hours.parse::<u32>().is_ok_and(|hours| hours >= 5));
            assert!(long_enough, "{}: {line}", trial.name());
        }
    });
}
