//! What the browser itself recorded: every request and every line in its console.

use serde_json::Value;

/// A request the page made or tried to make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Request {
    /// Where to.
    pub url: String,
    /// What for, in the browser's word, for example `Document` or `Fetch`.
    pub kind: String,
    /// The address the page had moved to when it asked; empty since it was loaded.
    pub at: String,
}

impl Request {
    /// Whether it is for the site's second program, by the names its files have.
    pub fn is_second_part(&self, site: &str) -> bool {
        let file = self.url.strip_prefix(site);
        file.is_some_and(|file| file.starts_with("rooms-"))
    }
}

/// What the addresses of the second program's pages begin with.
const ROOMS: [&str; 5] = ["#/learn", "#/distance", "#/picture", "#/about", "#/keys"];

/// What an entry of the browser's log tells, as far as it is of interest here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Event {
    /// The page asked for something.
    Asked(Request),
    /// The page went to another address without loading anew, or was loaded.
    Moved(String),
}

/// What was recorded on a journey so far.
#[derive(Debug, Clone, Default)]
pub struct Record {
    /// Requests until the page was ready, first to last, each load of it included.
    pub while_loading: Vec<Request>,
    /// Requests after that.
    pub after_ready: Vec<Request>,
    /// The address that the page last moved to.
    at: String,
    /// Lines in the console: the page's own, and the browser's about faults and broken policies.
    pub console: Vec<String>,
}

impl Record {
    /// Takes up an event; a request goes to the list that `requests` names.
    pub(crate) fn take(&mut self, event: Event, requests: fn(&mut Self) -> &mut Vec<Request>) {
        match event {
            Event::Moved(at) => self.at = at,
            Event::Asked(request) => {
                let at = self.at.clone();
                requests(self).push(Request { at, ..request });
            }
        }
    }

    /// Requests for the second program, first to last.
    pub fn for_second_part(&self, site: &str) -> Vec<&Request> {
        let all = self.while_loading.iter().chain(&self.after_ready);
        all.filter(|request| request.is_second_part(site)).collect()
    }

    /// Whether a request is for the second program and made because one of its pages was opened. Its module follows its
    /// script, also when the reader has gone on by then.
    fn may_be_late(&self, request: &Request, site: &str) -> bool {
        let opened = |request: &Request| {
            ROOMS
                .iter()
                .any(|room| request.at.starts_with(&format!("{site}{room}")))
        };
        let follows =
            request.url.ends_with(".wasm") && self.for_second_part(site).into_iter().any(opened);
        request.is_second_part(site) && (opened(request) || follows)
    }

    /// Requests to anywhere but the site's own origin.
    pub fn foreign(&self, site: &str) -> Vec<&Request> {
        let all = self.while_loading.iter().chain(&self.after_ready);
        all.filter(|request| !request.url.starts_with(site))
            .collect()
    }

    /// What makes this record not that of a page that keeps to itself; nothing if it does.
    pub fn complaints(&self, site: &str) -> Vec<String> {
        let foreign = self.foreign(site).into_iter();
        let foreign = foreign.map(|request| format!("asked another origin: {request:?}"));
        let late = self
            .after_ready
            .iter()
            .filter(|request| !self.may_be_late(request, site));
        let late = late.map(|request| format!("asked after it was ready: {request:?}"));
        let console = self.console.iter();
        let console = console.map(|line| format!("wrote to the console: {line}"));
        foreign.chain(late).chain(console).collect()
    }
}

/// The move or the request that an entry of the performance log tells of, if it tells of one over the network. The log
/// begins with the browser's own pages, and the page may make addresses for what it holds in memory; neither leaves the
/// machine.
pub(crate) fn event_in(entry: &str) -> Option<Event> {
    let entry: Value = serde_json::from_str(entry).ok()?;
    let message = &entry["message"];
    let moved = |url: &Value| Some(Event::Moved(url.as_str()?.to_owned()));
    let (url, kind) = match message["method"].as_str()? {
        "Network.requestWillBeSent" => (
            &message["params"]["request"]["url"],
            message["params"]["type"].as_str().unwrap_or("Other"),
        ),
        "Page.navigatedWithinDocument" => return moved(&message["params"]["url"]),
        "Page.frameNavigated" => return moved(&message["params"]["frame"]["url"]),
        "Network.webSocketCreated" => (&message["params"]["url"], "WebSocket"),
        "Network.webTransportCreated" => (&message["params"]["url"], "WebTransport"),
        _ => return None,
    };
    let url = url.as_str()?;
    let within = [
        "chrome:",
        "chrome-untrusted:",
        "devtools:",
        "about:",
        "data:",
        "blob:",
    ];
    if within.iter().any(|scheme| url.starts_with(scheme)) {
        return None;
    }
    Some(Event::Asked(Request {
        url: url.to_owned(),
        kind: kind.to_owned(),
        at: String::new(),
    }))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    const SITE: &str = "http://127.0.0.1:1234/";

    fn entry(method: &str, params: &str) -> String {
        format!(r#"{{"message":{{"method":"{method}","params":{params}}},"webview":"1"}}"#)
    }

    fn sent(url: &str) -> Option<Event> {
        event_in(&entry(
            "Network.requestWillBeSent",
            &format!(r#"{{"request":{{"url":"{url}"}},"type":"Fetch"}}"#),
        ))
    }

    fn moved(tail: &str) -> Option<Event> {
        event_in(&entry(
            "Page.navigatedWithinDocument",
            &format!(r#"{{"url":"{SITE}{tail}"}}"#),
        ))
    }

    /// A page that was ready before these events.
    fn record(events: impl IntoIterator<Item = Option<Event>>) -> Record {
        let mut record = Record::default();
        for event in events.into_iter().flatten() {
            record.take(event, |record| &mut record.after_ready);
        }
        record
    }

    #[test]
    fn request_is_read_from_the_log() {
        let record = record([sent("http://127.0.0.1:1234/a.wasm")]);
        assert_eq!(record.after_ready[0].kind, "Fetch");
    }

    #[test]
    fn socket_counts_as_a_request() {
        let socket = entry(
            "Network.webSocketCreated",
            r#"{"url":"wss://elsewhere.example/"}"#,
        );
        assert!(event_in(&socket).is_some());
    }

    #[test]
    fn what_stays_in_the_browser_is_left_out() {
        for url in [
            "chrome://newtab/",
            "data:image/png;base64,AA",
            "blob:http://127.0.0.1/1",
        ] {
            assert_eq!(sent(url), None);
        }
    }

    #[test]
    fn page_that_talks_is_complained_about() {
        let mut record = record([sent("http://127.0.0.1:1234/late")]);
        record.take(sent("https://elsewhere.example/").unwrap(), |record| {
            &mut record.while_loading
        });
        record.console.push("Refused to load".into());
        assert_eq!(record.complaints(SITE).len(), 3);
        assert!(Record::default().complaints(SITE).is_empty());
    }

    #[test]
    fn second_part_may_be_asked_for_by_its_own_pages_alone() {
        let script = || sent("http://127.0.0.1:1234/rooms-1.js");
        let module = || sent("http://127.0.0.1:1234/rooms-2.wasm");
        let opened = record([moved("#/learn/1"), script(), moved("#/"), module()]);
        assert_eq!(opened.complaints(SITE), Vec::<String>::new());
        let unasked = record([moved("#/check/1"), script(), module()]);
        assert_eq!(unasked.complaints(SITE).len(), 2);
        let other = record([moved("#/learn"), sent("http://127.0.0.1:1234/late.js")]);
        assert_eq!(other.complaints(SITE).len(), 1);
    }
}
