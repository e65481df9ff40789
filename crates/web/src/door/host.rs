//! The host a request names, and the page that sent a write.

use std::collections::BTreeSet;
use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::{HeaderMap, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::Response;

use crate::leaf;

/// The hosts this kitchen answers to, with their ports: `127.0.0.1:8480`.
#[derive(Debug, Clone)]
pub(crate) struct KnownHosts(Arc<BTreeSet<String>>);

impl KnownHosts {
    pub(crate) fn new(hosts: &[String]) -> Self {
        Self(Arc::new(hosts.iter().map(|host| host.to_ascii_lowercase()).collect()))
    }

    fn knows(&self, host: &str) -> bool {
        self.0.contains(&host.to_ascii_lowercase())
    }
}

/// Lets a request through when it names us, and a write only when our own page sent it.
pub(crate) async fn check(State(hosts): State<KnownHosts>, request: Request, next: Next) -> Response {
    let headers = request.headers();
    let Some(host) = text_of(headers, header::HOST).filter(|host| hosts.knows(host)) else {
        return leaf::refuse(
            StatusCode::MISDIRECTED_REQUEST,
            "This kitchen is not called that",
            "Open the address that was shown where the program was started.",
        );
    };
    if !is_reading(request.method()) && !is_own_page(headers, host) {
        return leaf::refuse(
            StatusCode::FORBIDDEN,
            "Nothing was written",
            "The page that sent this is not one of this kitchen's. Open the page here and send it again.",
        );
    }
    next.run(request).await
}

fn is_reading(method: &Method) -> bool {
    matches!(*method, Method::GET | Method::HEAD)
}

/// Browsers name the sending page on every write, over plain http too; a write without that is nobody's page.
fn is_own_page(headers: &HeaderMap, host: &str) -> bool {
    let origin = text_of(headers, header::ORIGIN)
        .and_then(|origin| origin.strip_prefix("http://").or_else(|| origin.strip_prefix("https://")));
    origin.is_some_and(|origin| origin.eq_ignore_ascii_case(host))
}

fn text_of(headers: &HeaderMap, name: header::HeaderName) -> Option<&str> {
    let mut all = headers.get_all(name).iter();
    let first = all.next()?;
    // Two of one kind is a way to tell two readers two different things.
    if all.next().is_some() {
        return None;
    }
    first.to_str().ok()
}
