// Starts the guided check and puts it in the place of the list that stands in the page. When one of the pages of the
// second program is first opened, fetches that and its style too.
//
// The list comes back, with one line on top, when the check cannot start, and when it fails later. Whatever the check
// had shown by then is thrown away: half a result is worse than none. The words are in index.html; none are here.
"use strict";

(() => {
  const { script, wasm, roomsScript, roomsWasm, roomsStyle } = document.currentScript.dataset;
  const root = document.documentElement;
  const title = document.title;
  const here = new URL(".", document.baseURI).href;
  const PATIENCE_MS = 3000; // then the list is shown while the check still loads
  const LONGEST_START_MS = 20000; // from the program's start until it shows something

  let list = null; // the list, while it is out of the page
  let over = false;

  // The style sheet hides the list in this state, so that it does not flash by before the check appears.
  root.dataset.check = "starting";

  const parsed = new Promise((resolve) => {
    if (document.readyState !== "loading") resolve();
    else document.addEventListener("DOMContentLoaded", resolve, { once: true });
  });

  setTimeout(() => {
    if (root.dataset.check !== "starting") return;
    root.dataset.check = "slow";
    document.getElementById("still-loading").hidden = false;
  }, PATIENCE_MS);

  function addressOf(name) {
    return new URL(name, here).href;
  }

  async function start() {
    const program = import(addressOf(script));
    program.catch(() => {}); // told below, once the page is parsed
    await parsed;
    await (await program).default({ module_or_path: addressOf(wasm) });
    await somethingShown(document.getElementById("app"));
    if (over) return;
    root.dataset.check = "ready";
    list = document.getElementById("list");
    list.remove();
  }

  let rooms = null; // the second program, or the wait for it
  let attempts = 0;

  // The first program calls this. What could not be fetched is asked for again the next time.
  globalThis.selfCheckRooms = () => {
    rooms ??= startRooms().catch((fault) => {
      rooms = null;
      throw fault;
    });
    return rooms;
  };

  async function startRooms() {
    root.dataset.rooms = "loading";
    attempts += 1;
    try {
      // A browser may remember that a script could not be fetched, and by which address. The fragment makes it another.
      const address = addressOf(roomsScript + (attempts > 1 ? `#${attempts}` : ""));
      const [program] = await Promise.all([import(address), styled()]);
      await program.default({ module_or_path: addressOf(roomsWasm) });
      root.dataset.rooms = "ready";
      return program;
    } catch (fault) {
      root.dataset.rooms = "failed";
      throw fault;
    }
  }

  let style = null; // the second program's, or the wait for it

  function styled() {
    style ??= new Promise((resolve, reject) => {
      const link = document.createElement("link");
      link.rel = "stylesheet";
      link.href = addressOf(roomsStyle);
      link.onload = resolve;
      link.onerror = () => {
        link.remove();
        style = null;
        reject(new Error("no style"));
      };
      document.head.append(link);
    });
    return style;
  }

  function somethingShown(app) {
    return new Promise((resolve, reject) => {
      const look = () => {
        if (app.childElementCount === 0) return;
        observer.disconnect();
        resolve();
      };
      const observer = new MutationObserver(look);
      observer.observe(app, { childList: true });
      setTimeout(() => reject(new Error("nothing was shown")), LONGEST_START_MS);
      look();
    });
  }

  async function giveUp() {
    if (over) return;
    over = true;
    await parsed;
    const app = document.getElementById("app");
    // The person is leaving: the program has taken itself out of the page, and nothing may take its place.
    if (app === null) return;
    const started = root.dataset.check === "ready";
    // A copy without children has no listeners either: nothing of the failed program is called again.
    const empty = app.cloneNode(false);
    app.replaceWith(empty);
    if (list !== null) empty.after(list);
    document.title = title;
    root.dataset.check = "failed";
    document.getElementById("still-loading").hidden = true;
    const line = document.getElementById(started ? "has-stopped" : "could-not-start");
    line.hidden = false;
    line.focus();
    scrollTo(0, 0);
  }

  // An extension's fault, or the browser's own warning about layout, is no reason to throw the check away.
  function isOurs(fault) {
    if (typeof WebAssembly === "object" && fault instanceof WebAssembly.RuntimeError) return true;
    return fault instanceof Error && typeof fault.stack === "string" && fault.stack.includes(here);
  }

  addEventListener("self-check-failed", giveUp);
  addEventListener("error", (event) => {
    if (isOurs(event.error)) giveUp();
  });
  addEventListener("unhandledrejection", (event) => {
    if (isOurs(event.reason)) giveUp();
  });

  parsed.then(() => {
    document.querySelector("#list .leave").addEventListener("click", (event) => {
      event.preventDefault();
      location.replace("about:blank");
    });
  });

  start().catch(giveUp);
})();
