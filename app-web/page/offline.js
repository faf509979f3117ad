// Keeps Camside on this device, so that it opens without signal, and hears of newer versions. A newer version is offered; it
// takes over when its owner says so, never by itself and never while something is being saved.

const HOUR_ms = 3600 * 1000;  // at most so often is a newer version asked for while the page stays open

let registration = null;
let asked_ms = Date.now();
let loadAnew = () => {};
let taking = false;  // it was this tab that took the newer version

// told({ version, kept, update }) with every change: the version that runs, is it kept here, is a newer one waiting?
// allSaved() is a promise that nothing is being saved any more, atEase() one that nobody is in the middle of something.
export async function keepOffline(told, allSaved, atEase) {
  if (!("serviceWorker" in navigator)) return;
  loadAnew = () => allSaved().then(() => location.reload());
  // Another tab took the newer version: this one follows once nobody works in it. (On the first visit no worker runs this
  // page yet: nothing to load anew.)
  if (navigator.serviceWorker.controller)
    navigator.serviceWorker.addEventListener("controllerchange", () => (taking ? Promise.resolve() : atEase()).then(() => loadAnew()), { once: true });
  try {
    registration = await navigator.serviceWorker.register("service_worker.js", { updateViaCache: "none" });
  } catch (error) {
    console.info("not kept for use without signal:", error.message);
    return;
  }
  const tell = async () => told({
    version: await versionOf(registration.active),
    kept: registration.active !== null,
    // On the first visit nothing runs from the device yet, and a newer version does not wait.
    update: registration.waiting !== null && navigator.serviceWorker.controller !== null,
  });
  const follow = (worker) => worker?.addEventListener("statechange", tell);
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration.installing));
  document.addEventListener("visibilitychange", askForNewer);
  await tell();
}

function askForNewer() {
  if (document.hidden || Date.now() - asked_ms < HOUR_ms) return;
  asked_ms = Date.now();
  registration.update().catch(() => {});  // no signal: asked again another time
}

function versionOf(worker) {
  if (!worker) return "";
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (event) => resolve(String(event.data));
    worker.postMessage("version", [port2]);
  });
}

// The page loads anew as soon as the newer version has taken over.
export function takeUpdate() {
  const newer = registration?.waiting;
  taking = Boolean(newer);
  newer?.addEventListener("statechange", () => { if (newer.state === "activated") loadAnew(); });
  newer?.postMessage("take over");
}
