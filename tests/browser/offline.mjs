// Camside kept on the device: without a server, from one version to the next, half a version, and the way back. Each
// test has a server and a copy of the page of its own, to be changed and stopped.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { appendFileSync, copyFileSync, rmSync } from "node:fs";
import path from "node:path";
import { given, item, items, openPage, rest, root, settled, siteWithStores, startServer, tap, usable } from "./page.mjs";

// The change of workers makes the page load anew, at times while it does so already: one of the two loads is given up.
const LOADED_TWICE = [/^request failed: http:\/\/localhost:\d+\/$/];
const OFFER = "A newer Camside is here. Nothing you entered is touched";

export const tests = {
  "opens without the server once it was visited": given({ page: false }, async ({ context }) => {
    await served(async ({ server, page }) => {
      await kept(page);
      server.stop();
      await page.reload();
      await usable(page);
      await tap(page, "Gear pair");
      assert.ok((await items(page)).some((one) => one.label === "Back"));
    }, context);
  }),

  "offers a newer version and takes it only when told": given({ page: false, expects: LOADED_TWICE }, async ({ context }) => {
    await served(async ({ site, page }) => {
      const before = await secondVisit(page);
      newVersion(site);
      await page.evaluate(async () => { globalThis.sameLoad = true; await (await navigator.serviceWorker.ready).update(); });
      await page.waitForFunction((offer) => camside.items().some((one) => one.label === offer && one.enabled), OFFER);
      await settled(page);
      await rest(300);
      assert.equal(await page.evaluate(() => globalThis.sameLoad), true, "it loaded anew by itself");
      const [x, y, width, height] = (await item(page, OFFER)).rect;
      await Promise.all([page.waitForEvent("load"), page.touchscreen.tap(x + width / 2, y + height / 2)]);
      await usable(page);
      assert.notEqual(await kept(page), before);
      await settled(page);
      assert.ok(!(await items(page)).some((one) => one.label === OFFER));
      assert.equal((await page.evaluate(() => caches.keys())).length, 1, "the version before is still kept");
    }, context);
  }),

  "another tab's newer version waits until nobody types here": given({ page: false, expects: LOADED_TWICE }, async ({ context }) => {
    await served(async ({ site, server, page }) => {
      await secondVisit(page);
      const other = await openPage(context, server.address);
      await settled(other);
      newVersion(site);
      await other.evaluate(async () => { await (await navigator.serviceWorker.ready).update(); });
      await page.bringToFront();
      await settled(page);
      await tap(page, "Bikes");
      await tap(page, "Add a bike");
      await tap(page, "Nickname");
      await page.keyboard.type("Brind");
      await page.evaluate(() => { globalThis.sameLoad = true; });
      await other.evaluate(async () => { (await navigator.serviceWorker.getRegistration()).waiting.postMessage("take over"); });
      await rest(1500);
      assert.equal(await page.evaluate(() => globalThis.sameLoad), true, "it was loaded anew in the middle of typing");
      await page.keyboard.type("le");
      const loaded = page.waitForEvent("load", { timeout: 15000 });
      await page.keyboard.press("Enter");
      await loaded;
      await usable(page);
    }, context);
  }),

  "keeps the version it has when the newer one comes in parts": given({ page: false }, async ({ context }) => {
    await served(async ({ site, page }) => {
      const before = await kept(page);
      newVersion(site);
      appendFileSync(path.join(site, "style.css"), "/* not what the list of this version says */");
      await page.evaluate(async () => { await (await navigator.serviceWorker.ready).update().catch(() => {}); });
      await until(page, async () => (await navigator.serviceWorker.getRegistration()).installing === null && (await caches.keys()).length === 1);
      assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).waiting), null);
      assert.deepEqual(await page.evaluate(() => caches.keys()), [`camside ${before}`]);
      await page.reload();
      await usable(page);
      assert.equal(await kept(page), before);
    }, context);
  }),

  "lets go of every kept version when the server says so, and keeps the records": given({ page: false, expects: LOADED_TWICE }, async ({ context }) => {
    await served(async ({ site, page }) => {
      await secondVisit(page);
      await page.evaluate(async () => (await import("./store.js")).save("try", new Uint8Array([7])));
      copyFileSync(path.join(root, "app-web/service_worker_off.js"), path.join(site, "service_worker.js"));
      await page.evaluate(async () => { await (await navigator.serviceWorker.ready).update(); });
      // Watched by a test the browser puts the change of workers off until the page is loaded again, at times twice.
      for (let loads = 0; loads < 5 && !(await nothingKept(page)); loads += 1) await page.reload();
      assert.ok(await nothingKept(page));
      await until(page, async () => (await (await import("./store.js")).load("try")).newest[0] === 7);
    }, context);
  }),

  async "can be put on a phone's home screen"({ page, context }) {
    await kept(page);
    const session = await context.newCDPSession(page);
    const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
    assert.deepEqual(installabilityErrors.map((one) => one.errorId).filter((one) => one !== "in-incognito"), []);
    const { errors } = await session.send("Page.getAppManifest");
    assert.deepEqual(errors, []);
  },
};

async function served(work, context) {
  const site = siteWithStores();
  const server = await startServer(site);
  try {
    await work({ site, server, page: await openPage(context, server.address) });
  } finally {
    server.stop();
    rmSync(site, { recursive: true });
  }
}

function newVersion(site) {
  appendFileSync(path.join(site, "style.css"), "/* newer */\n");
  execFileSync("cmake", [`-DSITE=${site}`, `-DTEMPLATE=${path.join(root, "app-web/service_worker.js")}`, "-P", path.join(root, "app-web/precache.cmake")]);
}

// Waits until this version is kept whole; → its name.
function kept(page) {
  return page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    const { port1, port2 } = new MessageChannel();
    active.postMessage("version", [port2]);
    return new Promise((resolve) => { port1.onmessage = (event) => resolve(event.data); });
  });
}

// From now on the page runs from the device; → the version's name.
async function secondVisit(page) {
  const version = await kept(page);
  await page.reload();
  await usable(page);
  return version;
}

function nothingKept(page) {
  return until(page, async () => (await caches.keys()).length === 0, 40).then(() => true, () => false);
}

// waitForFunction takes a promise itself for a yes. A question asked while the page loads anew is asked again.
async function until(page, holds, tries = 400) {
  let last = "it was never so";
  for (; tries > 0; tries -= 1) {
    if (await page.evaluate(holds).catch((error) => { last = error.message; })) return;
    await rest(50);
  }
  throw new Error(`never came true: ${holds}: ${last}`);
}
