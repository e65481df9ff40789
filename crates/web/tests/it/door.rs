//! Who comes in, and what every answer says to the browser.

use axum::body::Body;
use axum::http::{Request, StatusCode};

use crate::app::{HOST, TestApp};

#[test]
fn a_request_that_names_another_host_is_turned_away() {
    let app = TestApp::new();
    for host in ["evil.example", "127.0.0.1", "127.0.0.1:7746.evil.example", ""] {
        let request = Request::get("/ask").header("host", host).body(Body::empty()).unwrap();
        assert_eq!(app.send(request).status, StatusCode::MISDIRECTED_REQUEST, "{host}");
    }
    let none = Request::get("/ask").body(Body::empty()).unwrap();
    assert_eq!(app.send(none).status, StatusCode::MISDIRECTED_REQUEST);
    let two = Request::get("/ask").header("host", HOST).header("host", HOST).body(Body::empty()).unwrap();
    assert_eq!(app.send(two).status, StatusCode::MISDIRECTED_REQUEST);
}

#[test]
fn a_write_from_a_page_elsewhere_writes_nothing() {
    let app = TestApp::new();
    for origin in
        [None, Some("http://evil.example"), Some("null"), Some("http://127.0.0.1:7746.evil.example")]
    {
        let mut request = Request::post("/ask/process").header("host", HOST);
        if let Some(origin) = origin {
            request = request.header("origin", origin);
        }
        let answer = app.send(request.body(Body::empty()).unwrap());
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{origin:?}");
        assert!(answer.text.contains("Nothing was written"));
    }
}

#[test]
fn every_answer_closes_the_page_to_everything_from_elsewhere() {
    let app = TestApp::new();
    for address in
        ["/ask", "/no/such/page", "/formulas", "/assets/0.1.0/style.css", "/ask/process?jar=pint&food=x"]
    {
        let answer = app.get(address);
        let header = |name: &str| answer.headers.get(name).map(|value| value.to_str().unwrap().to_owned());
        let policy = header("content-security-policy").unwrap_or_default();
        assert!(policy.starts_with("default-src 'none'"), "{address}: {policy}");
        assert!(!policy.contains("unsafe") && !policy.contains('*'), "{address}: {policy}");
        for part in ["frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'"] {
            assert!(policy.contains(part), "{address}: {policy}");
        }
        assert_eq!(header("x-content-type-options").as_deref(), Some("nosniff"), "{address}");
        assert_eq!(header("referrer-policy").as_deref(), Some("no-referrer"), "{address}");
        assert_eq!(header("x-frame-options").as_deref(), Some("DENY"), "{address}");
    }
}

#[test]
fn pages_hold_nothing_inline_and_name_no_other_machine() {
    let app = TestApp::new();
    let fitted = "/formulas/pickled_jalapeno_rings?have=3+lb";
    for address in ["/ask", "/ask/process", "/ask/altitude", "/formulas", fitted] {
        let text = app.get(address).text;
        for barred in ["<script", "style=", "<style", "onclick", "http://", "https://", "//"] {
            assert!(!text.contains(barred), "{address} holds {barred}");
        }
    }
}

#[test]
fn what_stands_beside_the_pages_may_be_kept_and_a_page_may_not() {
    let app = TestApp::new();
    let kept = app.get("/assets/0.1.0/regular.woff2");
    assert_eq!(kept.status, StatusCode::OK);
    assert!(kept.headers["cache-control"].to_str().unwrap().contains("immutable"));
    assert_eq!(app.get("/ask").headers["cache-control"], "no-store");
    assert_eq!(app.get("/assets/0.0.9/style.css").status, StatusCode::NOT_FOUND);
    assert_eq!(app.get("/assets/0.1.0/..%2fCargo.toml").status, StatusCode::NOT_FOUND);
}

#[test]
fn every_page_is_light() {
    /// With everything but the letters, over the wire; here before it is packed.
    const MOST_BYTES: usize = 60 * 1024;
    let app = TestApp::new();
    let beside: usize = ["style.css", "drawings.svg", "icon.svg"]
        .iter()
        .map(|name| app.get(&format!("/assets/0.1.0/{name}")).text.len())
        .sum();
    for address in ["/ask", "/ask/process", "/formulas", "/formulas/pickled_jalapeno_rings?have=3+lb"] {
        let weight = app.get(address).text.len() + beside;
        assert!(weight < MOST_BYTES, "{address} weighs {weight}");
    }
}
