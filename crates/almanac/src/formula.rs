//! Tested formulas: what goes in, what is done, what comes out, and how they may be scaled.

mod ingredient;
mod step;

use measure::{Fraction, Length, Minutes};

use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::jar::JarSize;
use crate::process::Pack;
use crate::row::{Reading, Row};
use crate::source::Citation;
use crate::tables::Table;
use crate::{FormulaId, ProductId};

pub(crate) use ingredient::read_ingredients;
pub use ingredient::{
    Ingredient, IngredientUnit, MeasureUnit, Part, Per, PieceKind, PrintedAmount, Role, ScalesWith,
};
pub(crate) use step::read_steps;
pub use step::{Action, Attention, Care, Equipment, FormulaStep, StepMinutes, TempRange};

closed_list!(
    /// How the food is kept.
    Method {
        /// In jars under boiling water.
        BoilingWater = "boiling-water",
        /// In jars under pressure.
        Pressure = "pressure",
        /// By its own acid.
        Ferment = "ferment",
        /// Frozen.
        Freeze = "freeze",
        /// Dried.
        Dry = "dry",
        /// Cold, for a while.
        Refrigerate = "refrigerate",
    }
);

closed_list!(
    /// How a formula may be made larger or smaller.
    ScaleRule {
        /// Every part by the same factor.
        OneFactor = "all parts by one factor",
        /// One batch as printed; repeated, never enlarged or divided.
        SingleBatch = "single batch",
        /// By the jars filled.
        ByJar = "by jar",
        /// By what there is.
        Free = "free",
    }
);

closed_list!(
    /// The family of change rules a formula goes by.
    FormulaClass {
        /// Salsas.
        Salsa = "salsa",
        /// Pickles and relishes in vinegar.
        PickleFresh = "pickle-fresh",
        /// Ferments in salt.
        PickleFermented = "pickle-fermented",
        /// Jams with added pectin.
        JamPectin = "jam-pectin",
        /// Jams and marmalades without.
        JamNoPectin = "jam-no-pectin",
        /// Jellies.
        Jelly = "jelly",
        /// Tomatoes, their juice and plain sauce.
        TomatoPlain = "tomato-plain",
        /// Fruit in syrup, juice or water, and applesauce.
        FruitPlain = "fruit-plain",
        /// Vegetables in water, under pressure.
        VegetablePlain = "vegetable-plain",
        /// Soups.
        SoupMixed = "soup-mixed",
        /// Meat and poultry.
        Meat = "meat",
        /// Fish.
        Fish = "fish",
        /// Pie fillings.
        PieFilling = "pie-filling",
        /// Ketchups and cooked sauces with vegetables.
        Sauce = "sauce",
        /// Acid foods of no other family.
        AcidFood = "acid-food",
    }
);

closed_list!(
    /// Where a batch stands when it is put up, and in what.
    KeptIn {
        /// Closed jars, after their process if they get one.
        CanningJar = "canning jar",
        /// The freezer.
        Freezer = "freezer",
        /// The refrigerator.
        Refrigerator = "refrigerator",
        /// Dry jars.
        DryJar = "dry jar",
        /// Wrapped dry.
        Wrapped = "wrapped dry",
    }
);

/// What a yield is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum YieldUnit {
    /// Jars of a size.
    Jar(JarSize),
    /// Gallons of the vessel it ferments in.
    GallonOfContainer,
    /// Sheets of 13 by 15 in.
    Sheet,
}

/// What a formula makes.
#[derive(Debug, Clone, PartialEq)]
pub struct Yield {
    /// At the least.
    pub min: Fraction,
    /// At the most.
    pub max: Fraction,
    /// In what.
    pub unit: YieldUnit,
    /// What it is the yield of, when that is not the whole formula.
    pub per: Box<str>,
    /// As printed.
    pub printed: Box<str>,
}

