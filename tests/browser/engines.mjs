// usage: node tests/browser/engines.mjs [Firefox | WebKit]     needs a display: xvfb-run -a
// The page in the two engines beside Chromium's that phones have, Firefox's and WebKit's: it opens without a complaint, what
// is tapped and typed arrives, and is there again after a reload and after the browser was killed, without the server; and
// untouched it draws nothing. Every test of an engine goes on where the one before ended.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { startFirefox } from "./firefox.mjs";
import { frames, item, items, rest, saved, settled, startServer, tap, toBikes, usable } from "./page.mjs";
import { startWebkit } from "./webkit.mjs";

const SIZE = { width: 390, height: 844 };
const ENGINES = { Firefox: startFirefox, WebKit: startWebkit };
const NAME = "Brindle", LOGGED = "Odometer: 52345 km";
const UNTOUCHED_ms = 5000, PATIENCE_ms = 120000;

// The face of a Playwright page as far as page.mjs looks at it.
function faceOf(engine) {
  const page = {
    ...engine,
    evaluate: async (what) => JSON.parse(await engine.run(`(async () => JSON.stringify(await (${what})() ?? null))()`)),
    async waitForFunction(what) {
      for (const began = Date.now(); Date.now() - began < 60000; await rest(100)) if (await page.evaluate(what)) return;
      throw new Error(`it never came true: ${what}`);
    },
    touchscreen: {
      tap: (x, y) => engine.act({
        type: "pointer", id: "finger", parameters: { pointerType: engine.pointer },
        actions: [
          { type: "pointerMove", x: Math.round(x), y: Math.round(y) }, { type: "pointerDown", button: 0 },
          { type: "pause", duration: 50 }, { type: "pointerUp", button: 0 },
        ],
      }),
    },
    keyboard: {
      type: (text) => engine.act({
        type: "key", id: "keys",
        actions: [...text].flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]),
      }),
    },
  };
  return page;
}

async function opened(page) {
  await usable(page);
  await page.waitForFunction(() => camside.whole());
  await settled(page);
}

async function theBike(page) {
  await toBikes(page);
  await tap(page, NAME);
  assert.ok((await items(page)).some((one) => one.label === LOGGED), `"${LOGGED}" is gone`);
}

const tests = {
  async "opens without an error, a warning or a request elsewhere"({ page, address }) {
    await page.go(address);
    await opened(page);
    assert.equal(await page.evaluate(() => document.getElementById("canvas").width / devicePixelRatio), SIZE.width);
    const asked = await page.evaluate(() => performance.getEntriesByType("resource").map((one) => one.name));
    assert.deepEqual(asked.filter((one) => !one.startsWith(address)), []);
    assert.equal(asked.filter((one) => one.endsWith("camside_web.wasm")).length, 1, asked.join(" "));
    await page.evaluate(() => { navigator.serviceWorker.ready.then(() => { globalThis.kept = true; }); });
    await page.waitForFunction(() => globalThis.kept);
  },

  async "what is tapped and typed arrives, and is there again after a reload"({ page }) {
    for (const label of ["Settings", "Metric", "Bikes", "Add a bike", "Nickname"]) await tap(page, label);
    await page.keyboard.type(NAME);
    for (const label of ["Save", "Log odometer", ..."52345", "Done"]) await tap(page, label);
    await saved(page);
    await page.reload();
    await opened(page);
    await theBike(page);
    await tap(page, "Settings");
    assert.equal((await item(page, "Metric")).chosen, true);
  },

  async "a wheel turns what is under it, though the mouse has not moved since a tap"({ page }) {
    await tap(page, "Metric");
    const top = async () => (await item(page, "Metric")).rect[1];
    const before = await top();
    await page.act({ type: "wheel", id: "wheel", actions: [{ type: "scroll", x: 195, y: 420, deltaX: 0, deltaY: 120 }] });
    await settled(page);
    assert.ok(await top() < before, "it did not scroll");
  },

  async "draws nothing while untouched"({ page }) {
    await settled(page);
    const before = await frames(page);
    await rest(UNTOUCHED_ms);
    assert.equal(await frames(page), before);
  },

  async "is there with all of it after the browser was killed, without the server"({ page, server, again, address }) {
    server.stop();
    await page.kill();
    const next = await again();
    await next.go(address);
    await opened(next);
    await theBike(next);
  },
};

// → how many of its tests failed
async function tryEngine(name, start) {
  const profile = mkdtempSync(path.join(tmpdir(), "camside-engine-"));
  const server = await startServer();
  let page = null;
  const again = async () => (page = faceOf(await start(profile, SIZE)));
  let failed = 0;
  try {
    await again();
    for (const [what, test] of Object.entries(tests)) {
      const began = Date.now();
      const passed = await run(() => test({ page, server, again, address: server.address }), () => page.troubles());
      console.log(`${passed ? "ok" : "failed"}\t${name} ${page.version}: ${what} (${((Date.now() - began) / 1000).toFixed(1)} s)`);
      if (!passed) failed += 1;
    }
  } catch (error) {
    console.log(`failed\t${name} could not be started (scripts/setup installs it): ${error.message}`);
    failed += 1;
  }
  await page?.kill();
  server.stop();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  return failed;
}

function tooLong() {
  return new Promise((_, reject) => setTimeout(() => reject(new Error("it came to no end")), PATIENCE_ms).unref());
}

// True: it passed, and the browser's console has nothing against it.
async function run(test, troubles) {
  const before = troubles().length;
  try {
    await Promise.race([test(), tooLong()]);
    assert.deepEqual(troubles().slice(before), []);
    return true;
  } catch (error) {
    console.log(String(error.stack ?? error).split("\n").slice(0, 12).join("\n"));
    return false;
  }
}

// Both at once: most of the time they only wait.
const chosen = Object.entries(ENGINES).filter(([name]) => name.includes(process.argv[2] ?? ""));
const failed = await Promise.all(chosen.map(([name, start]) => tryEngine(name, start)));
process.exit(failed.some((count) => count > 0) ? 2 : 0);  // 1 is what Node itself says when it could not go on
