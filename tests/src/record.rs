//! What the browser itself recorded: every request and every line in its console.

use serde_json::Value;

/// A request the page made or tried to make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Request {
    /// Where to.
    pub url: String,
    /// What for, in the browser's word, for example `Document` or `Fetch`.
    pub kind: String,
}

/// What was recorded on a journey so far.
#[derive(Debug, Clone, Default)]
pub struct Record {
    /// Requests until the page was ready, first to last, each load of it included.
    pub while_loading: Vec<Request>,
    /// Requests after that.
    pub after_ready: Vec<Request>,
    /// Lines in the console: the page's own, and the browser's about faults and broken policies.
    pub console: Vec<String>,
}

impl Record {
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
        let late = self.after_ready.iter();
        let late = late.map(|request| format!("asked after it was ready: {request:?}"));
        let console = self.console.iter();
        let console = console.map(|line| format!("wrote to the console: {line}"));
        foreign.chain(late).chain(console).collect()
    }
}

/// The request that an entry of the performance log tells of, if it tells of one over the network. The log begins with
/// the browser's own pages, and the page may make addresses for what it holds in memory; neither leaves the machine.
pub(crate) fn request_in(entry: &str) -> Option<Request> {
    let entry: Value = serde_json::from_str(entry).ok()?;
    let message = &entry["message"];
    let (url, kind) = match message["method"].as_str()? {
        "Network.requestWillBeSent" => (
            &message["params"]["request"]["url"],
            message["params"]["type"].as_str().unwrap_or("Other"),
        ),
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
    Some(Request {
        url: url.to_owned(),
        kind: kind.to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const SITE: &str = "http://127.0.0.1:1234/";

    fn entry(method: &str, params: &str) -> String {
        format!(r#"{{"message":{{"method":"{method}","params":{params}}},"webview":"1"}}"#)
    }

    fn sent(url: &str) -> Option<Request> {
        request_in(&entry(
            "Network.requestWillBeSent",
            &format!(r#"{{"request":{{"url":"{url}"}},"type":"Fetch"}}"#),
        ))
    }

    #[test]
    fn request_is_read_from_the_log() {
        let request = sent("http://127.0.0.1:1234/a.wasm");
        assert_eq!(
            request.map(|request| request.kind).as_deref(),
            Some("Fetch")
        );
    }

    #[test]
    fn socket_counts_as_a_request() {
        let socket = entry(
            "Network.webSocketCreated",
            r#"{"url":"wss://elsewhere.example/"}"#,
        );
        assert!(request_in(&socket).is_some());
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
        let elsewhere = sent("https://elsewhere.example/").into_iter().collect();
        let late = sent("http://127.0.0.1:1234/late").into_iter().collect();
        let record = Record {
            while_loading: elsewhere,
            after_ready: late,
            console: vec!["Refused to load".into()],
        };
        assert_eq!(record.complaints(SITE).len(), 3);
        assert!(Record::default().complaints(SITE).is_empty());
    }
}
