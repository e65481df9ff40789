//! What the cupboard holds against what the chosen makes need.

use std::collections::BTreeMap;

use almanac::Formula;
use batch::fit::{Stock, Supply, SupplyAmount, SupplyNeed, missing, needs, shop_units};
use measure::{Amount, Mass, Percent, Volume};

use crate::answer::FetchLine;
use crate::day::{Supplies, Units};
use crate::tell::{Planned, words};

/// The least acidity of vinegar that counts as vinegar for pickling, where the data do not say: none does.
fn strong_enough(planned: &Planned<'_>, strength: Option<Percent>) -> bool {
    let least = planned.almanac.rule("vinegar-strength").and_then(|rule| rule.value?.as_percent());
    match (strength, least) {
        (Some(strength), Some((least, _))) => strength >= least,
        // Vinegar of unknown strength is not used (rule A4), and without the rule nothing says how strong it must be.
        _ => false,
    }
}

/// The cupboard as fitting counts it.
fn stock_of(planned: &Planned<'_>) -> Stock {
    let supplies: &Supplies = &planned.day.supplies;
    let mut held: BTreeMap<Supply, SupplyAmount> = BTreeMap::new();
    for vinegar in supplies.vinegar.iter().filter(|vinegar| strong_enough(planned, vinegar.strength)) {
        let what = if vinegar.kind.contains("cider") {
            Supply::CiderVinegar
        } else if vinegar.kind.contains("wine") {
            Supply::WineVinegar
        } else {
            Supply::WhiteVinegar
        };
        add_volume(&mut held, what, vinegar.amount);
    }
    if let Some(lemon) = supplies.bottled_lemon {
        add_volume(&mut held, Supply::BottledLemonJuice, lemon);
    }
    for (kind, mass) in &supplies.sugar {
        let what = if kind.contains("brown") { Supply::BrownSugar } else { Supply::Sugar };
        add_mass(&mut held, what, *mass);
    }
    for (kind, mass) in &supplies.salt {
        // Flake salts differ by more than half by the spoon; only canning salt is counted on.
        if kind.contains("canning") || kind.contains("pickling") {
            add_mass(&mut held, Supply::CanningSalt, *mass);
        }
    }
    for (kind, packages) in &supplies.pectin {
        let what = if kind.contains("liquid") { Supply::LiquidPectin } else { Supply::PowderedPectin };
        held.entry(what).or_default().count = Some(f64::from(*packages));
    }
    for (name, amount) in &supplies.other {
        let entry = held.entry(Supply::Other(name.clone())).or_default();
        match amount {
            Amount::Mass(mass) => entry.mass = Some(*mass),
            Amount::Volume(volume) => entry.volume = Some(*volume),
            Amount::Count(count) | Amount::Container { number: count, .. } => {
                entry.count = Some(count.to_f64())
            }
        }
    }
    Stock { held }
}

fn add_volume(held: &mut BTreeMap<Supply, SupplyAmount>, what: Supply, volume: Volume) {
    let entry = held.entry(what).or_default();
    entry.volume = Some(entry.volume.unwrap_or_default() + volume);
}

fn add_mass(held: &mut BTreeMap<Supply, SupplyAmount>, what: Supply, mass: Mass) {
    let entry = held.entry(what).or_default();
    entry.mass = Some(entry.mass.unwrap_or_default() + mass);
}

/// A need summed over the makes, with their names.
#[derive(Default)]
struct Summed {
    amount: SupplyAmount,
    makes: Vec<String>,
}

