//! Which address leads to which page, and what every answer passes on its way in and out.

use std::sync::Arc;
use std::time::Duration;

use almanac::Almanac;
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::middleware;
use axum::routing::get;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::CompressionLayer;
use tower_http::timeout::TimeoutLayer;

use crate::door::{self, KnownHosts};
use crate::{ask, asset, formula, leaf};

/// What every page may read.
#[derive(Clone)]
pub(crate) struct Kitchen {
    pub(crate) almanac: Arc<Almanac>,
}

/// The pages, ready to answer.
pub type Pages = Router;

/// The largest form that is read. The longest honest one, a change in words, is far below it.
const MOST_BYTES: usize = 64 * 1024;
/// How long a page may take before the person is told that it did not come.
const PATIENCE: Duration = Duration::from_secs(20);

/// The pages over an almanac, for requests that name one of the hosts.
pub fn build_pages(almanac: Almanac, hosts: &[String]) -> Pages {
    let kitchen = Kitchen { almanac: Arc::new(almanac) };
    Router::new()
        .route("/", get(ask::open_first))
        .route("/ask", get(ask::show_questions))
        .route("/ask/process", get(ask::process::show))
        .route("/ask/altitude", get(ask::altitude::show))
        .route("/formulas", get(formula::list::show))
        .route("/formulas/{id}", get(formula::sheet::show))
        .route("/assets/{version}/{name}", get(asset::fetch))
        .fallback(leaf::nothing_here)
        .method_not_allowed_fallback(leaf::nothing_here)
        .with_state(kitchen)
        .layer(DefaultBodyLimit::max(MOST_BYTES))
        .layer(CompressionLayer::new())
        .layer(TimeoutLayer::with_status_code(StatusCode::SERVICE_UNAVAILABLE, PATIENCE))
        .layer(CatchPanicLayer::custom(leaf::broke))
        .layer(middleware::from_fn_with_state(KnownHosts::new(hosts), door::check))
        .layer(middleware::from_fn(door::close))
}
