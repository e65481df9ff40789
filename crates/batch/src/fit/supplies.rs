//! What a fit needs beside its produce, what of it is missing, and how it is sold.
//!
//! Shop sizes are ours, as a North American shop stocks them; they decide what to write on the list, never an amount.

use std::collections::BTreeMap;

use almanac::{JarSize, Part};
use measure::{Mass, Volume};
use serde::Serialize;

use super::answer::{Fit, FittedIngredient};
use super::measurable::Measure;

/// A spare lid for every dozen; ours.
const LIDS_PER_SPARE: u32 = 12;

/// A supply by the name under which it is bought.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case", tag = "kind", content = "name")]
pub enum Supply {
    /// White vinegar of 5 percent.
    WhiteVinegar,
    /// Cider vinegar of 5 percent.
    CiderVinegar,
    /// Wine vinegar of 5 percent or more.
    WineVinegar,
    /// Bottled lemon juice; never fresh.
    BottledLemonJuice,
    /// White sugar.
    Sugar,
    /// Brown sugar.
    BrownSugar,
    /// Honey.
    Honey,
    /// Canning or pickling salt.
    CanningSalt,
    /// Powdered pectin, the regular kind.
    PowderedPectin,
    /// Liquid pectin.
    LiquidPectin,
    /// Pickling lime.
    PicklingLime,
    /// Oil.
    Oil,
    /// Ascorbic acid.
    AscorbicAcid,
    /// Flat lids, by the jar they close.
    Lids(String),
    /// Freezer bags or boxes of a quart.
    QuartBags,
    /// Produce that was not named as there.
    Produce(String),
    /// A spice or anything else, by its name in the formula.
    Other(String),
}

/// How much of a supply is needed, in whichever measures are known.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SupplyAmount {
    /// By volume.
    pub volume: Option<Volume>,
    /// By weight.
    pub mass: Option<Mass>,
    /// By number.
    pub count: Option<f64>,
}

/// One supply that a fit needs.
#[derive(Debug, Clone, PartialEq)]
pub struct SupplyNeed {
    /// What.
    pub what: Supply,
    /// How much of it.
    pub amount: SupplyAmount,
    /// Every line that asks for it is optional.
    pub optional: bool,
}

/// What to buy.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ShopLine {
    /// What.
    pub what: Supply,
    /// How many packages.
    pub packages: u32,
    /// What one package is.
    pub package: &'static str,
}

/// What there is of supplies.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stock {
    /// By supply.
    pub held: BTreeMap<Supply, SupplyAmount>,
}

impl SupplyAmount {
    fn add(&mut self, other: Self) {
        self.volume = sum(self.volume, other.volume);
        self.mass = sum(self.mass, other.mass);
        self.count = match (self.count, other.count) {
            (Some(one), Some(other)) => Some(one + other),
            (one, other) => one.or(other),
        };
    }
}

fn sum<T: std::ops::Add<Output = T>>(one: Option<T>, other: Option<T>) -> Option<T> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one + other),
        (one, other) => one.or(other),
    }
}

/// Everything the batches need beside what was named as there, lids and bags among it.
#[must_use]
pub fn needs(fit: &Fit) -> Vec<SupplyNeed> {
    let mut needs: BTreeMap<Supply, (SupplyAmount, bool)> = BTreeMap::new();
    let mut need = |what: Supply, amount: SupplyAmount, optional: bool| {
        let entry = needs.entry(what).or_insert((SupplyAmount::default(), true));
        entry.0.add(amount);
        entry.1 &= optional;
    };
    for batch in &fit.batches {
        for line in &batch.ingredients {
            let held = fit.question.have.iter().any(|have| have.index == line.index);
            if let Some((what, amount)) = (!held).then(|| supply_of(line)).flatten() {
                need(what, amount, line.optional);
            }
        }
        if let Some(bags) = batch.bags {
            need(
                Supply::QuartBags,
                SupplyAmount { count: Some(f64::from(bags.high)), ..Default::default() },
                false,
            );
        }
    }
    for (size, jars) in jars_by_size(fit) {
        let lids = jars + jars.div_ceil(LIDS_PER_SPARE);
        let amount = SupplyAmount { count: Some(f64::from(lids)), ..Default::default() };
        need(Supply::Lids(size.to_string()), amount, false);
    }
    needs.into_iter().map(|(what, (amount, optional))| SupplyNeed { what, amount, optional }).collect()
}

