//! Words: a sentence cut into plain words, and the things a cook names.

use almanac::{IngredientClass as Class, What};

/// Words that carry no meaning of their own in a change.
const FILLERS: &[&str] = &[
    "a", "an", "the", "some", "of", "my", "our", "please", "use", "using", "only", "just", "i", "we", "want",
    "to", "would", "like", "it", "them", "this", "that", "bit", "little", "slightly", "lot", "much", "all",
    "is", "will", "make", "put", "can", "at", "any", "kind", "sort", "amount", "content", "level",
];

/// Ways of saying that one thing takes the place of another; the first one named is the new one.
const TAKES_PLACE: &[&str] = &["instead of", "in place of", "rather than", "in lieu of", "for"];

/// The word that stands for all of [`TAKES_PLACE`] in a read sentence.
pub(crate) const FOR: &str = "for";

/// The word that parts two things; a comma is read as one.
pub(crate) const AND: &str = "and";

/// A sentence as plain words: lower case, one form for singular and plural, no fillers.
pub(crate) fn words_of(sentence: &str) -> Vec<String> {
    let mut spaced = String::with_capacity(sentence.len());
    let mut last = ' ';
    for mark in sentence.to_lowercase().chars() {
        match mark {
            '%' => spaced.push_str(" percent "),
            '½' => spaced.push_str(" half "),
            '¼' => spaced.push_str(" 1/4 "),
            // A dot or a comma between digits belongs to the number.
            '.' | ',' if last.is_ascii_digit() => spaced.push('.'),
            '/' => spaced.push('/'),
            '+' => spaced.push_str(" plus "),
            ',' | ';' => spaced.push_str(" and "),
            _ if mark.is_alphanumeric() => spaced.push(mark),
            _ => spaced.push(' '),
        }
        last = mark;
    }
    let spaced = spaced.replace("per cent", "percent");
    let mut plain = format!(" {} ", spaced.split_whitespace().collect::<Vec<_>>().join(" "));
    for way in TAKES_PLACE {
        plain = plain.replace(&format!(" {way} "), &format!(" {FOR} "));
    }
    let words: Vec<String> = plain
        .split_whitespace()
        .map(|word| word.trim_end_matches(['.', '/']))
        .filter(|word| !word.is_empty() && !FILLERS.contains(word))
        .map(singular)
        .collect();
    trim_ands(&words).to_vec()
}

/// The words without an `and` at either end, which a comma may have left there.
fn trim_ands(mut words: &[String]) -> &[String] {
    while let [first, rest @ ..] = words
        && first == AND
    {
        words = rest;
    }
    while let [rest @ .., last] = words
        && last == AND
    {
        words = rest;
    }
    words
}

/// The singular of a word, by its ending; numbers and short words stay.
fn singular(word: &str) -> String {
    if word.len() < 4 || word.ends_with("ss") || word.ends_with("us") || word == "molasses" {
        return word.to_owned();
    }
    if let Some(stem) = word.strip_suffix("ies") {
        return format!("{stem}y");
    }
    if let Some(stem) = word.strip_suffix("oes") {
        return format!("{stem}o");
    }
    if let Some(stem) = word.strip_suffix("ches").or_else(|| word.strip_suffix("shes")) {
        return format!("{stem}{}", &word[word.len() - 4..word.len() - 2]);
    }
    word.strip_suffix('s').unwrap_or(word).to_owned()
}

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

/// Finds a thing by exactly these words.
pub(crate) fn find_thing(words: &[String]) -> Option<Thing> {
    let said = words.join(" ");
    let row = THINGS.iter().find(|row| row.0.iter().any(|way| same_words(way, words)))?;
    Some(Thing { name: said, classes: row.1.to_vec(), whats: row.2.to_vec() })
}

/// Whether a phrase of ours, read like a sentence, is these words.
pub(crate) fn same_words(phrase: &str, words: &[String]) -> bool {
    words_of(phrase) == words
}

/// Whether one of several phrases is these words.
pub(crate) fn is_one_of(phrases: &[&str], words: &[String]) -> bool {
    phrases.iter().any(|phrase| same_words(phrase, words))
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

    fn check(sentence: &str, words: &str) {
        assert_eq!(words_of(sentence).join(" "), words, "{sentence:?}");
    }

    #[test]
    fn a_sentence_becomes_plain_words() {
        check("Use a bit less of the Vinegar, please!", "less vinegar");
        check("2.25 % salt", "2.25 percent salt");
        check("2,25% salt", "2.25 percent salt");
        check("honey instead of sugar", "honey for sugar");
        check("tomatoes in place of berries", "tomato for berry");
        check("4 per cent vinegar", "4 percent vinegar");
        check("half-pint jars", "half pint jar");
        check("molasses, no less", "molasses and no less");
    }

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
