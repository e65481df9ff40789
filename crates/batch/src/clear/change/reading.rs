//! Reading a change in the cook's own words. Every word must be understood; what is left over hands the question
//! back.

use almanac::{CannerKind, Change, Formula, IngredientClass as Class, JarSize, Pack, Part, RuleId, What};

use super::phrases::find_phrase;
use super::setting::Setting;
use super::things::{Thing, find_thing};
use super::vessels::jar_pack_or_canner;
use super::words::{AND, FOR, words_of};
use crate::clear::question::Misread;

/// What a cook means by a change.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Meaning {
    /// Less of it.
    Lower(Thing),
    /// None of it.
    Omit(Thing),
    /// More of it.
    Raise(Thing, Option<Amount>),
    /// Something that was not there, or more of what was.
    Add(Thing, Option<Amount>),
    /// One thing for another.
    Replace {
        /// What goes out.
        old: Thing,
        /// What comes in.
        new: Thing,
        /// How much of the old is replaced, when not all.
        share: Option<Amount>,
    },
    /// Vinegar of this strength in percent.
    VinegarOf(f64),
    /// Salt of this share in percent of the produce.
    SaltOf(f64),
    /// One of the fixed ways of saying something about jars, packs, canners, batches and practices.
    Fixed(Change, Class, Option<What>),
    /// Another jar, looked up as such.
    Jar {
        /// Larger or smaller.
        change: Change,
        /// The jar, where it is named.
        to: JarSize,
    },
    /// Another pack, looked up as such.
    Pack(Pack),
    /// Another canner, looked up as such.
    Canner(CannerKind),
    /// The variation that a row prints in these very words.
    AsPrinted(RuleId),
}

/// An amount said in a change.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Amount {
    /// How many.
    pub(crate) number: f64,
    /// Of what: a unit as the change rules write it.
    pub(crate) unit: &'static str,
}

/// Reads one change.
pub(crate) fn read_change(
    sentence: &str,
    setting: &Setting<'_>,
    formula: Option<&Formula>,
) -> Result<Vec<Meaning>, Misread> {
    let words = words_of(sentence);
    if words.is_empty() {
        return Err(Misread::Empty);
    }
    read_clause(&words, setting, formula).or_else(|misread| {
        // "no salt and less sugar": each half may stand by itself.
        let halves: Vec<&[String]> = words.split(|word| word == AND).collect();
        if halves.len() < 2 {
            return Err(misread);
        }
        let mut all = Vec::new();
        for half in halves {
            all.extend(read_clause(half, setting, formula).map_err(|_| misread.clone())?);
        }
        Ok(all)
    })
}

fn read_clause(
    words: &[String],
    setting: &Setting<'_>,
    formula: Option<&Formula>,
) -> Result<Vec<Meaning>, Misread> {
    if let Some(meaning) = find_phrase(words) {
        return Ok(vec![under_pressure(meaning, setting)]);
    }
    if let Some(meaning) = jar_pack_or_canner(words, setting)? {
        return Ok(vec![meaning]);
    }
    if let Some(meaning) = percent(words) {
        // A weaker vinegar is refused wherever acid goes in, even where the formula names lemon juice first: vinegar may
        // stand for it in a jar of tomatoes.
        let sour =
            formula.is_some_and(|formula| formula.ingredients.iter().any(|one| one.part == Part::Acid));
        match meaning {
            Meaning::VinegarOf(share) if share < FULL_STRENGTH_PERCENT && sour => {}
            Meaning::VinegarOf(_) => require_named("vinegar", formula)?,
            _ => {}
        }
        return Ok(vec![meaning]);
    }
    if let Some(meanings) = replacement(words, formula)? {
        return Ok(meanings);
    }
    amount_change(words, formula)
}

/// Jars that are printed for boiling water are another question in a pressure canner.
fn under_pressure(meaning: Meaning, setting: &Setting<'_>) -> Meaning {
    match meaning {
        Meaning::Fixed(change, class, Some(What::MayonnaiseJars)) if setting.under_pressure => {
            Meaning::Fixed(change, class, Some(What::MayonnaiseJarsUnderPressure))
        }
        other => other,
    }
}

