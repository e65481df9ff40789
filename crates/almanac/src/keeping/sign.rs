//! Signs on jars: what each means, what to do now, how to throw food away and clean up.

use super::figure::KeepingFigure;
use super::phrases::{Phrases, askable};
use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// What a row about jars is for.
    SignTopic {
        /// A jar in store.
        Stored = "stored",
        /// A jar being opened.
        Opening = "opening",
        /// A process that went wrong.
        Process = "process",
        /// A change that looks odd.
        Look = "look",
        /// How food looks proves nothing.
        Looks = "looks",
        /// Throwing it away.
        Disposal = "disposal",
        /// Cleaning up after it.
        CleanUp = "clean-up",
        /// Boiling before eating.
        Heating = "heating",
        /// When the seals are looked at.
        SealWait = "seal-wait",
        /// How a seal is looked at.
        SealTest = "seal-test",
        /// The time to begin again after a right process.
        BeginAgain = "begin-again",
        /// The time to begin again after a wrong process.
        WrongProcess = "wrong-process",
        /// How it is begun again.
        AgainHow = "again-how",
        /// What is not begun again.
        AgainNot = "again-not",
        /// Room in a jar that is frozen.
        FreezeRoom = "freeze-room",
        /// An unsealed jar in the refrigerator.
        Refrigerate = "refrigerate",
        /// Found too late.
        TooLate = "too-late",
        /// No tested formula.
        NoRecipe = "no-recipe",
        /// Less than half the liquid lost.
        LiquidLess = "liquid-less",
        /// Half the liquid lost or more.
        LiquidMore = "liquid-more",
        /// Any liquid lost.
        LiquidAny = "liquid-any",
        /// What older answers said of lost liquid.
        LiquidOlder = "liquid-older",
        /// Glass.
        Jar = "jar",
        /// Screw bands.
        Band = "band",
        /// Flat lids.
        Lid = "lid",
        /// The store room.
        Store = "store",
        /// The sister jars.
        Lot = "lot",
        /// A ferment.
        Ferment = "ferment",
    }
);

closed_list!(
    /// How much a row about jars weighs, the heaviest first.
    SignWeight {
        /// Throw it away untasted.
        Danger = "danger",
        /// Treat the jar as unsealed.
        Unsealed = "unsealed",
        /// Into the refrigerator, and used in days.
        UseSoon = "use-soon",
        /// Kept, and used first.
        UseFirst = "use-first",
        /// A matter of quality.
        Quality = "quality",
        /// Said beside an answer; decides nothing.
        Caution = "caution",
    }
);

/// A row about signs on jars.
#[derive(Debug, Clone, PartialEq)]
pub struct SignRule {
    /// Its name.
    pub id: RuleId,
    /// What it is for.
    pub topic: SignTopic,
    /// The sign, as the row names it.
    pub sign: Box<str>,
    /// How much it weighs.
    pub weight: SignWeight,
    /// What to do, in our words.
    pub say: Box<str>,
    /// Its figure.
    pub figure: Option<KeepingFigure>,
    /// What else is printed.
    pub note: Box<str>,
    /// Where it stands.
    pub citation: Citation,
    /// The ways of naming it.
    pub(super) phrases: Phrases,
}

/// Reads `signs.csv`.
pub(super) fn read_signs(reading: &mut Reading<'_>) -> Vec<SignRule> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "topic",
        "sign",
        "weight",
        "say",
        "words",
        "value_min",
        "value_max",
        "unit",
        "note",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::Signs, COLUMNS, |row| SignRule {
        id: row.id("rule_id"),
        topic: row.word("topic"),
        sign: row.text("sign").into(),
        weight: row.word("weight"),
        say: row.text("say").into(),
        phrases: Phrases::read(row.text("words")),
        figure: KeepingFigure::read(row),
        note: row.free_text("note"),
        citation: row.citation(),
    })
}

impl Almanac {
    /// The rows about jars that are for one thing, in the order of the table.
    pub fn signs_for(&self, topic: SignTopic) -> impl Iterator<Item = &SignRule> {
        self.signs().iter().filter(move |row| row.topic == topic)
    }

    /// The signs that can be asked about, in words that are understood.
    #[must_use]
    pub fn askable_signs(&self) -> Vec<String> {
        askable(self.signs().iter().map(|row| &row.phrases))
    }
}
