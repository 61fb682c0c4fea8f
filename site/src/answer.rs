//! What a server answers: only the files the build knows by name, read into memory once, can ever be given out.

use std::io::{BufRead, BufReader, Read};
use std::net::TcpStream;
use std::time::Duration;

use crate::Files;
use crate::headers::{HEADERS, headers_for};

/// A request's head may be this long; a browser's is a few hundred bytes.
const LONGEST_HEAD: u64 = 16 * 1024;

/// A connection that says nothing for so long is given up.
const PATIENCE: Duration = Duration::from_secs(30);

/// Reads the head of a request and gives its first line; nothing where the connection breaks, which is the visitor's own
/// affair.
pub fn read_request(stream: &TcpStream) -> Option<String> {
    let _ = stream.set_read_timeout(Some(PATIENCE));
    let mut request = BufReader::new(stream).take(LONGEST_HEAD);
    let mut first = String::new();
    if request.read_line(&mut first).is_err() || first.is_empty() {
        return None;
    }
    let mut line = String::new();
    while request.read_line(&mut line).is_ok_and(|read| read > 0) && line != "\r\n" && line != "\n"
    {
        line.clear();
    }
    Some(first.trim_end().to_owned())
}

/// An answer to one request.
#[derive(Debug)]
pub struct Answer {
    /// Status line after the protocol, for example `200 OK`.
    pub status: &'static str,
    /// Content type.
    pub kind: &'static str,
    /// Content.
    pub content: Vec<u8>,
    /// Whether only the head is wanted.
    pub head_only: bool,
    /// What the site's own file of headers says for this address.
    pub headers: Vec<(String, String)>,
}

impl Answer {
    /// The bytes on the wire.
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut head = format!(
            "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nConnection: close\r\n",
            self.status,
            self.kind,
            self.content.len()
        );
        for (name, value) in &self.headers {
            head.push_str(&format!("{name}: {value}\r\n"));
        }
        head.push_str("\r\n");
        let mut bytes = head.into_bytes();
        if !self.head_only {
            bytes.extend(&self.content);
        }
        bytes
    }

    /// An answer without a file.
    pub fn refusal(status: &'static str) -> Self {
        Self {
            status,
            kind: "text/plain; charset=utf-8",
            content: format!("{status}\n").into_bytes(),
            head_only: false,
            headers: Vec::new(),
        }
    }
}

/// Answers a request by its first line, for example `GET /index.html HTTP/1.1`, under the headers that the site is
/// published with.
pub fn answer(files: &Files, request_line: &str) -> Answer {
    let address = request_line.split_whitespace().nth(1).unwrap_or_default();
    let path = address.split(['?', '#']).next().unwrap_or_default();
    let headers = files.get(HEADERS).map_or(Vec::new(), |file| {
        headers_for(&String::from_utf8_lossy(file), path)
    });
    Answer {
        headers,
        ..content(files, request_line)
    }
}

fn content(files: &Files, request_line: &str) -> Answer {
    let mut words = request_line.split_whitespace();
    let (Some(method), Some(address), Some(protocol)) = (words.next(), words.next(), words.next())
    else {
        return Answer::refusal("400 Bad Request");
    };
    if !protocol.starts_with("HTTP/1.") {
        return Answer::refusal("400 Bad Request");
    }
    if method != "GET" && method != "HEAD" {
        return Answer::refusal("405 Method Not Allowed");
    }
    match file(files, address) {
        Some((name, content)) => Answer {
            status: "200 OK",
            kind: kind(name),
            content: content.clone(),
            head_only: method == "HEAD",
            headers: Vec::new(),
        },
        None => Answer {
            head_only: method == "HEAD",
            ..Answer::refusal("404 Not Found")
        },
    }
}

/// The file at an address. The address is a name to look up, never a path to walk: `..`, an absolute path or an escaped
/// character names no file of the site.
fn file<'a>(files: &'a Files, address: &str) -> Option<(&'a str, &'a Vec<u8>)> {
    let path = address.split(['?', '#']).next()?.strip_prefix('/')?;
    let name = if path.is_empty() { "index.html" } else { path };
    files
        .get_key_value(name)
        .map(|(name, content)| (&**name, content))
}

fn kind(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, ending)| ending) {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "webmanifest" => "application/manifest+json",
        "txt" => "text/plain; charset=utf-8",
        _ if name == "SHA256SUMS" || name == HEADERS => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn site() -> Files {
        let files = [
            ("index.html", "<p>page"),
            ("a.wasm", "\0asm"),
            ("icons/key.svg", "<svg/>"),
            (
                HEADERS,
                "/*\n  Content-Security-Policy: default-src 'none'\n",
            ),
        ];
        files
            .map(|(name, content)| (name.to_owned(), content.as_bytes().to_vec()))
            .into()
    }

    fn get(address: &str) -> Answer {
        answer(&site(), &format!("GET {address} HTTP/1.1"))
    }

    #[test]
    fn root_is_the_page() {
        let page = get("/");
        assert_eq!(
            (page.status, page.kind),
            ("200 OK", "text/html; charset=utf-8")
        );
        assert_eq!(page.content, b"<p>page");
    }

    #[test]
    fn wasm_has_the_type_that_streaming_needs() {
        assert_eq!(get("/a.wasm").kind, "application/wasm");
    }

    #[test]
    fn file_in_a_folder_and_with_a_query_is_found() {
        assert_eq!(get("/icons/key.svg?v=1").kind, "image/svg+xml");
    }

    #[test]
    fn path_that_leaves_the_site_is_not_found() {
        for address in [
            "/../Cargo.toml",
            "/icons/../../Cargo.toml",
            "/%2e%2e/Cargo.toml",
            "//etc/passwd",
            "/..\\Cargo.toml",
            "etc/passwd",
        ] {
            assert_eq!(get(address).status, "404 Not Found", "{address}");
        }
    }

    #[test]
    fn only_reading_is_answered() {
        assert_eq!(
            answer(&site(), "POST / HTTP/1.1").status,
            "405 Method Not Allowed"
        );
        assert_eq!(
            answer(&site(), "\u{16}\u{3}\u{1}").status,
            "400 Bad Request"
        );
    }

    #[test]
    fn head_has_no_content_but_its_length() {
        let bytes = answer(&site(), "HEAD / HTTP/1.1").to_bytes();
        let text = String::from_utf8(bytes).unwrap();
        assert!(
            text.contains("Content-Length: 7\r\n") && text.ends_with("\r\n\r\n"),
            "{text}"
        );
    }

    #[test]
    fn every_answer_carries_the_policy() {
        for address in ["/", "/nothing"] {
            let text = String::from_utf8(get(address).to_bytes()).unwrap();
            assert!(
                text.contains("Content-Security-Policy: default-src 'none'\r\n"),
                "{text}"
            );
        }
    }
}
