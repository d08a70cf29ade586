// Opening plans from files, saving them to files, and the list of plans that were open lately.
import type { StoreApi } from "zustand/vanilla";
import { largestFile, writePlan } from "../plan/index.ts";
import type { Desk } from "./desk.ts";
import type { Editing } from "./editing.ts";
import type { FileHandle, FileToRead } from "./files.ts";
import { entryNow, savedAt } from "./history.ts";
import type { KeepingWork } from "./keeping.ts";
import { type Put, whyNotKept } from "./shelf.ts";
import type { AppState, Failure, Filed, RecentPlan } from "./state.ts";

/** The commands about files. */
export interface Filing {
  /** Opens a file that was picked, dropped or handed over; with what allows it to be written, where there is that. */
  openFile(file: FileToRead, handle?: FileHandle | null): Promise<boolean>;
  /** Whether this browser picks files together with the right to write them; else a form picks them. */
  picksFiles(): boolean;
  /** Opens what can be mended of the file that was just refused; false when nothing of it can. */
  openRefused(): Promise<boolean>;
  /** Lets the user pick a file and opens it. */
  pickFile(): Promise<void>;
  /** Writes the draft to its file; asks where, when it has none that can be written. */
  save(): Promise<void>;
  /** Writes the draft to a file that the user names, or hands it over as a download. */
  saveAs(): Promise<void>;
  /** Hands the draft over as a download. */
  downloadPlan(): void;
  /** Reads the list of plans that were open lately anew. */
  listRecent(): Promise<void>;
  /** Opens a plan of that list. */
  openRecent(key: string): Promise<void>;
  /** Takes a plan off that list, with what this browser kept of it. */
  forgetRecent(key: string): Promise<void>;
}

/** As many plans that files hold stand on the list; work that no file holds always does. */
const listed = 12;

