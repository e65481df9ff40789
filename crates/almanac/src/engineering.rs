//! Kitchen physics as it differs from food to food and kitchen to kitchen: what the models of heat, cold and acid are handed.
//!
//! What belongs to an equation stands with the equation; what stands here may be measured at home and then replaces the row.

use measure::{
    Conductivity, Density, Diffusivity, Film, HeatLoss, Length, Mass, Percent, Power, SpecificEnergy,
    SpecificHeat, Temp,
};

use crate::Almanac;
use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::jar::JarSize;
use crate::matching::{Match, match_name};
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;

/// What a food takes to heat and to freeze.
#[derive(Debug, Clone, PartialEq)]
pub struct FoodHeat {
    /// The food as it is printed.
    pub food: Box<str>,
    /// Its share of water, where printed.
    pub moisture: Option<Percent>,
    /// Where ice begins to form, where printed.
    pub freezes_at: Option<Temp>,
    /// What it takes for each degree above that.
    pub above: SpecificHeat,
    /// What it takes for each degree below.
    pub below: SpecificHeat,
    /// What the freezing takes.
    pub latent: SpecificEnergy,
    /// Where it stands.
    pub citation: Citation,
}

closed_list!(
    /// What a range is about.
    RangeOf {
        /// Share of an induction zone that arrives in the pot.
        BurnerShareInduction = "burner-share-induction",
        /// Share of a coil or smooth top that arrives in the pot.
        BurnerShareElectric = "burner-share-electric",
        /// Share of a gas flame that arrives in the pot.
        BurnerShareGas = "burner-share-gas",
        /// Heat a pot loses with its lid on.
        PotLossLid = "pot-loss-lid",
        /// Heat a pot loses without its lid.
        PotLossOpen = "pot-loss-open",
        /// Film of boiling water on the outside of a jar.
        FilmJarInBoilingWater = "film-jar-in-boiling-water",
        /// Film of still room air on a jar.
        FilmJarInAir = "film-jar-in-air",
        /// Film of still freezer air on a package.
        FilmFreezerStill = "film-freezer-still",
        /// Film of moving freezer air on a package.
        FilmFreezerFan = "film-freezer-fan",
        /// Film of still air on a pot.
        FilmPotInAir = "film-pot-in-air",
        /// Film of an ice bath on a stirred pot.
        FilmIceBathStirred = "film-ice-bath-stirred",
        /// Film of an ice bath on a pot that nobody stirs.
        FilmIceBathStill = "film-ice-bath-still",
        /// How fast heat spreads in tomato, applesauce and other purees.
        DiffusivityPuree = "diffusivity-puree",
        /// How well a moist food conducts heat.
        ConductivityFood = "conductivity-food",
        /// Cooling power a household freezer has left for fresh food.
        FreezerPower = "freezer-power",
        /// Heat that leaks into a closed household freezer, for each degree.
        FreezerLeak = "freezer-leak",
        /// Food a four-star freezer takes from warm to -18 C in 24 hours, for each 100 L.
        FreezerFourStar = "freezer-four-star",
        /// Unfrozen food added at one time, for each litre of freezer.
        FreezerManual = "freezer-manual",
        /// How well frozen food conducts heat.
        FrozenConductivity = "frozen-conductivity",
        /// Density of loose vegetables and fruit in a bag.
        BagDensity = "bag-density",
        /// How fast water leaves a tomato slice.
        DryingDiffusivityTomato = "drying-diffusivity-tomato",
        /// How fast water leaves a mango slice.
        DryingDiffusivityMango = "drying-diffusivity-mango",
        /// How fast water leaves a basil leaf.
        DryingDiffusivityBasil = "drying-diffusivity-basil",
        /// Acid a kilogram of cucumber takes up from pH 6 to 4.6.
        BufferCucumber = "buffer-cucumber",
        /// Acid a kilogram of cabbage takes up from pH 6 to 4.6.
        BufferCabbage = "buffer-cabbage",
        /// Acid a kilogram of sweet pepper takes up from pH 6 to 4.6.
        BufferSweetPepper = "buffer-sweet-pepper",
        /// Acid a kilogram of onion takes up from pH 6 to 4.6.
        BufferOnion = "buffer-onion",
        /// Acid a kilogram of carrot takes up from pH 6 to 4.6.
        BufferCarrot = "buffer-carrot",
        /// Acid a kilogram of green beans takes up from pH 6 to 4.6.
        BufferGreenBean = "buffer-green-bean",
        /// Acid a kilogram of garlic takes up from pH 6 to 4.6.
        BufferGarlic = "buffer-garlic",
        /// Share of water in vegetables for pickling.
        VegetableWater = "vegetable-water",
        /// Density of packed produce without the gaps between pieces.
        ProduceDensity = "produce-density",
    }
);

