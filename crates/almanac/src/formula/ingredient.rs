//! What goes into a formula, and what its amount scales with.

use measure::{Fraction, MassUnit, VolumeUnit};

use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::jar::JarSize;
use crate::row::{Reading, Row};
use crate::source::Citation;
use crate::tables::Table;
use crate::{FormulaId, ProduceId};

closed_list!(
    /// What an ingredient does in the kitchen.
    Role {
        /// Produce.
        Produce = "produce",
        /// Makes it sour.
        Acid = "acid",
        /// Salts it.
        Salt = "salt",
        /// Sweetens it.
        Sweetener = "sweetener",
        /// Makes it set.
        Pectin = "pectin",
        /// Makes it liquid.
        Liquid = "liquid",
        /// Flavours it.
        Spice = "spice",
        /// Oil or butter.
        Fat = "fat",
        /// Thickens it.
        Thickener = "thickener",
        /// Anything else.
        Other = "other",
    }
);

closed_list!(
    /// What an ingredient is in the balance that keeps the jar from spoiling.
    Part {
        /// Produce that is acid enough.
        Produce = "produce",
        /// Acid: a floor.
        Acid = "acid",
        /// Low in acid: a ceiling.
        LowAcid = "low-acid",
        /// Salt.
        Salt = "salt",
        /// Sugar.
        Sugar = "sugar",
        /// Pectin.
        Pectin = "pectin",
        /// Water and the like.
        Liquid = "liquid",
        /// Spice.
        Spice = "spice",
        /// Oil: a ceiling.
        Oil = "oil",
        /// Anything else.
        Other = "other",
    }
);

closed_list!(
    /// What is counted by the piece.
    PieceKind {
        /// Pieces as they come.
        Each = "each",
        /// Large ones.
        Large = "large",
        /// Cloves.
        Clove = "clove",
        /// Ears.
        Ear = "ear",
        /// Bunches.
        Bunch = "bunch",
        /// Sticks.
        Stick = "stick",
    }
);

closed_list!(
    /// A unit that is neither measured nor counted by the piece.
    LooseUnit {
        Package = "package",
        Pouch = "pouch",
        Drop = "drop",
        Percent = "percent w/w final",
        Part = "part",
        CannerLoad = "canner load",
    }
);

/// A volume or a weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeasureUnit {
    /// By volume.
    Volume(VolumeUnit),
    /// By weight.
    Mass(MassUnit),
}

/// What an amount stands beside, when it does not belong to the whole batch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Per {
    /// Each jar of a size.
    Jar(JarSize),
    /// Each cup of juice won.
    CupJuice,
    /// Each pound of fruit.
    PoundFruit,
    /// Each five pounds of fruit.
    FivePoundsFruit,
    /// Each quart of cut kernels.
    QuartKernels,
    /// Each cup of the water a syrup is made of.
    CupWater,
    /// Each quart of syrup.
    QuartSyrup,
    /// Each gallon of blanching water, which is poured off.
    GallonBlanchingWater,
    /// Each gallon of the water cut fruit waits in, which is poured off.
    GallonHoldingWater,
}

/// The unit of an ingredient.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IngredientUnit {
    /// By volume, for the whole batch.
    Volume(VolumeUnit),
    /// By weight, for the whole batch.
    Mass(MassUnit),
    /// By the piece, for the whole batch.
    Each(PieceKind),
    /// Packages, as sold.
    Package,
    /// Pouches, as sold.
    Pouch,
    /// Drops.
    Drop,
    /// Percent of the finished weight.
    Percent,
    /// Parts of the whole.
    Part,
    /// As much as a canner load takes.
    CannerLoad,
    /// So much for each of something.
    Per {
        /// In what it is measured.
        unit: MeasureUnit,
        /// For each of what.
        per: Per,
    },
    /// No amount is printed.
    AsYouLike,
}

/// What an amount grows with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ScalesWith {
    /// The batch.
    Batch,
    /// The jars filled, of this size.
    Jars(JarSize),
    /// The cups of juice won.
    Juice,
    /// The weight of the fruit, or the quarts of kernels.
    Produce,
    /// The water or syrup used, whatever the batch.
    Liquid,
    /// The canner loads.
    Loads,
    /// The finished weight.
    Weight,
    /// Taste.
    Taste,
}

impl IngredientUnit {
    /// What an amount in this unit grows with.
    #[must_use]
    pub const fn scales_with(self) -> ScalesWith {
        match self {
            Self::Volume(_) | Self::Mass(_) | Self::Each(_) | Self::Package | Self::Pouch | Self::Part => {
                ScalesWith::Batch
            }
            Self::Drop | Self::AsYouLike => ScalesWith::Taste,
            Self::Percent => ScalesWith::Weight,
            Self::CannerLoad => ScalesWith::Loads,
            Self::Per { per, .. } => match per {
                Per::Jar(jar) => ScalesWith::Jars(jar),
                Per::CupJuice => ScalesWith::Juice,
                Per::PoundFruit | Per::FivePoundsFruit | Per::QuartKernels => ScalesWith::Produce,
                Per::CupWater | Per::QuartSyrup | Per::GallonBlanchingWater | Per::GallonHoldingWater => {
                    ScalesWith::Liquid
                }
            },
        }
    }

