// The canvas as the screen sees it: sharp at every density, right after every change of size, and at rest while nobody touches it.
import assert from "node:assert/strict";
import { openPage, PHONE, resized, rest, settled, tap } from "./page.mjs";

const sizes = (page) => page.evaluate(() => {
  const canvas = document.getElementById("canvas");
  const box = canvas.getBoundingClientRect();
  return { pixels: [canvas.width, canvas.height], box: [box.left, box.top, box.width, box.height], density: devicePixelRatio };
});

// Counts every frame and timer that is asked for from now on.
const countWishes = () => {
  globalThis.wishes = [];
  for (const name of ["requestAnimationFrame", "setTimeout", "setInterval", "requestIdleCallback"]) {
    const real = globalThis[name];
    globalThis[name] = (...given) => { globalThis.wishes.push(name); return real(...given); };
  }
};

async function wishesWithin(page, ms) {
  await settled(page);
  await page.evaluate(() => { globalThis.wishes.length = 0; });
  await rest(ms);
  return page.evaluate(() => globalThis.wishes);
}

export const tests = {
  async "has one canvas pixel for every pixel of the screen, whatever its density"({ page: first, address }) {
    for (const density of [1, 1.25, 2, 2.625, 3]) {
      const context = await first.context().browser().newContext({ ...PHONE, deviceScaleFactor: density });
      const page = await openPage(context, address, false);
      await settled(page);
      const { pixels, box } = await sizes(page);
      assert.deepEqual(box, [0, 0, 390, 844], `at ${density}`);
      assert.deepEqual(pixels, [Math.round(390 * density), Math.round(844 * density)], `at ${density}`);
      await context.close();
    }
  },

  async "follows a phone that is turned, a split screen and the browser's zoom"({ page }) {
    for (const [width, height] of [[844, 390], [390, 844], [390, 420], [320, 568]]) {
      await resized(page, width, height);
      assert.deepEqual((await sizes(page)).pixels, [width * 3, height * 3]);
    }
    // Zooming in makes CSS pixels larger: fewer of them, and more device pixels for each.
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setDeviceMetricsOverride", { width: 312, height: 675, deviceScaleFactor: 3.75, mobile: true });
    await page.waitForFunction(() => document.getElementById("canvas").width === 1170);
    await settled(page);
    assert.deepEqual((await sizes(page)).pixels, [1170, 2531]);
    await tap(page, "Setup");
  },

  async "asks for no frame and no timer while nobody touches it, on every place"({ context, address }) {
    await context.addInitScript(countWishes);
    const page = await openPage(context, address);
    for (const place of ["Bikes", "Look-over", "Setup", "Bench"]) {
      await tap(page, place);
      assert.deepEqual(await wishesWithin(page, place === "Bench" ? 10000 : 2000), [], place);
    }
    await page.touchscreen.tap(195, 60);
    await settled(page);
    assert.ok((await page.evaluate(() => globalThis.wishes)).includes("requestAnimationFrame"), "nothing was counted");
  },
};
