//! Who may come in, and what every answer says to the browser.
//!
//! [`check`] turns away a request that names a host we are not (a page elsewhere that has a name of its own pointed
//! here), and a write that another site's page sent. [`close`] puts the headers on every answer, refusals too.

mod headers;
mod host;

pub(crate) use headers::close;
pub(crate) use host::{KnownHosts, check};
