//! How many batches, and how large: whole ones of what is made whole, full ones and then the rest of what goes by one
//! factor, jar by jar of plain packs, all at once of what is frozen or dried.
//!
//! Full batches come first and a short one last, rather than equal ones: the full batch is the printed one, with
//! nothing to scale wrong, and only the last is worked out. A rest that fills no jar is left over.

use almanac::{Almanac, Formula, JarSize, ScaleRule};
use measure::{Fraction, Mass};

use super::answer::{BagCount, Because, BecauseCode, JarCount};
use super::factor::{Chosen, choose_factor};
use super::jars::{JarPlan, Yielded, ounces};
use super::line::{Balance, Held, Line, PrintedAmount};
use super::weights::{self, BatchWeight, Scales};

/// A scale and a rounded pound are off by so much; ours. What lies half a percent under one batch is one batch, and
/// what lies so much under the last jar fills it.
const WEIGHING_SLACK: f64 = 0.005;
/// More batches than any kitchen makes of one lot; what is beyond them is left over.
const MOST_BATCHES: u32 = 200;
/// The smallest share of a formula that is worth making where no jars are counted; ours.
const SMALLEST_SHARE: f64 = 0.125;
/// Slack for numbers that came through floating point.
const HAIR: f64 = 1e-6;

/// Everything the number and size of batches depends on.
#[derive(Debug, Clone)]
pub(crate) struct Lot<'a, 't> {
    pub(crate) almanac: &'a Almanac,
    pub(crate) scales: &'a Scales<'t>,
    pub(crate) formula: &'a Formula,
    pub(crate) lines: &'a [Line],
    pub(crate) balance: Balance,
    pub(crate) held: &'a [Held],
    /// What a printed batch of each held line weighs, as bought; `None` where no amount is printed.
    pub(crate) of_batch: &'a [Option<BatchWeight>],
    pub(crate) plan: &'a JarPlan,
    pub(crate) yielded: Option<Yielded>,
    pub(crate) most: Option<u32>,
    /// Salt is weighed against the produce, so every size of batch will do.
    pub(crate) salted_by_weight: bool,
}

/// One batch before its amounts are worked out.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct PlannedBatch {
    pub(crate) factor: Fraction,
    pub(crate) by_weight: Vec<Held>,
    pub(crate) jars: Vec<JarCount>,
    pub(crate) bags: Option<BagCount>,
    /// Jars that are likely to be full and find no room in the load.
    pub(crate) spare: u32,
    pub(crate) stepped_down_percent: f64,
}

/// The batches of a lot, or why there is none.
pub(crate) fn plan_batches(lot: &Lot<'_, '_>) -> Result<Vec<PlannedBatch>, Because> {
    if lot.most == Some(0) {
        let text = "no batch was asked for".to_owned();
        return Err(Because { code: BecauseCode::NoBatchWanted, text });
    }
    match lot.formula.scale {
        ScaleRule::SingleBatch => whole_batches(lot),
        ScaleRule::ByJar => by_jar(lot),
        ScaleRule::Free => Ok(vec![all_at_once(lot)]),
        ScaleRule::OneFactor if lot.of_batch.iter().all(Option::is_none) => Ok(vec![all_at_once(lot)]),
        ScaleRule::OneFactor => by_one_factor(lot),
    }
}

/// How many printed batches the scarcest held ingredient makes, and which it is.
pub(crate) fn scarcest(lot: &Lot<'_, '_>) -> Option<(f64, usize)> {
    let (share, index) = scarcest_to_the_gram(lot)?;
    let is_one = (1.0 - WEIGHING_SLACK..1.0).contains(&share);
    Some((if is_one { 1.0 } else { share }, index))
}

fn scarcest_to_the_gram(lot: &Lot<'_, '_>) -> Option<(f64, usize)> {
    let shares =
        lot.held.iter().zip(lot.of_batch).filter_map(|(held, of_batch)| {
            Some((held.mass.ratio_to(of_batch.as_ref()?.enough()), held.index))
        });
    shares.min_by(|one, other| one.0.total_cmp(&other.0))
}

fn most_of(lot: &Lot<'_, '_>) -> u32 {
    lot.most.map_or(MOST_BATCHES, |most| most.min(MOST_BATCHES))
}

fn whole_batches(lot: &Lot<'_, '_>) -> Result<Vec<PlannedBatch>, Because> {
    let Some((share, index)) = scarcest(lot) else { return Ok(vec![all_at_once(lot)]) };
    // Never overflows: cut to the most batches before the cast.
    let number = (share + HAIR).min(f64::from(most_of(lot))) as u32;
    if number == 0 {
        return Err(too_little(lot, index, 1.0, BecauseCode::WholeBatchOnly));
    }
    let jars = lot.yielded.map_or_else(Vec::new, |yielded| lot.plan.expect(yielded, 1.0));
    let batch = PlannedBatch {
        factor: Fraction::ONE,
        by_weight: Vec::new(),
        spare: spare_jars(lot, 1.0),
        jars,
        bags: None,
        stepped_down_percent: 0.0,
    };
    Ok(vec![batch; number as usize])
}

