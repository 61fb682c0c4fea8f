// Answers for the page where there is no network. Registered only when the person asks to keep the page.
//
// It keeps one version whole: every file by the sum of what is in it, or none at all. Its own text holds those sums, so a
// new version of the page is a new worker to the browser. Two versions never mix: the page asks for its files by names
// that carry their sums, and a worker answers for its own names alone.
//
// With a network the page itself comes from there, so nobody is left with an old one. It comes from what is kept where
// the network fails or is slower than a person's patience.
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

// The browser refuses a file that does not fit its sum, and a new worker none of whose files may be missing.
async function fetchAll() {
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(
      Object.entries(FILES).map(async ([name, integrity]) => {
        const response = await fetch(new URL(name, scope), { integrity, cache: "no-cache" });
        if (!response.ok || response.redirected) throw new Error(`${name}: ${response.status}`);
        await cache.put(new URL(name, scope), response);
      }),
    );
  } catch (fault) {
    await caches.delete(CACHE);
    throw fault;
  }
}

// Runs once no page of the version before is open any more.
async function takeOver() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
  await clients.claim();
}

function kept(name) {
  return caches.match(new URL(name, scope), { cacheName: CACHE });
}

async function page(request) {
  const old = await kept(PAGE);
  if (!old) return fetch(request);
  const patience = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS, old));
  const fresh = fetch(request).then((response) => (response.ok || response.type === "opaqueredirect" ? response : old));
  return Promise.race([fresh.catch(() => old), patience]);
}

async function file(name, request) {
  return (await kept(name)) ?? fetch(request);
}
