//! What came in: produce, weight, condition, and how long it waits.

use almanac::ProduceId;
use measure::{Amount, Fraction, Mass};

use crate::day::{Basket, Condition, Waits};

use super::equipment::WrittenBowl;
use super::fault::FaultKind;
use super::lookup::{self, Weighed};
use super::reader::{Files, Reader};
use super::section::{Entry, Section};
use super::waits::guess_waits;

const KEYS: &[&str] = &["produce", "gross", "bowl", "net", "count", "condition", "waits"];
const WEIGHTS: [&str; 3] = ["gross", "net", "count"];
const CONDITIONS: &[(&str, Condition)] = &[
    ("sound", Condition::Sound),
    ("split", Condition::Split),
    ("bruised", Condition::Bruised),
    ("overgrown", Condition::Overgrown),
    ("unripe", Condition::Unripe),
    ("ripe", Condition::Ripe),
    ("soft", Condition::Soft),
    ("fallen", Condition::Fallen),
    ("limp", Condition::Limp),
    ("cut", Condition::Cut),
    ("frozen", Condition::Frozen),
    ("frosted", Condition::Frosted),
    ("bought", Condition::Bought),
];
const WAITS: &[(&str, Waits)] =
    &[("today", Waits::Today), ("tomorrow", Waits::Tomorrow), ("days", Waits::Days), ("week", Waits::Week)];

/// A weight and how it was come by.
struct Scale {
    net: Mass,
    weighed: String,
}

/// The baskets of the day.
pub(super) fn read_baskets(
    files: Files<'_>,
    bowls: &[WrittenBowl],
    reader: &mut Reader<'_, '_>,
) -> Vec<Basket> {
    let Some(entry) = files.day.and_then(|root| root.find("basket")) else {
        if files.day.is_some() {
            reader.fill_in("nothing came in, since no basket is named");
        }
        return Vec::new();
    };
    let tables = entry.sections("[[basket]]", &mut reader.faults);
    tables.into_iter().filter_map(|table| read_basket(table, bowls, reader)).collect()
}

fn read_basket(table: Section<'_>, bowls: &[WrittenBowl], reader: &mut Reader<'_, '_>) -> Option<Basket> {
    table.check_keys(KEYS, &mut reader.faults);
    let words = table
        .require("produce", "produce = \"tomatoes\"", &mut reader.faults)
        .and_then(|entry| entry.words("the name of a produce in quotes", &mut reader.faults));
    let produce = words.and_then(|words| lookup::require_produce(reader, words));
    let called = words.map_or("something", |words| words.text.trim()).to_owned();
    let scale = read_weight(table, &called, produce.as_ref(), bowls, reader);
    let condition =
        table.find("condition").map(|entry| read_conditions(entry, &called, reader)).unwrap_or_default();
    let stated = table.find("waits").map(|entry| reader.choose(entry, WAITS));
    let (produce, scale) = (produce?, scale?);
    let (waits, waits_is_ours) = match stated {
        Some(stated) => (stated?, false),
        None => (guess_waits(&produce, &called, &condition, reader), true),
    };
    Some(Basket {
        produce,
        entered: called,
        net: scale.net,
        weighed: scale.weighed,
        condition,
        waits,
        waits_is_ours,
    })
}

fn read_weight(
    table: Section<'_>,
    called: &str,
    produce: Option<&ProduceId>,
    bowls: &[WrittenBowl],
    reader: &mut Reader<'_, '_>,
) -> Option<Scale> {
    let given: Vec<(&'static str, Entry<'_>)> =
        WEIGHTS.iter().filter_map(|&key| Some((key, table.find(key)?))).collect();
    let bowl = table.find("bowl");
    let &[(key, entry)] = given.as_slice() else {
        match given.as_slice() {
            [(first, _), (second, entry), ..] => {
                let kind = FaultKind::WeighedTwice { produce: called.into(), first, second };
                reader.faults.add(entry.file, entry.key_at, kind);
            }
            _ => reader.faults.add(table.file, table.at, FaultKind::NotWeighed { produce: called.into() }),
        }
        return None;
    };
    if key != "gross"
        && let Some(bowl) = bowl
    {
        reader.faults.add(bowl.file, bowl.key_at, FaultKind::BowlWithoutGross { produce: called.into() });
        return None;
    }
    let scale = match key {
        "gross" => read_gross(table, entry, called, bowls, reader),
        "net" => read_net(entry, called, produce, reader),
        _ => read_count(entry, called, produce, reader),
    }?;
    if scale.net <= Mass::ZERO {
        reader.faults.add(entry.file, entry.value_at(), FaultKind::WeighsNothing { produce: called.into() });
        return None;
    }
    Some(scale)
}

