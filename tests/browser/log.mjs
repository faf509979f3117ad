// The bikes' log in the browser: kept, full, refused, in several tabs, carried away and brought back, and killed.
import assert from "node:assert/strict";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { bring, given, item, items, openEmpty, openPage, rest, saved, settled, tap, toBikes } from "./page.mjs";

const WRITE_HERE = "Write here";
const DEMO = "Show the demo bike (invented)";

async function key(page, text) {
  for (const letter of text) await tap(page, letter, "key");
}

async function addDemo(page) {
  await settled(page);
  await toBikes(page);
  await tap(page, DEMO);
  await saved(page);
}

async function typeOdometer(page, digits) {
  await tap(page, "Log odometer");
  await key(page, digits);
  await tap(page, "Done");
}

async function logOdometer(page, digits) {
  await typeOdometer(page, digits);
  await saved(page);
}

async function again(page, context, address) {
  await page.close();
  const next = await openPage(context, address);
  await settled(next);
  await toBikes(next);
  return next;
}

async function copyOf(page) {
  if ((await items(page)).some((one) => one.label === "Back")) await tap(page, "Back");
  await bring(page, "Save a copy");
  const [download] = await Promise.all([page.waitForEvent("download"), tap(page, "Save a copy")]);
  return readFileSync(await download.path());
}

async function pick(page, bytes) {
  if ((await items(page)).some((one) => one.label === "Back")) await tap(page, "Back");
  await bring(page, "Add from a copy …");
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), tap(page, "Add from a copy …")]);
  await chooser.setFiles({ name: "phone.json", mimeType: "application/json", buffer: bytes });
  await comes(page, "phone.json");
}

// What the browser itself, or whoever clears up in it, does behind the program's back. A page that was just closed still holds
// its file for a moment.
async function behind(context, address, work) {
  const page = await openEmpty(context, address);
  for (let tries = 1; ; tries += 1) {
    try {
      await page.evaluate(work);
      return await page.close();
    } catch (error) {
      if (tries === 200 || !/NoModificationAllowed/.test(error.message)) throw error;
      await rest(50);
    }
  }
}

const loseDatabase = () => new Promise((done, failed) => {
  const request = indexedDB.deleteDatabase("camside");
  request.onsuccess = done;
  request.onerror = request.onblocked = () => failed(new Error("the database is still there"));
});
const loseCopy = async () => (await navigator.storage.getDirectory()).removeEntry("log.camside");
const LOST = "The browser had lost";

// A byte of the last record but one is another.
const damageLastButOne = () => new Promise((done, failed) => {
  indexedDB.open("camside").onsuccess = ({ target: { result: database } }) => {
    const changing = database.transaction("log", "readwrite");
    changing.oncomplete = () => { database.close(); done(); };
    changing.onabort = failed;
    const records = changing.objectStore("log");
    records.getAllKeys().onsuccess = ({ target: { result: keys } }) => {
      const one = keys[keys.length - 2];
      records.get(one).onsuccess = ({ target: { result: bytes } }) => {
        bytes[bytes.length - 5] ^= 1;
        records.put(bytes, one);
      };
    };
  };
});

