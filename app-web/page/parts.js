// The program comes in two parts, divided by app-web/later.py. The first draws and measures; the rest is fetched behind it.
// Both share a table through which the first calls the rest; until that is here, its places there hold calls that fail.
const FIRST = "camside_web.wasm";
const REST = "camside_rest.wasm";  // later.py puts its hash into the name
const AGAIN_ms = 3000;

let first = null;

// Asked for just as <link rel="preload"> in index.html asks, and that without "crossorigin", so without an Origin: WebKit
// takes no other preload for the same file, and fetches it a second time.
const AS_PRELOADED = { mode: "no-cors", credentials: "include" };

// Compiled while it comes, where the server says what it is.
async function compile(name) {
  const answer = await fetch(name, AS_PRELOADED);
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return WebAssembly.compileStreaming(answer.clone()).catch(async () => WebAssembly.compile(await answer.arrayBuffer()));
}

// Emscripten's way of leaving the start of the program to the page.
export function startFirst(imports, started, failed) {
  const tooEarly = (_, slot) => () => { throw new Error(`function ${slot} is not here yet`); };
  compile(FIRST)
    .then((module) => WebAssembly.instantiate(module, { ...imports, rest: new Proxy({}, { get: tooEarly }) }))
    .then((instance) => { first = instance; started(instance); })
    .catch(failed);
  return {};
}

// Where there was no signal it is tried again until there is.
async function untilHere() {
  for (;;) {
    try {
      return await compile(REST);
    } catch (error) {
      console.info(`still to come: ${error.message}`);
      await new Promise((again) => setTimeout(again, AGAIN_ms));
    }
  }
}

let coming = null;

export function fetchRest() { return coming ??= untilHere(); }

export async function startRest() {
  await WebAssembly.instantiate(await fetchRest(), { first: first.exports });
}
