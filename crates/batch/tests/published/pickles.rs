//! Pickles, relishes and ferments: most have three bands, which no rule about four would give.

use crate::table::{Lines, Printed, agree};

pub const ALL: &[Printed] = &[
    // Seen: University of Missouri Extension, Quick fresh-pack dill pickles, after the national center, 2020.
    Printed { food: "dill-pickles-fresh-pack", pack: "raw", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    Printed {
        food: "dill-pickles-fresh-pack",
        pack: "raw",
        jar: "quart",
        lines: Lines::Water(&[15, 20, 25]),
    },
    // Seen: USDA, AIB 539, 1994, Pickled corn relish, table 1; Pickle relish, table 1.
    Printed { food: "corn-relish", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "corn-relish", pack: "hot", jar: "half-pint", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "pickle-relish", pack: "hot", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    // Seen: Michigan State University Extension, Preserving Food Safely, file 01600866, Reduced-sodium sliced
    // dill pickles, 1997; its top band reads 6,001 to 8,000 ft, the federal one is open.
    Printed {
        food: "dill-slices-reduced-sodium",
        pack: "raw",
        jar: "pint",
        lines: Lines::Water(&[15, 20, 25]),
    },
    // From memory of USDA, Complete Guide to Home Canning, 2015, Guide 6 pp. 6-7 to 6-9.
    Printed { food: "dill-pickles-fermented", pack: "raw", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    Printed { food: "dill-pickles-fermented", pack: "raw", jar: "quart", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "sauerkraut", pack: "hot", jar: "pint", lines: Lines::Water(&[10, 15, 15, 20]) },
    Printed { food: "sauerkraut", pack: "hot", jar: "quart", lines: Lines::Water(&[15, 20, 20, 25]) },
    Printed { food: "sauerkraut", pack: "raw", jar: "pint", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "sauerkraut", pack: "raw", jar: "quart", lines: Lines::Water(&[25, 30, 35, 40]) },
    Printed {
        food: "bread-and-butter-pickles",
        pack: "hot",
        jar: "quart",
        lines: Lines::Water(&[10, 15, 20]),
    },
    // From memory of the same, pp. 6-12 to 6-29.
    Printed { food: "sweet-pickles-quick", pack: "hot", jar: "quart", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "sweet-pickles-quick", pack: "raw", jar: "quart", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "asparagus-pickled", pack: "raw", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    Printed { food: "dilly-beans", pack: "raw", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "beets-pickled", pack: "hot", jar: "pint", lines: Lines::Water(&[30, 35, 40, 45]) },
    Printed { food: "peppers-bell-pickled", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "peppers-hot-pickled", pack: "raw", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    Printed { food: "jalapeno-rings-pickled", pack: "hot", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    Printed { food: "okra-pickled", pack: "hot", jar: "pint", lines: Lines::Water(&[10, 15, 20]) },
    Printed { food: "pepper-onion-relish", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "piccalilli", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed {
        food: "mixed-vegetables-pickled",
        pack: "hot",
        jar: "quart",
        lines: Lines::Water(&[10, 15, 20]),
    },
];

#[test]
fn pickles_are_served_as_printed() {
    agree(ALL);
}
