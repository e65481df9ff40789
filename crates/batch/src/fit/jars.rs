//! Jars: which sizes may be filled, how many to expect, and how many go into the canner at once.

use almanac::{Almanac, CannerKind, JarSize, Pack, ProcessQuestion, ProductId};
use measure::{Altitude, Fraction, Volume};

use super::answer::{JarCount, Load};
use super::question::CannerLoad;

/// How far a yield may miss the printed one either way where one number is printed and no range: ours, until a
/// household's own records replace it.
const YIELD_SPREAD: f64 = 0.05;
/// Slack for numbers that came through floating point: a millionth of a jar.
const HAIR: f64 = 1e-6;

/// What a formula is canned as.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct CannedAs {
    pub(crate) product: ProductId,
    pub(crate) packs: Vec<Pack>,
}

/// What one printed batch gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Yielded {
    pub(crate) low: Volume,
    pub(crate) high: Volume,
}

/// The sizes to fill and what goes in at once.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct JarPlan {
    /// In the order wished; the first is filled, the second takes what does not fill one of the first.
    pub(crate) sizes: Vec<SizeHeld>,
    pub(crate) canner: Option<String>,
    /// No canner was named and the usual load was taken.
    pub(crate) usual_load: bool,
}

/// A size and how many of it the canner holds; `None` where nothing is canned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct SizeHeld {
    pub(crate) size: JarSize,
    pub(crate) holds: Option<u32>,
}

/// Whether the process tables serve a food in a jar: the same look-up a clearance makes.
///
/// Without an altitude the lowest band speaks, without a canner any kind the food is printed for.
pub(crate) fn is_jar_permitted(
    almanac: &Almanac,
    canned: &CannedAs,
    jar: JarSize,
    canner: Option<CannerKind>,
    altitude: Option<Altitude>,
) -> bool {
    let kinds: Vec<CannerKind> = canner.map_or_else(|| CannerKind::ALL.to_vec(), |kind| vec![kind]);
    kinds.into_iter().any(|kind| !minutes_of(almanac, canned, jar, kind, altitude).is_empty())
}

/// Whether two sizes may stand in one load: every line printed for the one is printed for the other.
pub(crate) fn may_share_a_load(
    almanac: &Almanac,
    canned: &CannedAs,
    (one, other): (JarSize, JarSize),
    canner: Option<CannerKind>,
    altitude: Option<Altitude>,
) -> bool {
    /// A height in each band of the process tables, in feet.
    const ONE_OF_EACH_BAND: [u32; 9] = [0, 1_001, 2_001, 3_001, 4_001, 6_001, 7_001, 8_001, 9_001];
    let kinds: Vec<CannerKind> = canner.map_or_else(|| CannerKind::ALL.to_vec(), |kind| vec![kind]);
    let heights: Vec<Altitude> =
        altitude.map_or_else(|| ONE_OF_EACH_BAND.map(Altitude::feet).to_vec(), |altitude| vec![altitude]);
    kinds.iter().all(|&kind| {
        heights.iter().all(|&height| {
            minutes_of(almanac, canned, one, kind, Some(height))
                == minutes_of(almanac, canned, other, kind, Some(height))
        })
    })
}

/// Every line served for a jar: pack, minutes, pounds of pressure in tenths.
fn minutes_of(
    almanac: &Almanac,
    canned: &CannedAs,
    jar: JarSize,
    canner: CannerKind,
    altitude: Option<Altitude>,
) -> Vec<(Pack, u32, Option<u32>)> {
    let altitude = altitude.unwrap_or(Altitude::feet(0));
    let mut lines = Vec::new();
    for &pack in &canned.packs {
        let question = ProcessQuestion { product: canned.product.clone(), pack, jar, canner, altitude };
        for process in almanac.find_processes(&question).unwrap_or_default() {
            // Never overflows: printed pressures are below 100 psi.
            let tenths = process.pressure().map(|pressure| libm::round(pressure.as_psi() * 10.0) as u32);
            lines.push((pack, process.minutes().0, tenths));
        }
    }
    lines
}

/// How many jars of a size go in at once: as the household says, or the usual load.
///
/// A size that is not named goes in as the next larger that is.
pub(crate) fn load_of(
    almanac: &Almanac,
    size: JarSize,
    canner: Option<&CannerLoad>,
    pressure: bool,
) -> Option<u32> {
    let larger = JarSize::ALL.iter().copied().filter(|other| *other >= size);
    match canner {
        Some(canner) => {
            larger.filter_map(|size| canner.holds.get(&size).copied()).next().filter(|&holds| holds > 0)
        }
        None => larger
            .filter_map(|size| almanac.jar(size))
            .find_map(|jar| if pressure { jar.pressure_load } else { jar.boiling_water_load })
            .map(|load| load.high),
    }
}

impl JarPlan {
    /// The largest share of a printed batch whose jars go into the canner at once, counting the most that is printed.
    pub(crate) fn largest_share(&self, yielded: Yielded) -> Fraction {
        let Some(SizeHeld { size, holds: Some(holds) }) = self.sizes.first().copied() else {
            return Fraction::ONE;
        };
        let room = ounces(size.volume()).checked_mul(Fraction::whole(holds));
        let share = room.and_then(|room| room.checked_div(ounces(yielded.high)));
        share.map_or(Fraction::ONE, |share| share.min(Fraction::ONE))
    }

