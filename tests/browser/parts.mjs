// The two parts of the page's program: all that the first can do with the rest held back, and what changes when it comes.
import assert from "node:assert/strict";
import { bring, item, items, openPage, PHONE, resized, settled, tap } from "./page.mjs";

const COMING = "The rest of Camside is still on its way";
const EXAMPLE = "Show an example (invented)";
const AT_ONCE = ["Runout", "Gear lash (backlash)", "Gear pair"];
const LATER = ["Gears to order", "Pushrods", "Due", "Wear", "Life"];

// test({ page, come }): come() lets the rest through.
async function withoutTheRest(browser, address, test) {
  let come;
  const held = new Promise((resolve) => { come = resolve; });
  await onFirstVisit(browser, (route) => held.then(() => route.continue()), async (context) => {
    const page = await openPage(context, address, false);
    await test({ page, come: async () => { come(); await page.waitForFunction(() => camside.whole()); await settled(page); } });
    assert.deepEqual(page.troubles, []);
  });
}

// Nothing is kept yet, and every request for the rest is answered by `answer`.
async function onFirstVisit(browser, answer, test) {
  const context = await browser.newContext(PHONE);
  await context.route(/camside_rest/, answer);
  await test(context);
  await context.close();
}

const labels = async (page) => (await items(page)).map((one) => one.label);
const tile = async (page, name) => (await items(page)).find((one) => one.label === name && one.role === "button");

export const tests = {
  async "the first part measures, draws and keeps what is typed while the rest is held back"({ browser, address }) {
    await withoutTheRest(browser, address, async ({ page, come }) => {
      for (const name of AT_ONCE) {
        await tap(page, name);
        await tap(page, EXAMPLE);
        assert.ok((await items(page)).some((one) => one.role === "drawing") || name === "Gear pair", `${name} shows no drawing`);
        await tap(page, "Working");
        await resized(page, 1440, 900);  // list and Working beside it
        await resized(page, 390, 844);
        await tap(page, "Back");
      }
      await tap(page, "Setup");
      await tap(page, "Metric");
      await tap(page, "Bench");
      await come();
      await tap(page, "Runout");
      assert.ok((await labels(page)).includes("Working"), "what was entered before the rest came is gone");
    });
  },

  async "what needs the rest says so until it is here, and then can be used"({ browser, address }) {
    await withoutTheRest(browser, address, async ({ page, come }) => {
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
    });
  },

  async "the rest is asked for again until it comes"({ browser, address }) {
    let refused = 0;
    await onFirstVisit(browser, (route) => (refused += 1) < 3 ? route.abort() : route.continue(), async (context) => {
      const page = await openPage(context, address);
      assert.ok(refused >= 3);
      await tap(page, "Bikes");
      await item(page, "Show the demo bike (invented)");
    });
  },
};
