// The bikes' log in the browser's database: one record for each append, under the number of its last entry; its value is
// what core/storage/log_lines.hpp writes, with a header. The C++ side is app-web/browser_log.hpp.
//
//  1  An append is one transaction with strict durability, answered DONE only when that is complete.
//  2  What an append costs does not depend on the length of the log; no record is ever changed or removed.
//  3  An append is written only behind the record it was made for. Whoever has fallen behind is told what has come
//     meanwhile, then BEHIND, and nothing was written.
//  4  One tab writes: the one that holds the Web Lock, from opening until it is closed or another one takes over. Where there
//     are no Web Locks every tab writes, and 3 keeps them apart.
//  5  A tab that is asked to hand over takes no new entries, saves those it was given, and only then lets go. One that does
//     not answer within three seconds (phones freeze what is not seen) loses the lock; 3 keeps it from writing late.
//  6  The others follow: they hear of every append, and look again whenever they come back into view.
//  7  The lines are kept twice (log_copy.js). What the database has lost comes back from the copy when the log is opened.
//  8  A database that was deleted behind the page, or holds less than was read from it, is found at once or with the next
//     append; the tab that writes saves all it has anew, as one record, and the second copy begins anew behind that.
//  9  Refused storage, no room, an older tab in the way and a newer database are answers, never silence (store.js).
import * as copy from "./log_copy.js";
import { DONE, LOG, meaning, REFUSED, transaction, whenLost } from "./store.js";

const NAME = "camside log";
const BEHIND = -4, LOST = -5;
const PATIENCE_ms = 3000;

const others = globalThis.BroadcastChannel && new BroadcastChannel(NAME);
// (answer, mayWrite, last, bytes, copied): what has come since, and who writes; the first call answers open() and brings the
// lines of the second copy, when they hold what the database does not; LOST: all of it is to be saved anew
let tell = null;
let last = 0;     // number of the last entry that was told
let writes = !navigator.locks;
let letGo = null;
let leaving = false;
let appending = 0;

export async function open(told) {
  // The second request is for a page loaded anew while its old self is still being closed.
  if (!writes && !await ask({ ifAvailable: true }).catch(() => false)) ask({ signal: within(1000) }).catch(() => {});
  tell = told;
  try {
    await news(writes ? await copy.compare(database) : null);
  } catch (error) {
    return cannotOpen(error, writes ? await copy.whole() : null);
  }
  if (others) others.onmessage = ({ data }) => (data === "grown" ? refresh() : handOver());
  document.addEventListener("visibilitychange", comeBack);
  whenLost(refresh);
}

function cannotOpen(error, copied = null) {
  console.warn("log", error);
  tell(meaning(error), false, 0, null, copied);
}

// What is damaged may stand whole in the second copy. Opening waits for the answer.
export const damaged = () => copy.whole().then(news).catch(cannotOpen);

async function news(copied = null) {
  const known = last;
  const { number, there, blocks } = await read(known);
  const bytes = await joined(blocks);
  if (known < last) return news(copied);  // an append came in between
  if (there < known && writes && !leaving) return beginAnew();
  last = number;
  tell(DONE, writes && !leaving, number, bytes, copied);
}

// An append that is under way finds out by itself.
async function beginAnew() {
  if (appending > 0) return;
  await tellLost();
}

async function tellLost() {
  last = 0;
  const { number, blocks } = await read(0);
  const bytes = await joined(blocks);
  last = number;
  copy.beginAnew();
  tell(LOST, true, number, bytes);
}

// What fails here is looked for again with the next append or when the tab comes into view.
const refresh = () => news().catch((error) => console.warn("log", error));

const joined = async (blocks) => new Uint8Array(await new Blob(blocks).arrayBuffer());

function read(behind) {
  return transaction(LOG, "readonly", (records, done) => {
    const range = IDBKeyRange.lowerBound(behind, true);
    const newest = records.openKeyCursor(null, "prev");
    records.getAll(range).onsuccess = (all) => {
      const there = newest.result?.key ?? 0;
      done({ number: Math.max(there, behind), there, blocks: all.target.result });
    };
  });
}

const database = {
  under: (number) => transaction(LOG, "readonly", (records, done) => {
    records.get(number).onsuccess = ({ target }) => done(target.result);
  }),
  after: async (number) => joined((await read(number)).blocks),
};

// `before` is the number of the last entry the program knows, `number` that of the last one in these bytes.
export async function append(before, number, bytes, answered) {
  appending += 1;
  let answer = writes ? await write(before, number, bytes).catch((error) => { console.warn("log", error); return meaning(error); }) : REFUSED;
  if (answer === DONE) {
    last = number;
    others?.postMessage("grown");
    await copy.follow(database, bytes);
  } else if (answer === BEHIND) {
    copy.lookAgain();
    await refresh();
  } else if (answer === LOST) {
    await tellLost().catch((error) => { console.warn("log", error); answer = meaning(error); });
  }
  answered(answer);  // may append again at once
  appending -= 1;
  leave();
}

function write(before, number, bytes) {
  return transaction(LOG, "readwrite", (records, done) => {
    records.openKeyCursor(null, "prev").onsuccess = ({ target }) => {
      const there = target.result?.key ?? 0;
      if (there !== before) return done(there < before ? LOST : BEHIND);
      records.add(bytes, number);
      done(DONE);
    };
  });
}

// ---- who writes

let waiting = null;  // what ends the request that waits for the lock; a second one would wait for this tab itself
let taking = false;

const within = (ms) => {
  waiting?.abort();
  waiting = new AbortController();
  setTimeout((limit) => limit.abort(), ms, waiting);
  return waiting.signal;
};

// → is this tab the one that writes? Rejected when the patience given is over.
function ask(options) {
  let own = null;
  return new Promise((resolve, reject) => {
    navigator.locks.request(NAME, options, (lock) => {
      resolve(lock !== null);
      if (!lock) return;
      waiting?.abort();  // has no effect on the one that was granted
      writes = true;
      if (tell) refresh();
      return new Promise((free) => { letGo = own = free; });
    }).catch((error) => {
      reject(error);  // says nothing when it was answered: then another tab has taken the lock
      if (!own || letGo !== own) return;
      writes = leaving = false;
      letGo = null;
      copy.leave();
      tell?.(DONE, false, last, null);
      refresh();
    });
  });
}

export function takeOver() {
  if (writes) return refresh();
  if (taking) return;
  taking = true;
  others?.postMessage("hand over");
  ask({ signal: within(PATIENCE_ms) }).catch(() => writes || ask({ steal: true })).finally(() => { taking = false; });
}

function handOver() {
  if (!letGo) return;
  leaving = true;
  tell(DONE, false, last, null);
  leave();
}

function leave() {
  if (!leaving || appending > 0) return;
  writes = leaving = false;
  copy.leave();
  letGo?.();
  letGo = null;
}

function comeBack() {
  if (document.hidden || writes) return;
  ask({ ifAvailable: true }).then((mine) => { if (!mine) refresh(); }, refresh);
}
