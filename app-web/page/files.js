// Files that leave and come: the share sheet or a download, the picker or a file dropped anywhere on the page.

const LARGEST = 64 << 20;  // bytes; a log of a lifetime is a few MB, and all of it must fit into memory several times

// Share sheets take text, few take JSON.
const asText = (name, bytes) => new File([bytes], name.replace(/json$/, "txt"), { type: "text/plain" });

export const canShare = () => navigator.canShare?.({ files: [asText("try.json", "")] }) ?? false;

// → whether it left. Called within a tap, which browsers insist on.
export async function giveFile(name, bytes, share) {
  if (share) {
    try {
      await navigator.share({ files: [asText(name, bytes)] });
      return true;
    } catch (error) {
      if (error.name === "AbortError") return false;
      console.info("not shared, so saved:", error.message);
    }
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: name.endsWith(".ics") ? "text/calendar" : "application/json" }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  return true;
}

// came(name, bytes, trouble)
export function pickFile(came) {
  const input = document.createElement("input");
  input.type = "file";
  input.multiple = true;
  input.onchange = () => readAll(input.files, came);
  input.click();
}

export function watchDrops(came) {
  window.addEventListener("dragover", (event) => event.preventDefault());
  window.addEventListener("drop", (event) => {
    event.preventDefault();
    readAll(event.dataTransfer.files, came);
  });
}

async function readAll(files, came) {
  for (const file of files) {
    if (file.size > LARGEST) came(file.name, null, "it is larger than 64 MB");
    else await file.arrayBuffer().then((bytes) => came(file.name, new Uint8Array(bytes), ""), (error) => came(file.name, null, error.message));
  }
}
