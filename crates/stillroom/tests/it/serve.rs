//! `stillroom serve`, as a browser meets it.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Shutdown, TcpStream};
use std::process::{Child, Command, Stdio};

use crate::program::run;

/// A running server, stopped when the test is done with it.
struct Served {
    child: Child,
    host: String,
}

impl Served {
    fn start() -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_stillroom"))
            .args(["serve", "--port", "0"])
            .stdout(Stdio::piped())
            .spawn()
            .expect("the program starts");
        let out = child.stdout.take().expect("its output is piped");
        let mut line = String::new();
        BufReader::new(out).read_line(&mut line).expect("it prints its address");
        let host = line.trim().trim_end_matches('/').rsplit('/').next().expect("an address").to_owned();
        Self { child, host }
    }

    /// Sends bytes and reads all that comes back.
    fn talk(&self, bytes: &str) -> String {
        let mut stream = TcpStream::connect(&self.host).expect("it listens where it says");
        stream.write_all(bytes.as_bytes()).expect("it reads");
        if !bytes.contains("HTTP/1.1\r\n") {
            // Nothing more comes: without a word of it the server would wait for the rest of a request.
            stream.shutdown(Shutdown::Write).expect("the socket is open");
        }
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).expect("it answers and closes");
        String::from_utf8_lossy(&answer).into_owned()
    }

    fn get(&self, address: &str) -> String {
        self.talk(&format!("GET {address} HTTP/1.1\r\nhost: {}\r\nconnection: close\r\n\r\n", self.host))
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        // It may have ended already, which is as good.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[test]
fn the_pages_are_served_where_it_says_and_nowhere_else() {
    let served = Served::start();
    assert!(served.host.starts_with("127.0.0.1:"), "{}", served.host);
    let page = served.get("/ask");
    assert!(page.starts_with("HTTP/1.1 200"), "{page}");
    assert!(page.contains("Is there a tested process for it?"), "{page}");
    assert!(served.get("/nothing").starts_with("HTTP/1.1 404"));
    let elsewhere = served.talk("GET /ask HTTP/1.1\r\nhost: evil.example\r\nconnection: close\r\n\r\n");
    assert!(elsewhere.starts_with("HTTP/1.1 421"), "{elsewhere}");
}

#[test]
fn nonsense_is_answered_and_the_next_still_served() {
    let served = Served::start();
    for nonsense in ["\r\n\r\n", "GET\r\n\r\n", "BREW /pot HTTP/9\r\n\r\n", "\u{0}\u{1}\u{2}\r\n\r\n"] {
        assert!(!served.talk(nonsense).contains(" 200 "), "{nonsense:?}");
    }
    let long = format!("GET /ask?{} HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n", "x".repeat(20_000));
    assert!(!served.talk(&long).contains(" 200 "));
    assert!(served.get("/ask").starts_with("HTTP/1.1 200"));
}

#[test]
fn a_taken_port_is_said_with_what_to_do() {
    let served = Served::start();
    let port = served.host.rsplit(':').next().expect("a port");
    run(&["serve", "--port", port]).expect_world_failed(&format!("port {port} of this machine is in use"));
}
