//! What the browser tells a screen reader about the whole page: its accessibility tree, in the order in which it is read.

use std::collections::{HashMap, HashSet};

use serde_json::{Value, json};

use crate::{Page, Result};

/// Roles of what is of no use to a listener without a name.
const NAMED: [&str; 12] = [
    "link",
    "button",
    "checkbox",
    "radio",
    "slider",
    "textbox",
    "combobox",
    "switch",
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
    /// Whether it is in a box that interrupts the reader, which may stand before the heading of the page.
    interrupts: bool,
}

/// A part of the page whose changes are read out wherever the reader is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Region {
    /// The browser's number for its element.
    element: i64,
    /// Whether it interrupts the reader (`assertive`) or waits (`polite`).
    pub urgency: String,
    /// What it says now.
    pub words: String,
}

impl Page {
    /// What is told without a name; parts of the page that are not told apart; levels of headings that are passed over;
    /// on a narrow screen, headings that are read in another order than they stand in; and regions that are meant to be
    /// read out when they change, of which a screen reader learns nothing.
    pub(crate) async fn faults_in_what_is_told(&self) -> Result<Vec<String>> {
        let answer = self.cdp("Accessibility.getFullAXTree", json!({})).await?;
        let tree = Tree::of(&answer);
        let told = tree.in_order();
        let has_started = self.run("return document.querySelector('#app > *') !== null;");
        let mut faults = faults_in(&told, has_started.await? == true);
        if self.look.borrow().width <= NARROW {
            let laid_out: Vec<String> = serde_json::from_value(self.run(HEADINGS_BY_PLACE).await?)?;
            let headings = told.iter().filter(|one| one.role == "heading");
            let read: Vec<&str> = headings.map(|one| &*one.name).collect();
            if read != laid_out {
                faults.push(format!(
                    "headings are read as {read:?} and stand as {laid_out:?}"
                ));
            }
        }
        let meant: Vec<String> = serde_json::from_value(self.run(REGIONS).await?)?;
        let mut told: Vec<String> = tree.regions().into_iter().map(|one| one.urgency).collect();
        told.sort_unstable();
        if told != meant {
            faults.push(format!("meant to be read out: {meant:?}; told: {told:?}"));
        }
        Ok(faults)
    }

    /// The regions that are read out when they change, in the order of the page.
    pub async fn regions(&self) -> Result<Vec<Region>> {
        let tree = self.cdp("Accessibility.getFullAXTree", json!({})).await?;
        Ok(Tree::of(&tree).regions())
    }

    /// Waits until words are read out in a region that was there before with other words. What comes into the page
    /// together with its region is often read to nobody; only what interrupts may come so.
    pub async fn must_be_read_out(&self, before: &[Region], words: &str) -> Result<()> {
        let what = format!("{words:?} is read out in one of {before:?}");
        self.wait_until(&what, async || {
            let now = self.regions().await?;
            Ok(now.iter().any(|region| {
                let was = before.iter().find(|was| was.element == region.element);
                region.words.contains(words)
                    && match was {
                        Some(was) => was.words != region.words,
                        None => region.urgency == "assertive",
                    }
            }))
        })
        .await
    }

    /// What can be pressed and is smaller than 24 by 24 pixels (WCAG 2.2, criterion 2.5.8), with its size. A box counts
    /// with its label. Links within a sentence are left out, as the criterion leaves them out; and so is what is drawn
    /// on a picture, of which a press takes hold from further away than its own outline.
    pub async fn small_targets(&self) -> Result<Vec<String>> {
        Ok(serde_json::from_value(self.run(SMALL_TARGETS).await?)?)
    }
}

/// Up to this width everything stands in one column.
const NARROW: u32 = 400;

/// Headings from the top of the page to its end, and from the left in one line.
const HEADINGS_BY_PLACE: &str = "
    const boxes = [...document.querySelectorAll('h1, h2, h3, h4')]
        .filter(heading => heading.checkVisibility())
        .map(heading => [heading.getBoundingClientRect(), heading.textContent.trim()]);
    boxes.sort(([a], [b]) => a.top - b.top || a.left - b.left);
    return boxes.map(([, text]) => text);";

/// How urgent each region is meant to be, sorted. One that is laid out nowhere is of no use, and so is counted; only what
/// stands on another page, or is folded away, is not.
const REGIONS: &str = "
    return [...document.querySelectorAll('[role=status], [role=alert], [aria-live]')]
        .filter(one => !one.closest('[hidden], details:not([open])'))
        .map(one => one.matches('[role=alert], [aria-live=assertive]') ? 'assertive' : 'polite').sort();";

const SMALL_TARGETS: &str = "
    const small = [];
    const isInSentence = link => {
        if (getComputedStyle(link).display !== 'inline') return false;
        let around = link.parentElement;
        while (getComputedStyle(around).display === 'inline') around = around.parentElement;
        const rest = around.cloneNode(true);
        rest.querySelectorAll('a').forEach(other => other.remove());
        return /\\p{L}/u.test(rest.textContent);
    };
    for (const one of document.querySelectorAll('a[href], button, input, select, summary, textarea, [tabindex=\"0\"]')) {
        if (one.ownerSVGElement) continue;
        const target = one.closest('label') ?? one;
        const box = target.getBoundingClientRect();
        if (one.getClientRects().length === 0 || one.matches('.skip:not(:focus)')) continue;
        if (one.matches('a') && isInSentence(one)) continue;
        if (box.width < 24 || box.height < 24) small.push(`${one.outerHTML.slice(0, 80)} ${box.width}x${box.height}`);
    }
    return small;";

