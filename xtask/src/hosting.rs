//! The headers a site is to be served with, as the file `_headers` that common static hosts read. The server of this
//! program and the hosts of the journeys read it too: they are walked under the very file that is published.

use crate::dist::{Files, is_named_by_content};
use crate::policy;

/// A block for all files, and one for each on how long it may be kept. No file stands in two blocks with one header:
/// hosts differ in which of two they would send.
pub fn headers_file(files: &Files) -> String {
    let mut text = String::from("/*\n");
    for (name, value) in policy::headers() {
        text.push_str(&format!("  {name}: {value}\n"));
    }
    text.push_str(&format!("/\n  Cache-Control: {}\n", policy::ASK_ANEW));
    for name in files.keys() {
        let keeping = if is_named_by_content(name) {
            policy::KEEP
        } else {
            policy::ASK_ANEW
        };
        text.push_str(&format!("/{name}\n  Cache-Control: {keeping}\n"));
    }
    text
}

#[cfg(test)]
mod tests {
    use self_check_site::headers_for;

    use super::*;

    fn sample() -> String {
        let names = ["index.html", "check-0123456789abcdef.wasm", "worker.js"];
        headers_file(&names.map(|name| (name.to_owned(), Vec::new())).into())
    }

    fn keeping(path: &str) -> Vec<String> {
        let headers = headers_for(&sample(), path).into_iter();
        headers
            .filter(|(name, _)| name == "Cache-Control")
            .map(|(_, value)| value)
            .collect()
    }

    #[test]
    fn only_what_is_named_by_content_is_kept_without_asking() {
        assert_eq!(keeping("/check-0123456789abcdef.wasm"), [policy::KEEP]);
        for path in ["/", "/index.html", "/worker.js"] {
            assert_eq!(keeping(path), [policy::ASK_ANEW], "{path}");
        }
    }

    #[test]
    fn every_path_gets_the_policy_once() {
        for path in ["/", "/worker.js", "/nothing"] {
            let headers = headers_for(&sample(), path);
            let policies = headers
                .iter()
                .filter(|(name, _)| name == "Content-Security-Policy");
            assert_eq!(policies.count(), 1, "{path}");
            assert!(headers.len() >= policy::headers().len());
        }
    }

    /// What servers send `always` goes with an error too: a file that is missing during an update would be so for a year.
    #[test]
    fn guide_lets_no_error_be_kept() {
        let guide = include_str!("../../docs/hosting.md");
        let lines: Vec<&str> = guide
            .lines()
            .filter(|line| line.contains("Cache-Control "))
            .collect();
        assert_eq!(lines.len(), 3);
        for line in lines {
            assert!(!line.contains("always"), "{line}");
        }
    }

    #[test]
    fn guide_for_other_servers_names_the_same_headers() {
        let guide = include_str!("../../docs/hosting.md");
        for (name, value) in policy::headers() {
            assert!(
                guide.matches(&value).count() >= 2 && guide.matches(name).count() >= 2,
                "docs/hosting.md: {name}: {value}"
            );
        }
    }
}
