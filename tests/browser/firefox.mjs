// Firefox, driven by the protocol it offers itself (WebDriver BiDi); touched with real fingers. For engines.mjs.
import { spawn } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { root } from "./page.mjs";

const WebSocket = createRequire(path.join(root, "build/browser/package.json"))("ws");

// WebGL2 without a graphics card, no traffic of the browser's own, and no tab of its own after it was killed.
const PREFERENCES = {
  "webgl.force-enabled": true, "browser.sessionstore.resume_from_crash": false, "app.normandy.enabled": false,
  "app.update.disabledForTesting": true, "browser.safebrowsing.malware.enabled": false,
  "browser.safebrowsing.phishing.enabled": false, "datareporting.policy.dataSubmissionEnabled": false,
  "extensions.getAddons.cache.enabled": false, "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
};

const PATIENCE_ms = 60000;

const HEARD = {
  "log.entryAdded": ({ level, text }) => ["error", "warn"].includes(level) && `console: ${text}`,
  "network.fetchError": ({ request, errorText }) => `request failed: ${request.url} ${errorText}`,
};

// → what both engines do, to be used by engines.mjs
export async function startFirefox(profile, { width, height }) {
  mkdirSync(profile, { recursive: true });
  writeFileSync(path.join(profile, "user.js"),
    Object.entries(PREFERENCES).map(([name, value]) => `user_pref("${name}", ${JSON.stringify(value)});\n`).join(""));
  const browser = spawn("firefox-esr", ["--no-remote", "--profile", profile, "--remote-debugging-port", "0", "about:blank"],
    { stdio: ["ignore", "ignore", "pipe"], env: { ...process.env, LIBGL_ALWAYS_SOFTWARE: "1" } });
  const gone = new Promise((resolve) => browser.once("exit", resolve));
  const troubles = [];
  const send = await connected(await address(browser), (method, event) => {
    const trouble = HEARD[method]?.(event);
    if (trouble) troubles.push(trouble);
  });
  const { capabilities } = await send("session.new", { capabilities: {} });
  const { contexts: [{ context }] } = await send("browsingContext.getTree", {});
  await send("session.subscribe", { events: Object.keys(HEARD) });
  await send("browsingContext.setViewport", { context, viewport: { width, height } });
  return {
    version: capabilities.browserVersion,
    pointer: "touch",
    troubles: () => troubles,
    go: (url) => send("browsingContext.navigate", { context, url, wait: "complete" }),
    reload: () => send("browsingContext.reload", { context, wait: "complete" }),
    act: (source) => send("input.performActions", { context, actions: [source] }),
    picture: async () => Buffer.from((await send("browsingContext.captureScreenshot", { context })).data, "base64"),
    async run(script) {
      const told = await send("script.evaluate", { expression: script, target: { context }, awaitPromise: true });
      if (told.exceptionDetails) throw new Error(told.exceptionDetails.text);
      return told.result.value;
    },
    kill() { browser.kill("SIGKILL"); return gone; },
  };
}

// The address it listens at, which it says when it is up.
function address(browser) {
  return new Promise((resolve, reject) => {
    let said = "";
    setTimeout(() => reject(new Error(`no answer: ${said}`)), PATIENCE_ms).unref();
    browser.stderr.on("data", (data) => {
      said += data;
      const found = said.match(/BiDi listening on (ws:\S+)/);
      if (found) resolve(`${found[1]}/session`);
    });
    browser.once("error", reject);
    browser.once("exit", () => reject(new Error(`it ended: ${said}`)));
  });
}

// → send(method, params)
async function connected(address, heard) {
  const socket = new WebSocket(address);
  const asked = [];  // by number
  socket.on("message", (data) => {
    const { id, type, method, params, result, error, message } = JSON.parse(data);
    if (type === "event") heard(method, params);
    else if (type === "success") asked[id].resolve(result);
    else asked[id]?.reject(new Error(`${error}: ${message}`));
  });
  socket.on("close", () => { for (const { reject } of asked) reject(new Error("the browser has closed")); });
  await new Promise((resolve, reject) => { socket.once("open", resolve); socket.once("error", reject); });
  return (method, params) => new Promise((resolve, reject) => {
    const id = asked.push({ resolve, reject }) - 1;
    socket.send(JSON.stringify({ id, method, params }));
  });
}