/// The jars to make ready, by size: the most of each batch.
fn jars_by_size(fit: &Fit) -> BTreeMap<JarSize, u32> {
    let mut jars = BTreeMap::new();
    for count in fit.batches.iter().flat_map(|batch| &batch.jars) {
        *jars.entry(count.size).or_insert(0) += count.high;
    }
    jars.retain(|_, number| *number > 0);
    jars
}

fn supply_of(line: &FittedIngredient) -> Option<(Supply, SupplyAmount)> {
    let measured = line.measured.filter(|_| line.per.is_none());
    let what = name_supply(line)?;
    let counted = match measured.map(|amount| amount.unit.measure()) {
        Some(Measure::Counted(_)) => measured.map(|amount| amount.value.to_f64()),
        _ => None,
    };
    // Three ounces are one pouch, and a box of powder holds an ounce and three quarters.
    let pectin = measured.and_then(|amount| amount.mass()).map(|mass| match what {
        Supply::LiquidPectin => mass.as_ounces() / 3.0,
        _ => mass.as_ounces() / 1.75,
    });
    let count = if matches!(what, Supply::LiquidPectin | Supply::PowderedPectin) {
        counted.or(pectin)
    } else {
        counted
    };
    let mass = if line.part == Part::Produce || line.part == Part::LowAcid {
        line.takes.or(line.weight)
    } else {
        line.weight
    };
    Some((what, SupplyAmount { volume: measured.and_then(|amount| amount.volume()), mass, count }))
}

/// The name under which a line is bought; `None` for water, ice and what comes from the tap.
fn name_supply(line: &FittedIngredient) -> Option<Supply> {
    let name = line.ingredient.to_lowercase();
    let has = |word: &str| name.contains(word);
    Some(match line.part {
        _ if has("lemon") && has("juice") => Supply::BottledLemonJuice,
        _ if has("vinegar") && has("wine") => Supply::WineVinegar,
        _ if has("vinegar") && has("cider") => Supply::CiderVinegar,
        _ if has("vinegar") => Supply::WhiteVinegar,
        _ if has("ascorbic") => Supply::AscorbicAcid,
        _ if has("lime") && has("pickling") => Supply::PicklingLime,
        Part::Sugar if has("brown") => Supply::BrownSugar,
        Part::Sugar if has("honey") && !has("sugar") => Supply::Honey,
        Part::Sugar => Supply::Sugar,
        Part::Salt => Supply::CanningSalt,
        Part::Pectin if has("liquid") => Supply::LiquidPectin,
        Part::Pectin => Supply::PowderedPectin,
        Part::Oil if has("oil") => Supply::Oil,
        Part::Liquid if has("water") => return None,
        Part::Other if has("ice") => return None,
        Part::Produce | Part::LowAcid => Supply::Produce(line.ingredient.clone()),
        Part::Acid | Part::Liquid | Part::Spice | Part::Oil | Part::Other => {
            Supply::Other(line.ingredient.clone())
        }
    })
}

