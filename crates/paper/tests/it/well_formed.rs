//! A small reader of tags: enough to say that every element is closed where it should be, no id is used twice, and
//! every reference inside the page has its target.

use std::collections::BTreeSet;

const EMPTY: [&str; 6] = ["meta", "path", "rect", "br", "link", "img"];

/// Faults of a page, a sentence each.
pub fn find_faults(html: &str) -> Vec<String> {
    let body = remove_style(html);
    let mut faults = Vec::new();
    let mut open: Vec<String> = Vec::new();
    let mut ids = BTreeSet::new();
    let mut wanted = Vec::new();
    for tag in list_tags(&body) {
        if tag.starts_with('!') {
            continue;
        }
        if let Some(name) = tag.strip_prefix('/') {
            let last = open.pop();
            if last.as_deref() != Some(name) {
                faults.push(format!("</{name}> closes {last:?}"));
            }
            continue;
        }
        let name = tag.split([' ', '/']).next().unwrap_or_default();
        if let Some(id) = read_attribute(tag, "id")
            && !ids.insert(id.to_owned())
        {
            faults.push(format!("id {id} is used twice"));
        }
        wanted.extend(read_attribute(tag, "aria-labelledby").map(str::to_owned));
        if !EMPTY.contains(&name) && !tag.ends_with('/') {
            open.push(name.to_owned());
        }
    }
    faults.extend(open.iter().map(|name| format!("<{name}> is never closed")));
    faults.extend(wanted.iter().filter(|id| !ids.contains(*id)).map(|id| format!("nothing has the id {id}")));
    faults
}

/// The page without what stands between the style tags: its child selectors look like tags.
pub fn remove_style(html: &str) -> String {
    let from = html.find("<style>").expect("the page has a style") + "<style>".len();
    let to = html.find("</style>").expect("the style is closed");
    format!("{}{}", &html[..from], &html[to..])
}

fn list_tags(html: &str) -> impl Iterator<Item = &str> {
    html.split('<').skip(1).filter_map(|part| part.split_once('>').map(|(tag, _)| tag))
}

fn read_attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let from = tag.find(&format!(" {name}=\""))? + name.len() + 3;
    tag[from..].split('"').next()
}

#[test]
fn the_reader_sees_what_is_wrong() {
    let page = |body: &str| format!("<style></style>{body}");
    assert!(find_faults(&page("<p><b>x</b></p>")).is_empty());
    assert_eq!(find_faults(&page("<p><b>x</p></b>")).len(), 2);
    assert_eq!(find_faults(&page("<p>")), ["<p> is never closed"]);
    assert_eq!(find_faults(&page("<p id=\"a\"></p><p id=\"a\"></p>")), ["id a is used twice"]);
    assert_eq!(find_faults(&page("<p aria-labelledby=\"a\"></p>")), ["nothing has the id a"]);
}