/// `4 percent vinegar`, `vinegar with 4 percent acidity`, `2 percent salt`.
fn percent(words: &[String]) -> Option<Meaning> {
    let said: Vec<&str> = words
        .iter()
        .map(String::as_str)
        .filter(|word| !["with", "in", "acidity", "acid"].contains(word))
        .collect();
    let (number, thing) = match said.as_slice() {
        [number, "percent", thing @ ..] if !thing.is_empty() => (number, thing),
        [thing @ .., number, "percent"] if !thing.is_empty() => (number, thing),
        _ => return None,
    };
    let share = number.parse::<f64>().ok().filter(|share| (0.0..=100.0).contains(share))?;
    let thing: Vec<String> = thing.iter().map(|word| (*word).to_owned()).collect();
    let found = find_thing(&thing)?;
    if found.classes.contains(&Class::Vinegar) {
        Some(Meaning::VinegarOf(share))
    } else if found.classes.contains(&Class::Salt) {
        Some(Meaning::SaltOf(share))
    } else {
        None
    }
}

/// `NEW for OLD`, `replace OLD with NEW`, `swap ONE for OTHER`.
fn replacement(words: &[String], formula: Option<&Formula>) -> Result<Option<Vec<Meaning>>, Misread> {
    let verb = words.first().map(String::as_str);
    if matches!(verb, Some("replace" | "swap" | "exchange" | "substitute")) {
        if let Some(at) = words.iter().position(|word| word == "with" || word == "by") {
            let (old, new) = (&words[1..at], &words[at + 1..]);
            return replace(old, new, formula).map(|one| Some(vec![one]));
        }
        if let Some(at) = words.iter().position(|word| word == FOR) {
            let (one, other) = (&words[1..at], &words[at + 1..]);
            // "Substitute honey for sugar" brings honey in. With the other verbs people say both, so both are
            // judged and the stricter verdict stands.
            let mut both = vec![replace(other, one, formula)?];
            if verb != Some("substitute") {
                both.extend(replace(one, other, formula));
            }
            return Ok(Some(both));
        }
        return Err(Misread::NoSuchChange);
    }
    let Some(at) = words.iter().position(|word| word == FOR) else { return Ok(None) };
    let (new, old) = (&words[..at], &words[at + 1..]);
    replace(old, new, formula).map(|one| Some(vec![one]))
}

fn replace(old: &[String], new: &[String], formula: Option<&Formula>) -> Result<Meaning, Misread> {
    let (share, old) = match old {
        [half, rest @ ..] if half == "half" => (Some(Amount { number: 50.0, unit: "percent" }), rest),
        [number, percent, rest @ ..] if percent == "percent" => (number_of(number, "percent"), rest),
        _ => (None, old),
    };
    let (old, new) = match_up(old, new);
    let old = require_thing(&old, formula)?;
    require_in_formula(&old, formula)?;
    let new = require_thing(&new, formula)?;
    Ok(Meaning::Replace { old, new, share })
}

/// "Green for red peppers", "dried herb for fresh": a word said once counts for both sides.
fn match_up(old: &[String], new: &[String]) -> (Vec<String>, Vec<String>) {
    let known = |words: &[String]| find_thing(words).is_some();
    let with_noun = |bare: &[String], whole: &[String]| -> Option<Vec<String>> {
        let noun = whole.last()?;
        let joined: Vec<String> = bare.iter().chain([noun]).cloned().collect();
        known(&joined).then_some(joined)
    };
    let adjective = |words: &[String]| matches!(words, [one] if ["fresh", "dried", "dry", "green", "red", "yellow", "white", "cider", "table", "brown", "frozen", "canned", "sweet", "hot"].contains(&one.as_str()));
    let old_full = adjective(old).then(|| with_noun(old, new)).flatten();
    let new_full = adjective(new).then(|| with_noun(new, old)).flatten();
    (old_full.unwrap_or_else(|| old.to_vec()), new_full.unwrap_or_else(|| new.to_vec()))
}

