//! A line of a formula as fitting sees it: an amount that goes with the batch, with the jars, or with something else.

use almanac::{
    Basis, Formula, FormulaClass, Ingredient, IngredientUnit, JarSize, MeasureUnit, Part, PieceKind,
    ProduceId, Role,
};
use measure::{Fraction, Mass, MassUnit, VolumeUnit};

use super::measurable::{CookUnit, Measure, Measured, Rounding};

/// One printed ingredient.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Line {
    pub(crate) index: usize,
    pub(crate) name: String,
    pub(crate) part: Part,
    /// Prepared as produce, whatever its part in the safety balance.
    pub(crate) is_produce: bool,
    pub(crate) prep: String,
    /// The produce that may stand for it; none for what is bought ready.
    pub(crate) accepts: Vec<ProduceId>,
    pub(crate) optional: bool,
    /// Guarded by the safety rules of its formula.
    pub(crate) critical: bool,
    pub(crate) amount: PrintedAmount,
}

/// What is printed for an ingredient.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum PrintedAmount {
    /// So much in a printed batch; two numbers where a range is printed.
    PerBatch { low: Fraction, high: Fraction, unit: CookUnit },
    /// So much for each jar or for so much of something; the batch does not enter.
    Per { low: Fraction, high: Fraction, unit: CookUnit, per: Per },
    /// So many parts by weight.
    Parts(Fraction),
    /// A share of the finished weight, in percent.
    PercentOfWhole { low: Fraction, high: Fraction },
    /// The syrup of a canner load.
    SyrupOfLoad,
    /// No amount is printed.
    Open,
}

/// What an amount goes with when it does not go with the batch.
///
/// The words in which it is told stand in [`Per::told`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Per {
    /// Each jar of a size; other sizes by their volume.
    Jar(JarSize),
    /// One cup of strained juice.
    CupOfJuice,
    /// So many pounds of the fruit.
    PoundsOfFruit(u32),
    /// One cup of water of a syrup.
    CupOfWater,
    /// One quart of a syrup.
    QuartOfSyrup,
    /// One quart of cut kernels.
    QuartOfKernels,
    /// One gallon of water that holds or blanches and is poured off.
    GallonOfWaterPouredOff,
}

impl Per {
    /// In words, after the amount.
    pub(crate) fn told(self) -> &'static str {
        match self {
            Self::Jar(_) => "for each jar",
            Self::CupOfJuice => "for each cup of juice",
            Self::PoundsOfFruit(1) => "for each pound of fruit",
            Self::PoundsOfFruit(_) => "for each five pounds of fruit",
            Self::CupOfWater => "for each cup of water in the syrup",
            Self::QuartOfSyrup => "for each quart of syrup",
            Self::QuartOfKernels => "for each quart of kernels",
            Self::GallonOfWaterPouredOff => "for each gallon of water, which is poured off",
        }
    }
}

/// What the whole formula asks of roundings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Balance {
    /// A jam or jelly: its sugar is a floor.
    pub(crate) sugar_is_a_floor: bool,
    /// A ferment: its salt is a floor.
    pub(crate) salt_is_a_floor: bool,
}

/// Words of plants that are used fresh and are low in acid, though a formula files them under spices.
const FRESH_HERBS: &[&str] = &["parsley", "cilantro", "basil", "dill head", "fresh"];

/// The lines of a formula, in its order.
pub(crate) fn read_lines(formula: &Formula) -> Vec<Line> {
    formula.ingredients.iter().enumerate().map(|(index, ingredient)| read_line(index, ingredient)).collect()
}

/// What a formula asks of roundings.
pub(crate) fn read_balance(formula: &Formula) -> Balance {
    let class = formula.class;
    Balance {
        sugar_is_a_floor: matches!(
            class,
            Some(FormulaClass::JamPectin | FormulaClass::JamNoPectin | FormulaClass::Jelly)
        ),
        salt_is_a_floor: class == Some(FormulaClass::PickleFermented),
    }
}

fn read_line(index: usize, ingredient: &Ingredient) -> Line {
    Line {
        index,
        name: ingredient.name.to_string(),
        part: ingredient.part,
        is_produce: ingredient.role == Role::Produce,
        prep: ingredient.prep.to_string(),
        accepts: ingredient.accepts.clone(),
        optional: ingredient.optional,
        critical: ingredient.safety_critical,
        amount: read_amount(ingredient),
    }
}

fn read_amount(ingredient: &Ingredient) -> PrintedAmount {
    // A recalled amount is not shown; the words beside it still are.
    let seen = ingredient.amount.as_ref().filter(|_| ingredient.citation.basis != Basis::Memory);
    let Some(amount) = seen else { return PrintedAmount::Open };
    let (low, high) = (amount.min, amount.max);
    let per_batch = |unit| PrintedAmount::PerBatch { low, high, unit };
    let or_open = |unit: Option<CookUnit>| unit.map_or(PrintedAmount::Open, per_batch);
    match ingredient.unit {
        IngredientUnit::Volume(unit) => or_open(volume_unit(unit)),
        IngredientUnit::Mass(unit) => or_open(mass_unit(unit)),
        IngredientUnit::Each(piece) => per_batch(match piece {
            PieceKind::Each => CookUnit::Each,
            PieceKind::Large => CookUnit::Large,
            PieceKind::Clove => CookUnit::Clove,
            PieceKind::Ear => CookUnit::Ear,
            PieceKind::Bunch => CookUnit::Bunch,
            PieceKind::Stick => CookUnit::Stick,
        }),
        IngredientUnit::Package => per_batch(CookUnit::Package),
        IngredientUnit::Pouch => per_batch(CookUnit::Pouch),
        IngredientUnit::Drop => per_batch(CookUnit::Drop),
        IngredientUnit::Percent => PrintedAmount::PercentOfWhole { low, high },
        IngredientUnit::Part => PrintedAmount::Parts(low),
        IngredientUnit::CannerLoad => PrintedAmount::SyrupOfLoad,
        IngredientUnit::AsYouLike => PrintedAmount::Open,
        IngredientUnit::Per { unit, per } => {
            let unit = match unit {
                MeasureUnit::Volume(unit) => volume_unit(unit),
                MeasureUnit::Mass(unit) => mass_unit(unit),
            };
            unit.map_or(PrintedAmount::Open, |unit| PrintedAmount::Per {
                low,
                high,
                unit,
                per: read_per(per),
            })
        }
    }
}

