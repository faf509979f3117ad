// Opens the built page in Debian's Chromium the way a phone would see it, and watches for anything that goes wrong.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { fileURLToPath } from "node:url";
import path from "node:path";

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const { chromium } = createRequire(path.join(root, "build/browser/package.json"))("playwright-core");

export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true };

// WebGL2 without a graphics card, and no traffic of the browser's own.
const FLAGS = [
  "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist", "--no-sandbox", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-default-apps",
  "--disable-domain-reliability", "--disable-features=OptimizationHints,MediaRouter",
];

// CAMSIDE_SITE: another built page than build/web/site, for instance one with a planted fault.
export const builtSite = process.env.CAMSIDE_SITE ?? path.join(root, "build/web/site");

// A copy of the built page with the modules that keep what was entered, which are part of its one file, beside it: tests
// read and write through them.
export function siteWithStores() {
  const site = mkdtempSync(path.join(tmpdir(), "camside-site-"));
  cpSync(builtSite, site, { recursive: true });
  for (const name of ["store.js", "log_store.js", "log_copy.js"]) cpSync(path.join(root, "app-web/page", name), path.join(site, name));
  return site;
}

export async function startServer(site = builtSite) {
  const server = spawn(path.join(root, "scripts/serve"), [site, "--port", "0"], { stdio: ["ignore", "pipe", "inherit"] });
  const line = await new Promise((resolve, reject) => {
    server.stdout.once("data", (data) => resolve(String(data)));
    server.once("exit", () => reject(new Error("the server stopped")));
  });
  return { address: line.match(/http:\S+/)[0], stop: () => server.kill() };
}

export function startBrowser() {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS });
}

// With a profile in a folder of its own, which outlives the browser.
export function startProfile(folder) {
  return chromium.launchPersistentContext(folder, { executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS, ...PHONE });
}

// → page with page.troubles: console errors, page errors, CSP violations, requests elsewhere or failed
export async function openPage(context, address, whole = true) {
  const page = await context.newPage();
  page.troubles = [];
  const note = (kind) => (event) => page.troubles.push(`${kind}: ${event.text?.() ?? event.message ?? event.url?.() ?? event}`);
  page.on("console", (message) => { if (["error", "warning"].includes(message.type())) note("console")(message); });
  page.on("pageerror", note("page error"));
  page.on("requestfailed", note("request failed"));
  const site = address.split("#")[0];
  page.on("request", (request) => { if (!request.url().startsWith(site)) note("request elsewhere")(request); });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => console.error(`CSP: ${event.violatedDirective}`));
  });
  await page.goto(address);
  await usable(page);
  if (whole) await page.waitForFunction(() => camside.whole());
  return page;
}

export const usable = (page) =>
  page.waitForFunction(() => performance.getEntriesByName("usable").length > 0, null, { timeout: 120000 });

export const frames = (page) => page.evaluate(() => camside.frames());
export const items = (page) => page.evaluate(() => camside.items());
export const rest = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

// Waits until nothing is drawn any more; something that never comes to rest is a fault.
export async function settled(page) {
  const began = Date.now();
  for (let before = -1, now = await frames(page); before !== now; now = await frames(page)) {
    if (Date.now() - began > 60000) throw new Error("frames are drawn without end");
    before = now;
    await rest(150);
  }
}

// Turned or pulled to this size, and drawn so.
export async function resized(page, width, height) {
  await page.setViewportSize({ width, height });
  await page.waitForFunction(([width, height]) => {
    const canvas = document.getElementById("canvas");
    return canvas.width === Math.round(width * devicePixelRatio) && canvas.height === Math.round(height * devicePixelRatio);
  }, [width, height]);
  await settled(page);
}

export async function saved(page) {
  await settled(page);
  await page.waitForFunction(() => camside.saving() === 0);
}

// What can be pressed and seen under this label; of several the first.
export async function item(page, label, role) {
  const all = await items(page);
  const found = all.find((one) => one.label === label && one.press && one.visible && (!role || one.role === role));
  if (!found) throw new Error(`nothing to press is labelled "${label}": ${all.filter((one) => one.press).map((one) => one.label).join(" · ")}`);
  return found;
}

export async function tap(page, label, role) {
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
  await rest(200);  // the finger rests, so that the list doesn't coast on
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
