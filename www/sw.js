// Keeps the room on this device: every file of one version, under that version's name.
//
// Never half old, half new:
// - The build writes the version and the list of files, each with the hash of its content. A file that
//   is missing or another than listed (a server in the middle of being renewed) ends the installation,
//   and the version that was here goes on alone.
// - A new version waits beside the old one until a reader asks for it: nothing here makes it take over
//   by itself, since a case may be open.
// - A name stands for content. So a page that was loaded from an older version and is still open in
//   another tab when this one takes over goes on wholly old: what it asks for later is found under its
//   own names, which stay until no page runs that version any more.

const VERSION = "";
const FILES = [];

// Storage belongs to the whole host: a room under another of its paths keeps its own.
const OURS = `wallwise ${registration.scope} `;
const KEPT = OURS + VERSION;
// Only this may differ between versions under one name.
const FIXED = ["index.html"];
const NAMED_FOR_CONTENT = /-[0-9a-f]{16}\.\w+$/;

self.addEventListener("install", (event) => event.waitUntil(fill()));

// Pages that were loaded before there was a worker can be served from now on too.
self.addEventListener("activate", (event) => event.waitUntil(clients.claim()));

self.addEventListener("message", (event) => {
  if (event.data === "version") event.ports[0].postMessage(VERSION);
  if (event.data === "change over") skipWaiting();
  if (event.data === "tidy") event.waitUntil(tidy());
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = request.url.split(/[?#]/)[0];
  if (request.method !== "GET" || !address.startsWith(registration.scope)) return;
  const path = address.slice(registration.scope.length) || "index.html";
  if (FIXED.includes(path)) event.respondWith(find(request, path, KEPT));
  else if (NAMED_FOR_CONTENT.test(path)) event.respondWith(find(request, path));
});

// What is kept, or else what the server has.
async function find(request, path, cacheName) {
  return (await caches.match(path, { cacheName, ignoreVary: true })) ?? fetch(request);
}

// One file after the other, so that the page's own requests always have a way free.
async function fill() {
  const cache = await caches.open(KEPT);
  try {
    for (const [path, integrity] of FILES) {
      const answer = await fetch(path, { cache: "reload", integrity });
      if (!answer.ok) throw new Error(`${path}: the server answered ${answer.status}`);
      // Where a host leads from index.html to its folder, a browser would refuse the answer as it is.
      const { headers } = answer;
      await cache.put(path, answer.redirected ? new Response(answer.body, { headers }) : answer);
    }
  } catch (fault) {
    await caches.delete(KEPT);
    throw fault;
  }
}

// Lets go of versions that no page runs any more; each page asks for it once it stands. A page holds a
// lock in its version's name. One that does not hold it yet may be of any version, and while another
// version is on its way none is surely old.
async function tidy() {
  if (registration.installing || registration.waiting) return;
  const pages = await clients.matchAll({ type: "window", includeUncontrolled: true });
  const { held } = await navigator.locks.query();
  const running = held.map(({ name }) => name).filter((name) => name.startsWith(OURS));
  if (pages.filter(({ url }) => url.startsWith(registration.scope)).length > running.length) return;
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && name !== KEPT && !running.includes(name)) await caches.delete(name);
  }
}
