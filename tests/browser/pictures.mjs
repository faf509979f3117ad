// Pictures of every screen at three sizes in both themes, into build/pictures (or the folder given).
//   node tests/browser/pictures.mjs [folder [part of a picture's name, as in runout-390x844-sun]]
import { mkdirSync } from "node:fs";
import path from "node:path";
import { bring, drag, items, openPage, root, settled, startBrowser, startServer, tap } from "./page.mjs";

const SIZES = [[390, 844], [844, 390], [1440, 900]];
const THEMES = { sun: "light", shop: "dark" };
const DEMO = ["Bikes", "Show the demo bike (invented)"];
const EXAMPLE = "Show an example (invented)";
const CANDIDATES = ["Look-over", EXAMPLE];
const AT_THE_MILL = "Bike at the mill";
const ROUND = [...CANDIDATES, { part: AT_THE_MILL }, { to: "All questions" }, "All questions"];
const key = (text) => ({ keys: [...text].map((letter) => (letter === "." ? "Decimal mark" : letter)) });
const entry = (part) => ({ part });  // what is pressed is named by a part of its label
const UP = { up: 0.5 };              // half a screen further down the page
// From the start of the app: the labels to press, one after another, and what else is done.
const SCREENS = {
  "bikes-none": ["Bikes"],
  "bikes-list": [...DEMO, "Back"],
  bike: DEMO,
  "bike-more": [...DEMO, UP],
  "bike-log": [...DEMO, { to: "Add an entry …" }],
  "bike-code": [...DEMO, "Show as QR code"],
  "bike-code-below": [...DEMO, "Show as QR code", UP],
  "due-open": [...DEMO, "Outer tensioner shoe"],
  entry: [...DEMO, entry("Odometer: ")],
  "entry-editor": [...DEMO, "Log odometer", key("416")],
  "entry-finding": [...DEMO, "Log odometer", key("4"), "Done"],
  copies: [...DEMO, "Back", { to: "Save a copy" }],
  bench: ["Bench"],
  setup: ["Settings"],
  runout: ["Bench", "Runout"],
  "runout-keypad": ["Bench", "Runout", "Enter readings", "Next reading", key("0.2")],
  "runout-working": ["Bench", "Runout", EXAMPLE, "Working"],
  "runout-refused": ["Bench", "Runout", "Enter readings", "Next reading", key("99"), "Done"],
  lash: ["Bench", "Gear lash (backlash)"],
  "gears-to-order": ["Bench", "Gears to order"],
  pushrods: ["Bench", "Pushrods"],
  torque: ["Bench", "Torque", EXAMPLE],
  "lash-example": ["Bench", "Gear lash (backlash)", EXAMPLE],
  due: ["Bench", "Due"],
  "gear-pair": ["Bench", "Gear pair"],
  wear: ["Bench", "Wear"],
  life: ["Bench", "Life"],
  "look-over": CANDIDATES,
  "look-over-result": [...CANDIDATES, entry(AT_THE_MILL)],
  "look-over-facts": [...CANDIDATES, entry(AT_THE_MILL), entry("2004")],
  "look-over-bill": [...ROUND, entry("Is there a bill or photo")],
  "look-over-glitter": [...ROUND, entry("Glitter or crumbs")],
  "look-over-stop": [...ROUND, entry("Is there any hammering?"), "Yes"],
  "look-over-prices": [...CANDIDATES, entry(AT_THE_MILL), "Enter my prices"],
  "look-over-working": [...CANDIDATES, entry(AT_THE_MILL), "Working"],
  "look-over-lists": ["Bench", "Life", EXAMPLE, "Back", ...CANDIDATES, entry(AT_THE_MILL), "Working", { to: "Not used yet" },
                      "Not used yet", UP],
};

const name = (screen, [width, height], theme) => `${screen}-${width}x${height}-${theme}`;

// What can't be reached is said, and the other pictures are taken all the same.
async function picture(browser, address, folder, [width, height], theme, screen) {
  const touch = width < 900 || height < 500;
  const context = await browser.newContext({
    viewport: { width, height }, deviceScaleFactor: touch ? 3 : 2, hasTouch: true, isMobile: touch, colorScheme: THEMES[theme],
  });
  const page = await openPage(context, address);
  await settled(page);
  const there = async (fits) => (await items(page)).find((one) => one.press && fits(one));
  const press = async (label) => {
    if (await there((one) => one.label === label && one.role === "place")) return tap(page, label, "place");
    if (!(await there((one) => one.label === label))) return undefined;  // beside the screen where there is room
    await bring(page, label).catch(() => {});  // a main action stands outside what scrolls
    return tap(page, label);
  };
  const take = async (step) => {
    if (typeof step === "string") return press(step);
    if (step.part) return press((await there((one) => one.label.includes(step.part)))?.label);
    if (step.to) return bring(page, step.to);
    if (step.up) return drag(page, [width / 2, 0.75 * height], [width / 2, (0.75 - step.up) * height]);
    for (const letter of step.keys) await tap(page, letter, "key");
    return undefined;
  };
  for (const step of SCREENS[screen]) await take(step).catch((fault) => console.log(`${screen}: ${fault.message}`));
  await press(EXAMPLE);  // where nothing was entered yet
  await page.screenshot({ path: path.join(folder, `${name(screen, [width, height], theme)}.png`) });
  await context.close();
}

const chosen = process.argv[3] ?? "";
const folder = path.resolve(process.argv[2] ?? path.join(root, "build/pictures"));
mkdirSync(folder, { recursive: true });
const server = await startServer();
const browser = await startBrowser();
for (const size of SIZES) {
  for (const theme of Object.keys(THEMES)) {
    for (const screen of Object.keys(SCREENS).filter((one) => name(one, size, theme).includes(chosen))) {
      await picture(browser, server.address, folder, size, theme, screen);
    }
  }
}
await browser.close();
server.stop();
console.log(`pictures are in ${folder}`);
