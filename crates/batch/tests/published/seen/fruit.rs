//! Fruit, pie filling and sweet spreads.

use super::{
    ACID, CENTER, GUIDE_1994, GUIDE_REPRINT, MICHIGAN, PFS, SEEN, Sheet, USDA, dial, water, weighted,
};

pub const SHEETS: &[Sheet] = &[
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600770, Apricots, halved or sliced (guide 2:9-10)",
        seen: SEEN,
        tables: &[
            water("apricots-halved", "hot", "pint", &[20, 25, 30, 35]),
            water("apricots-halved", "hot", "quart", &[25, 30, 35, 40]),
            water("apricots-halved", "raw", "pint", &[25, 30, 35, 40]),
            water("apricots-halved", "raw", "quart", &[30, 35, 40, 45]),
        ],
        headspace: &[("apricots-halved", "hot", "pint", 0.5), ("apricots-halved", "raw", "quart", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 2, Apricots, halved or sliced, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("apricots-halved", "hot", "pint", &[(10, ACID)]),
            dial("apricots-halved", "raw", "quart", &[(10, ACID)]),
            weighted("apricots-halved", "raw", "pint", &[(10, 5, Some(10))]),
            weighted("apricots-halved", "hot", "quart", &[(10, 5, Some(10))]),
        ],
        headspace: &[],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600304, Berries, whole",
        seen: SEEN,
        tables: &[
            water("berries-whole", "hot", "pint", &[15, 20, 20, 25]),
            water("berries-whole", "hot", "quart", &[15, 20, 20, 25]),
            water("berries-whole", "raw", "pint", &[15, 20, 20, 25]),
            water("berries-whole", "raw", "quart", &[20, 25, 30, 35]),
            weighted("berries-whole", "hot", "pint", &[(8, 5, Some(10))]),
            weighted("berries-whole", "hot", "quart", &[(8, 5, Some(10))]),
            weighted("berries-whole", "raw", "pint", &[(8, 5, Some(10))]),
            weighted("berries-whole", "raw", "quart", &[(10, 5, Some(10))]),
        ],
        headspace: &[("berries-whole", "hot", "pint", 0.5), ("berries-whole", "raw", "quart", 0.5)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600773, Pears, halved",
        seen: SEEN,
        tables: &[
            water("pear-halves", "hot", "pint", &[20, 25, 30, 35]),
            water("pear-halves", "hot", "quart", &[25, 30, 35, 40]),
            weighted("pear-halves", "hot", "pint", &[(10, 5, Some(10))]),
        ],
        headspace: &[("pear-halves", "hot", "quart", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 2, Pears, halved, tables 2 and 3",
        seen: SEEN,
        tables: &[
            dial("pear-halves", "hot", "pint", &[(10, ACID)]),
            dial("pear-halves", "hot", "quart", &[(10, ACID)]),
        ],
        headspace: &[],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600415, Plums, halved or whole (guide 2:23-24)",
        seen: SEEN,
        tables: &[
            water("plums", "hot", "pint", &[20, 25, 30, 35]),
            water("plums", "raw", "pint", &[20, 25, 30, 35]),
            water("plums", "hot", "quart", &[25, 30, 35, 40]),
            water("plums", "raw", "quart", &[25, 30, 35, 40]),
        ],
        headspace: &[("plums", "raw", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 2, Peaches, halved or sliced, table 1",
        seen: SEEN,
        tables: &[
            water("peach-halves", "hot", "pint", &[20, 25, 30, 35]),
            water("peach-halves", "hot", "quart", &[25, 30, 35, 40]),
        ],
        headspace: &[("peach-halves", "hot", "pint", 0.5), ("peach-halves", "raw", "quart", 0.5)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        // The head of the third column reads 3,000 on this page; the federal guide prints 3,001.
        place: "file 01600843, Blueberry pie filling (guide 2:19)",
        seen: SEEN,
        tables: &[
            water("pie-filling-blueberry", "hot", "pint", &[30, 35, 40, 45]),
            water("pie-filling-blueberry", "hot", "quart", &[30, 35, 40, 45]),
        ],
        headspace: &[("pie-filling-blueberry", "hot", "quart", 1.0)],
    },
    Sheet {
        issuer: CENTER,
        title: "Blueberry-Spice Jam with powdered pectin, reviewed June 2006, as a public web archive keeps it",
        place: "uga.edu/nchfp/how/can_07/blueberry_spice_jam.html, table 1",
        seen: SEEN,
        tables: &[
            water("jam-blueberry-spice", "hot", "half-pint", &[5, 10, 15]),
            water("jam-blueberry-spice", "hot", "pint", &[5, 10, 15]),
        ],
        headspace: &[("jam-blueberry-spice", "hot", "half-pint", 0.25)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_REPRINT,
        place: "guide 7, Peach-pineapple spread",
        seen: SEEN,
        tables: &[
            water("peach-pineapple-spread", "hot", "half-pint", &[15, 20, 20, 25]),
            water("peach-pineapple-spread", "hot", "pint", &[20, 25, 30, 35]),
        ],
        headspace: &[("peach-pineapple-spread", "hot", "pint", 0.25)],
    },
];
