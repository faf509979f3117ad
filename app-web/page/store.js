// Camside's records in the browser's database: for each name the newest bytes and the version before them. One transaction
// per save, with strict durability; "saved" is said when the transaction is complete, not when a request succeeded.

const DATABASE = "camside";
const RECORDS = "records";

let opening = null;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(RECORDS);
    request.onblocked = () => reject(new Error("another tab holds an older version of the database"));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const database = request.result;
      database.onversionchange = () => database.close();
      database.onclose = () => { opening = null; };
      resolve(database);
    };
  });
  opening.catch(() => { opening = null; });
  return opening;
}

// Phones cut the connection of a page in the background; a fresh connection is tried once.
async function transaction(mode, work) {
  try {
    return await attempt(mode, work);
  } catch (error) {
    if (error?.name === "QuotaExceededError") throw error;
    opening = null;
    return attempt(mode, work);
  }
}

async function attempt(mode, work) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const running = database.transaction(RECORDS, mode, { durability: "strict" });
    let answer;
    running.oncomplete = () => resolve(answer);
    running.onabort = () => reject(running.error ?? new Error("the browser stopped the transaction"));
    work(running.objectStore(RECORDS), (value) => { answer = value; });
  });
}

// → { newest, previous }, each bytes or undefined
export function load(name) {
  return transaction("readonly", (records, done) => {
    const newest = records.get(name);
    const previous = records.get(`${name}/previous`);
    previous.onsuccess = () => done({ newest: newest.result, previous: previous.result });
  });
}

export function save(name, bytes) {
  return transaction("readwrite", (records) => {
    const old = records.get(name);
    old.onsuccess = () => {
      if (old.result) records.put(old.result, `${name}/previous`);
      records.put(bytes, name);
    };
  });
}

// Newest bytes that cannot be read are kept under a name of their own; the version before them, if good, is the newest again.
export function setAside(name, previousIsGood) {
  return transaction("readwrite", (records) => {
    const damaged = records.get(name);
    const previous = records.get(`${name}/previous`);
    previous.onsuccess = () => {
      records.put(damaged.result, `${name}/damaged/${new Date().toISOString()}`);
      if (previousIsGood) records.put(previous.result, name);
      else records.delete(name);
    };
  });
}
