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
  await tap(page, "Chains, spring-loaded tensioners");
  await bring(page, "Stone cold");
  await tap(page, "Stone cold");
  await tap(page, "Start the round");
}

const shows = async (page, part) => (await items(page)).some((one) => one.label.includes(part) || one.value.includes(part));
const asked = async (page) => (await items(page)).some((one) => one.label === "Didn't see" && one.press);

// The answer to the few first questions; how many there were.
async function answerFew(page, answer) {
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
    assert.equal(await answerFew(page, "Didn't see"), 8, "as many as fit five minutes");
    assert.ok(await shows(page, "You may stop here: "));
    assert.ok(await shows(page, "No offer yet"));
    await bring(page, "Enter my prices");
    await tap(page, "Enter my prices");
    for (const row of ["Tensioner shoes, spring-loaded", "Inner cam bearings, caged"]) {
      assert.ok(await shows(page, row), "what must be done stands first");
      await tap(page, "Take as mine");
    }
    await tap(page, "Done");
    const [sentence] = (await items(page)).filter((one) => one.label.startsWith("Offer "));
    assert.match(sentence.label, /^Offer [\d,]+ to [\d,]+, once 6 points that can end it are looked at: tensioner shoes \d+, inner cam bearings \d+, the rest [\d,]+$/);
    const result = (await items(page)).filter((one) => one.role === "text").map((one) => one.label);
    await saved(page);
    await page.close();
    const again = await openPage(context, address);
    await settled(again);
    assert.deepEqual((await items(again)).filter((one) => one.role === "text").map((one) => one.label), result, "after the page was loaded again");
  },

  async "an answer that ends it is said, and the bike bought becomes one with a log"({ page }) {
    await checkOver(page);
    assert.ok(!await shows(page, "ends it"), "short: the rest is a tap away");
    await tap(page, "More on this");
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
