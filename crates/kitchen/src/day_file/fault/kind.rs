//! What can be wrong, each in one sentence that names the value and the limit.

use super::WhichFile;
use super::hint::split_problem;

/// Why bytes are no text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Encoding {
    /// Holds NUL bytes.
    Nul,
    /// Holds bytes that are not UTF-8.
    NotUtf8,
    /// Begins as UTF-16 and does not go on so.
    BrokenUtf16,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FaultKind {
    /// The file is far longer than a day.
    #[error("the file is {bytes} bytes long, more than the {most} a day file may have")]
    TooLong {
        /// Its length.
        bytes: usize,
        /// The greatest length.
        most: usize,
    },
    /// The file is no text.
    #[error("{}", match found {
        Encoding::Nul => "the file holds NUL bytes and is no text",
        Encoding::NotUtf8 => "the file holds bytes that are not UTF-8 text",
        Encoding::BrokenUtf16 => "the file begins as UTF-16 text and breaks off",
    })]
    NotText {
        /// What was found.
        found: Encoding,
    },
    /// The file is not TOML; the rest of it was not read.
    #[error("the file cannot be read from here on: {message}")]
    Syntax {
        /// What the TOML reader says.
        message: String,
    },
    /// A key that means nothing there.
    #[error("`{key}` is no key of {place}")]
    UnknownKey {
        /// The key.
        key: String,
        /// The table.
        place: &'static str,
        /// The nearest key of that table.
        nearest: Option<&'static str>,
        /// All keys of that table.
        known: &'static [&'static str],
    },
    /// A key of the other file.
    #[error("`{key}` belongs to one day and cannot stand in the house file")]
    DayOnly {
        /// The key.
        key: &'static str,
    },
    /// A key that must be there is not.
    #[error("{place} has no `{key}`")]
    MissingKey {
        /// The table.
        place: &'static str,
        /// The key.
        key: &'static str,
        /// How it may be written.
        example: &'static str,
    },
    /// A value of the wrong kind.
    #[error("`{key}` is {found}, not {wanted}")]
    WrongKind {
        /// The key.
        key: String,
        /// What it is.
        found: &'static str,
        /// What it should be.
        wanted: &'static str,
    },
    /// A value where a table belongs.
    #[error("`{key}` must be written as {place}")]
    NotATable {
        /// The key.
        key: String,
        /// How the table is written.
        place: &'static str,
    },
    /// A number outside of its limits.
    #[error("`{key}` is {value}, not between {least} and {most}")]
    OutOfRange {
        /// The key.
        key: String,
        /// The value.
        value: String,
        /// The lower limit.
        least: String,
        /// The upper limit.
        most: String,
    },
    /// A text that is empty.
    #[error("`{key}` is empty")]
    Empty {
        /// The key.
        key: String,
    },
    /// A date that is none.
    #[error("`{key}` cannot be read as a date: `{text}`")]
    UnreadableDate {
        /// The key.
        key: String,
        /// What was written.
        text: String,
    },
    /// A word that is not one of a list.
    #[error("`{key}` does not know the word `{word}`")]
    UnknownWord {
        /// The key.
        key: String,
        /// The word.
        word: String,
        /// The nearest word of the list.
        nearest: Option<&'static str>,
        /// The list.
        known: Vec<&'static str>,
    },
    /// An amount that cannot be read.
    #[error("`{key}`: {}", split_problem(problem).0)]
    UnreadableAmount {
        /// The key.
        key: String,
        /// What stopped the reading.
        problem: measure::ReadError,
    },
    /// A bare number where a unit is needed.
    #[error("`{key}` is the number {text} without a unit")]
    NoUnit {
        /// The key.
        key: String,
        /// The number.
        text: String,
        /// How it may be written.
        example: &'static str,
    },
    /// A produce that is not on file.
    #[error("no produce is called `{word}`")]
    UnknownProduce {
        /// The word.
        word: String,
        /// The nearest names on file.
        nearest: Vec<String>,
    },
    /// A wish for something that is nearly a name on file.
    #[error("no formula, produce or food is called `{word}`")]
    UnknownWish {
        /// The word.
        word: String,
        /// The name it is nearly.
        nearest: String,
    },
    /// Words that fit more than one thing on file.
    #[error("`{word}` may be {}", join_or(matches))]
    Ambiguous {
        /// The word.
        word: String,
        /// What it may be.
        matches: Vec<String>,
    },
    /// A name given twice.
    #[error("{place} named `{name}` stands here a second time, first in line {first_line}")]
    Twice {
        /// The table.
        place: &'static str,
        /// The name.
        name: String,
        /// The line where it stands first.
        first_line: usize,
    },
    /// A basket weighed in two ways.
    #[error("the basket of {produce} gives both `{first}` and `{second}`")]
    WeighedTwice {
        /// The produce.
        produce: String,
        /// One key.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A basket with no weight.
    #[error("the basket of {produce} has no weight")]
    NotWeighed {
        /// The produce.
        produce: String,
    },
    /// A weight that is nothing.
    #[error("the basket of {produce} weighs nothing")]
    WeighsNothing {
        /// The produce.
        produce: String,
    },
    /// A gross weight without its bowl.
    #[error("the basket of {produce} gives a gross weight and no `bowl`")]
    GrossWithoutBowl {
        /// The produce.
        produce: String,
    },
    /// A bowl beside a weight that has none in it.
    #[error("the basket of {produce} names a bowl and no `gross` weight")]
    BowlWithoutGross {
        /// The produce.
        produce: String,
    },
    /// A bowl that is not in the house.
    #[error("no bowl is called `{bowl}`")]
    UnknownBowl {
        /// The bowl.
        bowl: String,
        /// The bowls there are.
        known: Vec<String>,
    },
    /// A bowl that was never weighed.
    #[error("the bowl `{bowl}` has no tare, so the gross weight tells nothing")]
    BowlWithoutTare {
        /// The bowl.
        bowl: String,
    },
    /// A bowl that weighs nothing.
    #[error("a bowl has a tare of nothing")]
    WeightlessBowl,
    /// A bowl heavier than itself with something in it.
    #[error("the bowl `{bowl}` weighs {tare}, not less than the {gross} of bowl and {produce} together")]
    BowlTooHeavy {
        /// The bowl.
        bowl: String,
        /// Its tare as written.
        tare: String,
        /// The gross weight as written.
        gross: String,
        /// The produce.
        produce: String,
    },
    /// A count of a produce whose weight apiece is not on file.
    #[error("what one of {produce} weighs is not on file")]
    NoWeightEach {
        /// The produce.
        produce: String,
    },
    /// A measure of a produce whose weight by that measure is not on file.
    #[error("what `{text}` of {produce} weighs is not on file")]
    NoWeightOfMeasure {
        /// The produce.
        produce: String,
        /// What was written.
        text: String,
    },
    /// Conditions that shut each other out.
    #[error("the basket of {produce} is both `{first}` and `{second}`")]
    ConditionsClash {
        /// The produce.
        produce: String,
        /// One condition.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A stretch of hours that cannot be read.
    #[error("`{key}` is `{text}`, which is no stretch of hours")]
    UnreadableHours {
        /// The key.
        key: String,
        /// What was written.
        text: String,
    },
    /// Hours that end before they begin.
    #[error("`{key}` ends at {to}, not after it begins at {from}")]
    HoursBackwards {
        /// The key.
        key: String,
        /// The beginning.
        from: String,
        /// The end.
        to: String,
    },
    /// Hours that overlap.
    #[error("`{key}` of {person} overlap: {first} and {second}")]
    HoursOverlap {
        /// The key.
        key: &'static str,
        /// The person.
        person: String,
        /// One stretch.
        first: String,
        /// The other.
        second: String,
    },
    /// A break outside of the hours.
    #[error("the break {stretch} of {person} lies outside of their hours")]
    BreakOutside {
        /// The person.
        person: String,
        /// The break.
        stretch: String,
    },
    /// A person with no hours left.
    #[error("{person} has no hours on this day")]
    NoHours {
        /// The person.
        person: String,
    },
    /// More strong burners than burners.
    #[error("the kitchen has {strong} strong burners out of {burners}")]
    StrongAboveAll {
        /// The strong ones.
        strong: u32,
        /// All of them.
        burners: u32,
    },
    /// A gauge error of a canner that has no dial.
    #[error("the canner `{canner}` is no dial-gauge canner and has no `{key}`")]
    NoDial {
        /// The canner.
        canner: String,
        /// The key.
        key: &'static str,
    },
    /// A gauge tested after the day.
    #[error("the gauge of `{canner}` was tested on {tested}, after the day itself, {day}")]
    TestedLater {
        /// The canner.
        canner: String,
        /// The date of the test.
        tested: String,
        /// The date of the day.
        day: String,
    },
    /// Jars of one size and mouth counted twice.
    #[error("{size} jars with {mouth} mouth are counted a second time, first in line {first_line}")]
    JarsTwice {
        /// The size.
        size: String,
        /// The mouth.
        mouth: String,
        /// The line where they stand first.
        first_line: usize,
    },
    /// A jar size that no table lists.
    #[error("no jar size is called `{word}`")]
    UnknownJar {
        /// The word.
        word: String,
        /// The sizes there are.
        known: Vec<String>,
    },
    /// Salt without its kind.
    #[error("`salt` is one amount without its kind")]
    SaltWithoutKind,
    /// A wish that wishes nothing.
    #[error("a wish says neither `must` nor `not_today` nor `target`")]
    EmptyWish,
    /// A wish that wishes two things.
    #[error("one wish says both `{first}` and `{second}`")]
    TwoWishes {
        /// One key.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A key that goes with another wish.
    #[error("`{key}` goes with `target` and not with `{verb}`")]
    NotOfThisWish {
        /// The key.
        key: &'static str,
        /// The wish it stands in.
        verb: &'static str,
    },
    /// Something that must be made and must not.
    #[error("`{what}` must be made and is not wanted today, see line {other_line} of the {other_file} file")]
    MustAndNotToday {
        /// What was written.
        what: String,
        /// The file of the other wish.
        other_file: WhichFile,
        /// Its line.
        other_line: usize,
    },
    /// An errand with no steps.
    #[error("the errand `{errand}` has no steps")]
    NoSteps {
        /// The errand.
        errand: String,
    },
    /// An errand that asks for what belongs to the jars.
    #[error("the step `{step}` asks for `{word}`, and canners and jars are kept for what is put up")]
    NeedsCannerOrJar {
        /// The step.
        step: String,
        /// What it asks for.
        word: String,
    },
    /// A step that asks for what the kitchen has not.
    #[error("the step `{step}` asks for {asked} of `{what}`, and the kitchen has {there}")]
    NeedsMoreThanThere {
        /// The step.
        step: String,
        /// What it asks for.
        what: &'static str,
        /// How many.
        asked: u32,
        /// How many there are.
        there: u32,
    },
    /// A step that cannot end in time.
    #[error("the step `{step}` of {minutes} min from {earliest} cannot be done by {done_by}")]
    WindowTooShort {
        /// The step.
        step: String,
        /// Its minutes.
        minutes: u32,
        /// Its earliest start.
        earliest: String,
        /// Its latest end.
        done_by: String,
    },
    /// A wait whose least is above its most.
    #[error("the step `{step}` waits at least {least} min and at most {most} min")]
    WaitBackwards {
        /// The step.
        step: String,
        /// The least.
        least: u32,
        /// The most.
        most: u32,
    },
    /// A food that no process table has, or that may be several.
    #[error("no food of the process tables is called {word:?}")]
    UnknownFood {
        /// What was typed.
        word: String,
        /// The nearest ids.
        nearest: Vec<String>,
    },
    /// A step that takes nobody out of the house.
    #[error("the step `{step}` is away from the house and needs nobody")]
    AwayWithNobody {
        /// The step.
        step: String,
    },
}

fn join_or(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}
