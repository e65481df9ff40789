//! The things a cook names: what they are in the change rules, and their words in its closed list.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use almanac::{IngredientClass as Class, What};

use super::words::words_of;

/// A thing a cook may name.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Thing {
    /// As it was said.
    pub(crate) name: String,
    /// What it is in the change rules.
    pub(crate) classes: Vec<Class>,
    /// What it is called in the closed list of the change rules, when it is added or takes another's place.
    pub(crate) whats: Vec<What>,
}

impl Thing {
    /// Whether it is sugar itself, and no honey, syrup or sweetener.
    pub(crate) fn is_sugar(&self) -> bool {
        self.classes.contains(&Class::Sugar) && (self.name.ends_with("sugar") || self.name == "sweetness")
    }
}

impl Thing {
    /// Whether another thing is of its kind: a pepper and a pepper, an onion and an onion. Fruit, vegetables and
    /// spices at large are no kind.
    pub(crate) fn names_a_kind_of(&self, other: &Self) -> bool {
        let at_large = [Class::Produce, Class::LowAcidVegetable, Class::Spice, Class::Other, Class::Acid];
        self.classes.iter().any(|class| !at_large.contains(class) && other.classes.contains(class))
    }
}

/// Finds a thing by exactly these words.
pub(crate) fn find_thing(words: &[String]) -> Option<Thing> {
    /// The rows by their ways of saying, read like a sentence.
    static BY_WORDS: LazyLock<BTreeMap<Vec<String>, usize>> = LazyLock::new(|| {
        let ways =
            THINGS.iter().enumerate().flat_map(|(row, (ways, _, _))| ways.iter().map(move |way| (*way, row)));
        ways.map(|(way, row)| (words_of(way), row)).collect()
    });
    let (_, classes, whats) = THINGS[*BY_WORDS.get(words)?];
    Some(Thing { name: words.join(" "), classes: classes.to_vec(), whats: whats.to_vec() })
}

type ThingRow = (&'static [&'static str], &'static [Class], &'static [What]);