/// What the chosen makes need and the cupboard does not hold, in shop units. Lids, jars and bags are limits of the
/// plan and never missing; produce is told apart.
pub(crate) fn missing_supplies(planned: &Planned<'_>) -> Vec<FetchLine> {
    let mut summed: BTreeMap<Supply, Summed> = BTreeMap::new();
    for (considered, candidate) in planned.chosen_makes() {
        for need in needs(&candidate.fit) {
            let is_limit = matches!(need.what, Supply::Lids(_) | Supply::QuartBags | Supply::Produce(_));
            let is_basket = matches!(&need.what, Supply::Other(name) if is_produce(considered.formula, name));
            if is_limit || is_basket || need.optional {
                continue;
            }
            let entry = summed.entry(need.what).or_default();
            entry.amount = sum(entry.amount, need.amount);
            entry.makes.push(words::name_of(considered.formula));
        }
    }
    let all: Vec<SupplyNeed> = summed
        .iter()
        .map(|(what, need)| SupplyNeed { what: what.clone(), amount: need.amount, optional: false })
        .collect();
    missing(&all, &stock_of(planned))
        .into_iter()
        .map(|need| FetchLine {
            what: supply_words(&need.what),
            short: amount_words(planned.day.units, need.amount),
            shop: shop_words(&need),
            for_makes: summed.get(&need.what).map(|need| need.makes.clone()).unwrap_or_default(),
        })
        .collect()
}

/// Whether a line of a formula is produce, which is told from the baskets.
fn is_produce(formula: &Formula, name: &str) -> bool {
    formula.ingredients.iter().any(|line| *line.name == *name && !line.accepts.is_empty())
}

/// What to buy, in packages; nothing where a shop's package would be a guess.
fn shop_words(need: &SupplyNeed) -> String {
    /// Spices come in small jars; what is used by the cup is bought as one finds it.
    const MOST_OF_A_SPICE: Volume = Volume::cups(0.5);
    let is_no_spice = matches!(need.what, Supply::Other(_))
        && need.amount.volume.is_none_or(|volume| volume > MOST_OF_A_SPICE);
    let Some(line) = shop_units(need).filter(|_| !is_no_spice) else { return String::new() };
    match (line.packages, line.package.split_once(' ')) {
        (1, _) | (_, None) => format!("{} {}", line.packages, line.package),
        (many, Some((kind, size))) => {
            let plural = if kind.ends_with('x') || kind.ends_with("ch") { "es" } else { "s" };
            format!("{many} {kind}{plural} {size}")
        }
    }
}

fn sum(one: SupplyAmount, other: SupplyAmount) -> SupplyAmount {
    SupplyAmount {
        volume: add(one.volume, other.volume),
        mass: add(one.mass, other.mass),
        count: add(one.count, other.count),
    }
}

fn add<T: std::ops::Add<Output = T>>(one: Option<T>, other: Option<T>) -> Option<T> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one + other),
        (one, other) => one.or(other),
    }
}

/// A supply as one asks for it in a shop.
fn supply_words(what: &Supply) -> String {
    match what {
        Supply::WhiteVinegar => "white vinegar, 5 %",
        Supply::CiderVinegar => "cider vinegar, 5 %",
        Supply::WineVinegar => "wine vinegar, 5 % or more",
        Supply::BottledLemonJuice => "bottled lemon juice",
        Supply::Sugar => "sugar",
        Supply::BrownSugar => "brown sugar",
        Supply::Honey => "honey",
        Supply::CanningSalt => "canning salt",
        Supply::PowderedPectin => "powdered pectin",
        Supply::LiquidPectin => "liquid pectin",
        Supply::PicklingLime => "pickling lime",
        Supply::Oil => "oil",
        Supply::AscorbicAcid => "ascorbic acid",
        Supply::Lids(size) => return format!("lids for {size} jars"),
        Supply::QuartBags => "freezer bags, quart",
        Supply::Produce(name) | Supply::Other(name) => return name.clone(),
    }
    .to_owned()
}

/// How much is short, by volume where it is measured so, else by weight or number.
fn amount_words(units: Units, amount: SupplyAmount) -> String {
    let some_mass = amount.mass.filter(|mass| *mass > Mass::ZERO);
    let some_volume = amount.volume.filter(|volume| *volume > Volume::ZERO);
    match (some_volume, some_mass, amount.count) {
        (Some(volume), Some(mass), _) => {
            format!("{} ({})", words::volume(units, volume), words::weight(units, mass))
        }
        (Some(volume), None, _) => words::volume(units, volume),
        (None, Some(mass), _) => words::weight(units, mass),
        (None, None, Some(count)) if count > 0.0 => format!("{count:.0}"),
        (None, None, _) => "some".to_owned(),
    }
}
