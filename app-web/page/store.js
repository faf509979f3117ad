// Camside's records in the browser's database: for each name the newest bytes and the version before them. One transaction
// per save, with strict durability; "saved" is said when the transaction is complete, not when a request succeeded. The
// database is shared with log_store.js.

const DATABASE = "camside";
const VERSION = 2;
const known = new Map();  // name → its newest bytes, as long as the page is open
const RECORDS = "records";
export const LOG = "log";

// How things went, as the program hears it.
export const DONE = 1, REFUSED = 0, FULL = -1, BLOCKED = -2, NEWER = -3;
const MEANING = { QuotaExceededError: FULL, Blocked: BLOCKED, VersionError: NEWER };
export const meaning = (error) => MEANING[error?.name] ?? REFUSED;

let opening = null;
let lost = () => {};  // what is called when the database was deleted behind the page

export function whenLost(call) { lost = call; }

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, VERSION);
    request.onupgradeneeded = () => {
      for (const name of [RECORDS, LOG]) if (!request.result.objectStoreNames.contains(name)) request.result.createObjectStore(name);
      // Begun anew while the page is open: what was in it comes back with it.
      for (const [name, bytes] of known) request.transaction.objectStore(RECORDS).put(bytes, name);
    };
    // Another tab holds an older version of the database. The request stays; once that tab is closed it succeeds.
    request.onblocked = () => reject(new DOMException("an older version is in use", "Blocked"));
    request.onerror = () => { opening = null; reject(request.error); };
    request.onsuccess = () => {
      const database = request.result;
      database.onversionchange = ({ newVersion }) => {
        database.close();
        if (newVersion === null) gone();
      };
      database.onclose = gone;
      opening = Promise.resolve(database);
      resolve(database);
    };
  });
  return opening;
}

function gone() {
  opening = null;
  lost();
}

// Phones cut the connection of a page in the background; a fresh connection is tried once. `work` gets the object store
// and a function that takes the answer.
export async function transaction(name, mode, work) {
  try {
    return await attempt(name, mode, work);
  } catch (error) {
    if (meaning(error) !== REFUSED) throw error;
    opening = null;
    return attempt(name, mode, work);
  }
}

async function attempt(name, mode, work) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const running = database.transaction(name, mode, { durability: "strict" });
    let answer;
    running.oncomplete = () => resolve(answer);
    running.onabort = () => reject(running.error ?? new Error("the browser stopped the transaction"));
    work(running.objectStore(name), (value) => { answer = value; });
  });
}

// → { newest, previous }, each bytes or undefined
export function load(name) {
  return transaction(RECORDS, "readonly", (records, done) => {
    const newest = records.get(name);
    const previous = records.get(`${name}/previous`);
    previous.onsuccess = () => {
      if (newest.result && !known.has(name)) known.set(name, newest.result);
      done({ newest: newest.result, previous: previous.result });
    };
  });
}

export function save(name, bytes) {
  known.set(name, bytes);
  return transaction(RECORDS, "readwrite", (records) => {
    const old = records.get(name);
    old.onsuccess = () => {
      if (old.result) records.put(old.result, `${name}/previous`);
      records.put(bytes, name);
    };
  });
}

// Newest bytes that cannot be read are kept under a name of their own; the version before them, if good, is the newest again.
export function setAside(name, previousIsGood) {
  known.delete(name);
  return transaction(RECORDS, "readwrite", (records) => {
    const damaged = records.get(name);
    const previous = records.get(`${name}/previous`);
    previous.onsuccess = () => {
      records.put(damaged.result, `${name}/damaged/${new Date().toISOString()}`);
      if (previousIsGood) records.put(previous.result, name);
      else records.delete(name);
    };
  });
}

// Asks the browser not to make room at our cost: once, after the first save.
let asked = false;

export async function keepForGood(told) {
  if (asked || !navigator.storage?.persist) return;
  asked = true;
  told(await navigator.storage.persist());
}
