//! Pickles and relishes.

use super::{GUIDE_1994, MICHIGAN, MISSOURI, PFS, SEEN, Sheet, USDA, water};

pub const SHEETS: &[Sheet] = &[
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600865, Quick fresh-pack dill pickles (guide 6:20)",
        seen: SEEN,
        tables: &[
            water("dill-pickles-fresh-pack", "raw", "pint", &[10, 15, 20]),
            water("dill-pickles-fresh-pack", "raw", "quart", &[15, 20, 25]),
        ],
        headspace: &[("dill-pickles-fresh-pack", "raw", "quart", 0.5)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        // The top band of this page ends at 8,000 ft; the federal guide leaves it open.
        place: "file 01600282, Pickled corn relish",
        seen: SEEN,
        tables: &[
            water("corn-relish", "hot", "half-pint", &[15, 20, 25]),
            water("corn-relish", "hot", "pint", &[15, 20, 25]),
        ],
        headspace: &[("corn-relish", "hot", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 6, Pickle relish, table 1",
        seen: SEEN,
        tables: &[
            water("pickle-relish", "hot", "half-pint", &[10, 15, 20]),
            water("pickle-relish", "hot", "pint", &[10, 15, 20]),
        ],
        headspace: &[("pickle-relish", "hot", "half-pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 6, Pickled pepper-onion relish, table 1",
        seen: SEEN,
        tables: &[
            water("pepper-onion-relish", "hot", "half-pint", &[5, 10, 15]),
            water("pepper-onion-relish", "hot", "pint", &[5, 10, 15]),
        ],
        headspace: &[("pepper-onion-relish", "hot", "pint", 0.5)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 6, Pickled three-bean salad, table 1",
        seen: SEEN,
        tables: &[
            water("three-bean-salad", "hot", "half-pint", &[15, 20, 25]),
            water("three-bean-salad", "hot", "pint", &[15, 20, 25]),
        ],
        headspace: &[("three-bean-salad", "hot", "half-pint", 0.5)],
    },
    Sheet {
        issuer: MISSOURI,
        title: "Pickled Banana Pepper Rings, recipe 351, after the national center",
        place: "seasonalandsimple.info, recipe 351, boiling water or steam",
        seen: SEEN,
        tables: &[water("pepper-rings-pickled", "raw", "pint", &[10, 15, 20])],
        headspace: &[("pepper-rings-pickled", "raw", "pint", 0.5)],
    },
];
