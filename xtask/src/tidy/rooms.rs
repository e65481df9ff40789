//! Rules for the rooms of the house: who may lean on whom, what each manifest inherits, and the code map of
//! ARCHITECTURE.md, which says the same to a reader.

use std::collections::{BTreeMap, BTreeSet};

use toml::{Table, Value};

use super::Fault;
use super::tree::Tree;
use crate::workspace::Workspace;

/// One member of the workspace.
#[derive(Debug)]
pub(super) struct Room {
    /// The name of its package.
    pub(super) name: &'static str,
    /// The members it leans on, in the order of their names. Whatever is not here is an arrow out of place.
    pub(super) leans_on: &'static [&'static str],
    /// Whether it is pure: no clock, no file, no network, the same bytes on any machine.
    pub(super) is_pure: bool,
}

/// The house. Arrows run downward only; a new one is a decision, and is written here and in the code map.
pub(super) const ROOMS: [Room; 9] = [
    Room { name: "measure", leans_on: &[], is_pure: true },
    Room { name: "almanac", leans_on: &["measure"], is_pure: true },
    Room { name: "batch", leans_on: &["almanac", "measure"], is_pure: true },
    Room { name: "dayplan", leans_on: &[], is_pure: true },
    Room { name: "kitchen", leans_on: &["almanac", "batch", "dayplan", "measure"], is_pure: true },
    Room { name: "paper", leans_on: &[], is_pure: true },
    Room { name: "web", leans_on: &["almanac", "batch", "kitchen", "measure", "paper"], is_pure: false },
    Room {
        name: "stillroom",
        leans_on: &["almanac", "batch", "dayplan", "kitchen", "measure", "paper", "web"],
        is_pure: false,
    },
    Room { name: "xtask", leans_on: &["dayplan"], is_pure: false },
];

impl Room {
    /// Its folder from the root.
    pub(super) fn folder(&self) -> String {
        if self.name == "xtask" { self.name.to_owned() } else { format!("crates/{}", self.name) }
    }
}

/// The page that holds the code map, and the heading above it.
const MAP_PAGE: &str = "ARCHITECTURE.md";
const MAP_HEADING: &str = "## Code map";

/// Every fault of the manifests and of the code map.
pub(super) fn find_faults(tree: &Tree) -> Vec<Fault> {
    let mut faults = find_map_faults(tree.find_text(MAP_PAGE).unwrap_or_default());
    for (path, text) in tree.texts().filter(|(path, _)| path.ends_with("/Cargo.toml")) {
        faults.extend(find_manifest_faults(path, text));
    }
    faults
}

/// Compares the arrows that cargo sees with [`ROOMS`], in both directions.
pub(super) fn find_arrows_out_of_place(workspace: &Workspace) -> Vec<Fault> {
    let members = workspace.members();
    let names: BTreeSet<&str> = members.iter().map(|package| package.name.as_str()).collect();
    let arrows = members
        .iter()
        .map(|package| {
            let inner = package.dependencies.iter().filter(|other| other.path.is_some());
            (package.name.as_str(), inner.map(|other| other.name.as_str()).collect())
        })
        .collect();
    compare_arrows(&names, &arrows)
}

fn compare_arrows(names: &BTreeSet<&str>, arrows: &BTreeMap<&str, BTreeSet<&str>>) -> Vec<Fault> {
    const TABLE: &str = "xtask/src/tidy/rooms.rs";
    let mut faults = Vec::new();
    for name in names.iter().filter(|name| !ROOMS.iter().any(|room| room.name == **name)) {
        faults.push(Fault::of(
            TABLE,
            format!("`{name}` is a member of the workspace and not in the table of rooms"),
        ));
    }
    for room in &ROOMS {
        let Some(found) = arrows.get(room.name) else {
            faults.push(Fault::of(
                TABLE,
                format!("`{}` is in the table of rooms and not in the workspace", room.name),
            ));
            continue;
        };
        let path = format!("{}/Cargo.toml", room.folder());
        let declared: BTreeSet<&str> = room.leans_on.iter().copied().collect();
        for other in found.difference(&declared) {
            faults.push(Fault::of(&path, format!("`{}` may not lean on `{other}`", room.name)));
        }
        for other in declared.difference(found) {
            let text = format!("`{}` no longer leans on `{other}`; take the arrow out of {TABLE}", room.name);
            faults.push(Fault::of(&path, text));
        }
    }
    faults
}

/// The code map is a table whose rows open with the folder and the arrows:
/// ``| `crates/batch` | `almanac`, `measure` | what it is |``.
fn find_map_faults(page: &str) -> Vec<Fault> {
    let rows = read_map(page);
    let mut faults = Vec::new();
    for room in &ROOMS {
        let folder = room.folder();
        match rows.get(folder.as_str()) {
            None => faults.push(Fault::of(MAP_PAGE, format!("the code map does not name `{folder}`"))),
            Some((line, arrows)) if arrows != room.leans_on => {
                let text = format!(
                    "the code map says `{folder}` leans on {arrows:?}; it leans on {:?}",
                    room.leans_on
                );
                faults.push(Fault::at(MAP_PAGE, *line, text));
            }
            Some(_) => {}
        }
    }
    for (folder, (line, _)) in &rows {
        if !ROOMS.iter().any(|room| room.folder() == *folder) {
            faults.push(Fault::at(
                MAP_PAGE,
                *line,
                format!("the code map names `{folder}`, which is not there"),
            ));
        }
    }
    faults
}

