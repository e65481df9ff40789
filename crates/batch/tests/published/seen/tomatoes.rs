//! Tomatoes, sauces, ketchup and salsas.

use super::{
    ACID, GUIDE_1994, GUIDE_REPRINT, LOW_ACID, MICHIGAN, OKLAHOMA, PFS, SEEN, Sheet, USDA, dial, water,
    weighted,
};

pub const SHEETS: &[Sheet] = &[
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        // One cell "pints or quarts" with two dial and three weighted lines: alternatives.
        place: "file 01600833, Tomato and vegetable juice blend (guide 3:6)",
        seen: SEEN,
        tables: &[
            water("tomato-vegetable-juice", "hot", "pint", &[35, 40, 45, 50]),
            water("tomato-vegetable-juice", "hot", "quart", &[40, 45, 50, 55]),
            dial("tomato-vegetable-juice", "hot", "pint", &[(20, ACID), (15, LOW_ACID)]),
            dial("tomato-vegetable-juice", "hot", "quart", &[(20, ACID), (15, LOW_ACID)]),
            weighted(
                "tomato-vegetable-juice",
                "hot",
                "quart",
                &[(20, 5, Some(10)), (15, 10, Some(15)), (10, 15, None)],
            ),
        ],
        headspace: &[("tomato-vegetable-juice", "hot", "quart", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_REPRINT,
        place: "guide 3, Tomatoes, whole or halved, packed in water",
        seen: SEEN,
        tables: &[
            water("tomatoes-whole-water", "hot", "pint", &[40, 45, 50, 55]),
            water("tomatoes-whole-water", "raw", "pint", &[40, 45, 50, 55]),
            water("tomatoes-whole-water", "hot", "quart", &[45, 50, 55, 60]),
            water("tomatoes-whole-water", "raw", "quart", &[45, 50, 55, 60]),
        ],
        headspace: &[("tomatoes-whole-water", "raw", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 3, Standard tomato sauce, tables 1 and 2",
        seen: SEEN,
        tables: &[
            water("tomato-sauce", "hot", "pint", &[35, 40, 45, 50]),
            water("tomato-sauce", "hot", "quart", &[40, 45, 50, 55]),
        ],
        headspace: &[("tomato-sauce", "hot", "pint", 0.25)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600878, Spaghetti sauce with meat",
        seen: SEEN,
        tables: &[
            dial("spaghetti-sauce-meat", "hot", "pint", &[(60, LOW_ACID)]),
            dial("spaghetti-sauce-meat", "hot", "quart", &[(70, LOW_ACID)]),
            weighted("spaghetti-sauce-meat", "hot", "pint", &[(60, 10, Some(15))]),
            weighted("spaghetti-sauce-meat", "hot", "quart", &[(70, 10, Some(15))]),
        ],
        headspace: &[("spaghetti-sauce-meat", "hot", "quart", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600877, Spaghetti sauce without meat",
        seen: SEEN,
        tables: &[
            dial("spaghetti-sauce-no-meat", "hot", "pint", &[(20, LOW_ACID)]),
            dial("spaghetti-sauce-no-meat", "hot", "quart", &[(25, LOW_ACID)]),
            weighted("spaghetti-sauce-no-meat", "hot", "pint", &[(20, 10, Some(15))]),
            weighted("spaghetti-sauce-no-meat", "hot", "quart", &[(25, 10, Some(15))]),
        ],
        headspace: &[("spaghetti-sauce-no-meat", "hot", "pint", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600827, Tomato ketchup (guide 3:16)",
        seen: SEEN,
        tables: &[water("tomato-ketchup", "hot", "pint", &[15, 20, 25])],
        headspace: &[("tomato-ketchup", "hot", "pint", 0.125)],
    },
    Sheet {
        issuer: OKLAHOMA,
        title: "Chile Salsa (Hot Tomato-Pepper Sauce), after the national center",
        place: "extension.okstate.edu/programs/oklahoma-gardening/recipes/chile-salsa.html, table 1",
        seen: SEEN,
        tables: &[water("salsa-chile", "hot", "pint", &[15, 20, 25])],
        headspace: &[("salsa-chile", "hot", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_REPRINT,
        place: "guide 3, Tomato/tomato paste salsa",
        seen: SEEN,
        tables: &[water("salsa-tomato-tomato-paste", "hot", "pint", &[15, 20, 25])],
        headspace: &[("salsa-tomato-tomato-paste", "hot", "pint", 0.5)],
    },
];
