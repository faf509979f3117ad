// What a person does with a finger: elements are found by their label through the page's read-only list of items.
import assert from "node:assert/strict";
import { bring, drag, fling, frames, given, glide, hand, item, items, openPage, rest, saved, settled, tap } from "./page.mjs";

// Twelve readings of a pinion shaft every 30°, in thousandths of an inch: 0.0015 in off centre, high at 60°, so that the
// needle swings 0.003 in in all.
const READINGS = Array.from({ length: 12 }, (_, i) => [30 * i, (1.5 * (1 + Math.cos(((30 * i - 60) * Math.PI) / 180))).toFixed(1)]);

async function key(page, text) {
  for (const letter of text) await tap(page, letter === "." ? "Decimal mark" : letter, "key");
}

async function bringAndTap(page, label) {
  await bring(page, label);
  await tap(page, label);
}

async function verdict(page) {
  const found = (await items(page)).find((one) => one.role === "verdict");
  assert.ok(found, "there is no verdict on screen");
  return found;
}

async function shownIn(page) {
  return (await items(page)).filter((one) => one.value).map((one) => `${one.label}: ${one.value}`);
}

const EXAMPLE = "Show an example (invented)";

async function longList(page) {
  await tap(page, "Runout");
  await tap(page, EXAMPLE);
}

async function pinch(page, ways) {
  const fingers = await hand(page);
  await fingers.down(...ways.map(([from]) => from));
  await glide(fingers, ways);
  await fingers.lift();
  await settled(page);
}

const rowOf = async (page) => (await items(page)).find((one) => one.role === "drawing").rect[1];
const whatIsSaid = async (page) => (await items(page)).filter((one) => one.press).map(({ label, value, chosen, enabled }) => [label, value, chosen, enabled]);

