//! The questions anyone may ask.

pub(crate) mod altitude;
pub(crate) mod process;
mod wrong;

use askama::Template;
use axum::http::StatusCode;
use axum::response::{Redirect, Response};

use crate::leaf::{self, Place, filters};

#[derive(Template)]
#[template(path = "ask/questions.html")]
struct Questions {
    place: Place,
}

/// The first page: the questions, as long as nothing else waits.
pub(crate) async fn open_first() -> Redirect {
    Redirect::to("/ask")
}

/// What can be asked.
pub(crate) async fn show_questions() -> Response {
    leaf::show(StatusCode::OK, &Questions { place: Place::Ask })
}
