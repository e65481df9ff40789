//! `stillroom day FILE --why WHAT`: where a figure comes from.

use anyhow::Result;
use kitchen::answer::Why;

use crate::ending::wrong_question;
use crate::leaf::Leaf;

/// The explanations that go by this name: the one spelled so, else every one that holds all its words.
pub(super) fn explain(known: &[Why], what: &str) -> Result<String> {
    let found = find_explanations(known, what);
    if found.is_empty() {
        let names: Vec<&str> = known.iter().map(|why| why.about.as_str()).collect();
        return Err(wrong_question(match names.as_slice() {
            [] => format!("there is nothing to explain about {what:?}; hint: this day has no plan"),
            names => format!("nothing in this day is called {what:?}; hint: ask about {}", names.join(", ")),
        }));
    }
    let mut leaf = Leaf::default();
    for why in found {
        leaf.section(&why.about);
        for line in &why.lines {
            leaf.line("", line);
        }
    }
    Ok(leaf.finish())
}

fn find_explanations<'a>(known: &'a [Why], what: &str) -> Vec<&'a Why> {
    let what = what.trim().to_lowercase();
    let spelled: Vec<&Why> = known.iter().filter(|why| why.about.to_lowercase() == what).collect();
    if !spelled.is_empty() || what.is_empty() {
        return spelled;
    }
    let holds = |why: &&Why| what.split_whitespace().all(|word| why.about.to_lowercase().contains(word));
    known.iter().filter(holds).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn known() -> Vec<Why> {
        let why = |about: &str| Why { about: about.to_owned(), lines: vec![format!("about {about}")] };
        vec![why("finish"), why("tomatoes"), why("crushed tomatoes"), why("peaches")]
    }

    fn check(what: &str, found: &[&str]) {
        let known = known();
        let names: Vec<&str> = find_explanations(&known, what).iter().map(|why| why.about.as_str()).collect();
        assert_eq!(names, found);
    }

    #[test]
    fn a_name_spelled_in_full_comes_before_one_that_holds_it() {
        check("Tomatoes", &["tomatoes"]);
        check("tomatoes crushed", &["crushed tomatoes"]);
        check("e", &["tomatoes", "crushed tomatoes", "peaches"]);
        check("", &[]);
    }

    #[test]
    fn an_unknown_name_lists_what_may_be_asked() {
        let said = explain(&known(), "beans").unwrap_err().to_string();
        assert_eq!(
            said,
            "nothing in this day is called \"beans\"; hint: ask about finish, tomatoes, crushed tomatoes, peaches"
        );
    }
}
