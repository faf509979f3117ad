// Camside's service worker: the files of one version, kept on the device all together or not at all, and answered from there
// first. app-web/precache.cmake writes VERSION and FILES from the built page; a changed file is a new version.
const VERSION = "@VERSION@";
const FILES = {
@FILES@};
const OURS = "camside ";  // caches of other names are not touched; records live in the browser's database, not here
const CACHE = OURS + VERSION;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(removeOldVersions()));
self.addEventListener("fetch", (event) => {
  const name = keptName(event.request);
  if (name) event.respondWith(answer(name, event.request));
});
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
  if (event.data === "version") event.ports[0].postMessage(VERSION);
});

// A file that is not of this version (the server was changed meanwhile) fails all of it: no mixture is ever kept.
async function install() {
  const cache = await caches.open(CACHE);
  const kept = await Promise.allSettled(Object.entries(FILES).map(async ([name, hash]) => {
    const response = await fetch(name, { cache: "reload" });
    if (!response.ok || await hashOf(response.clone()) !== hash) throw new Error(`${name} is not of version ${VERSION}`);
    await cache.put(name, response);
  }));
  const failed = kept.find((one) => one.status === "rejected");
  if (!failed) return;
  await caches.delete(CACHE);
  throw failed.reason;
}

async function hashOf(response) {
  const digest = await crypto.subtle.digest("SHA-256", await response.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function removeOldVersions() {
  const old = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

function keptName(request) {
  if (request.method !== "GET" || !request.url.startsWith(self.registration.scope)) return null;
  if (request.mode === "navigate") return "index.html";
  const name = request.url.slice(self.registration.scope.length).split("?")[0];
  return name in FILES ? name : null;
}

// Should the browser have thrown the kept file away, the server's is as good as any.
async function answer(name, request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(name)) ?? fetch(request);
}
