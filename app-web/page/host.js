// Camside's page: starts the program, asks for frames only when something changed, sizes the canvas, and gives the program
// what SDL2 lacks: a text field, storage, clipboard, wake lock, theme, safe area.
import createCamside from "./camside_web.js";
import { closeTextField, openTextField, placeTextField, textFieldIsOpen } from "./text_field.js";
import { canShare, giveFile, pickFile, watchDrops } from "./files.js";
import { keepOffline, takeUpdate } from "./offline.js";
import * as log from "./log_store.js";
import { fetchRest, startFirst, startRest } from "./parts.js";
import * as store from "./store.js";

const canvas = document.getElementById("canvas");
const words = document.getElementById("words");
const state = document.getElementById("state");

let program = null;  // the compiled Camside, once it runs
let frames = 0;
let whole = false;  // both parts of it are here, and the log was opened
let comeAll;
const PATIENCE_ms = 1500;  // should the browser have thrown the rest away
const allHere = new Promise((resolve) => { comeAll = resolve; });
const LAST_PLACE = "last-place";  // where one was: nothing to ask the browser's promise for

function say(text, trouble = false) {
  state.textContent = text;
  state.classList.toggle("trouble", trouble);
}

// Frames on demand: one animation frame or one timer is under way at a time, and none while nothing changes. A hidden page
// gets no animation frames, but a clock may run out in it.
const UNSEEN_ms = 1000;
let frameHandle = 0;
let timer = 0;
let ready = false;  // size, theme and input are heard of; a frame before that would be of the wrong size, and deaf to a tap

function requestFrame() {
  if (!ready) return;
  clearTimeout(timer);
  timer = 0;
  if (document.hidden) timer = setTimeout(frame, UNSEEN_ms);
  else if (!frameHandle) frameHandle = requestAnimationFrame(frame);
}

function frame() {
  frameHandle = timer = 0;
  const rest = program._camside_frame();  // seconds until the next frame is wanted; negative: none is
  frames += 1;
  if (frames === 1) showCanvas();
  if (rest === 0) requestFrame();
  else if (rest > 0) timer = setTimeout(requestFrame, rest * 1000);
}

// Heard or felt with the screen left alone, where the browser allows it: only once the page was touched.
function ring() {
  navigator.vibrate?.([400, 200, 400, 200, 400]);
  const sound = new AudioContext();
  const tone = new OscillatorNode(sound, { frequency: 880 });
  const quieter = new GainNode(sound, { gain: 0.3 });
  tone.connect(quieter).connect(sound.destination);
  tone.onended = () => sound.close();
  tone.start();
  tone.stop(sound.currentTime + 1);
}

let sayUsable;
const usable = new Promise((resolve) => { sayUsable = resolve; });

function showCanvas() {
  words.hidden = true;
  canvas.focus({ preventScroll: true });
  requestAnimationFrame(() => {
    performance.mark("usable");
    sayUsable();
  });
}

async function allOfIt() {
  await startRest();
  comeAll();
  program._camside_all_here();
}

// The size of the canvas has one owner, Camside's window: it hears the size in CSS pixels and in device pixels.
let observed = null;

function fit() {
  const box = canvas.getBoundingClientRect();
  const density = window.devicePixelRatio;
  const exact = observed?.devicePixelContentBoxSize?.[0];
  const pixels = (css, own) => {
    const rounded = Math.round(css * density);
    return own !== undefined && Math.abs(own - rounded) <= 1 ? own : rounded;  // emulated phones report it wrong
  };
  program._camside_resize(box.width, box.height, pixels(box.width, exact?.inlineSize), pixels(box.height, exact?.blockSize));
  fitInsets();
  if (frames) frame0();
}

// Drawn at once, so that no stretched picture is seen while a window is pulled.
function frame0() {
  cancelAnimationFrame(frameHandle);
  frame();
}

function fitInsets() {
  const edge = getComputedStyle(document.getElementById("safe-area"));
  const view = window.visualViewport;
  const keyboard = view ? Math.max(0, window.innerHeight - view.height - view.offsetTop) : 0;
  const [top, right, bottom, left] = ["Top", "Right", "Bottom", "Left"].map((side) => parseFloat(edge[`padding${side}`]) || 0);
  program._camside_insets(top, right, Math.max(bottom, keyboard), left);
}

function watchSize() {
  const observer = new ResizeObserver(([entry]) => { observed = entry; fit(); });
  try {
    observer.observe(canvas, { box: "device-pixel-content-box" });
  } catch {
    observer.observe(canvas);
  }
  window.visualViewport?.addEventListener("resize", fitInsets);
  watchDensity();
}

