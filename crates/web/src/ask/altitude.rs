//! How high a kitchen lies.

use askama::Template;
use axum::http::StatusCode;
use axum::response::Response;

use crate::leaf::{self, Place, filters};

#[derive(Template)]
#[template(path = "ask/altitude.html")]
struct Altitude {
    place: Place,
}

/// Three ways to find it.
pub(crate) async fn show() -> Response {
    leaf::show(StatusCode::OK, &Altitude { place: Place::Ask })
}
