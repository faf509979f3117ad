// Opens the built page in Debian's Chromium the way a phone would see it, and watches for anything that goes wrong.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { fileURLToPath } from "node:url";
import path from "node:path";

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const { chromium } = createRequire(path.join(root, "build/browser/package.json"))("playwright-core");

// One canvas pixel for each of the page's: without a graphics card nine times as many cost nine times the time. A test that
// asks about sharpness asks for a phone's 3 itself; CAMSIDE_DENSITY gives them to all.
const DENSITY = Number(process.env.CAMSIDE_DENSITY ?? 1);
export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: DENSITY, hasTouch: true, isMobile: true };

// WebGL2 without a graphics card, and no traffic of the browser's own. Mesa draws in half the time that Chromium's own
// stand-in for a graphics card takes, and the rest of the page needs neither.
const FLAGS = [
  "--use-angle=gl-egl", "--disable-gpu-compositing", "--ignore-gpu-blocklist", "--no-sandbox", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-default-apps",
  "--disable-domain-reliability", "--disable-features=OptimizationHints,MediaRouter",
];

// CAMSIDE_SITE: another built page than build/web/site, for instance one with a planted fault.
export const builtSite = process.env.CAMSIDE_SITE ?? path.join(root, "build/web/site");

const EMPTY = "empty.html";

// A copy of the built page with the modules that keep what was entered, which are part of its one file, beside it: tests
// read and write through them, also from an empty page.
export function siteWithStores() {
  const site = mkdtempSync(path.join(tmpdir(), "camside-site-"));
  cpSync(builtSite, site, { recursive: true });
  for (const name of ["store.js", "log_store.js", "log_copy.js"]) cpSync(path.join(root, "app-web/page", name), path.join(site, name));
  writeFileSync(path.join(site, EMPTY), '<!doctype html><link rel="icon" href="data:,">');
  return site;
}

const servers = new Set();  // addresses of all that were started here

// It compresses with little effort unless `effort` says how: the best takes seconds, for every server anew.
export async function startServer(site = builtSite, effort = 1) {
  const options = [site, "--port", "0", "--effort", `${effort}`];
  const server = spawn(path.join(root, "scripts/serve"), options, { stdio: ["ignore", "pipe", "inherit"] });
  const line = await new Promise((resolve, reject) => {
    server.stdout.once("data", (data) => resolve(String(data)));
    server.once("exit", () => reject(new Error("the server stopped")));
  });
  const address = line.match(/http:\S+/)[0];
  servers.add(address);
  return { address, stop: () => server.kill() };
}

const LAUNCH = {
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS,
  env: { ...process.env, LIBGL_ALWAYS_SOFTWARE: "1", EGL_PLATFORM: "surfaceless" },
};

export const startBrowser = () => chromium.launch(LAUNCH);

// With a profile in a folder of its own, which outlives the browser.
export function startProfile(folder) {
  return chromium.launchPersistentContext(folder, { ...LAUNCH, ...PHONE });
}

// A test that is given something else than the others, or whose page may say something:
//   page: false    no page is opened for it
//   density        pixels of the screen for each of the page's
//   expects        what the page may be in trouble about: regular expressions
//   patience_s     how long it may take
export const given = (options, test) => Object.assign(test, options);

