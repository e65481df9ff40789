//! What a cook can measure: the marks on cups, spoons and scales, and the way to the next mark up or down.
//!
//! The steps are ours; they follow the measuring cups sold in sets (quarters, thirds, eighths), spoons down to an
//! eighth of a teaspoon and a kitchen scale that shows quarter ounces. Volumes are worked in teaspoons, weights in
//! ounces, both exact.

use measure::{Fraction, Mass, Volume};
use serde::Serialize;

/// The unit an amount is printed or measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum CookUnit {
    /// Teaspoon.
    Tsp,
    /// Tablespoon.
    Tbsp,
    /// US cup.
    Cup,
    /// US liquid pint.
    Pint,
    /// US liquid quart.
    Qt,
    /// US gallon.
    Gal,
    /// Avoirdupois ounce.
    Oz,
    /// Avoirdupois pound.
    Lb,
    /// Gram.
    G,
    /// Pieces, whatever they are: heads, pods, fruits.
    Each,
    /// Clove of garlic.
    Clove,
    /// Stick of cinnamon.
    Stick,
    /// Large egg.
    Large,
    /// Ear of corn.
    Ear,
    /// Bunch of herbs.
    Bunch,
    /// Drop.
    Drop,
    /// Package of powdered pectin.
    Package,
    /// Pouch of liquid pectin.
    Pouch,
}

/// How a unit is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Measure {
    /// By cup or spoon: so many teaspoons in one.
    Spooned(u32),
    /// By scale: so many ounces in one.
    Weighed(u32),
    /// By scale, in grams.
    WeighedMetric,
    /// By number, parted no finer than this.
    Counted(Fraction),
}

/// Which way an amount may move to reach a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Rounding {
    /// Never more than the exact amount.
    NeverUp,
    /// Never less than the exact amount.
    NeverDown,
    /// To the closest mark.
    Nearest,
}

/// An amount with its unit, exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Measured {
    /// How many.
    pub value: Fraction,
    /// Of what.
    pub unit: CookUnit,
}

impl CookUnit {
    /// The unit as it is written after a number.
    #[must_use]
    pub const fn told(self) -> &'static str {
        match self {
            Self::Tsp => "tsp",
            Self::Tbsp => "tbsp",
            Self::Cup => "cup",
            Self::Pint => "pint",
            Self::Qt => "qt",
            Self::Gal => "gal",
            Self::Oz => "oz",
            Self::Lb => "lb",
            Self::G => "g",
            Self::Each => "each",
            Self::Clove => "clove",
            Self::Stick => "stick",
            Self::Large => "large",
            Self::Ear => "ear",
            Self::Bunch => "bunch",
            Self::Drop => "drop",
            Self::Package => "package",
            Self::Pouch => "pouch",
        }
    }

    pub(crate) fn measure(self) -> Measure {
        match self {
            Self::Tsp => Measure::Spooned(1),
            Self::Tbsp => Measure::Spooned(3),
            Self::Cup => Measure::Spooned(48),
            Self::Pint => Measure::Spooned(96),
            Self::Qt => Measure::Spooned(192),
            Self::Gal => Measure::Spooned(768),
            Self::Oz => Measure::Weighed(1),
            Self::Lb => Measure::Weighed(16),
            Self::G => Measure::WeighedMetric,
            Self::Each | Self::Clove | Self::Stick => Measure::Counted(Fraction::HALF),
            Self::Large | Self::Ear | Self::Bunch | Self::Drop | Self::Package | Self::Pouch => {
                Measure::Counted(Fraction::ONE)
            }
        }
    }
}

impl Measured {
    /// The volume, when it is one.
    #[must_use]
    pub fn volume(self) -> Option<Volume> {
        match self.unit.measure() {
            Measure::Spooned(teaspoons) => {
                Some(Volume::teaspoons(self.value.to_f64() * f64::from(teaspoons)))
            }
            Measure::Weighed(_) | Measure::WeighedMetric | Measure::Counted(_) => None,
        }
    }

    /// The mass, when it is one.
    #[must_use]
    pub fn mass(self) -> Option<Mass> {
        match self.unit.measure() {
            Measure::Weighed(ounces) => Some(Mass::ounces(self.value.to_f64() * f64::from(ounces))),
            Measure::WeighedMetric => Some(Mass::grams(self.value.to_f64())),
            Measure::Spooned(_) | Measure::Counted(_) => None,
        }
    }

