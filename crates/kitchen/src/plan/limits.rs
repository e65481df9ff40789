//! What a day has of everything: resources used minute by minute, and stock used up.

use std::collections::BTreeMap;

use almanac::{JarSize, Mouth};
use dayplan::Resource;
use measure::Mass;

use crate::day::{Day, Equipment};

/// The stock line of a basket, in whole grams.
pub(crate) fn basket_stock(basket: usize) -> String {
    format!("basket-{}-grams", basket + 1)
}

/// The basket of a stock line, where it is one.
pub(crate) fn basket_of_stock(line: &str) -> Option<usize> {
    let number: usize = line.strip_prefix("basket-")?.strip_suffix("-grams")?.parse().ok()?;
    number.checked_sub(1)
}

/// The stock line of jars of one size and mouth.
pub(crate) fn jar_stock(size: JarSize, mouth: Mouth) -> String {
    format!("jar-{}-{}", size.as_str(), mouth.as_str())
}

/// The stock line of new lids of one mouth.
pub(crate) fn lid_stock(mouth: Mouth) -> String {
    format!("lid-{}", mouth.as_str())
}

/// The stock line of freezer bags.
pub(crate) const BAGS: &str = "freezer-bag";
/// The stock line of freezer room, in whole millilitres.
pub(crate) const FREEZER: &str = "freezer-ml";
/// The stock line of dehydrator trays.
pub(crate) const TRAYS: &str = "dryer-tray";
/// The stock line of crocks.
pub(crate) const CROCKS: &str = "crock";

/// The greatest amount the problem format allows.
const MOST: f64 = 1_000_000.0;

/// Whole grams, rounded down: a plan never uses more than there is.
pub(crate) fn whole_grams(mass: Mass) -> u32 {
    // Never overflows: clamped to what the format allows.
    libm::floor(mass.as_grams().clamp(0.0, MOST)) as u32
}

/// The machines and places of the kitchen, each canner by its own name.
pub(crate) fn kitchen_resources(day: &Day) -> Vec<Resource> {
    let Equipment { burners, strong_burners, pots, ovens, processors, blenders, sinks, jelly_bags, .. } =
        day.equipment;
    let mut resources: Vec<Resource> = [
        ("burner", burners),
        ("strong-burner", strong_burners.min(burners)),
        ("kettle", pots),
        ("oven", ovens),
        ("processor", processors),
        ("blender", blenders),
        ("sink", sinks),
        ("jelly-bag", jelly_bags),
    ]
    .into_iter()
    .map(|(id, capacity)| Resource { id: id.to_owned(), capacity, closed: vec![] })
    .collect();
    resources.extend((0..day.canners.len()).map(|at| Resource {
        id: canner_resource(day, at),
        capacity: 1,
        closed: vec![],
    }));
    resources
}

/// The resource of a canner.
pub(crate) fn canner_resource(day: &Day, canner: usize) -> String {
    format!("canner-{}", day.canners[canner].id)
}

/// What is there to be used up. What the day does not say is not limited, and has no line.
pub(crate) fn stock_of(day: &Day) -> BTreeMap<String, u32> {
    let mut stock = BTreeMap::new();
    for (at, basket) in day.baskets.iter().enumerate() {
        stock.insert(basket_stock(at), whole_grams(basket.net));
    }
    for jars in &day.jars {
        *stock.entry(jar_stock(jars.size, jars.mouth)).or_insert(0) += jars.count;
    }
    for lids in &day.lids {
        *stock.entry(lid_stock(lids.mouth)).or_insert(0) += lids.count;
    }
    if let Some(bags) = day.supplies.bags {
        stock.insert(BAGS.to_owned(), bags);
    }
    if let Some(room) = day.supplies.freezer {
        // Never overflows: clamped to what the format allows.
        stock.insert(FREEZER.to_owned(), libm::floor(room.as_millilitres().clamp(0.0, MOST)) as u32);
    }
    stock.insert(TRAYS.to_owned(), day.equipment.dryer_trays);
    stock.insert(CROCKS.to_owned(), day.equipment.crocks);
    stock
}

/// A stock line as a cook would say it.
pub(crate) fn stock_words(line: &str) -> String {
    match line {
        "freezer-bag" => "freezer bags".to_owned(),
        "freezer-ml" => "ml of freezer room".to_owned(),
        "dryer-tray" => "dryer trays".to_owned(),
        "crock" => "crocks".to_owned(),
        _ => {
            if let Some(mouth) = line.strip_prefix("lid-") {
                return format!("{mouth}-mouth lids");
            }
            let Some(jar) = line.strip_prefix("jar-") else { return line.to_owned() };
            match jar.rsplit_once('-') {
                Some((size, mouth)) => format!("{mouth}-mouth {size} jars"),
                None => format!("{jar} jars"),
            }
        }
    }
}

/// What is short, in words.
pub(crate) fn short_words(day: &Day, line: &str, needs: u32, there: u32) -> String {
    match basket_of_stock(line) {
        Some(basket) => format!("there is too little of the {}", day.baskets[basket].entered),
        None => format!("it needs {needs} {}, and there are {there}", stock_words(line)),
    }
}
