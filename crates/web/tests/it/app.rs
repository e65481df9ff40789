//! A kitchen to ask, and what it answered.

use std::sync::LazyLock;

use almanac::Almanac;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode};
use tower::ServiceExt as _;
use web::{Pages, build_pages};

/// The host the kitchen of the tests is called by.
pub(crate) const HOST: &str = "127.0.0.1:7746";

/// A kitchen with the tables built in.
pub(crate) struct TestApp {
    pages: Pages,
}

/// An answer, read whole.
#[derive(Debug)]
pub(crate) struct Answer {
    pub(crate) status: StatusCode,
    pub(crate) headers: HeaderMap,
    pub(crate) text: String,
}

impl TestApp {
    pub(crate) fn new() -> Self {
        /// The tables take longer to read than any page to answer, so they are read once.
        static PAGES: LazyLock<Pages> = LazyLock::new(|| {
            let almanac = Almanac::load().expect("the tables built in have no fault");
            build_pages(almanac, &[HOST.to_owned()])
        });
        Self { pages: PAGES.clone() }
    }

    /// Asks for an address as a browser does.
    pub(crate) fn get(&self, address: &str) -> Answer {
        let request = Request::get(address).header("host", HOST).body(Body::empty());
        self.send(request.expect("a plain request"))
    }

    /// Asks for an address with words in its query.
    pub(crate) fn ask(&self, address: &str, words: &[(&str, &str)]) -> Answer {
        let query = serde_urlencoded::to_string(words).expect("words are text");
        self.get(&format!("{address}?{query}"))
    }

    /// Sends a request as it is.
    pub(crate) fn send(&self, request: Request<Body>) -> Answer {
        let pages = self.pages.clone();
        let runtime = tokio::runtime::Builder::new_current_thread().enable_time().build();
        runtime.expect("a runtime").block_on(async {
            let answer = pages.oneshot(request).await.expect("pages never fail");
            let (parts, body) = answer.into_parts();
            let bytes = to_bytes(body, 4 << 20).await.expect("a whole answer");
            let text = String::from_utf8_lossy(&bytes).into_owned();
            Answer { status: parts.status, headers: parts.headers, text }
        })
    }
}
