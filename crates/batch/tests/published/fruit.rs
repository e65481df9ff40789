//! Fruit, fruit juice and pie fillings.

use crate::table::{Lines, Printed, agree};

pub const ALL: &[Printed] = &[
    // Seen: Michigan State University Extension, Preserving Food Safely, file 01600353, Applesauce, 1997.
    Printed { food: "applesauce", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 20, 25]) },
    Printed { food: "applesauce", pack: "hot", jar: "quart", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "applesauce", pack: "hot", jar: "pint", lines: Lines::Dial(&[(8, [6, 7, 8, 9])]) },
    Printed { food: "applesauce", pack: "hot", jar: "quart", lines: Lines::Dial(&[(10, [6, 7, 8, 9])]) },
    Printed { food: "applesauce", pack: "hot", jar: "pint", lines: Lines::Weighted(&[(8, 5, Some(10))]) },
    Printed { food: "applesauce", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(10, 5, Some(10))]) },
    // Seen: University of Missouri Extension, Canned apples (sliced), after So Easy to Preserve, 2020.
    Printed { food: "apples-sliced", pack: "hot", jar: "pint", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "apples-sliced", pack: "hot", jar: "quart", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "apples-sliced", pack: "hot", jar: "pint", lines: Lines::Dial(&[(8, [6, 7, 8, 9])]) },
    Printed { food: "apples-sliced", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(8, 5, Some(10))]) },
    // Seen: USDA, Complete Guide to Home Canning, AIB 539, 1994, Selecting the correct processing time, tables
    // 1 to 3 (peaches are its example).
    Printed { food: "peach-halves", pack: "hot", jar: "pint", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "peach-halves", pack: "hot", jar: "quart", lines: Lines::Water(&[25, 30, 35, 40]) },
    Printed { food: "peach-halves", pack: "raw", jar: "pint", lines: Lines::Water(&[25, 30, 35, 40]) },
    Printed { food: "peach-halves", pack: "raw", jar: "quart", lines: Lines::Water(&[30, 35, 40, 45]) },
    Printed { food: "peach-halves", pack: "raw", jar: "quart", lines: Lines::Dial(&[(10, [6, 7, 8, 9])]) },
    Printed { food: "peach-halves", pack: "hot", jar: "pint", lines: Lines::Weighted(&[(10, 5, Some(10))]) },
    // Seen: USDA, AIB 539, 1994, Cherries, whole, table 1.
    Printed { food: "cherries-whole", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 20, 25]) },
    Printed { food: "cherries-whole", pack: "hot", jar: "quart", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "cherries-whole", pack: "raw", jar: "quart", lines: Lines::Water(&[25, 30, 35, 40]) },
    // Seen: Michigan State University Extension, Preserving Food Safely, file 01600323, Grape juice, 1997.
    Printed { food: "grape-juice", pack: "hot", jar: "pint", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "grape-juice", pack: "hot", jar: "quart", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "grape-juice", pack: "hot", jar: "half-gallon", lines: Lines::Water(&[10, 15, 20]) },
    // Seen: USDA, AIB 539, 1994, Apple juice, table 1.
    Printed { food: "apple-juice", pack: "hot", jar: "quart", lines: Lines::Water(&[5, 10, 15]) },
    Printed { food: "apple-juice", pack: "hot", jar: "half-gallon", lines: Lines::Water(&[10, 15, 20]) },
    // From memory of USDA, Complete Guide to Home Canning, 2015, Guide 2 pp. 2-10 to 2-22.
    Printed { food: "berries-whole", pack: "hot", jar: "quart", lines: Lines::Water(&[15, 20, 20, 25]) },
    Printed { food: "berries-whole", pack: "raw", jar: "pint", lines: Lines::Water(&[15, 20, 20, 25]) },
    Printed { food: "berries-whole", pack: "raw", jar: "quart", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "figs", pack: "hot", jar: "pint", lines: Lines::Water(&[45, 50, 55, 60]) },
    Printed { food: "figs", pack: "hot", jar: "quart", lines: Lines::Water(&[50, 55, 60, 65]) },
    Printed { food: "pear-halves", pack: "hot", jar: "pint", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "pear-halves", pack: "hot", jar: "quart", lines: Lines::Water(&[25, 30, 35, 40]) },
    Printed { food: "plums", pack: "raw", jar: "pint", lines: Lines::Water(&[20, 25, 30, 35]) },
    Printed { food: "plums", pack: "hot", jar: "quart", lines: Lines::Water(&[25, 30, 35, 40]) },
    Printed { food: "pineapple", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 20, 25]) },
    Printed { food: "pineapple", pack: "hot", jar: "quart", lines: Lines::Water(&[20, 25, 30, 35]) },
    // Recalled with four bands (15, 20, 20, 25); the table prints three, which say the same.
    Printed { food: "rhubarb-stewed", pack: "hot", jar: "quart", lines: Lines::Water(&[15, 20, 25]) },
    Printed { food: "fruit-puree", pack: "hot", jar: "pint", lines: Lines::Water(&[15, 20, 25]) },
    // From memory of the same, pp. 2-26 to 2-30.
    Printed { food: "pie-filling-apple", pack: "hot", jar: "quart", lines: Lines::Water(&[25, 30, 35, 40]) },
    Printed { food: "pie-filling-peach", pack: "hot", jar: "quart", lines: Lines::Water(&[30, 35, 40, 45]) },
    Printed { food: "pie-filling-cherry", pack: "hot", jar: "pint", lines: Lines::Water(&[30, 35, 40, 45]) },
];

#[test]
fn fruit_is_served_as_printed() {
    agree(ALL);
}