fn read_per(per: almanac::Per) -> Per {
    match per {
        almanac::Per::Jar(size) => Per::Jar(size),
        almanac::Per::CupJuice => Per::CupOfJuice,
        almanac::Per::PoundFruit => Per::PoundsOfFruit(1),
        almanac::Per::FivePoundsFruit => Per::PoundsOfFruit(5),
        almanac::Per::QuartKernels => Per::QuartOfKernels,
        almanac::Per::CupWater => Per::CupOfWater,
        almanac::Per::QuartSyrup => Per::QuartOfSyrup,
        almanac::Per::GallonBlanchingWater | almanac::Per::GallonHoldingWater => Per::GallonOfWaterPouredOff,
    }
}

/// The spoon or cup of a unit; the formulas print no others.
fn volume_unit(unit: VolumeUnit) -> Option<CookUnit> {
    match unit {
        VolumeUnit::Tsp => Some(CookUnit::Tsp),
        VolumeUnit::Tbsp => Some(CookUnit::Tbsp),
        VolumeUnit::Cup => Some(CookUnit::Cup),
        VolumeUnit::Pint => Some(CookUnit::Pint),
        VolumeUnit::Quart => Some(CookUnit::Qt),
        VolumeUnit::Gallon => Some(CookUnit::Gal),
        VolumeUnit::FlOz | VolumeUnit::Ml | VolumeUnit::L => None,
    }
}

fn mass_unit(unit: MassUnit) -> Option<CookUnit> {
    match unit {
        MassUnit::Oz => Some(CookUnit::Oz),
        MassUnit::Lb => Some(CookUnit::Lb),
        MassUnit::G => Some(CookUnit::G),
        MassUnit::Kg => None,
    }
}

impl Line {
    /// Whether it only soaks or blanches and is poured off: it never reaches the jar.
    pub(crate) fn is_poured_off(&self) -> bool {
        ["soak", "drained off", "poured off", "rinsed off", "holding water"]
            .iter()
            .any(|words| self.prep.contains(words))
    }

    /// Which way the amount may be rounded.
    ///
    /// Never up: low-acid and other produce, water, oil, starch, lime, eggs, fresh herbs. Never down: acid, pectin,
    /// the sugar of a jam, the salt of a ferment. The rest goes to the closest mark.
    pub(crate) fn rounding(&self, balance: Balance) -> Rounding {
        match self.part {
            Part::Acid | Part::Pectin => Rounding::NeverDown,
            Part::Sugar if balance.sugar_is_a_floor => Rounding::NeverDown,
            Part::Salt if balance.salt_is_a_floor => Rounding::NeverDown,
            Part::Sugar | Part::Salt => Rounding::Nearest,
            Part::Produce | Part::LowAcid | Part::Liquid | Part::Oil | Part::Other => Rounding::NeverUp,
            Part::Spice if FRESH_HERBS.iter().any(|herb| self.name.to_lowercase().contains(herb)) => {
                Rounding::NeverUp
            }
            Part::Spice => Rounding::Nearest,
        }
    }

    /// Whether a move of more than 2 % in this amount makes the factor move on.
    ///
    /// What is poured off does not count either. Pieces are left out: half a clove more or less is not measured, and fewer low-acid pieces are always allowed.
    /// Eggs are not: seven yolks to four eggs cannot be parted.
    pub(crate) fn binds_the_factor(&self, balance: Balance) -> bool {
        let PrintedAmount::PerBatch { unit, .. } = self.amount else { return false };
        let counted = matches!(unit.measure(), Measure::Counted(_)) && unit != CookUnit::Large;
        let guarded = self.critical || matches!(self.part, Part::Acid | Part::Oil | Part::Pectin);
        guarded && !counted && !self.is_poured_off() && self.rounding(balance) != Rounding::Nearest
    }

    /// The amount in one printed batch: of a range the end that is the stricter one to keep to, the high one of a
    /// floor and the low one of a ceiling.
    pub(crate) fn of_one_batch(&self, balance: Balance) -> Option<Measured> {
        let PrintedAmount::PerBatch { low, high, unit } = self.amount else { return None };
        let value = if self.rounding(balance) == Rounding::NeverDown { high } else { low };
        Some(Measured { value, unit })
    }

    /// Whether two ends are printed.
    pub(crate) fn is_range(&self) -> bool {
        match &self.amount {
            PrintedAmount::PerBatch { low, high, .. }
            | PrintedAmount::Per { low, high, .. }
            | PrintedAmount::PercentOfWhole { low, high } => low != high,
            PrintedAmount::Parts(_) | PrintedAmount::SyrupOfLoad | PrintedAmount::Open => false,
        }
    }
}

/// What there is of one line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Held {
    pub(crate) index: usize,
    pub(crate) mass: Mass,
}
