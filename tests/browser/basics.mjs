// That the page opens, draws and says what is missing; how it is served; its database.
import assert from "node:assert/strict";
import { frames, given, settled } from "./page.mjs";

export const tests = {
  async "loads without a single error, warning or request elsewhere"({ page, troubles }) {
    await settled(page);
    await page.evaluate(() => { console.error("a planted fault"); });
    assert.deepEqual(troubles.splice(0), ["console: a planted fault ()"], "nothing else, and this is heard of");
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

  "says what is missing without WebGL2": given({ page: false }, async ({ context, address }) => {
    const page = await context.newPage();
    await page.addInitScript(() => {
      const real = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (kind, ...rest) { return kind === "webgl2" ? null : real.call(this, kind, ...rest); };
    });
    await page.goto(address);
    await page.locator("#state.trouble").waitFor();
    assert.match(await page.locator("#state").textContent(), /WebGL2/);
  }),

  "draws on after the graphics card took the picture away": given({ expects: [/CONTEXT_LOST_WEBGL/] }, async ({ page }) => {
    await settled(page);
    const before = await page.screenshot();
    await page.evaluate(async () => {
      const canvas = document.getElementById("canvas");
      const gl = canvas.getContext("webgl2");
      const lost = gl.getExtension("WEBGL_lose_context");
      lost.loseContext();
      await new Promise((resolve) => setTimeout(resolve, 200));
      const back = new Promise((resolve) => canvas.addEventListener("webglcontextrestored", resolve, { once: true }));
      lost.restoreContext();
      await back;  // the page has heard of it before
    });
    await settled(page);
    assert.ok(before.equals(await page.screenshot()), "the picture differs");
  }),

  "is sent compressed, with the right types and the security headers": given({ page: false }, async ({ address }) => {
    const wasm = await fetch(`${address}camside_web.wasm`, { headers: { "Accept-Encoding": "br" } });
    assert.equal(wasm.headers.get("content-type"), "application/wasm");
    assert.equal(wasm.headers.get("content-encoding"), "br");
    assert.equal(wasm.headers.get("x-content-type-options"), "nosniff");
    assert.match(wasm.headers.get("content-security-policy"), /script-src 'self' 'wasm-unsafe-eval';/);
    assert.equal((await fetch(`${address}../../scripts/serve`)).status, 404);
    assert.equal((await fetch(`${address}..%2f..%2fscripts/serve`)).status, 404);
  }),

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
};