/// What is needed and not there. A supply held in another measure than it is needed in counts as not there.
#[must_use]
pub fn missing(needs: &[SupplyNeed], stock: &Stock) -> Vec<SupplyNeed> {
    needs
        .iter()
        .filter_map(|need| {
            let held = stock.held.get(&need.what).copied().unwrap_or_default();
            let amount = SupplyAmount {
                volume: need
                    .amount
                    .volume
                    .map(|wanted| (wanted - held.volume.unwrap_or_default()).max(Volume::ZERO)),
                mass: need.amount.mass.map(|wanted| (wanted - held.mass.unwrap_or_default()).max(Mass::ZERO)),
                count: need.amount.count.map(|wanted| (wanted - held.count.unwrap_or(0.0)).max(0.0)),
            };
            // Enough in one measure is enough.
            let enough = (held.volume.is_some() && amount.volume == Some(Volume::ZERO))
                || (held.mass.is_some() && amount.mass == Some(Mass::ZERO))
                || (held.count.is_some() && amount.count == Some(0.0));
            (!enough).then(|| SupplyNeed { what: need.what.clone(), amount, optional: need.optional })
        })
        .collect()
}

/// The packages that hold a need, as a shop sells them: the one that leaves least over, then the fewest of them.
/// Produce and what nobody sells by the package gives `None`.
#[must_use]
pub fn shop_units(need: &SupplyNeed) -> Option<ShopLine> {
    let line = |packages: f64, package| {
        // Never overflows: a float is cut to the range when it is cast.
        let packages = (libm::ceil(packages - 1e-9) as u32).max(1);
        Some(ShopLine { what: need.what.clone(), packages, package })
    };
    let by_volume = |sizes: &[(Volume, &'static str)]| {
        let wanted = need.amount.volume?;
        let fits = sizes.iter().find(|(size, _)| *size >= wanted).or(sizes.last())?;
        line(wanted.ratio_to(fits.0), fits.1)
    };
    let by_mass = |sizes: &[(Mass, &'static str)]| {
        let wanted = need.amount.mass?;
        let fits = sizes.iter().find(|(size, _)| *size >= wanted).or(sizes.last())?;
        line(wanted.ratio_to(fits.0), fits.1)
    };
    match &need.what {
        Supply::WhiteVinegar | Supply::CiderVinegar | Supply::WineVinegar => by_volume(&[
            (Volume::quarts(1.0), "bottle of 1 quart"),
            (Volume::gallons(0.5), "bottle of half a gallon"),
            (Volume::gallons(1.0), "jug of 1 gallon"),
        ]),
        Supply::BottledLemonJuice => by_volume(&[
            (Volume::fluid_ounces(15.0), "bottle of 15 fl oz"),
            (Volume::quarts(1.0), "bottle of 32 fl oz"),
        ]),
        Supply::Oil => by_volume(&[
            (Volume::fluid_ounces(16.0), "bottle of 16 fl oz"),
            (Volume::quarts(1.0), "bottle of 1 quart"),
        ]),
        Supply::Sugar => by_mass(&[
            (Mass::kilograms(1.0), "bag of 1 kg"),
            (Mass::pounds(4.0), "bag of 4 lb"),
            (Mass::pounds(10.0), "bag of 10 lb"),
        ]),
        Supply::BrownSugar => by_mass(&[(Mass::pounds(2.0), "bag of 2 lb")]),
        Supply::Honey => by_mass(&[(Mass::pounds(1.0), "jar of 1 lb")]),
        Supply::CanningSalt => {
            by_mass(&[(Mass::pounds(3.0), "box of 3 lb"), (Mass::pounds(4.0), "box of 4 lb")])
        }
        Supply::PicklingLime => by_mass(&[(Mass::pounds(1.0), "bag of 1 lb")]),
        Supply::PowderedPectin => line(need.amount.count?, "box of 1 3/4 oz"),
        Supply::LiquidPectin => line(need.amount.count?, "pouch of 3 oz"),
        Supply::AscorbicAcid => line(1.0, "jar"),
        Supply::Lids(_) => line(need.amount.count? / f64::from(LIDS_PER_SPARE), "box of 12 lids"),
        Supply::QuartBags => line(need.amount.count? / 20.0, "box of 20 bags"),
        Supply::Other(_) => {
            by_mass(&[(Mass::ounces(2.0), "jar of 2 oz")]).or_else(|| line(1.0, "jar or packet"))
        }
        Supply::Produce(_) => None,
    }
}
