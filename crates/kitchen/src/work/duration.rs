//! How long a line of a formula takes when the publication does not say.
//!
//! Hand work is timed by the work rates (minutes per kilogram), everything else by first guesses; both are
//! marked as estimates in the data and both are replaced by the household's own records later. A day planned at
//! typical speed is late every second time, so hand work is planned at the 80th percentile of the stated
//! range.

use almanac::{Action, Almanac, Attention, Equipment as Tool, FormulaStep, WorkRate};
use measure::Mass;

use super::title;
use crate::day::Units;

/// One batch as far as its work is concerned.
#[derive(Debug, Clone)]
pub(crate) struct Lot {
    /// Each produce ingredient.
    pub(crate) produce: Vec<LotProduce>,
    /// Jars or packages that come of it.
    pub(crate) containers: u32,
    /// The same in words: "7 quarts", "6 bags".
    pub(crate) vessels: String,
    /// How weights are said.
    pub(crate) units: Units,
    /// Whether there is a food processor to slice, chop and shred with.
    pub(crate) processor: bool,
}

/// A produce ingredient of a batch.
#[derive(Debug, Clone)]
pub(crate) struct LotProduce {
    /// As the formula prints it.
    pub(crate) printed: String,
    /// As the household calls what it uses for it.
    pub(crate) called: String,
    /// Its weight as it comes from the basket.
    pub(crate) mass: Mass,
}

impl Lot {
    /// A line of the formula with the produce called as the household calls it.
    pub(crate) fn in_their_words(&self, what: &str) -> String {
        let theirs =
            self.produce.iter().fold(what.to_owned(), |said, line| said.replace(&line.printed, &line.called));
        title::with_fractions(&theirs)
    }

    /// All the produce of the batch.
    pub(crate) fn total(&self) -> Mass {
        self.produce.iter().map(|line| line.mass).sum()
    }

    /// The produce a line speaks of, by its place: the ingredients it names, or all where it names none.
    pub(crate) fn lines_spoken_of(&self, what: &str) -> Vec<usize> {
        let words = content_words(what);
        let is_named =
            |&at: &usize| content_words(&self.produce[at].printed).iter().any(|word| words.contains(word));
        let named: Vec<usize> = (0..self.produce.len()).filter(is_named).collect();
        if named.is_empty() { (0..self.produce.len()).collect() } else { named }
    }

    /// The weight of the produce a line speaks of.
    pub(crate) fn spoken_of(&self, what: &str) -> Mass {
        self.lines_spoken_of(what).into_iter().map(|at| self.produce[at].mass).sum()
    }

    /// The names of the produce a line speaks of.
    fn names_spoken_of(&self, what: &str) -> String {
        let names = self.lines_spoken_of(what).into_iter().map(|at| self.produce[at].printed.as_str());
        names.collect::<Vec<_>>().join(" ")
    }
}

/// The quantile of a triangular distribution that hand work is planned at.
const PLANNED_QUANTILE: f64 = 0.8;

/// Kilograms that go into a blanching pot of two gallons at once: one pound a gallon
/// (NCHFP, Blanching Vegetables; recalled).
const BLANCH_LOT_KG: f64 = 0.9;

/// Minutes until the water boils again after each blanched lot, at most
/// (the printed rule is to use a smaller lot when it takes longer; recalled).
const BACK_TO_BOIL_MIN: f64 = 1.0;

/// The planned minutes of a line whose length the publication does not print, or prints for one lot only.
pub(crate) fn plan_minutes(almanac: &Almanac, line: &FormulaStep, lot: &Lot) -> u32 {
    let mass = lot.spoken_of(&line.what);
    let minutes = if goes_by_lots(line) {
        minutes_by_lots(almanac, line, mass)
    } else if let Some(rate) = line.minutes.is_none().then(|| find_rate(almanac, line, lot)).flatten() {
        let time = rate.time_for(mass);
        upper(f64::from(time.low.0), f64::from(time.typical.0), f64::from(time.high.0))
    } else {
        guess_minutes(almanac, line, lot, mass)
    };
    // Never overflows: a batch weighs at most a few dozen kilograms.
    libm::ceil(minutes.clamp(0.0, 100_000.0)) as u32
}