    /// So many times as much, or so small a share of it; `None` when that leaves the bounds of [`Fraction`].
    pub(crate) fn times(self, factor: Fraction) -> Option<Self> {
        Some(Self { value: self.value.checked_mul(factor)?, unit: self.unit })
    }

    /// The closest amount a cook can measure, moving only the way that is allowed.
    ///
    /// `None` when the amount leaves the bounds of [`Fraction`].
    pub(crate) fn to_mark(self, rounding: Rounding) -> Option<Self> {
        match self.unit.measure() {
            Measure::Spooned(teaspoons) => {
                let exact = self.value.checked_mul(Fraction::whole(teaspoons))?;
                spoon_unit(round(exact, &spoon_steps(exact, rounding)?, rounding)?, self.unit)
            }
            Measure::Weighed(ounces) => {
                let exact = self.value.checked_mul(Fraction::whole(ounces))?;
                scale_unit(round(exact, &[scale_step(exact)?], rounding)?)
            }
            Measure::WeighedMetric => {
                // A gram is more than 1 % of a small amount, and scales that weigh one show halves of it.
                let step = if self.value < Fraction::whole(100) { Fraction::HALF } else { Fraction::ONE };
                let value = round(self.value, &[step], rounding)?;
                Some(Self { value, unit: self.unit })
            }
            Measure::Counted(finest) => {
                // Past four pieces nobody cuts one in half.
                let step = if self.value >= Fraction::whole(4) { Fraction::ONE } else { finest };
                Some(Self { value: round(self.value, &[step], rounding)?, unit: self.unit })
            }
        }
    }

    /// How far this lies from `exact`, in percent of it; both must be of one kind. 0 when there is nothing to move.
    pub(crate) fn moved_percent_from(self, exact: Self) -> f64 {
        let (Some(here), Some(there)) = (self.in_base(), exact.in_base()) else { return 0.0 };
        if there == Fraction::ZERO {
            return 0.0;
        }
        (here.to_f64() / there.to_f64() - 1.0) * 100.0
    }

    fn in_base(self) -> Option<Fraction> {
        match self.unit.measure() {
            Measure::Spooned(each) | Measure::Weighed(each) => self.value.checked_mul(Fraction::whole(each)),
            Measure::WeighedMetric | Measure::Counted(_) => Some(self.value),
        }
    }
}

/// Marks of cups and spoons near an amount of teaspoons: the steps whose multiples can be measured there.
fn spoon_steps(teaspoons: Fraction, rounding: Rounding) -> Option<Vec<Fraction>> {
    let of = Fraction::whole;
    Some(if teaspoons >= of(48) {
        // From one cup: thirds and eighths of a cup.
        vec![of(16), of(6)]
    } else if teaspoons >= of(12) {
        // From a quarter cup: thirds of a cup and whole tablespoons.
        vec![of(16), of(3)]
    } else if teaspoons >= of(3) && rounding == Rounding::Nearest {
        // From one tablespoon: half tablespoons and whole teaspoons, where nothing asks for more.
        vec![Fraction::new(3, 2)?, Fraction::ONE]
    } else if teaspoons >= of(3) {
        // Half tablespoons and quarter teaspoons, where an amount is guarded.
        vec![Fraction::new(3, 2)?, Fraction::new(1, 4)?]
    } else if teaspoons >= Fraction::ONE {
        vec![Fraction::new(1, 4)?]
    } else {
        vec![Fraction::new(1, 8)?]
    })
}

/// The step of a kitchen scale near an amount of ounces, never coarser than 2 % of it from one ounce up.
fn scale_step(ounces: Fraction) -> Option<Fraction> {
    let pounds = |number: u32| Fraction::whole(number * 16);
    if ounces >= pounds(16) {
        Some(Fraction::whole(4))
    } else if ounces >= pounds(8) {
        Some(Fraction::whole(2))
    } else if ounces >= pounds(4) {
        Some(Fraction::ONE)
    } else if ounces >= pounds(2) {
        Some(Fraction::HALF)
    } else {
        Fraction::new(1, 4)
    }
}

fn round(exact: Fraction, steps: &[Fraction], rounding: Rounding) -> Option<Fraction> {
    let marks = |up: bool| {
        steps.iter().filter_map(move |&step| {
            let times = exact.checked_div(step)?;
            // Never negative: amounts are not.
            let whole = times.numerator() / times.denominator();
            let whole = if up && !times.is_whole() { whole + 1 } else { whole };
            Fraction::new(whole, 1)?.checked_mul(step)
        })
    };
    let below = marks(false).max();
    let above = marks(true).min();
    match rounding {
        Rounding::NeverUp => below,
        Rounding::NeverDown => above,
        Rounding::Nearest => {
            let (below, above) = (below?, above?);
            let closer_above = above.checked_sub(exact)? <= exact.checked_sub(below)?;
            // A pinch is never rounded away.
            Some(if closer_above || below == Fraction::ZERO { above } else { below })
        }
    }
}

