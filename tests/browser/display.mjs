// The canvas as the screen sees it: sharp at every density, right after every change of size, and at rest while nobody touches it.
import assert from "node:assert/strict";
import { frames, given, openPage, resized, rest, settled, tap, until } from "./page.mjs";

const sizes = (page) => page.evaluate(() => {
  const canvas = document.getElementById("canvas");
  const box = canvas.getBoundingClientRect();
  return { pixels: [canvas.width, canvas.height], box: [box.left, box.top, box.width, box.height], density: devicePixelRatio };
});

// Notes every frame and timer that is asked for from now on, and which of them are still to come.
const countWishes = () => {
  globalThis.wishes = [];
  globalThis.toCome = new Set();
  for (const [ask, takeBack] of [["requestAnimationFrame", "cancelAnimationFrame"], ["setTimeout", "clearTimeout"],
                                 ["setInterval", "clearInterval"], ["requestIdleCallback", "cancelIdleCallback"]]) {
    const [real, realBack] = [globalThis[ask], globalThis[takeBack]];
    globalThis[ask] = (work, ...rest) => {
      const handle = real((...told) => { if (ask !== "setInterval") toCome.delete(wish); work(...told); }, ...rest);
      const wish = `${ask} ${handle} ${rest}`;
      wishes.push(ask);
      toCome.add(wish);
      return handle;
    };
    globalThis[takeBack] = (handle) => {
      for (const wish of toCome) if (wish.startsWith(`${ask} ${handle} `)) toCome.delete(wish);
      realBack(handle);
    };
  }
};

// What the page asks for within this time, and what it has asked for before and still waits for.
async function wishesWithin(page, ms) {
  await settled(page);
  await until(async () => await page.evaluate(() => toCome.size) === 0, "no timer is to come", 5000).catch(() => {});
  await page.evaluate(() => { wishes.length = 0; });
  await rest(ms);
  return page.evaluate(() => [...wishes, ...toCome]);
}

export const tests = {
  "has one canvas pixel for every pixel of the screen, whatever its density": given({ page: false }, async ({ newPhone, address }) => {
    for (const density of [1, 1.25, 2, 2.625, 3]) {
      const context = await newPhone({ deviceScaleFactor: density });
      const page = await openPage(context, address, false);
      await settled(page);
      const { pixels, box } = await sizes(page);
      assert.deepEqual(box, [0, 0, 390, 844], `at ${density}`);
      assert.deepEqual(pixels, [Math.round(390 * density), Math.round(844 * density)], `at ${density}`);
      await context.close();
    }
  }),

  "follows a phone that is turned, a split screen and the browser's zoom": given({ density: 3 }, async ({ page }) => {
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
    await tap(page, "Settings");
  }),

  "asks for no frame and no timer while nobody touches it, on every place": given({ page: false }, async ({ context, address }) => {
    await context.addInitScript(countWishes);
    const page = await openPage(context, address);
    for (const place of ["Bikes", "Look-over", "Settings", "Bench"]) {
      await tap(page, place);
      assert.deepEqual(await wishesWithin(page, place === "Bench" ? 2000 : 300), [], place);
    }
    const before = await frames(page);
    await page.touchscreen.tap(195, 60);
    await until(async () => await frames(page) > before, "it draws when touched");
    assert.ok((await page.evaluate(() => wishes)).includes("requestAnimationFrame"), "nothing was counted");
  }),
};
