//! `docs/methods/clearance.md`: every rule the clearance goes by, as it stands in `data/`, with its source and year.
//!
//! The page is generated and never edited; `tidy` fails when it is not what the tables say. A table that is not in
//! the tree yet is passed over, so that a subject can be listed here before its rows come.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use anyhow::{Context, Result};
use toml::{Table, Value};

use crate::workspace::Workspace;

/// Where the page stands.
pub(crate) const PAGE: &str = "docs/methods/clearance.md";

/// The list of sources.
const SOURCES: &str = "data/sources.toml";

/// One table of rules: its file, its heading, and the columns shown, those of one cell joined.
struct RuleTable {
    file: &'static str,
    title: &'static str,
    cells: &'static [(&'static str, &'static [&'static str])],
}

/// Every table of rules, in the order of a kitchen day.
const TABLES: &[RuleTable] = &[
    RuleTable {
        file: "data/processes/not_for_canning.csv",
        title: "Foods and practices that are refused",
        cells: &[
            ("rule", &["item_id"]),
            ("of", &["item"]),
            ("why", &["reason"]),
            ("instead", &["safe_alternative"]),
        ],
    },
    RuleTable {
        file: "data/formulas/change_rules.csv",
        title: "May I change this?",
        cells: &[
            ("rule", &["rule_id"]),
            ("for", &["applies_to"]),
            ("change", &["change", "ingredient_class", "what"]),
            ("how far", &["limit", "unit"]),
            ("word", &["verdict"]),
            ("why", &["because"]),
            ("instead", &["instead"]),
        ],
    },
    RuleTable {
        file: "data/formulas/food_families.csv",
        title: "Which rules a food without a formula goes by",
        cells: &[("food", &["product_id"]), ("family", &["class"])],
    },
    RuleTable {
        file: "data/processes/canner_rules.csv",
        title: "Canners, jars, gauges",
        cells: &[
            ("rule", &["rule_id"]),
            ("for", &["topic", "applies_to"]),
            ("what", &["rule"]),
            ("figure", &["value_min", "value_max", "unit"]),
        ],
    },
    RuleTable {
        file: "data/processes/jar_steps.csv",
        title: "Which jar takes the minutes of a larger one",
        cells: &[("jar", &["jar"]), ("as", &["as_jar"]), ("foods", &["products"]), ("by rule", &["rule_id"])],
    },
    RuleTable {
        file: "data/processes/pickle_rules.csv",
        title: "Pickling and preserving, in short words",
        cells: &[("rule", &["rule_id"]), ("of", &["topic"]), ("what", &["rule"])],
    },
    RuleTable {
        file: "data/loads/load_rules.csv",
        title: "Loads in trouble",
        cells: &[
            ("rule", &["rule_id"]),
            ("trouble", &["trouble", "canner", "noticed"]),
            ("ruling", &["ruling"]),
            ("what", &["rule"]),
        ],
    },
    RuleTable {
        file: "data/loads/elsewhere.csv",
        title: "What other countries print",
        cells: &[("fact", &["fact_id"]), ("where", &["place", "about"]), ("what", &["says"])],
    },
    RuleTable {
        file: "data/keeping/signs.csv",
        title: "Signs on a jar",
        cells: &[("rule", &["rule_id"]), ("sign", &["topic", "sign", "weight"]), ("what", &["say"])],
    },
    RuleTable {
        file: "data/keeping/outage.csv",
        title: "When the power is out",
        cells: &[("rule", &["rule_id"]), ("food", &["place", "state", "item"]), ("what", &["act", "say"])],
    },
    RuleTable {
        file: "data/keeping/cooling.csv",
        title: "Cooling in time",
        cells: &[("rule", &["rule_id"]), ("of", &["topic", "item"]), ("what", &["say"])],
    },
    RuleTable {
        file: "data/keeping/oil.csv",
        title: "In oil",
        cells: &[("rule", &["rule_id"]), ("food", &["food", "topic"]), ("what", &["say"])],
    },
    RuleTable {
        file: "data/keeping/ferments.csv",
        title: "Ferments",
        cells: &[
            ("rule", &["rule_id"]),
            ("of", &["product", "topic"]),
            ("from, to", &["from", "to", "unit"]),
            ("word", &["verdict"]),
            ("what", &["say"]),
        ],
    },
    RuleTable {
        file: "data/keeping/dried.csv",
        title: "Drying",
        cells: &[("rule", &["rule_id"]), ("of", &["topic", "food"]), ("what", &["say"])],
    },
    RuleTable {
        file: "data/keeping/best_by.csv",
        title: "How long it keeps its quality",
        cells: &[("rule", &["rule_id"]), ("of", &["kind", "food"]), ("what", &["say"])],
    },
];

