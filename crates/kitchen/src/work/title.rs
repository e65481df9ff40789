//! What a piece of work is called on the day sheet, in full and in fewer words.

use almanac::{Action, Attention, FormulaStep, StepMinutes};

use super::duration::Lot;
use super::piece::{Phase, Way};

/// What a piece is called.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Called {
    pub(crate) full: String,
    /// In fewer words, where a title grows long; empty where it may be left to the detail.
    pub(crate) short: String,
}

impl Called {
    /// The same words either way.
    pub(crate) fn plainly(words: impl Into<String>) -> Self {
        let full = words.into();
        Self { short: full.clone(), full }
    }

    fn or(full: impl Into<String>, short: impl Into<String>) -> Self {
        Self { full: full.into(), short: short.into() }
    }
}

/// What a line is called where its verb and object would not read well together.
pub(crate) fn title_of(line: &FormulaStep, lot: &Lot, way: &Way, phase: Phase) -> Option<Called> {
    let what = lot.in_their_words(&line.what);
    match (line.action, phase) {
        (_, Phase::InCanner) => return in_canner(line, lot, way),
        (Action::Acidify | Action::Fill | Action::Debubble | Action::Close | Action::Load, _) => {
            return Some(at_the_jars(line, lot, way));
        }
        (Action::Label, _) => return Some(Called::plainly("label")),
        (Action::Skim, _) => return Some(skimmed(&what)),
        (Action::Husk, _) => {
            return Some(Called::plainly(format!("husk {}", what.replace(" and silk", ", silk off"))));
        }
        (Action::Boil, Phase::Head) if what.contains("gel point") => {
            return Some(Called::or(format!("boil {what}"), "boil to the gel point"));
        }
        (Action::Cool, Phase::Head) if what.contains("as long as") => {
            return Some(Called::or(format!("cool {what}"), "chill"));
        }
        (Action::Drain, Phase::Head) if what.len() <= "thoroughly".len() => {
            return Some(Called::or(format!("drain {what}"), "drain"));
        }
        // "Second fresh water" is what it is soaked in.
        (Action::Soak, _) if ["second", "third"].iter().any(|word| what.starts_with(word)) => {
            return Some(Called::plainly(format!("soak in the {what}")));
        }
        (Action::Pack, _) if ["plate", "cover"].iter().any(|word| what.starts_with(word)) => {
            return Some(Called::plainly(format!("put on {what}")));
        }
        (Action::Dry, _) => {
            if let Some(rest) = what.strip_prefix("then ") {
                return Some(Called::plainly(format!("dry on {rest}")));
            }
        }
        _ => {}
    }
    if begins_with_a_verb(&line.what) {
        return Some(Called::plainly(what));
    }
    (line.action == Action::Stand && phase == Phase::Head)
        .then(|| Called::plainly(format!("let stand: {what}")))
}

/// Foam, or what has given its taste and is taken out again.
fn skimmed(what: &str) -> Called {
    match what.strip_prefix("take the ") {
        Some(taken) => Called::or(what, taken),
        None => Called::or(format!("skim {what}"), "skim"),
    }
}

/// From the acid to the loaded canner.
fn at_the_jars(line: &FormulaStep, lot: &Lot, way: &Way) -> Called {
    let headspace = way.headspace.as_ref().map_or_else(String::new, |space| format!(", headspace {space}"));
    let jars = if lot.vessels.is_empty() { "clean jars" } else { &lot.vessels };
    match line.action {
        Action::Acidify => Called::or("acid into each jar", "acid in"),
        Action::Fill if line.what.contains("over") => Called::or(
            format!("pour the boiling liquid into {jars}{headspace}"),
            format!("pour liquid into {jars}{headspace}"),
        ),
        Action::Fill => Called::plainly(format!("fill {jars}{headspace}")),
        Action::Debubble => Called::or("bubbles out", ""),
        Action::Close => Called::or("lids on", ""),
        _ => Called::or("load the canner", "load"),
    }
}