/// How long a line whose length is planned by [`plan_minutes`] may take, at the quickest, most often and at the slowest;
/// none for what goes lot by lot through a pot, which takes its printed minutes.
pub(crate) fn spread_minutes(almanac: &Almanac, line: &FormulaStep, lot: &Lot) -> Option<dayplan::Spread> {
    if goes_by_lots(line) || line.attention == Attention::None {
        return None;
    }
    let mass = lot.spoken_of(&line.what);
    if let Some(rate) = line.minutes.is_none().then(|| find_rate(almanac, line, lot)).flatten() {
        let time = rate.time_for(mass);
        return Some(dayplan::Spread { low: time.low.0, typical: time.typical.0, high: time.high.0 });
    }
    let guess = almanac.find_guess(line.action, tool_used(line, lot), &line.what)?;
    let typical = guess.fixed_min
        + guess.per_kg_min * mass.as_kilograms()
        + guess.per_jar_min * f64::from(lot.containers);
    // Never overflows: a batch weighs at most a few dozen kilograms.
    let minutes = |share: f64| libm::round((typical * share).clamp(0.0, 100_000.0)) as u32;
    Some(dayplan::Spread {
        low: minutes(guess.low_factor),
        typical: minutes(1.0),
        high: minutes(guess.high_factor),
    })
}

/// The planned quantile of a triangular distribution over low, typical, high.
/// Source: quantile of the triangular distribution for p above the mode's share, high - sqrt((1-p)(h-l)(h-m)).
fn upper(low: f64, typical: f64, high: f64) -> f64 {
    if high <= low {
        return typical;
    }
    let mode_share = (typical - low) / (high - low);
    if PLANNED_QUANTILE <= mode_share {
        low + libm::sqrt(PLANNED_QUANTILE * (high - low) * (typical - low))
    } else {
        high - libm::sqrt((1.0 - PLANNED_QUANTILE) * (high - low) * (high - typical))
    }
}

/// Whether the food goes through a pot lot by lot, someone beside it.
pub(crate) fn goes_by_lots(line: &FormulaStep) -> bool {
    match line.action {
        Action::Blanch => true,
        Action::Steam => line.attention != Attention::None && line.equipment == Tool::Kettle,
        _ => false,
    }
}

/// Lot after lot through one pot: the printed minutes and the way back to the boil for each.
fn minutes_by_lots(almanac: &Almanac, line: &FormulaStep, mass: Mass) -> f64 {
    let lots = libm::ceil(mass.as_kilograms() / BLANCH_LOT_KG).max(1.0);
    let printed = line.minutes.map_or(3.0, |minutes| minutes.high.to_f64());
    let start =
        almanac.find_guess(line.action, line.equipment, &line.what).map_or(0.0, |guess| guess.fixed_min);
    start + lots * (printed + BACK_TO_BOIL_MIN)
}

/// How long a pot takes to the boil: the first guess for a pot that is brought to it.
pub(crate) fn come_up_minutes(almanac: &Almanac, mass: Mass) -> u32 {
    let guess = almanac.find_guess(Action::Boil, Tool::Kettle, "");
    let minutes = guess.map_or(0.0, |guess| guess.fixed_min + guess.per_kg_min * mass.as_kilograms());
    // Never overflows: clamped to a working day.
    libm::ceil(minutes.clamp(0.0, 600.0)) as u32
}

