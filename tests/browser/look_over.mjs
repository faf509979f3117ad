// A buyer beside a bike, on a phone: the facts, the round in single taps, the result, and the bike that becomes his.
import assert from "node:assert/strict";
import { bring, items, openPage, saved, settled, tap } from "./page.mjs";

async function type(page, digits, then) {
  for (const digit of digits) await tap(page, digit, "key");
  await tap(page, then);
}

async function checkOver(page) {
  await tap(page, "Look-over", "place");
  await tap(page, "Check over a bike");
  await tap(page, "Model year");
  await type(page, "2003", "Next");
  await type(page, "41300", "Next");
  await type(page, "7500", "Done");
  await tap(page, "Stone cold");
  await tap(page, "Start the round");
}

const shows = async (page, part) => (await items(page)).some((one) => one.label.includes(part) || one.value.includes(part));
const asked = async (page) => (await items(page)).some((one) => one.label === "Didn't see" && one.press);

// What stands under "Fair offer".
async function offer(page) {
  const labels = (await items(page)).map((one) => one.label);
  return labels[labels.indexOf("Fair offer") + 1];
}

// The answer to every question; how many there were.
async function answerAll(page, answer) {
  let count = 0;
  for (; await asked(page); count += 1) {
    assert.ok(count < 60, "the round has no end");
    await tap(page, answer);
  }
  return count;
}

export const tests = {
  async "a buyer answers in single taps, makes the prices his, and reads an offer"({ page, context, address }) {
    await checkOver(page);
    const questions = await answerAll(page, "Didn't see");
    assert.ok(questions >= 15, `${questions} questions`);
    assert.ok(await shows(page, "placeholder prices"));
    assert.equal(await offer(page), "No offer yet");
    await tap(page, "Look at the prices");
    await tap(page, "These prices are mine");
    assert.ok(!await shows(page, "placeholder prices"));
    assert.match(await offer(page), /^[\d,]+ to [\d,]+$/);
    const result = (await items(page)).filter((one) => one.role === "text").map((one) => one.label);
    await saved(page);
    await page.close();
    const again = await openPage(context, address);
    await settled(again);
    assert.deepEqual((await items(again)).filter((one) => one.role === "text").map((one) => one.label), result, "after the page was loaded again");
  },

  async "an answer that ends it is said, and the bike bought becomes one with a log"({ page }) {
    await checkOver(page);
    assert.ok(await shows(page, "ends it"), "the first question can end it");
    await tap(page, "No");
    await tap(page, "Walk away: the seller forbids a cold start");
    assert.ok(await shows(page, "Met: the seller forbids a cold start"));
    await bring(page, "It is mine now");
    await tap(page, "It is mine now");
    await saved(page);
    assert.ok(await shows(page, "Bike 1"));
    await bring(page, "Odometer: 41300 mi");
  },
};
