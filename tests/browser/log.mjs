// The bikes' log in the browser: kept, full, refused, in several tabs, carried away and brought back, and killed.
import assert from "node:assert/strict";
import { bring, item, items, openPage, rest, saved, settled, tap } from "./page.mjs";

const WRITE_HERE = "Write here";
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

// Waits until it stands on screen, drawn without a finger.
function comes(page, part) {
  return page.waitForFunction((part) => camside.items().some((one) => one.label.includes(part)), part, { timeout: 15000 });
}

export const tests = {
  async "a bike and its odometer are still there after the page is loaded again"({ page, context, address }) {
    await addDemo(page);
    await logOdometer(page, "52345");
    const next = await again(page, context, address);
    await tap(next, "Brindle");
    await item(next, "Odometer: 52345 mi");
    assert.deepEqual(next.troubles, []);
  },

  async "one tab writes, the others follow, and another one can take over"({ page, context, address }) {
    await addDemo(page);
    const other = await openPage(context, address);
    await tap(other, "Bikes");
    await tap(other, "Brindle");
    await item(other, WRITE_HERE);
    assert.ok(!await shows(other, "Log odometer"), "a tab that does not write offers to");
    await logOdometer(page, "52345");
    await comes(other, "Odometer: 52345 mi");
    await tap(other, WRITE_HERE);
    await comes(other, "Log odometer");
    await logOdometer(other, "52467");
    await comes(page, "Odometer: 52467 mi");
    await item(page, WRITE_HERE);
    const next = await again(page, context, address);
    await tap(next, "Brindle");
    for (const one of ["Odometer: 52345 mi", "Odometer: 52467 mi", WRITE_HERE]) await item(next, one);
    await other.close();
  },

  async "a tab that has frozen is taken over too, and what it still had is kept and saved when it writes again"({ page, context, address }) {
    await addDemo(page);
    const other = await openPage(context, address);
    await tap(other, "Bikes");
    await tap(other, "Brindle");
    await page.evaluate(() => {  // deaf and without room, so that it neither hands over nor saves
      const real = IDBDatabase.prototype.transaction;
      globalThis.thaw = () => { IDBDatabase.prototype.transaction = real; };
      IDBDatabase.prototype.transaction = () => { throw new DOMException("no room", "QuotaExceededError"); };
      BroadcastChannel.prototype.dispatchEvent = () => {};
      globalThis.deaf = (event) => event.stopImmediatePropagation();
    });
    await tap(page, "Log odometer");
    await key(page, "52318");
    await tap(page, "Done");
    await comes(page, "Try again");
    await tap(other, WRITE_HERE);
    await comes(other, "Log odometer");
    await logOdometer(other, "52467");
    await page.evaluate(() => thaw());
    await comes(page, WRITE_HERE);
    assert.ok(await shows(page, "Odometer: 52318 mi"));
    await tap(page, WRITE_HERE);
    await comes(page, "Odometer: 52467 mi");
    await saved(page);
    assert.ok(!await shows(page, "Try again"));
    await comes(other, "Odometer: 52318 mi");
  },

  async "two tabs without Web Locks keep apart by the numbers of their records"({ context, address }) {
    await context.addInitScript(() => { Object.defineProperty(navigator, "locks", { value: undefined }); globalThis.BroadcastChannel = undefined; });
    const one = await openPage(context, address);
    await addDemo(one);
    const other = await openPage(context, address);
    await tap(other, "Bikes");
    await tap(other, "Brindle");
    await logOdometer(one, "52345");
    await logOdometer(other, "52467");
    await item(other, "Odometer: 52345 mi");
    const next = await again(one, context, address);
    await tap(next, "Brindle");
    for (const reading of ["52345", "52467"]) await item(next, `Odometer: ${reading} mi`);
  },

  async "says so when the browser has no room for the log, and saves when it has again"({ page }) {
    await addDemo(page);
    const session = await page.context().newCDPSession(page);
    const room = (quotaSize) => session.send("Storage.overrideQuotaForOrigin", { origin: new URL(page.url()).origin, ...(quotaSize === undefined ? {} : { quotaSize }) });
    await room(1);
    await tap(page, "Log odometer");
    await key(page, "52345");
    await tap(page, "Done");
    await comes(page, "Not saved");
    assert.ok(await shows(page, "it is full"));
    await room();
    await tap(page, "Try again");
    await saved(page);
    assert.ok(!await shows(page, "Not saved"));
  },

  async "says so when the browser keeps nothing, and still takes entries"({ context, address }) {
    await context.addInitScript(() => { IDBFactory.prototype.open = () => { throw new DOMException("private", "InvalidStateError"); }; });
    const page = await openPage(context, address);
    await addDemo(page);
    await tap(page, "Back");
    await item(page, "Brindle");
    assert.ok(await shows(page, "The log in this browser can't be read"));
    await item(page, "Try again");
  },

  async "says so when an older tab is in the way, and opens when that is closed"({ context, address }) {
    const old = await context.newPage();
    await old.goto(`${address}style.css`);
    await old.evaluate(() => new Promise((done) => {
      const request = indexedDB.open("camside", 1);
      request.onupgradeneeded = () => request.result.createObjectStore("records").put(new TextEncoder().encode('{"units":"metric"}'), "settings");
      request.onsuccess = () => { globalThis.held = request.result; done(); };
    }));
    const page = await openPage(context, address);
    await tap(page, "Bikes");
    await comes(page, "Not saved");
    assert.ok(await shows(page, "close it, then try again"));
    await old.close();
    await rest(300);
    await tap(page, "Try again");
    await comes(page, DEMO);
    await addDemo(page);
    const next = await again(page, context, address);
    await item(next, "Brindle");
    await tap(next, "Setup");
    assert.equal((await item(next, "Metric")).chosen, true, "the records before the upgrade are gone");
  },
};
