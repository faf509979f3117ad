// Pictures of every screen at three sizes in both themes, into build/pictures (or the folder given).
//   node tests/browser/pictures.mjs [folder [part of a screen's name]]
import { mkdirSync } from "node:fs";
import path from "node:path";
import { bring, items, openPage, root, settled, startBrowser, startServer, tap } from "./page.mjs";

const SIZES = [[390, 844], [844, 390], [1440, 900]];
const THEMES = { sun: "light", shop: "dark" };
// From the start of the app: the labels to tap, one after another.
const SCREENS = {
  bikes: ["Bikes"],
  bench: ["Bench"],
  "look-over": ["Look-over"],
  setup: ["Setup"],
  runout: ["Bench", "Runout"],
  lash: ["Bench", "Gear lash (backlash)"],
  "gears-to-order": ["Bench", "Gears to order"],
  pushrods: ["Bench", "Pushrods"],
  due: ["Bench", "Due"],
  "gear-pair": ["Bench", "Gear pair"],
  wear: ["Bench", "Wear"],
  life: ["Bench", "Life"],
};
const EXAMPLE = "Show an example (invented)";

async function picture(browser, address, folder, [width, height], theme, screen) {
  const touch = width < 900 || height < 500;
  const context = await browser.newContext({
    viewport: { width, height }, deviceScaleFactor: touch ? 3 : 2, hasTouch: true, isMobile: touch, colorScheme: THEMES[theme],
  });
  const page = await openPage(context, address);
  await settled(page);
  const press = async (label) => {
    if ((await items(page)).some((one) => one.label === label && one.role === "place")) return tap(page, label, "place");
    await bring(page, label);
    return tap(page, label);
  };
  for (const label of SCREENS[screen]) await press(label);
  if ((await items(page)).some((one) => one.label === EXAMPLE)) await press(EXAMPLE);
  await page.screenshot({ path: path.join(folder, `${screen}-${width}x${height}-${theme}.png`) });
  await context.close();
}

const chosen = process.argv[3] ?? "";
const folder = path.resolve(process.argv[2] ?? path.join(root, "build/pictures"));
mkdirSync(folder, { recursive: true });
const server = await startServer();
const browser = await startBrowser();
for (const size of SIZES) {
  for (const theme of Object.keys(THEMES)) {
    for (const screen of Object.keys(SCREENS).filter((name) => name.includes(chosen))) await picture(browser, server.address, folder, size, theme, screen);
  }
}
await browser.close();
server.stop();
console.log(`pictures are in ${folder}`);
