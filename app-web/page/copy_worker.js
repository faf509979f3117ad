// Holds the file of the log's second copy (log_copy.js): only a worker can write one byte by byte and be sure that it is
// on the disk. Answers in the order it was asked.
const NAME = "log.camside";

let file = null;
let size = 0;  // of what is whole; what stands behind was cut off, and is written over

const work = {
  // → the number of the last whole line; 0: there is none
  async open(patience_ms) {
    file ??= await held(performance.now() + patience_ms);
    const bytes = await read(0, await file.getSize());
    size = bytes.length;
    for (let end = bytes.lastIndexOf(10); end >= 0;) {
      const begin = end > 0 ? bytes.lastIndexOf(10, end - 1) + 1 : 0;
      const number = parseInt(new TextDecoder().decode(bytes.subarray(begin, Math.min(begin + 20, end))), 10);
      if (number > 0) {
        size = end + 1;
        return number;
      }
      end = begin - 1;  // a header that lost its line
    }
    return size = 0;
  },
  tail: (length) => (length > size ? null : read(size - length, length)),
  whole: () => read(0, size),
  async append(bytes) {
    if (await file.getSize() > size) await file.truncate(size);
    if (file.write(bytes, { at: size }) !== bytes.length) throw new Error("no room for the second copy");
    await file.flush();
    size += bytes.length;
  },
  clear() { size = 0; },
  async close() {
    await file?.close();
    file = null;
  },
};

// A page that was just closed, or is being loaded anew, holds it a moment longer.
async function held(until) {
  const folder = await navigator.storage.getDirectory();
  const entry = await folder.getFileHandle(NAME, { create: true });
  for (;;) {
    try {
      return await entry.createSyncAccessHandle();
    } catch (error) {
      if (error.name !== "NoModificationAllowedError" || performance.now() > until) throw error;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
}

function read(at, length) {
  const bytes = new Uint8Array(length);
  file.read(bytes, { at });
  return bytes;
}

async function answer([ticket, name, given]) {
  try {
    postMessage([ticket, true, await work[name](given)]);
  } catch (error) {
    postMessage([ticket, false, String(error)]);
  }
}

let before = Promise.resolve();
onmessage = ({ data }) => { before = before.then(() => answer(data)); };
