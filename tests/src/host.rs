//! A host of the finished site for one journey: under a path of its own, with the headers that the site is published
//! with. Its line can be cut, it can refuse or be slow, and its files can be exchanged.

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use crate::Result;

/// Files by their path in the site.
type Files = BTreeMap<String, Vec<u8>>;

/// A running host; it goes on until the journeys end.
pub struct Host {
    /// The address of the site, ending in `/`.
    pub address: String,
    state: Arc<Mutex<State>>,
}

struct State {
    /// The path that the site stands under, beginning and ending in `/`.
    under: String,
    files: Files,
    mood: Mood,
}

/// How requests fare.
#[derive(Clone, Copy)]
enum Mood {
    Well,
    /// Nothing is answered, as if the line were cut.
    Cut,
    /// Everything is answered by this status.
    Refusing(&'static str),
    /// Everything is answered after this time.
    Slow(Duration),
}

impl Host {
    /// Serves the site that `cargo xtask build` left, under a path such as `/home/keys/`.
    pub fn under(path: &str) -> Result<Self> {
        let mut files = Files::new();
        read(&dist()?, "", &mut files)?;
        let state = Arc::new(Mutex::new(State {
            under: path.to_owned(),
            files,
            mood: Mood::Well,
        }));
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let address = format!("http://{}{path}", listener.local_addr()?);
        let shared = Arc::clone(&state);
        thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let state = Arc::clone(&shared);
                thread::spawn(move || answer(&stream, &state));
            }
        });
        Ok(Self { address, state })
    }

    /// From now on nothing is answered, as if the line were cut.
    pub fn cut(&self) {
        lock(&self.state).mood = Mood::Cut;
    }

    /// From now on everything is answered by a status such as `404 Not Found`.
    pub fn refuse(&self, status: &'static str) {
        lock(&self.state).mood = Mood::Refusing(status);
    }

    /// From now on every answer is late by so much.
    pub fn slow_down(&self, by: Duration) {
        lock(&self.state).mood = Mood::Slow(by);
    }

    /// All is well again.
    pub fn restore(&self) {
        lock(&self.state).mood = Mood::Well;
    }

    /// The names of all files, in order.
    pub fn names(&self) -> Vec<String> {
        lock(&self.state).files.keys().cloned().collect()
    }

    /// A file of the site, as text.
    pub fn text(&self, name: &str) -> Result<String> {
        let state = lock(&self.state);
        let content = state.files.get(name).ok_or(format!("no file {name}"))?;
        Ok(String::from_utf8(content.clone())?)
    }

    /// Puts a file in the place of what was there.
    pub fn put(&self, name: &str, text: &str) {
        let content = text.as_bytes().to_vec();
        lock(&self.state).files.insert(name.to_owned(), content);
    }

    /// Takes away the files whose names begin with this.
    pub fn take_away(&self, beginning: &str) {
        let mut state = lock(&self.state);
        state.files.retain(|name, _| !name.starts_with(beginning));
    }
}

/// The edition in one file that `cargo xtask build` left.
pub fn one_file() -> Result<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(dist()?)? {
        let path = entry?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if name.starts_with("house-key-self-check-") && name.ends_with(".html") {
            found.push(path);
        }
    }
    match found.as_slice() {
        [one] => Ok(one.clone()),
        _ => Err(format!("there should be one such file: {found:?}").into()),
    }
}

fn dist() -> Result<PathBuf> {
    let folder = std::env::var("SELF_CHECK_DIST").map_err(
        |_| "SELF_CHECK_DIST is not set: run the journeys by `cargo xtask test journeys`",
    )?;
    Ok(folder.into())
}

fn read(folder: &Path, prefix: &str, files: &mut Files) -> Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            read(&entry.path(), &format!("{name}/"), files)?;
        } else {
            files.insert(name, std::fs::read(entry.path())?);
        }
    }
    Ok(())
}

fn lock(state: &Mutex<State>) -> MutexGuard<'_, State> {
    // A journey that failed while it held the lock is told of elsewhere.
    state.lock().unwrap_or_else(PoisonError::into_inner)
}

fn answer(mut stream: &TcpStream, state: &Mutex<State>) {
    let _ = stream.set_read_timeout(Some(Duration::from_secs(30)));
    let mut lines = BufReader::new(stream)
        .lines()
        .map_while(std::result::Result::ok);
    let Some(first) = lines.next() else { return };
    lines.take_while(|line| !line.is_empty()).for_each(drop);
    let address = first.split(' ').nth(1).unwrap_or_default();
    let mood = lock(state).mood;
    let refused = match mood {
        Mood::Cut => return,
        Mood::Refusing(status) => Some(status),
        Mood::Slow(by) => {
            thread::sleep(by);
            None
        }
        Mood::Well => None,
    };
    let bytes = lock(state).answer(address, refused);
    let _ = stream.write_all(&bytes);
}

impl State {
    fn answer(&self, address: &str, refused: Option<&str>) -> Vec<u8> {
        let path = address.split(['?', '#']).next().unwrap_or_default();
        let name = path.strip_prefix(&self.under).map(|name| match name {
            "" => "index.html",
            name => name,
        });
        let found = name.and_then(|name| Some((name, self.files.get(name)?)));
        let (status, kind, content) = match (refused, found) {
            (Some(status), _) => (status, "text/plain", "refused".as_bytes()),
            (None, Some((name, content))) => ("200 OK", kind(name), content.as_slice()),
            (None, None) => ("404 Not Found", "text/plain", "not found".as_bytes()),
        };
        let mut head = format!(
            "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nConnection: close\r\n",
            content.len()
        );
        let within = path.strip_prefix(self.under.trim_end_matches('/'));
        for header in self.headers(within.unwrap_or_default()) {
            head.push_str(&format!("{header}\r\n"));
        }
        let mut bytes = format!("{head}\r\n").into_bytes();
        bytes.extend(content);
        bytes
    }

    /// The lines that the site's own file of headers has for a path: those under `/*` and those under the path itself.
    fn headers(&self, path: &str) -> Vec<String> {
        let file = self.files.get("_headers").cloned().unwrap_or_default();
        let mut found = Vec::new();
        let mut is_meant = false;
        for line in String::from_utf8_lossy(&file).lines() {
            match line.strip_prefix("  ") {
                None => is_meant = line == "/*" || line == path,
                Some(header) if is_meant => found.push(header.to_owned()),
                Some(_) => {}
            }
        }
        found
    }
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
        _ => "text/plain; charset=utf-8",
    }
}
