//! Measures the site in the browser beside two other pages: `cargo xtask bench --page`.
//!
//! Each page is opened in a fresh browser, five times; what is told is the median. The pages are served by one server,
//! packed by gzip, so that bytes and times can be compared. Times depend on the machine: the ratios are what counts.

use std::process::ExitCode;

use self_check_tests::{Look, Page, Result, troubled_journey_at};
use serde_json::json;

const RUNS: usize = 5;

/// A page to measure, and by what it is known to be there.
struct Subject {
    name: &'static str,
    /// The variable that holds its address.
    address: &'static str,
    tail: &'static str,
    /// The first thing that can be used.
    usable: &'static str,
    /// Leads from the first question to the second; absent where there is none.
    next: Option<&'static str>,
}

const SUBJECTS: [Subject; 3] = [
    Subject {
        name: "this site",
        address: "SELF_CHECK_ADDRESS",
        tail: "#/check/0",
        usable: "main .opt input",
        next: Some("main form button[type=submit]"),
    },
    Subject {
        name: "bare yew",
        address: "SELF_CHECK_HELLO",
        tail: "",
        usable: "#hello",
        next: None,
    },
    Subject {
        name: "survey-core",
        address: "SELF_CHECK_SURVEY",
        tail: "",
        usable: ".sd-question input[type=radio]",
        next: Some(".sd-navigation__next-btn"),
    },
];

/// What is measured, in the order of [`Subject::measure`], with how it is told.
const MEASURES: [(&str, &str); 6] = [
    ("bytes by gzip", "B"),
    ("first question can be used", "ms"),
    ("longest task", "ms"),
    ("all long tasks", "ms"),
    ("answer to next page", "ms"),
    ("memory", "B"),
];

/// One run; what a page does not have is absent.
type Run = [Option<f64>; MEASURES.len()];

fn main() -> ExitCode {
    match measure_all() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn measure_all() -> Result<()> {
    let mut medians = Vec::new();
    for subject in &SUBJECTS {
        let runs: Result<Vec<Run>> = (0..RUNS).map(|_| subject.measure()).collect();
        medians.push(medians_of(&runs?));
    }
    println!(
        "| median of {RUNS} runs | {} | {} | {} | to {} | to {} |",
        SUBJECTS[0].name, SUBJECTS[1].name, SUBJECTS[2].name, SUBJECTS[1].name, SUBJECTS[2].name
    );
    println!("|---|---|---|---|---|---|");
    for (row, (name, unit)) in MEASURES.iter().enumerate() {
        let [ours, bare, library] = [0, 1, 2].map(|subject| medians[subject][row]);
        println!(
            "| {name} | {} | {} | {} | {} | {} |",
            told(ours, unit),
            told(bare, unit),
            told(library, unit),
            ratio(ours, bare),
            ratio(ours, library)
        );
    }
    Ok(())
}

impl Subject {
    fn measure(&self) -> Result<Run> {
        let site = std::env::var(self.address).map_err(|_| {
            format!(
                "{} is not set: run this by `cargo xtask bench --page`",
                self.address
            )
        })?;
        let mut run = Run::default();
        troubled_journey_at(&site, Look::PHONE, async |page| {
            run = self.look_at(page).await?;
            Ok(())
        })?;
        Ok(run)
    }

    async fn look_at(&self, page: &Page) -> Result<Run> {
        let probe = PROBE.replace("SELECTOR", &json!(self.usable).to_string());
        page.cdp("Page.enable", json!({})).await?;
        page.cdp(
            "Page.addScriptToEvaluateOnNewDocument",
            json!({ "source": probe }),
        )
        .await?;
        page.load_only(self.tail).await?;
        page.wait_until("the page can be used", async || {
            Ok(page.run("return probe.usable !== null;").await? == true)
        })
        .await?;
        // Tasks are told of a little later.
        tokio::time::sleep(std::time::Duration::from_millis(500)).await;
        let loaded = page.run(LOADED).await?;
        let number = |at: usize| loaded[at].as_f64();
        let next = match self.next {
            None => None,
            Some(next) => {
                let script = NEXT
                    .replace("SELECTOR", &json!(self.usable).to_string())
                    .replace("BUTTON", &json!(next).to_string());
                page.run(&script).await?.as_f64()
            }
        };
        page.run("performance.measureUserAgentSpecificMemory().then(found => probe.bytes = found.bytes);")
            .await?;
        page.cdp("HeapProfiler.collectGarbage", json!({})).await?;
        page.wait_until("the browser has counted the memory", async || {
            page.cdp("HeapProfiler.collectGarbage", json!({})).await?;
            Ok(page.run("return probe.bytes !== null;").await? == true)
        })
        .await?;
        let memory = page.run("return probe.bytes;").await?.as_f64();
        Ok([number(0), number(1), number(2), number(3), next, memory])
    }
}

/// Runs before the page does: notes when it can first be used, and every task longer than 50 ms.
const PROBE: &str = "
    globalThis.probe = { usable: null, longest: 0, long: 0, bytes: null };
    new PerformanceObserver(list => list.getEntries().forEach(task => {
        probe.long += task.duration;
        probe.longest = Math.max(probe.longest, task.duration);
    })).observe({ type: 'longtask', buffered: true });
    const look = () => document.querySelector(SELECTOR)
        ? requestAnimationFrame(() => probe.usable = performance.now())
        : requestAnimationFrame(look);
    look();";

const LOADED: &str = "
    const files = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')];
    const bytes = files.reduce((sum, file) => sum + file.encodedBodySize, 0);
    return [bytes, probe.usable, probe.longest, probe.long];";

/// Chooses the first answer, goes on, and waits until another question is laid out.
const NEXT: &str = "
    const shown = () => [...document.querySelectorAll(SELECTOR)].map(box => box.closest('label')?.textContent).join();
    const turn = () => new Promise(done => { const { port1, port2 } = new MessageChannel(); port1.onmessage = done; port2.postMessage(0); });
    document.querySelector(SELECTOR).click();
    await new Promise(done => setTimeout(done, 200));
    const before = shown();
    const begun = performance.now();
    document.querySelector(BUTTON).click();
    while (shown() === before || shown() === '') await turn();
    document.body.getBoundingClientRect();
    return performance.now() - begun;";

fn medians_of(runs: &[Run]) -> Run {
    let mut medians = Run::default();
    for (row, median) in medians.iter_mut().enumerate() {
        let mut values: Vec<f64> = runs.iter().filter_map(|run| run[row]).collect();
        values.sort_by(f64::total_cmp);
        *median = values.get(values.len() / 2).copied();
    }
    medians
}

fn told(value: Option<f64>, unit: &str) -> String {
    value.map_or("none".to_owned(), |value| match unit {
        "ms" => format!("{value:.1} ms"),
        _ => format!("{:.0} kB", value / 1000.0),
    })
}

fn ratio(ours: Option<f64>, other: Option<f64>) -> String {
    match (ours, other) {
        (Some(ours), Some(other)) if other > 0.0 => format!("{:.2}", ours / other),
        _ => String::new(),
    }
}