fn read_gross(
    table: Section<'_>,
    entry: Entry<'_>,
    called: &str,
    bowls: &[WrittenBowl],
    reader: &mut Reader<'_, '_>,
) -> Option<Scale> {
    let gross = reader.amount(entry, "\"4 lb 6 oz\"", measure::read_mass);
    let Some(bowl_entry) = table.find("bowl") else {
        reader.faults.add(entry.file, entry.key_at, FaultKind::GrossWithoutBowl { produce: called.into() });
        return None;
    };
    let name = reader.name(bowl_entry)?;
    let Some(bowl) = bowls.iter().find(|known| known.bowl.name.eq_ignore_ascii_case(&name)) else {
        // A bowl may stand in the file that could not be read; its fault is noted already.
        if !reader.file_lost {
            let known = bowls.iter().map(|known| known.bowl.name.clone()).collect();
            let kind = FaultKind::UnknownBowl { bowl: name, known };
            reader.faults.add(bowl_entry.file, bowl_entry.value_at(), kind);
        }
        return None;
    };
    let Some(tare) = bowl.bowl.tare else {
        reader.faults.add(bowl_entry.file, bowl_entry.value_at(), FaultKind::BowlWithoutTare { bowl: name });
        return None;
    };
    let written = entry.amount("a weight", &mut reader.faults)?.text.trim();
    let net = gross? - tare;
    if net <= Mass::ZERO {
        let kind = FaultKind::BowlTooHeavy {
            bowl: name,
            tare: bowl.tare.clone(),
            gross: written.into(),
            produce: called.into(),
        };
        reader.faults.add(entry.file, entry.value_at(), kind);
        return None;
    }
    Some(Scale { net, weighed: format!("{written} less the {} bowl, {}", bowl.bowl.name, bowl.tare) })
}

/// A net weight, or a measure that has a weight for this crop: half a bushel, two quarts.
fn read_net(
    entry: Entry<'_>,
    called: &str,
    produce: Option<&ProduceId>,
    reader: &mut Reader<'_, '_>,
) -> Option<Scale> {
    let amount = reader.amount(entry, "\"4 lb 6 oz\"", measure::read_amount)?;
    let words = entry.amount("a weight", &mut reader.faults)?;
    let written = words.text.trim();
    let by_measure = match amount {
        Amount::Mass(net) => return Some(Scale { net, weighed: format!("{written}, as given") }),
        Amount::Count(_) => {
            let kind = FaultKind::NoUnit {
                key: "net".into(),
                text: written.into(),
                example: "\"4 lb 6 oz\"; pieces go under `count`",
            };
            reader.faults.add(words.file, words.at, kind);
            return None;
        }
        Amount::Volume(volume) => lookup::weigh_volume(reader.almanac, produce?, volume),
        Amount::Container { number, ref name } => {
            lookup::weigh_containers(reader.almanac, produce?, number, name)
        }
    };
    let Some(Weighed { net, by }) = by_measure else {
        let kind = FaultKind::NoWeightOfMeasure { produce: called.into(), text: written.into() };
        reader.faults.add(words.file, words.at, kind);
        return None;
    };
    Some(Scale { net, weighed: format!("{written}, {by}") })
}

fn read_count(
    entry: Entry<'_>,
    called: &str,
    produce: Option<&ProduceId>,
    reader: &mut Reader<'_, '_>,
) -> Option<Scale> {
    let words = entry.amount("a number of pieces", &mut reader.faults)?;
    let count: Fraction = reader.understand(words, measure::read_count)?;
    let Some(Weighed { net, by }) = lookup::weigh_pieces(reader.almanac, produce?, count) else {
        reader.faults.add(words.file, words.at, FaultKind::NoWeightEach { produce: called.into() });
        return None;
    };
    Some(Scale { net, weighed: format!("{}, {by}", words.text.trim()) })
}

fn read_conditions(entry: Entry<'_>, called: &str, reader: &mut Reader<'_, '_>) -> Vec<Condition> {
    let mut conditions: Vec<Condition> =
        entry.list().into_iter().filter_map(|item| reader.choose(item, CONDITIONS)).collect();
    conditions.sort_unstable();
    conditions.dedup();
    let spoilt = [
        Condition::Split,
        Condition::Bruised,
        Condition::Soft,
        Condition::Fallen,
        Condition::Limp,
        Condition::Frosted,
    ];
    let clashes =
        spoilt.iter().map(|&other| (Condition::Sound, other)).chain([(Condition::Unripe, Condition::Ripe)]);
    for (first, second) in clashes {
        if conditions.contains(&first) && conditions.contains(&second) {
            let kind = FaultKind::ConditionsClash {
                produce: called.into(),
                first: name_condition(first),
                second: name_condition(second),
            };
            reader.faults.add(entry.file, entry.key_at, kind);
        }
    }
    conditions
}

/// The word of a condition.
pub(super) fn name_condition(condition: Condition) -> &'static str {
    let named = CONDITIONS.iter().find(|&&(_, other)| other == condition);
    named.map(|&(word, _)| word).expect("every condition stands in the list of words")
}
