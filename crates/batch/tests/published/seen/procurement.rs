//! How much produce fills a canner load, and what a container of it gives.

use almanac::{Almanac, ProductId};

use super::{GUIDE_1994, MICHIGAN, PFS, SEEN, USDA};

/// The paragraph on quantity of one page.
struct Quantity {
    issuer: &'static str,
    title: &'static str,
    place: &'static str,
    seen: &'static str,
    food: &'static str,
    /// Pounds for 7 quarts; `None` where the food goes into pints only.
    quart_load_lb: Option<f64>,
    /// Pounds for 9 pints.
    pint_load_lb: f64,
    /// Pounds of the container, where one is printed.
    container_lb: Option<f64>,
    /// Quarts that it gives.
    quarts: Option<(u32, u32)>,
}

const fn quantity(
    issuer: &'static str,
    title: &'static str,
    place: &'static str,
    food: &'static str,
    loads_lb: (Option<f64>, f64),
    container: Option<(f64, (u32, u32))>,
) -> Quantity {
    let (quart_load_lb, pint_load_lb) = loads_lb;
    let (container_lb, quarts) = match container {
        Some((weight, quarts)) => (Some(weight), Some(quarts)),
        None => (None, None),
    };
    Quantity { issuer, title, place, seen: SEEN, food, quart_load_lb, pint_load_lb, container_lb, quarts }
}

const QUANTITIES: &[Quantity] = &[
    quantity(MICHIGAN, PFS, "file 01600770", "apricots-halved", (Some(16.0), 10.0), Some((50.0, (20, 25)))),
    quantity(MICHIGAN, PFS, "file 01600304", "berries-whole", (Some(12.0), 8.0), Some((36.0, (18, 24)))),
    quantity(MICHIGAN, PFS, "file 01600773", "pear-halves", (Some(17.5), 11.0), Some((50.0, (16, 25)))),
    quantity(MICHIGAN, PFS, "file 01600415", "plums", (Some(14.0), 9.0), Some((56.0, (22, 36)))),
    quantity(MICHIGAN, PFS, "file 01600830", "tomatoes-crushed", (Some(22.0), 14.0), Some((53.0, (17, 20)))),
    quantity(MICHIGAN, PFS, "file 01600038", "asparagus", (Some(24.5), 16.0), Some((31.0, (7, 12)))),
    quantity(MICHIGAN, PFS, "file 01600712", "beans-lima-fresh", (Some(28.0), 18.0), Some((32.0, (6, 10)))),
    quantity(MICHIGAN, PFS, "file 01600169", "carrots", (Some(17.5), 11.0), Some((50.0, (17, 25)))),
    quantity(MICHIGAN, PFS, "file 01600280", "corn-whole-kernel", (Some(31.5), 20.0), Some((35.0, (6, 11)))),
    quantity(MICHIGAN, PFS, "file 01600287", "mushrooms", (None, 14.5), None),
    quantity(MICHIGAN, PFS, "file 01600190", "potatoes-sweet", (Some(17.5), 11.0), Some((50.0, (17, 25)))),
    quantity(
        USDA,
        GUIDE_1994,
        "guide 2, Peaches",
        "peach-halves",
        (Some(17.5), 11.0),
        Some((48.0, (16, 24))),
    ),
    quantity(
        USDA,
        GUIDE_1994,
        "guide 4, Snap beans",
        "beans-snap",
        (Some(14.0), 9.0),
        Some((30.0, (12, 20))),
    ),
    quantity(USDA, GUIDE_1994, "guide 4, Beets", "beets", (Some(21.0), 13.5), Some((52.0, (15, 20)))),
    quantity(USDA, GUIDE_1994, "guide 4, Pumpkins", "pumpkin-winter-squash-cubed", (Some(16.0), 10.0), None),
];

/// Source: the pages named in the list.
#[test]
fn produce_for_a_load_is_on_file_as_printed() {
    let almanac = Almanac::load().expect("the built-in tables load");
    for printed in QUANTITIES {
        let Quantity { place, food, .. } = printed;
        assert!(!printed.issuer.is_empty() && !printed.title.is_empty() && printed.seen == SEEN, "{place}");
        let rows: Vec<_> = almanac.find_procurement(&ProductId::from(*food)).collect();
        let weighs = |mass: Option<measure::Mass>, pounds: Option<f64>| match (mass, pounds) {
            (_, None) => true,
            (Some(mass), Some(pounds)) => (mass.as_pounds() - pounds).abs() < 1e-9,
            (None, Some(_)) => false,
        };
        let holds = rows.iter().any(|row| {
            weighs(row.per_quart_load, printed.quart_load_lb)
                && weighs(row.per_pint_load, Some(printed.pint_load_lb))
                && weighs(row.container.map(|(_, weight)| weight), printed.container_lb)
                && (printed.quarts.is_none() || row.quarts == printed.quarts)
        });
        assert!(holds, "{place}, {food}: {rows:#?}");
    }
}
