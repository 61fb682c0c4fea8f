//! A small server for this machine alone: the finished site at 127.0.0.1.

use std::io::{ErrorKind, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::sync::Arc;
use std::thread;

use anyhow::Result;
use self_check_site::{Answer, answer, read_request};

use crate::dist::{self, Files};
use crate::toolchain::WasmTarget;
use crate::{budget, say};

const USUAL_PORT: u16 = 8080;

/// The port named by the options of `serve`.
pub fn port(options: &[&str]) -> Result<u16> {
    match options {
        [] => Ok(USUAL_PORT),
        ["--port", number] => number.parse().map_err(|_| {
            say::advice(
                format!("`{number}` is no port."),
                "give a number from 1 to 65535, for example --port 8081.",
            )
        }),
        _ => Err(say::advice(
            format!("`serve` does not know `{}`.", options.join(" ")),
            "use cargo xtask serve, or cargo xtask serve --port 8081.",
        )),
    }
}

/// Builds the site and serves it until the program is stopped.
pub fn serve(port: u16) -> Result<()> {
    // Asked for first: a taken port should be known before minutes of building.
    let listener = listen(port)?;
    let files = Arc::new(dist::build(&WasmTarget::find_or_install()?)?);
    say::step(&format!(
        "House Key Self-Check is at {}",
        address(&listener)?
    ));
    say::note("Open that address in a browser. Ctrl-C ends it.");
    answer_all(&listener, &files, plainly);
    Ok(())
}

/// Serves a site in the background, at a free port, for as long as this program runs; gives its address.
pub fn in_background(files: Files) -> Result<String> {
    let listener = listen(0)?;
    let address = address(&listener)?;
    thread::spawn(move || answer_all(&listener, &Arc::new(files), plainly));
    Ok(address)
}

/// The same, with every file packed by gzip, as most hosts do.
pub fn packed_in_background(files: Files) -> Result<String> {
    let listener = listen(0)?;
    let address = address(&listener)?;
    let packed = |mut answer: Answer| {
        let Ok(content) = budget::packed(&answer.content) else {
            return Vec::new();
        };
        answer.content = content;
        answer
            .headers
            .push(("Content-Encoding".into(), "gzip".into()));
        answer.to_bytes()
    };
    thread::spawn(move || answer_all(&listener, &Arc::new(files), packed));
    Ok(address)
}

/// How an answer goes over the line.
type Wire = fn(Answer) -> Vec<u8>;

fn plainly(answer: Answer) -> Vec<u8> {
    answer.to_bytes()
}

fn listen(port: u16) -> Result<TcpListener> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|error| match error.kind() {
        ErrorKind::AddrInUse => say::advice(
            format!("Port {port} is taken by another program."),
            format!(
                "stop that program, or choose another port: cargo xtask serve --port {}",
                port.wrapping_add(1).max(1024)
            ),
        ),
        ErrorKind::PermissionDenied => say::advice(
            format!("The system does not let this program use port {port}."),
            "choose a port above 1023: cargo xtask serve --port 8080",
        ),
        _ => anyhow::Error::new(error).context(format!("port {port} cannot be used")),
    })
}

fn address(listener: &TcpListener) -> Result<String> {
    Ok(format!("http://{}/", listener.local_addr()?))
}

fn answer_all(listener: &TcpListener, files: &Arc<Files>, wire: Wire) {
    for stream in listener.incoming().flatten() {
        let files = Arc::clone(files);
        // A browser opens connections ahead of need; each waits on its own.
        thread::spawn(move || answer_one(stream, &files, wire));
    }
}

/// Reads one request and answers it.
fn answer_one(mut stream: TcpStream, files: &Files, wire: Wire) {
    if let Some(request) = read_request(&stream) {
        let _ = stream.write_all(&wire(answer(files, &request)));
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use std::io::Read;

    use super::*;

    #[test]
    fn port_is_the_usual_one_unless_named() {
        assert_eq!(port(&[]).unwrap(), 8080);
        assert_eq!(port(&["--port", "9000"]).unwrap(), 9000);
        assert!(
            port(&["--port", "many"])
                .unwrap_err()
                .to_string()
                .contains("What to do")
        );
        assert!(port(&["--open"]).is_err());
    }

    #[test]
    fn taken_port_is_told_with_what_to_do() {
        let held = listen(0).unwrap();
        let taken = held.local_addr().unwrap().port();
        let text = listen(taken).unwrap_err().to_string();
        assert!(
            text.contains(&format!("Port {taken} is taken")) && text.contains("--port"),
            "{text}"
        );
    }

    #[test]
    fn request_over_the_wire_gets_the_page() {
        let files = Files::from([("index.html".to_owned(), b"hello".to_vec())]);
        let address = in_background(files).unwrap();
        let host = address.trim_start_matches("http://").trim_end_matches('/');
        let mut stream = TcpStream::connect(host).unwrap();
        stream
            .write_all(b"GET / HTTP/1.1\r\nHost: here\r\n\r\n")
            .unwrap();
        let mut text = String::new();
        stream.read_to_string(&mut text).unwrap();
        assert!(
            text.starts_with("HTTP/1.1 200 OK\r\n") && text.ends_with("\r\n\r\nhello"),
            "{text}"
        );
    }
}
