//! Everything that is not for canning is refused under the names people say.

use std::collections::BTreeSet;

use almanac::{Almanac, Verdict};
use batch::clear::refuse_words;
use kitchen::ask::{ClearAnswer, ClearWords, clear};

/// The refusal, and names for it as they are asked over a counter.
const NAMES: &[(&str, &[&str])] = &[
    ("pumpkin-squash-puree", &["pumpkin puree", "mashed pumpkin", "butternut puree", "pumpkin pie filling"]),
    ("pumpkin-butter", &["pumpkin butter", "butternut squash butter"]),
    (
        "summer-squash-alone",
        &["zucchini", "yellow squash", "plain summer squash", "crookneck squash", "courgettes"],
    ),
    ("sweet-potato-mashed", &["mashed sweet potatoes", "sweet potato puree", "yam puree"]),
    ("dense-purees", &["refried beans", "mashed potatoes", "hummus", "bean dip"]),
    ("dairy", &["milk", "butter", "cheese sauce", "yogurt", "canned butter"]),
    ("eggs", &["pickled eggs", "hard-boiled eggs"]),
    ("garlic-in-oil", &["garlic in oil", "garlic in olive oil", "garlic confit"]),
    (
        "herbs-vegetables-in-oil",
        &["pesto", "basil in olive oil", "sun-dried tomatoes in oil", "chili oil", "peppers in oil"],
    ),
    ("starch-thickened", &["gravy", "stew thickened with flour", "pie filling with cornstarch"]),
    ("pasta-rice-noodles", &["macaroni", "chicken and rice", "noodles", "ravioli"]),
    ("bread-cake-in-jar", &["bread in a jar", "cake in a jar", "banana bread", "pumpkin bread in a jar"]),
    ("broccoli", &["broccoli", "canned broccoli", "broccoli florets"]),
    ("brussels-sprouts-plain", &["brussels sprouts", "plain sprouts"]),
    ("cabbage-plain", &["cabbage", "canned green cabbage", "cabbage heads"]),
    ("cauliflower-plain", &["cauliflower", "plain canned cauliflower", "cauliflower florets"]),
    ("eggplant-plain", &["eggplant", "aubergines"]),
    ("lettuce-greens-raw", &["lettuce", "artichoke hearts"]),
    (
        "low-acid-in-boiling-water",
        &[
            "green beans in a water bath",
            "venison in a water bath",
            "water bath canning chicken",
            "corn in boiling water",
            "soup in a water bath",
        ],
    ),
    (
        "vinegar-does-not-replace-pressure",
        &["green beans with vinegar", "a splash of vinegar instead of pressure"],
    ),
    ("aspirin-or-chemical-canning", &["aspirin in tomatoes", "canning powder"]),
    ("wild-mushrooms", &["wild mushrooms", "morels", "foraged mushrooms", "porcini"]),
    ("tomatoes-dead-vines", &["tomatoes from dead vines", "frost-killed tomatoes", "tomatoes after a frost"]),
    ("untested-salsa", &["my own salsa", "grandma's salsa", "my salsa recipe", "family salsa"]),
    ("soup-with-thickener", &["chicken noodle soup", "cream of mushroom soup", "soup with rice"]),
    ("cream-corn-quarts", &["creamed corn in quarts", "quarts of cream-style corn"]),
    ("edible-pod-peas", &["sugar snap peas", "snow peas", "mangetout"]),
    ("oven-canning", &["oven canning", "canning in the oven"]),
    (
        "open-kettle",
        &["open-kettle canning", "turning jars upside down", "inversion canning", "flip the jars over"],
    ),
    ("dishwasher-canning", &["dishwasher canning", "sealing jars in the dishwasher"]),
    ("microwave-canning", &["microwave canning", "jars in the microwave"]),
    ("solar-canning", &["solar canning", "canning in the sun"]),
    (
        "steam-canner-low-acid",
        &["beans in a steam canner", "meat in a steam canner", "steam canning vegetables"],
    ),
    ("steam-canner-over-45", &["steam canner over 45 minutes", "steam canner longer than 45 minutes"]),
    ("pressure-saucepan", &["pressure saucepan", "small pressure cooker", "canning in a pressure cooker"]),
    ("electric-multicooker", &["electric pressure cooker", "electric multi-cooker", "multicooker"]),
    ("oversize-jars", &["half-gallon jars", "gallon jar", "two-quart jar"]),
    (
        "one-trip-jars",
        &["mayonnaise jars", "store-bought jars", "old pickle jars", "spaghetti sauce jars from the store"],
    ),
    ("used-lids", &["used lids", "last year's lids", "reusing lids", "old lids"]),
    ("paraffin-seal", &["paraffin", "sealing jelly with wax"]),
    ("white-peaches", &["white peaches", "white nectarines", "white peach jam"]),
    ("elderberries", &["elderberries", "elderberry syrup"]),
    (
        "banana-melon-papaya-coconut",
        &["mashed bananas", "melon", "papaya puree", "banana butter", "watermelon"],
    ),
    ("pickled-garlic-shelf", &["pickled garlic", "garlic pickles"]),
    ("canning-without-altitude", &["ignoring altitude", "sea-level times"]),
    ("candied-pepper-rings", &["candied jalapenos", "cowboy candy", "sweet hot pepper rings"]),
    ("starch-in-salsa", &["salsa thickened with cornstarch", "flour in salsa"]),
    ("pressure-over-15", &["over 15 psi", "20 pounds of pressure", "more than 15 pounds of pressure"]),
];

