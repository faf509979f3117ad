// WebKit, the iPhone's engine, as Debian has it (WebKitGTK), driven by plain WebDriver. Of fingers it knows nothing here: it
// is clicked. For engines.mjs.
import { spawn } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { rest, root } from "./page.mjs";

const PATIENCE_ms = 30000;

// What it says of every page like ours and only ignores: it has no manifests here, and no say in what its keyboard does.
const HARMLESS = /Content-Security-Policy directive 'manifest-src'|Viewport argument key "interactive-widget"/;

// → what both engines do, to be used by engines.mjs
export async function startWebkit(profile, { width, height }) {
  mkdirSync(profile, { recursive: true });
  const port = await freePort();
  const options = { detached: true, stdio: "ignore", env: surroundings(profile) };
  const driver = spawn("WebKitWebDriver", [`--port=${port}`], options);
  const gone = new Promise((resolve) => driver.once("exit", resolve));
  const console = () => readFileSync(path.join(profile, "console"), "utf8");
  const ask = (method, way, body) => asked(method, `http://127.0.0.1:${port}${way}`, body);
  await new Promise((resolve, reject) => { driver.once("spawn", resolve); driver.once("error", reject); });
  await answers(() => ask("GET", "/status"));
  const window = { binary: path.join(root, "tests/browser/webkit_window.py"), args: [profile, `${width}`, `${height}`] };
  const wanted = { capabilities: { alwaysMatch: { "webkitgtk:browserOptions": window } } };
  const { sessionId } = await ask("POST", "/session", wanted).catch((error) => {
    process.kill(-driver.pid, "SIGKILL");
    throw new Error(`${error.message}: ${console()}`);
  });
  const here = `/session/${sessionId}`;
  return {
    version: console().match(/WebKitGTK (\S+)/)[1],
    pointer: "mouse",
    troubles: () => console().split("\n").filter((line) => / (ERROR|WARN) /.test(line) && !HARMLESS.test(line)),
    go: (url) => ask("POST", `${here}/url`, { url }),
    reload: () => ask("POST", `${here}/refresh`, {}),
    act: (source) => ask("POST", `${here}/actions`, { actions: [source] }),
    picture: async () => Buffer.from(await ask("GET", `${here}/screenshot`), "base64"),
    async run(script) {  // a promise
      const answering = `${script}.then((answer) => arguments[0]({ answer }), (error) => arguments[0]({ error: String(error) }))`;
      const { answer, error } = await ask("POST", `${here}/execute/async`, { script: answering, args: [] });
      if (error) throw new Error(error);
      return answer;
    },
    kill() { process.kill(-driver.pid, "SIGKILL"); return gone; },  // the driver and all it has started
  };
}

// Without a graphics card, and with nothing kept elsewhere than in this folder.
const surroundings = (profile) => ({
  ...process.env, LIBGL_ALWAYS_SOFTWARE: "1", NO_AT_BRIDGE: "1",
  XDG_CACHE_HOME: profile, XDG_CONFIG_HOME: profile, XDG_DATA_HOME: profile,
});

function freePort() {
  const server = createServer();
  return new Promise((resolve) => server.listen(0, "127.0.0.1", () => {
    const { port } = server.address();
    server.close(() => resolve(port));
  }));
}

async function asked(method, address, body) {
  const request = { method, body: body && JSON.stringify(body), signal: AbortSignal.timeout(PATIENCE_ms) };
  const { value } = await (await fetch(address, request)).json();
  if (value?.error) throw new Error(`${value.error}: ${value.message}`);
  return value;
}

async function answers(question) {
  for (let tries = 1; ; tries += 1) {
    try {
      return await question();
    } catch (error) {
      if (tries === 100) throw error;
      await rest(100);
    }
  }
}
