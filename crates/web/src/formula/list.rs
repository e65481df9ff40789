//! Every formula on file, by how its food is kept.

use std::collections::BTreeMap;

use askama::Template;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::Response;
use kitchen::ask::list_formulas;
use kitchen::wording::capitalize;
use serde::Deserialize;

use crate::leaf::{self, Place, filters};
use crate::pages::Kitchen;

/// What is looked for, as it was typed.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(crate) struct Looked {
    find: String,
}

#[derive(Template)]
#[template(path = "formula/list.html")]
struct ListPage {
    place: Place,
    find: String,
    groups: Vec<Group>,
}

impl ListPage {
    fn count(&self) -> usize {
        self.groups.iter().map(|group| group.lines.len()).sum()
    }
}

struct Group {
    name: String,
    lines: Vec<Line>,
}

struct Line {
    id: String,
    name: String,
}

/// All of them, or those that hold every word that was typed.
pub(crate) async fn show(State(kitchen): State<Kitchen>, Query(looked): Query<Looked>) -> Response {
    let find = looked.find.trim().to_lowercase();
    let words: Vec<&str> = find.split_whitespace().collect();
    let mut groups: BTreeMap<String, Vec<Line>> = BTreeMap::new();
    for listed in list_formulas(&kitchen.almanac) {
        let name = listed.name.to_lowercase();
        if words.iter().all(|word| name.contains(word)) {
            let line = Line { id: listed.id, name: capitalize(&listed.name) };
            groups.entry(listed.about).or_default().push(line);
        }
    }
    let groups = groups.into_iter().map(|(name, mut lines)| {
        lines.sort_by(|one, other| one.name.cmp(&other.name));
        Group { name: capitalize(&name), lines }
    });
    let page = ListPage { place: Place::Formulas, find: looked.find, groups: groups.collect() };
    leaf::show(StatusCode::OK, &page)
}
