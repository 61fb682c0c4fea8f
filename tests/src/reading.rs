//! Reading the page as its readers do: its visible text, and the roles and names that a screen reader is given.

use serde_json::{Value, json};

use crate::{Page, Result};

/// What the browser tells a screen reader about one element.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Node {
    /// Its role, for example `button`.
    pub role: String,
    /// Its accessible name.
    pub name: String,
    /// The browser's number for the element.
    pub(crate) element: i64,
}

impl Node {
    fn read(value: &Value) -> Option<Self> {
        if value["ignored"].as_bool() == Some(true) {
            return None;
        }
        Some(Self {
            role: value["role"]["value"].as_str()?.to_owned(),
            name: value["name"]["value"]
                .as_str()
                .unwrap_or_default()
                .to_owned(),
            element: value["backendDOMNodeId"].as_i64()?,
        })
    }
}

impl Page {
    /// The text a reader sees, in order.
    pub async fn visible_text(&self) -> Result<String> {
        self.text_of("document.body.innerText").await
    }

    /// The title of the page.
    pub async fn title(&self) -> Result<String> {
        Ok(self.driver.title().await?)
    }

    /// Waits until the text is to be seen.
    pub async fn wait_for_text(&self, text: &str) -> Result<()> {
        let seen = async || Ok(self.visible_text().await?.contains(text));
        self.wait_until(&format!("the page shows {text:?}"), seen)
            .await
    }

    /// Every element of a role, in the order of the page.
    pub async fn all(&self, role: &str) -> Result<Vec<Node>> {
        let document = self.cdp("DOM.getDocument", json!({ "depth": 0 })).await?;
        let question = json!({ "nodeId": document["root"]["nodeId"], "role": role });
        let answer = self.cdp("Accessibility.queryAXTree", question).await?;
        let nodes = answer["nodes"].as_array().into_iter().flatten();
        Ok(nodes.filter_map(Node::read).collect())
    }

    /// The words that describe the element that has the focus.
    pub async fn focused_describedby(&self) -> Result<String> {
        let words = self
            .run(
                "const ids = document.activeElement.getAttribute('aria-describedby') ?? '';
                 return ids.split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ');",
            )
            .await?;
        Ok(words.as_str().unwrap_or_default().to_owned())
    }

    /// The names of every element of a role, in the order of the page.
    pub async fn names(&self, role: &str) -> Result<Vec<String>> {
        let nodes = self.all(role).await?;
        Ok(nodes.into_iter().map(|node| node.name).collect())
    }

    /// Waits for the one element of this role and name. The name may be its beginning, up to the end of a word, since a
    /// hint often follows; two that fit are an error, unless one fits exactly.
    pub async fn find(&self, role: &str, name: &str) -> Result<Node> {
        let found = async || Ok(!matches!(pick(&self.all(role).await?, name), Picked::None));
        let waited = self
            .wait_until(&format!("there is a {role} named {name:?}"), found)
            .await;
        let nodes = self.all(role).await?;
        match pick(&nodes, name) {
            Picked::One(node) => Ok(node.clone()),
            Picked::Several => Err(format!(
                "more than one {role} is named {name:?}: {:?}",
                names(&nodes)
            )
            .into()),
            Picked::None => match waited {
                Err(error) => Err(format!("{error}; there are {:?}", names(&nodes)).into()),
                Ok(()) => Err(format!("the {role} named {name:?} has gone again").into()),
            },
        }
    }

    /// The element that has the focus: `RootWebArea` when none has.
    pub async fn focused(&self) -> Result<Node> {
        let object = self
            .cdp(
                "Runtime.evaluate",
                json!({ "expression": "document.activeElement" }),
            )
            .await?;
        let question = json!({ "objectId": object["result"]["objectId"], "fetchRelatives": false });
        let answer = self.cdp("Accessibility.getPartialAXTree", question).await?;
        let node = answer["nodes"].get(0).and_then(Node::read);
        // The body, which has the focus when nothing else has, is no element to a screen reader.
        Ok(node.unwrap_or(Node {
            role: "RootWebArea".into(),
            name: String::new(),
            element: 0,
        }))
    }

    /// The `id` of the element that has the focus.
    pub async fn focused_id(&self) -> Result<String> {
        self.text_of("document.activeElement?.id ?? ''").await
    }

    /// Whether the eye can see what has the focus: it, or the row it stands in, has an outline of two pixels or more
    /// (WCAG 2.2, criterion 2.4.13).
    pub async fn focus_shows(&self) -> Result<bool> {
        let shows = "return [document.activeElement, document.activeElement.closest('label')].some(element => {
            const style = element && getComputedStyle(element);
            return style && style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2; });";
        Ok(self.run(shows).await? == true)
    }

    /// Whether the page is no wider than its window: nothing has to be read by moving sideways.
    pub async fn fits_its_width(&self) -> Result<bool> {
        let fits = "document.documentElement.scrollWidth <= document.documentElement.clientWidth";
        Ok(self.run(&format!("return {fits};")).await? == true)
    }
}

enum Picked<'a> {
    None,
    One(&'a Node),
    Several,
}

fn pick<'a>(nodes: &'a [Node], name: &str) -> Picked<'a> {
    let exact: Vec<&Node> = nodes.iter().filter(|node| node.name == name).collect();
    let fitting = match exact.is_empty() {
        true => nodes
            .iter()
            .filter(|node| begins_with(&node.name, name))
            .collect(),
        false => exact,
    };
    match fitting.as_slice() {
        [] => Picked::None,
        [node] => Picked::One(node),
        _ => Picked::Several,
    }
}

fn begins_with(whole: &str, beginning: &str) -> bool {
    let rest = whole.strip_prefix(beginning);
    rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
}

fn names(nodes: &[Node]) -> Vec<&str> {
    nodes.iter().map(|node| &*node.name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nodes(names: &[&str]) -> Vec<Node> {
        let node = |name: &&str| Node {
            role: "radio".into(),
            name: (*name).to_owned(),
            element: 1,
        };
        names.iter().map(node).collect()
    }

    #[test]
    fn exact_name_goes_before_a_beginning() {
        let nodes = nodes(&["Nothing", "Nothing I know of"]);
        assert!(matches!(pick(&nodes, "Nothing"), Picked::One(node) if node.name == "Nothing"));
    }

    #[test]
    fn beginning_ends_with_a_word() {
        let nodes = nodes(&["No", "Not sure. We will tell you how"]);
        assert!(matches!(pick(&nodes, "Not sure"), Picked::One(_)));
        assert!(matches!(pick(&nodes, "N"), Picked::None));
    }

    #[test]
    fn two_that_fit_are_told() {
        assert!(matches!(
            pick(&nodes(&["Change A", "Change B"]), "Change"),
            Picked::Several
        ));
    }
}