    /// Jars to expect of a share of the printed batch.
    pub(crate) fn expect(&self, yielded: Yielded, share: f64) -> Vec<JarCount> {
        let Some(first) = self.sizes.first().copied() else { return Vec::new() };
        let filled = |volume: Volume| volume.ratio_to(first.size.volume()) * share;
        let spread = if yielded.low == yielded.high { YIELD_SPREAD } else { 0.0 };
        let middle = f64::midpoint(filled(yielded.low), filled(yielded.high));
        let (low, high) = (filled(yielded.low) * (1.0 - spread), filled(yielded.high) * (1.0 + spread));
        let cap = |jars: u32| first.holds.map_or(jars, |holds| jars.min(holds));
        let Some(second) = self.sizes.get(1).copied() else {
            let likely = cap(to_jars(libm::floor(middle + 0.5 + HAIR)));
            let low = to_jars(libm::floor(low + HAIR)).min(likely);
            let high = cap(to_jars(libm::floor(high + 0.5 + HAIR))).max(likely);
            return vec![JarCount { size: first.size, low, likely, high }];
        };
        let whole = cap(to_jars(libm::floor(middle + HAIR)));
        let rest_of = |filled: f64| {
            let rest =
                (filled - f64::from(whole)).max(0.0) * first.size.volume().ratio_to(second.size.volume());
            to_jars(libm::floor(rest + 0.5 + HAIR))
        };
        let room = second.holds.zip(first.holds).map(|(of_second, of_first)| {
            to_jars(libm::floor((1.0 - f64::from(whole) / f64::from(of_first)) * f64::from(of_second) + HAIR))
        });
        let cap_rest = |jars: u32| room.map_or(jars, |room| jars.min(room));
        let fewest = to_jars(libm::floor(low + HAIR)).min(whole);
        let rest = cap_rest(rest_of(middle));
        vec![
            JarCount { size: first.size, low: fewest, likely: whole, high: whole },
            JarCount {
                size: second.size,
                low: rest.min(rest_of(low)),
                likely: rest,
                high: cap_rest(rest_of(high)).max(rest),
            },
        ]
    }

    /// The loads of a batch: each of its jars at once.
    pub(crate) fn loads(&self, jars: &[JarCount]) -> Vec<Load> {
        let Some(canner) = &self.canner else { return Vec::new() };
        let held = |size| self.sizes.iter().find(|held| held.size == size).and_then(|held| held.holds);
        jars.iter()
            .filter(|count| count.likely > 0)
            .filter_map(|count| {
                let holds = held(count.size)?;
                Some(Load { canner: canner.clone(), size: count.size, jars: count.likely, holds })
            })
            .collect()
    }
}

/// Whole fluid ounces, exact: every jar size is printed in them.
pub(crate) fn ounces(volume: Volume) -> Fraction {
    // Half an ounce is far more than floating point loses; a jar or yield is below a million ounces.
    Fraction::whole(libm::round(volume.as_fluid_ounces()) as u32)
}

fn to_jars(count: f64) -> u32 {
    // Never overflows: a float is cut to the range when it is cast, and no batch fills a billion jars.
    count.max(0.0) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plan(sizes: &[(JarSize, u32)]) -> JarPlan {
        let sizes = sizes.iter().map(|&(size, holds)| SizeHeld { size, holds: Some(holds) }).collect();
        JarPlan { sizes, canner: Some("big".to_owned()), usual_load: false }
    }

    fn pints(low: f64, high: f64) -> Yielded {
        Yielded { low: Volume::pints(low), high: Volume::pints(high) }
    }

    #[test]
    fn a_batch_is_no_more_than_the_canner_takes() {
        let share = plan(&[(JarSize::Pint, 9)]).largest_share(pints(16.0, 18.0));
        assert_eq!(share, Fraction::HALF);
        assert_eq!(plan(&[(JarSize::Pint, 9)]).largest_share(pints(8.0, 8.0)), Fraction::ONE);
        assert_eq!(
            plan(&[(JarSize::Quart, 4)]).largest_share(pints(14.0, 14.0)),
            Fraction::new(4, 7).unwrap()
        );
    }

    #[test]
    fn jars_come_as_low_likely_and_high() {
        let expect = |share| plan(&[(JarSize::Pint, 9)]).expect(pints(7.0, 9.0), share);
        assert_eq!(expect(1.0), vec![JarCount { size: JarSize::Pint, low: 7, likely: 8, high: 9 }]);
        assert_eq!(expect(0.5), vec![JarCount { size: JarSize::Pint, low: 3, likely: 4, high: 5 }]);
    }

    #[test]
    fn what_fills_no_pint_goes_into_a_half_pint() {
        let mixed = plan(&[(JarSize::Pint, 9), (JarSize::HalfPint, 9)]).expect(pints(9.0, 9.0), 0.5);
        assert_eq!(mixed[0].likely, 4);
        assert_eq!(mixed[1], JarCount { size: JarSize::HalfPint, low: 1, likely: 1, high: 1 });
    }
}