closed_list!(
    /// The unit of a range.
    RangeUnit {
        /// Percent.
        Percent = "%",
        /// Watts a kelvin.
        HeatLoss = "W/K",
        /// Watts a square metre and kelvin.
        Film = "W/m2K",
        /// Ten-millionths of a square metre a second.
        HeatDiffusivity = "1e-7 m2/s",
        /// Ten-billionths of a square metre a second.
        WaterDiffusivity = "1e-10 m2/s",
        /// Watts a metre and kelvin.
        Conductivity = "W/mK",
        /// Watts.
        Power = "W",
        /// Kilograms for each hundred litres of freezer.
        FreezerRating = "kg/100L",
        /// Grams for each litre of freezer.
        FreezerLoad = "g/L",
        /// Kilograms a cubic metre.
        Density = "kg/m3",
        /// Thousandths of an equivalent a kilogram.
        Buffer = "meq/kg",
    }
);

/// From least over likeliest to most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread<Q> {
    /// The least.
    pub low: Q,
    /// The likeliest.
    pub likely: Q,
    /// The most.
    pub high: Q,
}

impl<Q: Copy> Spread<Q> {
    /// The same of another kind.
    pub fn map<R>(self, make: impl Fn(Q) -> R) -> Spread<R> {
        Spread { low: make(self.low), likely: make(self.likely), high: make(self.high) }
    }
}

/// How far kitchens or foods differ in one thing.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanningRange {
    /// In what.
    pub of: RangeOf,
    /// The same in words.
    pub what: Box<str>,
    spread: Spread<f64>,
    unit: RangeUnit,
    /// Where it stands.
    pub citation: Citation,
}

impl PlanningRange {
    fn read_as<Q>(&self, unit: RangeUnit, make: impl Fn(f64) -> Q) -> Option<Spread<Q>> {
        (self.unit == unit).then(|| self.spread.map(make))
    }

    /// As shares; none for another unit.
    #[must_use]
    pub fn as_percent(&self) -> Option<Spread<Percent>> {
        self.read_as(RangeUnit::Percent, Percent::of_hundred)
    }

    /// As losses; none for another unit.
    #[must_use]
    pub fn as_heat_loss(&self) -> Option<Spread<HeatLoss>> {
        self.read_as(RangeUnit::HeatLoss, HeatLoss::watts_per_kelvin)
    }

    /// As films; none for another unit.
    #[must_use]
    pub fn as_film(&self) -> Option<Spread<Film>> {
        self.read_as(RangeUnit::Film, Film::watts_per_square_metre_kelvin)
    }

    /// As diffusivities of heat or water; none for another unit.
    #[must_use]
    pub fn as_diffusivity(&self) -> Option<Spread<Diffusivity>> {
        self.read_as(RangeUnit::HeatDiffusivity, |value| Diffusivity::square_metres_per_second(value * 1e-7))
            .or_else(|| {
                self.read_as(RangeUnit::WaterDiffusivity, |value| {
                    Diffusivity::square_metres_per_second(value * 1e-10)
                })
            })
    }

