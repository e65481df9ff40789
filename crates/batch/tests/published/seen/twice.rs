//! Tables typed a second time, from a page of another issuer, and compared with the first list cell by cell.

use std::collections::BTreeSet;

use super::{
    GUIDE_1994, LOW_ACID, MICHIGAN, MISSOURI, PFS, SEEN, Sheet, USDA, all_sheets, dial, tables_of, water,
    weighted,
};
use crate::table::{Lines, Printed, agree};

pub const SHEETS: &[Sheet] = &[
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 2, Berries, whole, table 1, hot pack",
        seen: SEEN,
        tables: &[
            water("berries-whole", "hot", "pint", &[15, 20, 20, 25]),
            water("berries-whole", "hot", "quart", &[15, 20, 20, 25]),
        ],
        headspace: &[("berries-whole", "raw", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 2, Pears, halved, table 1",
        seen: SEEN,
        tables: &[
            water("pear-halves", "hot", "pint", &[20, 25, 30, 35]),
            water("pear-halves", "hot", "quart", &[25, 30, 35, 40]),
        ],
        headspace: &[("pear-halves", "hot", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 2, Blueberry pie filling, table 2",
        seen: SEEN,
        tables: &[
            water("pie-filling-blueberry", "hot", "pint", &[30, 35, 40, 45]),
            water("pie-filling-blueberry", "hot", "quart", &[30, 35, 40, 45]),
        ],
        headspace: &[("pie-filling-blueberry", "hot", "pint", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600894, Blueberry-spice jam",
        seen: SEEN,
        tables: &[
            water("jam-blueberry-spice", "hot", "half-pint", &[5, 10, 15]),
            water("jam-blueberry-spice", "hot", "pint", &[5, 10, 15]),
        ],
        headspace: &[("jam-blueberry-spice", "hot", "pint", 0.25)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600897, Peach-pineapple spread",
        seen: SEEN,
        tables: &[
            water("peach-pineapple-spread", "hot", "half-pint", &[15, 20, 20, 25]),
            water("peach-pineapple-spread", "hot", "pint", &[20, 25, 30, 35]),
        ],
        headspace: &[("peach-pineapple-spread", "hot", "half-pint", 0.25)],
    },
    Sheet {
        issuer: MISSOURI,
        title: "Tomato Ketchup, recipe 390, after the national center",
        place: "seasonalandsimple.info, recipe 390",
        seen: SEEN,
        tables: &[water("tomato-ketchup", "hot", "pint", &[15, 20, 25])],
        headspace: &[("tomato-ketchup", "hot", "pint", 0.125)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 3, Chile salsa, table 1",
        seen: SEEN,
        tables: &[water("salsa-chile", "hot", "pint", &[15, 20, 25])],
        headspace: &[("salsa-chile", "hot", "pint", 0.5)],
    },
    Sheet {
        issuer: MISSOURI,
        title: "Pickled Corn Relish, recipe 315, after the national center",
        place: "seasonalandsimple.info, recipe 315",
        seen: SEEN,
        tables: &[
            water("corn-relish", "hot", "half-pint", &[15, 20, 25]),
            water("corn-relish", "hot", "pint", &[15, 20, 25]),
        ],
        headspace: &[("corn-relish", "hot", "half-pint", 0.5)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600138, Pickle relish",
        seen: SEEN,
        tables: &[
            water("pickle-relish", "hot", "half-pint", &[10, 15, 20]),
            water("pickle-relish", "hot", "pint", &[10, 15, 20]),
        ],
        headspace: &[("pickle-relish", "hot", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 4, Asparagus, spears or pieces, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("asparagus", "hot", "pint", &[(30, LOW_ACID)]),
            dial("asparagus", "raw", "quart", &[(40, LOW_ACID)]),
            weighted("asparagus", "hot", "pint", &[(30, 10, Some(15))]),
        ],
        headspace: &[("asparagus", "raw", "pint", 1.0)],
    },
    Sheet {
        issuer: MISSOURI,
        title: "Canned Beets, recipe 459, after the national center",
        place: "seasonalandsimple.info, recipe 459",
        seen: SEEN,
        tables: &[
            dial("beets", "hot", "pint", &[(30, LOW_ACID)]),
            dial("beets", "hot", "quart", &[(35, LOW_ACID)]),
            weighted("beets", "hot", "quart", &[(35, 10, Some(15))]),
        ],
        headspace: &[("beets", "hot", "pint", 1.0)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 4, Corn, whole kernel, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("corn-whole-kernel", "raw", "pint", &[(55, LOW_ACID)]),
            dial("corn-whole-kernel", "hot", "quart", &[(85, LOW_ACID)]),
            weighted("corn-whole-kernel", "hot", "quart", &[(85, 10, Some(15))]),
        ],
        headspace: &[("corn-whole-kernel", "hot", "quart", 1.0)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 5, Chicken or rabbit, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("poultry-rabbit-boneless", "hot", "pint", &[(75, LOW_ACID)]),
            dial("poultry-rabbit-bone-in", "hot", "quart", &[(75, LOW_ACID)]),
            weighted("poultry-rabbit-boneless", "hot", "quart", &[(90, 10, Some(15))]),
        ],
        headspace: &[("poultry-rabbit-boneless", "raw", "pint", 1.25)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 5, Fish, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("fish-pints", "raw", "pint", &[(100, LOW_ACID)]),
            weighted("fish-pints", "raw", "pint", &[(100, 10, Some(15))]),
        ],
        headspace: &[("fish-pints", "raw", "pint", 1.0)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 5, King and Dungeness crab meat, table 1",
        seen: SEEN,
        tables: &[
            dial("crab", "hot", "half-pint", &[(70, LOW_ACID)]),
            dial("crab", "hot", "pint", &[(80, LOW_ACID)]),
        ],
        headspace: &[("crab", "hot", "half-pint", 1.0)],
    },
];

/// What a table is of, so that the two lists can be laid beside each other.
fn key(table: &Printed) -> (&'static str, &'static str, &'static str, u8) {
    let canner = match table.lines {
        Lines::Water(_) => 0,
        Lines::Dial(_) => 1,
        Lines::Weighted(_) => 2,
    };
    (table.food, table.pack, table.jar, canner)
}

/// Source: the pages named in both lists.
#[test]
fn forty_cells_read_alike_on_the_pages_of_two_issuers() {
    let mut compared = 0;
    for sheet in SHEETS {
        for table in sheet.tables {
            let first = all_sheets()
                .filter(|first| first.tables.iter().any(|one| key(one) == key(table)))
                .collect::<Vec<_>>();
            assert!(!first.is_empty(), "{table:?} was typed once only");
            for one in first {
                assert_ne!(one.issuer, sheet.issuer, "{table:?} is from one issuer twice");
                let lines = one.tables.iter().find(|one| key(one) == key(table)).map(|one| one.lines);
                assert_eq!(lines, Some(table.lines), "{} and {}", one.place, sheet.place);
            }
            compared += table.cells();
        }
    }
    assert!(compared >= 40, "{compared} cells compared");
    let issuers: BTreeSet<&str> = SHEETS.iter().map(|sheet| sheet.issuer).collect();
    assert!(issuers.len() >= 3, "{issuers:?}");
}

/// Source: the pages named in the list.
#[test]
fn what_was_typed_twice_is_served_as_printed() {
    agree(&tables_of(SHEETS.iter()));
}
