//! US Department of Agriculture, Complete Guide to Home Canning, Agriculture Information Bulletin 539, revised 2015.
//!
//! The figures are written down from memory of the printed tables, apart from the rows they check, by band from the
//! sea upwards.

use almanac::{Almanac, CannerKind, JarSize, Pack, ProcessQuestion, ProductId};
use measure::{Altitude, Minutes, Pressure};

/// The lowest and the highest height of each of four bands: 0-1,000, 1,001-3,000, 3,001-6,000, above 6,000 ft.
const FOUR_BANDS: [[u32; 2]; 4] = [[0, 1000], [1001, 3000], [3001, 6000], [6001, 12_000]];
/// The same for tables of three bands: 0-1,000, 1,001-6,000, above 6,000 ft.
const THREE_BANDS: [[u32; 2]; 3] = [[0, 1000], [1001, 6000], [6001, 12_000]];

struct Kitchen(Almanac);

impl Kitchen {
    fn open() -> Self {
        Self(Almanac::load().expect("the built-in tables hold no fault"))
    }

    /// Minutes and pounds of the lines served.
    fn lines(&self, food: &str, canner: CannerKind, feet: u32) -> Vec<(u32, Option<f64>)> {
        let [product, pack, jar] =
            food.split(' ').collect::<Vec<_>>().try_into().expect("food, pack and jar");
        let question = ProcessQuestion {
            product: ProductId::from(product),
            pack: Pack::find(pack).expect("a pack"),
            jar: JarSize::find(jar).expect("a jar"),
            canner,
            altitude: Altitude::feet(feet),
        };
        let served = self
            .0
            .find_processes(&question)
            .unwrap_or_else(|refusal| panic!("{food}, {feet} ft: {refusal:?}"));
        let figures =
            |process: &almanac::Process| (process.minutes().0, process.pressure().map(Pressure::as_psi));
        served.iter().map(figures).collect()
    }

    fn check_boiling(&self, food: &str, minutes: &[u32]) {
        let bands: &[[u32; 2]] = if minutes.len() == 4 { &FOUR_BANDS } else { &THREE_BANDS };
        assert_eq!(bands.len(), minutes.len(), "{food}");
        for (edges, printed) in bands.iter().zip(minutes) {
            for feet in edges {
                assert_eq!(
                    self.lines(food, CannerKind::BoilingWater, *feet),
                    [(*printed, None)],
                    "{food}, {feet} ft"
                );
            }
        }
    }

    fn check_pressure(&self, food: &str, minutes: u32) {
        let dial =
            [(0, 11.0), (2000, 11.0), (2001, 12.0), (4000, 12.0), (4001, 13.0), (6001, 14.0), (8000, 14.0)];
        for (feet, psi) in dial {
            assert_eq!(self.lines(food, CannerKind::Dial, feet), [(minutes, Some(psi))], "{food}, {feet} ft");
        }
        for (feet, psi) in [(0, 10.0), (1000, 10.0), (1001, 15.0), (9000, 15.0)] {
            assert_eq!(
                self.lines(food, CannerKind::Weighted, feet),
                [(minutes, Some(psi))],
                "{food}, {feet} ft"
            );
        }
    }
}

/// Source: Guide 2, fruit and fruit products.
#[test]
fn fruit_is_boiled_as_printed() {
    let kitchen = Kitchen::open();
    let cells: &[(&str, &[u32])] = &[
        ("apple-juice hot pint", &[5, 10, 15]),
        ("apple-juice hot half-gallon", &[10, 15, 20]),
        ("grape-juice hot quart", &[5, 10, 15]),
        ("apples-sliced hot pint", &[20, 25, 30, 35]),
        ("apples-sliced hot quart", &[20, 25, 30, 35]),
        ("applesauce hot pint", &[15, 20, 20, 25]),
        ("applesauce hot quart", &[20, 25, 30, 35]),
        ("apricots-halved hot pint", &[20, 25, 30, 35]),
        ("apricots-halved raw quart", &[30, 35, 40, 45]),
        ("berries-whole hot quart", &[15, 20, 20, 25]),
        ("berries-whole raw quart", &[20, 25, 30, 35]),
        ("cherries-whole hot pint", &[15, 20, 20, 25]),
        ("cherries-whole raw pint", &[25, 30, 35, 40]),
        ("figs hot pint", &[45, 50, 55, 60]),
        ("figs hot quart", &[50, 55, 60, 65]),
        ("peach-halves hot quart", &[25, 30, 35, 40]),
        ("peach-halves raw pint", &[25, 30, 35, 40]),
        ("pear-halves hot pint", &[20, 25, 30, 35]),
        ("plums raw quart", &[25, 30, 35, 40]),
        ("rhubarb-stewed hot pint", &[15, 20, 25]),
        ("pineapple hot pint", &[15, 20, 20, 25]),
        ("grapefruit-orange-sections raw pint", &[10, 15, 20]),
    ];
    for (food, minutes) in cells {
        kitchen.check_boiling(food, minutes);
    }
}