/// A tested formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Formula {
    /// Its name in the tables.
    pub id: FormulaId,
    /// Its name for people.
    pub name: Box<str>,
    /// How the food is kept; several when either may be chosen.
    pub methods: Vec<Method>,
    /// Its family of change rules; none for what is frozen or dried.
    pub class: Option<FormulaClass>,
    /// What it makes; none when it is free in amount or nothing is printed.
    pub yield_: Option<Yield>,
    /// What the food is called in the process tables, in plain words.
    pub process_hint: Box<str>,
    /// The food in the process tables; none when there is no process on file.
    pub product: Option<ProductId>,
    /// How it goes into canning jars; several when either may be chosen, none when it does not.
    pub packs: Vec<Pack>,
    /// Where it is kept.
    pub kept_in: KeptIn,
    /// The room left under the lid.
    pub headspace: Option<Length>,
    /// The jars it is printed for.
    pub jars: Vec<JarSize>,
    /// Minutes of hand work, where a source prints them.
    pub minutes_hands_on: Option<Minutes>,
    /// The cooking in one line: steps parted by `;`, each `verb:what:minutes:degrees`.
    pub outline: Box<str>,
    /// What the cook may change, in words.
    pub may_vary: Box<str>,
    /// How it may be scaled.
    pub scale: ScaleRule,
    /// What else is printed.
    pub note: Box<str>,
    /// What goes in.
    pub ingredients: Vec<Ingredient>,
    /// What is done, in order.
    pub steps: Vec<FormulaStep>,
    /// Where it is printed.
    pub citation: Citation,
}

/// Reads `formulas.csv`; ingredients and steps are added by the loader.
pub(crate) fn read_formulas(reading: &mut Reading<'_>) -> Vec<(u64, Formula)> {
    const COLUMNS: &[&str] = &[
        "formula_id",
        "name",
        "method",
        "class",
        "yield_amount",
        "yield_unit",
        "yield_min",
        "yield_max",
        "yield_per",
        "process_product_id",
        "canning_product_id",
        "pack",
        "headspace_in",
        "jar_sizes",
        "minutes_hands_on",
        "cook_steps",
        "may_vary",
        "scale_rule",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Formulas, COLUMNS, |row| {
        let id = row.id("formula_id");
        let name = row.text("name").into();
        let methods = row.words("method", "|");
        let class = row.maybe_word("class");
        let yield_ = yield_of(row);
        let process_hint = row.free_text("process_product_id");
        let product = row.names("canning_product_id").into_iter().next();
        let (packs, kept_in) = pack_of(row);
        let formula = Formula {
            id,
            name,
            methods,
            class,
            yield_,
            process_hint,
            product,
            packs,
            kept_in,
            headspace: row.maybe_number("headspace_in").map(Length::inches),
            jars: row.words("jar_sizes", "|"),
            minutes_hands_on: row.maybe_count("minutes_hands_on").map(Minutes),
            outline: row.free_text("cook_steps"),
            may_vary: row.free_text("may_vary"),
            scale: row.word("scale_rule"),
            note: row.free_text("note"),
            ingredients: Vec::new(),
            steps: Vec::new(),
            citation: row.citation(),
        };
        (row.line(), formula)
    })
}

fn yield_of(row: &mut Row<'_>) -> Option<Yield> {
    let printed = row.free_text("yield_amount");
    let unit = match row.cell("yield_unit") {
        "gallon of container" => Some(YieldUnit::GallonOfContainer),
        "sheet 13 x 15 in" => Some(YieldUnit::Sheet),
        _ => row.maybe_word("yield_unit").map(YieldUnit::Jar),
    };
    let min = row.maybe_fraction("yield_min");
    let max = row.maybe_fraction("yield_max");
    let per = row.free_text("yield_per");
    Some(Yield { min: min?, max: max?, unit: unit?, per, printed })
}

fn pack_of(row: &mut Row<'_>) -> (Vec<Pack>, KeptIn) {
    match row.cell("pack") {
        "hot" => (vec![Pack::Hot], KeptIn::CanningJar),
        "raw" => (vec![Pack::Raw], KeptIn::CanningJar),
        "hot or raw" => (vec![Pack::Hot, Pack::Raw], KeptIn::CanningJar),
        "freezer" => (Vec::new(), KeptIn::Freezer),
        "refrigerate" => (Vec::new(), KeptIn::Refrigerator),
        "jar" => (Vec::new(), KeptIn::DryJar),
        "dry" => (Vec::new(), KeptIn::Wrapped),
        other => {
            let text = other.to_owned();
            let list = "hot, raw, hot or raw, freezer, refrigerate, jar, dry".to_owned();
            row.spoil(DataProblem::NotInList { column: "pack", text, list });
            (Vec::new(), KeptIn::CanningJar)
        }
    }
}
