//! Jars, packs and canners in a cook's words.

use almanac::{CannerKind, Change, JarSize, Pack};

use super::reading::{Meaning, without_leading};
use super::setting::Setting;
use super::words::{FOR, is_one_of};
use crate::clear::question::Misread;

/// Jars, packs and canners, named alone or for another.
pub(crate) fn jar_pack_or_canner(
    words: &[String],
    setting: &Setting<'_>,
) -> Result<Option<Meaning>, Misread> {
    let (new, old) = match words.iter().position(|word| word == FOR) {
        Some(at) => (&words[..at], Some(&words[at + 1..])),
        None => (words, None),
    };
    let new = without_leading(new, &["in", "with"]);
    if let Some(to) = jar_of(new) {
        return jar_change(to, old, setting);
    }
    if let (Some(pack), true) =
        (pack_of(new, old.is_some()), old.is_none_or(|old| pack_of(old, true).is_some()))
    {
        return Ok(Some(Meaning::Pack(pack)));
    }
    let old_canner =
        old.is_none_or(|old| canner_of(old).is_some() || is_one_of(&["pressure", "pressure canner"], old));
    Ok(canner_of(new).filter(|_| old_canner).map(Meaning::Canner))
}

fn jar_change(
    to: JarSize,
    old: Option<&[String]>,
    setting: &Setting<'_>,
) -> Result<Option<Meaning>, Misread> {
    let from = match old.map(jar_of) {
        None => setting.jar,
        Some(Some(from)) => match setting.jar {
            Some(asked) if from != asked && to != asked => {
                return Err(Misread::AnotherJar { old: from, asked });
            }
            _ => Some(from),
        },
        Some(None) => return Ok(None),
    };
    // Where the jar was left open, only one above every printed size is larger.
    let from = from.or_else(|| setting.printed_jars.iter().max().copied());
    let change = if from.is_none_or(|from| to > from) { Change::JarLarger } else { Change::JarSmaller };
    Ok(Some(Meaning::Jar { change, to }))
}

fn jar_of(words: &[String]) -> Option<JarSize> {
    let words = match words {
        [rest @ .., jar] if jar == "jar" => rest,
        _ => words,
    };
    let sizes: &[(&[&str], JarSize)] = &[
        (&["quarter pint", "4 ounce", "4 oz"], JarSize::QuarterPint),
        (&["half pint", "8 ounce", "8 oz", "half pint jelly"], JarSize::HalfPint),
        (&["12 ounce", "12 oz"], JarSize::TwelveOunce),
        (&["pint", "16 ounce", "16 oz", "one pint"], JarSize::Pint),
        (&["pint and half", "24 ounce", "24 oz"], JarSize::PintAndHalf),
        (&["28 ounce", "28 oz"], JarSize::TwentyEightOunce),
        (&["quart", "32 ounce", "32 oz", "one quart"], JarSize::Quart),
        (&["half gallon", "64 ounce", "64 oz", "two quart"], JarSize::HalfGallon),
    ];
    sizes.iter().find(|(ways, _)| is_one_of(ways, words)).map(|(_, size)| *size)
}

/// A pack; the bare words `hot` and `raw` count only beside each other.
fn pack_of(words: &[String], bare: bool) -> Option<Pack> {
    if is_one_of(&["raw pack", "cold pack", "pack raw", "packed raw"], words)
        || bare && is_one_of(&["raw", "cold"], words)
    {
        return Some(Pack::Raw);
    }
    let hot = is_one_of(&["hot pack", "pack hot", "packed hot"], words) || bare && is_one_of(&["hot"], words);
    hot.then_some(Pack::Hot)
}

fn canner_of(words: &[String]) -> Option<CannerKind> {
    let kinds: &[(&[&str], CannerKind)] = &[
        (
            &[
                "boiling water",
                "boiling water canner",
                "water bath",
                "boiling water bath",
                "water bath canner",
            ],
            CannerKind::BoilingWater,
        ),
        (&["steam", "steam canner", "atmospheric steam canner", "atmospheric steam"], CannerKind::Steam),
        (
            &["dial", "dial gauge", "dial canner", "dial gauge canner", "pressure canner with dial gauge"],
            CannerKind::Dial,
        ),
        (
            &[
                "weighted",
                "weighted gauge",
                "weighted canner",
                "weighted gauge canner",
                "pressure canner with weighted gauge",
            ],
            CannerKind::Weighted,
        ),
    ];
    kinds.iter().find(|(ways, _)| is_one_of(ways, words)).map(|(_, kind)| *kind)
}
