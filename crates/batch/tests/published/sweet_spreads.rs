//! Jams, jellies and butters.

use crate::table::{Lines, Printed, agree};

pub const ALL: &[Printed] = &[
    // From memory of USDA, Complete Guide to Home Canning, 2015, Guide 7 pp. 7-6 to 7-8, sterilized jars.
    Printed {
        food: "jelly-no-added-pectin",
        pack: "hot",
        jar: "half-pint",
        lines: Lines::Water(&[5, 10, 15]),
    },
    Printed { food: "jam-no-added-pectin", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "jam-added-pectin", pack: "hot", jar: "half-pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "jelly-added-pectin", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    // From memory of the same, Guide 2 p. 2-6.
    Printed { food: "apple-butter", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "apple-butter", pack: "hot", jar: "quart", lines: Lines::Water(&[10, 15, 20]) },
];

#[test]
fn sweet_spreads_are_served_as_printed() {
    agree(ALL);
}