    /// As conductivities; none for another unit.
    #[must_use]
    pub fn as_conductivity(&self) -> Option<Spread<Conductivity>> {
        self.read_as(RangeUnit::Conductivity, Conductivity::watts_per_metre_kelvin)
    }

    /// As powers; none for another unit.
    #[must_use]
    pub fn as_power(&self) -> Option<Spread<Power>> {
        self.read_as(RangeUnit::Power, Power::watts)
    }

    /// As densities, those of food in a freezer included: grams a litre are kilograms a cubic metre.
    #[must_use]
    pub fn as_density(&self) -> Option<Spread<Density>> {
        self.read_as(RangeUnit::Density, Density::kilograms_per_cubic_metre)
            .or_else(|| self.read_as(RangeUnit::FreezerLoad, Density::kilograms_per_cubic_metre))
            .or_else(|| {
                // A kilogram in a hundred litres is ten in a cubic metre.
                self.read_as(RangeUnit::FreezerRating, |value| {
                    Density::kilograms_per_cubic_metre(value * 10.0)
                })
            })
    }

    /// As thousandths of an equivalent of acid for each kilogram; none for another unit.
    #[must_use]
    pub fn as_milliequivalents(&self) -> Option<Spread<f64>> {
        self.read_as(RangeUnit::Buffer, |value| value)
    }
}

/// The inside of a jar and its glass.
#[derive(Debug, Clone, PartialEq)]
pub struct JarInside {
    /// Which.
    pub jar: JarSize,
    /// Across, inside.
    pub diameter: Length,
    /// From bottom to lid, inside.
    pub height: Length,
    /// Its glass, from lightest to heaviest.
    pub glass: (Mass, Mass),
    /// Where it stands.
    pub citation: Citation,
}

/// The three tables.
#[derive(Debug, Clone, Default)]
pub(crate) struct Engineering {
    foods: Vec<FoodHeat>,
    ranges: Vec<PlanningRange>,
    jars: Vec<JarInside>,
}

/// Reads `foods.csv`, `ranges.csv` and `jar_insides.csv`.
pub(crate) fn read_engineering(reading: &mut Reading<'_>) -> Engineering {
    Engineering { foods: read_foods(reading), ranges: read_ranges(reading), jars: read_insides(reading) }
}

fn read_foods(reading: &mut Reading<'_>) -> Vec<FoodHeat> {
    const COLUMNS: &[&str] = &[
        "food",
        "moisture_pct",
        "freezes_C",
        "heat_above_kJ_kgK",
        "heat_below_kJ_kgK",
        "latent_kJ_kg",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::FoodHeat, COLUMNS, |row| FoodHeat {
        food: row.text("food").into(),
        moisture: row.maybe_number("moisture_pct").map(Percent::of_hundred),
        freezes_at: row.maybe_number("freezes_C").map(Temp::celsius),
        above: SpecificHeat::kilojoules_per_kilogram_kelvin(row.number("heat_above_kJ_kgK")),
        below: SpecificHeat::kilojoules_per_kilogram_kelvin(row.number("heat_below_kJ_kgK")),
        latent: SpecificEnergy::kilojoules_per_kilogram(row.number("latent_kJ_kg")),
        citation: row.citation(),
    })
}

fn read_ranges(reading: &mut Reading<'_>) -> Vec<PlanningRange> {
    const COLUMNS: &[&str] =
        &["range_id", "what", "low", "likely", "high", "unit", "source_id", "locator", "basis"];
    let ranges = reading.rows(Table::PlanningRanges, COLUMNS, |row| {
        let of = row.word("range_id");
        let what = row.text("what").into();
        let spread =
            Spread { low: row.number("low"), likely: row.number("likely"), high: row.number("high") };
        if spread.low > spread.likely || spread.likely > spread.high {
            row.contradict("low, likely and high do not rise".to_owned());
        }
        PlanningRange { of, what, spread, unit: row.word("unit"), citation: row.citation() }
    });
    let missing: Vec<&str> = RangeOf::ALL
        .iter()
        .filter(|of| ranges.iter().filter(|range| range.of == **of).count() != 1)
        .map(|of| of.as_str())
        .collect();
    if !missing.is_empty() {
        let what = format!("not exactly one row each for {}", missing.join(", "));
        reading.note(Table::PlanningRanges, 1, DataProblem::Contradiction { what });
    }
    ranges
}