const entriesIn = (bytes) => JSON.parse(bytes).entries.length;

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
    await bring(next, "Odometer: 52345 mi");
  },

  async "a log whose database the browser lost comes back from the second copy, and is said and saved"({ page, context, address }) {
    await addDemo(page);
    await logOdometer(page, "52345");
    await page.close();
    await behind(context, address, loseDatabase);
    let next = await openPage(context, address);
    await saved(next);
    await toBikes(next);
    await comes(next, LOST);
    await tap(next, "Brindle");
    await logOdometer(next, "52467");
    await next.close();
    await behind(context, address, loseCopy);
    next = await openPage(context, address);
    await toBikes(next);
    assert.ok(!await shows(next, LOST), "what was saved anew is said to be lost again");
    await tap(next, "Brindle");
    for (const one of ["Odometer: 52345 mi", "Odometer: 52467 mi"]) await bring(next, one);
  },

  async "a second copy that is lost or behind catches up, and what differs is joined"({ page, context, address }) {
    await addDemo(page);
    await page.close();
    await behind(context, address, loseCopy);
    let next = await openPage(context, address);  // catches up when it opens
    await next.close();
    await behind(context, address, loseDatabase);
    // Opened without a copy, used, and then with it again.
    next = await context.newPage();
    await next.addInitScript(() => { StorageManager.prototype.getDirectory = undefined; });
    await next.goto(address);
    await next.waitForFunction(() => globalThis.camside?.whole());
    await addDemo(next);
    await logOdometer(next, "52999");
    next = await again(next, context, address);
    await comes(next, LOST);
    const both = JSON.parse(await copyOf(next)).entries;
    assert.equal(both.filter((one) => one.kind === "facts").length, 2, "one demo bike from the copy, one from the database");
    await next.close();
    await behind(context, address, loseDatabase);
    next = await openPage(context, address);
    await toBikes(next);
    assert.equal(entriesIn(await copyOf(next)), both.length, "the copy was begun anew with all of it");
  },

  async "an end of the second copy that was cut off is written over"({ page, context, address }) {
    await addDemo(page);
    await page.close();
    await behind(context, address, async () => {
      const file = await (await navigator.storage.getDirectory()).getFileHandle("log.camside");
      const { size } = await file.getFile();
      const stream = await file.createWritable({ keepExistingData: true });
      await stream.write({ type: "write", position: size, data: "camside-log 1\n12 0123" });
      await stream.close();
    });
    let next = await openPage(context, address);
    await toBikes(next);
    await tap(next, "Brindle");
    await logOdometer(next, "52345");
    await next.close();
    await behind(context, address, loseDatabase);
    next = await openPage(context, address);
    await toBikes(next);
    await comes(next, LOST);
    await tap(next, "Brindle");
    await bring(next, "Odometer: 52345 mi");
  },

  async "one tab writes, the others follow, and another one can take over"({ page, context, address }) {
    await addDemo(page);
    const other = await openPage(context, address);
    await toBikes(other);
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
    for (const one of ["Odometer: 52345 mi", "Odometer: 52467 mi", WRITE_HERE]) await comes(next, one);
    await other.close();
  },

  async "a tab that takes over the moment it has opened, and is told to twice, goes on writing"({ page, context, address }) {
    const other = await openEmpty(context, address);  // nobody there needs time to press
    await other.evaluate(async () => {
      globalThis.later = [];
      globalThis.setTimeout = (work, ms, ...rest) => { later.push(() => work(...rest)); };
      const log = await import("./log_store.js");
      globalThis.heard = [];
      await log.open((_, mayWrite) => globalThis.heard.push(mayWrite));
      log.takeOver();
      log.takeOver();
    });
    await other.waitForFunction(() => globalThis.heard.includes(true), null, { timeout: 15000 });
    await other.evaluate(async () => {  // the time is over that it gives a tab that doesn't answer
      for (const work of later.splice(0)) work();
      for (let turns = 0; turns < 20; turns += 1) await navigator.locks.query();  // what that led to was answered before
    });
    const told = await other.evaluate(() => globalThis.heard);
    assert.equal(told[0], false, "another tab wrote");
    assert.deepEqual(told.slice(told.indexOf(true)).filter((mayWrite) => !mayWrite), [], "it took the log away from itself");
    await toBikes(page);
    await comes(page, WRITE_HERE);
  },

  "a database that is deleted while it is open is written anew with all there is, and said": given({ expects: [/.*/] }, async ({ page, context, address }) => {
    await addDemo(page);
    await tap(page, "Settings");
    await tap(page, "Metric");
    await toBikes(page);
    await tap(page, "Brindle");
    await logOdometer(page, "52345");
    await page.evaluate(loseDatabase);
    await saved(page);
    await tap(page, "Back");
    await comes(page, "was deleted while it was open");
    await tap(page, "Brindle");
    await page.evaluate(loseDatabase);
    await logOdometer(page, "52467");
    await page.close();
    await behind(context, address, loseCopy);  // so that the database alone counts
    const next = await openPage(context, address);
    await settled(next);
    await tap(next, "Settings");
    assert.equal((await item(next, "Metric")).chosen, true, "what was kept beside the log is gone");
    await toBikes(next);
    await tap(next, "Brindle");
    for (const one of ["52345", "52467"]) await bring(next, `Odometer: ${one} mi`);
  }),

  "a hostile copy is refused in a moment and the page goes on, small or large": given({ page: true }, async ({ page }) => {
    await addDemo(page);
    const log = (count) => Buffer.from(`{"camside": 1, "kind": "log", "entries": [${"{},".repeat(count)}{}]}`);
    for (const [megabytes, says] of [[5, "There are more than 250000 entries"], [60, "There are more than 250000 entries"], [70, "larger than 64 MB"]]) {
      const bytes = log(Math.round(megabytes * 1e6 / 3));
      const path = `${tmpdir()}/camside-hostile-${process.pid}.json`;
      writeFileSync(path, bytes);  // more than the browser's driver takes by itself
      if ((await items(page)).some((one) => one.label === "Back")) await tap(page, "Back");
      await bring(page, "Add from a copy …");
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), tap(page, "Add from a copy …")]);
      const begun = Date.now();
      await chooser.setFiles(path);
      await comes(page, says);
      assert.ok(Date.now() - begun < 10000, `${megabytes} MB took ${Date.now() - begun} ms`);
      rmSync(path);
    }
    await tap(page, "Back");
    await item(page, "Brindle");
  }),

  "a frozen tab is taken over too; what it could not save is kept and saved when it writes again": given({
    page: false, expects: [/^console: (log|save) QuotaExceededError/],
  }, async ({ context, address }) => {
    await context.addInitScript(() => {  // deaf: hears no other tab; full: saves nothing
      globalThis.BroadcastChannel = class extends BroadcastChannel {
        set onmessage(heard) { super.onmessage = (event) => { if (!globalThis.deaf) heard(event); }; }
      };
      const real = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (...rest) {
        if (globalThis.full) throw new DOMException("no room", "QuotaExceededError");
        return real.apply(this, rest);
      };
    });
    const frozen = await openPage(context, address);
    await addDemo(frozen);
    const other = await openPage(context, address);
    await toBikes(other);
    await tap(other, "Brindle");
    await frozen.evaluate(() => { globalThis.deaf = globalThis.full = true; });
    await typeOdometer(frozen, "52318");
    await comes(frozen, "Try again");
    await tap(other, WRITE_HERE);
    await comes(other, "Log odometer");
    await logOdometer(other, "52467");
    await frozen.evaluate(() => { globalThis.deaf = globalThis.full = false; });
    await comes(frozen, WRITE_HERE);
    await comes(frozen, "Odometer: 52318 mi");
    await tap(frozen, WRITE_HERE);
    await comes(frozen, "Odometer: 52467 mi");
    await comes(other, "Odometer: 52318 mi");
    await saved(frozen);
    assert.ok(!await shows(frozen, "Try again"));
  }),

  "two tabs without Web Locks keep apart by the numbers of their records": given({ page: false }, async ({ context, address }) => {
    await context.addInitScript(() => { Object.defineProperty(navigator, "locks", { value: undefined }); globalThis.BroadcastChannel = undefined; });
    const one = await openPage(context, address);
    await addDemo(one);
    const other = await openPage(context, address);
    await toBikes(other);
    await tap(other, "Brindle");
    await logOdometer(one, "52345");
    await logOdometer(other, "52467");
    await comes(other, "Odometer: 52345 mi");
    const next = await again(one, context, address);
    await tap(next, "Brindle");
    for (const reading of ["52345", "52467"]) await comes(next, `Odometer: ${reading} mi`);
  }),

  "says so when the browser has no room for the log, and saves when it has again": given({
    expects: [/^console: (log|save) QuotaExceededError/],
  }, async ({ page }) => {
    await addDemo(page);
    await page.evaluate(() => {
      const real = IDBDatabase.prototype.transaction;
      globalThis.roomAgain = () => { IDBDatabase.prototype.transaction = real; };
      IDBDatabase.prototype.transaction = () => { throw new DOMException("no room", "QuotaExceededError"); };
    });
    await typeOdometer(page, "52345");
    await comes(page, "Not saved");
    assert.ok(await shows(page, "it is full"));
    await page.evaluate(() => roomAgain());
    await tap(page, "Try again");
    await saved(page);
    assert.ok(!await shows(page, "Not saved"));
  }),

  "says so when the browser keeps nothing, and still takes entries": given({
    page: false, expects: [/^console: (log|load|save|second copy) InvalidStateError/],
  }, async ({ context, address }) => {
    await context.addInitScript(() => { IDBFactory.prototype.open = () => { throw new DOMException("private", "InvalidStateError"); }; });
    const page = await openPage(context, address);
    await addDemo(page);
    await tap(page, "Back");
    await item(page, "Brindle");
    assert.ok(await shows(page, "The log in this browser can't be read"));
    await item(page, "Try again");
  }),

  "of a database that can't be read the second copy is shown, and leaves as a copy": given({
    expects: [/^console: (log|load|save|second copy) UnknownError/],
  }, async ({ page, context, address }) => {
    await addDemo(page);
    await logOdometer(page, "52345");
    await page.close();
    await context.addInitScript(() => {
      const real = IDBFactory.prototype.open;
      globalThis.mended = () => { IDBFactory.prototype.open = real; };
      IDBFactory.prototype.open = () => { throw new DOMException("Internal error opening backing store", "UnknownError"); };
    });
    const next = await openPage(context, address);
    await toBikes(next);
    await comes(next, "Shown is its second copy");
    await tap(next, "Brindle");
    await bring(next, "Odometer: 52345 mi");
    const inCopy = entriesIn(await copyOf(next));
    await tap(next, "Brindle");
    await typeOdometer(next, "52467");
    assert.equal(entriesIn(await copyOf(next)), inCopy + 1);
    await next.evaluate(() => mended());
    await tap(next, "Try again");
    await saved(next);
    assert.ok(!await shows(next, "Shown is its second copy"));
    assert.equal(entriesIn(await copyOf(next)), inCopy + 1);
  }),

  async "a record that is damaged in the database comes back from the second copy"({ page, context, address }) {
    await addDemo(page);
    for (const reading of ["52345", "52467"]) await logOdometer(page, reading);
    await page.close();
    await behind(context, address, damageLastButOne);
    const next = await openPage(context, address);
    await saved(next);
    await toBikes(next);
    await comes(next, LOST);
    await tap(next, "Brindle");
    for (const one of ["Odometer: 52345 mi", "Odometer: 52467 mi"]) await bring(next, one);
  },

  "a database that fails while the second copy is looked into is said, and opens at the next try": given({
    expects: [/^console: (log|load|save|second copy) UnknownError/],
  }, async ({ page, context, address }) => {
    await addDemo(page);
    for (const reading of ["52345", "52467"]) await logOdometer(page, reading);
    await page.close();
    await behind(context, address, damageLastButOne);
    await context.addInitScript(() => {
      const ask = Worker.prototype.postMessage, read = IDBDatabase.prototype.transaction;
      globalThis.sick = true;
      let broken = false;
      Worker.prototype.postMessage = function (message) {
        broken ||= message[1] === "whole";
        ask.call(this, message);
      };
      IDBDatabase.prototype.transaction = function (...given) {
        if (sick && broken) throw new DOMException("gone", "UnknownError");
        return read.apply(this, given);
      };
    });
    const next = await openPage(context, address);
    await toBikes(next);
    await comes(next, "The log in this browser can't be read");
    await next.evaluate(() => { sick = false; });
    await tap(next, "Try again");
    await comes(next, LOST);
    await saved(next);
    await tap(next, "Brindle");
    for (const one of ["Odometer: 52345 mi", "Odometer: 52467 mi"]) await bring(next, one);
  }),

  "says so when an older tab is in the way, and opens when that is closed": given({
    page: false, expects: [/^console: (log|load|save|second copy) Blocked/],
  }, async ({ context, address }) => {
    const old = await openEmpty(context, address);
    await old.evaluate(() => new Promise((done) => {
      const request = indexedDB.open("camside", 1);
      request.onupgradeneeded = () => request.result.createObjectStore("records").put(new TextEncoder().encode('{"units":"metric"}'), "settings");
      request.onsuccess = () => { globalThis.held = request.result; done(); };
    }));
    const page = await openPage(context, address);
    await toBikes(page);
    await comes(page, "Not saved");
    assert.ok(await shows(page, "close it, then try again"));
    await old.close();
    await rest(300);
    await tap(page, "Try again");
    await comes(page, DEMO);
    await addDemo(page);
    const next = await again(page, context, address);
    await item(next, "Brindle");
    await tap(next, "Settings");
    assert.equal((await item(next, "Metric")).chosen, true, "the records before the upgrade are gone");
  }),

  async "the same key is heard twice when a finger presses the same place twice"({ page }) {
    await addDemo(page);
    await logOdometer(page, "52400");
    await bring(page, "Odometer: 52400 mi");
  },

  async "a copy taken in by a fresh browser gives the same log, byte for byte"({ page, newPhone, address }) {
    await addDemo(page);
    await logOdometer(page, "52345");
    const sent = await copyOf(page);
    const context = await newPhone();
    const other = await openPage(context, address);
    await toBikes(other);
    await pick(other, sent);
    await comes(other, `${entriesIn(sent)} entries new`);
    await item(other, `Take in ${entriesIn(sent)} entries`);
    assert.ok(await shows(other, "New bike: Brindle"));
    await tap(other, "Back");
    await item(other, DEMO);  // nothing was taken in unasked
    await pick(other, sent);
    await tap(other, `Take in ${entriesIn(sent)} entries`);
    await saved(other);
    const next = await again(other, context, address);
    const back = await copyOf(next);
    assert.ok(sent.equals(back), "the second copy differs");
    await pick(next, back);
    await comes(next, `${entriesIn(sent)} entries known`);
    assert.equal((await items(next)).find((one) => one.label === "Nothing new in it").enabled, false);
  },

  async "a file dropped on the page is looked at wherever one is; what can't be read of it is said"({ page }) {
    await addDemo(page);
    const sent = String(await copyOf(page));
    const lines = sent.split("\n");
    lines[7] = lines[7].slice(0, 40);
    await tap(page, "Bench");
    await page.evaluate((text) => {
      const dropped = new DataTransfer();
      dropped.items.add(new File([text], "other.json"));
      window.dispatchEvent(new DragEvent("drop", { dataTransfer: dropped, bubbles: true, cancelable: true }));
    }, lines.join("\n"));
    await comes(page, "other.json");
    await comes(page, "Line 8");
    await tap(page, "Back");
    await pick(page, Buffer.from("no log at all"));
    await comes(page, "Nothing new in it");
    assert.ok((await items(page)).filter((one) => one.visible && one.role === "text").length > 1, "it does not say why");
  },

  "a copy leaves although nothing can be saved, and by the share sheet where there is one": given({
    page: false, expects: [/^console: (log|load|save|second copy) InvalidStateError/],
  }, async ({ context, address }) => {
    await context.addInitScript(() => {
      navigator.canShare = ({ files }) => files.every((file) => /\.txt$/.test(file.name) && file.type === "text/plain");
      navigator.share = async ({ files }) => { globalThis.shared = await files[0].text(); };
      IDBFactory.prototype.open = () => { throw new DOMException("private", "InvalidStateError"); };
    });
    const page = await openPage(context, address);
    await addDemo(page);
    await tap(page, "Back");
    await bring(page, "Send a copy …");
    await tap(page, "Send a copy …");
    await comes(page, "The file was handed over");
    assert.match(await page.evaluate(() => shared), /"count": 6,[^]*Brindle/);
    await comes(page, "Last copy: today");
    assert.match(String(await copyOf(page)), /Brindle/);
  }),

  "says whether the browser has promised to keep what is saved": given({ page: false }, async ({ context, address }) => {
    await context.addInitScript(() => {
      if (!navigator.storage) return;  // in the page before the first one
      navigator.storage.persisted = async () => false;
      navigator.storage.persist = async () => { globalThis.askedFor = (globalThis.askedFor ?? 0) + 1; return true; };
    });
    const page = await openPage(context, address);
    assert.equal(await page.evaluate(() => globalThis.askedFor), undefined, "asked before anything was saved");
    await addDemo(page);
    await tap(page, "Back");
    await comes(page, "This browser has promised to keep what is saved here");
    assert.equal(await page.evaluate(() => globalThis.askedFor), 1);
  }),
};
