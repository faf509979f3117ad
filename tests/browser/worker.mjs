// Runs the tests whose names run.mjs sends it, one after another: in a browser of its own, with a server of its own, and a
// fresh profile for every test.
import assert from "node:assert/strict";
import { rmSync } from "node:fs";
import { tests } from "./all.mjs";
import { openPage, PHONE, siteWithStores, startBrowser, startServer, watch } from "./page.mjs";

const PATIENCE_s = 120;

const site = siteWithStores();
const server = await startServer(site);
let browser = await startBrowser();

function within(seconds, work) {
  let limit;
  const never = new Promise((_, fail) => { limit = setTimeout(() => fail(new Error(`no end after ${seconds} s`)), 1000 * seconds); });
  return Promise.race([work, never]).finally(() => clearTimeout(limit));
}

async function tried(test) {
  if (!browser.isConnected()) browser = await startBrowser();  // one test's crash is not the next one's
  const troubles = [];
  const phones = [];
  const newPhone = async (other = {}) => {
    const context = await browser.newContext({ ...PHONE, ...other });
    phones.push(context);
    return watch(context, troubles);
  };
  const tell = async () => {
    const context = await newPhone(test.density ? { deviceScaleFactor: test.density } : {});
    const page = test.page === false ? undefined : await openPage(context, server.address);
    await test({ page, context, newPhone, troubles, address: server.address });
  };
  try {
    await within(test.patience_s ?? PATIENCE_s, tell());
    assert.deepEqual(troubles.filter((one) => !(test.expects ?? []).some((expected) => expected.test(one))), [], "the browser's complaints");
  } finally {
    await Promise.all(phones.map((one) => one.close().catch(() => {})));
  }
}

async function run(name) {
  const began = Date.now();
  let fault = "";
  await tried(tests[name]).catch((error) => { fault = String(error.stack ?? error).split("\n").slice(0, 16).join("\n"); });
  process.send({ fault, seconds: (Date.now() - began) / 1000 });
}

process.on("message", run);
process.on("disconnect", async () => {
  await browser.close().catch(() => {});
  server.stop();
  rmSync(site, { recursive: true });
  process.exit();
});
process.send("ready");
