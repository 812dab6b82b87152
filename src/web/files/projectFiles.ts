/** The part of the File System Access API that we use; not in every browser. */
interface FilePicker {
  showSaveFilePicker(options: object): Promise<FileSystemFileHandle>;
}

const FILE_KIND = [{ description: "Laywright", accept: { "application/json": [".laywright.json", ".json"] } }];

/** Where a project was saved last, so that saving again needs no question. */
const handles = new Map<string, FileSystemFileHandle>();

/**
 * Saves text as a file: in place where the browser can write files, else as a download.
 * Gives the name it was saved under, or null when the person thought better of it.
 */
export async function saveTextFile(key: string, name: string, text: string): Promise<string | null> {
  const fileName = fileNameOf(name, ".laywright.json");
  const picker = globalThis as unknown as Partial<FilePicker>;
  if (picker.showSaveFilePicker !== undefined) {
    try {
      const handle =
        handles.get(key) ?? (await picker.showSaveFilePicker({ suggestedName: fileName, types: FILE_KIND }));
      const writer = await handle.createWritable();
      await writer.write(text);
      await writer.close();
      handles.set(key, handle);
      return handle.name;
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return null;
      handles.delete(key);
    }
  }
  downloadFile(fileName, new Blob([text], { type: "application/json" }));
  return fileName;
}

/** Hands a file to the browser's downloads. */
export function downloadFile(name: string, content: Blob): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A file name that every system takes: letters and digits of the title, in small letters. */
export function fileNameOf(title: string, ending: string): string {
  const plain = title
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-|-$/gu, "")
    .slice(0, 60);
  return `${plain === "" ? "project" : plain}${ending}`;
}
