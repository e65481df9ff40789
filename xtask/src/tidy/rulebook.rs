//! The generated page of rules says what the tables say.

use super::Fault;
use super::tree::Tree;
use crate::rulebook::{PAGE, write_page};

pub(super) fn find_faults(tree: &Tree) -> Vec<Fault> {
    let has_rules = tree.find_text("data/formulas/change_rules.csv").is_some();
    if !has_rules {
        return Vec::new();
    }
    let read = |file: &str| tree.find_text(file).map(str::to_owned);
    match write_page(&read) {
        Err(error) => vec![Fault::of(PAGE, format!("cannot be generated: {error:#}"))],
        Ok(page) if tree.find_text(PAGE) == Some(&page) => Vec::new(),
        Ok(_) => vec![Fault::of(PAGE, "is not what the tables say; run `cargo xtask rulebook`")],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stale_page_is_a_fault() {
        const RULES: &str = "rule_id,applies_to,change,ingredient_class,what,limit,unit,verdict,because,instead,\
            source_id,locator,basis\nr1,any,add,oil,all,,,do-not,fat,none,A,p. 1,read\n";
        const SOURCES: &str = "[\"A\"]\ntitle = \"T, 2015\"\nrank = \"full\"\nwhy = \"w\"\n";
        let files = |page| {
            Tree::of(&[
                ("data/formulas/change_rules.csv", RULES),
                ("data/sources.toml", SOURCES),
                (PAGE, page),
            ])
        };
        assert_eq!(find_faults(&files("old")).len(), 1);
        let read = |file: &str| files("").find_text(file).map(str::to_owned);
        let fresh = write_page(&read).unwrap();
        assert_eq!(find_faults(&files(&fresh)), []);
    }
}
