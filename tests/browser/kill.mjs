// Kills the browser in the middle of continuous appends to the log, opens its profile again and looks: nothing that was
// confirmed is missing, nothing is damaged. CAMSIDE_KILLS says how often (5; 200 before a release). The appends go
// through the page's own log_store.js; the page itself reads them afterwards. Should the browser lose its database, as it has,
// the lines of the second copy are saved anew, as the program would.
import assert from "node:assert/strict";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { given, items, openEmpty, rest, settled, startProfile, tap, toBikes, usable, watch } from "./page.mjs";

const KILLS = Number(process.env.CAMSIDE_KILLS ?? 5);
const BIKE = "b0000000-0000-4000-8000-000000000001";

// The line of a stored log as core/storage/log_lines.hpp describes it, written here a second time.
function fingerprint(text) {
  let sum = 0xcbf29ce484222325n;
  for (const byte of Buffer.from(text)) sum = ((sum ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
  return sum.toString(16).padStart(16, "0");
}

function lineOf(number) {
  const [kind, entered] = number === 1 ? ["facts", { nickname: "Brindle" }] : ["note", { text: `Note ${number}` }];
  const entry = JSON.stringify({ id: `e${number}`, bike: BIKE, kind, made: "2026-01-02T10:00:00.000+01:00", entered });
  return `camside-log 1\n${number} ${fingerprint(`${number} ${entry}`)} ${entry}\n`;
}

// The browser's own processes, by the folder of its profile; ended as a power switch would.
function kill(profile) {
  for (const pid of readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
    try {
      if (readFileSync(`/proc/${pid}/cmdline`, "latin1").includes(profile)) process.kill(Number(pid), "SIGKILL");
    } catch { /* it has ended meanwhile */ }
  }
}

// → the number of the last entry that was confirmed before the kill
async function appendUntilKilled(page, profile, from, heard) {
  let confirmed = from;
  let begun;
  const first = new Promise((resolve) => { begun = resolve; });
  await page.exposeFunction("confirmed", (number) => { confirmed = number; begun(); });
  await page.exposeFunction("heard", heard);
  await page.exposeFunction("linesFrom", (first) => Array.from({ length: 2000 }, (_, i) => lineOf(first + i)));
  const running = page.evaluate(async (start) => {
    const log = await import("./log_store.js");
    const append = (number, bytes) => new Promise((resolve) => log.append(last, number, bytes, resolve));
    let last = 0;
    let copied = null;
    // What the browser refuses it may give a moment later; only an answer counts.
    for (let tries = 1, opened = 0; opened !== 1; tries += 1) {
      await log.open((answer, writes, number, bytes, lines) => { opened = answer; last = number; copied ??= lines; });
      if (opened === 1) break;
      globalThis.heard("refused");
      if (tries === 5) throw new Error(`opening was answered ${opened}`);
      await new Promise((resolve) => setTimeout(resolve, 1000));
    }
    if (copied) {
      const number = parseInt(new TextDecoder().decode(copied).trim().split("\n").at(-1), 10);
      if (number > last) {
        if (last > 0) throw new Error(`the database went back from ${number} to ${last}`);
        globalThis.heard("lost");
        if (await append(number, copied) === 1) last = number;
      }
    }
    if (last < start) throw new Error(`opened at ${last}, confirmed was ${start}`);
    for (const text of await globalThis.linesFrom(last + 1)) {  // more than it comes to before the kill
      const number = last + 1;
      const line = new TextEncoder().encode(text);
      const answer = await append(number, line);
      if (answer !== 1) throw new Error(`answer ${answer}`);
      last = number;
      globalThis.confirmed(number);
    }
  }, from);
  running.catch((error) => { if (!/closed|crashed/.test(error.message)) console.log(`appending: ${error.message}`); });
  await Promise.race([first, rest(20000)]);
  await rest(300 + 700 * Math.random());
  kill(profile);
  await running.catch(() => {});
  return confirmed;
}

export const tests = {
  "a killed browser loses nothing of the log that was confirmed": given({
    page: false, patience_s: 120 + 20 * KILLS,
  }, async ({ address, troubles }) => {
    const profile = mkdtempSync(path.join(tmpdir(), "camside-kill-"));
    let confirmed = 0;
    const heard = { refused: 0, lost: 0 };
    let browser = null;
    try {
      for (let n = 0; n < KILLS; n += 1) {
        browser = await watch(await startProfile(profile), troubles);
        const page = await openEmpty(browser, address);
        const before = confirmed;
        confirmed = await appendUntilKilled(page, profile, confirmed, (what) => { heard[what] += 1; });
        assert.ok(confirmed > before, "nothing was appended before the kill");
      }
      browser = await watch(await startProfile(profile), troubles);
      const page = await browser.newPage();
      await page.goto(address);
      await usable(page);
      await toBikes(page);
      await settled(page);
      const all = await items(page);
      assert.ok(!all.some((one) => /damaged|missing|read/.test(one.label)), all.map((one) => one.label).join(" · "));
      const [download] = await Promise.all([page.waitForEvent("download"), tap(page, "Save a copy")]);
      const ids = new Set(JSON.parse(readFileSync(await download.path(), "utf8")).entries.map((entry) => entry.id));
      const lost = Array.from({ length: confirmed }, (_, i) => `e${i + 1}`).filter((id) => !ids.has(id));
      assert.deepEqual(lost, []);
      assert.ok(ids.has(`e${ids.size}`), "the numbers have a gap");  // the last ones were saved, but killed before they said so
      console.log(`${KILLS} kills, ${confirmed} entries confirmed, ${ids.size} there, ${lost.length} lost, opening refused ${heard.refused} times, database gone and brought back ${heard.lost} times`);
    } finally {
      await browser?.close().catch(() => {});
      kill(profile);
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  }),
};
