// usage: node tests/browser/start.mjs [rounds]
// How long Camside's page takes to its first usable frame, beside the least page Dear ImGui can make (tests/browser/bare),
// both in turn in one run: a phone's processor at a quarter of this one's speed, 1.6 Mbit/s with 150 ms; then Camside
// without a network. Prints the medians and their ratios; decides nothing. scripts/bench page builds both first.
import { existsSync } from "node:fs";
import path from "node:path";
import { builtSite, PHONE, rest, root, startBrowser, startServer } from "./page.mjs";

const ROUNDS = Number(process.argv[2] ?? 5);
const SLOWER = 4;
const SLOW_NETWORK = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 };
const NO_NETWORK = { ...SLOW_NETWORK, offline: true };
const SETTLING_ms = 2000;  // nobody opens it again while the last visit is still being drawn
const USABLE = () => performance.getEntriesByName("usable").length > 0;

const sites = { camside: builtSite, bare: path.join(root, "build/web/bare-site") };
for (const site of Object.values(sites)) {
  if (existsSync(path.join(site, "index.html"))) continue;
  console.error(`there is no page in ${site}; scripts/bench page builds it`);
  process.exit(1);  // before anything is started that would have to be ended
}
const browser = await startBrowser();
const servers = { camside: await ready(sites.camside, "camside_web"), bare: await ready(sites.bare, "bare_page") };
const seen = { camside: [], bare: [], offline: [] };
for (let round = 0; round < ROUNDS; round += 1) {
  seen.bare.push(await firstVisit("bare"));
  seen.camside.push(await firstVisit("camside", async (page, session) => seen.offline.push(await withoutNetwork(page, session))));
}
await browser.close();
for (const server of Object.values(servers)) server.stop();

const [camside, bare, offline] = [seen.camside, seen.bare, seen.offline].map(median);
console.log(`first visit, processor x 1/${SLOWER}, 1.6 Mbit/s, 150 ms; median of ${ROUNDS} (least to greatest)`);
console.log(`  Camside   ${told(camside, seen.camside)}`);
console.log(`  bare page ${told(bare, seen.bare)}`);
console.log(`  ratio     ${(camside.bytes / bare.bytes).toFixed(2)} in bytes, ${(camside.ms / bare.ms).toFixed(2)} in time`);
console.log(`without a network, processor x 1/${SLOWER}`);
console.log(`  Camside   ${told(offline, seen.offline)}`);

// A server that has compressed the large files already, as any real one has.
async function ready(site, name) {
  const server = await startServer(site, 11);
  for (const end of ["js", "wasm"]) await (await fetch(`${server.address}${name}.${end}`, { headers: { "Accept-Encoding": "br" } })).arrayBuffer();
  return server;
}

async function firstVisit(name, afterwards) {
  const context = await browser.newContext({ ...PHONE, deviceScaleFactor: 3 });
  const page = await context.newPage();
  const session = await slowed(context, page, SLOW_NETWORK);
  await page.goto(servers[name].address);
  const result = await start(page);
  if (afterwards) await afterwards(page, session);
  await context.close();
  return result;
}

// Once more, from the device: everything was kept on the first visit.
async function withoutNetwork(page, session) {
  await session.send("Network.emulateNetworkConditions", { ...SLOW_NETWORK, latency: 0, downloadThroughput: -1, uploadThroughput: -1 });
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();  // from here on the worker answers
  await page.waitForFunction(USABLE);
  await rest(SETTLING_ms);
  await session.send("Network.emulateNetworkConditions", NO_NETWORK);
  servers.camside.stop();
  await page.reload();
  const result = await start(page);
  servers.camside = await ready(builtSite, "camside_web");
  return result;
}

async function slowed(context, page, network) {
  const session = await context.newCDPSession(page);
  await session.send("Network.enable");
  await session.send("Network.emulateNetworkConditions", network);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  return session;
}

async function start(page) {
  await page.waitForFunction(USABLE, null, { timeout: 120000 });
  return page.evaluate(() => ({
    ms: performance.getEntriesByName("usable")[0].startTime,
    bytes: [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")]
      .reduce((sum, one) => sum + one.encodedBodySize, 0),
  }));
}

function median(results) {
  return results.slice().sort((a, b) => a.ms - b.ms)[Math.floor(results.length / 2)];
}

function told({ ms, bytes }, all) {
  const times = all.map((one) => one.ms);
  return `${(ms / 1000).toFixed(2)} s (${(Math.min(...times) / 1000).toFixed(2)} to ${(Math.max(...times) / 1000).toFixed(2)}), ${bytes} bytes`;
}