/// Writes the page into the tree.
///
/// # Errors
///
/// If a table cannot be read or the page not be written.
pub(crate) fn run() -> Result<()> {
    let workspace = Workspace::read()?;
    let read = |file: &str| std::fs::read_to_string(workspace.root.join(file)).ok();
    let page = write_page(&read)?;
    let path = workspace.root.join(PAGE);
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).with_context(|| format!("{} cannot be made", folder.display()))?;
    }
    std::fs::write(&path, page).with_context(|| format!("{PAGE} cannot be written"))?;
    println!("written to {PAGE}");
    Ok(())
}

/// The page as the tables say it; `read` gives the text of a file that is in the tree.
///
/// # Errors
///
/// If a table does not have the columns shown, or the list of sources cannot be read.
pub(crate) fn write_page(read: &dyn Fn(&str) -> Option<String>) -> Result<String> {
    let sources: Table = read(SOURCES).unwrap_or_default().parse().context(SOURCES)?;
    let mut page = String::from(HEAD);
    let mut recalled = Vec::new();
    let mut gaps = Vec::new();
    for table in TABLES {
        let Some(text) = read(table.file) else { continue };
        let rows = read_rows(&text).with_context(|| table.file.to_owned())?;
        write_table(&mut page, table, &rows, &sources)?;
        for row in &rows {
            if row.get("basis").is_some_and(|basis| basis == "memory") {
                recalled.push(format!("- `{}` ({})", first_cell(table, row), table.title));
            }
            if row.get("topic").is_some_and(|topic| topic == "gaps") {
                gaps.push(format!("- `{}`: {}", first_cell(table, row), cell(row, "rule")));
            }
        }
        gaps.extend(find_open_troubles(&rows));
    }
    let none = |list: Vec<String>| if list.is_empty() { "None.".to_owned() } else { list.join("\n") };
    let _ = write!(page, "\n## Gaps\n\n{GAPS}\n\n{}\n", none(gaps));
    let _ =
        write!(page, "\nRecalled and never seen in print, so they permit nothing:\n\n{}\n", none(recalled));
    Ok(page)
}

/// The troubles of a load for which nothing but cautions is on file: no printed rule says what becomes of the jars.
fn find_open_troubles(rows: &[RuleRow]) -> Vec<String> {
    let mut open: BTreeMap<&str, bool> = BTreeMap::new();
    for row in rows {
        if let (Some(trouble), Some(ruling)) = (row.get("trouble"), row.get("ruling")) {
            *open.entry(trouble).or_insert(true) &= ruling == "caution";
        }
    }
    let open = open.into_iter().filter(|(_, is_open)| *is_open);
    open.map(|(trouble, _)| {
        format!("- a load in trouble, `{trouble}`: nothing printed says what becomes of its jars")
    })
    .collect()
}

const HEAD: &str = "\
# The rules of clearance

This page is written by `cargo xtask rulebook` from the tables in `data/`; a check fails when it is stale. How the rules
are put together is told in [How Stillroom decides](../guide/safety.md). The processes themselves stand in
`data/processes/boiling_water.csv` and `pressure.csv`; `stillroom almanac process` shows them.

The word *tested* stands only on a row of basis `read` from a source of rank `full`, or, for a change, on our own reading
of printed rules, which is then called ours (`derived`). Any row may refuse.
";

const GAPS: &str = "\
What is not printed stays open: the answer is *not tested*, keep it cold or discard it, and ask the extension service.
Looked for and not found:";

type RuleRow = BTreeMap<String, String>;

fn read_rows(text: &str) -> Result<Vec<RuleRow>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let columns = reader.headers()?.clone();
    let mut rows = Vec::new();
    for row in reader.records() {
        let row = row?;
        rows.push(columns.iter().map(str::to_owned).zip(row.iter().map(str::to_owned)).collect());
    }
    Ok(rows)
}