function watchDensity() {
  matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`).addEventListener("change", () => {
    fit();
    watchDensity();
  }, { once: true });
}

function watchSettings() {
  const watch = (query, told) => {
    const media = matchMedia(query);
    media.addEventListener("change", () => told(media.matches));
    told(media.matches);
  };
  watch("(prefers-color-scheme: light)", (light) => program._camside_light(light));
  watch("(prefers-reduced-motion: reduce)", (still) => program._camside_reduced_motion(still));
}

// A wheel turns by notches of about 100 pixels or 3 lines; a trackpad's pinch by many small steps, which count for more:
// by our own choice 100 pixels of them enlarge 2.8 times.
const NOTCH_px = 100, NOTCH_lines = 3, SMALL_px = 50, PINCH_NOTCH_px = 22;

function notchesOf({ deltaMode, deltaY }) {
  if (deltaMode !== WheelEvent.DOM_DELTA_PIXEL) return -deltaY / NOTCH_lines;
  return -deltaY / (Math.abs(deltaY) < SMALL_px ? PINCH_NOTCH_px : NOTCH_px);
}

function watchInput() {
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener("pointerdown", () => canvas.focus({ preventScroll: true }));
  // Pasting is the browser's: SDL2 would swallow the keys for it, and hears nothing of what was copied elsewhere.
  window.addEventListener("keydown", (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "v") event.stopImmediatePropagation();
  }, { capture: true });
  // A wheel turns where the mouse is, which SDL2 hears of only when it moves: a finger may have touched elsewhere since.
  // It knows of Ctrl only what a key told it, too, and a pinch on a trackpad comes as a wheel with Ctrl.
  canvas.addEventListener("wheel", (event) => {
    canvas.dispatchEvent(new MouseEvent("mousemove", event));
    if (!event.ctrlKey) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    program._camside_stretch(notchesOf(event));
  }, { capture: true, passive: false });
  document.addEventListener("paste", (event) => {
    if (event.target === canvas || event.target === document.body) textTo(program._camside_paste, event.clipboardData.getData("text/plain"));
  });
  // SDL2 has heard the release by now. Drawing here lets a tap on a text field focus the real one within the tap, which
  // phones insist on before they show their keyboard.
  for (const release of ["touchend", "mouseup"]) window.addEventListener(release, () => program._camside_settle());
  canvas.addEventListener("webglcontextlost", (event) => {
    event.preventDefault();
    program._camside_context(false);
  });
  canvas.addEventListener("webglcontextrestored", () => program._camside_context(true));
  document.addEventListener("visibilitychange", () => {
    if (document.hidden && !frameHandle && !timer) return;  // nothing is wanted
    cancelAnimationFrame(frameHandle);
    frameHandle = 0;
    requestFrame();
    if (!document.hidden && awake) keepAwake(true);
  });
}

// The wake lock is the browser's to take away whenever the page is hidden; it is asked for again when it is back.
let awake = false;
let lock = null;

async function keepAwake(wanted) {
  awake = wanted;
  try {
    if (wanted) lock = await navigator.wakeLock.request("screen");
    else await lock?.release();
  } catch {
    lock = null;  // no wake lock here or not now: the screen dims as it always does
  }
}

function bytesFrom(address, length) { return program.HEAPU8.slice(address, address + length); }

// The program gets bytes as a block it frees itself; none is the address 0.
function bytesTo(bytes) {
  if (!bytes) return [0, 0];
  const address = program._malloc(bytes.length || 1);
  program.HEAPU8.set(bytes, address);
  return [address, bytes.length];
}

const textBlock = (text) => bytesTo(new TextEncoder().encode(text));
function textTo(call, text) { call(...textBlock(text)); }

let saving = 0;  // saves that the browser has not confirmed yet
const whenSaved = [];

function allSaved() {
  return saving === 0 ? Promise.resolve() : new Promise((resolve) => whenSaved.push(resolve));
}

function saveEnded() {
  saving -= 1;
  if (saving === 0) for (const go of whenSaved.splice(0)) go();
}

// → when nobody is in the middle of typing: no text field is open, and no keypad.
async function atEase() {
  const typing = () => textFieldIsOpen() || shownItems().some(({ role }) => role === "key");
  while (program && typing()) await new Promise((resolve) => setTimeout(resolve, 500));
}

const shownItems = () => JSON.parse(program.UTF8ToString(program._camside_items()));

let owed = 0;  // other answers that the program waits for, and draws when they come

function owing(answer) {
  owed += 1;
  return answer.finally(() => { owed -= 1; });
}

const atRest = () => !frameHandle && !(timer && document.hidden) && saving === 0 && owed === 0;

// → when all that came in was drawn, what was to be saved is saved, and nothing more changes by itself, a running clock
// apart. The browser hands over what fingers, sizes and settings do just before an animation frame: only when two in a row
// find nothing to do, nothing was on its way.
async function rest() {
  const turn = () => new Promise((go) => (document.hidden ? setTimeout(go, UNSEEN_ms) : requestAnimationFrame(go)));
  for (let idle = 0; idle < 2; idle = atRest() ? idle + 1 : 0) await turn();
}

async function fileCame(name, bytes, trouble) {
  await allHere;
  program._camside_file(...textBlock(name), ...bytesTo(bytes), ...textBlock(trouble));
}

// A bike out of a QR code stands behind '#', which no request carries. It is taken out of the address at once, so that
// loading the page again or handing the address on doesn't bring it once more.
const CODE = "#bike=";
const LONGEST = 20000;  // letters; no code has so many

function takeCode() {
  const code = location.hash;
  if (!code.startsWith(CODE)) return;
  history.replaceState(null, "", location.pathname + location.search);
  fileCame("", new TextEncoder().encode(code.slice(0, LONGEST)), "");
}

// Has the browser promised not to make room at our cost?
function lasting(promised) { program._camside_lasting(promised ? 1 : 0); }

// What the program asks of the page; called from bridge.cpp.
const host = {
  requestFrame,
  keepAwake,
  takeUpdate,
  ring,
  cursor(style) { canvas.style.cursor = style; },
  copy(text) { navigator.clipboard?.writeText(text).catch(() => {}); },
  closeText: closeTextField,
  placeText: placeTextField,
  openText(request) {
    openTextField({
      ...request,
      changed: (text) => textTo(program._camside_text, text),
      done: () => { program._camside_text_done(); canvas.focus({ preventScroll: true }); },
    });
  },
  load(ticket, name) {
    owing(store.load(name)).then(
      async ({ newest, previous }) => {
        if (newest) await allHere;  // what was kept may need any part of it
        program._camside_loaded(ticket, store.DONE, ...bytesTo(newest), ...bytesTo(previous));
      },
      (error) => { console.warn("load", error); program._camside_loaded(ticket, store.meaning(error), 0, 0, 0, 0); });
  },
  save(ticket, name, address, length) {
    saving += 1;
    store.save(name, bytesFrom(address, length)).finally(saveEnded).then(
      () => {
        program._camside_saved(ticket, store.DONE);
        if (name !== LAST_PLACE) store.keepForGood(lasting);
      },
      (error) => { console.warn("save", error); program._camside_saved(ticket, store.meaning(error)); });
  },
  async logOpen() {
    await allHere;
    await owing(log.open((answer, mayWrite, last, bytes, copied) => {
      program._camside_log(answer, mayWrite ? 1 : 0, last, ...bytesTo(bytes), ...bytesTo(copied));
      whole = true;
    }));
  },
  logAppend(before, number, address, length) {
    saving += 1;
    log.append(before, number, bytesFrom(address, length), (answer) => {
      program._camside_log_saved(answer);
      saveEnded();
      if (answer === store.DONE) store.keepForGood(lasting);
    });
  },
  logDamaged() { owing(log.damaged()); },
  logTakeOver: log.takeOver,
  giveFile(name, address, length, share) {
    giveFile(name, bytesFrom(address, length), share).then((given) => program._camside_file_given(given ? 1 : 0));
  },
  pickFile() { pickFile(fileCame); },
  setAside(name, previousIsGood) { store.setAside(name, previousIsGood).catch((error) => console.warn("set aside", error)); },
};

// For tests and for the curious: what is on screen, how often it was drawn, is all of it here, when does it rest. Reading
// changes nothing.
function openWindowForTests() {
  globalThis.camside = Object.freeze({
    frames: () => frames,
    whole: () => whole,
    rest,
    items: shownItems,
  });
}

async function start() {
  if (!document.createElement("canvas").getContext("webgl2")) {
    say("Camside draws with WebGL2, which this browser does not offer. A current browser, or graphics acceleration turned on "
      + "in its settings, will do", true);
    return;
  }
  canvas.hidden = false;
  const kept = navigator.serviceWorker?.controller;  // then the rest is on this device too, and hardly a wait
  if (kept) fetchRest();
  program = await new Promise((resolve, reject) =>
    createCamside({ canvas, host, instantiateWasm: (imports, started) => startFirst(imports, started, reject) }).then(resolve, reject));
  if (kept) await Promise.race([allOfIt(), new Promise((given) => setTimeout(given, PATIENCE_ms))]);
  openWindowForTests();
  watchSettings();
  watchInput();
  watchSize();
  watchDrops(fileCame);
  textTo(program._camside_address, location.origin + location.pathname);
  program._camside_can_share(canShare() ? 1 : 0);
  ready = true;
  requestFrame();
  if (!kept) await usable.then(allOfIt);
  if (navigator.storage?.persisted) owing(navigator.storage.persisted()).then(lasting);
  await owing(keepOffline(({ version, kept, update }) =>
    program._camside_kept(kept ? 1 : 0, update ? 1 : 0, ...textBlock(version)), allSaved, atEase));
}

// The program can't go on: no memory is left, or it is at fault. Nothing of what was saved is lost by that.
function stopped(error) {
  if (!(error instanceof WebAssembly.RuntimeError) || !program) return;
  program = null;
  closeTextField();
  canvas.hidden = true;
  words.hidden = false;
  say(`Camside had to stop: ${/memory|abort/i.test(error.message) ? "there is not enough memory for it" : error.message}. `
    + "Load the page again; what you saved is kept", true);
}

window.addEventListener("error", ({ error }) => stopped(error));
window.addEventListener("unhandledrejection", ({ reason }) => stopped(reason));
window.addEventListener("hashchange", takeCode);
takeCode();
start().catch((error) => {
  canvas.hidden = true;
  console.error(error);
  say(`Camside could not start: ${error?.message ?? error}. Load the page again; what you saved is kept`, true);
});