/// The first guess for a line, at the planned quantile when it takes a person.
fn guess_minutes(almanac: &Almanac, line: &FormulaStep, lot: &Lot, mass: Mass) -> f64 {
    let Some(guess) = almanac.find_guess(line.action, tool_used(line, lot), &line.what) else {
        return line.minutes.map_or(5.0, |minutes| minutes.high.to_f64());
    };
    let typical = guess.fixed_min
        + guess.per_kg_min * mass.as_kilograms()
        + guess.per_jar_min * f64::from(lot.containers);
    if line.attention == Attention::None {
        typical
    } else {
        typical * upper(guess.low_factor, 1.0, guess.high_factor)
    }
}

/// The work rate whose words fit the line best; none when no word fits, and none for what goes on by itself: the rates
/// are minutes of hands.
fn find_rate<'a>(almanac: &'a Almanac, line: &FormulaStep, lot: &Lot) -> Option<&'a WorkRate> {
    if line.attention == Attention::None {
        return None;
    }
    let words = words_about(line, lot);
    let tool = if tool_used(line, lot) == Tool::Processor { "processor" } else { "knife" };
    almanac
        .work_rates()
        .iter()
        .filter(|rate| rate.task.as_str() == line.action.as_str())
        .filter(|rate| tool_of(&rate.produce).is_none_or(|other| other == tool))
        .map(|rate| (content_words(&rate.produce).iter().filter(|word| words.contains(word)).count(), rate))
        .filter(|(shared, _)| *shared > 0)
        .min_by_key(|(shared, rate)| (std::cmp::Reverse(*shared), rate.produce.len()))
        .map(|(_, rate)| rate)
}

/// What a line is about, in the words of the rates.
fn words_about(line: &FormulaStep, lot: &Lot) -> Vec<String> {
    // Bags and boxes for the freezer are filled alike, whatever goes into them.
    let into_packages =
        ["containers", "bags", "measured amounts"].iter().any(|word| line.what.contains(word));
    if line.action == Action::Pack && into_packages {
        return content_words("freezer bags, measured");
    }
    let mut words = content_words(&format!("{} {}", line.what, lot.names_spoken_of(&line.what)));
    // A second wash takes no soil off; the first guess for clean produce does.
    if !line.what.contains("again") {
        words.extend(kinds_of(&words));
    }
    words
}

/// Below this a knife is quicker than setting up and washing a processor (ours).
const LEAST_FOR_PROCESSOR: Mass = Mass::kilograms(0.5);

/// The tool a line is really done with: a knife where there is no processor, or too little to set it up for.
pub(crate) fn tool_used(line: &FormulaStep, lot: &Lot) -> Tool {
    let worth_it = lot.processor && lot.spoken_of(&line.what) >= LEAST_FOR_PROCESSOR;
    if line.equipment == Tool::Processor && !worth_it { Tool::None } else { line.equipment }
}

/// The tool a rate is for, where it names one of the two we choose between; special tools are nobody's.
fn tool_of(produce: &str) -> Option<&'static str> {
    const SPECIAL: [&str; 7] = [
        "crank peeler",
        "slicing board",
        "kraut board",
        "hopper pitter",
        "screw strainer",
        "grinder",
        "box grater",
    ];
    if SPECIAL.iter().any(|tool| produce.contains(tool)) {
        return Some("special");
    }
    if produce.contains("processor") {
        return Some("processor");
    }
    produce.contains("knife").then_some("knife")
}

