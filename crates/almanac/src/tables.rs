//! The texts of the tables: built into the program, and replaceable one by one so that tests can strike a row.

use std::borrow::Cow;
use std::collections::BTreeMap;

use crate::closed_list::closed_list;

/// Declares the tables with their files.
macro_rules! tables {
    ($($(#[$doc:meta])* $table:ident = $file:literal),+ $(,)?) => {
        closed_list!(
            /// One file of `data/`.
            Table { $($(#[$doc])* $table = $file),+ }
        );

        /// The text of a table as it was at build.
        const fn embedded_text(table: Table) -> &'static str {
            match table {
                $(Table::$table => include_str!(concat!("../../../data/", $file))),+
            }
        }
    };
}

tables!(
    /// Who printed what, and how far it is trusted.
    Sources = "sources.toml",
    /// Boiling-water processes.
    BoilingWater = "processes/boiling_water.csv",
    /// Pressure processes.
    Pressure = "processes/pressure.csv",
    /// Acid that goes into each jar.
    Acidification = "processes/acidification.csv",
    /// Foods and practices that are refused.
    NotForCanning = "processes/not_for_canning.csv",
    /// Rules for canners, jars, gauges and what comes after.
    CannerRules = "processes/canner_rules.csv",
    /// Which jar may take the minutes of which larger one, and by which rule.
    JarSteps = "processes/jar_steps.csv",
    /// Jar sizes.
    Jars = "processes/jars.csv",
    /// How much produce fills a load.
    Procurement = "processes/procurement.csv",
    /// Tested formulas.
    Formulas = "formulas/formulas.csv",
    /// What goes into each formula.
    Ingredients = "formulas/ingredients.csv",
    /// What is done, in order.
    Steps = "formulas/steps.csv",
    /// Which produce may stand for an ingredient.
    IngredientProduce = "formulas/ingredient_produce.csv",
    /// Under which name an ingredient is weighed.
    IngredientDensity = "formulas/ingredient_density.csv",
    /// Which family of change rules a food without a formula goes by.
    FoodFamilies = "formulas/food_families.csv",
    /// What may be changed.
    ChangeRules = "formulas/change_rules.csv",
    /// Rules of pickling and preserving, in short words.
    PickleRules = "processes/pickle_rules.csv",
    /// Metric jars, pressures and heights.
    Metric = "processes/metric.csv",
    /// Which rule decides which trouble of a load.
    LoadRules = "loads/load_rules.csv",
    /// What authorities of other countries say.
    Elsewhere = "loads/elsewhere.csv",
    /// What produce is called, and its keys into the other tables.
    ProduceNames = "produce/names.csv",
    /// What spoons, cups and pieces weigh.
    Densities = "produce/densities.csv",
    /// How much is left after trimming.
    FreshYields = "produce/yields_fresh.csv",
    /// How long fresh produce keeps.
    FreshStorage = "produce/fresh_storage.csv",
    /// How sour foods are.
    Acidity = "produce/acidity_ph.csv",
    /// How long hand work takes.
    WorkRates = "produce/work_rates.csv",
    /// Blanching.
    Blanching = "methods/blanching.csv",
    /// Freezing.
    Freezing = "methods/freezing.csv",
    /// Drying.
    Drying = "methods/drying.csv",
    /// Ferments.
    Fermentation = "methods/fermentation.csv",
    /// Jelly.
    Jelly = "methods/jelly.csv",
    /// Syrups.
    Syrups = "methods/syrups.csv",
    /// Pectin.
    Pectin = "methods/pectin.csv",
    /// First guesses of how long unprinted work takes.
    FirstGuesses = "work/first_guesses.csv",
    /// What a state of produce costs and rules out.
    Conditions = "work/conditions.csv",
    /// How much one serving is.
    ServingSizes = "work/serving_sizes.csv",
    /// Signs on jars.
    Signs = "keeping/signs.csv",
    /// Cuts of power and floods.
    Outage = "keeping/outage.csv",
    /// Cooling hot food.
    Cooling = "keeping/cooling.csv",
    /// Food in oil.
    Oil = "keeping/oil.csv",
    /// Ferments: bands, signs, keeping.
    FermentRules = "keeping/ferments.csv",
    /// What ferments are called.
    FermentNames = "keeping/ferment_names.csv",
    /// Dried food.
    Dried = "keeping/dried.csv",
    /// How long food stays at its best.
    BestBy = "keeping/best_by.csv",
    /// What foods take to heat and to freeze.
    FoodHeat = "engineering/foods.csv",
    /// How far kitchens and foods differ, as ranges.
    PlanningRanges = "engineering/ranges.csv",
    /// The inside of jars.
    JarInsides = "engineering/jar_insides.csv",
);

impl Table {
    /// The file below `data/`.
    #[must_use]
    pub const fn file(self) -> &'static str {
        self.as_str()
    }
}

/// The texts of all tables.
#[derive(Debug, Clone, Default)]
pub struct Tables {
    replaced: BTreeMap<Table, Cow<'static, str>>,
}

impl Tables {
    /// The tables as they were at build.
    #[must_use]
    pub fn embedded() -> Self {
        Self::default()
    }

    /// The text of one table.
    #[must_use]
    pub fn text(&self, table: Table) -> &str {
        self.replaced.get(&table).map_or(embedded_text(table), |text| text)
    }

    /// The same tables with another text for one of them.
    #[must_use]
    pub fn with(mut self, table: Table, text: impl Into<Cow<'static, str>>) -> Self {
        self.replaced.insert(table, text.into());
        self
    }

    /// The same tables without the lines of one of them for which `strike` holds. The line of column names stays.
    #[must_use]
    pub fn without_lines(self, table: Table, strike: impl Fn(&str) -> bool) -> Self {
        let kept: String = self
            .text(table)
            .split_inclusive('\n')
            .enumerate()
            .filter(|(number, line)| *number == 0 || !strike(line))
            .map(|(_, line)| line)
            .collect();
        self.with(table, kept)
    }
}
