// The two parts of the page's program: all that the first can do with the rest held back, and what changes when it comes.
import assert from "node:assert/strict";
import { bring, given, item, items, openPage, resized, settled, tap } from "./page.mjs";

const COMING = "The rest of Camside is still on its way";
const EXAMPLE = "Show an example (invented)";
const AT_ONCE = ["Runout", "Gear lash (backlash)", "Gear pair"];
const LATER = ["Gears to order", "Pushrods", "Due", "Wear", "Life"];

// test({ page, come }): come() lets the rest through.
const withoutTheRest = (test) => given({ page: false }, async ({ context, address }) => {
  let come;
  const held = new Promise((resolve) => { come = resolve; });
  await context.route(/camside_rest/, (route) => held.then(() => route.continue()));
  const page = await openPage(context, address, false);
  await test({ page, come: async () => { come(); await page.waitForFunction(() => camside.whole()); await settled(page); } });
});

const labels = async (page) => (await items(page)).map((one) => one.label);
const tile = async (page, name) => (await items(page)).find((one) => one.label === name && one.role === "button");

export const tests = {
  "the first part measures, draws and keeps what is typed while the rest is held back": withoutTheRest(async ({ page, come }) => {
    for (const name of AT_ONCE) {
      await tap(page, name);
      await tap(page, EXAMPLE);
      assert.ok((await items(page)).some((one) => one.role === "drawing") || name === "Gear pair", `${name} shows no drawing`);
      await tap(page, "Working");
      await resized(page, 1440, 900);  // list and Working beside it
      await resized(page, 390, 844);
      await tap(page, "Back");
    }
    await tap(page, "Settings");
    await tap(page, "Metric");
    await tap(page, "Bench");
    await come();
    await tap(page, "Runout");
    assert.ok((await labels(page)).includes("Working"), "what was entered before the rest came is gone");
  }),

  "what needs the rest says so until it is here, and then can be used": withoutTheRest(async ({ page, come }) => {
    assert.ok((await labels(page)).includes(COMING));
    for (const name of LATER) assert.equal((await tile(page, name)).enabled, false, name);
    for (const place of ["Bikes", "Look-over"]) {
      await tap(page, place);
      assert.ok((await labels(page)).includes(COMING), place);
    }
    await resized(page, 1440, 900);
    await resized(page, 390, 844);
    await tap(page, "Bikes");
    await come();
    await page.waitForFunction(() => camside.items().some((one) => one.label.startsWith("Show the demo bike")));
    await tap(page, "Bench");
    assert.ok(!(await labels(page)).includes(COMING));
    for (const name of LATER) {
      await bring(page, name);
      await tap(page, name);
      await tap(page, EXAMPLE);
      await tap(page, "Back");
    }
  }),

  "the rest is asked for again until it comes": given({
    page: false, expects: [/camside_rest/, /Failed to load resource/],
  }, async ({ context, address }) => {
    let refused = 0;
    await context.addInitScript(() => {  // nobody waits for seconds
      const real = setTimeout;
      globalThis.setTimeout = (work, ms, ...rest) => real(work, ms / 20, ...rest);
    });
    await context.route(/camside_rest/, (route) => (refused += 1) < 3 ? route.abort() : route.continue());
    const page = await openPage(context, address);
    assert.ok(refused >= 3);
    await tap(page, "Bikes");
    await item(page, "Show the demo bike (invented)");
  }),
};
