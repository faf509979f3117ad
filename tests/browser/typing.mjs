// Typing on a phone and with a keyboard: the real text field over the drawn one, and the keypad by keys, gauge and paste.
import assert from "node:assert/strict";
import { bring, hand, item, items, openPage, resized, saved, settled, tap, toBikes } from "./page.mjs";

const FIELD = ".text-field";
const NAME = "Nickname", OWN = "Your own engine";

async function newBike(page) {
  await toBikes(page);
  await tap(page, "Add a bike");
  await bring(page, NAME);
}

async function openName(page) {
  await tap(page, NAME);
  assert.ok(await page.evaluate((field) => document.activeElement?.matches(field), FIELD), "no real field has the keys");
}

const drawn = async (page) => (await item(page, NAME, "field")).value;
const isOpen = async (page) => (await page.locator(FIELD).count()) === 1;

async function isOverItsPlace(page, when, name = NAME) {
  const { x, y, width, height } = await page.locator(FIELD).boundingBox();
  const { box } = (await items(page)).find((one) => one.label === name && one.role === "field");
  for (const [i, real] of [x, y, width, height].entries()) assert.ok(Math.abs(real - box[i]) < 1, `${when}: ${[x, y, width, height]} over ${box}`);
  const view = page.viewportSize();
  assert.ok(y >= 0 && y + height <= view.height, `${when}: it stands at ${y} to ${y + height} of ${view.height}`);
}

async function pasted(page, text) {
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.evaluate((words) => navigator.clipboard.writeText(words), text);
  await page.keyboard.press("Control+v");
  await settled(page);
}

async function readings(page) {
  await tap(page, "Runout");
  await tap(page, "Enter readings");
  for (const label of ["Readings at marks round the turn", "12 marks", "Reading 1"]) {
    await bring(page, label);
    await tap(page, label);
  }
}

const typed = async (page, text) => { await page.keyboard.type(text); await settled(page); };
const keyed = async (page, name) => { await page.keyboard.press(name); await settled(page); };
const reading = async (page, number) => (await items(page)).find((one) => one.label === `Reading ${number}` && one.role === "field").value;