/// Less, none, more or something new.
fn amount_change(words: &[String], formula: Option<&Formula>) -> Result<Vec<Meaning>, Misread> {
    let [first, rest @ ..] = words else { return Err(Misread::NoSuchChange) };
    let rest = without_leading(rest, &["with", "in", "out", "down"]);
    match first.as_str() {
        "less" | "fewer" | "reduce" | "lower" | "half" | "halve" | "cut" | "decrease" => {
            lower(without_half(rest), formula)
        }
        "no" | "omit" | "without" | "skip" | "leave" | "drop" => each(rest, |one| {
            let thing = require_thing(one, formula)?;
            require_in_formula(&thing, formula)?;
            Ok(Meaning::Omit(thing))
        }),
        "more" | "extra" | "double" | "twice" | "increase" | "raise" | "triple" => each(rest, |one| {
            let (amount, one) = leading_amount(one);
            Ok(Meaning::Raise(require_thing(one, formula)?, amount))
        }),
        "add" | "with" | "plus" | "throw" => each(rest, |one| {
            let (amount, one) = leading_amount(without_leading(one, &["more", "extra"]));
            Ok(Meaning::Add(require_thing(one, formula)?, amount))
        }),
        "another" | "other" | "different" => another(words, rest, formula),
        "thicken" | "thickened" | "thickening" => thicken(rest, formula),
        _ => Err(Misread::NoSuchChange),
    }
}

/// "Cut the vinegar in half", "reduce by half the vinegar": how much less makes no difference.
fn without_half(words: &[String]) -> &[String] {
    match words {
        [rest @ .., by, half] if half == "half" && (by == "by" || by == "in") => rest,
        [half, rest @ ..] if half == "half" => rest,
        _ => words,
    }
}

fn lower(words: &[String], formula: Option<&Formula>) -> Result<Vec<Meaning>, Misread> {
    each(words, |one| {
        let thing = require_thing(one, formula)?;
        require_in_formula(&thing, formula)?;
        Ok(Meaning::Lower(thing))
    })
}

/// "Another pepper": one of its kind for the one in the formula.
fn another(words: &[String], rest: &[String], formula: Option<&Formula>) -> Result<Vec<Meaning>, Misread> {
    let thing = match find_thing(words) {
        Some(thing) => thing,
        None => require_thing(rest, formula)?,
    };
    require_in_formula(&thing, formula)?;
    Ok(vec![Meaning::Replace { old: thing.clone(), new: thing, share: None }])
}

fn thicken(words: &[String], formula: Option<&Formula>) -> Result<Vec<Meaning>, Misread> {
    if words.is_empty() {
        let name = "thickener".to_owned();
        let thing = Thing { name, classes: vec![Class::Thickener], whats: Vec::new() };
        return Ok(vec![Meaning::Add(thing, None)]);
    }
    each(words, |one| Ok(Meaning::Add(require_thing(one, formula)?, None)))
}

/// Reads each of several things parted by `and`.
fn each(
    words: &[String],
    read: impl Fn(&[String]) -> Result<Meaning, Misread>,
) -> Result<Vec<Meaning>, Misread> {
    if words.is_empty() {
        return Err(Misread::NoSuchChange);
    }
    // A thing may hold the word itself, as "canning and pickling salt" does.
    if let Ok(one) = read(words) {
        return Ok(vec![one]);
    }
    words.split(|word| word == AND).map(read).collect()
}

/// `1 tsp basil`, `2 cups onion`.
fn leading_amount(words: &[String]) -> (Option<Amount>, &[String]) {
    let [number, unit, rest @ ..] = words else { return (None, words) };
    let unit = match unit.as_str() {
        "tsp" | "teaspoon" => "tsp",
        "tbsp" | "tablespoon" => "tbsp",
        "cup" => "cup",
        "lb" | "pound" => "lb",
        _ => return (None, words),
    };
    match number_of(number, unit) {
        Some(amount) => (Some(amount), rest),
        None => (None, words),
    }
}

fn number_of(text: &str, unit: &'static str) -> Option<Amount> {
    let number = match text.split_once('/') {
        Some((over, under)) => over.parse::<f64>().ok()? / under.parse::<f64>().ok()?,
        None => match text {
            "one" => 1.0,
            "two" => 2.0,
            "half" => 0.5,
            _ => text.parse().ok()?,
        },
    };
    (number.is_finite() && number >= 0.0).then_some(Amount { number, unit })
}