/// The unit in which an amount of teaspoons is read off easily; the printed one where it can be.
fn spoon_unit(teaspoons: Fraction, printed: CookUnit) -> Option<Measured> {
    if teaspoons == Fraction::ZERO {
        return Some(Measured { value: teaspoons, unit: printed });
    }
    let by_size = [CookUnit::Cup, CookUnit::Tbsp, CookUnit::Tsp];
    for unit in std::iter::once(printed).chain(by_size) {
        let Measure::Spooned(each) = unit.measure() else { continue };
        let value = teaspoons.checked_div(Fraction::whole(each))?;
        let easy = match unit {
            CookUnit::Gal | CookUnit::Qt | CookUnit::Pint => value.denominator() <= 2,
            CookUnit::Cup => matches!(value.denominator(), 1..=4 | 8) && value >= Fraction::new(1, 4)?,
            CookUnit::Tbsp => value.denominator() <= 2 && value >= Fraction::ONE,
            _ => true,
        };
        if easy {
            return Some(Measured { value, unit });
        }
    }
    Some(Measured { value: teaspoons, unit: CookUnit::Tsp })
}

/// Pounds where they come out in eighths, else ounces.
fn scale_unit(ounces: Fraction) -> Option<Measured> {
    let pounds = ounces.checked_div(Fraction::whole(16))?;
    Some(if pounds >= Fraction::ONE && pounds.denominator() <= 8 {
        Measured { value: pounds, unit: CookUnit::Lb }
    } else {
        Measured { value: ounces, unit: CookUnit::Oz }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(value: &str, unit: CookUnit) -> Measured {
        Measured { value: value.parse().unwrap(), unit }
    }

    fn check(exact: (&str, CookUnit), rounding: Rounding, want: (&str, CookUnit)) {
        let got = at(exact.0, exact.1).to_mark(rounding).unwrap();
        assert_eq!((got.value.to_string().as_str(), got.unit), want, "{exact:?} {rounding:?}");
    }

    #[test]
    fn amounts_go_to_the_marks_of_cups_spoons_and_scales() {
        use CookUnit::{Clove, Cup, G, Large, Lb, Oz, Qt, Tbsp, Tsp};
        use Rounding::{Nearest, NeverDown, NeverUp};
        check(("3 17/20", Cup), NeverDown, ("3 7/8", Cup));
        check(("3 17/20", Cup), NeverUp, ("3 3/4", Cup));
        check(("2 2/3", Cup), NeverDown, ("2 2/3", Cup));
        check(("1 1/20", Qt), NeverDown, ("4 1/4", Cup));
        check(("77/80", Cup), NeverUp, ("15", Tbsp));
        check(("2 31/100", Tsp), NeverDown, ("2 1/2", Tsp));
        check(("2 1/10", Tbsp), Nearest, ("2", Tbsp));
        check(("1/100", Tsp), Nearest, ("1/8", Tsp));
        check(("1/100", Tsp), NeverUp, ("0", Tsp));
        check(("7", Tsp), Nearest, ("7", Tsp));
        check(("229 1/4", G), NeverDown, ("230", G));
        check(("1 27/50", Lb), NeverUp, ("24 1/2", Oz));
        check(("7 1/2", Lb), NeverUp, ("7 1/2", Lb));
        check(("1 54/100", Clove), NeverUp, ("1 1/2", Clove));
        check(("3 1/2", Large), NeverUp, ("3", Large));
        check(("5 1/2", Clove), NeverUp, ("5", Clove));
        check(("29 1/4", G), NeverDown, ("29 1/2", G));
    }

    #[test]
    fn no_mark_lies_past_the_allowed_side() {
        for sixtieths in 1..2000_i64 {
            let exact = Measured { value: Fraction::new(sixtieths, 60).unwrap(), unit: CookUnit::Cup };
            let up = exact.to_mark(Rounding::NeverDown).unwrap();
            let down = exact.to_mark(Rounding::NeverUp).unwrap();
            assert!(up.moved_percent_from(exact) >= -1e-9, "{exact:?} went down to {up:?}");
            assert!(down.moved_percent_from(exact) <= 1e-9, "{exact:?} went up to {down:?}");
        }
    }
}
