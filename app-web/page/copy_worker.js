// Reads and writes the file of the log's second copy (log_copy.js): only a worker can add to one and be sure that it is on
// the disk. Answers in the order it was asked. The file is held for the moment of each answer only: a tab that is frozen, or
// being closed, stands in nobody's way.
const NAME = "log.camside";

let size = 0;  // of what is whole; what stands behind was cut off, and is written over

const work = {
  // → the number of the last whole line; 0: there is none
  open(file) {
    const bytes = read(file, 0, file.getSize());
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
  tail: (file, length) => (length > size ? null : read(file, size - length, length)),
  whole: (file) => read(file, 0, size),
  append(file, bytes) {
    if (file.getSize() < size) throw new Error("it has become shorter");
    file.truncate(size);
    for (let done = 0, more; done < bytes.length; done += more) {  // a browser may take it in parts
      more = file.write(bytes.subarray(done), { at: size + done });
      if (more === 0) throw new Error("no room for it");
    }
    file.flush();
    size += bytes.length;
  },
  clear() { size = 0; },
};

function read(file, at, length) {
  const bytes = new Uint8Array(length);
  file.read(bytes, { at });
  return bytes;
}

const TRIES = 20, PAUSE_ms = 100;

async function held() {
  const folder = await navigator.storage.getDirectory();
  const entry = await folder.getFileHandle(NAME, { create: true });
  for (let tries = 1; ; tries += 1) {
    try {
      return await entry.createSyncAccessHandle();
    } catch (error) {  // somebody else has it for a moment
      if (error.name !== "NoModificationAllowedError" || tries === TRIES) throw error;
      await new Promise((resolve) => setTimeout(resolve, PAUSE_ms));
    }
  }
}

async function answer([ticket, name, given]) {
  let file = null;
  try {
    file = await held();
    postMessage([ticket, true, work[name](file, given)]);
  } catch (error) {
    postMessage([ticket, false, String(error)]);
  } finally {
    file?.close();
  }
}

let before = Promise.resolve();
onmessage = ({ data }) => { before = before.then(() => answer(data)); };
