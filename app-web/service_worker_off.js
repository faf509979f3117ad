// The way back, should a kept version ever do harm: serve this file as service_worker.js. It removes every kept version and
// itself, at the latest when the page is opened again; from then on the page comes from the server. Records are in the
// browser's database and stay.
self.addEventListener("install", (event) => event.waitUntil(self.skipWaiting()));
self.addEventListener("activate", (event) => event.waitUntil(stop()));

async function stop() {
  for (const name of await caches.keys()) if (name.startsWith("camside ")) await caches.delete(name);
  await self.registration.unregister();
}