fn by_one_factor(lot: &Lot<'_, '_>) -> Result<Vec<PlannedBatch>, Because> {
    let Some((share, scarce)) = scarcest(lot) else { return Ok(vec![all_at_once(lot)]) };
    let largest = largest_batch(lot);
    let mut rest = share;
    let mut batches: Vec<PlannedBatch> = Vec::new();
    let mut remaining: Vec<Held> = lot.held.to_vec();
    let full = choose(lot, largest.to_f64());
    while (batches.len() as u32) < most_of(lot) {
        let is_full = rest + HAIR >= largest.to_f64();
        let chosen = if is_full { full } else { choose(lot, rest) };
        let Some(batch) = chosen.and_then(|chosen| one_batch(lot, chosen, rest, &remaining)) else { break };
        rest -= batch.factor.to_f64();
        for held in &mut remaining {
            held.mass = (held.mass - used_of(lot, &batch, held.index)).max(Mass::ZERO);
        }
        batches.push(batch);
        if !is_full {
            break;
        }
    }
    if batches.is_empty() {
        let missing_for = smallest_share(lot).max(share * (1.0 + WEIGHING_SLACK));
        return Err(too_little(lot, scarce, missing_for, BecauseCode::TooLittle));
    }
    Ok(batches)
}

/// The largest batch: the printed one, or what the canner takes at once.
fn largest_batch(lot: &Lot<'_, '_>) -> Fraction {
    lot.yielded.map_or(Fraction::ONE, |yielded| lot.plan.largest_share(yielded))
}

/// The largest share of a batch not above `limit` that can be made.
fn choose(lot: &Lot<'_, '_>, limit: f64) -> Option<Chosen> {
    if lot.salted_by_weight {
        // Never overflows: the limit is at most one batch.
        let factor = Fraction::new((limit * 1000.0 + HAIR) as i64, 1000)?;
        return (factor > Fraction::ZERO).then_some(Chosen { factor, stepped_down_percent: 0.0 });
    }
    choose_factor(lot.lines, lot.balance, limit)
}

fn one_batch(lot: &Lot<'_, '_>, chosen: Chosen, rest: f64, remaining: &[Held]) -> Option<PlannedBatch> {
    let Chosen { factor, stepped_down_percent } = chosen;
    let share = factor.to_f64();
    let jars = lot.yielded.map_or_else(Vec::new, |yielded| lot.plan.expect(yielded, share));
    let fills_none =
        if jars.is_empty() { share < SMALLEST_SHARE } else { jars.iter().all(|count| count.likely == 0) };
    if fills_none {
        return None;
    }
    // The last batch may use up what is there; a full one leaves enough for those after it.
    let largest = largest_batch(lot).to_f64();
    let after = if rest > largest + HAIR { (rest - share).max(0.0) } else { 0.0 };
    let by_weight = remaining.iter().filter_map(|held| in_printed_range(lot, held, share, after)).collect();
    Some(PlannedBatch { factor, by_weight, jars, bags: None, spare: 0, stepped_down_percent })
}

/// What to use of an ingredient with a printed range of weight, or of one the salt is weighed against: as much as
/// there is, within the range.
fn in_printed_range(lot: &Lot<'_, '_>, held: &Held, share: f64, after: f64) -> Option<Held> {
    let of_batch = of_batch_at(lot, held.index)?;
    if !lot.salted_by_weight && !of_batch.is_weighed_range() {
        return None;
    }
    let most = if lot.salted_by_weight { of_batch.high * (share + 0.001) } else { of_batch.high * share };
    let spared = held.mass - of_batch.low * after;
    let mass = held.mass.min(most).min(spared.max(of_batch.low * share));
    Some(Held { index: held.index, mass })
}

fn of_batch_at<'a>(lot: &Lot<'a, '_>, index: usize) -> Option<&'a BatchWeight> {
    let at = lot.held.iter().position(|held| held.index == index)?;
    lot.of_batch.get(at)?.as_ref()
}

fn used_of(lot: &Lot<'_, '_>, batch: &PlannedBatch, index: usize) -> Mass {
    if let Some(held) = batch.by_weight.iter().find(|held| held.index == index) {
        return held.mass;
    }
    of_batch_at(lot, index).map_or(Mass::ZERO, |of_batch| of_batch.enough() * batch.factor.to_f64())
}