fn write_table(page: &mut String, table: &RuleTable, rows: &[RuleRow], sources: &Table) -> Result<()> {
    let heads: Vec<&str> = table.cells.iter().map(|(head, _)| *head).chain(["source", "basis"]).collect();
    let _ = write!(page, "\n## {}\n\n{} rows of `{}`.\n\n", table.title, rows.len(), table.file);
    let _ = writeln!(page, "| {} |", heads.join(" | "));
    let _ = writeln!(page, "|{}", " --- |".repeat(heads.len()));
    for row in rows {
        let mut shown = Vec::new();
        for (_, columns) in table.cells {
            for column in *columns {
                row.get(*column).with_context(|| format!("{} has no column {column}", table.file))?;
            }
            let parts: Vec<&str> =
                columns.iter().map(|column| cell(row, column)).filter(|part| !part.is_empty()).collect();
            shown.push(in_a_cell(&parts.join(" ")));
        }
        shown.push(in_a_cell(&written_source(row, sources)));
        shown.push(cell(row, "basis").to_owned());
        let _ = writeln!(page, "| {} |", shown.join(" | "));
    }
    Ok(())
}

fn cell<'a>(row: &'a RuleRow, column: &str) -> &'a str {
    row.get(column).map_or("", String::as_str)
}

fn first_cell<'a>(table: &RuleTable, row: &'a RuleRow) -> &'a str {
    table.cells.first().and_then(|(_, columns)| columns.first()).map_or("", |column| cell(row, column))
}

/// A bar would end the cell.
fn in_a_cell(text: &str) -> String {
    text.replace('|', ", ").replace('\n', " ")
}

/// The title, which names the year, and the place in it.
fn written_source(row: &RuleRow, sources: &Table) -> String {
    // The first is the publication, the rest print the same.
    let sources_named = cell(row, "source_id");
    let id = sources_named.split("; ").next().unwrap_or(sources_named);
    let title = sources.get(id).and_then(|entry| entry.get("title")).and_then(Value::as_str).unwrap_or(id);
    format!("{title}: {}", cell(row, "locator"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(rules: &str) -> Result<String> {
        let rules = rules.to_owned();
        write_page(&move |file| match file {
            "data/processes/pickle_rules.csv" => Some(rules.clone()),
            SOURCES => {
                Some("[\"A\"]\ntitle = \"Bulletin, 2015\"\nrank = \"full\"\nwhy = \"seen\"\n".to_owned())
            }
            _ => None,
        })
    }

    #[test]
    fn a_row_is_shown_with_the_title_and_the_place_of_its_source() {
        let page = page("rule_id,topic,rule,source_id,locator,basis\nA1,acid,a|b,A,p. 3,read\n").unwrap();
        assert!(page.contains("| A1 | acid | a, b | Bulletin, 2015: p. 3 | read |"), "{page}");
        assert!(!page.contains("May I change this?"), "a table that is not there is passed over");
    }

    #[test]
    fn a_trouble_with_cautions_alone_is_a_gap() {
        let row = |trouble: &str, ruling: &str| {
            BTreeMap::from([
                ("trouble".to_owned(), trouble.to_owned()),
                ("ruling".to_owned(), ruling.to_owned()),
            ])
        };
        let rows = [row("jar-broke", "caution"), row("wrong-vent", "caution"), row("wrong-vent", "limit")];
        let open = find_open_troubles(&rows);
        assert_eq!(open.len(), 1);
        assert!(open[0].contains("`jar-broke`"), "{open:?}");
    }

    #[test]
    fn gaps_and_recalled_rows_are_listed() {
        let page =
            page("rule_id,topic,rule,source_id,locator,basis\nH1,gaps,no rings,A,none,memory\n").unwrap();
        assert!(page.contains("- `H1`: no rings\n"), "{page}");
        assert!(page.contains("- `H1` (Pickling and preserving, in short words)"), "{page}");
    }

    #[test]
    fn a_table_with_other_columns_is_told() {
        assert!(page("rule_id,rule,source_id,locator,basis\nA1,a,A,p. 3,read\n").is_err());
    }
}