/** A plan of the list as it is kept. */
interface Kept {
  name: string;
  title: string;
  at: number;
  text: string;
  handle: FileHandle | null;
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Name for a file of a plan: the file's own, with the ending of plan files. */
export function fileName(name: string): string {
  const plain = name.replace(/[^\p{L}\p{N} ._()-]+/gu, "-").replace(/^[-.\s]+|[-.\s]+$/g, "");
  const whole = plain === "" ? "plan" : plain;
  return /\.json$/i.test(whole) ? whole : `${whole}.json`;
}

const asKept = (value: unknown): Kept | null => {
  const it = value as Partial<Kept> | null;
  return typeof it?.name === "string" && typeof it.text === "string" && typeof it.at === "number"
    ? (it as Kept)
    : null;
};

/** The commands on a store and a desk. */
export function filing(
  store: StoreApi<AppState>,
  editing: Pick<Editing, "openText" | "openToMend">,
  kept: Pick<KeepingWork, "openWork" | "allWork" | "forgetWork">,
  { shelf, files }: Pick<Desk, "shelf" | "files">,
  now: () => number,
): Filing {
  const get = store.getState;
  /** The file of a document that can be written again, by the number of the document. */
  let own: { opened: number; handle: FileHandle } | null = null;
  const handleNow = () => (own !== null && own.opened === get().document?.opened ? own.handle : null);

  const keepRecent = async (name: string, text: string, handle: FileHandle | null) => {
    const title = get().document?.draft.header?.title ?? "";
    const value: Kept = { name, title, at: now(), text, handle };
    const key = `${name}\n${title}`;
    try {
      const held = (await shelf.all("recent")).filter(([one]) => one !== key);
      const newest = held.sort(([, a], [, b]) => (asKept(b)?.at ?? 0) - (asKept(a)?.at ?? 0));
      const beyond = newest
        .slice(listed - 1)
        .map(([one]): Put => ({ box: "recent", key: one, value: undefined }));
      await shelf.put([...beyond, { box: "recent", key, value }]);
    } catch {
      // The plan has its file; that it is not on the list is told by the list.
    }
  };

  /** The last file that was refused. */
  let refused: { of: Failure | null; text: string; handle: FileHandle | null } | null = null;

  const opened = async (text: string, name: string, handle: FileHandle | null): Promise<boolean> => {
    if (!editing.openText(text, name)) {
      refused = { of: get().failure, text, handle };
      return false;
    }
    return await nowOpen(text, name, handle);
  };

  /** Notes what file the document that was just opened has. */
  const nowOpen = async (text: string, name: string, handle: FileHandle | null): Promise<boolean> => {
    const number = get().document?.opened ?? 0;
    own = handle === null ? null : { opened: number, handle };
    store.setState({ filed: { name, is: "opened", at: now(), errors: 0 } });
    await keepRecent(name, text, handle);
    return true;
  };

  const fail = (name: string, found: string, allowed: string, mend: string) =>
    store.setState({ failure: { name, errors: [{ path: "the file", found, allowed, mend }] } });

  const openFile: Filing["openFile"] = async (file, handle = null) => {
    if (file.size > largestFile) {
      const mend = "Split the plan by sets, or take long records out.";
      fail(file.name, `${(file.size / 1e6).toFixed(1)} MB`, "at most 50 MB", mend);
      return false;
    }
    try {
      return await opened(await file.text(), file.name, handle);
    } catch (error) {
      const mend = "Check that it is there and readable.";
      fail(file.name, `a file that the browser could not read (${wordsOf(error)})`, "a plan file", mend);
      return false;
    }
  };

  /** What is to be written, and how to note afterwards that it was. */
  const toWrite = () => {
    const { document, history } = get();
    if (document === null) return null;
    const entry = entryNow(history);
    const text = writePlan(entry.plan);
    const errors = document.errors.length;
    const done = async (is: Filed["is"], name: string, handle: FileHandle | null) => {
      const { document: open, history: later } = get();
      // Another plan may have been opened, and more edits made, while the file was written.
      if (open?.opened === document.opened) {
        const at = later.entries.indexOf(entry);
        if (handle !== null) own = { opened: open.opened, handle };
        store.setState({
          filed: { name, is, at: now(), errors },
          notFiled: "",
          history: at < 0 ? later : savedAt(later, at),
          document: { ...open, name },
        });
      }
      await keepRecent(name, text, handle);
    };
    return { text, name: fileName(document.name), done };
  };

  const trying = async (work: () => Promise<void>) => {
    try {
      await work();
    } catch (error) {
      store.setState({ notFiled: `The file was not written: ${wordsOf(error)}.` });
    }
  };

  const downloadPlan = () => {
    const it = toWrite();
    if (it === null) return;
    files.download(it.name, it.text);
    void it.done("downloaded", it.name, null);
  };

  const saveAs = async () => {
    const it = toWrite();
    if (it === null) return;
    if (!files.canWrite) {
      downloadPlan();
      return;
    }
    await trying(async () => {
      const handle = await files.saveAs(it.name, it.text);
      if (handle !== null) await it.done("saved", handle.name, handle);
    });
  };

  const listRecent = async () => {
    const recent = await shelf.all("recent").catch(() => []);
    const plans = recent.flatMap(([key, value]): RecentPlan[] => {
      const it = asKept(value);
      return it === null ? [] : [{ key, name: it.name, title: it.title, at: it.at, changes: 0 }];
    });
    const away = [...(await kept.allWork())].flatMap(([key, it]): RecentPlan[] =>
      it.away ? [{ key, name: it.name, title: it.title, at: it.at, changes: it.changes }] : [],
    );
    store.setState({ recent: [...plans, ...away].sort((a, b) => b.at - a.at) });
  };

  const recentOf = (key: string) => get().recent.find((one) => one.key === key);

  return {
    openFile,
    openRefused: async () => {
      const { failure } = get();
      if (failure === null || !editing.openToMend()) return false;
      // Only what came as a file has one.
      return refused?.of === failure ? await nowOpen(refused.text, failure.name, refused.handle) : true;
    },
    picksFiles: () => files.canWrite,
    pickFile: async () => {
      try {
        const handle = await files.pick();
        if (handle !== null) await openFile(await handle.getFile(), handle);
      } catch (error) {
        fail("The file", wordsOf(error), "a plan file", "Check that it is there and readable.");
      }
    },
    save: async () => {
      const handle = handleNow();
      const it = toWrite();
      if (handle === null || it === null) {
        await saveAs();
        return;
      }
      await trying(async () => {
        await files.write(handle, it.text);
        await it.done("saved", handle.name, handle);
      });
    },
    saveAs,
    downloadPlan,
    listRecent,
    openRecent: async (key) => {
      if ((recentOf(key)?.changes ?? 0) > 0) {
        await kept.openWork(key);
        return;
      }
      try {
        const kept = asKept(new Map(await shelf.all("recent")).get(key));
        if (kept === null) throw new Error("it is no longer on the list");
        const { name, text, handle } = kept;
        if (handle !== null && (await handle.requestPermission?.({ mode: "read" })) !== "denied") {
          const file = await handle.getFile().catch(() => null);
          if (file !== null) {
            await openFile(file, handle);
            return;
          }
        }
        await opened(text, name, null);
      } catch (error) {
        const mend = "Open the plan's file.";
        fail(recentOf(key)?.name ?? "The plan", wordsOf(error), "a plan that is still kept", mend);
      }
    },
    forgetRecent: async (key) => {
      if ((recentOf(key)?.changes ?? 0) > 0) await kept.forgetWork(key);
      else
        await shelf.put([{ box: "recent", key, value: undefined }]).catch((error: unknown) => {
          store.setState({ keeping: { is: "failed", words: whyNotKept(error) } });
        });
      await listRecent();
    },
  };
}