pub(crate) fn without_leading<'a>(words: &'a [String], skipped: &[&str]) -> &'a [String] {
    match words {
        [first, rest @ ..] if skipped.contains(&first.as_str()) => rest,
        _ => words,
    }
}

/// A thing that is known by name, or stands in the formula under that name.
fn require_thing(words: &[String], formula: Option<&Formula>) -> Result<Thing, Misread> {
    if let Some(thing) = find_thing(words) {
        return Ok(thing);
    }
    let named = formula.into_iter().flat_map(|formula| &formula.ingredients).find(|ingredient| {
        let name = words_of(&ingredient.name);
        !words.is_empty() && words.iter().all(|word| name.contains(word))
    });
    match named {
        Some(ingredient) => {
            let classes = vec![class_of_part(ingredient.part)];
            Ok(Thing { name: words.join(" "), classes, whats: Vec::new() })
        }
        None => Err(Misread::NoSuchIngredient { what: words.join(" ") }),
    }
}

fn class_of_part(part: Part) -> Class {
    match part {
        Part::Produce => Class::Produce,
        Part::Acid => Class::Acid,
        Part::LowAcid => Class::LowAcidVegetable,
        Part::Salt => Class::Salt,
        Part::Sugar => Class::Sugar,
        Part::Pectin => Class::Pectin,
        Part::Liquid => Class::Water,
        Part::Spice => Class::Spice,
        Part::Oil => Class::Oil,
        Part::Other => Class::Other,
    }
}

/// What is to go out must be in.
fn require_in_formula(thing: &Thing, formula: Option<&Formula>) -> Result<(), Misread> {
    let Some(formula) = formula else { return Ok(()) };
    let said = words_of(&thing.name);
    let held = formula.ingredients.iter().any(|ingredient| {
        let name = words_of(&ingredient.name);
        said.iter().all(|word| name.contains(word))
            || thing.classes.iter().any(|class| may_be(*class, ingredient.part, &name))
    });
    if held {
        return Ok(());
    }
    Err(Misread::NotInFormula { what: thing.name.clone(), formula: formula.id.clone() })
}

/// Below this acidity a vinegar is weaker than any formula asks for (USDA, Complete Guide to Home Canning, 2015, p.
/// 1-28). It lets a question through and permits nothing: the verdict is that of the rules.
const FULL_STRENGTH_PERCENT: f64 = 5.0;

/// The word must stand in the name of an ingredient.
fn require_named(word: &str, formula: Option<&Formula>) -> Result<(), Misread> {
    let Some(formula) = formula else { return Ok(()) };
    if formula.ingredients.iter().any(|ingredient| words_of(&ingredient.name).iter().any(|said| said == word))
    {
        return Ok(());
    }
    Err(Misread::NotInFormula { what: word.to_owned(), formula: formula.id.clone() })
}

/// Whether an ingredient may be of a class. Generous: it only decides whether the question makes sense.
fn may_be(class: Class, part: Part, name: &[String]) -> bool {
    let named = |words: &[&str]| name.iter().any(|word| words.contains(&word.as_str()));
    match class {
        Class::Vinegar | Class::LemonJuice | Class::Acid => part == Part::Acid,
        Class::Sugar => part == Part::Sugar || named(&["syrup"]),
        Class::Salt => part == Part::Salt,
        Class::Pectin => part == Part::Pectin,
        Class::Water => part == Part::Liquid,
        Class::Oil => part == Part::Oil,
        Class::Spice | Class::HerbDried => part == Part::Spice,
        Class::HerbFresh => part == Part::Spice || part == Part::LowAcid,
        Class::Onion => named(&["onion"]),
        Class::Garlic => named(&["garlic"]),
        Class::HotPepper | Class::SweetPepper => named(&["pepper", "chile"]),
        Class::LowAcidVegetable => part == Part::LowAcid && !named(&["onion", "garlic", "pepper"]),
        Class::TomatoKind => named(&["tomato", "tomatillo"]),
        Class::Produce => part == Part::Produce,
        Class::Thickener => named(&["flour", "cornstarch", "starch"]),
        Class::Other => part == Part::Other,
    }
}
