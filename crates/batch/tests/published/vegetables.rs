//! Low-acid vegetables and soups: pressure only, the minutes the same at every altitude.

use crate::table::{Lines, Printed, agree};

/// The four dial steps of low-acid food. Seen: Pacific Northwest Extension PNW 421, Using and Caring for Your
/// Pressure Canner, altitude list.
const DIAL: [u32; 4] = [11, 12, 13, 14];

pub const ALL: &[Printed] = &[
    // Seen: University of Missouri Extension, Canned snap beans, after So Easy to Preserve, 2020 (dial), and
    // USDA, AIB 539, 1994, Beans, snap and Italian (both gauges).
    Printed { food: "beans-snap", pack: "hot", jar: "pint", lines: Lines::Dial(&[(20, DIAL)]) },
    Printed { food: "beans-snap", pack: "raw", jar: "quart", lines: Lines::Dial(&[(25, DIAL)]) },
    Printed { food: "beans-snap", pack: "raw", jar: "pint", lines: Lines::Weighted(&[(20, 10, Some(15))]) },
    Printed { food: "beans-snap", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(25, 10, Some(15))]) },
    // Seen: University of Missouri Extension, Canned beets, after So Easy to Preserve, 2020.
    Printed { food: "beets", pack: "hot", jar: "pint", lines: Lines::Dial(&[(30, DIAL)]) },
    Printed { food: "beets", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(35, 10, Some(15))]) },
    // Seen: Michigan State University Extension, Preserving Food Safely, file 01600886, Soups, 1997.
    Printed { food: "soup-mixed", pack: "hot", jar: "pint", lines: Lines::Dial(&[(60, DIAL)]) },
    Printed { food: "soup-mixed", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(75, 10, Some(15))]) },
    Printed { food: "soup-with-seafood", pack: "hot", jar: "pint", lines: Lines::Dial(&[(100, DIAL)]) },
    // From memory of USDA, Complete Guide to Home Canning, 2015, Guide 4.
    Printed { food: "asparagus", pack: "raw", jar: "pint", lines: Lines::Dial(&[(30, DIAL)]) },
    Printed { food: "asparagus", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(40, 10, Some(15))]) },
    Printed { food: "beans-lima-fresh", pack: "hot", jar: "quart", lines: Lines::Dial(&[(50, DIAL)]) },
    Printed { food: "carrots", pack: "raw", jar: "pint", lines: Lines::Dial(&[(25, DIAL)]) },
    Printed { food: "carrots", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(30, 10, Some(15))]) },
    Printed { food: "corn-whole-kernel", pack: "hot", jar: "pint", lines: Lines::Dial(&[(55, DIAL)]) },
    Printed {
        food: "corn-whole-kernel",
        pack: "raw",
        jar: "quart",
        lines: Lines::Weighted(&[(85, 10, Some(15))]),
    },
    Printed { food: "corn-cream-style", pack: "hot", jar: "pint", lines: Lines::Dial(&[(85, DIAL)]) },
    Printed { food: "mushrooms", pack: "hot", jar: "half-pint", lines: Lines::Dial(&[(45, DIAL)]) },
    Printed { food: "peas-green", pack: "raw", jar: "quart", lines: Lines::Dial(&[(40, DIAL)]) },
    Printed { food: "peppers", pack: "hot", jar: "pint", lines: Lines::Weighted(&[(35, 10, Some(15))]) },
    Printed { food: "potatoes-white", pack: "hot", jar: "pint", lines: Lines::Dial(&[(35, DIAL)]) },
    Printed { food: "potatoes-white", pack: "hot", jar: "quart", lines: Lines::Dial(&[(40, DIAL)]) },
    Printed {
        food: "potatoes-sweet",
        pack: "hot",
        jar: "quart",
        lines: Lines::Weighted(&[(90, 10, Some(15))]),
    },
    Printed {
        food: "pumpkin-winter-squash-cubed",
        pack: "hot",
        jar: "pint",
        lines: Lines::Dial(&[(55, DIAL)]),
    },
    Printed {
        food: "pumpkin-winter-squash-cubed",
        pack: "hot",
        jar: "quart",
        lines: Lines::Dial(&[(90, DIAL)]),
    },
    Printed { food: "greens", pack: "hot", jar: "quart", lines: Lines::Weighted(&[(90, 10, Some(15))]) },
];

#[test]
fn vegetables_are_served_as_printed() {
    agree(ALL);
}
