//! The leaf every page is set on, and the pages that say a page is not there.

use std::any::Any;

use askama::Template;
use axum::body::Body;
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};

/// A word of the index at the top of every page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// The formulas on file, fitted to what there is.
    Formulas,
    /// The questions anyone may ask.
    Ask,
    /// A page outside the index.
    None,
}

/// One entry of the index.
pub(crate) struct Entry {
    pub(crate) word: &'static str,
    pub(crate) address: &'static str,
    pub(crate) is_here: bool,
}

impl Place {
    /// The index as it stands on a page of this place.
    pub(crate) fn index(self) -> Vec<Entry> {
        [(Self::Formulas, "Formulas", "/formulas"), (Self::Ask, "Ask", "/ask")]
            .map(|(place, word, address)| Entry { word, address, is_here: place == self })
            .into()
    }
}

/// What the templates write with.
pub(crate) mod filters {
    use std::fmt::Display;

    use askama::filters::Safe;

    use crate::asset::VERSION;

    /// The address of something beside the pages: `{{ "style.css"|asset }}`.
    #[askama::filter_fn]
    pub(crate) fn asset(name: impl Display, _: &dyn askama::Values) -> askama::Result<String> {
        Ok(format!("/assets/{VERSION}/{name}"))
    }

    /// Words of the kitchen, escaped, with fractions the typeface can draw.
    #[askama::filter_fn]
    pub(crate) fn kitchen(words: impl Display, _: &dyn askama::Values) -> askama::Result<Safe<String>> {
        Ok(Safe(paper::mark_fractions(&words.to_string())))
    }
}

/// Sets a view on the leaf.
pub(crate) fn show(status: StatusCode, view: &impl Template) -> Response {
    match view.render() {
        Ok(page) => (status, Html(page)).into_response(),
        // A template writes into memory and knows its fields: only a fault of ours ends here.
        Err(_) => broken(),
    }
}

#[derive(Template)]
#[template(path = "notice.html")]
struct Notice<'a> {
    place: Place,
    title: &'a str,
    words: &'a str,
}

/// A page that says why there is none, in one sentence, and what to do.
pub(crate) fn refuse(status: StatusCode, title: &str, words: &str) -> Response {
    show(status, &Notice { place: Place::None, title, words })
}

/// The address leads nowhere.
pub(crate) async fn nothing_here() -> Response {
    refuse(
        StatusCode::NOT_FOUND,
        "There is no such page",
        "The address may be misspelled. Begin again at one of the words above.",
    )
}

/// What is shown when a page of ours failed; the reason is not the reader's, and is not told.
pub(crate) fn broke(_: Box<dyn Any + Send + 'static>) -> Response {
    refuse(
        StatusCode::INTERNAL_SERVER_ERROR,
        "This page failed",
        "The fault is the program's. Nothing was written. Go back and try once more.",
    )
}

fn broken() -> Response {
    let mut answer = Response::new(Body::from("This page failed. Nothing was written.\n"));
    *answer.status_mut() = StatusCode::INTERNAL_SERVER_ERROR;
    answer.headers_mut().insert(header::CONTENT_TYPE, HeaderValue::from_static("text/plain; charset=utf-8"));
    answer
}