/// The share that fills one jar of the size asked for, or the smallest worth making.
fn smallest_share(lot: &Lot<'_, '_>) -> f64 {
    let jar = lot.plan.sizes.iter().map(|held| held.size).min();
    match (lot.yielded, jar) {
        (Some(yielded), Some(jar)) => jar.volume().ratio_to(yielded.low),
        _ => SMALLEST_SHARE,
    }
}

fn spare_jars(lot: &Lot<'_, '_>, share: f64) -> u32 {
    let (Some(yielded), Some(first)) = (lot.yielded, lot.plan.sizes.first()) else { return 0 };
    let Some(holds) = first.holds else { return 0 };
    let filled =
        f64::midpoint(yielded.low.as_cups(), yielded.high.as_cups()) / first.size.volume().as_cups() * share;
    // Never overflows: a printed yield is far below a million jars.
    (libm::floor(filled + 0.5 + HAIR) as u32).saturating_sub(holds)
}

fn too_little(lot: &Lot<'_, '_>, index: usize, share: f64, code: BecauseCode) -> Because {
    let held = lot.held.iter().find(|held| held.index == index);
    let (Some(held), Some(of_batch)) = (held, of_batch_at(lot, index)) else {
        return Because { code, text: "there is too little for one batch".to_owned() };
    };
    let name = lot.lines.get(index).map_or("", |line| line.name.as_str());
    let wanted = of_batch.enough() * share;
    let missing = (wanted - held.mass).max(Mass::grams(1.0));
    let what = match code {
        BecauseCode::WholeBatchOnly => "one whole batch, and it is made whole or not at all".to_owned(),
        _ => "the smallest batch".to_owned(),
    };
    let text = format!(
        "{} g of {name} are too little for {what}: about {} g are needed, {} g are missing",
        whole_grams(held.mass),
        whole_grams(wanted),
        whole_grams(missing)
    );
    Because { code, text }
}

pub(crate) fn whole_grams(mass: Mass) -> u64 {
    // Never overflows: a float is cut to the range when it is cast.
    libm::ceil(mass.as_grams() - HAIR) as u64
}

/// Frozen, dried, or without printed amounts: all there is, in one go.
fn all_at_once(lot: &Lot<'_, '_>) -> PlannedBatch {
    let share = scarcest(lot).map(|(share, _)| share);
    // Never overflows: a float is cut to the range when it is cast, and the bounds of a fraction are checked.
    let factor =
        share.and_then(|share| Fraction::new((share * 100.0 + HAIR) as i64, 100)).unwrap_or(Fraction::ONE);
    let factor = if factor == Fraction::ZERO { Fraction::ONE } else { factor };
    let quarts = quarts_of(lot, share);
    let bags = quarts.filter(|_| lot.formula.methods.contains(&almanac::Method::Freeze)).map(|quarts| {
        let whole = |quarts: f64| (libm::ceil(quarts - HAIR) as u32).max(1);
        BagCount { size: "quart", low: whole(quarts * 0.9), likely: whole(quarts), high: whole(quarts * 1.1) }
    });
    let used: Vec<Held> = lot
        .held
        .iter()
        .zip(lot.of_batch)
        .map(|(held, of_batch)| match (share, of_batch) {
            (Some(share), Some(of_batch)) => {
                Held { index: held.index, mass: held.mass.min(of_batch.enough() * share) }
            }
            _ => *held,
        })
        .collect();
    PlannedBatch { factor, by_weight: used, jars: Vec::new(), bags, spare: 0, stepped_down_percent: 0.0 }
}

/// Quarts of frozen produce: as printed, else by the density of the prepared produce.
fn quarts_of(lot: &Lot<'_, '_>, share: Option<f64>) -> Option<f64> {
    if let (Some(share), Some(yielded)) = (share, lot.yielded) {
        return Some(yielded.high.as_quarts() * share);
    }
    let held = lot.held.first()?;
    lot.scales.prepared_volume(lot.lines.get(held.index)?, held.mass).map(|volume| volume.as_quarts())
}

