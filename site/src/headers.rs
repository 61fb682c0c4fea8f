//! The file `_headers` that common static hosts read.

/// Name of the file.
pub const HEADERS: &str = "_headers";

/// The headers that such a file gives to the file at `path`, which begins with `/`.
pub fn headers_for(text: &str, path: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut applies = false;
    for line in text.lines() {
        match line
            .strip_prefix("  ")
            .and_then(|header| header.split_once(": "))
        {
            Some((name, value)) if applies => found.push((name.to_owned(), value.to_owned())),
            Some(_) => {}
            None => applies = line == "/*" || line == path,
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_has_the_headers_of_all_and_its_own() {
        let text = "/*\n  A: 1\n/x\n  B: 2\n/y\n  B: 3\n";
        let values = |path: &str| {
            let found = headers_for(text, path).into_iter();
            found.map(|(_, value)| value).collect::<Vec<String>>()
        };
        assert_eq!(values("/x"), ["1", "2"]);
        assert_eq!(values("/nothing"), ["1"]);
    }
}