/// The kinds that the washing and packing rates speak of.
fn kinds_of(words: &[String]) -> Vec<String> {
    const KINDS: [(&str, &[&str]); 5] = [
        ("green", &["kale", "chard", "spinach", "collard", "green"]),
        ("root", &["beet", "carrot", "parsnip", "turnip", "potato", "horseradish"]),
        ("berry", &["strawberry", "blueberry", "raspberry", "blackberry", "cherry", "grape", "elderberry"]),
        ("herb", &["basil", "dill", "mint", "parsley", "oregano", "thyme"]),
        ("spear", &["bean", "asparagus"]),
    ];
    /// What is green and no leaf: beans are not washed leaf by leaf.
    const GREEN_ONLY_BY_COLOUR: [&str; 6] = ["bean", "tomato", "tomatillo", "pepper", "chile", "onion"];
    let speaks_of = |member: &&str| words.iter().any(|word| word == member);
    let by_colour = GREEN_ONLY_BY_COLOUR.iter().any(speaks_of);
    let mut kinds: Vec<String> = KINDS
        .iter()
        .filter(|(kind, members)| members.iter().any(speaks_of) && !(by_colour && *kind == "green"))
        .map(|(kind, _)| (*kind).to_owned())
        .collect();
    // The spears are a kind to pack, not to wash.
    if kinds.iter().all(|kind| kind == "spear") {
        kinds.extend(["firm".to_owned(), "fruit".to_owned(), "vegetable".to_owned()]);
    }
    kinds
}

/// The words of a phrase that say what it is about: lower case, singular, without small words.
fn content_words(phrase: &str) -> Vec<String> {
    const SMALL: [&str; 16] = [
        "and", "or", "the", "of", "in", "into", "to", "with", "for", "per", "kg", "other", "small", "hot",
        "from", "a",
    ];
    let lower = phrase.to_lowercase();
    lower
        .split(|letter: char| !letter.is_alphabetic())
        .filter(|word| word.len() > 1 && !SMALL.contains(word))
        .map(singular)
        .collect()
}

/// The singular of a kitchen plural.
fn singular(word: &str) -> String {
    if let Some(stem) = word.strip_suffix("ies") {
        return format!("{stem}y");
    }
    if let Some(stem) = word.strip_suffix("oes") {
        return format!("{stem}o");
    }
    if let Some(stem) = word.strip_suffix("ches") {
        return format!("{stem}ch");
    }
    match word.strip_suffix('s') {
        Some(stem) if !word.ends_with("ss") => stem.to_owned(),
        _ => word.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plurals_of_the_kitchen_meet_their_singulars() {
        for (many, one) in [
            ("tomatoes", "tomato"),
            ("cherries", "cherry"),
            ("peaches", "peach"),
            ("beans", "bean"),
            ("watercress", "watercress"),
        ] {
            assert_eq!(singular(many), one);
        }
    }

    #[test]
    fn the_planned_length_lies_between_typical_and_high() {
        let planned = upper(4.0, 7.0, 12.0);
        assert!((planned - 9.171_572_875).abs() < 1e-6, "{planned}");
        assert!((upper(1.0, 1.0, 1.0) - 1.0).abs() < 1e-12);
        assert!(upper(1.0, 5.0, 5.0) < 5.0);
    }

    fn of(printed: &str, pounds: f64) -> LotProduce {
        LotProduce { printed: printed.into(), called: printed.into(), mass: Mass::pounds(pounds) }
    }

    #[test]
    fn green_beans_are_no_leafy_greens() {
        let kinds = |what: &str| kinds_of(&content_words(what)).join(" ");
        assert_eq!(kinds("greens"), "green");
        assert_eq!(kinds("kale"), "green");
        for firm in ["green beans", "green tomatoes and onions", "sweet green peppers", "cabbage"] {
            assert!(kinds(firm).contains("firm") && !kinds(firm).contains("green"), "{firm}");
        }
    }

    #[test]
    fn a_line_is_timed_by_the_ingredient_it_names() {
        let lot = Lot {
            produce: vec![of("pickling cucumbers 4-5 in", 6.0), of("onions", 3.0)],
            containers: 8,
            vessels: "8 pints".into(),
            units: Units::Us,
            processor: false,
        };
        assert!((lot.spoken_of("onions").as_pounds() - 3.0).abs() < 1e-9);
        assert!((lot.spoken_of("cucumbers and onions").as_pounds() - 9.0).abs() < 1e-9);
        assert!((lot.spoken_of("all").as_pounds() - 9.0).abs() < 1e-9);
    }
}