/// Plain packs: so many pounds for each jar, by the heaviest figure that is printed.
fn by_jar(lot: &Lot<'_, '_>) -> Result<Vec<PlannedBatch>, Because> {
    let (Some(yielded), Some(first)) = (lot.yielded, lot.plan.sizes.first().copied()) else {
        return Ok(vec![all_at_once(lot)]);
    };
    let Some(main) = main_held(lot) else { return Ok(vec![all_at_once(lot)]) };
    let Some(printed) = of_batch_at(lot, main.index).map(|of_batch| of_batch.enough()) else {
        return Ok(vec![all_at_once(lot)]);
    };
    let rates = weights::mass_per_ounce_of_jar(lot.almanac, lot.formula, printed, yielded);
    let jar_mass = |size: JarSize| rates.heaviest * size.volume().as_fluid_ounces();
    let at_once = jars_at_once(yielded, first.size, first.holds);
    let others = scarcest_beside(lot, main.index)
        .map_or(f64::INFINITY, |share| share * yielded.high.ratio_to(first.size.volume()));
    let there = main.mass.ratio_to(jar_mass(first.size));
    let there = there + (there * WEIGHING_SLACK).min(10.0 * WEIGHING_SLACK);
    // Never overflows: a float is cut to the range when it is cast.
    let mut jars_left = libm::floor(there.min(others) + HAIR) as u32;
    let mut rest = main.mass;
    let mut batches = Vec::new();
    while (batches.len() as u32) < most_of(lot) {
        let number = jars_left.min(at_once);
        let last = number < at_once;
        let second = lot.plan.sizes.get(1).filter(|_| last && others.is_infinite());
        let after = (rest - jar_mass(first.size) * f64::from(number)).max(Mass::ZERO);
        let more = second.map_or(0, |second| small_jars(after, jar_mass(second.size), (number, at_once)));
        if number + more == 0 {
            break;
        }
        let mut counts = vec![count_jars(first.size, number, at_once, &rates, jar_mass(first.size))];
        let mut room = ounces(first.size.volume()).checked_mul(Fraction::whole(number));
        let mut mass = jar_mass(first.size) * f64::from(number);
        if let Some(second) = second.filter(|_| more > 0) {
            counts.push(JarCount { size: second.size, low: 0, likely: more, high: more });
            mass = mass + jar_mass(second.size) * f64::from(more);
            room = room.and_then(|room| {
                room.checked_add(ounces(second.size.volume()).checked_mul(Fraction::whole(more))?)
            });
        }
        let factor = room.and_then(|room| room.checked_div(ounces(yielded.high))).unwrap_or(Fraction::ONE);
        let used = Held { index: main.index, mass: mass.min(rest) };
        rest = (rest - used.mass).max(Mass::ZERO);
        jars_left -= number;
        batches.push(PlannedBatch {
            factor,
            by_weight: vec![used],
            jars: counts.into_iter().filter(|count| count.high > 0).collect(),
            bags: None,
            spare: 0,
            stepped_down_percent: 0.0,
        });
        if last {
            break;
        }
    }
    if batches.is_empty() {
        let smallest = lot.plan.sizes.iter().map(|held| held.size).min().unwrap_or(first.size);
        let name = lot.lines.get(main.index).map_or("", |line| line.name.as_str());
        let wanted = jar_mass(smallest);
        let text = format!(
            "{} g of {name} do not fill one {smallest}: about {} g are needed, {} g are missing",
            whole_grams(main.mass),
            whole_grams(wanted),
            whole_grams((wanted - main.mass).max(Mass::grams(1.0)))
        );
        return Err(Because { code: BecauseCode::TooLittle, text });
    }
    Ok(batches)
}

/// Jars of a batch: no more than the canner takes and no more than the printed batch fills.
fn jars_at_once(yielded: Yielded, size: JarSize, holds: Option<u32>) -> u32 {
    // Never overflows: a printed yield is far below a million jars.
    let printed = (yielded.high.ratio_to(size.volume()) + HAIR) as u32;
    holds.map_or(printed, |holds| holds.min(printed)).max(1)
}

fn small_jars(rest: Mass, jar: Mass, (number, at_once): (u32, u32)) -> u32 {
    // One size down fills at most one jar of the size above, so its place is there.
    let fit = libm::floor(rest.ratio_to(jar) + HAIR) as u32;
    fit.min(at_once - number)
}

fn count_jars(size: JarSize, likely: u32, at_once: u32, rates: &weights::JarRates, jar: Mass) -> JarCount {
    let mass = jar * f64::from(likely);
    let filled = |rate: Mass| mass.ratio_to(rate * size.volume().as_fluid_ounces()) + HAIR;
    JarCount {
        size,
        low: (libm::floor(filled(rates.most_ever)) as u32).min(likely),
        likely,
        high: (libm::floor(filled(rates.least_ever)) as u32).clamp(likely, at_once.max(likely)),
    }
}

/// The produce of a plain pack: the held line that is printed by weight.
fn main_held(lot: &Lot<'_, '_>) -> Option<Held> {
    let weighed = |held: &&Held| {
        lot.lines.get(held.index).is_some_and(|line| {
            matches!(line.amount, PrintedAmount::PerBatch { unit: super::measurable::CookUnit::Lb, .. })
        })
    };
    lot.held.iter().find(weighed).copied()
}

fn scarcest_beside(lot: &Lot<'_, '_>, main: usize) -> Option<f64> {
    lot.held
        .iter()
        .zip(lot.of_batch)
        .filter(|(held, _)| held.index != main)
        .filter_map(|(held, of_batch)| Some(held.mass.ratio_to(of_batch.as_ref()?.enough())))
        .min_by(f64::total_cmp)
}