// Notes whatever goes wrong in any page of this context: console errors and warnings, page errors, CSP violations, requests
// that fail or go elsewhere.
export async function watch(context, troubles) {
  const note = (kind, what) => troubles.push(`${kind}: ${what}`);
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) note("console", `${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (event) => note("page error", event.error()?.message ?? event.error()));
  context.on("requestfailed", (request) => note("request failed", request.url()));
  context.on("request", (request) => {
    if (![...servers].some((ours) => request.url().startsWith(ours))) note("request elsewhere", request.url());
  });
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => console.error(`CSP: ${event.violatedDirective}`));
  });
  return context;
}

export async function openPage(context, address, whole = true) {
  const page = await context.newPage();
  await page.goto(address);
  await usable(page);
  if (whole) await page.waitForFunction(() => camside.whole());
  return page;
}

// A page with the same store and no Camside in it. The service worker is kept out: it answers with Camside, whatever page is
// asked for.
export async function openEmpty(context, address) {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Network.enable");
  await session.send("Network.setBypassServiceWorker", { bypass: true });
  await page.goto(`${address}${EMPTY}`);
  return page;
}

export const usable = (page) =>
  page.waitForFunction(() => performance.getEntriesByName("usable").length > 0, null, { timeout: 120000 });

export const frames = (page) => page.evaluate(() => camside.frames());
export const items = (page) => page.evaluate(() => camside.items());
const UNREST_ms = 60000;
export const rest = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

// Of several pages the one that something is done to stands in front, as it does for a person: the browser draws those
// behind it once in a second.
async function inFront(page) {
  if (page.context?.().pages().length > 1) await page.bringToFront();
}

// Waits until the page itself says that it rests: what was done to it is drawn, and what was to be saved is saved. One that
// never comes to rest is at fault.
export async function settled(page) {
  await inFront(page);
  const fault = new Error("it never comes to rest");
  let limit;
  const never = new Promise((_, fail) => { limit = setTimeout(() => fail(fault), UNREST_ms); });
  try {
    await Promise.race([page.evaluate(() => camside.rest()), never]);
  } finally {
    clearTimeout(limit);
  }
}

export const saved = settled;  // for whoever reads a test

// Asks until it is so, where the page's own waiting would be in the way.
export async function until(holds, what = `${holds}`, patience_ms = 15000) {
  for (const began = Date.now(); !await holds(); await rest(30)) if (Date.now() - began > patience_ms) throw new Error(`never came true: ${what}`);
}

// Turned or pulled to this size, on a screen of this density if it is given, and drawn so.
export async function resized(page, width, height, density) {
  if (!density) {
    await page.setViewportSize({ width, height });
  } else {
    const session = await page.context().newCDPSession(page);
    await session.send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: density, mobile: true });
    await page.waitForFunction((density) => devicePixelRatio === density, density);
  }
  await page.waitForFunction(([width, height]) => {
    const canvas = document.getElementById("canvas");
    return canvas.width === Math.round(width * devicePixelRatio) && canvas.height === Math.round(height * devicePixelRatio);
  }, [width, height]);
  await settled(page);
}

// What can be pressed and seen under this label; of several the first.
export async function item(page, label, role) {
  const all = await items(page);
  const found = all.find((one) => one.label === label && one.press && one.visible && (!role || one.role === role));
  if (!found) throw new Error(`nothing to press is labelled "${label}": ${all.filter((one) => one.press).map((one) => one.label).join(" · ")}`);
  return found;
}

export async function tap(page, label, role) {
  await inFront(page);
  const [x, y, width, height] = (await item(page, label, role)).rect;
  await page.touchscreen.tap(x + width / 2, y + height / 2);
  await settled(page);
}

// The list of bikes, wherever one came back to.
export async function toBikes(page) {
  await tap(page, "Bikes");
  while ((await items(page)).some((one) => one.label === "Back" && one.press)) await tap(page, "Back");
}

// Fingers as the browser itself would report them: down, move and lift take the places of all that are on the glass then.
export async function hand(page) {
  const session = await page.context().newCDPSession(page);
  const send = (type) => (...at) => session.send("Input.dispatchTouchEvent", { type, touchPoints: at.map(([x, y], id) => ({ x, y, id })) });
  return { down: send("touchStart"), move: send("touchMove"), lift: send("touchEnd") };
}

// All fingers from where they are to where they shall be, each a pair of places. They go on by the clock however long the page
// takes to follow: → what is still under way.
async function onTheirWay(fingers, ways, steps) {
  const sent = [];
  for (let step = 1; step <= steps; step += 1) {
    sent.push(fingers.move(...ways.map(([from, to]) => from.map((start, axis) => start + ((to[axis] - start) * step) / steps))));
    await rest(16);
  }
  return { sent };
}

export const glide = async (fingers, ways, steps = 8) => Promise.all((await onTheirWay(fingers, ways, steps)).sent);

// A finger put down, moved and lifted.
export async function drag(page, from, to, steps = 8) {
  const finger = await hand(page);
  await finger.down(from);
  await glide(finger, [[from, to]], steps);
  await rest(120);  // the finger rests, so that the list doesn't coast on
  await finger.lift();
  await settled(page);
}

// The same, lifted while it still moves. Nothing is waited for.
export async function fling(page, from, to, steps = 6) {
  const finger = await hand(page);
  await finger.down(from);
  const { sent } = await onTheirWay(finger, [[from, to]], steps);
  await Promise.all([...sent, finger.lift()]);
}

// Brings what has this label into the middle of the screen, by dragging as a thumb would.
export async function bring(page, label) {
  const { width, height } = page.viewportSize();
  for (let tries = 0; tries < 12; tries += 1) {
    const all = await items(page);
    const found = all.find((one) => one.label === label && one.press);
    const places = all.filter((one) => one.role === "place");
    const row = places.every((one) => one.rect[1] === places[0].rect[1]);  // below the list; else a column beside it
    const covers = [...all.filter((one) => one.role === "key"), ...(row ? places : [])];
    const keypad = covers.some((one) => one.role === "key") ? 150 : 0;  // what stands above its keys
    const bottom = Math.min(height, ...covers.map((one) => one.rect[1] - keypad));
    const middle = found ? found.rect[1] + found.rect[3] / 2 : height;  // far rows of a long list aren't there yet
    if (found?.visible && middle > 60 && middle < bottom - 20) return;
    const step = Math.max(-0.25 * height, Math.min(0.25 * height, 0.5 * bottom - middle));
    const at = (60 + bottom) / 2;
    await drag(page, [width / 2, at - step / 2], [width / 2, at + step / 2]);
  }
  throw new Error(`"${label}" could not be brought into view`);
}