/// From the loaded canner to the lifted jars; the same for every food.
fn in_canner(line: &FormulaStep, lot: &Lot, way: &Way) -> Option<Called> {
    let jars = &lot.vessels;
    let under_pressure = way.process.is_some_and(|(kind, _)| kind.is_pressure());
    let said = match line.action {
        Action::Heat if !under_pressure => "bring the loaded canner to a full boil".to_owned(),
        Action::Heat if line.what.contains("steam") => "bring the canner to steam".to_owned(),
        Action::Heat => "weight on, bring it to pressure".to_owned(),
        Action::Vent => {
            format!("vent {} min", line.minutes.map_or(0, |minutes| minutes.round_up().1.0))
        }
        Action::Process => {
            let minutes = way.process.map_or(0, |(_, minutes)| minutes);
            format!("process {jars} {minutes} min at {}", way.held_at)
        }
        Action::Rest => "heat off, lid off, let them stand".to_owned(),
        Action::Stand if line.what.contains("pressure") => {
            "heat off; let the pressure fall by itself".to_owned()
        }
        Action::Stand => "weight off, lid on, wait".to_owned(),
        Action::Lift => format!("lift {jars} out onto a towel"),
        _ => return None,
    };
    Some(Called::plainly(said))
}

/// A line over heat with its printed minutes: a cook wants to know how long beans boil, not only that they do.
pub(crate) fn timed(line: &FormulaStep, what: &str, from_cold: bool) -> Option<Called> {
    let over_heat = matches!(
        line.action,
        Action::Boil | Action::Simmer | Action::Cook | Action::Heat | Action::Blanch | Action::Steam
    );
    if !over_heat || line.attention == Attention::None || what.contains(" min") {
        return None;
    }
    let minutes = minutes_words(line.minutes?);
    let tail = match line.action {
        Action::Blanch | Action::Steam => ", lot by lot",
        _ if from_cold && !what.contains("from the boil") => " from the boil",
        _ => "",
    };
    let verb = line.action.as_str();
    let head = what.split([',', ';']).next().unwrap_or(what);
    let short = if what.contains("full rolling boil") {
        format!("hard boil {head}, {minutes}")
    } else {
        format!("{verb} {head}, {minutes}{tail}")
    };
    Some(Called::or(format!("{verb} {what}, {minutes}{tail}"), short))
}

/// Printed minutes as they are printed: "5 min", "20 to 25 min".
fn minutes_words(minutes: StepMinutes) -> String {
    let (low, high) = (minutes.low, minutes.high);
    if low == high { format!("{high} min") } else { format!("{low} to {high} min") }
}

/// Whether the object of a line already says what to do.
pub(crate) fn begins_with_a_verb(what: &str) -> bool {
    const VERBS: [&str; 17] = [
        "add", "preheat", "crush", "throw", "take", "slip", "drip", "drain", "squeeze", "press", "slit",
        "discard", "measure", "strain", "bring", "sprinkle", "flatten",
    ];
    what.split(|letter: char| !letter.is_alphabetic()).next().is_some_and(|word| VERBS.contains(&word))
}

/// Decimals of inches and cups as the fractions on a ruler and a cup: "1-1.5 in" is "1-1 1/2 in".
pub(crate) fn with_fractions(text: &str) -> String {
    const FRACTIONS: [(&str, &str); 6] =
        [("125", "1/8"), ("25", "1/4"), ("375", "3/8"), ("5", "1/2"), ("75", "3/4"), ("875", "7/8")];
    let number = |word: &str| {
        let (whole, decimals) = word.split_once('.')?;
        let fraction = FRACTIONS.iter().find(|(digits, _)| *digits == decimals)?.1;
        let is_number = !whole.is_empty() && whole.bytes().all(|digit| digit.is_ascii_digit());
        is_number.then(|| if whole == "0" { fraction.to_owned() } else { format!("{whole} {fraction}") })
    };
    let word = |word: &str| {
        let numbers: Vec<String> =
            word.split('-').map(|part| number(part).unwrap_or_else(|| part.to_owned())).collect();
        numbers.join(if numbers.iter().any(|part| part.contains('/')) { " to " } else { "-" })
    };
    text.split(' ').map(word).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_and_cups_are_read_off_rulers_and_cups() {
        for (printed, said) in [
            ("measure 6.5 cups", "measure 6 1/2 cups"),
            ("1-1.5 in pieces", "1 to 1 1/2 in pieces"),
            ("into 0.5 in cubes", "into 1/2 in cubes"),
            ("beets 2-2.5 in", "beets 2 to 2 1/2 in"),
            ("in a half-pint, 4-5 in", "in a half-pint, 4-5 in"),
            ("water at 98.6 F.", "water at 98.6 F."),
        ] {
            assert_eq!(with_fractions(printed), said);
        }
    }
}
