// The bikes' log in the browser: kept, full, refused, in several tabs, carried away and brought back, and killed.
import assert from "node:assert/strict";
import { bring, item, items, openPage, rest, saved, settled, tap } from "./page.mjs";

const DEMO = "Show the demo bike (invented)";

async function key(page, text) {
  for (const letter of text) await tap(page, letter, "key");
}

async function addDemo(page) {
  await tap(page, "Bikes");
  await tap(page, DEMO);
  await saved(page);
}

async function logOdometer(page, digits) {
  await tap(page, "Log odometer");
  await key(page, digits);
  await tap(page, "Done");
  await saved(page);
}

async function again(page, context, address) {
  await page.close();
  const next = await openPage(context, address);
  await settled(next);
  await tap(next, "Bikes");
  return next;
}

const shows = async (page, part) => (await items(page)).some((one) => one.label.includes(part) || one.value.includes(part));

export const tests = {
  async "a bike and its odometer are still there after the page is loaded again"({ page, context, address }) {
    await addDemo(page);
    await logOdometer(page, "52345");
    const next = await again(page, context, address);
    await tap(next, "Brindle");
    await item(next, "Odometer: 52345 mi");
    assert.deepEqual(next.troubles, []);
  },
};
