//! Meat, poultry, fish and shellfish.

use super::{GUIDE_1994, LOW_ACID, MICHIGAN, PFS, SEEN, Sheet, USDA, dial, weighted};

pub const SHEETS: &[Sheet] = &[
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600482, Chicken or rabbit",
        seen: SEEN,
        tables: &[
            dial("poultry-rabbit-boneless", "hot", "pint", &[(75, LOW_ACID)]),
            dial("poultry-rabbit-boneless", "raw", "quart", &[(90, LOW_ACID)]),
            dial("poultry-rabbit-bone-in", "raw", "pint", &[(65, LOW_ACID)]),
            dial("poultry-rabbit-bone-in", "hot", "quart", &[(75, LOW_ACID)]),
            weighted("poultry-rabbit-boneless", "raw", "pint", &[(75, 10, Some(15))]),
            weighted("poultry-rabbit-boneless", "hot", "quart", &[(90, 10, Some(15))]),
            weighted("poultry-rabbit-bone-in", "hot", "pint", &[(65, 10, Some(15))]),
            weighted("poultry-rabbit-bone-in", "raw", "quart", &[(75, 10, Some(15))]),
        ],
        headspace: &[
            ("poultry-rabbit-boneless", "hot", "pint", 1.25),
            ("poultry-rabbit-bone-in", "raw", "quart", 1.25),
        ],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 5, Ground or chopped meat, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("meat-ground", "hot", "pint", &[(75, LOW_ACID)]),
            dial("meat-ground", "hot", "quart", &[(90, LOW_ACID)]),
            weighted("meat-ground", "hot", "pint", &[(75, 10, Some(15))]),
            weighted("meat-ground", "hot", "quart", &[(90, 10, Some(15))]),
        ],
        headspace: &[("meat-ground", "hot", "pint", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600849, Strips, cubes or chunks of meat (guide 5:6-7)",
        seen: SEEN,
        tables: &[
            dial("meat-strips-cubes", "hot", "pint", &[(75, LOW_ACID)]),
            dial("meat-strips-cubes", "raw", "quart", &[(90, LOW_ACID)]),
            weighted("meat-strips-cubes", "raw", "pint", &[(75, 10, Some(15))]),
            weighted("meat-strips-cubes", "hot", "quart", &[(90, 10, Some(15))]),
        ],
        headspace: &[("meat-strips-cubes", "raw", "quart", 1.0)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 5, Chile con carne, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("chile-con-carne", "hot", "pint", &[(75, LOW_ACID)]),
            weighted("chile-con-carne", "hot", "pint", &[(75, 10, Some(15))]),
        ],
        headspace: &[("chile-con-carne", "hot", "pint", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600574, Fish (blue, mackerel, salmon, steelhead, trout)",
        seen: SEEN,
        tables: &[
            dial("fish-pints", "raw", "pint", &[(100, LOW_ACID)]),
            weighted("fish-pints", "raw", "pint", &[(100, 10, Some(15))]),
        ],
        headspace: &[("fish-pints", "raw", "pint", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600851, Clams, whole or minced",
        seen: SEEN,
        tables: &[
            dial("clams", "hot", "half-pint", &[(60, LOW_ACID)]),
            dial("clams", "hot", "pint", &[(70, LOW_ACID)]),
            weighted("clams", "hot", "half-pint", &[(60, 10, Some(15))]),
            weighted("clams", "hot", "pint", &[(70, 10, Some(15))]),
        ],
        headspace: &[("clams", "hot", "half-pint", 1.0)],
    },
    Sheet {
        issuer: MICHIGAN,
        title: PFS,
        place: "file 01600852, King and Dungeness crab meat",
        seen: SEEN,
        tables: &[
            dial("crab", "hot", "half-pint", &[(70, LOW_ACID)]),
            dial("crab", "hot", "pint", &[(80, LOW_ACID)]),
            weighted("crab", "hot", "half-pint", &[(70, 10, Some(15))]),
            weighted("crab", "hot", "pint", &[(80, 10, Some(15))]),
        ],
        headspace: &[("crab", "hot", "pint", 1.0)],
    },
    Sheet {
        issuer: USDA,
        title: GUIDE_1994,
        place: "guide 5, Oysters, tables 1 and 2",
        seen: SEEN,
        tables: &[
            dial("oysters", "hot", "half-pint", &[(75, LOW_ACID)]),
            dial("oysters", "hot", "pint", &[(75, LOW_ACID)]),
            weighted("oysters", "hot", "half-pint", &[(75, 10, Some(15))]),
            weighted("oysters", "hot", "pint", &[(75, 10, Some(15))]),
        ],
        headspace: &[("oysters", "hot", "pint", 1.0)],
    },
];
