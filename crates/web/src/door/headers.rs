//! The headers of every answer: nothing from elsewhere, nothing inline, nothing framed.

use axum::extract::Request;
use axum::http::{HeaderName, HeaderValue, header};
use axum::middleware::Next;
use axum::response::Response;

/// Scripts, styles, fonts and pictures come from here and from nowhere else; forms go here; nobody frames a page.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; \
     connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

const HEADERS: [(HeaderName, &str); 6] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "no-referrer"),
    (header::X_FRAME_OPTIONS, "DENY"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
];

/// Puts the headers on the answer. A page is asked for anew each time: what it shows may have changed.
pub(crate) async fn close(request: Request, next: Next) -> Response {
    let mut answer = next.run(request).await;
    let headers = answer.headers_mut();
    for (name, value) in HEADERS {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}
