// Camside kept on the device: without a server, and when a newer version comes in parts. Each test has
// a server and a copy of the page of its own, to be changed and stopped.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { appendFileSync, cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { builtSite, items, openPage, rest, root, startServer, tap } from "./page.mjs";

export const tests = {
  async "opens without the server once it was visited"({ context }) {
    await served(async ({ server, page }) => {
      await kept(page);
      server.stop();
      const troubles = page.troubles.length;
      await page.reload();
      await usable(page);
      await tap(page, "Gear pair");
      assert.ok((await items(page)).some((one) => one.label === "Back"));
      assert.deepEqual(page.troubles.slice(troubles), []);
    }, context);
  },

  async "keeps the version it has when the newer one comes in parts"({ context }) {
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
  },

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
  const site = mkdtempSync(path.join(tmpdir(), "camside-site-"));
  cpSync(builtSite, site, { recursive: true });
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

function usable(page) {
  return page.waitForFunction(() => performance.getEntriesByName("usable").length > 0, null, { timeout: 60000 });
}

// waitForFunction takes a promise itself for a yes
async function until(page, holds) {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await page.evaluate(holds)) return;
    await rest(200);
  }
  throw new Error(`never came true: ${holds}`);
}
