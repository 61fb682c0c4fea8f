//! A host of the finished site for one journey: under a path of its own, with the headers that the site is published
//! with. Its line can be cut, it can refuse or be slow, and its files can be exchanged.

use std::io::Write;
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use self_check_site::{Answer, Files, answer, read, read_request};

use crate::Result;

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
        let files = read(&dist()?)?;
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
                thread::spawn(move || answer_one(&stream, &state));
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

fn lock(state: &Mutex<State>) -> MutexGuard<'_, State> {
    // A journey that failed while it held the lock is told of elsewhere.
    state.lock().unwrap_or_else(PoisonError::into_inner)
}

fn answer_one(mut stream: &TcpStream, state: &Mutex<State>) {
    let Some(request) = read_request(stream) else {
        return;
    };
    let mood = lock(state).mood;
    let answer = match mood {
        Mood::Cut => return,
        // Without this a browser may keep "gone" for good.
        Mood::Refusing(status) => Answer {
            headers: vec![("Cache-Control".into(), "no-cache".into())],
            ..Answer::refusal(status)
        },
        Mood::Slow(by) => {
            thread::sleep(by);
            lock(state).answer(&request)
        }
        Mood::Well => lock(state).answer(&request),
    };
    let _ = stream.write_all(&answer.to_bytes());
}

impl State {
    fn answer(&self, request: &str) -> Answer {
        let address = request.split(' ').nth(1).unwrap_or_default();
        match address.starts_with(&self.under) {
            true => answer(&self.files, &request.replacen(&self.under, "/", 1)),
            false => Answer::refusal("404 Not Found"),
        }
    }
}