/// The rows of the code map: folder, then line and arrows.
fn read_map(page: &str) -> BTreeMap<&str, (usize, Vec<&str>)> {
    page.lines()
        .enumerate()
        .skip_while(|(_, line)| line.trim_end() != MAP_HEADING)
        .skip(1)
        .take_while(|(_, line)| !line.starts_with("## "))
        .filter_map(|(index, line)| {
            let mut cells = line.strip_prefix("| `")?.split('|');
            let folder = cells.next()?.trim().strip_suffix('`')?;
            let arrows = cells.next()?.split('`').skip(1).step_by(2).collect();
            Some((folder, (index + 1, arrows)))
        })
        .collect()
}

/// A manifest inherits the lints and takes every version from the root.
fn find_manifest_faults(path: &str, text: &str) -> Vec<Fault> {
    let manifest: Table = match text.parse() {
        Ok(manifest) => manifest,
        Err(error) => return vec![Fault::of(path, format!("cannot be read: {}", error.message()))],
    };
    let inherits = |value: &Value| value.get("workspace").and_then(Value::as_bool) == Some(true);
    let mut faults = Vec::new();
    if !manifest.get("lints").is_some_and(inherits) {
        faults.push(Fault::of(path, "does not inherit the lints; add `[lints] workspace = true`"));
    }
    for kind in ["dependencies", "dev-dependencies", "build-dependencies"] {
        for (name, value) in manifest.get(kind).and_then(Value::as_table).into_iter().flatten() {
            if !inherits(value) {
                let text = format!(
                    "`{name}` of [{kind}] states a version; versions stand once, in the root manifest"
                );
                faults.push(Fault::of(path, text));
            }
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    fn declared() -> BTreeMap<&'static str, BTreeSet<&'static str>> {
        ROOMS.iter().map(|room| (room.name, room.leans_on.iter().copied().collect())).collect()
    }

    fn compare(arrows: &BTreeMap<&str, BTreeSet<&str>>) -> Vec<String> {
        let names = arrows.keys().copied().collect();
        compare_arrows(&names, arrows).iter().map(ToString::to_string).collect()
    }

    fn map() -> String {
        let mut page = String::from(
            "# Architecture\n\n## Code map\n\n| where | leans on | what |\n| --- | --- | --- |\n",
        );
        for room in &ROOMS {
            let arrows: Vec<String> = room.leans_on.iter().map(|name| format!("`{name}`")).collect();
            page += &format!("| `{}` | {} | a room |\n", room.folder(), arrows.join(", "));
        }
        page + "\n## Invariants\n\n| `crates/elsewhere` | | another table |\n"
    }

    #[test]
    fn arrows_run_downward_only() {
        for (index, room) in ROOMS.iter().enumerate() {
            for other in room.leans_on {
                assert!(ROOMS[..index].iter().any(|lower| lower.name == *other), "{} -> {other}", room.name);
            }
        }
    }

    #[test]
    fn the_declared_arrows_are_no_fault() {
        assert!(compare(&declared()).is_empty());
    }

    #[test]
    fn an_arrow_upward_is_found() {
        let mut arrows = declared();
        arrows.get_mut("measure").unwrap().insert("almanac");
        assert_eq!(compare(&arrows), ["crates/measure/Cargo.toml: `measure` may not lean on `almanac`"]);
    }

    #[test]
    fn an_arrow_that_went_away_leaves_the_table() {
        let mut arrows = declared();
        arrows.get_mut("batch").unwrap().remove("measure");
        assert!(compare(&arrows)[0].contains("no longer leans on `measure`"));
    }

    #[test]
    fn a_new_member_needs_a_room() {
        let mut arrows = declared();
        arrows.insert("cellar", BTreeSet::new());
        assert!(compare(&arrows)[0].contains("`cellar` is a member"));
        arrows.remove("cellar");
        arrows.remove("paper");
        assert!(compare(&arrows)[0].contains("`paper` is in the table"));
    }

    #[test]
    fn a_true_code_map_is_no_fault() {
        assert_eq!(find_map_faults(&map()), []);
    }

    #[test]
    fn a_code_map_without_a_room_is_found() {
        let page = map().replace("| `crates/paper` |", "| crates/paper |");
        assert_eq!(
            find_map_faults(&page),
            [Fault::of(MAP_PAGE, "the code map does not name `crates/paper`")]
        );
    }

    #[test]
    fn a_code_map_with_a_wrong_arrow_is_found() {
        let page = map().replace("| `almanac`, `measure` | a room", "| `almanac` | a room");
        assert!(find_map_faults(&page)[0].text.contains("leans on [\"almanac\"]"));
    }

    #[test]
    fn a_code_map_with_a_room_that_is_not_there_is_found() {
        let page = map().replace("| `xtask` |", "| `crates/cellar` | | not yet |\n| `xtask` |");
        assert!(find_map_faults(&page)[0].text.contains("`crates/cellar`, which is not there"));
    }

    #[test]
    fn a_manifest_inherits_lints_and_versions() {
        let good =
            "[package]\nname = \"a\"\n[lints]\nworkspace = true\n[dependencies]\nserde.workspace = true\n";
        assert_eq!(find_manifest_faults("crates/a/Cargo.toml", good), []);
        let bad = "[package]\nname = \"a\"\n[dependencies]\nserde = \"1\"\n";
        assert_eq!(find_manifest_faults("crates/a/Cargo.toml", bad).len(), 2);
        assert!(find_manifest_faults("crates/a/Cargo.toml", "[package")[0].text.contains("cannot be read"));
    }
}
