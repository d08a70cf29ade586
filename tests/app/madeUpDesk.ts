// A desk without a browser: one shelf and one list of notes for many pages, files that remember what was written.
import type {
  BrowserFiles,
  Desk,
  FileHandle,
  Notes,
  PageLife,
  Put,
  Shelf,
  Tabs,
} from "../../src/app/index.ts";

/** Notes in a list. */
export function madeUpNotes(): Notes & { held: Map<string, string> } {
  const held = new Map<string, string>();
  return {
    held,
    get length() {
      return held.size;
    },
    key: (i) => [...held.keys()][i] ?? null,
    getItem: (name) => held.get(name) ?? null,
    setItem: (name, text) => void held.set(name, text),
    removeItem: (name) => void held.delete(name),
  };
}

/** A browser: what its pages share, and what can be made to go wrong. */
export function madeUpBrowser() {
  const boxes = { work: new Map<string, unknown>(), recent: new Map<string, unknown>() };
  const notes = madeUpNotes();
  const open = new Set<string>();
  const it = {
    boxes,
    notes,
    open,
    /** Why nothing can be written; null while it can. */
    refuses: null as Error | null,
    /** Writings that wait until they are let go; null while they are done at once. */
    waiting: null as (() => void)[] | null,
    written: 0,
    /** A page of this browser; `ownNotes` are those of an earlier load of it. */
    page: (name: string, ownNotes: Notes = madeUpNotes()) => madeUpPage(name, ownNotes),
  };
  const copy = <T>(value: T): T => structuredClone(value);
  const put = (puts: readonly Put[]) => {
    for (const { box, key, value } of puts)
      if (value === undefined) boxes[box].delete(key);
      // A browser copies handles of files; the made-up ones have methods of their own, which are not copied.
      else boxes[box].set(key, box === "work" ? copy(value) : value);
  };
  const shelf = (alive: () => boolean): Shelf => ({
    all: async (box) =>
      [...boxes[box]].map(([key, value]): [string, unknown] => [key, box === "work" ? copy(value) : value]),
    put: async (puts) => {
      if (it.waiting !== null) await new Promise<void>((go) => it.waiting?.push(go));
      if (it.refuses !== null) throw it.refuses;
      if (!alive()) throw new Error("the page is gone");
      put(puts);
      it.written += 1;
    },
    exchange: async (box, key, puts) => {
      if (it.refuses !== null) throw it.refuses;
      const value = boxes[box].get(key);
      if (value === undefined) return null;
      put([{ box, key, value: undefined }, ...puts(value)]);
      return value;
    },
  });

  function madeUpPage(name: string, ownNotes: Notes) {
    const leaving: (() => void)[] = [];
    const files = { downloads: [] as [string, string][], texts: new Map<string, string>(), next: "" };
    const page = { asksBeforeLeaving: false, alive: true };
    open.add(name);
    const tabs: Tabs = { own: name, open: async () => new Set(open), gone: async () => undefined };
    const life: PageLife = {
      onLeave: (work) => leaving.push(work),
      onReturn: () => {},
      askBeforeLeaving: (on) => {
        page.asksBeforeLeaving = on;
      },
    };
    const handle = (of: string): FileHandle => ({
      name: of,
      getFile: async () => new File([files.texts.get(of) ?? ""], of),
      createWritable: async () => {
        throw new Error("not used here");
      },
    });
    const browserFiles: BrowserFiles = {
      get canWrite() {
        return files.next !== "";
      },
      pick: async () => handle(files.next),
      saveAs: async (_, text) => {
        files.texts.set(files.next, text);
        return handle(files.next);
      },
      write: async ({ name: of }, text) => {
        if (it.refuses !== null) throw it.refuses;
        files.texts.set(of, text);
      },
      download: (of, text) => void files.downloads.push([of, text]),
    };
    const desk: Desk = { shelf: shelf(() => page.alive), tabs, files: browserFiles, notes, ownNotes, life };
    return {
      desk,
      files,
      page,
      ownNotes,
      /** Ends the page; `told` when it is told before, as browsers do unless it breaks down. */
      end: (told: boolean) => {
        if (told) for (const work of leaving) work();
        page.alive = false;
        open.delete(name);
      },
    };
  }
  return it;
}
