//! Which rows of the density and yield tables speak of an ingredient.
//!
//! Formulas name an ingredient as a cook does ("long green chiles", "vinegar 5%"), the tables by kind ("peppers, hot
//! green chili"). This list joins them. It holds names only; every figure stays in its row.

/// The rows that speak of one kind of ingredient.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Kind {
    /// Words that must all begin a word of the ingredient's name.
    words: &'static [&'static str],
    /// Density rows, the fittest first.
    pub(crate) densities: &'static [&'static str],
    /// The row that says what is lost in trimming.
    pub(crate) trimming: Option<&'static str>,
}

/// The kind of an ingredient, by its name.
pub(crate) fn find_kind(name: &str) -> Option<&'static Kind> {
    let name = name.to_lowercase();
    let words: Vec<&str> =
        name.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    KINDS
        .iter()
        .find(|kind| kind.words.iter().all(|wanted| words.iter().any(|word| word.starts_with(wanted))))
}

const fn kind(
    words: &'static [&'static str],
    densities: &'static [&'static str],
    trimming: Option<&'static str>,
) -> Kind {
    Kind { words, densities, trimming }
}

/// The first entry whose words all occur is taken, so the narrower stands before the wider.
const KINDS: &[Kind] = &[
    // Acids and liquids.
    kind(&["vinegar", "wine"], &["vinegar, red wine"], None),
    kind(&["vinegar", "cider"], &["vinegar, cider"], None),
    kind(&["vinegar"], &["vinegar, distilled white"], None),
    kind(&["lemon", "peel"], &["lemon peel"], None),
    kind(&["lemon", "zest"], &["lemon peel"], None),
    kind(&["lemon", "juice"], &["lemon juice, bottled"], None),
    kind(&["orange", "juice"], &["orange juice"], None),
    kind(&["orange", "peel"], &["orange peel"], None),
    kind(&["pineapple", "juice"], &[], None),
    kind(
        &["grape", "juice"],
        &["grape juice"],
        Some("grapes, slip-skin (Concord type), skins and seeds out"),
    ),
    kind(&["plum", "juice"], &[], None),
    kind(&["syrup"], &[], None),
    kind(&["apple", "cider"], &["apple juice or cider"], None),
    kind(&["water"], &["water, tap"], None),
    kind(&["oil", "olive"], &["oil, olive"], None),
    kind(&["oil"], &["oil, soybean or salad"], None),
    kind(&["butter"], &["butter"], None),
    // Salt and sugar.
    kind(&["salt", "canning"], &["salt, canning or pickling"], None),
    kind(&["salt"], &["salt, table"], None),
    kind(&["sugar", "brown"], &["sugar, brown"], None),
    kind(&["sugar"], &["sugar, granulated"], None),
    kind(&["honey"], &["honey"], None),
    kind(&["pectin", "powder"], &["pectin, powdered"], None),
    kind(&["pectin", "liquid"], &["pectin, liquid"], None),
    // Spices and other dry things.
    kind(&["mustard", "seed"], &["mustard seed"], None),
    kind(&["mustard", "dry"], &["mustard seed, ground"], None),
    kind(&["mustard", "prepared"], &["mustard, prepared yellow"], None),
    kind(&["horseradish", "prepared"], &["horseradish, prepared"], None),
    kind(&["celery", "seed"], &["celery seed"], None),
    kind(&["turmeric"], &["turmeric, ground"], None),
    kind(&["allspice", "ground"], &["allspice, ground"], None),
    kind(&["clove", "ground"], &["cloves, ground"], None),
    kind(&["clove", "whole"], &[], None),
    kind(&["allspice"], &[], None),
    kind(&["cinnamon", "stick"], &[], None),
    kind(&["cinnamon"], &["cinnamon, ground"], None),
    kind(&["ginger", "ground"], &["ginger, ground"], None),
    kind(&["ginger"], &["ginger root"], Some("ginger root")),
    kind(&["nutmeg"], &["nutmeg, ground"], None),
    kind(&["oregano"], &["oregano, dried"], None),
    kind(&["paprika"], &["paprika"], None),
    kind(&["dill", "seed"], &["dill seed"], None),
    kind(&["dill"], &["dill"], None),
    kind(&["fennel"], &["fennel seed"], None),
    kind(&["bay"], &["bay leaf"], None),
    kind(&["pickling", "spice"], &["mixed pickling spice"], None),
    kind(&["ascorbic"], &["ascorbic acid"], None),
    kind(&["cornstarch"], &["cornstarch"], None),
    kind(&["flour"], &["flour, wheat all-purpose"], None),
    kind(&["lime", "pickling"], &["pickling lime"], None),
    kind(&["yolk"], &["egg yolk"], None),
    kind(&["egg"], &["egg, whole"], None),
    kind(&["pine", "nut"], &["pine nuts"], None),
    kind(&["peppercorn"], &["pepper, black"], None),
    kind(&["black", "pepper"], &["pepper, black"], None),
    kind(&["pepper", "flake"], &["red pepper flakes"], None),
    kind(&["red", "pepper", "powder"], &["red or cayenne pepper, ground"], None),
    kind(&["ground", "red", "pepper"], &["red or cayenne pepper, ground"], None),
    kind(&["cayenne"], &["red or cayenne pepper, ground"], None),
    kind(&["pepper", "sauce"], &[], None),
    // Peppers.
    kind(&["jalapeno"], &["peppers, jalapeno"], Some("peppers, jalapeno")),
    kind(&["serrano"], &["peppers, serrano"], Some("peppers, serrano")),
    kind(&["banana", "pepper"], &["peppers, banana"], Some("peppers, banana")),
    kind(&["chile"], &["peppers, hot green chili"], Some("peppers, hot green chili")),
    kind(&["hot", "pepper"], &["peppers, hot green chili"], Some("peppers, hot green chili")),
    kind(&["onion", "pepper"], &["onions", "peppers, sweet green"], Some("onions")),
    kind(&["celery", "pepper"], &["celery"], Some("celery")),
    kind(
        &["yellow", "pepper"],
        &["peppers, sweet yellow", "peppers, sweet green"],
        Some("peppers, sweet green"),
    ),
    kind(&["red", "pepper"], &["peppers, sweet red"], Some("peppers, sweet red")),
    kind(&["peppers"], &["peppers, sweet green"], Some("peppers, sweet green")),
    kind(&["bell"], &["peppers, sweet green"], Some("peppers, sweet green")),
    kind(&["pepper"], &["pepper, black"], None),
    // Vegetables.
    kind(&["canned", "tomato"], &["tomatoes, canned in juice"], None),
    kind(&["tomato", "paste"], &["tomato paste, canned", "tomatoes, red ripe"], None),
    kind(&["tomatillo"], &["tomatillos"], None),
    kind(&["green", "tomato"], &["tomatoes, green"], Some("tomatoes, green")),
    kind(&["tomato"], &["tomatoes, red ripe"], Some("tomatoes, red ripe")),
    kind(&["beet"], &["beets", "beets, boiled"], Some("beets")),
    kind(&["cucumber"], &["cucumber, with peel", "cucumber, peeled"], Some("cucumber, ends off")),
    kind(&["zucchini"], &["zucchini"], Some("zucchini")),
    kind(&["squash"], &["squash, yellow crookneck"], Some("squash, yellow crookneck")),
    kind(&["green", "onion"], &["onions, green (scallions)"], Some("onions, green")),
    kind(&["sweet", "onion"], &["sweet onion", "onions"], Some("onions, sweet")),
    kind(&["onion"], &["onions"], Some("onions")),
    kind(&["garlic"], &["garlic"], Some("garlic")),
    kind(&["celery"], &["celery"], Some("celery")),
    kind(&["carrot", "baby"], &["carrots, baby or rounds", "carrots"], Some("carrots")),
    kind(&["carrot"], &["carrots"], Some("carrots")),
    kind(&["cauliflower"], &["cauliflower"], Some("cauliflower")),
    kind(&["kidney"], &[], None),
    kind(&["garbanzo"], &[], None),
    kind(&["bean"], &["beans, snap green"], Some("beans, snap green")),
    kind(&["asparagus"], &["asparagus"], Some("asparagus")),
    kind(&["horseradish"], &["horseradish"], None),
    kind(&["napa"], &["cabbage, napa (pe-tsai)"], Some("cabbage, napa (pe-tsai)")),
    kind(&["cabbage"], &["cabbage, green"], Some("cabbage, green")),
    kind(&["corn"], &["corn, sweet yellow"], Some("corn, sweet, in husk")),
    kind(&["mushroom"], &["mushrooms, white"], Some("mushrooms")),
    kind(&["okra"], &["okra"], Some("okra")),
    kind(&["pea"], &["peas, green, shelled"], Some("peas, green, in pod")),
    kind(&["cilantro"], &["cilantro, fresh"], Some("cilantro")),
    kind(&["parsley"], &["parsley, fresh"], Some("parsley")),
    kind(&["basil"], &["basil, fresh"], Some("basil, fresh")),
    // Fruit.
    kind(&["raisin", "golden"], &["raisins, golden seedless"], None),
    kind(&["raisin", "white"], &["raisins, golden seedless"], None),
    kind(&["raisin"], &["raisins, seedless"], None),
    kind(&["crabapple"], &[], None),
    kind(&["pineapple"], &["pineapple, canned in juice, drained"], None),
    kind(&["apple"], &["apples, peeled", "apples, with skin", "apples"], Some("apples, cored and peeled")),
    kind(&["apricot"], &["apricots"], Some("apricots")),
    kind(&["peach"], &["peaches"], Some("peaches, freestone")),
    kind(&["pear"], &["pears"], Some("pears")),
    kind(&["plum"], &["plums"], Some("plums")),
    kind(&["cherries"], &["cherries, sour"], Some("cherries, sour")),
    kind(&["grapefruit"], &["grapefruit"], None),
    kind(&["grape"], &["grapes, slip-skin (Concord type)"], None),
    kind(&["orange"], &["oranges"], None),
    kind(&["blueberr"], &["blueberries"], Some("blueberries")),
    kind(&["strawberr"], &["strawberries"], Some("strawberries")),
    kind(&["raspberr"], &["raspberries"], Some("raspberries")),
    kind(&["blackberr"], &["blackberries"], Some("blackberries")),
    kind(&["cranberr"], &["cranberries"], Some("cranberries")),
    kind(&["berries"], &["berries", "blackberries"], Some("blackberries")),
    kind(&["rhubarb"], &["rhubarb"], Some("rhubarb")),
    kind(&["cantaloupe"], &["melon, cantaloupe"], Some("melon, cantaloupe")),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_formulas_find_the_rows_of_their_kind() {
        for (name, density) in [
            ("cider vinegar 5%", "vinegar, cider"),
            ("vinegar 5%", "vinegar, distilled white"),
            ("bottled lemon or lime juice", "lemon juice, bottled"),
            ("sweet red peppers", "peppers, sweet red"),
            ("red pepper flakes or cayenne", "red pepper flakes"),
            ("long green chiles", "peppers, hot green chili"),
            ("hot red peppers", "peppers, hot green chili"),
            ("pepper", "pepper, black"),
            ("green tomatoes", "tomatoes, green"),
            ("ripe tomatoes", "tomatoes, red ripe"),
            ("onions and/or peppers, any kind", "onions"),
            ("canning salt", "salt, canning or pickling"),
            ("light brown sugar", "sugar, brown"),
            ("celery seed", "celery seed"),
            ("pickling lime", "pickling lime"),
        ] {
            let found = find_kind(name).and_then(|kind| kind.densities.first().copied());
            assert_eq!(found, Some(density), "{name}");
        }
        assert_eq!(find_kind("jicama"), None);
    }
}
