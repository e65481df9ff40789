//! Tomatoes, tomato sauces and salsas.

use crate::table::{Lines, Printed, agree};

pub const ALL: &[Printed] = &[
    // Seen: Michigan State University Extension, Preserving Food Safely, file 01600828, Tomatoes whole or halved
    // in tomato juice, 1997. One cell "pints or quarts" with two or three lines: alternatives.
    Printed {
        food: "tomatoes-whole-juice",
        pack: "hot",
        jar: "pint",
        lines: Lines::Water(&[85, 90, 95, 100]),
    },
    Printed {
        food: "tomatoes-whole-juice",
        pack: "raw",
        jar: "quart",
        lines: Lines::Water(&[85, 90, 95, 100]),
    },
    Printed {
        food: "tomatoes-whole-juice",
        pack: "raw",
        jar: "pint",
        lines: Lines::Dial(&[(40, [6, 7, 8, 9]), (25, [11, 12, 13, 14])]),
    },
    Printed {
        food: "tomatoes-whole-juice",
        pack: "hot",
        jar: "quart",
        lines: Lines::Weighted(&[(40, 5, Some(10)), (25, 10, Some(15)), (15, 15, None)]),
    },
    // Seen as a reprint of USDA, Complete Guide to Home Canning, 2015, Guide 3 p. 3-9, on a third-party page,
    // which sets the second dial line beside the word Quarts; the cell is one, "pints or quarts".
    Printed {
        food: "tomatoes-whole-water",
        pack: "hot",
        jar: "pint",
        lines: Lines::Water(&[40, 45, 50, 55]),
    },
    Printed {
        food: "tomatoes-whole-water",
        pack: "raw",
        jar: "quart",
        lines: Lines::Water(&[45, 50, 55, 60]),
    },
    Printed {
        food: "tomatoes-whole-water",
        pack: "raw",
        jar: "quart",
        lines: Lines::Dial(&[(15, [6, 7, 8, 9]), (10, [11, 12, 13, 14])]),
    },
    // From memory of USDA, Complete Guide to Home Canning, 2015, Guide 3 pp. 3-5 to 3-12.
    Printed { food: "tomatoes-crushed", pack: "hot", jar: "pint", lines: Lines::Water(&[35, 40, 45, 50]) },
    Printed { food: "tomatoes-crushed", pack: "hot", jar: "quart", lines: Lines::Water(&[45, 50, 55, 60]) },
    Printed {
        food: "tomatoes-crushed",
        pack: "hot",
        jar: "quart",
        lines: Lines::Dial(&[(20, [6, 7, 8, 9]), (15, [11, 12, 13, 14])]),
    },
    Printed { food: "tomato-juice", pack: "hot", jar: "pint", lines: Lines::Water(&[35, 40, 45, 50]) },
    Printed { food: "tomato-juice", pack: "hot", jar: "quart", lines: Lines::Water(&[40, 45, 50, 55]) },
    Printed {
        food: "tomato-juice",
        pack: "hot",
        jar: "quart",
        lines: Lines::Dial(&[(20, [6, 7, 8, 9]), (15, [11, 12, 13, 14])]),
    },
    Printed { food: "tomato-sauce", pack: "hot", jar: "pint", lines: Lines::Water(&[35, 40, 45, 50]) },
    Printed { food: "tomato-sauce", pack: "hot", jar: "quart", lines: Lines::Water(&[40, 45, 50, 55]) },
    Printed {
        food: "tomato-sauce",
        pack: "hot",
        jar: "pint",
        lines: Lines::Weighted(&[(20, 5, Some(10)), (15, 10, Some(15)), (10, 15, None)]),
    },
    Printed {
        food: "tomatoes-whole-no-liquid",
        pack: "raw",
        jar: "quart",
        lines: Lines::Water(&[85, 90, 95, 100]),
    },
    Printed {
        food: "tomatoes-whole-no-liquid",
        pack: "raw",
        jar: "pint",
        lines: Lines::Dial(&[(40, [6, 7, 8, 9]), (25, [11, 12, 13, 14])]),
    },
    // From memory of the same, pp. 3-13 to 3-18 and 3-21 to 3-26.
    Printed {
        food: "spaghetti-sauce-no-meat",
        pack: "hot",
        jar: "quart",
        lines: Lines::Dial(&[(25, [11, 12, 13, 14])]),
    },
    Printed {
        food: "spaghetti-sauce-meat",
        pack: "hot",
        jar: "pint",
        lines: Lines::Weighted(&[(60, 10, Some(15))]),
    },
    Printed { food: "tomato-ketchup", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "salsa-chile", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "salsa-tomatillo-green", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 25]) },
];

#[test]
fn tomatoes_are_served_as_printed() {
    agree(ALL);
}
