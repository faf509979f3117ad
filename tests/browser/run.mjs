// Runs the browser tests: "ok<tab>name" or "failed<tab>name" for each, one browser, a fresh profile for every test. One that
// failed is tried once more, and says so.
import assert from "node:assert/strict";
import { rmSync } from "node:fs";
import { frames, openPage, PHONE, rest, settled, siteWithStores, startBrowser, startServer } from "./page.mjs";
import { tests as code } from "./code.mjs";
import { tests as display } from "./display.mjs";
import { tests as kill } from "./kill.mjs";
import { tests as log } from "./log.mjs";
import { tests as lookOver } from "./look_over.mjs";
import { tests as offline } from "./offline.mjs";
import { tests as parts } from "./parts.mjs";
import { tests as touch } from "./touch.mjs";
import { tests as typing } from "./typing.mjs";

const tests = {
  async "loads without a single error, warning or request elsewhere"({ page }) {
    await settled(page);
    assert.deepEqual(page.troubles, []);
  },

  async "draws again when touched"({ page }) {
    await settled(page);
    const before = await frames(page);
    await page.touchscreen.tap(195, 60);
    await settled(page);
    assert.ok(await frames(page) > before);
    assert.ok(await frames(page) < before + 60, `${await frames(page) - before} frames for one tap`);
  },

  async "hides its first words and shows the canvas once it can be used"({ page }) {
    assert.equal(await page.locator("#words").isVisible(), false);
    assert.equal(await page.locator("#canvas").isVisible(), true);
  },

  async "says what is missing without WebGL2"({ context, address }) {
    const page = await context.newPage();
    await page.addInitScript(() => {
      const real = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (kind, ...rest) { return kind === "webgl2" ? null : real.call(this, kind, ...rest); };
    });
    await page.goto(address);
    await page.locator("#state.trouble").waitFor();
    assert.match(await page.locator("#state").textContent(), /WebGL2/);
  },

  async "draws on after the graphics card took the picture away"({ page }) {
    await settled(page);
    const before = await page.screenshot();
    await page.evaluate(async () => {
      const gl = document.getElementById("canvas").getContext("webgl2");
      const lost = gl.getExtension("WEBGL_lose_context");
      lost.loseContext();
      await new Promise((resolve) => setTimeout(resolve, 200));
      lost.restoreContext();
    });
    await rest(500);
    await settled(page);
    assert.ok(before.equals(await page.screenshot()), "the picture differs");
  },

  async "is sent compressed, with the right types and the security headers"({ address }) {
    const wasm = await fetch(`${address}camside_web.wasm`, { headers: { "Accept-Encoding": "br" } });
    assert.equal(wasm.headers.get("content-type"), "application/wasm");
    assert.equal(wasm.headers.get("content-encoding"), "br");
    assert.equal(wasm.headers.get("x-content-type-options"), "nosniff");
    assert.match(wasm.headers.get("content-security-policy"), /script-src 'self' 'wasm-unsafe-eval';/);
    assert.equal((await fetch(`${address}../../scripts/serve`)).status, 404);
    assert.equal((await fetch(`${address}..%2f..%2fscripts/serve`)).status, 404);
  },

  async "keeps the newest bytes and those before them in the browser's database"({ page }) {
    const [newest, previous] = await page.evaluate(async () => {
      const store = await import("./store.js");
      await store.save("try", new Uint8Array([1, 2, 3]));
      await store.save("try", new Uint8Array([4]));
      const kept = await store.load("try");
      return [[...kept.newest], [...kept.previous]];
    });
    assert.deepEqual([newest, previous], [[4], [1, 2, 3]]);
  },

  ...log,
  ...code,
  ...kill,
  ...display,
  ...touch,
  ...typing,
  ...lookOver,
  ...parts,
  ...offline,
};

// What went wrong is printed either way; a machine that was busy for a moment is no fault of the page.
function onceMore(name, test) {
  console.log(`${name}: once more`);
  return run(name, test);
}

// True: it passed.
async function run(name, test) {
  if (!browser.isConnected()) browser = await startBrowser();  // one test's crash is not the next one's
  const context = await browser.newContext(PHONE);
  try {
    const page = await openPage(context, server.address);
    await test({ page, context, browser, address: server.address });
    return true;
  } catch (error) {
    console.log(String(error.stack ?? error).split("\n").slice(0, 12).join("\n"));
    return false;
  } finally {
    await context.close().catch(() => {});
  }
}

const chosen = process.argv[2] ?? "";
const site = siteWithStores();
const server = await startServer(site);
let browser = await startBrowser();
let failed = 0;
for (const [name, test] of Object.entries(tests).filter(([name]) => name.includes(chosen))) {
  const passed = await run(name, test) || await onceMore(name, test);
  console.log(`${passed ? "ok" : "failed"}\t${name}`);
  if (!passed) failed += 1;
}
await browser.close();
server.stop();
rmSync(site, { recursive: true });
process.exitCode = failed ? 2 : 0;  // 1 is what Node itself says when it could not go on