/// Source: Guide 3, tomatoes and tomato products.
#[test]
fn tomatoes_are_boiled_as_printed() {
    let kitchen = Kitchen::open();
    for (food, minutes) in [
        ("tomato-juice hot pint", &[35, 40, 45, 50][..]),
        ("tomato-juice hot quart", &[40, 45, 50, 55]),
        ("tomatoes-crushed hot pint", &[35, 40, 45, 50]),
        ("tomatoes-crushed hot quart", &[45, 50, 55, 60]),
        ("tomato-sauce hot pint", &[35, 40, 45, 50]),
        ("tomato-sauce hot quart", &[40, 45, 50, 55]),
        ("tomatoes-whole-water raw pint", &[40, 45, 50, 55]),
        ("tomatoes-whole-water hot quart", &[45, 50, 55, 60]),
        ("tomatoes-whole-juice hot pint", &[85, 90, 95, 100]),
        ("tomatoes-whole-no-liquid raw quart", &[85, 90, 95, 100]),
        ("tomatillos hot pint", &[40, 45, 50, 55]),
        ("tomato-ketchup hot pint", &[15, 20, 25]),
        ("salsa-chile hot pint", &[15, 20, 25]),
    ] {
        kitchen.check_boiling(food, minutes);
    }
}

/// Source: Guide 6, pickles and fermented foods; Guide 7, jellies (jars sterilized).
#[test]
fn pickles_and_jellies_are_boiled_as_printed() {
    let kitchen = Kitchen::open();
    for (food, minutes) in [
        ("dill-pickles-fresh-pack raw pint", &[10, 15, 20][..]),
        ("dill-pickles-fresh-pack raw quart", &[15, 20, 25]),
        ("bread-and-butter-pickles hot pint", &[10, 15, 20]),
        ("beets-pickled hot pint", &[30, 35, 40, 45]),
        ("dilly-beans raw pint", &[5, 10, 15]),
        ("corn-relish hot pint", &[15, 20, 25]),
        ("piccalilli hot pint", &[5, 10, 15]),
        ("pickle-relish hot pint", &[10, 15, 20]),
        ("pepper-onion-relish hot pint", &[5, 10, 15]),
        ("peppers-bell-pickled hot pint", &[5, 10, 15]),
        ("peppers-hot-pickled raw pint", &[10, 15, 20]),
        ("okra-pickled hot pint", &[10, 15, 20]),
        ("jalapeno-rings-pickled hot pint", &[10, 15, 20]),
        ("sauerkraut hot pint", &[10, 15, 15, 20]),
        ("sauerkraut hot quart", &[15, 20, 20, 25]),
        ("sauerkraut raw pint", &[20, 25, 30, 35]),
        ("sauerkraut raw quart", &[25, 30, 35, 40]),
        ("jelly-no-added-pectin hot half-pint", &[5, 10, 15]),
    ] {
        kitchen.check_boiling(food, minutes);
    }
}

/// Source: Guide 4, vegetables; Guide 5, poultry, red meats and seafoods; Guide 3, sauces with vegetables.
#[test]
fn low_acid_food_is_canned_under_the_printed_pressure() {
    let kitchen = Kitchen::open();
    for (food, minutes) in [
        ("asparagus raw pint", 30),
        ("asparagus hot quart", 40),
        ("beans-snap hot pint", 20),
        ("beans-snap raw quart", 25),
        ("beans-lima-fresh raw pint", 40),
        ("beets hot pint", 30),
        ("beets hot quart", 35),
        ("carrots raw pint", 25),
        ("carrots hot quart", 30),
        ("corn-whole-kernel hot pint", 55),
        ("corn-whole-kernel raw quart", 85),
        ("corn-cream-style hot pint", 85),
        ("mushrooms hot pint", 45),
        ("okra hot pint", 25),
        ("okra hot quart", 40),
        ("peas-green raw pint", 40),
        ("peppers hot pint", 35),
        ("potatoes-white hot pint", 35),
        ("potatoes-white hot quart", 40),
        ("potatoes-sweet hot quart", 90),
        ("pumpkin-winter-squash-cubed hot pint", 55),
        ("greens hot quart", 90),
        ("succotash hot pint", 60),
        ("mixed-vegetables hot quart", 90),
        ("soup-mixed hot pint", 60),
        ("soup-mixed hot quart", 75),
        ("meat-strips-cubes raw pint", 75),
        ("meat-ground hot quart", 90),
        ("poultry-rabbit-boneless hot pint", 75),
        ("poultry-rabbit-bone-in raw quart", 75),
        ("meat-stock hot pint", 20),
        ("chile-con-carne hot pint", 75),
        ("tuna raw pint", 100),
        ("fish-pints raw pint", 100),
        ("spaghetti-sauce-no-meat hot pint", 20),
        ("spaghetti-sauce-meat hot quart", 70),
        ("mexican-tomato-sauce hot quart", 25),
        ("tomatoes-okra-zucchini hot pint", 30),
    ] {
        kitchen.check_pressure(food, minutes);
    }
}

/// Source: Guide 1, p. 1-22 and p. 1-18: how long a canner stands before it is opened, and steam canners by the
/// National Center for Home Food Preservation, Using Atmospheric Steam Canners: 45 minutes at the most.
#[test]
fn rests_and_the_steam_limit_are_those_of_the_rules() {
    let Kitchen(almanac) = Kitchen::open();
    let minutes =
        |rule: &str| almanac.require_rule(rule).expect("on file").value.and_then(|value| value.as_minutes());
    assert_eq!(minutes("pc-wait-open"), Some((Minutes(10), Minutes(10))));
    assert_eq!(minutes("pc-vent"), Some((Minutes(10), Minutes(10))));
    assert_eq!(minutes("bw-rest"), Some((Minutes(5), Minutes(5))));
    assert_eq!(minutes("steam-max"), Some((Minutes(45), Minutes(45))));
}