fn read_insides(reading: &mut Reading<'_>) -> Vec<JarInside> {
    const COLUMNS: &[&str] = &[
        "jar",
        "inside_diameter_mm",
        "inside_height_mm",
        "glass_g_low",
        "glass_g_high",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::JarInsides, COLUMNS, |row| JarInside {
        jar: row.word("jar"),
        diameter: Length::millimetres(row.number("inside_diameter_mm")),
        height: Length::millimetres(row.number("inside_height_mm")),
        glass: (Mass::grams(row.number("glass_g_low")), Mass::grams(row.number("glass_g_high"))),
        citation: row.citation(),
    })
}

impl Almanac {
    /// How far kitchens or foods differ in one thing.
    #[must_use]
    pub fn planning_range(&self, of: RangeOf) -> &PlanningRange {
        let found = self.engineering.ranges.iter().find(|range| range.of == of);
        found.expect("loading refuses a table without a row for each")
    }

    /// What foods take to heat and to freeze.
    #[must_use]
    pub fn food_heats(&self) -> &[FoodHeat] {
        &self.engineering.foods
    }

    /// The food a word names.
    #[must_use]
    pub fn find_food_heat(&self, typed: &str) -> Match<'_, FoodHeat> {
        match_name(typed, self.engineering.foods.iter(), |food| vec![&*food.food])
    }

    /// The inside of a jar; none for sizes nobody has measured.
    #[must_use]
    pub fn jar_inside(&self, jar: JarSize) -> Option<&JarInside> {
        self.engineering.jars.iter().find(|inside| inside.jar == jar)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_is_read_in_its_own_unit_and_no_other() {
        let almanac = Almanac::load().expect("the tables are sound");
        for of in RangeOf::ALL {
            let range = almanac.planning_range(*of);
            let read = [
                range.as_percent().is_some(),
                range.as_heat_loss().is_some(),
                range.as_film().is_some(),
                range.as_diffusivity().is_some(),
                range.as_conductivity().is_some(),
                range.as_power().is_some(),
                range.as_density().is_some(),
                range.as_milliequivalents().is_some(),
            ];
            assert_eq!(read.iter().filter(|is| **is).count(), 1, "{of}");
        }
    }

    /// Source: ASHRAE Handbook, Refrigeration, Thermal properties of foods, table 3: snap beans 90.27 %, -0.7 °C, 302 kJ/kg.
    #[test]
    fn a_food_is_found_by_its_name() {
        let almanac = Almanac::load().expect("the tables are sound");
        let beans = almanac.find_food_heat("beans, snap").one().expect("the row stands there").clone();
        assert_eq!(beans.freezes_at, Some(Temp::celsius(-0.7)));
        assert!((beans.latent.as_kilojoules_per_kilogram() - 302.0).abs() < 1e-9);
        assert!(almanac.find_food_heat("marzipan").one().is_none());
        assert!(almanac.jar_inside(JarSize::Pint).is_some());
    }

    #[test]
    fn a_table_without_a_range_is_refused() {
        let tables = crate::Tables::embedded()
            .without_lines(Table::PlanningRanges, |line| line.starts_with("freezer-leak"));
        let faults = Almanac::from_tables(&tables).expect_err("a range is missing");
        assert!(faults.iter().any(|fault| fault.to_string().contains("freezer-leak")), "{faults:?}");
    }
}
