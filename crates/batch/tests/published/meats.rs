//! Meat, poultry and fish.

use crate::table::{Lines, Printed, agree};

const DIAL: [u32; 4] = [11, 12, 13, 14];

pub const ALL: &[Printed] = &[
    // Seen: Michigan State University Extension, Preserving Food Safely, file 01600482, Chicken or rabbit, 1997.
    Printed { food: "poultry-rabbit-boneless", pack: "raw", jar: "pint", lines: Lines::Dial(&[(75, DIAL)]) },
    Printed { food: "poultry-rabbit-boneless", pack: "hot", jar: "quart", lines: Lines::Dial(&[(90, DIAL)]) },
    Printed {
        food: "poultry-rabbit-bone-in",
        pack: "hot",
        jar: "pint",
        lines: Lines::Weighted(&[(65, 10, Some(15))]),
    },
    Printed {
        food: "poultry-rabbit-bone-in",
        pack: "raw",
        jar: "quart",
        lines: Lines::Weighted(&[(75, 10, Some(15))]),
    },
    // Seen: the same data base, file 01600849, Strips, cubes or chunks of meat, 1997.
    Printed { food: "meat-strips-cubes", pack: "raw", jar: "pint", lines: Lines::Dial(&[(75, DIAL)]) },
    Printed {
        food: "meat-strips-cubes",
        pack: "hot",
        jar: "quart",
        lines: Lines::Weighted(&[(90, 10, Some(15))]),
    },
    // From memory of USDA, Complete Guide to Home Canning, 2015, Guide 5 pp. 5-7 to 5-14.
    Printed { food: "meat-stock", pack: "hot", jar: "pint", lines: Lines::Dial(&[(20, DIAL)]) },
    Printed { food: "meat-stock", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(25, 10, Some(15))]) },
    Printed { food: "chile-con-carne", pack: "hot", jar: "pint", lines: Lines::Dial(&[(75, DIAL)]) },
    Printed { food: "fish-pints", pack: "raw", jar: "pint", lines: Lines::Dial(&[(100, DIAL)]) },
    Printed { food: "tuna", pack: "raw", jar: "pint", lines: Lines::Weighted(&[(100, 10, Some(15))]) },
    Printed { food: "clams", pack: "hot", jar: "half-pint", lines: Lines::Dial(&[(60, DIAL)]) },
    Printed { food: "clams", pack: "hot", jar: "pint", lines: Lines::Dial(&[(70, DIAL)]) },
];

#[test]
fn meats_are_served_as_printed() {
    agree(ALL);
}
