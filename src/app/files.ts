// Files of the user: picked, and written where the browser can write files, else handed over as downloads.

/** A file that can be written again and read again, as the browser hands it out. */
export interface FileHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
  requestPermission?(how: { mode: "read" | "readwrite" }): Promise<PermissionState>;
}

/** What is read of a file. */
export type FileToRead = Pick<File, "name" | "size" | "text">;

/** Reading and writing files in a browser. */
export interface BrowserFiles {
  /** Whether files can be picked together with the right to write them. */
  readonly canWrite: boolean;
  /** Lets the user pick a plan file; null when the user thought better of it. */
  pick(): Promise<FileHandle | null>;
  /** Lets the user say where a text goes, and writes it there; null when the user thought better of it. */
  saveAs(name: string, text: string): Promise<FileHandle | null>;
  /** Writes a text to a file again. Refused with the reason when the file is gone or may not be written. */
  write(handle: FileHandle, text: string): Promise<void>;
  /** Hands a text over as a download. */
  download(name: string, text: string): void;
}

const mime = "application/json";
const types = [{ description: "Plan", accept: { [mime]: [".json"] as const } }];

/** The pickers, which not every browser has. */
interface Pickers {
  showOpenFilePicker?: (options: object) => Promise<FileHandle[]>;
  showSaveFilePicker?: (options: object) => Promise<FileHandle>;
}

/** What a picker gives; null when it was closed without a choice. */
async function chosen<T>(picking: Promise<T>): Promise<T | null> {
  try {
    return await picking;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return null;
    throw error;
  }
}

async function writeTo(handle: FileHandle, text: string): Promise<void> {
  if ((await handle.requestPermission?.({ mode: "readwrite" })) === "denied")
    throw new Error("this page may not write it");
  const stream = await handle.createWritable();
  await stream.write(text);
  await stream.close();
}

/** The browser's files; `download` hands a text to the user as a file. */
export function browserFiles(download: (name: string, text: string, type: string) => void): BrowserFiles {
  const pickers = globalThis as Pickers;
  return {
    // Read at each use: a browser's policy may take the pickers away.
    get canWrite() {
      return pickers.showOpenFilePicker !== undefined && pickers.showSaveFilePicker !== undefined;
    },
    pick: async () =>
      (await chosen(pickers.showOpenFilePicker?.({ types }) ?? Promise.resolve([])))?.[0] ?? null,
    saveAs: async (name, text) => {
      const picking = pickers.showSaveFilePicker?.({ suggestedName: name, types });
      const handle = picking === undefined ? null : await chosen(picking);
      if (handle !== null) await writeTo(handle, text);
      return handle;
    },
    write: writeTo,
    download: (name, text) => download(name, text, mime),
  };
}
