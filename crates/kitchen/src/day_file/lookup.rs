//! What the almanac knows of the words and measures of a day file.

use almanac::{Almanac, DensityMeasure, Formula, Match, Produce, ProduceId, Product};
use measure::{Fraction, Mass, Volume};

use crate::day::WishFor;

use super::fault::FaultKind;
use super::nearest::find_nearest;
use super::reader::Reader;
use super::section::Words;

/// A weight that was worked out, and from what.
pub(super) struct Weighed {
    /// The weight.
    pub(super) net: Mass,
    /// By which printed figure.
    pub(super) by: String,
}

/// The produce that words name; words that name none, or several, are a fault.
pub(super) fn require_produce(reader: &mut Reader<'_, '_>, words: Words<'_>) -> Option<ProduceId> {
    if words.text.trim().is_empty() {
        reader.faults.add(words.file, words.at, FaultKind::Empty { key: words.key.into() });
        return None;
    }
    let kind = match reader.almanac.find_produce(words.text) {
        Match::One(produce) => return Some(produce.id.clone()),
        Match::Several(several) => {
            let matches = several.iter().map(|produce| produce.name.to_string()).collect();
            FaultKind::Ambiguous { word: words.text.into(), matches }
        }
        Match::Nearest(near) => {
            let nearest = near.iter().map(|produce| produce.name.to_string()).collect();
            FaultKind::UnknownProduce { word: words.text.into(), nearest }
        }
    };
    reader.faults.add(words.file, words.at, kind);
    None
}

/// What the words of a wish speak of.
///
/// A formula or produce spelled in full comes first, then what holds all the words: a produce, a formula, a food of
/// the process tables. Words that are nearly a name are a slip of the pen and a fault; words that are far from any
/// are kept.
pub(super) fn find_wish(reader: &mut Reader<'_, '_>, words: Words<'_>) -> Option<WishFor> {
    let almanac = reader.almanac;
    let formulas = almanac.find_formula(words.text);
    if let Some(formula) = formulas.one().filter(|formula| is_full(words.text, formula)) {
        return Some(WishFor::Formula(formula.id.clone()));
    }
    let produce = almanac.find_produce(words.text);
    if let Some(produce) = produce.one() {
        return Some(WishFor::Produce(produce.id.clone()));
    }
    if let Some(formula) = formulas.one() {
        return Some(WishFor::Formula(formula.id.clone()));
    }
    let products = almanac.find_product(words.text);
    if let Some(product) = products.one() {
        return Some(WishFor::Product(product.id.clone()));
    }
    let kind = match several_names(&formulas, &produce, &products) {
        Some(matches) => FaultKind::Ambiguous { word: words.text.into(), matches },
        None => match find_slip(words.text, &formulas, &produce, &products) {
            Some(nearest) => FaultKind::UnknownWish { word: words.text.into(), nearest },
            None => return Some(WishFor::Unknown(words.text.trim().into())),
        },
    };
    reader.faults.add(words.file, words.at, kind);
    None
}

/// Whether words spell the id or the name of a formula in full, whatever stands between its words.
fn is_full(typed: &str, formula: &Formula) -> bool {
    let plain = |text: &str| text.trim().to_lowercase().replace(['_', '-'], " ");
    [formula.id.as_str(), &formula.name].into_iter().any(|name| plain(name) == plain(typed))
}

/// The names of whatever words may mean, when they may mean several.
fn several_names(
    formulas: &Match<'_, Formula>,
    produce: &Match<'_, Produce>,
    products: &Match<'_, Product>,
) -> Option<Vec<String>> {
    /// More names than this help nobody to choose.
    const MOST: usize = 8;
    let mut names: Vec<String> = Vec::new();
    if let Match::Several(several) = produce {
        names.extend(several.iter().map(|produce| produce.name.to_string()));
    }
    if let Match::Several(several) = formulas {
        names.extend(several.iter().map(|formula| formula.id.to_string()));
    }
    if let Match::Several(several) = products {
        names.extend(several.iter().map(|product| product.id.to_string()));
    }
    names.truncate(MOST);
    (!names.is_empty()).then_some(names)
}

/// The name that words are a slip of the pen of.
fn find_slip(
    typed: &str,
    formulas: &Match<'_, Formula>,
    produce: &Match<'_, Produce>,
    products: &Match<'_, Product>,
) -> Option<String> {
    let mut names: Vec<&str> = Vec::new();
    if let Match::Nearest(near) = produce {
        names.extend(near.iter().flat_map(|produce| [produce.id.as_str(), &*produce.name]));
        names.extend(near.iter().flat_map(|produce| produce.aliases.iter().map(|alias| &**alias)));
    }
    if let Match::Nearest(near) = formulas {
        names.extend(near.iter().flat_map(|formula| [formula.id.as_str(), &*formula.name]));
    }
    if let Match::Nearest(near) = products {
        names.extend(near.iter().map(|product| product.id.as_str()));
        names.extend(near.iter().flat_map(|product| product.names.iter().map(|name| &**name)));
    }
    find_nearest(typed.trim(), names).map(str::to_owned)
}

/// What so many pieces weigh as they come from the garden.
pub(super) fn weigh_pieces(almanac: &Almanac, produce: &ProduceId, count: Fraction) -> Option<Weighed> {
    let each = almanac.produce(produce)?.each_as_purchased?;
    Some(Weighed {
        net: each * count.to_f64(),
        by: format!("at {:.0} g for one of middling size", each.as_grams()),
    })
}

/// What bushels, or pecks of a quarter of one, or other containers weigh.
pub(super) fn weigh_containers(
    almanac: &Almanac,
    produce: &ProduceId,
    number: Fraction,
    name: &str,
) -> Option<Weighed> {
    /// Pecks in a bushel (NIST Handbook 44, appendix C).
    const PECKS: f64 = 4.0;
    let containers = &almanac.produce(produce)?.containers;
    let find = |name: &str| containers.iter().find(|(container, _)| container.as_str() == name);
    let (share, &(container, mass)) = match (name, find(name)) {
        (_, Some(found)) => (1.0, found),
        ("peck", None) => (1.0 / PECKS, find("bushel")?),
        _ => return None,
    };
    let by = format!("at the printed {:.0} lb for a {container}", mass.as_pounds());
    Some(Weighed { net: mass * (number.to_f64() * share), by })
}

/// What a volume of whole produce weighs, where what one cup of it weighs is on file. A cup of it chopped or sliced
/// says nothing about a basket.
pub(super) fn weigh_volume(almanac: &Almanac, produce: &ProduceId, volume: Volume) -> Option<Weighed> {
    let name = &almanac.produce(produce)?.name;
    let whole =
        almanac.find_density(name, None, DensityMeasure::Cup).filter(|density| density.form.is_empty());
    let cup = whole?.mass();
    Some(Weighed { net: cup * volume.as_cups(), by: format!("at {:.0} g for a cup", cup.as_grams()) })
}

/// The shortest life in days that is printed for a produce.
pub(super) fn find_shortest_life(almanac: &Almanac, produce: &ProduceId) -> Option<u32> {
    let rows = almanac.find_storage(almanac.produce(produce)?);
    rows.iter().filter_map(|row| row.life).map(|life| life.min).min()
}
