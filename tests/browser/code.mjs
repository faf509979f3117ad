// A bike goes from one phone to another by its QR code: shown, photographed, opened, looked at, taken in.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { bring, given, item, items, openPage, resized, saved, settled, tap, toBikes, usable } from "./page.mjs";

const DEMO = "Show the demo bike (invented)";

// What a camera app would find in the picture.
function codeIn(picture) {
  const folder = mkdtempSync(path.join(tmpdir(), "camside-code-"));
  try {
    writeFileSync(path.join(folder, "screen.png"), picture);
    const read = spawnSync("zbarimg", ["-q", "--raw", "-Sdisable", "-Sqrcode.enable", path.join(folder, "screen.png")], { encoding: "utf8" });
    return (read.stdout ?? "").trim();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function showCode(page) {
  await toBikes(page);
  await tap(page, DEMO);
  await saved(page);
  await bring(page, "Show as QR code");
  await tap(page, "Show as QR code");
}

async function copyOf(page) {
  while ((await items(page)).some((one) => one.label === "Back")) await tap(page, "Back");
  await bring(page, "Save a copy");
  const [download] = await Promise.all([page.waitForEvent("download"), tap(page, "Save a copy")]);
  return readFileSync(await download.path());
}

const comes = (page, part) =>
  page.waitForFunction((part) => camside.items().some((one) => one.label.includes(part)), part, { timeout: 15000 });

export const tests = {
  async "a bike's QR code is read off the screen and gives another phone the same log, when its owner says so"({ page, newPhone, address }) {
    await showCode(page);
    const found = codeIn(await page.screenshot());
    assert.match(found, /^http:\/\/localhost:\d+\/#bike=2\d+$/);
    assert.ok(found.startsWith(address));
    const other = await newPhone();
    const asked = [];
    other.on("request", (request) => asked.push(request.url()));
    const phone = await openPage(other, found);
    await comes(phone, "A bike from a QR code");
    assert.equal(phone.url(), address, "the bike still stands in the address");
    await item(phone, "Take in 6 entries");
    assert.ok((await items(phone)).some((one) => one.label === "New bike: Brindle"));
    await tap(phone, "Back");
    await item(phone, DEMO);  // nothing was taken in unasked
    await phone.evaluate((hash) => { location.hash = hash; }, new URL(found).hash);  // the camera opens it once more
    await comes(phone, "A bike from a QR code");
    await tap(phone, "Take in 6 entries");
    await saved(phone);
    assert.ok((await copyOf(phone)).equals(await copyOf(page)), "the logs differ");
    await phone.reload();
    await usable(phone);
    await phone.waitForFunction(() => camside.whole());
    await settled(phone);
    assert.ok(!(await items(phone)).some((one) => one.label === "A bike from a QR code"), "it comes again with every load");
    assert.deepEqual(asked.filter((url) => /bike|\d{30}/.test(url)), []);
  },

  "the code can be read in both themes, lying, on a small phone and with large text": given({ density: 3 }, async ({ page }) => {
    await showCode(page);
    const upright = codeIn(await page.screenshot());
    assert.match(upright, /#bike=2\d+$/);
    for (const [width, height, density, colorScheme] of [
      [844, 390, 3, "dark"], [844, 390, 3, "light"], [320, 568, 2, "light"], [1440, 900, 1, "dark"], [390, 844, 3, "light"]]) {
      await page.emulateMedia({ colorScheme });
      await resized(page, width, height, density);
      assert.equal(codeIn(await page.screenshot()), upright, `${width}x${height} ${colorScheme}`);
    }
  }),

  async "a camera app opens the code in a tab of its own, which takes it in once it may write"({ page, newPhone, address }) {
    await showCode(page);
    const found = codeIn(await page.screenshot());
    const second = await newPhone();
    const open = await openPage(second, address);
    const other = await openPage(second, found);
    await comes(other, "New bike: Brindle");
    await tap(other, "Write here");
    await comes(other, "Take in 6 entries");
    await tap(other, "Take in 6 entries");
    await saved(other);
    await toBikes(open);
    await comes(open, "Brindle");
    await tap(other, "Saved: 6 entries taken in");  // Undo
    await saved(other);
    await comes(other, DEMO);
    await comes(open, "No bike yet");
    await tap(other, "Saved: 6 entries taken back");
    await comes(open, "Brindle");
  },

  "a code that was cut off on the way says so, and nothing else happens": given({ page: false }, async ({ context, address }) => {
    for (const fragment of ["#bike=2234", "#bike=", `#bike=2${"7".repeat(60000)}`, "#bike=hello", "#bike=9123"]) {
      const page = await openPage(context, address + fragment);
      await comes(page, "A bike from a QR code");
      const all = await items(page);
      assert.equal(all.find((one) => one.label === "Nothing new in it").enabled, false);
      assert.ok(all.some((one) => /QR code (can't be read|was made by a newer)/.test(one.label + one.value)), JSON.stringify(all));
      await page.close();
    }
  }),
};