export const tests = {
  async "a tap on a name opens a real text field over it, within the tap"({ page }) {
    await newBike(page);
    const [x, y, width, height] = (await item(page, NAME)).rect;
    await page.evaluate((field) => {
      addEventListener("touchend", () => { globalThis.openedInTap = document.activeElement?.matches(field); });  // after the page's own
    }, FIELD);
    await page.touchscreen.tap(x + width / 2, y + height / 2);
    assert.equal(await page.evaluate(() => globalThis.openedInTap), true, "phones show their keyboard only within the tap");
    await settled(page);
    await isOverItsPlace(page, "opened");
    assert.equal(await page.locator(FIELD).getAttribute("aria-label"), NAME);
  },

  async "what is typed and pasted into a name is shown and saved"({ page, context, address }) {
    await newBike(page);
    await openName(page);
    await page.keyboard.insertText("Old ");
    await pasted(page, "Grün 🛵");
    assert.equal(await page.locator(FIELD).inputValue(), "Old Grün 🛵");
    await keyed(page, "Enter");
    assert.equal(await isOpen(page), false, "Enter closes it");
    assert.equal(await drawn(page), "Old Grün 🛵");
    await tap(page, "Save");
    await saved(page);
    await page.close();
    const again = await openPage(context, address);
    await settled(again);
    await toBikes(again);
    assert.ok((await items(again)).some((one) => one.label === "Old Grün 🛵"), "the bike is gone");
  },

  async "half composed words are not taken, finished ones are"({ page }) {
    await newBike(page);
    await openName(page);
    const session = await page.context().newCDPSession(page);
    for (const half of ["n", "ni", "にh", "にほ"]) {
      await session.send("Input.imeSetComposition", { text: half, selectionStart: half.length, selectionEnd: half.length });
      await settled(page);
      assert.equal(await page.locator(FIELD).inputValue(), half);
      assert.equal(await drawn(page), "", `"${half}" was taken`);
    }
    await session.send("Input.insertText", { text: "日本" });
    await settled(page);
    assert.equal(await drawn(page), "日本");
    await keyed(page, "Enter");
    assert.equal(await drawn(page), "日本");
  },

  async "Escape gives the old name back"({ page }) {
    await newBike(page);
    for (const [text, end, shown] of [["Brindle", "Enter", "Brindle"], [" the second", "Escape", "Brindle"]]) {
      await openName(page);
      await typed(page, text);
      assert.equal(await drawn(page), text === "Brindle" ? text : `Brindle${text}`, "it is shown with every letter");
      await keyed(page, end);
      assert.equal(await isOpen(page), false);
      assert.equal(await drawn(page), shown);
    }
    await item(page, "Save");  // Escape closed the field, not the form
  },

  async "a finger beside the field ends it and keeps what was typed"({ page }) {
    await newBike(page);
    await openName(page);
    await typed(page, "Brindle");
    await page.touchscreen.tap(195, 300);
    await settled(page);
    assert.equal(await isOpen(page), false);
    assert.equal(await drawn(page), "Brindle");
  },

  // The phone's keyboard makes the page lower (interactive-widget=resizes-content), a turned phone makes it wider.
  async "the field keeps to its place and stays in view when the page gets lower, or is turned"({ page }) {
    await newBike(page);
    await openName(page);
    for (const [width, height] of [[390, 500], [844, 390], [390, 340], [390, 844]]) {
      await resized(page, width, height);
      assert.ok(await isOpen(page));
      await isOverItsPlace(page, `${width} x ${height}`);
    }
  },

  // As an iPhone does it: the page stays as high as it was, what is seen of it gets lower.
  async "a field that the phone's keyboard would cover is brought into view"({ page }) {
    const [height, keyboard] = [664, 336];
    await resized(page, 390, height);
    await newBike(page);
    await tap(page, OWN);
    await tap(page, OWN, "field");
    assert.ok((await page.locator(FIELD).boundingBox()).y > 200);
    await page.evaluate((lower) => {
      const view = visualViewport;
      Object.defineProperty(view, "height", { get: () => innerHeight - lower });
      view.dispatchEvent(new Event("resize"));
    }, keyboard);
    await settled(page);
    await isOverItsPlace(page, "keyboard open", OWN);
    const box = await page.locator(FIELD).boundingBox();
    assert.ok(box.y + box.height <= height - keyboard, `the keyboard covers it: it ends at ${box.y + box.height}`);
    await typed(page, "Mine");
    await keyed(page, "Enter");
    assert.equal((await item(page, OWN, "field")).value, "Mine");
  },

  async "readings are typed by a keyboard, or a gauge that plays one: Enter moves on"({ page }) {
    await readings(page);
    await typed(page, "0.0031");
    await keyed(page, "Enter");
    assert.match(await reading(page, 1), /^0\.0031 in$/);
    await page.keyboard.type("0,0042\n", { delay: 0 });  // a gauge, all at once, with a decimal comma
    await settled(page);
    assert.match(await reading(page, 2), /^0,0042 in$/);
    await keyed(page, "Escape");
    assert.ok(!(await items(page)).some((one) => one.role === "key"), "Escape closes the keypad");
  },

  async "a reading is pasted with its unit"({ page }) {
    await readings(page);
    await pasted(page, "0.0031 in");
    await keyed(page, "Enter");
    assert.match(await reading(page, 1), /^0\.0031 in$/);
    await pasted(page, "0.08 mm\n");
    await keyed(page, "Enter");
    assert.match(await reading(page, 2), /^0\.08 mm$/);
  },

  async "a tap on erase takes a digit, a finger held on it takes all"({ page }) {
    await readings(page);
    for (const digit of ["1", "2", "3", "4"]) await tap(page, digit, "key");
    await tap(page, "Erase", "key");
    assert.match(await reading(page, 1), /^123\b/);
    const [x, y, width, height] = (await item(page, "Erase", "key")).rect;
    const finger = await hand(page);
    await finger.down([x + width / 2, y + height / 2]);
    await page.waitForFunction(() => camside.items().find((one) => one.label === "Reading 1" && one.role === "field").value === "");
    await finger.lift();
    await settled(page);
    assert.equal(await reading(page, 1), "");
  },
};
