//! Whole sentences about batches, jars and practices, known as they stand.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use almanac::{Change, IngredientClass as Class, What};

use super::reading::Meaning;
use super::words::words_of;

/// Sentences that are known as a whole.
pub(crate) fn find_phrase(words: &[String]) -> Option<Meaning> {
    /// The rows by their ways of saying, read like a sentence.
    static BY_WORDS: LazyLock<BTreeMap<Vec<String>, usize>> = LazyLock::new(|| {
        let ways =
            PHRASES.iter().enumerate().flat_map(|(row, (ways, ..))| ways.iter().map(move |way| (*way, row)));
        ways.map(|(way, row)| (words_of(way), row)).collect()
    });
    let (_, change, class, what) = PHRASES[*BY_WORDS.get(words)?];
    Some(Meaning::Fixed(change, class, what))
}

type PhraseRow = (&'static [&'static str], Change, Class, Option<What>);

const PHRASES: &[PhraseRow] = &[
    (
        &[
            "double batch",
            "double recipe",
            "twice batch",
            "twice recipe",
            "bigger batch",
            "larger batch",
            "two batches together",
            "double everything",
            "triple batch",
            "triple recipe",
            "double",
            "one big batch",
            "double formula",
        ],
        Change::BatchDouble,
        Class::Other,
        None,
    ),
    (
        &[
            "half batch",
            "half recipe",
            "halve batch",
            "halve recipe",
            "half everything",
            "halve everything",
            "smaller batch",
            "half formula",
            "halve formula",
        ],
        Change::BatchHalf,
        Class::Other,
        Some(What::OneFactorDown),
    ),
    (&["bigger jar", "larger jar", "big jar", "large jar"], Change::JarLarger, Class::Other, None),
    (&["smaller jar", "small jar"], Change::JarSmaller, Class::Other, None),
    (&["another altitude", "other altitude", "different altitude"], Change::Altitude, Class::Other, None),
    (
        &[
            "sea level time",
            "sea level minute",
            "time for sea level",
            "lowest band",
            "ignore altitude",
            "no altitude adjustment",
        ],
        Change::Altitude,
        Class::Other,
        Some(What::SeaLevelTime),
    ),
    (
        &[
            "less time",
            "shorter time",
            "fewer minute",
            "shorter process",
            "process shorter",
            "process less",
            "less processing",
            "shorter processing",
            "shorter processing time",
        ],
        Change::ProcessTime,
        Class::Other,
        None,
    ),
    (
        &[
            "no process",
            "no processing",
            "skip process",
            "skip processing",
            "without processing",
            "no canner",
            "not processed",
            "unprocessed",
            "no water bath",
            "no heat process",
        ],
        Change::ProcessSkip,
        Class::Other,
        None,
    ),
    (
        &["own recipe", "own formula", "family recipe", "grandmother recipe", "invented recipe"],
        Change::OwnFormula,
        Class::Other,
        None,
    ),
    (
        &["oven", "in oven", "oven canning", "in oven for canner"],
        Change::Method,
        Class::Other,
        Some(What::Oven),
    ),
    (
        &["open kettle", "open kettle canning", "hot fill", "hot fill no process"],
        Change::Method,
        Class::Other,
        Some(What::OpenKettle),
    ),
    (
        &[
            "invert jar",
            "inverting",
            "inverting jar",
            "turn jar upside down",
            "upside down jar",
            "turn jar over",
        ],
        Change::Method,
        Class::Other,
        Some(What::Inverting),
    ),
    (
        &["dishwasher", "dishwasher canning", "in dishwasher", "process in dishwasher"],
        Change::Method,
        Class::Other,
        Some(What::DishwasherProcess),
    ),
    (
        &["microwave", "in microwave", "microwave canning"],
        Change::Method,
        Class::Other,
        Some(What::Microwave),
    ),
    (
        &["wax", "wax seal", "paraffin", "paraffin seal", "seal with wax", "seal with paraffin"],
        Change::Method,
        Class::Other,
        Some(What::WaxSeal),
    ),
    (
        &["unsterilized jar", "no sterilized jar", "without sterilizing jar", "jar not sterilized"],
        Change::Method,
        Class::Other,
        Some(What::UnsterilizedJars),
    ),
    (
        &["no sterilizing", "skip sterilizing", "skip sterilizing jar"],
        Change::Omit,
        Class::Other,
        Some(What::JarSterilizing),
    ),
    (&["cold jar"], Change::Method, Class::Other, Some(What::ColdJars)),
    (
        &["waiting jar", "jar wait", "let jar wait", "let filled jar wait"],
        Change::Method,
        Class::Other,
        Some(What::WaitingJars),
    ),
    (
        &[
            "cool canner with water",
            "run water over canner",
            "forced cooling",
            "cool quickly",
            "cool jar with water",
        ],
        Change::Method,
        Class::Other,
        Some(What::ForcedCooling),
    ),
    (
        &["retighten band", "tighten band after", "tighten lid after"],
        Change::Method,
        Class::Other,
        Some(What::Retightening),
    ),
    (
        &["no venting", "skip venting", "without venting", "no vent"],
        Change::Omit,
        Class::Other,
        Some(What::Venting),
    ),
    (
        &[
            "multicooker",
            "multi cooker",
            "electric pressure cooker",
            "electric multicooker",
            "in multicooker",
        ],
        Change::CannerOther,
        Class::Other,
        Some(What::Multicooker),
    ),
    (
        &["pressure saucepan", "pressure cooker", "small pressure cooker", "in pressure cooker"],
        Change::CannerOther,
        Class::Other,
        Some(What::PressureSaucepan),
    ),
    (
        &["pressure for boiling water", "pressure canner", "in pressure canner", "pressure"],
        Change::CannerPressure,
        Class::Other,
        None,
    ),
    (
        &["used lid", "old lid", "reused lid", "reuse lid"],
        Change::Replace,
        Class::Other,
        Some(What::UsedLids),
    ),
    (&["mayonnaise jar", "mayonnaise type jar"], Change::Replace, Class::Other, Some(What::MayonnaiseJars)),
    (&["reused jar", "commercial jar", "jar from shop", "jar bought"], Change::Replace, Class::Other, None),
    (&["wire bail jar", "bail jar"], Change::Replace, Class::Other, Some(What::WireBailJars)),
    (&["aspirin", "add aspirin"], Change::Replace, Class::Other, Some(What::Aspirin)),
    (&["canning powder", "add canning powder"], Change::Replace, Class::Other, Some(What::CanningPowder)),
    (
        &[
            "low temperature",
            "low temperature pasteurization",
            "low temp pasteurization",
            "pasteurize",
            "180 degree water",
        ],
        Change::LowTempPasteurize,
        Class::Other,
        None,
    ),
    (
        &["skin on", "leave skin on", "unpeeled", "no peeling", "without peeling"],
        Change::Cut,
        Class::TomatoKind,
        Some(What::SkinsLeftOn),
    ),
    (&["drained tomato", "drain tomato"], Change::Omit, Class::Produce, Some(What::DrainedTomatoes)),
    (
        &["in oil", "garlic in oil", "oil at room temperature"],
        Change::Add,
        Class::Garlic,
        Some(What::InOilAtRoomTemperature),
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_sentence_stands_for_two_things() {
        let mut seen = BTreeMap::new();
        for (row, (ways, ..)) in PHRASES.iter().enumerate() {
            for way in *ways {
                let before = seen.insert(words_of(way), row);
                assert!(before.is_none_or(|other| other == row), "{way:?} stands for two things");
            }
        }
    }
}