    /// Reads the unit as the tables write it.
    fn read(text: &str) -> Option<Self> {
        if text.is_empty() {
            return Some(Self::AsYouLike);
        }
        if let Some((unit, per)) = text.split_once(" per ") {
            let unit = measure_unit(unit)?;
            let per = match per {
                "cup juice" => Per::CupJuice,
                "lb fruit" => Per::PoundFruit,
                "5 lb" => Per::FivePoundsFruit,
                "quart of kernels" => Per::QuartKernels,
                "cup water" => Per::CupWater,
                "quart syrup" => Per::QuartSyrup,
                "gallon of blanching water" => Per::GallonBlanchingWater,
                "gallon of holding water" => Per::GallonHoldingWater,
                _ => Per::Jar(JarSize::find(per)?),
            };
            return Some(Self::Per { unit, per });
        }
        if let Some(unit) = measure_unit(text) {
            return Some(match unit {
                MeasureUnit::Volume(unit) => Self::Volume(unit),
                MeasureUnit::Mass(unit) => Self::Mass(unit),
            });
        }
        if let Some(piece) = PieceKind::find(text) {
            return Some(Self::Each(piece));
        }
        LooseUnit::find(text).map(|unit| match unit {
            LooseUnit::Package => Self::Package,
            LooseUnit::Pouch => Self::Pouch,
            LooseUnit::Drop => Self::Drop,
            LooseUnit::Percent => Self::Percent,
            LooseUnit::Part => Self::Part,
            LooseUnit::CannerLoad => Self::CannerLoad,
        })
    }
}

fn measure_unit(text: &str) -> Option<MeasureUnit> {
    VolumeUnit::find(text).map(MeasureUnit::Volume).or_else(|| MassUnit::find(text).map(MeasureUnit::Mass))
}

/// An amount as printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintedAmount {
    /// At the least.
    pub min: Fraction,
    /// At the most; the same when one amount is printed.
    pub max: Fraction,
    /// As printed.
    pub printed: Box<str>,
}

/// One line of a formula's ingredients.
#[derive(Debug, Clone, PartialEq)]
pub struct Ingredient {
    /// What it is.
    pub name: Box<str>,
    /// How much; none when no amount is printed.
    pub amount: Option<PrintedAmount>,
    /// In what.
    pub unit: IngredientUnit,
    /// How it is prepared.
    pub prep: Box<str>,
    /// Whether it is printed as optional.
    pub optional: bool,
    /// What it does in the kitchen.
    pub role: Role,
    /// What it is in the balance.
    pub part: Part,
    /// Whether a rule guards its amount.
    pub safety_critical: bool,
    /// The produce that may stand for it; none when it is not produce.
    pub accepts: Vec<ProduceId>,
    /// Where it is printed.
    pub citation: Citation,
}

/// Reads `ingredients.csv`.
pub(crate) fn read_ingredients(reading: &mut Reading<'_>) -> Vec<(u64, FormulaId, Ingredient)> {
    const COLUMNS: &[&str] = &[
        "formula_id",
        "ingredient",
        "amount",
        "unit",
        "amount_min",
        "amount_max",
        "prep",
        "role",
        "part",
        "safety_critical",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Ingredients, COLUMNS, |row| {
        let formula = row.id("formula_id");
        let name = row.text("ingredient").into();
        let printed = row.free_text("amount");
        let unit = unit_of(row);
        let min = row.maybe_fraction("amount_min");
        let max = row.maybe_fraction("amount_max");
        let amount = min.zip(max).map(|(min, max)| PrintedAmount { min, max, printed });
        let prep = row.free_text("prep");
        let ingredient = Ingredient {
            name,
            amount,
            unit,
            optional: prep.split([',', ';']).any(|word| word.trim() == "optional"),
            prep,
            role: row.word("role"),
            part: row.word("part"),
            safety_critical: row.yes("safety_critical"),
            accepts: Vec::new(),
            citation: row.citation(),
        };
        (row.line(), formula, ingredient)
    })
}

fn unit_of(row: &mut Row<'_>) -> IngredientUnit {
    let cell = row.cell("unit");
    IngredientUnit::read(cell).unwrap_or_else(|| {
        let list = "a measure, a piece, or a measure per jar, juice, fruit or water".to_owned();
        row.spoil(DataProblem::NotInList { column: "unit", text: cell.to_owned(), list });
        IngredientUnit::AsYouLike
    })
}
