//! Lots, baskets and workings laid out at 80 columns.

use kitchen::keep::{BasketLine, LotLine, LotSheet, WorkingLine, say_containers};

use crate::leaf::Leaf;
use kitchen::wording::as_sentence;

/// A lot: its number in the margin, its name, where it stands, what to know.
pub(super) fn lay_lot(leaf: &mut Leaf, lot: &LotLine) {
    leaf.named(&lot.label, &lot.name);
    for standing in &lot.stands {
        let place = match standing.shelf.as_deref() {
            Some(shelf) => format!("on {shelf}"),
            None => "not on a shelf yet".to_owned(),
        };
        let unsealed = match standing.unsealed {
            0 => String::new(),
            many => {
                format!("; {many} of them not sealed: count those as not processed and keep them cold")
            }
        };
        leaf.line("", &format!("{} {place}{unsealed}", say_containers(standing.count, &standing.size)));
    }
    if lot.stands.is_empty() {
        leaf.line("", "none left");
    }
    leaf.under(&say_age(lot));
    for note in &lot.notes {
        leaf.under(&as_sentence(note));
    }
}

/// When it was put up, and how the book knows.
fn say_age(lot: &LotLine) -> String {
    let age = lot
        .oldest
        .as_deref()
        .map_or_else(|| "put up nobody knows when".to_owned(), |date| format!("put up {date}"));
    let by = lot.eat_by.as_deref().map(|date| format!(", best by {date}")).unwrap_or_default();
    format!("{age}{by}; {}", lot.told)
}

/// Lots under a head.
pub(super) fn lay_lots(title: &str, lots: &[LotLine]) -> String {
    let mut leaf = Leaf::head(title, &[]);
    leaf.section("Lots");
    for lot in lots {
        lay_lot(&mut leaf, lot);
    }
    leaf.finish()
}

/// One lot under a head that says what was done.
pub(super) fn lay_one(title: &str, lot: &LotLine) -> String {
    lay_lots(title, std::slice::from_ref(lot))
}

/// Everything about a lot, with its sisters.
pub(super) fn lay_sheet(sheet: &LotSheet, recall: bool) -> String {
    let title = if recall { "Recall sheet" } else { "One lot" };
    let lines = if recall {
        vec![
            "Do not taste. Pull every container below, and tell whoever has one. Keep the bad one apart, closed, until \
             someone who knows has said what it is: ask the county extension office."
                .to_owned(),
        ]
    } else {
        Vec::new()
    };
    let mut leaf = Leaf::head(title, &lines);
    leaf.section("The lot");
    lay_lot(&mut leaf, &sheet.lot);
    lay_list(&mut leaf, "Who has some", &sheet.with_people);
    lay_list(&mut leaf, "Where it came from", &sheet.from);
    if !sheet.happened.is_empty() {
        leaf.section("What happened");
        for line in &sheet.happened {
            let (date, says) = line.split_once("  ").unwrap_or(("", line));
            leaf.line(date, says);
        }
    }
    if !sheet.sisters.is_empty() {
        leaf.section("Its sisters, the nearest first");
        for sister in &sheet.sisters {
            lay_lot(&mut leaf, &sister.lot);
            leaf.under(&format!("shares {}", sister.shares.join("; ")));
            if !sister.with_people.is_empty() {
                leaf.under(&format!("with {}", sister.with_people.join(", ")));
            }
        }
    }
    leaf.finish()
}

fn lay_list(leaf: &mut Leaf, title: &str, lines: &[String]) {
    if !lines.is_empty() {
        leaf.section(title);
        leaf.each(lines);
    }
}

/// Baskets under a head.
pub(super) fn lay_baskets(title: &str, baskets: &[BasketLine]) -> String {
    let mut leaf = Leaf::head(title, &[]);
    leaf.section("Baskets");
    for basket in baskets {
        leaf.named(&basket.came_in, &basket.name);
        let about = if basket.about.is_empty() { String::new() } else { format!("; {}", basket.about) };
        leaf.line("", &format!("left: {}{about}", basket.left));
        leaf.under(&basket.id);
    }
    leaf.finish()
}

/// Workings under a head.
pub(super) fn lay_workings(title: &str, workings: &[WorkingLine]) -> String {
    let mut leaf = Leaf::head(title, &[]);
    leaf.section("Workings");
    for working in workings {
        leaf.named(working.next_look.as_deref().unwrap_or(""), &working.name);
        let place = working.shelf.as_deref().map(|shelf| format!(" on {shelf}")).unwrap_or_default();
        leaf.by_itself("", &format!("{}{place}, begun {}", working.what, working.begun));
        if let Some(look) = &working.last_look {
            leaf.by_itself("", look);
        }
        for note in &working.notes {
            leaf.under(&as_sentence(note));
        }
        leaf.under(&working.id);
    }
    leaf.finish()
}
