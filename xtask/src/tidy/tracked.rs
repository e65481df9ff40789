//! Rules for what may be tracked at all: no large file, no path of one machine, no name of a registry's host.

use super::Fault;
use super::tree::Tree;

/// The largest file, in bytes. Twice what the largest table of facts takes.
const LARGEST: u64 = 2 * 1024 * 1024;

/// Folders that exist on one machine. Written in two halves, so that this file does not name them either.
const MACHINE_FOLDERS: [&str; 6] = [
    concat!("/", "work/"),
    concat!("/", "tmp/"),
    concat!("/", "home/"),
    concat!("/", "root/"),
    concat!("/", "Users/"),
    concat!("C:", "\\Users\\"),
];

/// Hosts of package registries. A tree builds wherever its packages can be had.
const REGISTRY_HOSTS: [&str; 6] = [
    concat!("crates", ".io"),
    concat!("pypi", ".org"),
    concat!("pythonhosted", ".org"),
    concat!("npmjs", ".com"),
    concat!("npmjs", ".org"),
    concat!("deb.debian", ".org"),
];

/// The lock file: cargo writes the registry into it.
const LOCK: &str = "Cargo.lock";

/// Every fault of the tracked files.
pub(super) fn find_faults(tree: &Tree) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (path, file) in tree.files() {
        if file.size > LARGEST {
            faults.push(Fault::of(path, format!("has {} bytes, more than {LARGEST}", file.size)));
        }
        for (index, line) in file.text.iter().flat_map(|text| text.lines()).enumerate() {
            for folder in MACHINE_FOLDERS {
                if names_folder(line, folder) {
                    faults.push(Fault::at(
                        path,
                        index + 1,
                        format!("names `{folder}`, a folder of one machine"),
                    ));
                }
            }
            for host in REGISTRY_HOSTS {
                if path != LOCK && line.contains(host) {
                    faults.push(Fault::at(
                        path,
                        index + 1,
                        format!("names `{host}`, the host of a registry"),
                    ));
                }
            }
        }
    }
    faults
}

/// Whether the folder is named from the root down, and not as the middle of a longer path.
fn names_folder(line: &str, folder: &str) -> bool {
    line.match_indices(folder).any(|(at, _)| {
        !line[..at].ends_with(|letter: char| letter.is_alphanumeric() || "._-}".contains(letter))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(path: &str, text: &str, expected: &[&str]) {
        let found: Vec<String> =
            find_faults(&Tree::of(&[(path, text)])).iter().map(ToString::to_string).collect();
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for (fault, words) in found.iter().zip(expected) {
            assert!(fault.contains(words), "{fault} does not say {words}");
        }
    }

    #[test]
    fn a_path_of_one_machine_is_found() {
        check("notes.txt", concat!("first\nsee \"/", "home/ann/day.toml\"\n"), &["notes.txt:2: names"]);
    }

    #[test]
    fn the_middle_of_a_path_is_left_alone() {
        check("notes.txt", concat!("docs/", "work/plan and play/", "work/rest\n"), &[]);
    }

    #[test]
    fn a_registry_host_is_found_outside_the_lock_file() {
        let text = concat!("source = \"crates", ".io\"\n");
        check("README.md", text, &["README.md:1: names"]);
        check("Cargo.lock", text, &[]);
    }

    #[test]
    fn a_large_file_is_found_even_if_it_is_no_text() {
        let mut tree = Tree::default();
        tree.insert("big.bin", vec![0xff; 2 * 1024 * 1024 + 1]);
        tree.insert("small.bin", vec![0xff; 2 * 1024 * 1024]);
        assert_eq!(find_faults(&tree).len(), 1);
    }
}
