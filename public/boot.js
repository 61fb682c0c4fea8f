// Starts the guided check and puts it in the place of the list that stands in the page. When one of the pages of the
// second program is first opened, fetches that too. Keeps the page for use without a network where a person asks for it.
//
// The list comes back, with one line on top, when the check cannot start, and when it fails later. Whatever the check
// had shown by then is thrown away: half a result is worse than none. The words are in index.html; none are here.
"use strict";

(() => {
  const { script, wasm, roomsScript, roomsWasm, roomsStyle, worker } = document.currentScript.dataset;
  const inside = globalThis.selfCheckInside; // both programs, where the page has everything inside
  const root = document.documentElement;
  const title = document.title;
  const here = new URL(".", document.baseURI).href;
  const PATIENCE_MS = 3000; // then the list is shown while the check still loads
  const LONGEST_START_MS = 20000; // from the program's start until it shows something
  const LEAVING_MS = 1000; // how long leaving may wait for what is kept to go; the page is blank by then

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
    const program = inside ? Promise.resolve(inside.check) : import(addressOf(script));
    program.catch(() => {}); // told below, once the page is parsed
    await parsed;
    await (await program).default({ module_or_path: inside ? inside.bytes("check") : addressOf(wasm) });
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
      const again = attempts > 1 ? `#${attempts}` : "";
      const styled = inside ? null : loadStyle(addressOf(roomsStyle));
      const [program] = await Promise.all([inside ? inside.rooms : import(addressOf(roomsScript + again)), styled]);
      await program.default({ module_or_path: inside ? inside.bytes("rooms") : addressOf(roomsWasm) });
      root.dataset.rooms = "ready";
      return program;
    } catch (fault) {
      root.dataset.rooms = "failed";
      throw fault;
    }
  }

  // Before the first style sheet, so that what that one says of narrow windows and paper holds.
  function loadStyle(address) {
    return new Promise((resolve, reject) => {
      if (document.querySelector(`link[href="${address}"]`)) return resolve();
      const link = document.createElement("link");
      link.rel = "stylesheet";
      link.href = address;
      link.addEventListener("load", resolve);
      link.addEventListener("error", () => {
        link.remove();
        reject(new Error("a style sheet is missing"));
      });
      document.querySelector("link[rel=stylesheet]").before(link);
    });
  }

  // The worker answers for the page where there is no network. It is there from when the person asks for it until the
  // person takes it away, or leaves by "Leave now". A page opened from a file cannot have one.
  const workers = worker && isSecureContext ? navigator.serviceWorker : undefined;
  // The one address that may become a worker, whatever is asked for.
  const policy = workers && globalThis.trustedTypes?.createPolicy("self-check", { createScriptURL: () => addressOf(worker) });

  let known; // what this page last saw of the worker
  let keeping; // the wait for a page that is being kept
  let isLeaving = false;

  async function registration() {
    const found = await workers.getRegistration(here);
    known = found?.scope === here ? found : undefined; // another site may stand above this one
    return known;
  }

  async function isKept() {
    const found = await registration();
    return Boolean(found?.active) && (await ownCaches()).length > 0;
  }

  async function keep() {
    const address = policy ? policy.createScriptURL("") : addressOf(worker);
    const made = await workers.register(address, { updateViaCache: "none" });
    known = made;
    if (isLeaving) return remove();
    const coming = made.installing ?? made.waiting;
    if (coming !== null && made.active === null) {
      await new Promise((resolve) => {
        coming.addEventListener("statechange", () => {
          if (coming.state === "activated" || coming.state === "redundant") resolve();
        });
      });
    }
    if (made.active === null) throw new Error("the page could not be kept");
    if ((await ownCaches()).length === 0) await storeAgain(made.active);
    if ((await ownCaches()).length === 0) return remove(); // a worker that holds nothing is no use to anybody
    nameManifest();
  }

  // Both at once: whoever leaves waits for neither. The worker does the same where this page may be gone before it is done.
  function remove() {
    if (isLeaving && known) {
      for (const each of [known.installing, known.waiting, known.active]) each?.postMessage("remove");
    }
    return Promise.all([removeCaches(), registration().then((found) => found?.unregister())]);
  }

  function storeAgain(active) {
    return new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = resolve;
      active.postMessage("store", [port2]);
    });
  }

  async function removeCaches() {
    await Promise.all((await ownCaches()).map((name) => caches.delete(name)));
  }

  // Another site of this name may stand at another path: each puts its own into the names of its caches.
  async function ownCaches() {
    return (await caches.keys()).filter((name) => name.startsWith(`self-check ${here} `));
  }

  // What a browser needs to install the page. Named only where the page is kept: others need not fetch it.
  function nameManifest() {
    if (document.querySelector("link[rel=manifest]")) return;
    for (const [rel, href] of [["manifest", "manifest.webmanifest"], ["apple-touch-icon", "icon-180.png"]]) {
      const link = document.createElement("link");
      link.rel = rel;
      link.href = href;
      document.head.append(link);
    }
  }

  // The programs call these two. The first says whether the page is kept after what was asked: "look", "keep" or
  // "remove"; it fails where it cannot be.
  globalThis.selfCheckKept = async (wish) => {
    if (!workers) throw new Error("a page cannot be kept here");
    if (wish === "keep") await (keeping = keep());
    if (wish === "remove") await remove();
    return isKept();
  };

  globalThis.selfCheckLeave = () => {
    isLeaving = true;
    const go = () => location.replace("about:blank");
    setTimeout(go, LEAVING_MS);
    // Each may be refused, as in a page opened from a file; then there is nothing to remove.
    Promise.allSettled([forgetKept(), workers && remove(), keeping]).then(go);
  };

  if (workers) isKept().then((kept) => kept && nameManifest(), () => {});

  // What keys and doors may have kept on this device goes; no program has to be there for it. The other tabs are told
  // first: one of them at work on it may let this one wait for longer than it is there.
  async function forgetKept() {
    const others = new BroadcastChannel("self-check");
    others.postMessage(null);
    others.close();
    await new Promise((done) => {
      const request = indexedDB.deleteDatabase("self-check");
      request.onsuccess = done;
      request.onerror = done;
    });
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
      document.body.replaceChildren();
      globalThis.selfCheckLeave();
    });
  });

  start().catch(giveUp);
})();
