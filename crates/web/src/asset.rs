//! What stands beside the pages: the style, the letters, the drawings. Built into the program; each has the version of
//! the program in its address, so that a browser keeps it until the next one.

use axum::extract::Path;
use axum::http::header;
use axum::response::{IntoResponse, Response};

use crate::leaf;

/// The part of an address that changes with the program.
pub(crate) const VERSION: &str = env!("CARGO_PKG_VERSION");

struct Asset {
    name: &'static str,
    kind: &'static str,
    bytes: &'static [u8],
}

const ASSETS: [Asset; 5] = [
    Asset {
        name: "style.css",
        kind: "text/css; charset=utf-8",
        bytes: include_bytes!("../assets/style.css"),
    },
    Asset { name: "drawings.svg", kind: "image/svg+xml", bytes: include_bytes!("../assets/drawings.svg") },
    Asset { name: "icon.svg", kind: "image/svg+xml", bytes: include_bytes!("../assets/icon.svg") },
    Asset { name: "regular.woff2", kind: "font/woff2", bytes: paper::REGULAR },
    Asset { name: "bold.woff2", kind: "font/woff2", bytes: paper::BOLD },
];

/// One of them, by name.
pub(crate) async fn fetch(Path((version, name)): Path<(String, String)>) -> Response {
    match ASSETS.iter().find(|asset| asset.name == name && version == VERSION) {
        Some(asset) => {
            let headers = [
                (header::CONTENT_TYPE, asset.kind),
                (header::CACHE_CONTROL, "public, max-age=31536000, immutable"),
            ];
            (headers, asset.bytes).into_response()
        }
        None => leaf::nothing_here().await,
    }
}
