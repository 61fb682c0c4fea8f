// Answers for the page where there is no network. Registered only when the person asks to keep the page.
//
// It keeps one version whole: every file by the sum of what is in it, or none at all. Its own text holds those sums, so a
// new version of the page is a new worker to the browser. Two versions never mix: the page asks for its files by names
// that carry their sums, and a worker answers for its own names alone.
//
// With a network the page itself comes from there, so nobody is left with an old one, and a page that was taken down is
// down. It comes from what is kept where the network or the server fails, or is slower than a person's patience.
"use strict";

const FILES = { "fill": "files" };
const VERSION = "fill: version";

const scope = registration.scope;
const PAGE = "./";
const OURS = `self-check ${scope} `;
const CACHE = OURS + VERSION;
const PATIENCE_MS = 4000;

addEventListener("install", (event) => event.waitUntil(fetchAll()));
addEventListener("activate", (event) => event.waitUntil(takeOver()));
addEventListener("message", (event) => {
  if (event.data === "remove") event.waitUntil(remove());
  if (event.data === "store") event.waitUntil(storeAgain(event.ports[0]));
});
addEventListener("fetch", (event) => {
  const { request } = event;
  const address = request.url.split(/[?#]/, 1)[0];
  if (request.method !== "GET" || !address.startsWith(scope)) return;
  const name = address.slice(scope.length);
  if (request.mode === "navigate") {
    if (name === "" || name === "index.html") event.respondWith(page(request));
  } else if (Object.hasOwn(FILES, name)) {
    event.respondWith(file(name, request));
  }
});

let isRemoved = false;

// The browser refuses a file that does not fit its sum, and a new worker none of whose files may be missing. Nothing is
// stored before all is there, so that what an older worker keeps is never touched by one that fails.
async function fetchAll() {
  const entries = Object.entries(FILES);
  const responses = await Promise.all(
    entries.map(async ([name, integrity]) => {
      const response = await fetch(new URL(name, scope), { integrity, cache: "no-cache" });
      if (!response.ok || response.redirected) throw new Error(`${name}: ${response.status}`);
      return response;
    }),
  );
  const isWanted = await isWaitedFor();
  if (isRemoved || !isWanted) throw new Error("nobody waits for it");
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(entries.map(([name], place) => cache.put(new URL(name, scope), responses[place])));
  } catch (fault) {
    await caches.delete(CACHE);
    throw fault;
  }
}

// Who has asked for the page to be kept and left meanwhile leaves nothing behind. A newer version needs nobody.
async function isWaitedFor() {
  if (registration.active !== null) return true;
  const windows = await clients.matchAll({ includeUncontrolled: true, type: "window" });
  return windows.some((window) => window.url.startsWith(scope));
}

// The page asks for this when it is left. It may be gone before it could do it by itself.
async function remove() {
  isRemoved = true;
  await removeCaches(() => true);
  await registration.unregister();
}

// The page asks for this where a browser brings back a worker that was taken away while its page was open: it is not
// installed once more, and what it kept is gone.
async function storeAgain(port) {
  isRemoved = false;
  await fetchAll().catch(() => {}); // the page looks at what is there
  port.postMessage(null);
}

// Runs once no page of the version before is open any more.
async function takeOver() {
  await removeCaches((name) => name !== CACHE);
  await clients.claim();
}

async function removeCaches(isOver) {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && isOver(name)).map((name) => caches.delete(name)));
}

function kept(name) {
  return caches.match(new URL(name, scope), { cacheName: CACHE });
}

async function page(request) {
  const old = await kept(PAGE);
  if (!old) return fetch(request);
  const patience = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS, old));
  // From 500 on a server tells of its own trouble; anything else is its answer, also that the page is gone.
  const fresh = fetch(request).then((response) => (response.status < 500 ? response : old));
  return Promise.race([fresh.catch(() => old), patience]);
}

async function file(name, request) {
  return (await kept(name)) ?? fetch(request);
}
