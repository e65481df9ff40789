//! The server: it listens on this machine, answers, and stops cleanly.
//!
//! A client that is slow with its request is let go, and no more come in at once than a household has windows open:
//! one bad neighbour cannot keep the others out.

use std::io;
use std::net::{Ipv4Addr, SocketAddr};
use std::sync::Arc;
use std::time::Duration;

use almanac::Almanac;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::runtime::Runtime;
use tokio::sync::Semaphore;
use tokio::time;

use crate::pages::{Pages, build_pages};

/// Where to listen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Settings {
    /// The port on this machine; 0 takes any that is free.
    pub port: u16,
}

/// Why nothing can be served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// Another program listens there.
    #[error(
        "port {port} of this machine is in use; hint: stop the other program, or give another with --port"
    )]
    PortTaken {
        /// The port.
        port: u16,
    },
    /// The system refuses to let us listen.
    #[error(
        "this machine does not let us listen on port {port}: {problem}; hint: give another port with --port"
    )]
    CannotListen {
        /// The port.
        port: u16,
        /// What the system says.
        problem: io::Error,
    },
    /// The system refuses what a server needs.
    #[error("the server cannot start: {0}; hint: close other programs and try again")]
    CannotStart(io::Error),
}

/// Connections that are answered at once, at the most.
const MOST_AT_ONCE: usize = 256;
/// How long a client may take to say what it wants.
const HEADER_PATIENCE: Duration = Duration::from_secs(10);
/// How long answers under way may take to end once the server is to stop.
const PARTING: Duration = Duration::from_secs(5);
/// How long to wait before listening again when the system is out of files or the like.
const BREATH: Duration = Duration::from_millis(100);

/// Serves the pages on this machine until the person stops it; `on_ready` is told the address.
///
/// # Errors
///
/// When the port is in use, or the system does not let us listen.
pub fn serve(
    almanac: Almanac,
    settings: Settings,
    on_ready: impl FnOnce(SocketAddr),
) -> Result<(), ServeError> {
    let runtime = Runtime::new().map_err(ServeError::CannotStart)?;
    runtime.block_on(async {
        let (listener, address) = listen(settings.port).await?;
        let pages = build_pages(almanac, &names_of(address));
        on_ready(address);
        let stop = async {
            // Without a signal to wait for, the server stands until it is killed, which loses nothing.
            if tokio::signal::ctrl_c().await.is_err() {
                std::future::pending::<()>().await;
            }
        };
        answer_until(listener, pages, stop).await;
        Ok(())
    })
}

async fn listen(port: u16) -> Result<(TcpListener, SocketAddr), ServeError> {
    let refused = |problem: io::Error| match problem.kind() {
        io::ErrorKind::AddrInUse => ServeError::PortTaken { port },
        _ => ServeError::CannotListen { port, problem },
    };
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port)).await.map_err(refused)?;
    let address = listener.local_addr().map_err(ServeError::CannotStart)?;
    Ok((listener, address))
}

/// The names by which a browser on this machine reaches an address.
fn names_of(address: SocketAddr) -> Vec<String> {
    let port = address.port();
    vec![format!("127.0.0.1:{port}"), format!("localhost:{port}")]
}

async fn answer_until(listener: TcpListener, pages: Pages, stop: impl Future<Output = ()>) {
    let open = GracefulShutdown::new();
    let seats = Arc::new(Semaphore::new(MOST_AT_ONCE));
    let mut stop = std::pin::pin!(stop);
    loop {
        let accepted = tokio::select! {
            () = &mut stop => break,
            accepted = listener.accept() => accepted,
        };
        let Ok((stream, _)) = accepted else {
            time::sleep(BREATH).await;
            continue;
        };
        // Whoever finds no seat is let go at once; a browser tries again by itself.
        let Ok(seat) = Arc::clone(&seats).try_acquire_owned() else { continue };
        let conversation = open.watch(converse(stream, pages.clone()));
        tokio::spawn(async move {
            // A client that went away or spoke nonsense is no fault of ours, and nobody is left to tell.
            let _ = conversation.await;
            drop(seat);
        });
    }
    drop(listener);
    tokio::select! {
        () = open.shutdown() => {}
        () = time::sleep(PARTING) => {}
    }
}

fn converse(
    stream: TcpStream,
    pages: Pages,
) -> http1::Connection<TokioIo<TcpStream>, TowerToHyperService<Pages>> {
    http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(HEADER_PATIENCE)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(pages))
}