/// What is named, what it is, and its word in the closed list.
const THINGS: &[ThingRow] = &[
    // Acids.
    (&["acid", "acidity"], &[Class::Acid], &[]),
    (&["vinegar", "5 percent vinegar"], &[Class::Vinegar], &[What::Vinegar]),
    (
        &["white vinegar", "distilled vinegar", "white distilled vinegar", "distilled white vinegar"],
        &[Class::Vinegar],
        &[What::WhiteVinegar, What::Vinegar],
    ),
    (
        &["cider vinegar", "apple cider vinegar", "apple vinegar"],
        &[Class::Vinegar],
        &[What::CiderVinegar, What::Vinegar],
    ),
    (
        &["wine vinegar", "red wine vinegar", "white wine vinegar"],
        &[Class::Vinegar],
        &[What::WineVinegar, What::Vinegar],
    ),
    (&["rice vinegar", "rice wine vinegar"], &[Class::Vinegar], &[What::RiceVinegar, What::Vinegar]),
    (&["malt vinegar"], &[Class::Vinegar], &[What::MaltVinegar, What::Vinegar]),
    (&["balsamic vinegar", "balsamic"], &[Class::Vinegar], &[What::Vinegar]),
    (&["homemade vinegar", "home made vinegar", "own vinegar"], &[Class::Vinegar], &[What::HomemadeVinegar]),
    (
        &["weak vinegar", "weaker vinegar", "cleaning vinegar", "salad vinegar"],
        &[Class::Vinegar],
        &[What::VinegarUnder5Percent],
    ),
    (
        &["lemon juice", "bottled lemon juice", "lemon", "bottled lemon"],
        &[Class::LemonJuice],
        &[What::BottledLemonJuice],
    ),
    (
        &[
            "fresh lemon juice",
            "fresh squeezed lemon juice",
            "freshly squeezed lemon juice",
            "squeezed lemon juice",
            "fresh lemon",
            "fresh lime juice",
            "fresh squeezed lime juice",
            "fresh lime",
            "fresh citrus juice",
            "fresh squeezed juice",
        ],
        &[Class::LemonJuice],
        &[What::FreshCitrusJuice],
    ),
    (&["lime juice", "bottled lime juice"], &[Class::LemonJuice], &[What::BottledLimeJuice]),
    (&["key lime juice", "key lime"], &[Class::LemonJuice], &[What::KeyLimeJuice]),
    (&["citric acid"], &[Class::Acid], &[What::CitricAcid]),
    // Sweet.
    (&["sugar", "white sugar", "granulated sugar", "sweetness"], &[Class::Sugar], &[]),
    (&["brown sugar", "light brown sugar", "dark brown sugar"], &[Class::Sugar], &[What::BrownSugar]),
    (&["honey", "mild honey"], &[Class::Sugar], &[What::Honey]),
    (&["corn syrup", "light corn syrup"], &[Class::Sugar], &[What::CornSyrup]),
    (&["maple syrup", "agave", "agave syrup", "molasses"], &[Class::Sugar], &[]),
    (&["sucralose"], &[Class::Sugar], &[What::Sucralose]),
    (
        &[
            "sweetener",
            "artificial sweetener",
            "sugar substitute",
            "stevia",
            "aspartame",
            "saccharin",
            "erythritol",
            "xylitol",
        ],
        &[Class::Sugar],
        &[],
    ),
    // Salt.
    (&["salt", "canning salt", "pickling salt", "canning or pickling salt"], &[Class::Salt], &[]),
    (&["table salt", "iodized salt", "iodised salt"], &[Class::Salt], &[What::TableSalt]),
    (&["kosher salt", "flake salt", "sea salt", "flaked salt"], &[Class::Salt], &[What::FlakeSaltByVolume]),
    (
        &["reduced sodium salt", "low sodium salt", "lite salt", "light salt", "salt substitute"],
        &[Class::Salt],
        &[What::ReducedSodiumSalt],
    ),
    // Onions, garlic, peppers.
    (&["onion"], &[Class::Onion], &[What::Onion]),
    (
        &["red onion", "yellow onion", "white onion", "another onion", "other onion", "sweet onion"],
        &[Class::Onion],
        &[What::AnotherOnionColour, What::Onion],
    ),
    (
        &["garlic", "garlic clove", "clove garlic", "fresh garlic"],
        &[Class::Garlic],
        &[What::FreshGarlic, What::Garlic],
    ),
    (&["garlic powder", "dried garlic", "garlic salt", "onion powder", "dried onion"], &[Class::Spice], &[]),
    (
        &[
            "hot pepper",
            "chile",
            "chili",
            "chilli",
            "chile pepper",
            "chili pepper",
            "jalapeno",
            "jalapeño",
            "serrano",
            "habanero",
            "cayenne",
            "jalapeno pepper",
            "serrano pepper",
            "habanero pepper",
            "banana pepper",
            "hungarian pepper",
            "poblano",
            "poblano pepper",
            "hotter pepper",
            "fresh pepper",
            "fresh hot pepper",
        ],
        &[Class::HotPepper],
        &[What::AnotherPepperKind, What::Peppers, What::FreshPepper],
    ),
    (
        &[
            "bell pepper",
            "sweet pepper",
            "green pepper",
            "red pepper",
            "yellow pepper",
            "orange pepper",
            "green bell pepper",
            "red bell pepper",
            "yellow bell pepper",
            "bell",
            "capsicum",
            "milder pepper",
            "mild pepper",
        ],
        &[Class::SweetPepper],
        &[What::AnotherPepperKind, What::Peppers],
    ),
    (
        &[
            "pepper",
            "other pepper",
            "another pepper",
            "different pepper",
            "other colour pepper",
            "other color pepper",
        ],
        &[Class::HotPepper, Class::SweetPepper],
        &[What::AnotherPepperKind, What::Peppers],
    ),
    (
        &["canned chile", "canned pepper", "canned jalapeno", "canned green chile"],
        &[Class::HotPepper],
        &[What::CannedForFresh],
    ),
    // Spices and herbs.
    (
        &[
            "spice",
            "dried spice",
            "pickling spice",
            "black pepper",
            "peppercorn",
            "cumin",
            "chili powder",
            "chile powder",
            "pepper flake",
            "red pepper flake",
            "hot pepper flake",
            "mustard seed",
            "mustard",
            "celery seed",
            "dill seed",
            "turmeric",
            "clove",
            "allspice",
            "nutmeg",
            "ginger",
            "paprika",
            "bay leaf",
            "seasoning",
            "dried seasoning",
        ],
        &[Class::Spice],
        &[],
    ),
    (&["cinnamon"], &[Class::Spice], &[What::Cinnamon]),
    (&["almond extract"], &[Class::Other], &[What::AlmondExtract]),
    (&["food colour", "food color", "food colouring", "food coloring"], &[Class::Other], &[What::FoodColour]),
    (
        &[
            "dried herb",
            "dry herb",
            "oregano",
            "dried oregano",
            "dried basil",
            "dried dill",
            "dried cilantro",
            "thyme",
        ],
        &[Class::HerbDried],
        &[],
    ),
    (
        &[
            "herb",
            "fresh herb",
            "cilantro",
            "coriander",
            "parsley",
            "dill",
            "fresh dill",
            "dill head",
            "fresh cilantro",
            "fresh oregano",
        ],
        &[Class::HerbFresh],
        &[],
    ),
    (&["basil", "fresh basil"], &[Class::HerbFresh], &[What::FreshBasil]),
    // Vegetables.
    (
        &[
            "vegetable",
            "corn",
            "sweet corn",
            "carrot",
            "celery",
            "pea",
            "cucumber",
            "zucchini",
            "courgette",
            "cabbage",
            "cauliflower",
            "potato",
            "beet",
            "okra",
            "green bean",
            "snap bean",
            "broccoli",
            "eggplant",
            "turnip",
            "radish",
            "bean",
            "black bean",
            "kidney bean",
            "asparagus",
            "leek",
            "horseradish",
            "olive",
            "avocado",
            "jicama",
        ],
        &[Class::LowAcidVegetable],
        &[What::AnotherFood],
    ),
    (&["mushroom"], &[Class::LowAcidVegetable], &[What::Mushrooms, What::AnotherFood]),
    (&["wild mushroom"], &[Class::LowAcidVegetable], &[What::WildMushrooms, What::AnotherFood]),
    (
        &["squash", "winter squash", "summer squash", "pumpkin"],
        &[Class::LowAcidVegetable],
        &[What::Squash, What::AnotherFood],
    ),
    (&["sweet potato", "yam"], &[Class::LowAcidVegetable], &[What::SweetPotato, What::AnotherFood]),
    (
        &["leafy green", "green", "spinach", "kale", "chard"],
        &[Class::LowAcidVegetable],
        &[What::LeafyGreens, What::AnotherFood],
    ),
    (
        &["dried bean", "dry bean", "lentil"],
        &[Class::LowAcidVegetable],
        &[What::DriedBeans, What::AnotherFood],
    ),
    (
        &["soaked bean", "rehydrated bean", "cooked bean"],
        &[Class::LowAcidVegetable],
        &[What::RehydratedBeans, What::AnotherFood],
    ),
    (
        &["cream corn", "creamed corn", "cream style corn"],
        &[Class::LowAcidVegetable],
        &[What::CreamCorn, What::AnotherFood],
    ),
    // Tomatoes.
    (
        &["tomato", "ripe tomato", "red tomato", "paste tomato", "plum tomato", "roma"],
        &[Class::TomatoKind],
        &[What::Tomatoes],
    ),
    (&["slicing tomato", "beefsteak", "beefsteak tomato"], &[Class::TomatoKind], &[What::SlicingTomatoes]),
    (&["green tomato"], &[Class::TomatoKind], &[What::GreenTomatoes]),
    (&["tomatillo"], &[Class::TomatoKind], &[What::Tomatillos]),
    (&["overripe tomato", "soft tomato"], &[Class::TomatoKind], &[What::Overripe]),
    (
        &["frosted tomato", "frost killed tomato", "tomato from frosted vine", "tomato from dead vine"],
        &[Class::TomatoKind],
        &[What::FrostedVines],
    ),
    (&["canned tomato", "frozen tomato"], &[Class::TomatoKind], &[What::CannedOrFrozen]),
    (&["tomato paste"], &[Class::TomatoKind], &[What::TomatoPaste]),
    (&["tomato juice"], &[Class::Water], &[What::TomatoJuice]),
    // Fruit.
    (
        &[
            "fruit",
            "another fruit",
            "peach",
            "apple",
            "pear",
            "plum",
            "cherry",
            "grape",
            "pineapple",
            "mango",
            "rhubarb",
            "melon",
            "banana",
        ],
        &[Class::Produce],
        &[What::AnotherFood],
    ),
    (
        &["berry", "another berry", "blackberry", "raspberry", "strawberry", "blueberry", "gooseberry"],
        &[Class::Produce],
        &[What::AnotherBerry, What::AnotherFood],
    ),
    (&["elderberry"], &[Class::Produce], &[What::Elderberries]),
    (&["white peach", "white fleshed peach", "white flesh peach"], &[Class::Produce], &[What::WhitePeaches]),
    (&["white nectarine", "white fleshed nectarine"], &[Class::Produce], &[What::WhiteNectarines]),
    (&["nectarine"], &[Class::Produce], &[What::Nectarines, What::AnotherFood]),
    (&["apricot"], &[Class::Produce], &[What::Apricots, What::AnotherFood]),
    (
        &["frozen fruit", "canned fruit", "frozen berry", "frozen peach fruit"],
        &[Class::Produce],
        &[What::CannedOrFrozen],
    ),
    (&["frozen cherry"], &[Class::Produce], &[What::FrozenCherries, What::CannedOrFrozen]),
    (&["frozen blueberry"], &[Class::Produce], &[What::FrozenBlueberries, What::CannedOrFrozen]),
    (&["frozen apple"], &[Class::Produce], &[What::FrozenApples, What::CannedOrFrozen]),
    (&["frozen peach"], &[Class::Produce], &[What::FrozenPeaches, What::CannedOrFrozen]),
    (&["bottled juice", "bought juice", "store bought juice"], &[Class::Produce], &[What::BoughtJuice]),
    (&["fresh fruit"], &[Class::Produce], &[]),
    // Starch, fat, dairy, grain, meat.
    (&["flour"], &[Class::Thickener], &[What::Flour]),
    (&["cornstarch", "corn starch", "cornflour"], &[Class::Thickener], &[What::Cornstarch]),
    (&["tapioca"], &[Class::Thickener], &[What::Tapioca]),
    (&["instant starch", "instant modified starch"], &[Class::Thickener], &[What::InstantStarch]),
    (
        &["thickener", "starch", "arrowroot", "roux", "gelatin", "modified starch", "canning starch"],
        &[Class::Thickener],
        &[],
    ),
    (&["oil", "olive oil", "vegetable oil", "salad oil"], &[Class::Oil], &[What::Oil]),
    (&["fat", "bacon fat", "lard", "bacon"], &[Class::Oil], &[]),
    (&["butter", "margarine"], &[Class::Oil, Class::Other], &[What::Butter]),
    (&["cream"], &[Class::Other], &[What::Cream]),
    (&["milk", "cheese", "yogurt"], &[Class::Other], &[What::Milk]),
    (&["pasta", "macaroni", "spaghetti"], &[Class::Other], &[What::Pasta]),
    (&["noodle"], &[Class::Other], &[What::Noodles]),
    (&["rice"], &[Class::Other], &[What::Rice]),
    (&["barley"], &[Class::Other], &[What::Barley]),
    (&["dumpling"], &[Class::Other], &[What::Dumplings]),
    (&["meat", "beef", "ground beef", "sausage", "chicken", "pork", "ham"], &[Class::Other], &[What::Meat]),
    (&["seafood", "fish", "shrimp", "clam"], &[Class::Other], &[What::Seafood]),
    // Liquids, pectin, firming.
    (&["water"], &[Class::Water], &[What::Water]),
    (&["broth", "stock"], &[Class::Water], &[What::Broth]),
    (&["syrup"], &[Class::Water, Class::Sugar], &[What::Syrup]),
    (&["beet water", "beet cooking water"], &[Class::Water], &[What::BeetCookingWater]),
    (
        &["juice", "unsweetened juice", "apple juice", "white grape juice", "pineapple juice"],
        &[Class::Water, Class::Sugar],
        &[What::UnsweetenedJuice],
    ),
    (&["pectin"], &[Class::Pectin], &[]),
    (&["liquid pectin", "powdered pectin"], &[Class::Pectin], &[What::OtherPectinForm]),
    (
        &["low sugar pectin", "modified pectin", "no sugar pectin", "sugar free pectin"],
        &[Class::Pectin],
        &[What::ModifiedPectin],
    ),
    (&["alum"], &[Class::Other], &[What::Alum]),
    (&["pickling lime", "lime soak"], &[Class::Other], &[What::LimeSoak]),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_way_of_naming_a_thing_names_two() {
        let mut seen = std::collections::BTreeMap::new();
        for (row, (ways, _, _)) in THINGS.iter().enumerate() {
            for way in *ways {
                let before = seen.insert(words_of(way), row);
                assert!(before.is_none_or(|other| other == row), "{way:?} names two things");
            }
        }
    }
}