/// The accessibility tree, by the numbers of its nodes.
struct Tree<'a> {
    root: Option<&'a Value>,
    nodes: HashMap<&'a str, &'a Value>,
}

impl<'a> Tree<'a> {
    fn of(answer: &'a Value) -> Self {
        let nodes = || answer["nodes"].as_array().into_iter().flatten();
        Self {
            root: nodes().next(),
            nodes: nodes()
                .filter_map(|node| Some((node["nodeId"].as_str()?, node)))
                .collect(),
        }
    }

    /// A node and what is below it, in the order in which it is read.
    fn below(&self, node: &'a Value) -> Vec<&'a Value> {
        let mut found = Vec::new();
        let mut ahead = vec![node];
        while let Some(node) = ahead.pop() {
            found.push(node);
            let children = node["childIds"].as_array().into_iter().flatten().rev();
            ahead.extend(children.filter_map(|id| self.nodes.get(id.as_str()?).copied()));
        }
        found.retain(|node| node["ignored"] != true);
        found
    }

    fn all(&self) -> Vec<&'a Value> {
        self.root.map_or_else(Vec::new, |root| self.below(root))
    }

    fn in_order(&self) -> Vec<Told> {
        let all = self.all().into_iter();
        let alerts = all.filter(|node| node["role"]["value"] == "alert");
        let within: HashSet<String> = alerts
            .flat_map(|alert| self.below(alert))
            .map(|node| text(&node["nodeId"]))
            .collect();
        let told = |node: &Value| Told {
            role: text(&node["role"]["value"]),
            name: text(&node["name"]["value"]).trim().to_owned(),
            level: property(node, "level").and_then(Value::as_u64),
            interrupts: within.contains(&text(&node["nodeId"])),
        };
        self.all().into_iter().map(told).collect()
    }

    fn regions(&self) -> Vec<Region> {
        let region = |node: &'a Value| {
            let is_root = matches!(&*text(&node["role"]["value"]), "status" | "alert");
            let urgency = property(node, "live").filter(|_| is_root)?;
            let words = self.below(node).into_iter();
            let words = words.filter(|node| node["role"]["value"] == "StaticText");
            let words: Vec<String> = words.map(|node| text(&node["name"]["value"])).collect();
            Some(Region {
                element: node["backendDOMNodeId"].as_i64()?,
                urgency: text(urgency),
                words: words.join(" "),
            })
        };
        self.all().into_iter().filter_map(region).collect()
    }
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn property<'a>(node: &'a Value, name: &str) -> Option<&'a Value> {
    let mut properties = node["properties"].as_array()?.iter();
    let found = properties.find(|property| property["name"] == name)?;
    Some(&found["value"]["value"])
}

/// Where the check has not started, the page is the list alone: there is nothing to go to.
fn faults_in(told: &[Told], has_started: bool) -> Vec<String> {
    let mut faults = Vec::new();
    for one in told {
        if one.name.is_empty() && NAMED.contains(&&*one.role) {
            faults.push(format!("a {} has no name", one.role));
        }
    }
    let parts: &[&str] = match has_started {
        true => &["main", "banner", "contentinfo"],
        false => &["main"],
    };
    for part in parts {
        let count = told.iter().filter(|one| one.role == *part).count();
        if count != 1 {
            faults.push(format!("{count} times {part}"));
        }
    }
    let mut ways: Vec<&str> = told
        .iter()
        .filter(|one| one.role == "navigation")
        .map(|one| &*one.name)
        .collect();
    ways.sort_unstable();
    if ways.is_empty() && has_started || ways.windows(2).any(|pair| pair[0] == pair[1]) {
        faults.push(format!("ways to other pages, by name: {ways:?}"));
    }
    let headings = told.iter().filter(|one| one.role == "heading");
    let mut before = 0;
    for heading in headings.filter(|heading| !heading.interrupts) {
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
                interrupts: false,
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
        assert_eq!(faults_in(&told(&good), true), Vec::<String>::new());
        let nameless = [("heading", "A", Some(1)), ("button", "", None)];
        assert_eq!(faults_in(&told(&nameless), true).len(), 1);
        let passed_over = [("heading", "A", Some(1)), ("heading", "B", Some(3))];
        assert_eq!(faults_in(&told(&passed_over), true).len(), 1);
        assert_eq!(faults_in(&[], true).len(), 4);
        assert_eq!(faults_in(&[], false).len(), 1);
    }

    #[test]
    fn tree_is_read_depth_first() {
        let node = |id: &str, children: &[&str]| json!({ "nodeId": id, "childIds": children, "role": { "value": id }, "ignored": id == "b" });
        let answer = json!({ "nodes": [
            node("a", &["b", "d"]),
            node("d", &[]),
            node("b", &["c"]),
            node("c", &[])
        ] });
        let told = Tree::of(&answer).in_order();
        let roles: Vec<String> = told.into_iter().map(|one| one.role).collect();
        assert_eq!(roles, ["a", "c", "d"]);
    }

    #[test]
    fn region_is_told_once_with_all_its_words() {
        let node = |id: &str, role: &str, name: &str, children: &[&str]| {
            json!({ "nodeId": id, "backendDOMNodeId": 7, "childIds": children, "role": { "value": role },
                "name": { "value": name }, "properties": [{ "name": "live", "value": { "value": "polite" } }] })
        };
        let answer = json!({ "nodes": [
            node("a", "status", "", &["b"]),
            node("b", "paragraph", "", &["c", "d"]),
            node("c", "StaticText", "It is", &[]),
            node("d", "StaticText", "done.", &[]),
        ] });
        let regions = Tree::of(&answer).regions();
        assert_eq!(regions.len(), 1, "{regions:?}");
        assert_eq!(regions[0].words, "It is done.");
    }
}
