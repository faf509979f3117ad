// The second copy of the log. A browser can lose a whole database at once: it did, killed in the middle of writing, and
// made an empty one in its place without a word. So the lines of the log stand in a file of the browser's private file
// system too (OPFS), which is kept by other code. Only the tab that writes touches it (log_store.js, 4).
//
//  a  An entry is written to it behind the database, and is confirmed when it is safe in both. A copy that fails costs no
//     entry: the database alone counts then, and the copy is tried again with the next append.
//  b  A copy that is behind, or empty, catches up from the database.
//  c  A copy that holds what the database does not is handed to the program, which saves what it misses. Only when that
//     is confirmed does the copy begin anew.
//  d  Where the database can't be read, or a piece of it is damaged, the program is shown the whole copy.
const PATIENCE_ms = 10000;
const possible = Boolean(globalThis.Worker && navigator.locks && navigator.storage?.getDirectory);

const AWAY = "away", IN_STEP = "in step", HANDED_OVER = "handed over";
let standing = AWAY;
let worker = null;
let tickets = 0;
const asked = new Map();  // by ticket

function ask(name, given) {
  worker ??= start();
  return new Promise((resolve, reject) => {
    const ticket = tickets += 1;
    asked.set(ticket, { resolve, reject, limit: setTimeout(() => giveUp("no answer"), PATIENCE_ms) });
    worker.postMessage([ticket, name, given]);
  });
}

function start() {
  const begun = new Worker("copy_worker.js", { type: "module" });
  begun.onmessage = ({ data: [ticket, good, answer] }) => {
    const { resolve, reject, limit } = asked.get(ticket);
    clearTimeout(limit);
    asked.delete(ticket);
    if (good) resolve(answer);
    else reject(new Error(answer));
  };
  begun.onerror = () => giveUp("it could not be started");
  return begun;
}

function giveUp(why) {
  worker?.terminate();
  worker = null;
  standing = AWAY;
  for (const { reject, limit } of asked.values()) {
    clearTimeout(limit);
    reject(new Error(why));
  }
  asked.clear();
}

const same = (one, other) => one?.length === other.length && one.every((byte, i) => byte === other[i]);

async function catchUp(database, number) {
  const bytes = await database.after(number);
  if (bytes.length > 0) await ask("append", bytes);
  standing = IN_STEP;
}

// → is all of the copy in the database? No record of that is ever changed, so the last one of the copy answers for all.
async function isPart(database, number) {
  if (number === 0) return true;
  const record = await database.under(number);
  return Boolean(record) && same(await ask("tail", record.length), record);
}

async function tried(what) {
  if (!possible) return null;
  try {
    return await what();
  } catch (error) {
    console.warn("second copy", error);
    standing = AWAY;
    return null;
  }
}

// `database` reads it: under(number) → one record or none, after(number) → all behind it, joined.
// → the copy's lines when they hold what the database does not, else null
export const compare = (database) => tried(async () => {
  const number = await ask("open");
  if (await isPart(database, number)) return catchUp(database, number).then(() => null);
  const lines = await ask("whole");
  standing = HANDED_OVER;
  return lines;
});

// → all its lines, for a database that can't be read, or of which a piece is damaged
export const whole = () => tried(async () => {
  await ask("open");
  return ask("whole");
});

// Behind an append that the database has confirmed.
export const follow = (database, bytes) => tried(async () => {
  if (standing === IN_STEP) return ask("append", bytes);
  if (standing === HANDED_OVER) return ask("clear").then(() => catchUp(database, 0));
  const number = await ask("open");
  if (await isPart(database, number)) return catchUp(database, number);  // if not: the next opening hands it over
});

// The database may hold more than this tab wrote: look again before the next append.
export const lookAgain = () => { if (standing === IN_STEP) standing = AWAY; };

// The database begins anew with all that the program has, and this behind it.
export const beginAnew = () => { standing = HANDED_OVER; };

// Another tab writes from here on, to the copy too.
export const leave = () => { standing = AWAY; };