export const tests = {
  async "a tap presses once, a drag over a button presses nothing"({ page }) {
    await tap(page, "Settings");
    await tap(page, "Metric");
    assert.equal((await item(page, "Metric")).chosen, true);
    await tap(page, "Bench");
    await drag(page, [100, 400], [100, 250]);
    await item(page, "Runout");
  },

  async "a flung list coasts on after the finger has left, then rests"({ page }) {
    await longList(page);
    const said = await whatIsSaid(page);
    for (const [from, to] of [[560, 300], [560, 300], [300, 560]]) {
      const before = await rowOf(page);
      await fling(page, [195, from], [195, to]);
      await settled(page);
      const [moved, finger] = [Math.sign(to - from) * (await rowOf(page) - before), Math.abs(to - from)];
      assert.ok(moved > finger + 20, `it moved ${moved} px, the finger ${finger} px`);
      const drawn = await frames(page);
      await rest(200);
      assert.equal(await frames(page), drawn, "it still moves");
    }
    assert.deepEqual(await whatIsSaid(page), said, "something was pressed");
  },

  async "a finger put down on a coasting list stops it and presses nothing"({ page }) {
    await longList(page);
    const said = await whatIsSaid(page);
    await fling(page, [195, 560], [195, 300]);
    const finger = await hand(page);
    await finger.down([195, 400]);
    await rest(150);
    const stopped = await rowOf(page);
    await rest(300);
    assert.equal(await rowOf(page), stopped, "it moves under the finger");
    await finger.lift();
    await settled(page);
    assert.equal(await rowOf(page), stopped, "it went on after the finger");
    assert.deepEqual(await whatIsSaid(page), said, "something was pressed");
  },

  async "nothing stays pressed or lit after a touch"({ page }) {
    const aside = async () => { await page.touchscreen.tap(300, 30); await settled(page); };
    const differs = async (before, after) => assert.ok(before.equals(await page.screenshot()), `the picture differs after ${after}`);
    await tap(page, "Settings");
    await aside();
    const before = await page.screenshot();
    await tap(page, "Settings");
    await differs(before, "a tap on the place it is at");
    const [x, y, width, height] = (await item(page, "Metric")).rect;
    await drag(page, [x + width / 2, y + height / 2], [x + width / 2 - 60, y + height / 2]);
    await differs(before, "a drag over a button");
    await tap(page, "Metric");
    assert.ok(!before.equals(await page.screenshot()), "the choice is not seen");
    await tap(page, "Inch");
    await differs(before, "a tap there and back");
  },

  async "two fingers on a drawing enlarge it, beside it they do nothing"({ page }) {
    await tap(page, "Runout");
    await tap(page, EXAMPLE);
    const drawing = async () => (await items(page)).find((one) => one.role === "drawing");
    const [x, y, width, height] = (await drawing()).rect;
    const [cx, cy] = [x + width / 2, y + height / 2];
    const said = await whatIsSaid(page);
    const whole = await page.screenshot();
    const beside = (await items(page)).find((one) => one.press && one.visible && one.rect[1] > y + height + 70).rect;
    const by = beside[1] + beside[3] / 2;
    await pinch(page, [[[cx - 30, by], [cx - 120, by]], [[cx + 30, by], [cx + 120, by]]]);
    await pinch(page, [[[cx, cy], [cx, cy - 80]], [[cx, by], [cx, by + 40]]]);
    assert.deepEqual(await whatIsSaid(page), said, "something was pressed");
    assert.ok(whole.equals(await page.screenshot()), "the picture differs");
    await pinch(page, [[[cx - 40, cy], [cx - 120, cy - 30]], [[cx + 40, cy], [cx + 120, cy + 30]]]);
    assert.match((await drawing()).value, /^3\.\d times larger$/);
    assert.deepEqual((await drawing()).rect, [x, y, width, height], "the page moved");
    assert.equal(await page.evaluate(() => visualViewport.scale), 1, "the browser enlarged the page");
    assert.ok(!whole.equals(await page.screenshot()), "it looks as before");
    await drag(page, [cx, cy], [cx, cy + 100]);
    assert.deepEqual((await drawing()).rect, [x, y, width, height], "one finger moved the page, not the drawing");
    await tap(page, "Larger");
    await tap(page, "Whole drawing");
    assert.ok(whole.equals(await page.screenshot()), "whole again it looks different");
  },

  async "a pinch on a trackpad enlarges the drawing under it, and the browser enlarges nothing"({ page }) {
    await tap(page, "Runout");
    await tap(page, EXAMPLE);
    const drawing = async () => (await items(page)).find((one) => one.role === "drawing");
    const [x, y, width, height] = (await drawing()).rect;
    const session = await page.context().newCDPSession(page);
    const at = { x: x + width / 2, y: y + height / 2 };
    const wheel = (deltaY, modifiers) => session.send("Input.dispatchMouseEvent", { type: "mouseWheel", ...at, deltaX: 0, deltaY, modifiers });
    await page.mouse.move(at.x, at.y);
    const said = (await drawing()).value;
    const pinched = async (deltaY) => {
      for (let step = 0; step < 20; step += 1) await wheel(deltaY, 2);  // Ctrl, without its key
      await settled(page);
      return (await drawing()).value;
    };
    assert.match(await pinched(-10), /^[1-9]\.\d times larger$/);
    assert.deepEqual((await drawing()).rect, [x, y, width, height], "the page moved");
    assert.equal(await pinched(10), said, "and whole again");
    assert.equal(await page.evaluate(() => visualViewport.scale), 1, "the browser enlarged the page");
    await wheel(300, 0);
    await settled(page);
    assert.notDeepEqual((await drawing()).rect, [x, y, width, height], "without Ctrl it scrolls");
  },

  async "what was chosen is still chosen after the page is loaded again"({ page, context, address }) {
    await tap(page, "Settings");
    await tap(page, "Metric");
    await saved(page);
    await page.close();
    const again = await openPage(context, address);
    await settled(again);
    await tap(again, "Settings");
    assert.equal((await item(again, "Metric")).chosen, true);
    assert.equal((await item(again, "Inch")).chosen, false);
  },

  async "opens the version before a damaged one, and keeps the damaged one aside"({ page, context, address }) {
    await tap(page, "Gear pair");
    await tap(page, "Show an example (invented)");
    const shown = await shownIn(page);
    await saved(page);
    await page.evaluate(async () => (await import("./store.js")).save("current-job", new TextEncoder().encode('{"camside": 1, "rec')));
    await page.close();
    let again;
    for (const time of ["first", "second"]) {  // the second finds what setting aside left behind
      await again?.close();
      again = await openPage(context, address);
      await settled(again);
      const opened = await shownIn(again);
      for (const one of shown) assert.ok(opened.includes(one), `${time} time: ${one}`);
    }
    const kept = await again.evaluate(() => new Promise((resolve) => {
      indexedDB.open("camside").onsuccess = (event) => {
        event.target.result.transaction("records").objectStore("records").getAllKeys().onsuccess = (keys) => resolve(keys.target.result);
      };
    }));
    assert.ok(kept.some((name) => name.startsWith("current-job/damaged/")), kept.join(" "));
  },

  "says so when the browser has no room, and saves when it has again": given({
    expects: [/^console: save QuotaExceededError/],
  }, async ({ page }) => {
    await page.evaluate(() => {
      const real = IDBDatabase.prototype.transaction;
      globalThis.roomAgain = () => { IDBDatabase.prototype.transaction = real; };
      IDBDatabase.prototype.transaction = () => { throw new DOMException("no room", "QuotaExceededError"); };
    });
    await tap(page, "Gear pair");
    await tap(page, "Show an example (invented)");
    await tap(page, "Bench");
    await item(page, "Try again");
    await page.evaluate(() => roomAgain());
    await tap(page, "Try again");
    await saved(page);
    assert.ok(!(await items(page)).some((one) => one.label === "Try again"));
  }),

  async "follows the system's theme while the page is open"({ page }) {
    await page.emulateMedia({ colorScheme: "light" });
    await settled(page);
    const light = await page.screenshot();
    const before = await frames(page);
    await page.emulateMedia({ colorScheme: "dark" });
    await page.waitForFunction((count) => camside.frames() > count, before);
    await settled(page);
    assert.ok(!light.equals(await page.screenshot()), "both themes look the same");
  },

  async "twelve runout readings typed with a thumb give a verdict"({ page, context, address }) {
    await tap(page, "Runout");
    await tap(page, "Enter readings");
    await bringAndTap(page, "Readings at marks round the turn");
    await bringAndTap(page, "12 marks");
    await bringAndTap(page, "Reading 1");
    await tap(page, "thou");
    for (const [, needle] of READINGS) {
      await key(page, needle);
      await tap(page, "Next", "key");
    }
    await tap(page, "Done");
    await bringAndTap(page, "Graduation");
    await key(page, "0.1");
    await tap(page, "Done");
    const said = await verdict(page);
    await saved(page);
    assert.ok(["Within", "Outside", "Not proven"].some((word) => said.label.includes(word) || said.value.includes(word)), JSON.stringify(said));
    await page.close();
    const again = await openPage(context, address);
    await settled(again);
    const kept = await verdict(again);
    assert.deepEqual([kept.label, kept.value], [said.label, said.value]);
  },
};
