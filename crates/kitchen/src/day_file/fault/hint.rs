//! One thing to do about each fault.

use super::FaultKind;

impl FaultKind {
    /// One thing to do about it.
    #[must_use]
    pub fn hint(&self) -> String {
        match self {
            Self::UnknownFood { nearest, .. } if nearest.is_empty() => {
                "`stillroom almanac processes` lists every food; leave `food` out where none is like it".into()
            }
            Self::UnknownFood { nearest, .. } => format!("it may be one of {}", nearest.join(", ")),
            Self::TooLong { .. } => "name the day file itself; it is a page of text".into(),
            Self::NotText { .. } => "open the file in a text editor and save it as plain text, UTF-8".into(),
            Self::Syntax { .. } => "mend this line first; text goes in quotes, and each key has one value on its line".into(),
            Self::UnknownKey { nearest: Some(nearest), .. } => format!("did you mean `{nearest}`"),
            Self::UnknownKey { known, .. } => format!("its keys are {}", known.join(", ")),
            Self::DayOnly { .. } => "move it into the day file".into(),
            Self::MissingKey { example, .. } => format!("write {example}"),
            Self::WrongKind { wanted, .. } => format!("give {wanted}"),
            Self::NotATable { place, .. } if place.starts_with('[') => {
                format!("put {place} on a line of its own and the keys below it, one on a line")
            }
            Self::NotATable { place, .. } => format!("write {place}"),
            Self::OutOfRange { least, most, .. } => format!("give a whole number from {least} to {most}"),
            Self::Empty { .. } => "write a word or two, or take the line out".into(),
            Self::UnreadableDate { .. } => "write year, month and day, such as 2026-08-29".into(),
            Self::UnknownWord { nearest: Some(nearest), .. } => format!("did you mean \"{nearest}\""),
            Self::UnknownWord { known, .. } => format!("the words are {}", known.join(", ")),
            Self::UnreadableAmount { problem, .. } => split_problem(problem).1,
            Self::NoUnit { example, .. } => format!("say what it is a number of, such as {example}"),
            Self::UnknownProduce { nearest, .. } if nearest.is_empty() => {
                "`stillroom almanac produce` lists every name".into()
            }
            Self::UnknownProduce { nearest, .. } => match nearest.as_slice() {
                [only] => format!("did you mean `{only}`"),
                several => format!("the nearest names are {}", several.join(", ")),
            },
            Self::UnknownWish { nearest, .. } => format!("did you mean `{nearest}`"),
            Self::Ambiguous { .. } => "write the one that is meant".into(),
            Self::Twice { .. } => "give each a name of its own, or take one out".into(),
            Self::WeighedTwice { .. } => "keep the one that was weighed and take the other out".into(),
            Self::NotWeighed { .. } => {
                "give `net`, or `gross` with its `bowl`, or `count`, such as net = \"4 lb 6 oz\"".into()
            }
            Self::WeighsNothing { .. } => "weigh it again, or take the basket out".into(),
            Self::GrossWithoutBowl { .. } => "name the bowl it was weighed in, or give `net`".into(),
            Self::BowlWithoutGross { .. } => "give the weight of both as `gross`, or take `bowl` out".into(),
            Self::UnknownBowl { known, .. } if known.is_empty() => {
                "write a [[bowl]] with its name and its tare, or give `net`".into()
            }
            Self::UnknownBowl { known, .. } => format!("the bowls are {}; or write a [[bowl]] for it", known.join(", ")),
            Self::BowlWithoutTare { .. } => "weigh the empty bowl and give its `tare`, or give `net`".into(),
            Self::WeightlessBowl => "weigh the empty bowl, or take `tare` out".into(),
            Self::BowlTooHeavy { .. } => "weigh both again; a weight without the bowl goes under `net`".into(),
            Self::NoWeightEach { .. } | Self::NoWeightOfMeasure { .. } => {
                "give a weight, such as net = \"4 lb 6 oz\"".into()
            }
            Self::ConditionsClash { .. } => "keep the one that is true of most of it, or make two baskets".into(),
            Self::UnreadableHours { .. } => "write two times of day with a dash between, such as \"8:00-12:30\"".into(),
            Self::HoursBackwards { .. } => "give hours of one day, the earlier first, on the clock of 24 hours".into(),
            Self::HoursOverlap { .. } => "make one stretch of the two".into(),
            Self::BreakOutside { .. } => "move the break into the hours, or take it out".into(),
            Self::NoHours { .. } => "give `hours`, such as [\"8:00-12:00\"], or take the person out".into(),
            Self::StrongAboveAll { .. } => "count the strong ones among `burners`".into(),
            Self::NoDial { key, .. } => format!("take `{key}` out, or write kind = \"dial\""),
            Self::TestedLater { .. } => "give the date of the last test before the day".into(),
            Self::JarsTwice { .. } => "add the two counts up in one [[jars]]".into(),
            Self::UnknownJar { known, .. } => format!("the sizes are {}", known.join(", ")),
            Self::SaltWithoutKind => {
                "a spoon of one kind weighs up to twice a spoon of another; write salt = { canning = \"3 lb\" }".into()
            }
            Self::EmptyWish => "write must = \"tomatoes\", for one".into(),
            Self::TwoWishes { .. } => "make two wishes of it, each below a [[wish]] of its own".into(),
            Self::NotOfThisWish { key, .. } => format!("take `{key}` out"),
            Self::MustAndNotToday { .. } => "take one of the two wishes out".into(),
            Self::NoSteps { .. } => "put [[errand.step]] below it, with `what` and `minutes`".into(),
            Self::NeedsCannerOrJar { .. } => "ask for a pot instead".into(),
            Self::NeedsMoreThanThere { .. } => "ask for less, or count it in [kitchen]".into(),
            Self::WindowTooShort { .. } => "let it begin earlier or end later".into(),
            Self::WaitBackwards { .. } => "the first must not be above the second".into(),
            Self::AwayWithNobody { .. } => "write attention = \"hands\", or take `away` out".into(),
        }
    }
}

/// The sentence of a reading error and its hint, which it carries in one line.
pub(super) fn split_problem(problem: &measure::ReadError) -> (String, String) {
    let whole = problem.to_string();
    match whole.split_once("; hint: ") {
        Some((sentence, hint)) => (sentence.into(), hint.into()),
        None => (whole, format!("write {}", problem.expected())),
    }
}