fn load() -> Almanac {
    Almanac::load().expect("the tables built in have no fault")
}

/// What is said of a food or practice named in words, with the commonest of everything else.
fn ask(almanac: &Almanac, food: &str) -> ClearAnswer {
    clear(almanac, &words(food)).unwrap_or_else(|error| panic!("{food}: {error}"))
}

fn words(food: &str) -> ClearWords {
    ClearWords {
        food: food.into(),
        pack: Some("hot".into()),
        jar: Some("pint".into()),
        canner: Some("boiling-water".into()),
        altitude: Some("500 ft".into()),
        ..ClearWords::default()
    }
}

/// Source: the publication named in each row of the table of what is not for canning.
#[test]
fn what_is_not_for_canning_is_refused_under_the_names_people_say() {
    let almanac = load();
    let mut missed = Vec::new();
    for (id, names) in NAMES {
        let refusal = almanac.refusal(id).unwrap_or_else(|| panic!("no refusal {id}"));
        for name in *names {
            let said = match clear(&almanac, &ClearWords { food: (*name).into(), ..ClearWords::default() }) {
                Ok(ClearAnswer::Refused(food)) => food,
                other => {
                    missed.push(format!("{id}: {name}: {other:?}"));
                    continue;
                }
            };
            assert_ne!(said.refused.verdict, Verdict::Tested, "{name}");
            if !said.refused.because.iter().any(|reason| reason.text.starts_with(&*refusal.item)) {
                missed.push(format!("{id}: {name}: {:?}", said.refused.because));
            }
            assert!(!said.refused.instead.is_empty(), "{name} is refused with no way out");
            assert!(!said.refused.sources.is_empty(), "{name} is refused without a source");
        }
    }
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}

#[test]
fn every_refusal_has_two_names_here() {
    let named: BTreeSet<&str> =
        NAMES.iter().filter(|(_, names)| names.len() >= 2).map(|(id, _)| *id).collect();
    for refusal in load().refusals() {
        assert!(named.contains(refusal.id.as_str()), "{} has fewer than two names here", refusal.id);
    }
}

/// No name of a refused thing leads to a process, whatever else is asked for.
#[test]
fn no_refused_name_is_answered_with_a_process() {
    let almanac = load();
    for name in NAMES.iter().flat_map(|(_, names)| *names) {
        assert_ne!(ask(&almanac, name).verdict(), Verdict::Tested, "{name}");
    }
}

/// A tested food is not refused under its own name, however many names a refusal has.
#[test]
fn no_food_or_formula_on_file_is_refused_under_its_own_name() {
    let almanac = load();
    for product in almanac.products() {
        for name in std::iter::once(product.id.as_str()).chain(product.names.iter().map(|name| &**name)) {
            let answer = clear(&almanac, &words(name));
            assert!(!matches!(answer, Ok(ClearAnswer::Refused(_))), "{name}: {answer:?}");
        }
    }
    let refused: Vec<String> = almanac
        .formulas()
        .filter(|formula| formula.product.is_some())
        .filter(|formula| refuse_words(&almanac, &formula.name).is_some())
        .map(|formula| formula.name.to_string())
        .collect();
    // Vegetables in oil are refused by those words; the one tested formula that holds oil is asked for by its id.
    assert_eq!(refused, ["peppers marinated with oil and lemon"]);
}
