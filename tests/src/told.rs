//! What the browser tells a screen reader about the whole page: its accessibility tree, in the order in which it is read.

use serde_json::{Value, json};

use crate::{Page, Result};

/// Roles of what is of no use to a listener without a name.
const NAMED: [&str; 10] = [
    "link",
    "button",
    "checkbox",
    "radio",
    "slider",
    "textbox",
    "image",
    "navigation",
    "region",
    "complementary",
];

/// One element as it is told.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Told {
    role: String,
    name: String,
    /// Of a heading.
    level: Option<u64>,
}

impl Page {
    /// Fails if what is told has no name, if the parts of the page are not told apart, if a level of headings is passed
    /// over, or if headings are read in another order than they stand in.
    pub async fn must_be_told_well(&self) -> Result<()> {
        let answer = self.cdp("Accessibility.getFullAXTree", json!({})).await?;
        let told = in_order(&answer["nodes"]);
        let mut faults = faults_in(&told);
        let laid_out: Vec<String> = serde_json::from_value(self.run(HEADINGS_BY_PLACE).await?)?;
        let read: Vec<&str> = told
            .iter()
            .filter(|one| one.role == "heading")
            .map(|one| &*one.name)
            .collect();
        if read != laid_out {
            faults.push(format!(
                "headings are read as {read:?} and stand as {laid_out:?}"
            ));
        }
        match faults.is_empty() {
            true => Ok(()),
            false => Err(format!("{:?}: {}", *self.look.borrow(), faults.join("\n")).into()),
        }
    }

    /// What can be pressed and is smaller than 24 by 24 pixels (WCAG 2.2, criterion 2.5.8), with its size. A box counts
    /// with its label. Links within a sentence are left out, as the criterion leaves them out.
    pub async fn small_targets(&self) -> Result<Vec<String>> {
        Ok(serde_json::from_value(self.run(SMALL_TARGETS).await?)?)
    }
}

/// Headings from the top of the page to its end, and from the left in one line.
const HEADINGS_BY_PLACE: &str = "
    const boxes = [...document.querySelectorAll('h1, h2, h3, h4')]
        .filter(heading => heading.getClientRects().length > 0)
        .map(heading => [heading.getBoundingClientRect(), heading.textContent.trim()]);
    boxes.sort(([a], [b]) => a.top - b.top || a.left - b.left);
    return boxes.map(([, text]) => text);";

const SMALL_TARGETS: &str = "
    const small = [];
    for (const one of document.querySelectorAll('a[href], button, input, summary, textarea')) {
        const target = one.closest('label') ?? one;
        const box = target.getBoundingClientRect();
        const inSentence = one.matches('a') && getComputedStyle(one).display === 'inline';
        if (one.getClientRects().length === 0 || inSentence || one.matches('.skip:not(:focus)')) continue;
        if (box.width < 24 || box.height < 24) small.push(`${one.outerHTML.slice(0, 80)} ${box.width}x${box.height}`);
    }
    return small;";

/// The elements of the tree that are told, in the order in which they are read.
fn in_order(nodes: &Value) -> Vec<Told> {
    let nodes: Vec<&Value> = nodes.as_array().into_iter().flatten().collect();
    let mut told = Vec::new();
    let mut ahead: Vec<&Value> = nodes.first().copied().into_iter().collect();
    while let Some(node) = ahead.pop() {
        if node["ignored"] != true {
            told.push(Told {
                role: text(&node["role"]["value"]),
                name: text(&node["name"]["value"]).trim().to_owned(),
                level: level_of(node),
            });
        }
        let children = node["childIds"].as_array().into_iter().flatten();
        let children: Vec<&Value> = children
            .filter_map(|id| nodes.iter().copied().find(|node| node["nodeId"] == *id))
            .collect();
        ahead.extend(children.into_iter().rev());
    }
    told
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn level_of(node: &Value) -> Option<u64> {
    let mut properties = node["properties"].as_array()?.iter();
    let level = properties.find(|property| property["name"] == "level")?;
    level["value"]["value"].as_u64()
}

fn faults_in(told: &[Told]) -> Vec<String> {
    let mut faults = Vec::new();
    for one in told {
        if one.name.is_empty() && NAMED.contains(&&*one.role) {
            faults.push(format!("a {} has no name", one.role));
        }
    }
    for part in ["main", "banner", "contentinfo", "navigation"] {
        let count = told.iter().filter(|one| one.role == part).count();
        if count != 1 {
            faults.push(format!("{count} times {part}"));
        }
    }
    let mut before = 0;
    for heading in told.iter().filter(|one| one.role == "heading") {
        let level = heading.level.unwrap_or(0);
        if level > before + 1 || level == 0 {
            faults.push(format!(
                "“{}” is of level {level} after {before}",
                heading.name
            ));
        }
        before = level;
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(parts: &[(&str, &str, Option<u64>)]) -> Vec<Told> {
        let frame = ["main", "banner", "contentinfo"].map(|role| (role, "", None));
        let nav = [("navigation", "Pages", None)];
        frame
            .iter()
            .chain(&nav)
            .chain(parts)
            .map(|&(role, name, level)| Told {
                role: role.to_owned(),
                name: name.to_owned(),
                level,
            })
            .collect()
    }

    #[test]
    fn faults_are_found() {
        let good = [
            ("heading", "A", Some(1)),
            ("link", "B", None),
            ("heading", "C", Some(2)),
        ];
        assert_eq!(faults_in(&told(&good)), Vec::<String>::new());
        let nameless = [("heading", "A", Some(1)), ("button", "", None)];
        assert_eq!(faults_in(&told(&nameless)).len(), 1);
        let passed_over = [("heading", "A", Some(1)), ("heading", "B", Some(3))];
        assert_eq!(faults_in(&told(&passed_over)).len(), 1);
        assert_eq!(faults_in(&[]).len(), 4);
    }

    #[test]
    fn tree_is_read_depth_first() {
        let node = |id: &str, children: &[&str]| json!({ "nodeId": id, "childIds": children, "role": { "value": id }, "ignored": id == "b" });
        let nodes = json!([
            node("a", &["b", "d"]),
            node("d", &[]),
            node("b", &["c"]),
            node("c", &[])
        ]);
        let roles: Vec<String> = in_order(&nodes).into_iter().map(|one| one.role).collect();
        assert_eq!(roles, ["a", "c", "d"]);
    }
}
